"""The hazards that the trade knows of a part of a steam engine: a list by common practice, without a source."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal, TypeAlias

#: What can happen to a part in service.
Hazard = Literal[
    "burst",
    "leak",
    "loosen",
    "seize",
    "break under load",
    "break in fatigue",
    "foul",
    "burn",
    "fall",
    "corrode",
    "wear",
]

#: The hazards of a kind or of a rule, in the order of the list; None where it does not say.
Hazards: TypeAlias = tuple[Hazard, ...]

#: What each hazard means, in the order in which reports list them.
HAZARDS: Mapping[Hazard, str] = {
    "burst": "it gives way to the pressure of steam or water",
    "leak": "it lets steam, water, oil or air past",
    "loosen": "it loses its grip, its lock or its place",
    "seize": "it binds on what it moves in, for want of clearance or of oil",
    "break under load": "it bends, buckles, cracks or breaks under the greatest load",
    "break in fatigue": "it breaks under a load that comes back at every stroke, turn or jolt",
    "foul": "it strikes another part, or what stands beside the track",
    "burn": "it is hotter than its metal, seal or oil bears, or than a hand bears",
    "fall": "it, or a piece of it, falls on the track, into the engine or on a person",
    "corrode": "water, acid or another metal eats it away",
    "wear": "rubbing, hammering or fast steam takes its metal off",
}
