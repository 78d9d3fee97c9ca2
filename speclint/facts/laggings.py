"""What lagging takes from the part that it covers."""

from __future__ import annotations

from speclint.equations import Metres
from speclint.rules import Sheet
from speclint.specs import Lagging, SteamPipe


def inside_of_lagging(lagging: Lagging, sheet: Sheet) -> Metres:
    """Inside diameter of round lagging, m: the outside of the pipe under it, or what is stated where that is more.

    The larger of the two is the hotter outside and the greater loss.
    """
    part = sheet.follow(lagging.covers)
    sizes: list[float] = []
    if isinstance(part, SteamPipe) and sheet.is_stated("outside of the pipe", part.outside_diameter):
        sizes.append(sheet.take("D_p", part.outside_diameter))
    if not sizes or sheet.is_stated("inside", lagging.inside_diameter):
        sizes.append(sheet.take("d", lagging.inside_diameter))
    return max(sizes)
