"""The server: each request of an editor -> one pure answer; after each edit the findings, first what is known at once, then all."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from pathlib import Path
from typing import Any

from lsprotocol import types as lsp
from pygls.exceptions import JsonRpcException
from pygls.lsp.server import LanguageServer

from rigc import __version__
from rigc.editor import rubbish
from rigc.editor.answers.actions import Action, actions
from rigc.editor.answers.colours import SORTS, colours
from rigc.editor.answers.definition import definition, references
from rigc.editor.answers.findings import by_file
from rigc.editor.answers.folds import folds
from rigc.editor.answers.formatting import formatted
from rigc.editor.answers.hover import hover
from rigc.editor.answers.inlays import inlays
from rigc.editor.answers.lenses import lenses
from rigc.editor.answers.outline import outline
from rigc.editor.answers.renaming import CannotRename, renamed, renamed_word
from rigc.editor.completion.offers import offers
from rigc.editor.completion.spot import spot
from rigc.editor.draft import Draft
from rigc.editor.places import UTF_16, Place, offset_of
from rigc.editor.server import convert
from rigc.editor.server.convert import Converter
from rigc.editor.session import Session
from rigc.editor.shelf import path_of
from rigc.files.kept import kept
from rigc.files.page_to_show import PagesToShow
from rigc.files.reader import CachedReader
from rigc.files.served import light
from rigc.loader import STOCK, Unreadable
from rigc.output.formats import document_renderer
from rigc.output.layout import Layout
from rigc.reports.folder import sheet_names
from rigc.source import Source

AT_ONCE_S, ALL_S = 0.02, 0.15
"""So long after the last key the findings are told that need no computing, and the others are begun."""
OPEN_SHEET = "rigc.openSheet"


class Outdated(Exception):
    """The text has changed since; what is being computed is of no use."""


class Rigs(LanguageServer):
    """A language server with the session behind it. Texts come whole: a rig is small, and no two hands must count the same lines."""

    def __init__(self) -> None:
        super().__init__("rigc", __version__, text_document_sync_kind=lsp.TextDocumentSyncKind.Full)
        self.reader = CachedReader()
        self.session = Session(self.reader)
        self.pages = PagesToShow()
        self.versions: dict[Path, int] = {}
        self.uris: dict[Path, str] = {}
        self.told: dict[Path, dict[Path, list[lsp.Diagnostic]]] = {}
        self.tasks: dict[Path, asyncio.Task[None]] = {}

    @property
    def encoding(self) -> str:
        """How the editor counts characters."""
        return str(getattr(self.workspace.position_encoding, "value", self.workspace.position_encoding) or UTF_16)

    def at(self, document: lsp.TextDocumentIdentifier) -> tuple[Draft, Source, Path, Converter]:
        """What is known of a file now. Raises `Unreadable`."""
        path = convert.path(document.uri)
        draft, source = self.session.source(path)
        rig = self.session.rig_of(path)
        return draft, source, rig, self.converter(rig)

    def converter(self, rig: Path) -> Converter:
        """For the files of a rig."""
        return Converter(rig, self.encoding, self.uris)

    def offset(self, source: Source, position: lsp.Position) -> int:
        """Where a position is in a text."""
        return offset_of(source, Place(position.line, position.character), self.encoding)

    def changed(self, path: Path, text: str | None, version: int | None = None) -> None:
        """Takes a text up and looks at all open rigs that it touches."""
        self.session.put(path, text)
        if version is not None:
            self.versions[path] = version
        if text is None:
            self.versions.pop(path, None)
        for rig in self.session.rigs_touched_by(path):
            self.look(rig)

    def look(self, rig: Path) -> None:
        """Begins to look at a rig anew, in place of any look that is under way."""
        before = self.tasks.get(rig)
        if before is not None:
            before.cancel()
        self.tasks[rig] = asyncio.get_running_loop().create_task(self._looked(rig))

    async def _looked(self, rig: Path) -> None:
        await asyncio.sleep(AT_ONCE_S)
        try:
            self.tell(rig)
            await asyncio.sleep(ALL_S)
            while not await self._all_told(rig):  # another rig was edited meanwhile
                await asyncio.sleep(ALL_S)
        except Unreadable as fault:
            self._publish(rig, {rig: [self.converter(rig).unreadable(fault)]} if rig in self.versions else {})

    async def _all_told(self, rig: Path) -> bool:
        """Computes a rig and tells all findings, then what places would mend them; False where something was edited before that was done."""
        edit, loop, between = self.session.edit, asyncio.get_running_loop(), self.as_long_as_nobody_edits()
        try:
            checked = await loop.run_in_executor(None, self.session.check, rig, between)
            if self.session.edit != edit:
                return False
            self.tell(rig)
            await loop.run_in_executor(None, checked.ready)
            await loop.run_in_executor(None, self.reader.ready)
            await loop.run_in_executor(None, checked.trials, between)
        except Outdated:
            return False
        if self.session.edit != edit:
            return False
        if checked.findings != checked.compiled.findings:
            self.tell(rig)
        if self._refreshes_inlays():
            await self.workspace_inlay_hint_refresh_async(None)
        rubbish.tidy()
        return True

    def as_long_as_nobody_edits(self) -> Callable[[], None]:
        """Raises `Outdated` as soon as something was."""
        edit = self.session.edit

        def between() -> None:
            if self.session.edit != edit:
                raise Outdated

        return between

    def tell(self, rig: Path) -> None:
        """Publishes the findings of a rig that are known, file by file."""
        converter = self.converter(rig)
        findings = self.session.findings(rig)
        first = self.session.draft(rig).read.gathered.sources[0]
        found = {
            path_of(rig, source.name): [converter.diagnostic(each, source) for each in those]
            for source, those in by_file(findings, first).items()
            if not source.name.startswith(STOCK)
        }
        self._publish(rig, found)

    def _publish(self, rig: Path, found: dict[Path, list[lsp.Diagnostic]]) -> None:
        before = self.told.get(rig, {})
        self.told[rig] = found
        for path in sorted({*before, *found, *(each for each in self.versions if self.session.rig_of(each) == rig)}):
            every = [each for files in self.told.values() for each in files.get(path, ())]
            once = list({(str(each.range), each.message, str(each.code)): each for each in every}.values())
            self.text_document_publish_diagnostics(
                lsp.PublishDiagnosticsParams(self.uris.get(path) or convert.uri(path), once, self.versions.get(path))
            )

    def _refreshes_inlays(self) -> bool:
        workspace = self.client_capabilities.workspace
        return bool(workspace and workspace.inlay_hint and workspace.inlay_hint.refresh_support)

    def workspace_edit(self, converter: Converter, texts: dict[str, str]) -> lsp.WorkspaceEdit:
        """The new texts of files as edits of what the editor, or else the disk, holds."""
        load = self.session.shelf.loader(converter.rig)
        changes = {}
        for name, text in texts.items():
            old = load(name).data.decode("utf-8", "surrogatepass").removeprefix("\ufeff")
            changes[converter.uri_of(path_of(converter.rig, name))] = converter.edits(old, text.removeprefix("\ufeff"))
        return lsp.WorkspaceEdit(changes=changes)

    def code_action(self, action: Action, source: Source, converter: Converter) -> lsp.CodeAction:
        """A mend as a quick fix of its finding."""
        return lsp.CodeAction(
            action.title,
            kind=lsp.CodeActionKind.QuickFix,
            diagnostics=[converter.diagnostic(action.finding, source)],
            is_preferred=action.best,
            edit=self.workspace_edit(converter, action.texts),
        )

    def page(self, path: Path, sheet: str) -> Path | str:
        """A sheet of the rig of a file as a page that can be shown, or why there is none."""
        if sheet not in sheet_names():
            return f"there is no sheet '{sheet}'"
        rig = self.session.rig_of(path)
        checked = self.session.checked(rig) or self.session.check(rig)
        documents = checked.compiled.documents((sheet,), draft=checked.compiled.has_errors)
        if not documents:
            return "there are no sheets while a line or a name is wrong"
        page = document_renderer("html")(documents, Layout("a4", None, kept()))
        return self.pages.put(
            f"{checked.compiled.results.rig.head.name}-{sheet}" if checked.compiled.results else sheet, page
        )


def server() -> Rigs:
    """A server with every feature."""
    made = Rigs()
    _texts(made)
    _words(made)
    _files(made)
    _edits(made)
    return made


def _texts(made: Rigs) -> None:
    @made.feature(lsp.TEXT_DOCUMENT_DID_OPEN)
    def opened(given: lsp.DidOpenTextDocumentParams) -> None:
        document = given.text_document
        made.uris[convert.path(document.uri)] = document.uri
        made.changed(convert.path(document.uri), document.text, document.version)

    @made.feature(lsp.TEXT_DOCUMENT_DID_CHANGE)
    def changed(given: lsp.DidChangeTextDocumentParams) -> None:
        document = made.workspace.get_text_document(given.text_document.uri)
        made.changed(convert.path(document.uri), document.source, given.text_document.version)

    @made.feature(lsp.TEXT_DOCUMENT_DID_CLOSE)
    def closed(given: lsp.DidCloseTextDocumentParams) -> None:
        path = convert.path(given.text_document.uri)
        made.changed(path, None)
        if not any(made.session.rig_of(each) == path for each in made.session.shelf.open):
            task = made.tasks.pop(path, None)
            if task is not None:
                task.cancel()
            made._publish(path, {})
        made.uris.pop(path, None)

    @made.feature(lsp.TEXT_DOCUMENT_DID_SAVE)
    def saved(_given: lsp.DidSaveTextDocumentParams) -> None:
        _look_at_all(made)

    @made.feature(lsp.WORKSPACE_DID_CHANGE_WATCHED_FILES)
    def watched(_given: lsp.DidChangeWatchedFilesParams) -> None:
        _look_at_all(made)


def _look_at_all(made: Rigs) -> None:
    made.session.touched()
    for rig in {made.session.rig_of(path) for path in list(made.session.shelf.open)}:
        made.look(rig)


def _words(made: Rigs) -> None:
    @made.feature(lsp.TEXT_DOCUMENT_COMPLETION, lsp.CompletionOptions(trigger_characters=[".", " ", '"', "/"]))
    def completion(given: lsp.CompletionParams) -> lsp.CompletionList | None:
        try:
            draft, source, rig, converter = made.at(given.text_document)
        except Unreadable:
            return None
        here = spot(source.text, made.offset(source, given.position))
        found = offers(here, draft, made.session.computed(rig), made.reader.grammar.follows)
        start = here.start if not here.within else here.start - len(_path_begun(here.before))
        at = lsp.Range(converter.position(source, start), given.position)
        return lsp.CompletionList(False, [convert.completion(each, at, n) for n, each in enumerate(found)])

    @made.feature(lsp.TEXT_DOCUMENT_HOVER)
    def hovered(given: lsp.HoverParams) -> lsp.Hover | None:
        try:
            draft, source, rig, converter = made.at(given.text_document)
        except Unreadable:
            return None
        told = hover(draft, made.session.computed(rig), source, made.offset(source, given.position))
        return None if told is None else convert.hover(told, converter)

    @made.feature(lsp.TEXT_DOCUMENT_DEFINITION)
    def defined(given: lsp.DefinitionParams) -> list[lsp.Location]:
        try:
            draft, source, _, converter = made.at(given.text_document)
        except Unreadable:
            return []
        return [converter.location(each) for each in definition(draft, source, made.offset(source, given.position))]

    @made.feature(lsp.TEXT_DOCUMENT_REFERENCES)
    def referred(given: lsp.ReferenceParams) -> list[lsp.Location]:
        try:
            draft, source, _, converter = made.at(given.text_document)
        except Unreadable:
            return []
        offset = made.offset(source, given.position)
        found = references(draft, source, offset, given.context.include_declaration)
        return [converter.location(each) for each in found]

    @made.feature(lsp.TEXT_DOCUMENT_DOCUMENT_HIGHLIGHT)
    def highlighted(given: lsp.DocumentHighlightParams) -> list[lsp.DocumentHighlight]:
        """The same name elsewhere in the file. Editors ask it where the cursor rests: what the line names is lit on the rig's page, too."""
        try:
            draft, source, rig, converter = made.at(given.text_document)
        except Unreadable:
            return []
        path, line = convert.path(given.text_document.uri), given.position.line + 1
        asyncio.get_running_loop().run_in_executor(None, light, rig, path, line)
        found = references(draft, source, made.offset(source, given.position))
        return [lsp.DocumentHighlight(converter.range(each)) for each in found if each.source is source]


def _path_begun(before: str) -> str:
    """What is typed of a path already, behind its quote."""
    return before.rpartition('"')[2]


def _files(made: Rigs) -> None:
    @made.feature(lsp.TEXT_DOCUMENT_DOCUMENT_SYMBOL)
    def symbols(given: lsp.DocumentSymbolParams) -> list[lsp.DocumentSymbol]:
        try:
            _, source, _, converter = made.at(given.text_document)
        except Unreadable:
            return []
        return [convert.symbol(each, converter) for each in outline(made.session.reader.parse(source).file)]

    @made.feature(lsp.TEXT_DOCUMENT_FOLDING_RANGE)
    def folding(given: lsp.FoldingRangeParams) -> list[lsp.FoldingRange]:
        try:
            source = made.at(given.text_document)[1]
        except Unreadable:
            return []
        return [convert.fold(each) for each in folds(source.text)]

    @made.feature(
        lsp.TEXT_DOCUMENT_SEMANTIC_TOKENS_FULL,
        lsp.SemanticTokensLegend(list(SORTS), [lsp.SemanticTokenModifiers.Declaration.value]),
    )
    def coloured(given: lsp.SemanticTokensParams) -> lsp.SemanticTokens:
        try:
            draft, source, _, converter = made.at(given.text_document)
        except Unreadable:
            return lsp.SemanticTokens([])
        return lsp.SemanticTokens(convert.tokens(colours(draft, source), source, converter.encoding))

    @made.feature(lsp.TEXT_DOCUMENT_INLAY_HINT)
    def hints(given: lsp.InlayHintParams) -> list[lsp.InlayHint]:
        try:
            draft, source, rig, converter = made.at(given.text_document)
        except Unreadable:
            return []
        start, end = made.offset(source, given.range.start), made.offset(source, given.range.end)
        return [
            lsp.InlayHint(
                converter.position(source, each.offset),
                each.text,
                padding_left=True,
                tooltip=f"rigc why {each.why}",
            )
            for each in inlays(draft, made.session.computed(rig), source, start, end)
        ]

    @made.feature(lsp.TEXT_DOCUMENT_CODE_LENS)
    def sheets(given: lsp.CodeLensParams) -> list[lsp.CodeLens]:
        try:
            _, source, _, converter = made.at(given.text_document)
        except Unreadable:
            return []
        return [
            lsp.CodeLens(
                converter.range(each.span),
                lsp.Command(each.title, OPEN_SHEET, arguments=[given.text_document.uri, each.sheet]),
            )
            for each in lenses(made.session.reader.parse(source).file)
        ]

    @made.command(OPEN_SHEET)
    async def open_sheet(uri: str, sheet: str) -> None:
        loop = asyncio.get_running_loop()
        try:
            page = await loop.run_in_executor(None, made.page, convert.path(uri), sheet)
        except Unreadable as fault:
            page = fault.message
        if isinstance(page, Path):
            await made.window_show_document_async(lsp.ShowDocumentParams(convert.uri(page), external=True))
        else:
            made.window_show_message(lsp.ShowMessageParams(lsp.MessageType.Warning, page))


def _edits(made: Rigs) -> None:
    @made.feature(lsp.TEXT_DOCUMENT_PREPARE_RENAME)
    def prepared(given: lsp.PrepareRenameParams) -> lsp.Range | None:
        try:
            draft, source, _, converter = made.at(given.text_document)
            return converter.range(renamed_word(draft, source, made.offset(source, given.position)))
        except Unreadable:
            return None
        except CannotRename as fault:
            raise _refused(fault) from None

    @made.feature(lsp.TEXT_DOCUMENT_RENAME, lsp.RenameOptions(prepare_provider=True))
    def renaming(given: lsp.RenameParams) -> lsp.WorkspaceEdit | None:
        try:
            draft, source, _, converter = made.at(given.text_document)
            offset = made.offset(source, given.position)
            texts = renamed(draft, made.reader.reserved, source, offset, given.new_name)
        except Unreadable:
            return None
        except CannotRename as fault:
            raise _refused(fault) from None
        return made.workspace_edit(converter, texts)

    @made.feature(lsp.TEXT_DOCUMENT_FORMATTING)
    def formatting(given: lsp.DocumentFormattingParams) -> list[lsp.TextEdit] | None:
        try:
            _, source, _, converter = made.at(given.text_document)
        except Unreadable:
            return None
        text = formatted(made.session.reader.parse(source))
        old = source.data.decode("utf-8", "surrogatepass").removeprefix("\ufeff")
        return None if text is None else converter.edits(old, text)

    @made.feature(lsp.TEXT_DOCUMENT_CODE_ACTION, lsp.CodeActionOptions([lsp.CodeActionKind.QuickFix]))
    async def mends(given: lsp.CodeActionParams) -> list[lsp.CodeAction]:
        def found() -> list[lsp.CodeAction]:
            _, source, rig, converter = made.at(given.text_document)
            trials = made.session.trials(rig, made.as_long_as_nobody_edits())
            start, end = made.offset(source, given.range.start), made.offset(source, given.range.end)
            those = actions(trials.bench.made.findings, source, start, end, trials)
            return [made.code_action(each, source, converter) for each in those]

        if given.context.only and not any(_is_quick_fix(each) for each in given.context.only):
            return []
        try:
            return await asyncio.get_running_loop().run_in_executor(None, found)
        except (Outdated, Unreadable):
            return []


def _is_quick_fix(kind: Any) -> bool:
    return str(getattr(kind, "value", kind)) in ("", "quickfix")


def _refused(fault: CannotRename) -> JsonRpcException:
    return JsonRpcException(str(fault), lsp.LSPErrorCodes.RequestFailed.value)


def serve() -> None:
    """Speaks over standard input and output until the editor ends it."""
    rubbish.seldom()
    server().start_io()
