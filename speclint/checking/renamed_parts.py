"""The specs that two states of a design have under different ids: the same values, or the same drawing."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping

from speclint.repository import Design
from speclint.specs import Link, Spec, Stated, leaves, stated_values

_OTHER = "another that is renamed"


def renamed_parts(before: Design, now: Design) -> dict[str, str]:
    """The id now of each spec that is called otherwise than before, by its id then.

    Nothing is guessed: two specs are one where they alone state the same values, but for the ids of others that are
    renamed too; or where they alone, of their kind, state one drawing number. Of several alike none is told.

    >>> from pathlib import Path
    >>> from speclint.repository import Settings
    >>> empty = Design(Path(), Settings(), {}, {}, frozenset())
    >>> renamed_parts(empty, empty)
    {}
    """
    known: dict[str, str] = {}
    while found := _same_values(before, now, known) or _same_drawing(before, now, known):
        known |= found
    return known


def _same_values(before: Design, now: Design, known: Mapping[str, str]) -> dict[str, str]:
    gone, come = _left(before, now, ()), _left(now, before, ())
    then = {name: known.get(name, _OTHER) for name in gone}
    since = {name: name if name in known.values() else _OTHER for name in come}
    return _paired(
        _left(before, now, known).values(),
        _left(now, before, known.values()).values(),
        lambda spec: frozenset(_values(spec, then if spec.id in gone else since).items()),
    )


def _same_drawing(before: Design, now: Design, known: Mapping[str, str]) -> dict[str, str]:
    return _paired(
        _left(before, now, known).values(),
        _left(now, before, known.values()).values(),
        lambda spec: (spec.kind, spec.drawing.value) if isinstance(spec.drawing, Stated) else None,
    )


def _left(design: Design, other: Design, known: Iterable[str]) -> dict[str, Spec]:
    """The specs that only one of two states has, without those that are known already."""
    names = sorted(design.files.keys() - other.files.keys() - {*known})
    return {name: design.specs[name] for name in names if name in design.specs}


def _values(spec: Spec, called: Mapping[str, str]) -> dict[str, str]:
    """What a spec states, with other names for the specs that it is linked to."""
    links = {one.key: one.value.id for one in leaves(spec) if isinstance(one.value, Link)}
    stated = {**stated_values(spec), **{key: called.get(name, name) for key, name in links.items()}}
    return {key: value for key, value in stated.items() if key != "id"}


def _paired(
    before: Iterable[Spec], now: Iterable[Spec], of: Callable[[Spec], Hashable | None]
) -> dict[str, str]:
    """The ids of those that alone have something, before and now."""
    then, since = _alone(before, of), _alone(now, of)
    return {then[what]: since[what] for what in then if what in since}


def _alone(specs: Iterable[Spec], of: Callable[[Spec], Hashable | None]) -> dict[Hashable, str]:
    found: dict[Hashable, list[str]] = {}
    for spec in specs:
        found.setdefault(of(spec), []).append(spec.id)
    return {what: names[0] for what, names in found.items() if what is not None and len(names) == 1}
