"""A client that speaks to `rigc lsp` over its streams, as an editor does."""

from __future__ import annotations

import asyncio
import sys
from collections.abc import Awaitable, Callable
from pathlib import Path
from typing import Any

from lsprotocol import types as lsp
from pygls.lsp.client import LanguageClient

PATIENCE_S = 60
"""A busy machine is no fault of the server."""


class Editor:
    """One file open in an editor. `told` are the findings by file name, as last published, with the version that they are of."""

    def __init__(self, client: LanguageClient, path: Path) -> None:
        self.client = client
        self.path = path
        self.uri = path.as_uri()
        self.document = lsp.TextDocumentIdentifier(self.uri)
        self.text = ""
        self.version = 0
        self.told: dict[str, lsp.PublishDiagnosticsParams] = {}
        self.shown: list[str] = []
        self.news = asyncio.Event()

    def open(self, text: str) -> None:
        """Opens the file with this text, which need not be on the disk."""
        self.text, self.version = text, 1
        item = lsp.TextDocumentItem(self.uri, "rig", self.version, text)
        self.client.text_document_did_open(lsp.DidOpenTextDocumentParams(item))

    def type(self, text: str) -> None:
        """The text is this now."""
        self.text, self.version = text, self.version + 1
        self.client.text_document_did_change(
            lsp.DidChangeTextDocumentParams(
                lsp.VersionedTextDocumentIdentifier(self.version, self.uri),
                [lsp.TextDocumentContentChangeWholeDocument(text)],
            )
        )

    def place(self, words: str, further: int = 0) -> lsp.Position:
        """Where a stretch of the text begins, or so many characters further, in UTF-16 units."""
        offset = self.text.index(words) + further
        line = self.text.rfind("\n", 0, offset) + 1
        before = self.text[line:offset]
        return lsp.Position(self.text.count("\n", 0, offset), len(before.encode("utf-16-le")) // 2)

    def codes(self) -> list[str]:
        """The rules of the findings of the file, of its version of now."""
        told = self.told.get(self.path.name)
        return (
            [str(each.code) for each in told.diagnostics] if told is not None and told.version == self.version else []
        )

    async def until(self, holds: Callable[[], bool]) -> None:
        """Waits until something holds; TimeoutError when it never does."""
        async with asyncio.timeout(PATIENCE_S):
            while not holds():
                self.news.clear()
                await self.news.wait()

    def edited(self, edits: Any) -> str:
        """The text after edits of it."""
        starts = [0]
        while (at := self.text.find("\n", starts[-1])) >= 0:
            starts.append(at + 1)

        def offset(position: lsp.Position) -> int:
            line = self.text[starts[position.line] :].split("\n")[0].encode("utf-16-le")
            return starts[position.line] + len(line[: position.character * 2].decode("utf-16-le"))

        text = self.text
        for each in sorted(edits, key=lambda one: (one.range.start.line, one.range.start.character), reverse=True):
            text = text[: offset(each.range.start)] + each.new_text + text[offset(each.range.end) :]
        return text


def session(path: Path, script: Callable[[Editor], Awaitable[None]], **capabilities: Any) -> None:
    """Starts a server, runs a script against it, ends it."""

    async def run() -> None:
        client = LanguageClient("a test", "1")
        editor = Editor(client, path)

        @client.feature(lsp.TEXT_DOCUMENT_PUBLISH_DIAGNOSTICS)  # type: ignore[untyped-decorator]
        def findings(given: lsp.PublishDiagnosticsParams) -> None:
            editor.told[given.uri.rpartition("/")[2]] = given
            editor.news.set()

        @client.feature(lsp.WINDOW_SHOW_DOCUMENT)  # type: ignore[untyped-decorator]
        def show(given: lsp.ShowDocumentParams) -> lsp.ShowDocumentResult:
            editor.shown.append(given.uri)
            editor.news.set()
            return lsp.ShowDocumentResult(True)

        @client.feature(lsp.WINDOW_SHOW_MESSAGE)  # type: ignore[untyped-decorator]
        def say(given: lsp.ShowMessageParams) -> None:
            editor.shown.append(given.message)
            editor.news.set()

        await client.start_io(sys.executable, "-m", "rigc", "lsp")
        async with asyncio.timeout(4 * PATIENCE_S):
            await client.initialize_async(lsp.InitializeParams(capabilities=lsp.ClientCapabilities(**capabilities)))
            client.initialized(lsp.InitializedParams())
            await script(editor)
            await client.shutdown_async(None)
            client.exit(None)
        await client.stop()  # type: ignore[no-untyped-call]

    asyncio.run(run())
