"""Castings, rings and stubs that are welded into a block: each a piece of metal of its own."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.facts import steam_in
from speclint.specs import Casting, Component, CylinderBlock, SteamPassage, Weldment
from speclint_fabrication.inputs.openings import Cut, branch_of, cuts_of, piece_of, steam_through
from speclint_fabrication.rules.openings import DEFERS
from speclint_fabrication.sources import EN_10213

_CERTIFICATES = ("3.1", "3.2")


@rule(
    "opening.port-a-part",
    title="What is welded into a block is a piece of its own: of steel that welds, certified, a casting with first "
    "datum, first machining and weld preparation; with live steam in it a pressure part",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[EN_10213, COMMON_PRACTICE],
    why="A port that nobody drew as a part is cast of whatever was in the ladle, and no record says so.",
    leaves_out=f"the soundness of the casting, and how it is held in the weld fixture; {DEFERS}",
    against=(),
    limits=[
        Limit("carbon", "0.25 %", "ratio", COMMON_PRACTICE, "greatest carbon of a steel that is welded in")
    ],
)
def port_a_part(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Each opening with something set in it, and the part that it names."""
    set_in = [(cut.name, cut) for cut in cuts_of(block, sheet) if _is_welded_in(cut, sheet)]
    if not set_in:
        raise sheet.not_applicable("nothing is said to be welded into an opening of the block")
    return sheet.each(set_in, lambda item: _piece(*item, sheet))


def _is_welded_in(cut: Cut, sheet: Sheet) -> bool:
    """Whether something is welded into an opening: as it says, and where it does not, by the branch that it names."""
    if sheet.is_stated(f"what {cut.name} is", cut.opening.set):
        return sheet.read(f"{cut.name} is", cut.opening.set) in ("set in", "set on")
    return sheet.is_stated(f"branch at {cut.name}", cut.opening.branch)


def _piece(name: str, cut: Cut, sheet: Sheet) -> Judgement:
    live = _is_live(cut, sheet)
    piece = piece_of(cut, sheet)
    if piece is None:
        said = f"what is welded into opening {name} names no part"
        return _graded(sheet.states(False, said, where=cut.opening.branch.where), live)
    metal = sheet.material_of(piece)
    judged = [
        sheet.at_most(
            sheet.look_up(f"C of {piece.id}", metal.composition, element="C"), sheet.limit("carbon", "C_m")
        ).else_says("steel of {item} has {found} of carbon, {limit} allowed"),
        _certified(piece, sheet),
    ]
    if isinstance(piece, Casting):
        judged.append(_set_out(piece, sheet))
    if live:
        judged.append(_on_record(piece, cut, sheet))
    return _graded(sheet.worst(*judged), live)


def _graded(judged: Judgement, live: bool) -> Judgement:
    return judged.graded(Grade.HOLD) if live and not judged.holds else judged


def _is_live(cut: Cut, sheet: Sheet) -> bool:
    """Whether live steam passes: as the passage that is welded in carries it, else as the opening says; it may."""
    part = branch_of(cut, sheet)
    if isinstance(part, SteamPassage):
        return str(steam_in(part, sheet).value) == "live steam"
    stated = sheet.is_stated(f"{cut.name} carries", cut.opening.carries)
    return not stated or steam_through(cut, sheet) != "exhaust steam"


def _certified(piece: Component, sheet: Sheet) -> Judgement:
    document: str = sheet.read(f"inspection document of {piece.id}", piece.inspection_document)
    says = f"{piece.id} comes with a certificate {document}"
    return sheet.states(document in _CERTIFICATES, says, where=piece.inspection_document.where)


def _set_out(casting: Casting, sheet: Sheet) -> Judgement:
    """First datum and first machining with its allowance, and the edges that are welded."""
    face = sheet.entry(casting.faces, casting.first_datum, f"faces of {casting.id}")
    sheet.take(f"allowance of {casting.id}", face.allowance)
    machined = sheet.read(f"first machining of {casting.id}", casting.first_machining)
    edges = sheet.read(f"weld preparation of {casting.id}", casting.weld_preparation)
    return sheet.states(True, f"{casting.id}: {machined}; edges: {edges}")


def _on_record(piece: Component, cut: Cut, sheet: Sheet) -> Judgement:
    """A pressure part, unless a note of the block says why not and a wall of the block holds the pressure."""
    stated = sheet.is_stated(f"{piece.id} holds pressure", piece.pressure_part)
    if not stated or sheet.read(f"{piece.id} holds pressure", piece.pressure_part):
        says = f"{piece.id} takes live steam and is {'a' if stated else 'not said to be a'} pressure part"
        return sheet.states(stated, says, where=piece.pressure_part.where)
    reason = sheet.reason_given(cut.block, piece.id)
    held = bool(reason) and _has_wall_round(cut.weldment, cut, sheet)
    says = f"{piece.id} takes live steam and is no pressure part: {reason or 'no reason is given'}"
    says += (
        ", and a wall of the block holds the pressure"
        if held
        else ", and no wall of the block is named for it"
    )
    return sheet.states(held, says, where=piece.pressure_part.where)


def _has_wall_round(weldment: Weldment, cut: Cut, sheet: Sheet) -> bool:
    """Whether a flat wall of the block names the passage that is welded in."""
    part = branch_of(cut, sheet)
    sides = [side for wall in weldment.walls.values() for side in (wall.one_passage, wall.other_passage)]
    return any(
        sheet.is_stated("passage beside a wall", side) and sheet.follow(side) is part for side in sides
    )


RULES: tuple[Rule, ...] = (port_a_part,)
