"""The first specs of a new design: an engine, its cylinder block and the parts in it, as blanks that are linked."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping

from msgspec import Struct, field

from speclint.errors import SettingsError
from speclint.specs import Spec, template_of

#: The cylinders that an engine may have, by how many: from left to right, as seen forwards.
CYLINDERS: Mapping[int, tuple[str, ...]] = {
    1: ("middle",),
    2: ("left", "right"),
    3: ("left", "middle", "right"),
    4: ("outside-left", "inside-left", "inside-right", "outside-right"),
}
#: How the cylinders are carried: each in a block of its own, or all in one block.
LAYOUTS = ("separate", "one-block")
DUTY = "duty-main-line"

_ENDS = ("front", "back")
_FLOWS = ("inlet", "exhaust")
_BEATS = ("upper", "lower")

#: What is written without the mark # in a blank: a text, or a list of texts.
Stated = Mapping[str, "str | list[str]"]


class Blank(Struct, frozen=True):
    """A spec to be filled in: what is stated already, and the tables that are, each by the names of its entries."""

    file: str
    kind: str
    stated: Stated
    tables: Mapping[str, Mapping[str, Stated]] = field(default_factory=dict)
    each: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    def text(self, kind: type[Spec]) -> str:
        """The blank of its kind with all that, as TOML."""
        text = template_of(kind)
        for key, value in self.stated.items():
            text = _with_key(text, key, f"{key} = {_toml(value)}")
        for table, entries in self.tables.items():
            text = _with_table(text, table, entries)
        if listed := self._listed():
            return re.sub(r"^(id = .*)$", lambda found: f"{found[1]}\n{listed}", text, count=1, flags=re.M)
        return text

    def _listed(self) -> str:
        """For which names it stands, on a line below the id: a table at its end would take what is written after it."""
        if "each" in self.each:  # the one word of a blank that has no other
            return f"each = {_toml(list(self.each['each']))}"
        lists = ", ".join(f"{word} = {_toml(list(names))}" for word, names in self.each.items())
        return f"each = {{ {lists} }}" if lists else ""


def _toml(value: str | list[str]) -> str:
    return json.dumps(value)


def _with_key(text: str, key: str, line: str) -> str:
    """A blank in which a key outside of all tables is stated."""
    return _once(rf"^#?{re.escape(key)} = .*$", line, text, key)


def _with_table(text: str, table: str, entries: Mapping[str, Stated]) -> str:
    """A blank that states some entries of a table: what may be stated of each stands after the last."""
    heads = []
    for name, stated in entries.items():
        lines = [f"[{table}.{name}]", *(f"{key} = {_toml(value)}" for key, value in stated.items())]
        heads.append("\n".join(lines))
    text = _once(rf"^#\[{re.escape(table)}\.[^\].]+\]$", "\n\n".join(heads), text, table)
    last = list(entries)[-1]
    for key in entries[last]:
        at = text.index(f"[{table}.{last}]")
        start = text.index("\n\n", at)
        text = text[:start] + re.sub(rf"\n\n(?:# .*\n)+#{re.escape(key)} = .*", "", text[start:], count=1)
    return re.sub(rf"^#\[{re.escape(table)}\.first\.", f"#[{table}.{last}.", text, flags=re.M)


def _once(pattern: str, line: str, text: str, key: str) -> str:
    found, count = re.subn(pattern, lambda _: line, text, count=1, flags=re.M)
    if not count:
        raise LookupError(f"the blank has no {key}")
    return found


def first_design(cylinders: int, layout: str) -> tuple[Blank, ...]:
    """The blanks of a first design, in the order in which they are filled in.

    :raises SettingsError: for a number of cylinders that no engine here has, and a layout that is none.
    """
    if cylinders not in CYLINDERS:
        raise SettingsError(f"an engine has from 1 to {max(CYLINDERS)} cylinders here, and not {cylinders}")
    if layout not in LAYOUTS:
        raise SettingsError(f"the layout is {' or '.join(LAYOUTS)}, and not {layout}")
    names = CYLINDERS[cylinders]
    place = _OneBlock(names) if layout == "one-block" else _Separate(names)
    return (place.engine(), place.block(), *_of_each_cylinder(names, place), *_of_each_valve(names, place))


class _Separate:
    """Each cylinder in a block of its own, whose bore is called main."""

    def __init__(self, names: tuple[str, ...]) -> None:
        self.names = names

    #: Of the part that stands for ``{cylinder}``: the block, the bore in it, an end and a seat bore.
    block_of, bore_of, end_of, seat_of = "block-{cylinder}", "main", "{end}", "{flow}-{end}-{beat}"

    def engine(self) -> Blank:
        """The engine, with a crank for each cylinder."""
        cranks = {name: {"block": self.of(self.block_of, name), **self._bore(name)} for name in self.names}
        stated = {"id": "engine", "title": "Engine"}
        return Blank("engines/engine.toml", "engine", stated, {"cranks": cranks})

    def block(self) -> Blank:
        """The blocks, each with its bore, its ends and the bores of its valve seats."""
        stated = {"id": "block-{each}", "title": "Cylinder block, {each}", "duty": DUTY}
        return Blank("blocks/block.toml", "cylinder-block", stated, self.tables(), {"each": self.names})

    def tables(self) -> dict[str, dict[str, Stated]]:
        """The tables of a block."""
        return {
            "bores": {"main": {}},
            "seat_bores": dict(self._seats("")),
            "ends": {end: {"of_bore": "main", "side": end} for end in _ENDS},
        }

    def of(self, pattern: str, name: str, **others: str) -> str:
        """A pattern with the name of a cylinder put in."""
        for word, said in {"cylinder": name, **others}.items():
            pattern = pattern.replace(f"{{{word}}}", said)
        return pattern

    def _bore(self, _: str) -> Stated:
        return {}

    def _seats(self, name: str) -> Iterator[tuple[str, Stated]]:
        for flow in _FLOWS:
            for end in _ENDS:
                for beat in _BEATS:
                    seat = self.of(self.seat_of, name, flow=flow, end=end, beat=beat)
                    yield seat, {"end": self.of(self.end_of, name, end=end), "serves": flow, "beat": beat}


class _OneBlock(_Separate):
    """All cylinders in one block, whose bores and ends are called after them."""

    block_of, bore_of, end_of, seat_of = (
        "block",
        "{cylinder}",
        "{end}-{cylinder}",
        "{flow}-{cylinder}-{end}-{beat}",
    )

    def block(self) -> Blank:
        """The block, with the bores, ends and bores of valve seats of every cylinder."""
        stated = {"id": "block", "title": "Cylinder block", "duty": DUTY}
        return Blank("blocks/block.toml", "cylinder-block", stated, self.tables())

    def tables(self) -> dict[str, dict[str, Stated]]:
        """The tables of the block."""
        ends = [(f"{end}-{name}", name, end) for name in self.names for end in _ENDS]
        return {
            "bores": {name: {} for name in self.names},
            "seat_bores": {seat: said for name in self.names for seat, said in self._seats(name)},
            "ends": {key: {"of_bore": name, "side": end} for key, name, end in ends},
        }

    def _bore(self, name: str) -> Stated:
        return {"bore": name}


def _of_each_cylinder(names: tuple[str, ...], place: _Separate) -> Iterator[Blank]:
    """Liner, piston with its rings, rod, covers and what seals them, of each cylinder."""
    once = {"each": names}
    ends = {"cylinder": names, "end": _ENDS}
    block, bore = (one.replace("{cylinder}", "{each}") for one in (place.block_of, place.bore_of))
    liner = {"id": "liner-{each}", "title": "Cylinder liner, {each}", "housed_in": block, "in_bore": bore}
    yield Blank("liners/liner.toml", "cylinder-liner", liner, each=once)
    piston = {"id": "piston-{each}", "title": "Piston, {each}", "runs_in": "liner-{each}"}
    grooves = {groove: {"takes": f"ring-{{each}}-{groove}"} for groove in _ENDS}
    yield Blank("motion/piston.toml", "piston", piston, {"grooves": grooves}, once)
    ring = {"id": "ring-{cylinder}-{groove}", "title": "Piston ring, {cylinder}, {groove} groove"}
    ring |= {"runs_in": "liner-{cylinder}", "place": "{groove}"}
    yield Blank("rings/ring.toml", "piston-ring", ring, each={"cylinder": names, "groove": _ENDS})
    rod = {"id": "rod-{each}", "title": "Piston rod, {each}", "carries": "piston-{each}"}
    yield Blank("motion/rod.toml", "piston-rod", rod, each=once)
    box = {"id": "box-{each}", "title": "Stuffing box, {each}", "seals": "rod-{each}"}
    yield Blank("motion/box.toml", "stuffing-box", box | {"in_cover": "cover-{each}-back"}, each=once)
    cover = {"id": "cover-{cylinder}-{end}", "title": "Cylinder cover, {cylinder} {end}"}
    cover |= {"closes": place.block_of, "of_end": place.end_of}
    yield Blank("covers/cover.toml", "cylinder-cover", cover, each=ends)
    studs = {"id": "studs-{cylinder}-{end}", "title": "Studs of the cover, {cylinder} {end}"}
    studs |= {"holds": "cover-{cylinder}-{end}", "screwed_into": place.block_of}
    yield Blank("joints/studs-cover.toml", "bolted-joint", studs, each=ends)


def _of_each_valve(names: tuple[str, ...], place: _Separate) -> Iterator[Blank]:
    """The double-beat valves, one for inlet and one for exhaust at each end, with their seats, spindles and springs."""
    each = {"flow": _FLOWS, "cylinder": names, "end": _ENDS}
    one = "{flow}-{cylinder}-{end}"
    seat = {"id": f"seat-{one}-{{beat}}", "title": "Seat of the {flow} valve, {cylinder} {end}, {beat}"}
    seat |= {"pressed_into": place.block_of, "in_bore": place.seat_of}
    yield Blank("seats/seat.toml", "valve-seat", seat, each={**each, "beat": _BEATS})
    valve = {"id": f"valve-{one}", "title": "The {flow} valve, {cylinder} {end}", "serves": "{flow}"}
    beats = {f"{beat}_beat": f"seat-{one}-{beat}" for beat in _BEATS}
    yield ValveBlank("valves/valve.toml", "poppet-valve", valve, each=each, seats=beats)
    spindle = {"id": f"spindle-{one}", "title": "Spindle of the {flow} valve, {cylinder} {end}"}
    yield Blank("spindles/spindle.toml", "valve-spindle", spindle | {"moves": f"valve-{one}"}, each=each)
    spring = {"id": f"spring-{one}", "title": "Spring of the {flow} valve, {cylinder} {end}"}
    yield Blank("springs/spring.toml", "compression-spring", spring | {"closes": f"valve-{one}"}, each=each)


class ValveBlank(Blank, frozen=True):
    """The blank of a valve, with the seat on which each beat sits."""

    seats: Mapping[str, str] = field(default_factory=dict)

    def text(self, kind: type[Spec]) -> str:
        """The blank of its kind with all that, as TOML."""
        text = super().text(kind)
        for table, seat in self.seats.items():
            at = text.index(f"#[{table}]")
            stated = _with_key(text[at:], "seat", f"seat = {_toml(seat)}")
            text = text[:at] + stated.replace(f"#[{table}]", f"[{table}]", 1)
        return text
