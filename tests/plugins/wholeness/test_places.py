"""Every place of an engine that lacks nothing: emptied, filled twice, filled by the wrong part, each told once."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Collection, Mapping, Sequence
from pathlib import Path

import pytest

from speclint import Grade
from speclint.checking import Assessment, Check, Unfinished, assess, check_component, still_to_be_drawn
from speclint.checking.inputs import Inputs, context_of
from speclint.errors import replace
from speclint.reports.phrases import said_of_item
from speclint.repository import Design, Register
from speclint.repository.reading import load_specs
from speclint.repository.unread import unread_files
from speclint.rules import Rule
from speclint.specs import Component, Spec
from speclint.testing import DesignFolder, changed, installed_families, without_key
from tests.plugins.wholeness.engine import BEATS, SERVES, SETTINGS, files

LOADED = installed_families()
#: Rules that ask what fills a place.
RULES: tuple[Rule, ...] = tuple(rule for rule in LOADED.rules if rule.row or rule.name == "tappet.count")
HOLD, NONCONFORMITY, OBSERVATION = Grade.HOLD, Grade.NONCONFORMITY, Grade.OBSERVATION
Told = dict[str, Grade | None]


class Whole:
    """The engine, loaded once, and what each of its checks consulted; files are changed without reading it again."""

    def __init__(self, folder: Path, stage: str) -> None:
        self.folder, self.files = folder, files()
        settings = SETTINGS.replace("for-review", stage)
        self.assessment = assess(
            [DesignFolder(folder).write(self.files, settings=settings).root], LOADED, RULES
        )
        assert self.assessment.design is not None
        assert not self.assessment.complaints
        self.design = self.assessment.design
        self.checks = list(self.assessment.checks)

    def told(self, changes: Mapping[str, str | None]) -> Told:
        """The rules that find something, of the checks that consulted what is changed; each with its grade."""
        return {one.rule.name: one.grade for one in self.of(changes) if one.outcome == "finding"}

    def of(self, changes: Mapping[str, str | None]) -> list[Check]:
        """The checks that may come out otherwise when files are written anew, or are there no longer (None)."""
        specs: dict[str, Spec] = dict(self.design.specs)
        touched = set(changes)
        for name, text in changes.items():
            old = specs.pop(name, None)
            touched |= {link.id for link in old.links()} if old else set()
            if text is not None:
                specs[name] = self._read(name, text)
                touched |= {link.id for link in specs[name].links()}
        design = Design(
            root=self.folder,
            settings=self.design.settings,
            specs=specs,
            files={name: f"{name}.toml" for name in specs},
            selected=frozenset(specs),
        )
        return self._checked(design, touched, set(changes))

    def unread(self, name: str) -> list[Check]:
        """The same of a file that cannot be read, but for what its text tells."""
        specs = {one: spec for one, spec in self.design.specs.items() if one != name}
        (told,) = unread_files(self.folder, [f"{name}.toml"], LOADED.kinds)
        design = replace(self.design, specs=specs, unread=(told,))
        touched = {name, *(link.id for link in self.design.specs[name].links())}
        return self._checked(design, touched, set())

    def _read(self, name: str, text: str) -> Spec:
        path = self.folder / "changed" / f"{name}.toml"
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, encoding="utf-8")
        (loaded,) = load_specs(path, f"{name}.toml", LOADED.kinds)
        assert loaded.spec is not None, loaded.complaints
        return loaded.spec

    def _checked(self, design: Design, touched: Collection[str], new: Collection[str]) -> list[Check]:
        context = context_of(Inputs(design, {}, {}, Register(""), dt.date.today()), LOADED)
        again = {(one.component, one.rule.name) for one in self.checks if one.consulted.ids & set(touched)}
        found: list[Check] = []
        for name, spec in design.specs.items():
            if isinstance(spec, Component):
                rules = [rule for rule in RULES if name in new or (name, rule.name) in again]
                found += check_component(spec, rules, context)
        assert [f"{one.rule.name}: {one.could_not_run}" for one in found if one.could_not_run] == []
        return found


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Whole:
    return Whole(tmp_path_factory.mktemp("whole"), "for-review")


def test_the_engine_lacks_nothing(whole: Whole) -> None:
    assert [one.says for one in whole.checks if one.outcome in ("finding", "not assessed")] == []
    assert len({one.rule.name for one in whole.checks if one.outcome == "conforms"}) > 40


@pytest.mark.parametrize("name", ["liner", "envelope", "lifting"])
def test_tables_that_are_stated_conform(whole: Whole, name: str) -> None:
    (found,) = (one for one in whole.checks if one.order == (name, "part.tables-stated"))
    assert found.outcome == "conforms"


@pytest.mark.parametrize("name", sorted(name.removesuffix(".toml") for name in files()))
def test_a_file_that_cannot_be_read_makes_no_finding(whole: Whole, name: str) -> None:
    """Also no wrong praise: whatever looked for it says which file could not be read."""
    checks = whole.unread(name)
    assert [one.says for one in checks if one.outcome == "finding"] == []


#: A part that is there no longer: the rules that say so, with their grades at for-review.
GONE: dict[str, Told] = {
    "engine": {"engine.blocks-named": NONCONFORMITY},
    "weldment": {"block.made-once": HOLD},
    "lifting": {"block.lifted-by-a-plan": OBSERVATION},
    "access": {"block.has-its-plans": OBSERVATION},
    "envelope": {"block.has-its-plans": OBSERVATION},
    "assembly": {"block.has-its-order": OBSERVATION},
    "lagging-block": {"block.lagged": OBSERVATION},
    "lagging-front": {"block.lagged": OBSERVATION},
    "lagging-pipe": {"pipe.lagged": OBSERVATION},
    "face": {"pad.one-cut-out": HOLD},
    "bolts-axle": {"pad.one-fastening": HOLD},
    "liner": {"bore.one-liner": HOLD},
    "casting": {"liner.has-its-casting": NONCONFORMITY},
    "piston": {"bore.one-piston": HOLD},
    "cover-front": {"end.one-cover": HOLD},
    "studs-cover-front": {"cover.one-joint": HOLD},
    "lid-inlet-back": {"valve.chamber-closed": HOLD},
    "studs-lid-inlet-back": {"cover.one-joint": HOLD},
    "studs-gland": {"cover.one-joint": HOLD},
    "seat-inlet-front-upper": {"seat-bore.one-seat": HOLD},
    "valve-exhaust-back": {"end.its-valves": HOLD},
    "pipe": {"opening.closed-once": HOLD},
    "rod": {"piston.one-rod": HOLD},
    "crosshead": {"rod.one-crosshead": HOLD},
    "box": {"rod.sealed-at-its-cover": HOLD},
    "gland": {"box.one-gland": HOLD},
    "bar": {"crosshead.guided": HOLD},
    "pin-crank": {"crosshead.its-pins": HOLD},
    "pin-crosshead": {"crosshead.its-pins": HOLD},
    "spindle-inlet-back": {"valve.one-spindle": HOLD},
    "spring-inlet-back": {"valve.has-springs": HOLD},
    "cage-inlet-back": {"retention.has-a-part": HOLD},
    "pocket-front": {"valve.on-its-path": NONCONFORMITY},
    "belt": {"valve.on-its-path": NONCONFORMITY},
    "tappet-inlet-front": {"spindle.driven": HOLD, "tappet.count": NONCONFORMITY},
    "cam-inlet-front": {"tappet.one-cam": HOLD},
    "valve-gear": {"cylinder.its-valve-gear": NONCONFORMITY},
    "cambox-front": {"end.its-cam-box": HOLD},
    "studs-cambox-front": {"box.fastened": HOLD},
    "fit-front": {"box.fastened": HOLD},
    "nozzle": {"path.leaves-its-valve": NONCONFORMITY},
    "breath": {"cylinder.breathing-way": NONCONFORMITY},
    "studs-flange-chest": {"pipe.joined-at-both-ends": HOLD},
    "partition": {"wall.partition-drawn": NONCONFORMITY},
}


@pytest.mark.parametrize(("name", "told"), GONE.items())
def test_a_part_that_is_gone_is_told_by_one_rule(whole: Whole, name: str, told: Told) -> None:
    assert whole.told({name: None}) == told


#: A part that is drawn again under another id: the rule that names both files.
TWICE: dict[str, str] = {
    "engine": "engine.blocks-named",
    "weldment": "block.made-once",
    "lifting": "block.lifted-by-a-plan",
    "access": "block.has-its-plans",
    "envelope": "block.has-its-plans",
    "assembly": "block.has-its-order",
    "lagging-front": "block.lagged",
    "lagging-pipe": "pipe.lagged",
    "face": "pad.one-cut-out",
    "bolts-axle": "pad.one-fastening",
    "liner": "bore.one-liner",
    "casting": "liner.has-its-casting",
    "piston": "bore.one-piston",
    "cover-front": "end.one-cover",
    "studs-cover-front": "cover.one-joint",
    "seat-inlet-front-upper": "seat-bore.one-seat",
    "pipe": "opening.closed-once",
    "rod": "piston.one-rod",
    "crosshead": "rod.one-crosshead",
    "box": "cover.box-in-its-hole",
    "gland": "box.one-gland",
    "lid-exhaust-front": "valve.chamber-closed",
    "pin-crank": "crosshead.its-pins",
    "spindle-inlet-back": "valve.one-spindle",
    "cage-inlet-back": "valve.one-cage",
    "spring-inlet-back": "valve.has-springs",
    "tappet-inlet-front": "spindle.driven",
    "cam-inlet-front": "tappet.one-cam",
    "valve-gear": "cylinder.its-valve-gear",
    "cambox-front": "end.its-cam-box",
    "studs-cambox-front": "box.fastened",
    "nozzle": "path.leaves-its-valve",
}
#: Of a part drawn twice the second lacks what the first has; only what its neighbours say is looked at.
FINE_TWICE = {"lagging-block", "breath", "partition"}


@pytest.mark.parametrize(("name", "rule"), TWICE.items())
def test_a_part_that_is_drawn_twice_is_told_with_both_files(whole: Whole, name: str, rule: str) -> None:
    checks = [one for one in whole.of({"second": whole.files[f"{name}.toml"]}) if one.component != "second"]
    told = [one for one in checks if one.outcome == "finding"]
    assert [one.rule.name for one in told] == [rule]
    assert "is filled twice" in told[0].says
    assert f"{name} ({name}.toml)" in told[0].says
    assert "second (second.toml)" in told[0].says


@pytest.mark.parametrize("name", sorted(FINE_TWICE))
def test_places_that_take_several(whole: Whole, name: str) -> None:
    assert whole.told({"second": whole.files[f"{name}.toml"]}) == {}


def line(file: str, old: str, new: str = "") -> Callable[[Whole], Mapping[str, str | None]]:
    """One passage of a file written otherwise."""
    return lambda whole: {file: changed(whole.files[f"{file}.toml"], (old, new))}


def tail_rod(whole: Whole) -> dict[str, str | None]:
    """A rod that goes on through the front cover, with a box and a gland there."""
    return {
        "rod": changed(whole.files["rod.toml"], ('"piston"', '"piston"\ntail_rod = true')),
        "cover-front": changed(whole.files["cover-front.toml"], ('"0 mm"', '"110 mm"')),
        "box-front": changed(
            whole.files["box.toml"], ("cover-back", "cover-front"), ("D-box", "D-box-front")
        ),
        "gland-front": changed(
            whole.files["gland.toml"], ('"box"', '"box-front"'), ("D-gland", "D-gland-front")
        ),
        "studs-gland-front": changed(
            whole.files["studs-gland.toml"],
            ('"gland"', '"gland-front"'),
            ("cover-back", "cover-front"),
            ("D-studs-gland", "D-studs-gland-front"),
        ),
    }


def two_drains(whole: Whole, second: str) -> dict[str, str | None]:
    """A block with two more openings that are blanked, the first by a plug of its own."""
    text = whole.files["block.toml"]
    for name, plug in (("drain", "plug"), ("oil", second)):
        text += f'[openings.{name}]\nblanked = true\nblanked_by = "{plug}"\n'
    text += "[notes]\ndrain = 'no longer wanted'\noil = 'no longer wanted'\n"
    drawn: dict[str, str | None] = {"block": text}
    for name in {"plug", second} - {"lid-inlet-back"}:
        drawn[name] = f'kind = "chamber-cover"\ndrawing = "D-{name}"\n'
        drawn[f"studs-{name}"] = changed(
            whole.files["studs-lid-inlet-back.toml"],
            ('"lid-inlet-back"', f'"{name}"'),
            ("D-studs-lid-inlet-back", f"D-studs-{name}"),
        )
    return drawn


#: A part in another's place, or a statement that is gone.
WRONG: dict[str, tuple[Callable[[Whole], Mapping[str, str | None]], Told]] = {
    "cast, and made by a weldment": (
        line("block", '"fabricated"', '"cast"'),
        {"block.made-once": HOLD},
    ),
    "a bore that turns two cranks": (
        line("engine", 'block = "block"', 'block = "block"\n[cranks.right]\nblock = "block"'),
        {"bore.one-crank": NONCONFORMITY, "crank.one-axle": HOLD},
    ),
    "a bore without a back end": (line("block", 'side = "back"'), {"bore.two-ends": HOLD}),
    "a cover of the other side": (
        line("cover-front", 'end = "front"\ncentral', 'end = "back"\ncentral'),
        {"end.one-cover": HOLD},
    ),
    "a cover on the other end": (
        line("cover-front", 'of_end = "front"', 'of_end = "back"'),
        {"end.one-cover": HOLD},
    ),
    "no port into an end": (
        line("block", '[ports.front]\nof_end = "front"'),
        {"end.has-ports": NONCONFORMITY},
    ),
    "a port that matches another": (
        line("liner", 'matches = "front"', 'matches = "back"'),
        {"port.one-opening": HOLD},
    ),
    "a seat in the bore of another": (
        line("seat-inlet-front-upper", 'in_bore = "inlet-front-upper"', 'in_bore = "inlet-front-lower"'),
        {"seat-bore.one-seat": HOLD},
    ),
    "two beats on one seat": (
        line("valve-inlet-front", "seat-inlet-front-lower", "seat-inlet-back-lower"),
        {"seat.one-beat": HOLD},
    ),
    "a beat without its seat": (
        line("valve-inlet-front", 'seat = "seat-inlet-front-lower"'),
        {"valve.has-its-seats": HOLD},
    ),
    "studs in another part": (
        line("studs-gland", 'screwed_into = "cover-back"', 'screwed_into = "block"'),
        {"cover.one-joint": HOLD},
    ),
    "studs in the part that they hold": (
        line("studs-cover-front", 'screwed_into = "block"', 'screwed_into = "cover-front"'),
        {"cover.one-joint": HOLD},
    ),
    "a cover bolted to another part": (
        line("studs-cover-front", 'screwed_into = "block"', 'bolted_to = "cover-back"'),
        {"cover.one-joint": HOLD},
    ),
    "a gland of a cover whose studs are in the block": (
        lambda whole: {
            "box": changed(whole.files["box.toml"], ('"rod"', '"rod"\npacking = "grooved bush"')),
            "gland": changed(whole.files["gland.toml"], ('of = "box"', 'of = "cover-back"')),
            "studs-gland": changed(
                whole.files["studs-gland.toml"], ('into = "cover-back"', 'into = "block"')
            ),
        },
        {"cover.one-joint": HOLD},
    ),
    "a cam box screwed to another part": (
        line("studs-cambox-front", 'screwed_into = "block"', 'screwed_into = "cover-front"'),
        {"box.fastened": HOLD},
    ),
    "a pipe of other steam": (line("pipe", '"live steam"', '"exhaust steam"'), {"opening.closed-once": HOLD}),
    "a division without its wall": (line("block", 'wall = "side"'), {"division.of-one-wall": HOLD}),
    "a division of one wall twice": (
        line("block", 'wall = "side"', 'wall = "side"\nother_wall = "side"'),
        {"division.of-one-wall": HOLD},
    ),
    "a wall without a weld": (line("weldment", 'wall = "side"'), {"weldment.walls-joined": HOLD}),
    "cavities not looked for": (line("weldment", "cavities_sought = true"), {"weldment.walls-joined": HOLD}),
    "an empty groove": (line("piston", 'takes = "ring"'), {"groove.one-ring": NONCONFORMITY}),
    "a box in a cover without a hole": (
        lambda whole: {
            name: changed(whole.files[f"{name}.toml"], ('"cover-back"', '"cover-front"'))
            for name in ("box", "studs-gland")
        },
        {"cover.box-in-its-hole": HOLD},
    ),
    "a passage of other steam": (
        line("belt", '"exhaust steam"', '"live steam"'),
        {"valve.on-its-path": NONCONFORMITY},
    ),
    "a path that begins in the middle": (
        line("chest", 'follows = "pipe"'),
        {"path.reaches-its-valve": NONCONFORMITY},
    ),
    "a spindle without a seal": (line("spindle-inlet-back", 'seal = "lip seal"'), {"spindle.sealed": HOLD}),
    "a cam without a law": (line("cam-inlet-back", 'law = "cycloidal"'), {"tappet.one-cam": HOLD}),
    "a cam on no shaft": (line("cam-inlet-back", 'turns_on = "shaft-back"'), {"cam.on-one-shaft": HOLD}),
    "a cam on another shaft": (line("cam-inlet-back", "shaft-back", "shaft-front"), {"box.has-shaft": HOLD}),
    "a joint without a seal": (line("studs-gland", 'seal = "ground face"'), {"joint.whole": HOLD}),
    "a lens joint without its ring": (line("studs-gland", "ground face", "lens ring"), {"joint.whole": HOLD}),
    "a clearance that no chain closes": (
        line("tappet-inlet-back", 'kind = "tappet"', 'kind = "tappet"\nclearance = "0.85 mm"'),
        {"part.its-chain-or-fit": NONCONFORMITY},
    ),
    "no nozzle": (line("engine", 'nozzle = "nozzle"'), {"engine.exhaust-ends-in-nozzle": NONCONFORMITY}),
    "an axle that no crank turns": (line("axle", 'driven_by = ["left"]'), {"crank.one-axle": HOLD}),
    "no test": (line("duty", "[cases.test]"), {"duty.cases-there": HOLD}),
    "no warming": (line("duty", "[cases.warming]"), {"duty.other-cases": NONCONFORMITY}),
    "a liner without lands": (line("liner", "[lands.one]"), {"part.tables-stated": NONCONFORMITY}),
    "an envelope without points": (
        line("envelope", "[points.corner]"),
        {"part.tables-stated": NONCONFORMITY},
    ),
    "a ring bought by a word": (
        line("ring", 'runs_in = "liner"', 'runs_in = "liner"\nsupplied_as = "bought"'),
        {"release.bought-part-described": OBSERVATION},
    ),
    "a third bar": (
        lambda whole: dict.fromkeys(("bar-2", "bar-3"), whole.files["bar.toml"]),
        {"crosshead.guided": HOLD},
    ),
    "a cover over the seat bore of a chamber that has one": (
        lambda whole: {
            "lid-2": changed(
                whole.files["lid-inlet-back.toml"],
                ('over = "valve-inlet-back"', 'seat_bore = "inlet-back-upper"'),
                ("D-lid-inlet-back", "D-lid-2"),
            ),
            "studs-lid-2": changed(whole.files["studs-lid-inlet-back.toml"], ('"lid-inlet-back"', '"lid-2"')),
        },
        {"valve.chamber-closed": HOLD},
    ),
    "a bar of two that share": (
        lambda whole: {"bar": changed(whole.files["bar.toml"], ("bars_sharing = 1", "bars_sharing = 2"))},
        {"crosshead.guided": HOLD},
    ),
    "a ring in no groove": (
        lambda whole: {"ring-2": whole.files["ring.toml"]},
        {"groove.one-ring": NONCONFORMITY},
    ),
    "two springs in one": (
        lambda whole: {
            name: without_key(whole.files["spring-inlet-back.toml"], "drawing")
            + 'nested_in = "spring-inlet-back"\n'
            for name in ("inner", "other")
        },
        {"valve.has-springs": HOLD},
    ),
    "a gland of the box and one of its cover": (
        lambda whole: {
            "gland-2": changed(
                whole.files["gland.toml"], ('"box"', '"cover-back"'), ("D-gland", "D-gland-2")
            ),
            "studs-gland-2": changed(
                whole.files["studs-gland.toml"],
                ('"gland"', '"gland-2"'),
                ("D-studs-gland", "D-studs-gland-2"),
            ),
        },
        {"box.one-gland": HOLD},
    ),
    "two glands on a grooved bush": (
        lambda whole: {
            "box": whole.files["box.toml"] + 'packing = "grooved bush"\n',
            "gland-2": changed(whole.files["gland.toml"], ("D-gland", "D-gland-2")),
            "studs-gland-2": changed(
                whole.files["studs-gland.toml"],
                ('"gland"', '"gland-2"'),
                ("D-studs-gland", "D-studs-gland-2"),
            ),
        },
        {"box.one-gland": HOLD},
    ),
    "two bars, of which one says that two share the thrust": (
        lambda whole: {
            "bar-2": changed(whole.files["bar.toml"], ("sharing = 1", "sharing = 2"), ("D-bar", "D-bar-2"))
        },
        {"crosshead.guided": HOLD},
    ),
    "cavities that are said not to have been looked for": (
        line("weldment", "cavities_sought = true", "cavities_sought = false"),
        {"weldment.walls-joined": HOLD},
    ),
    "a flange that its studs hold on itself": (
        line("studs-flange-chest", 'screwed_into = "block"', 'screwed_into = "flange-chest"'),
        {"joint.whole": HOLD},
    ),
    "one plug for two openings": (lambda whole: two_drains(whole, "plug"), {"opening.closed-once": HOLD}),
    "an end whose only port is blanked": (
        lambda whole: {
            "block": changed(
                whole.files["block.toml"],
                ("[ports.front]\n", '[ports.front]\nblanked = true\nblanked_by = "plug"\n'),
            )
            + "[notes]\nfront = 'closed for a trial'\n",
            "plug": 'kind = "retaining-ring"\ndrawing = "D-plug"\n',
            "liner": changed(whole.files["liner.toml"], ('[ports.front]\nmatches = "front"\n', "")),
        },
        {"end.has-ports": NONCONFORMITY},
    ),
    "an inner spring in the spring of another valve": (
        lambda whole: {
            "inner": changed(whole.files["spring-inlet-back.toml"], ("D-spring-inlet-back", "D-inner"))
            + 'nested_in = "spring-inlet-front"\n'
        },
        {"valve.has-springs": HOLD},
    ),
    "both joints of a pipe at one flange": (
        line("studs-flange-chest", 'holds = "flange-chest"', 'holds = "flange-boiler"'),
        {"pipe.joined-at-both-ends": HOLD},
    ),
    "a joint of a pipe in a part that it does not meet": (
        line("studs-flange-chest", 'screwed_into = "block"', 'screwed_into = "nozzle"'),
        {"pipe.joined-at-both-ends": HOLD},
    ),
    "both joints of a pipe in the one block at its end": (
        line("studs-flange-boiler", 'screwed_into = "header"', 'screwed_into = "block"'),
        {"pipe.joined-at-both-ends": HOLD},
    ),
    "a partition between two live passages": (
        line("partition", 'exhaust_side = "belt"', 'exhaust_side = "pocket-front"'),
        {"wall.partition-drawn": NONCONFORMITY},
    ),
    "valves that lift at one end alone": (
        lambda whole: (
            {"breath": None}
            | {
                f"valve-{one}-front": changed(
                    whole.files[f"valve-{one}-front.toml"], ("beats = 2", "beats = 2\nlifts_drifting = true")
                )
                for one in SERVES
            }
        ),
        {"cylinder.breathing-way": NONCONFORMITY},
    ),
    "a hole in the front cover and no tail rod": (
        line("cover-front", '"0 mm"', '"110 mm"'),
        {"cover.box-in-its-hole": HOLD},
    ),
    "a tail rod without its box": (
        line("rod", 'carries = "piston"', 'carries = "piston"\ntail_rod = true'),
        {"rod.sealed-at-its-cover": HOLD},
    ),
    "a box in the front cover without a tail rod": (
        lambda whole: tail_rod(whole) | {"rod": whole.files["rod.toml"]},
        {"rod.sealed-at-its-cover": HOLD},
    ),
}


@pytest.mark.parametrize(("changes", "told"), WRONG.values(), ids=WRONG.keys())
def test_a_place_filled_by_the_wrong_part_is_told_by_one_rule(
    whole: Whole, changes: Callable[[Whole], Mapping[str, str | None]], told: Told
) -> None:
    assert whole.told(changes(whole)) == told


def test_a_lid_that_closes_another_block_is_told(whole: Whole) -> None:
    """The other block, which lacks everything else, is told of by its own rules."""
    lid, studs = (whole.files[f"{name}.toml"] for name in ("lid-inlet-back", "studs-lid-inlet-back"))
    told = whole.told(
        {
            "block-2": 'kind = "cylinder-block"\n',
            "lid-inlet-back": changed(lid, ('"block"', '"block-2"')),
            "studs-lid-inlet-back": changed(studs, ('"block"', '"block-2"')),
        }
    )
    assert told["valve.chamber-closed"] is HOLD


#: Other ways in which a sound design may be drawn.
SOUND: dict[str, Callable[[Whole], Mapping[str, str | None]]] = {
    "a gland that names the cover of its box": line("gland", 'of = "box"', 'of = "cover-back"'),
    "a bar above and two below": lambda whole: {
        name: changed(whole.files["bar.toml"], ("sharing = 1", "sharing = 2"), ("D-bar", f"D-{name}"))
        for name in ("bar-2", "bar-3")
    },
    "two openings with a plug each": lambda whole: two_drains(whole, "plug-2"),
    "a nest of two springs": lambda whole: {
        "inner": changed(whole.files["spring-inlet-back.toml"], ("D-spring-inlet-back", "D-inner"))
        + 'nested_in = "spring-inlet-back"\n'
    },
    "no breathing way, and exhaust valves that lift": lambda whole: {
        "breath": None,
        **{
            f"valve-exhaust-{end}": changed(
                whole.files[f"valve-exhaust-{end}.toml"], ("beats = 2", "beats = 2\nlifts_drifting = true")
            )
            for end in ("front", "back")
        },
    },
    "a tail rod with its box": tail_rod,
}


@pytest.mark.parametrize("changes", SOUND.values(), ids=SOUND.keys())
def test_a_sound_design_drawn_otherwise_has_no_finding(
    whole: Whole, changes: Callable[[Whole], Mapping[str, str | None]]
) -> None:
    assert whole.told(changes(whole)) == {}


def test_every_rule_of_places_is_told_once_at_least() -> None:
    """The parts of the table above reach every rule."""
    told = {name for one in GONE.values() for name in one} | set(TWICE.values())
    told |= {name for _, one in WRONG.values() for name in one}
    assert {rule.name for rule in RULES} - told == set()


CLOSED = 'blanked = true\nblanked_by = "pipe"\n'


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            f"{CLOSED}[notes]\nchest = 'no superheater so far'\n",
            {"opening.closed-once": HOLD},
        ),  # the pipe is in it
        (f"{CLOSED}", {"opening.closed-once": HOLD}),
    ],
)
def test_a_place_closed_on_purpose_takes_nothing(whole: Whole, text: str, told: Told) -> None:
    block = changed(
        whole.files["block.toml"], ("[openings.chest]\n", f"[openings.chest]\n{text.split('[notes]')[0]}")
    )
    notes = f"[notes]{text.split('[notes]')[1]}" if "[notes]" in text else ""
    assert whole.told({"block": block + notes}) == told


@pytest.mark.parametrize(
    ("lines", "notes", "told"),
    [
        (CLOSED, "[notes]\nrelief = 'no third valve'\n", {}),
        (CLOSED, "", {"opening.closed-once": HOLD}),  # no reason is given
        (CLOSED, "[notes]\nrelief = ' '\n", {"opening.closed-once": HOLD}),
        (
            "blanked = true\n",
            "[notes]\nrelief = 'no third valve'\n",
            {"opening.closed-once": HOLD},
        ),  # nothing closes it
        ("blanked = false\n", "", {"opening.closed-once": HOLD}),  # nothing is in it
    ],
)
def test_a_place_is_closed_by_a_plug_with_a_reason(whole: Whole, lines: str, notes: str, told: Told) -> None:
    block = f"{whole.files['block.toml']}[openings.relief]\n{lines}{notes}"
    assert whole.told({"block": block}) == told


def test_a_place_is_named_once_in_a_line(whole: Whole) -> None:
    """Of two empty places; an inlet valve is told from an exhaust valve, and takes the article of its vowel."""
    checks = whole.of({"valve-inlet-front": None, "valve-exhaust-front": None, "valve-inlet-back": None})
    (check,) = (one for one in checks if one.rule.name == "end.its-valves")
    lines = [check.says, *map(said_of_item, check.also_failing)]
    assert lines == [
        f"end {end} wants an {serves} valve: none is there"
        for end, serves in (("front", "inlet"), ("front", "exhaust"), ("back", "inlet"))
    ]


def test_a_gland_may_be_screwed_to_its_box(whole: Whole) -> None:
    studs = changed(whole.files["studs-gland.toml"], ('into = "cover-back"', 'into = "box"'))
    assert whole.told({"studs-gland": studs}) == {}


def test_an_unlined_bore_takes_rings(whole: Whole) -> None:
    block = changed(whole.files["block.toml"], ("[bores.main]", "[bores.main]\nlined = false"))
    assert whole.told({"block": block, "liner": None, "piston": None, "ring": None}) == {
        "bore.one-liner": HOLD
    }
    ring = changed(whole.files["ring.toml"], ('runs_in = "liner"', 'bears_on = "block"'))
    drawn = [one for one in whole.of({"block": block, "ring": ring}) if one.rule.name == "bore.one-liner"]
    assert [one.grade for one in drawn] == [HOLD]
    assert "it is unlined, and liner (liner.toml) is drawn for it" in drawn[0].says
    assert whole.told({"block": block, "liner": None, "piston": None, "ring": ring}) == {}


def draft(folder: Path, *gone: str, rules: Sequence[Rule] = RULES) -> Assessment:
    kept = {name: text for name, text in files().items() if name.removesuffix(".toml") not in gone}
    design = DesignFolder(folder).write(kept, settings=SETTINGS.replace("for-review", "draft"))
    return assess([design.root], LOADED, rules)


def of_block(assessment: Assessment) -> Unfinished:
    (found,) = (one for one in still_to_be_drawn(assessment) if one.under == "block")
    return found


def test_a_draft_gives_one_list_and_no_finding(tmp_path: Path) -> None:
    """Places of the block and its parts, in the order of the table."""
    assessment = draft(tmp_path, "bar", "pin-crank", "lagging-pipe")
    assert [one.says for one in assessment.checks if one.outcome == "finding"] == []
    one = of_block(assessment)
    assert [place.called for place in one.to_draw] == [
        "slide bar (crosshead)",
        "crank pin (crosshead)",
        "lagging (pipe)",
    ]
    assert one.places - one.filled == 3
    assert one.says.startswith(
        f"block: {one.places} places, {one.filled} filled, 3 to be drawn: slide bar (crosshead)"
    )
    waiting = [
        check
        for check in assessment.checks
        if "a draft: 1 still to be drawn, listed under block" in check.says
    ]
    assert {check.outcome for check in waiting} == {"not applicable"}
    assert len(waiting) == 3


def test_values_not_stated_join_the_list(tmp_path: Path) -> None:
    of_motion = tuple(rule for rule in LOADED.rules if rule.name == "rod.finish")
    one = of_block(draft(tmp_path, rules=of_motion))
    assert one.to_draw == ()
    stated = dict(one.to_state)
    assert stated == {"rod": ("roughness",)}
    assert one.values == sum(len(keys) for keys in stated.values())


def test_temperatures_are_asked_for_once_in_a_list_of_the_duty(tmp_path: Path) -> None:
    """All parts of the engine see one duty: of each kind it is asked for one temperature in each load case."""
    of_metal = tuple(rule for rule in LOADED.rules if rule.name == "pairing.lubricant")
    lists = {one.under: one for one in still_to_be_drawn(draft(tmp_path, rules=of_metal))}
    assert all("duty" not in dict(one.to_state) for name, one in lists.items() if name != "duty")
    asked = [key for key in dict(lists["duty"].to_state)["duty"] if ".temperatures." in key]
    assert asked == sorted(set(asked))
    kinds = {key.rpartition(".")[2] for key in asked}
    assert kinds
    assert kinds <= set(LOADED.kinds)


def test_a_later_stage_has_no_list(whole: Whole) -> None:
    assert still_to_be_drawn(whole.assessment) == ()


@pytest.mark.parametrize(
    ("name", "for_review", "released"),
    [
        ("bar", HOLD, HOLD),
        ("breath", NONCONFORMITY, NONCONFORMITY),
        ("envelope", OBSERVATION, NONCONFORMITY),
        ("lifting", OBSERVATION, HOLD),
    ],
)
def test_an_empty_place_is_graded_by_stage(
    whole: Whole, released_whole: Whole, name: str, for_review: Grade, released: Grade
) -> None:
    assert list(whole.told({name: None}).values()) == [for_review]
    assert list(released_whole.told({name: None}).values()) == [released]


@pytest.fixture(scope="module")
def released_whole(tmp_path_factory: pytest.TempPathFactory) -> Whole:
    return Whole(tmp_path_factory.mktemp("released"), "released")


def test_what_is_drawn_twice_is_told_in_a_draft(tmp_path: Path) -> None:
    draft(tmp_path, rules=())
    (tmp_path / "second.toml").write_text(files()["piston.toml"], encoding="utf-8")
    assert DesignFolder(tmp_path).only("bore.one-piston").grade is HOLD


def said_of(whole: Whole, changes: Mapping[str, str | None], part: str, rule: str) -> str:
    """What the check of a part by one rule finds; empty where it finds nothing."""
    (check,) = (one for one in whole.of(changes) if (one.component, one.rule.name) == (part, rule))
    return check.says if check.outcome == "finding" else ""


OTHER_BLOCK = 'kind = "cylinder-block"\nid = "other"\n'


def test_a_plan_for_the_welds_of_another_block_is_told(whole: Whole) -> None:
    access = changed(whole.files["access.toml"], ('weldment = "weldment"', 'weldment = "welds"'))
    welds = 'kind = "weldment"\nid = "welds"\nmakes = "other"\n'
    changes = {"other": OTHER_BLOCK, "welds": welds, "access": access}
    said = said_of(whole, changes, "block", "block.has-its-plans")
    assert "access shows the welds of welds, which makes other" in said


def test_a_box_in_a_cover_of_another_block_is_told(whole: Whole) -> None:
    cover = 'kind = "cylinder-cover"\nid = "far"\ncloses = "other"\nend = "back"\n'
    box = changed(whole.files["box.toml"], ('in_cover = "cover-back"', 'in_cover = "far"'))
    changes = {"other": OTHER_BLOCK, "far": cover, "box": box}
    said = said_of(whole, changes, "rod", "rod.sealed-at-its-cover")
    assert "box is in far of other, and the rod works in block" in said


def test_a_rod_in_both_covers_has_a_box_too_many(whole: Whole) -> None:
    """Two boxes in one cover stand behind each other; one in each cover is one more than the rod has places for."""
    second = whole.files["box.toml"]
    rule = "rod.sealed-at-its-cover"
    assert said_of(whole, {"second": second}, "rod", rule) == ""
    in_front = changed(second, ('in_cover = "cover-back"', 'in_cover = "cover-front"'))
    assert "second" in said_of(whole, {"second": in_front}, "rod", rule)


def test_an_end_without_valves_asks_for_no_cam_box(whole: Whole) -> None:
    names = [name.removesuffix(".toml") for name in whole.files]
    gone: dict[str, str | None] = {name: None for name in names if name.startswith(("valve-", "cambox-"))}
    front = {name: text for name, text in gone.items() if "front" in name}
    block = whole.files["block.toml"]
    for bore in (f"{serves}-front-{beat}" for serves in SERVES for beat in BEATS):
        block = changed(block, (f'[seat_bores.{bore}]\nend = "front"\n', f"[seat_bores.{bore}]\n"))
    rule = "end.its-cam-box"
    assert said_of(whole, {**front, "block": block}, "block", rule) == ""
    assert "end front" in said_of(whole, {"cambox-front": None}, "block", rule)


def test_a_valve_of_one_beat_asks_for_one_seat(whole: Whole) -> None:
    text = whole.files["valve-inlet-front.toml"]
    single = changed(text, ("beats = 2", "beats = 1"), ('seat = "seat-inlet-front-lower"', ""))
    rule = "valve.has-its-seats"
    assert said_of(whole, {"valve-inlet-front": single}, "valve-inlet-front", rule) == ""
    double = changed(single, ("beats = 1", "beats = 2"))
    assert "lower beat" in said_of(whole, {"valve-inlet-front": double}, "valve-inlet-front", rule)


def test_a_joint_that_holds_a_lens_ring_has_it(whole: Whole) -> None:
    studs = whole.files["studs-flange-boiler.toml"]
    lens = changed(studs, ('seal = "ground face"', 'seal = "lens ring"'))
    assert "lens" in said_of(whole, {"studs-flange-boiler": lens}, "studs-flange-boiler", "joint.whole")
    held = changed(lens, ('holds = "flange-boiler"', 'holds = "lens"'))
    ring = 'kind = "lens-joint"\nid = "lens"\n'
    changes = {"studs-flange-boiler": held, "lens": ring}
    assert said_of(whole, changes, "studs-flange-boiler", "joint.whole") == ""
