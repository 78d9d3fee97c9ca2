"""The names that keys accept: a page for each list, and one for the words that keys fix themselves."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.families import Loaded, NameLists
from speclint.reports.listed_keys import listed_keys
from speclint.reports.phrases import count
from speclint.reports.reference.entries import Entry
from speclint.reports.reference.places import anchor, file_of, kind_place, list_place, material_place
from speclint.reports.reference.reference_page import Link, ReferencePage
from speclint.reports.reference.sections import NAMES
from speclint.specs import looked_up_in, words_of

_FIXED = "names/words-of-keys.html"


def name_pages(loaded: Loaded) -> Iterator[ReferencePage]:
    """A list of the lists, a page for each, and the words that keys fix."""
    lists = NameLists(loaded.kinds, loaded.materials)
    found = [one for word in lists.called() for one in lists.of(word)]
    listed = [
        (Link(one.called, list_place(one.called)), f"{one.about}: {count(len(one.names), 'name')}")
        for one in found
    ]
    fixed = (Link("words of keys", _FIXED), "words that single keys accept, such as true or false")
    says = "What may be written where a key takes a name. speclint names prints the same, with the names of a design."
    yield ReferencePage(
        "names/index.html", "Names", NAMES, "list.html", {"says": says, "groups": [("", [*listed, fixed])]}
    )
    of_metal = _places_of_materials(loaded)
    for one in found:
        places = of_metal if one.called == "materials" else {}
        kinds = loaded.kinds if one.called == "kinds" else ()
        rows = [
            (
                anchor(name.name),
                Link(name.name, kind_place(name.name) if name.name in kinds else places.get(name.name, "")),
                name.says,
            )
            for name in one.names
        ]
        content = {"about": one.about, "rows": rows, "taken_by": [_key_link(place) for place in one.taken_by]}
        entries = [Entry(one.called, "list of names", list_place(one.called), one.about)]
        if one.called not in ("materials", "kinds"):  # these have places of their own
            entries += [
                Entry(name.name, one.called, list_place(one.called, name.name), name.says)
                for name in one.names
            ]
        yield ReferencePage(
            file_of("names", one.called), f"Names: {one.called}", NAMES, "names.html", content, entries
        )
    yield _words_of_keys(loaded)


def _key_link(place: str) -> Link:
    """A key as a list names it, KIND.KEY; one that is no kind's leads nowhere."""
    kind, _, key = place.partition(".")
    return Link(place, kind_place(kind, key) if key else "")


def _places_of_materials(loaded: Loaded) -> dict[str, str]:
    from speclint.handbook.materials import material, names

    every = [*map(material, names()), *loaded.materials.values()]
    return {one.name: material_place(one.family, one.name) for one in every}


def _words_of_keys(loaded: Loaded) -> ReferencePage:
    """Each set of words that keys fix, with the keys that take it."""
    found: dict[tuple[str, ...], dict[str, Link]] = {}
    for kind in loaded.kinds.values():
        for key in listed_keys(kind):
            words = words_of(key.field) if key.field is not None and looked_up_in(key.field) is None else ()
            if words:
                owner = "every component" if key.of_every else kind.kind
                said = f"{owner}.{key.written}"
                found.setdefault(words, {})[said] = Link(said, kind_place(kind.kind, key.written))
    groups = sorted(found.items())
    entries = [
        Entry(word, "word", f"{_FIXED}#{_mark(words)}", f"of {', '.join(list(keys)[:4])}")
        for words, keys in groups
        for word in words
    ]
    rows = [(_mark(words), words, list(keys.values())) for words, keys in groups]
    return ReferencePage(_FIXED, "Names: words of keys", NAMES, "words_of_keys.html", {"rows": rows}, entries)


def _mark(words: tuple[str, ...]) -> str:
    return anchor(" ".join(words))
