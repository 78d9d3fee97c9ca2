"""Files that hold a spec which could not be read: what little their text tells, so that nothing false is said."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from itertools import product
from pathlib import Path

from msgspec import Struct

from speclint.repository.each import put_in
from speclint.specs import MARK, Spec

_KIND, _ID = (
    re.compile(rf"""^\s*["']?{key}["']?\s*=\s*["'](?P<word>[^"'\n]*)["']""", re.MULTILINE)
    for key in ("kind", "id")
)
_WORDS = re.compile(r'"([^"\n]*)"|' + r"'([^'\n]*)'")
_MARK = re.compile(MARK.replace("(", "(?:"))


class Unread(Struct, frozen=True):
    """A file with a spec that is missing from the design, of a kind where its text tells, and the words in quotes."""

    file: str
    kind: type[Spec] | None = None
    words: frozenset[str] | None = None

    def may_be(self, kind: type[Spec]) -> bool:
        """Whether its spec may be of a kind."""
        return self.kind is None or issubclass(self.kind, kind)

    def may_name(self, *words: str) -> bool:
        """Whether its spec may name every one of some words, such as the id of another."""
        return self.words is None or all(self._names(word) for word in words)

    @property
    def told(self) -> tuple[str, str, tuple[str, ...]]:
        """What is known of it, in plain words."""
        return self.file, self.kind.kind if self.kind else "", tuple(sorted(self.words or ()))

    def _names(self, word: str) -> bool:
        return any(_stands_for(own, word) for own in self.words or ())


def unread_files(root: Path, files: Iterable[str], kinds: Mapping[str, type[Spec]]) -> Iterator[Unread]:
    """What the text of some files tells, by their names from the root of the repository."""
    for file in sorted(set(files)):
        try:
            text = (root / file).read_text(encoding="utf-8", errors="replace")
        except (OSError, ValueError):
            yield Unread(file)
            continue
        found = _KIND.search(text)
        words = frozenset(one or other for one, other in _WORDS.findall(text))
        yield Unread(file, kinds.get(found["word"]) if found else None, words)


def ids_in(text: str, stem: str) -> tuple[str, ...]:
    """The ids of the specs that a text states which cannot be read, as far as it tells: else the name of its file.

    Where the id has marks, one for each of the names that are listed for them.

    >>> ids_in('kind = "cover\\nid = "cover-{end}"\\n[each]\\nend = ["front", "back"]', "covers")
    ('cover-front', 'cover-back')
    >>> ids_in('kind = "cover\\nid = "lid-{end}"\\neach = { side = ["left"], end = ["front", "back"] }', "covers")
    ('lid-front', 'lid-back')
    """
    found = _ID.search(text)
    stated = found["word"] if found else stem
    lists = {word: names for word in re.findall(MARK, stated) if (names := _listed(word, text))}
    return tuple(put_in(stated, dict(zip(lists, names, strict=True))) for names in product(*lists.values()))


def _listed(word: str, text: str) -> tuple[str, ...]:
    found = re.search(rf"(?:^|[{{,])\s*{word}\s*=\s*\[(?P<names>[^]]*)\]", text, re.MULTILINE)
    return tuple(one or other for one, other in _WORDS.findall(found["names"])) if found else ()


def _stands_for(own: str, word: str) -> bool:
    """Whether a word is meant, or stands among those that the names of ``each`` make of it."""
    between = _MARK.split(own)
    return re.fullmatch(".+".join(map(re.escape, between)), word) is not None
