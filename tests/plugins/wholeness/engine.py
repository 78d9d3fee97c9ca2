"""A small engine that lacks nothing: one block with one cylinder, every part that its places want, and no sizes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from speclint.testing import DesignFolder

SETTINGS = '[works]\nstage = "for-review"\n[local_codes]\npressure = ["a code"]\nrailway = ["a code"]\n'
ENDS, SERVES, BEATS = ("front", "back"), ("inlet", "exhaust"), ("upper", "lower")


def files() -> dict[str, str]:
    """Every file of the engine by its name; each id is that of its file."""
    return {
        f"{name}.toml": f"{text}\n"
        for name, text in (*_frame(), *_cylinder(), *_motion(), *_gear(), *_steam())
    }


def told(
    workshop: DesignFolder, parts: Mapping[str, str], rule: str, part: str, stage: str = "for-review"
) -> str:
    """What the check of a part by a rule says of some parts, each written by its id; "" where it conforms.

    The outcome stands in front of the words of a check that neither finds anything nor conforms.
    """
    written = {f"{name}.toml": f'id = "{name}"\n{text}\n' for name, text in parts.items() if text}
    design = workshop.write(written, settings=SETTINGS.replace("for-review", stage))
    check = design.only(rule, part)
    if check.outcome == "finding":
        return check.says
    return "" if check.outcome == "conforms" else f"{check.outcome}: {check.says}"


def spec(name: str, kind: str, *lines: str) -> tuple[str, str]:
    return name, "\n".join((f'kind = "{kind}"', f'drawing = "D-{name}"', 'revision = "A"', *lines))


def _frame() -> Iterator[tuple[str, str]]:
    yield spec("engine", "engine", 'nozzle = "nozzle"', "[cranks.left]", 'block = "block"')
    yield spec("axle", "driving-axle", 'engine = "engine"', 'driven_by = ["left"]')
    yield "duty", 'kind = "duty"\n' + "\n".join(f"[cases.{case}]" for case in _CASES)
    yield spec("block", "cylinder-block", 'duty = "duty"', 'construction = "fabricated"', *_block_tables())
    yield spec(
        "weldment",
        "weldment",
        'makes = "block"',
        "cavities_sought = true",
        "[plates.side]",
        "[walls.side]",
        'plate = "side"',
        "[joints.seam]",
        'wall = "side"',
    )
    yield spec("lifting", "lifting-plan", 'lifts = "block"', *_WEIGHTS, "[points.front]")
    yield spec("access", "access-plan", 'serves = "block"', 'weldment = "weldment"')
    yield spec("envelope", "envelope", 'around = "block"', "[points.corner]")
    yield spec("assembly", "assembly", 'of = "block"')
    yield spec("lagging-block", "lagging", 'covers = "block"')
    yield spec("face", "locating-face", 'locks = "block"', 'pad = "axle"')
    yield spec("bolts-axle", "frame-fastening", 'holds = "block"', 'pad = "axle"')


_CASES = (
    "cold",
    *("starting", "running", "test", "water", "drifting", "warming", "cooling", "standing-hot"),
)


_WEIGHTS = ("[weights.block]", 'of = "weldment"', "[weights.liner]", 'of = "liner"')


def _block_tables() -> Iterator[str]:
    yield from (
        "[bores.main]",
        "[pads.axle]",
        'takes = ["lengthwise", "crosswise", "weight"]',
        "[openings.chest]",
        'carries = "live steam"',
    )
    yield from (
        "[divisions.belt]",
        'wall = "side"',
        'one_side = "live steam"',
        'other_side = "exhaust steam"',
    )
    for end in ENDS:
        yield from (f"[ends.{end}]", 'of_bore = "main"', f'side = "{end}"')
        yield from (f"[ports.{end}]", f'of_end = "{end}"')
        for serves in SERVES:
            for beat in BEATS:
                yield f"[seat_bores.{serves}-{end}-{beat}]"
                yield from (f'end = "{end}"', f'serves = "{serves}"', f'beat = "{beat}"')


def _cylinder() -> Iterator[tuple[str, str]]:
    ports = [line for end in ENDS for line in (f"[ports.{end}]", f'matches = "{end}"')]
    yield spec(
        "liner",
        "cylinder-liner",
        'housed_in = "block"',
        'in_bore = "main"',
        'material = "grey-iron-250"',
        "[lands.one]",
        *ports,
    )
    yield spec("casting", "casting", 'becomes = "liner"')
    for end in ENDS:
        hole = 'central_hole = "120 mm"' if end == "back" else 'central_hole = "0 mm"'
        yield spec(
            f"cover-{end}", "cylinder-cover", 'closes = "block"', f'of_end = "{end}"', f'end = "{end}"', hole
        )
        yield from _studs(f"cover-{end}", "block")
        yield spec(f"lagging-{end}", "lagging", f'covers = "cover-{end}"')


def _studs(held: str, under: str) -> Iterator[tuple[str, str]]:
    yield spec(
        f"studs-{held}",
        "bolted-joint",
        f'holds = "{held}"',
        f'screwed_into = "{under}"',
        'seal = "ground face"',
    )


def _motion() -> Iterator[tuple[str, str]]:
    yield spec("piston", "piston", 'runs_in = "liner"', "[grooves.front]", 'takes = "ring"')
    yield spec("ring", "piston-ring", 'runs_in = "liner"')
    yield spec("rod", "piston-rod", 'carries = "piston"')
    yield spec("box", "stuffing-box", 'seals = "rod"', 'in_cover = "cover-back"')
    yield spec("gland", "gland", 'of = "box"')
    yield from _studs("gland", "cover-back")
    yield spec("crosshead", "crosshead", 'on_rod = "rod"')
    yield spec("bar", "slide-bar", 'guides = "crosshead"', "bars_sharing = 1")
    for pin in ("crosshead", "crank"):
        yield spec(f"pin-{pin}", "pin", 'moved_by = "crosshead"', f'place = "{pin} pin"')


def _gear() -> Iterator[tuple[str, str]]:
    yield spec("valve-gear", "valve-gear", 'in_block = "block"')
    for end in ENDS:
        yield spec(f"cambox-{end}", "cam-box", 'mounted_on = "block"', f'of_end = "{end}"', "tappets = 2")
        yield from _studs(f"cambox-{end}", "block")
        yield spec(f"fit-{end}", "fit", "[hole]", 'of = "block"', "[shaft]", f'of = "cambox-{end}"')
        yield spec(f"shaft-{end}", "shaft")
        for serves in SERVES:
            name = f"{serves}-{end}"
            for beat in BEATS:
                yield spec(
                    f"seat-{name}-{beat}",
                    "valve-seat",
                    'pressed_into = "block"',
                    f'in_bore = "{name}-{beat}"',
                )
            beats = [line for beat in BEATS for line in (f"[{beat}_beat]", f'seat = "seat-{name}-{beat}"')]
            yield spec(
                f"valve-{name}",
                "poppet-valve",
                f'serves = "{serves}"',
                "beats = 2",
                'retained = "cage"',
                *beats,
            )
            yield spec(f"lid-{name}", "chamber-cover", 'closes = "block"', f'over = "valve-{name}"')
            yield from _studs(f"lid-{name}", "block")
            yield spec(f"cage-{name}", "valve-cage", f'surrounds = "valve-{name}"')
            yield spec(
                f"spindle-{name}",
                "valve-spindle",
                f'moves = "valve-{name}"',
                'seal = "lip seal"',
                'guide_bore = "20 mm"',
            )
            yield spec(f"spring-{name}", "compression-spring", f'closes = "valve-{name}"')
            yield spec(
                f"tappet-{name}", "tappet", f'works = "spindle-{name}"', f'carried_in = "cambox-{end}"'
            )
            yield spec(
                f"cam-{name}",
                "cam",
                f'lifts = "tappet-{name}"',
                f'turns_on = "shaft-{end}"',
                'law = "cycloidal"',
            )


def _steam() -> Iterator[tuple[str, str]]:
    yield spec(
        "pipe", "steam-pipe", 'carries = "live steam"', "[ends_at]", 'part = "block"', 'opening = "chest"'
    )
    yield spec("lagging-pipe", "lagging", 'covers = "pipe"')
    yield spec(
        "header", "bracket", 'on = "block"'
    )  # stands for the superheater's, for which there is no kind
    for end, under in (("boiler", "header"), ("chest", "block")):
        yield spec(f"flange-{end}", "pipe-flange", 'of = "pipe"')
        yield from _studs(f"flange-{end}", under)
    in_block = 'in_block = "block"'
    yield spec("chest", "steam-passage", in_block, 'follows = "pipe"', 'carries = "live steam"')
    for end in ENDS:
        lines = ('place = "valve pocket"', f'valve = "valve-inlet-{end}"', 'carries = "live steam"')
        yield spec(f"pocket-{end}", "steam-passage", in_block, 'follows = "chest"', *lines)
    exhaust = ('place = "belt"', 'valve = "valve-exhaust-front"', 'carries = "exhaust steam"')
    yield spec("belt", "steam-passage", in_block, *exhaust)
    yield spec("nozzle", "blast-nozzle", 'follows = "belt"')
    yield spec(
        "breath", "steam-passage", 'in_block = "block"', 'place = "breathing way"', 'cylinder_bore = "main"'
    )
    yield spec("partition", "partition", 'live_side = "chest"', 'exhaust_side = "belt"')
