"""Whether the distribution of a family asks for another speclint than this.

Most families of a run come from speclint itself, and a start must stay quick: the lines about speclint are picked out
of the metadata as text, and only such a line is read as a requirement.
"""

from __future__ import annotations

import re
from functools import cache
from importlib.metadata import Distribution, version

_LINE = re.compile(r"^Requires-Dist:\s*(speclint(?![\w.-]).*)$", re.IGNORECASE | re.MULTILINE)
_NAME = re.compile(r"speclint(?![\w.-])", re.IGNORECASE)


def fault_of_requirement(family: str, distribution: Distribution | None) -> str:
    """The requirement that this speclint does not meet, in words; nothing where all are met."""
    for line in _asked(distribution) if distribution else ():
        if not _is_met(line, have := version("speclint")):
            return f'family {family} ({distribution.name}) asks for "{line}"; this is speclint {have}'  # type: ignore[union-attr]
    return ""


@cache  # several families may come in one distribution
def _asked(distribution: Distribution) -> tuple[str, ...]:
    text = distribution.read_text("METADATA")
    if text is None:  # an older form of metadata
        return tuple(line for line in distribution.requires or () if _NAME.match(line))
    head = text.partition("\n\n")[0]
    return tuple(found.strip() for found in _LINE.findall(head))


def _is_met(line: str, have: str) -> bool:
    from packaging.requirements import InvalidRequirement, Requirement

    try:
        asked = Requirement(line)
    except InvalidRequirement:
        return False
    wanted = asked.marker is None or asked.marker.evaluate({"extra": ""})
    return not wanted or asked.specifier.contains(have, prereleases=True)
