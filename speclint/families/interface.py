"""The interface between the core and families: its version, and the name under which a family states it."""

from __future__ import annotations

#: Raised when a family that was written for the version before would no longer work.
API = "1"

#: The name in a family's module: ``speclint_api = "1"``.
STATED = "speclint_api"


def fault_of_interface(family: str, module: object, value: str) -> str:
    """What is wrong with the version that a family states; nothing where it is this core's."""
    stated = getattr(module, STATED, None)
    if stated == API:
        return ""
    if stated is None:
        return f'family {family} does not say for which interface it is written: put {STATED} = "{API}" in {value}'
    return (
        f"family {family} is written for interface {stated!r} of families; this speclint has {API!r}: "
        "install a version of the family, or of speclint, that fits"
    )
