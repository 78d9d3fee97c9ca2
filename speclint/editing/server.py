"""The server that an editor asks, by version 3.17 of the Language Server Protocol, over its standard input and output.

Each text that is open is marked with what is wrong with it as it is typed: complaints at once, findings as the rules
are run, one after another, so that what is typed meanwhile is heard between two of them.
"""

from __future__ import annotations

import asyncio
from collections.abc import Sequence
from importlib.metadata import version
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from lsprotocol import types
from pygls.lsp.server import LanguageServer
from pygls.uris import from_fs_path, to_fs_path

from speclint.editing.completions import Completion, Sort, completions
from speclint.editing.hovers import hover
from speclint.editing.ids import Place, id_at, lines_of, renamed, stated_at
from speclint.editing.marks import Mark, Weight
from speclint.editing.workspace import OpenText, Workspace
from speclint.errors import DesignError, SpeclintError
from speclint.repository import find_root

if TYPE_CHECKING:
    from speclint.families import Loaded

_WEIGHTS: dict[Weight, types.DiagnosticSeverity] = {
    "error": types.DiagnosticSeverity.Error,
    "warning": types.DiagnosticSeverity.Warning,
    "information": types.DiagnosticSeverity.Information,
    "hint": types.DiagnosticSeverity.Hint,
}
_SORTS: dict[Sort, types.CompletionItemKind] = {
    "kind": types.CompletionItemKind.Class,
    "table": types.CompletionItemKind.Module,
    "key": types.CompletionItemKind.Property,
    "word": types.CompletionItemKind.EnumMember,
    "unit": types.CompletionItemKind.Unit,
    "class": types.CompletionItemKind.Constant,
    "material": types.CompletionItemKind.Value,
    "part": types.CompletionItemKind.Reference,
    "name": types.CompletionItemKind.Field,
}


class Asked(NamedTuple):
    """Where an editor asks something: the text, the numbers of its line and column, and the line itself."""

    space: Workspace
    opened: OpenText
    line: int
    column: int
    text: str

    @property
    def place(self) -> tuple[Workspace, OpenText, int, int]:
        """As what answers takes it."""
        return self.space, self.opened, self.line, self.column


class SpecServer(LanguageServer):
    """What is open in one editor: a workspace for each repository, and the checks under way."""

    def __init__(self, loaded: Loaded) -> None:
        super().__init__("speclint", version("speclint"), types.TextDocumentSyncKind.Incremental)
        self.loaded = loaded
        self.spaces: dict[Path, Workspace] = {}
        self.checking: dict[str, asyncio.Task[None]] = {}

    def place_of(self, uri: str) -> tuple[Workspace, str] | None:
        """The workspace of a document and its file there; None for one in no repository."""
        path = to_fs_path(uri)
        if path is None:
            return None
        here = Path(path).parent
        while not here.exists():
            here = here.parent
        try:
            root = find_root([here])
        except DesignError:
            return None
        if root not in self.spaces:
            self.spaces[root] = Workspace(root, self.loaded)
        space = self.spaces[root]
        file = space.file_of(Path(path))
        return (space, file) if file else None

    def asked_at(self, params: Any) -> Asked | None:
        """Where an editor asks something; None in a document that is not open, or is no text of a repository."""
        found = self.place_of(params.text_document.uri)
        opened = found[0].texts.get(found[1]) if found else None
        if found is None or opened is None:
            return None
        at = params.position
        line = opened.lines[at.line] if at.line < len(opened.lines) else ""
        return Asked(found[0], opened, at.line, _column(line, at.character), line)

    def take(self, uri: str) -> None:
        """Take the text of a document, mark what cannot be read, and begin its checks anew."""
        found = self.place_of(uri)
        if found is None:
            return
        space, file = found
        space.write(file, self.workspace.get_text_document(uri).source)
        self.mark(space, file)
        self.check(space, file, others=True)

    def reopen(self, space: Workspace) -> None:
        """Read a repository anew, and begin the checks of every text that is open of it."""
        space.reopen()
        for file in list(space.texts):
            self.mark(space, file)
            self.check(space, file, others=False)

    def check(self, space: Workspace, file: str, *, others: bool) -> None:
        """Make the checks of a text while the editor is heard; those under way are given up."""
        uri = _uri(space, file)
        if (under_way := self.checking.pop(uri, None)) is not None:
            under_way.cancel()
        self.checking[uri] = asyncio.get_running_loop().create_task(self._checked(space, file, others))

    async def _checked(self, space: Workspace, file: str, others: bool) -> None:
        await asyncio.sleep(0)
        for is_news in space.checking(file):
            if is_news:
                self.mark(space, file)
            await asyncio.sleep(0)
        if others:
            for other in space.resting_on(file):
                space.again(other)
                self.mark(space, other)
                self.check(space, other, others=False)

    def mark(self, space: Workspace, file: str) -> None:
        """Show what is wrong with an open text."""
        text = space.texts.get(file)
        marks = text.marks() if text else []
        self.text_document_publish_diagnostics(
            types.PublishDiagnosticsParams(
                _uri(space, file), [_diagnostic(one, text.lines) for one in marks] if text else []
            )
        )


def _uri(space: Workspace, file: str) -> str:
    return str(from_fs_path(str(space.root / file)))


def _diagnostic(mark: Mark, lines: Any) -> types.Diagnostic:
    line = lines[mark.line] if mark.line < len(lines) else ""
    return types.Diagnostic(
        _range(line, mark.line, mark.start, mark.end),
        mark.says,
        _WEIGHTS[mark.weight],
        code=mark.rule or None,
        source="speclint",
    )


def _range(line: str, number: int, start: int, end: int) -> types.Range:
    """A passage in the units of the protocol, UTF-16."""
    return types.Range(
        types.Position(number, _units(line[:start])), types.Position(number, _units(line[:end]))
    )


def _units(text: str) -> int:
    return len(text.encode("utf-16-le", "surrogatepass")) // 2


def _column(line: str, units: int) -> int:
    """The column of a place that is told in units of UTF-16."""
    column = 0
    while column < len(line) and _units(line[:column]) < units:
        column += 1
    return column


def serve(loaded: Loaded) -> None:
    """Answer an editor until it ends."""
    server(loaded).start_io()


def server(loaded: Loaded) -> SpecServer:
    """The server with all that it answers."""
    made = SpecServer(loaded)
    _follow_texts(made)
    _answer(made)
    _answer_about_ids(made)
    return made


def _follow_texts(made: SpecServer) -> None:
    @made.feature(types.TEXT_DOCUMENT_DID_OPEN)
    def opened(params: types.DidOpenTextDocumentParams) -> None:
        made.take(params.text_document.uri)

    @made.feature(types.TEXT_DOCUMENT_DID_CHANGE)
    def changed(params: types.DidChangeTextDocumentParams) -> None:
        made.take(params.text_document.uri)

    @made.feature(types.TEXT_DOCUMENT_DID_SAVE)
    def saved(params: types.DidSaveTextDocumentParams) -> None:
        found = made.place_of(params.text_document.uri)
        if found is not None and not found[0].edited.is_spec(found[1]):
            made.reopen(found[0])  # the settings, the register or a file of materials

    @made.feature(types.TEXT_DOCUMENT_DID_CLOSE)
    def closed(params: types.DidCloseTextDocumentParams) -> None:
        found = made.place_of(params.text_document.uri)
        if found is not None:
            if (under_way := made.checking.pop(_uri(*found), None)) is not None:
                under_way.cancel()
            found[0].close(found[1])
            made.mark(*found)

    @made.feature(types.WORKSPACE_DID_CHANGE_WATCHED_FILES)
    def changed_outside(params: types.DidChangeWatchedFilesParams) -> None:
        touched = {found for one in params.changes if (found := made.place_of(one.uri)) is not None}
        for space in {space for space, file in touched if file not in space.texts}:
            made.reopen(space)


def _answer(made: SpecServer) -> None:
    triggers = types.CompletionOptions(trigger_characters=['"', " ", "[", ".", "="])

    @made.feature(types.TEXT_DOCUMENT_COMPLETION, triggers)
    def completed(params: types.CompletionParams) -> list[types.CompletionItem]:
        if (here := made.asked_at(params)) is None:
            return []
        return [_item(one, here.line, here.text) for one in completions(*here.place)]

    @made.feature(types.TEXT_DOCUMENT_HOVER)
    def hovered(params: types.HoverParams) -> types.Hover | None:
        here = made.asked_at(params)
        said = hover(*here.place) if here else None
        return types.Hover(types.MarkupContent(types.MarkupKind.Markdown, said)) if said else None


def _answer_about_ids(made: SpecServer) -> None:
    @made.feature(types.TEXT_DOCUMENT_DEFINITION)
    def defined(params: types.DefinitionParams) -> types.Location | None:
        if (here := made.asked_at(params)) is None or (named := id_at(*here.place)) is None:
            return None
        place = stated_at(here.space, named[0])
        return types.Location(_uri(here.space, place.file), _of_place(here.space, place)) if place else None

    @made.feature(types.TEXT_DOCUMENT_PREPARE_RENAME)
    def prepared(params: types.PrepareRenameParams) -> types.PrepareRenamePlaceholder | None:
        if (here := made.asked_at(params)) is None or (named := id_at(*here.place)) is None:
            return None
        return types.PrepareRenamePlaceholder(_of_place(here.space, named[1]), named[0])

    @made.feature(types.TEXT_DOCUMENT_RENAME)
    def rename(params: types.RenameParams) -> types.WorkspaceEdit | None:
        if (here := made.asked_at(params)) is None or (named := id_at(*here.place)) is None:
            return None
        try:
            places = renamed(here.space, named[0], params.new_name)
        except (SpeclintError, OSError) as problem:
            made.window_show_message(types.ShowMessageParams(types.MessageType.Error, str(problem)))
            return None
        return _edit(here.space, places, params.new_name)


def _edit(space: Workspace, places: Sequence[Place], new: str) -> types.WorkspaceEdit:
    edits: dict[str, Sequence[types.TextEdit]] = {}
    for one in places:
        edit = types.TextEdit(_of_place(space, one), new)
        edits[_uri(space, one.file)] = [*edits.get(_uri(space, one.file), ()), edit]
    return types.WorkspaceEdit(changes=edits)


def _of_place(space: Workspace, place: Place) -> types.Range:
    lines = lines_of(space, place.file)
    line = lines[place.line] if place.line < len(lines) else ""
    return _range(line, place.line, place.start, place.end)


def _item(one: Completion, number: int, line: str) -> types.CompletionItem:
    return types.CompletionItem(
        one.text,
        kind=_SORTS[one.sort],
        detail=one.says or None,
        filter_text=one.text,
        text_edit=types.TextEdit(_range(line, number, one.start, one.end), one.written),
    )
