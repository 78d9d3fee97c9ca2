"""The families of one run of a command, with the report writers of speclint itself."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from speclint.families import Loaded


def loaded_families() -> Loaded:
    """Every installed family, and what speclint itself hands over by the same hooks.

    :raises FamilyError: when a family cannot be used.
    """
    from speclint.families import load_families
    from speclint.reports import hooks

    return load_families(built_in=hooks)
