"""The reference: what is loaded as browsable pages, with a search that needs no server."""

from __future__ import annotations

from collections.abc import Mapping

from speclint.errors import SettingsError
from speclint.families import Loaded, RuleExample
from speclint.reports.reference.places import (
    REFERENCE_FRONT as REFERENCE_FRONT,
    REFERENCE_MARK as REFERENCE_MARK,
)


def reference_files(loaded: Loaded, examples: Mapping[str, RuleExample] | None = None) -> dict[str, str]:
    """The text of every file of the reference by its place in the folder, with "/" between the parts of a path.

    ``examples`` has, by the name of a rule, what it holds with and what breaks it.

    :raises SettingsError: where the extra that brings its libraries is not installed.
    :raises FamilyError: where a family that is loaded is not whole.
    """
    try:
        import jinja2  # noqa: F401
        import latex2mathml  # noqa: F401
        import markdown_it  # noqa: F401
    except ImportError as problem:
        raise SettingsError('this needs the extra "pack": pip install "speclint[pack]"') from problem
    from speclint.reports.reference.every_page import files_of, pages_of

    return files_of(pages_of(loaded, examples or {}))
