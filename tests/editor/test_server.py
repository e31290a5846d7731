"""The server over its streams, with a client that is not ours: what an editor sends in a working hour."""

from __future__ import annotations

import asyncio
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from editor.desk import LEADS, STARTER

pytest.importorskip("pygls", reason="the language server is an extra: pip install 'rigc[lsp]'")

from lsprotocol import types as lsp
from pygls.exceptions import JsonRpcException

from editor.client import Editor, session

RIG = STARTER + LEADS


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Where the file would be; its folder has a space, and letters that a URI escapes."""
    folder = tmp_path / "bör d"
    folder.mkdir()
    (folder / "rig-root").touch()
    return folder / "board.rig"


def test_a_working_hour(path: Path) -> None:
    async def script(editor: Editor) -> None:
        client, document = editor.client, editor.document
        editor.open(RIG)
        await editor.until(lambda: "wrong-polarity" in editor.codes())

        offers = await client.text_document_completion_async(lsp.CompletionParams(document, editor.place("8 mA", 2)))
        assert isinstance(offers, lsp.CompletionList)
        assert "mA" in [each.label for each in offers.items]

        told = await client.text_document_hover_async(lsp.HoverParams(document, editor.place("A1 drive")))
        assert told is not None and isinstance(told.contents, lsp.MarkupContent)
        assert "A1.finished = 90 mm" in told.contents.value

        hints = await client.text_document_inlay_hint_async(
            lsp.InlayHintParams(document, lsp.Range(lsp.Position(0, 0), lsp.Position(9999, 0)))
        )
        assert [each.label for each in hints or ()] == ["90 mm, cut 114 mm"]

        found: Any = await client.text_document_definition_async(
            lsp.DefinitionParams(document, editor.place("drive at 200"))
        )
        assert [each.range.start for each in found] == [editor.place('drive "overdrive"')]
        uses = await client.text_document_references_async(
            lsp.ReferenceParams(lsp.ReferenceContext(False), document, editor.place("drive at 200"))
        )
        assert len(uses or ()) == 4  # like, chain, place, leads
        same = await client.text_document_document_highlight_async(
            lsp.DocumentHighlightParams(document, editor.place("drive at 200"))
        )
        assert len(same or ()) == 5  # and where it is declared

        symbols = await client.text_document_document_symbol_async(lsp.DocumentSymbolParams(document))
        assert "mains-box" in [each.name for each in symbols or ()]
        assert await client.text_document_folding_range_async(lsp.FoldingRangeParams(document))
        colours = await client.text_document_semantic_tokens_full_async(lsp.SemanticTokensParams(document))
        assert colours is not None and len(colours.data) % 5 == 0 and colours.data

        assert not await client.text_document_formatting_async(
            lsp.DocumentFormattingParams(document, lsp.FormattingOptions(2, True))
        )
        renamed = await client.text_document_rename_async(
            lsp.RenameParams(document, editor.place("drive at 200"), "mill")
        )
        assert renamed is not None and renamed.changes is not None
        assert "unit echo like mill" in editor.edited(renamed.changes[editor.uri])
        with pytest.raises(JsonRpcException, match="no name"):
            await client.text_document_rename_async(lsp.RenameParams(document, editor.place("drive at 200"), "Mill"))

        lenses = await client.text_document_code_lens_async(lsp.CodeLensParams(document))
        command = next(each.command for each in lenses or () if each.command and each.command.title == "cable list")
        await client.workspace_execute_command_async(
            lsp.ExecuteCommandParams(command.command, arguments=list(command.arguments or ()))
        )
        (page,) = editor.shown
        assert "A1" in Path(page.removeprefix("file://")).read_text("utf-8")

    session(path, script)


def test_a_line_is_half_written_and_a_name_is_mended(path: Path) -> None:
    async def script(editor: Editor) -> None:
        editor.open(RIG.replace("draws 8 mA", "draws 8 mA x"))
        await editor.until(lambda: "malformed-statement" in editor.codes())
        editor.type(RIG.replace("chain guitar -> drive", "chain guitar -> drivee"))
        await editor.until(lambda: "unknown-name" in editor.codes())
        actions = await editor.client.text_document_code_action_async(
            lsp.CodeActionParams(
                editor.document,
                lsp.Range(editor.place("drivee"), editor.place("drivee")),
                lsp.CodeActionContext([]),
            )
        )
        assert actions is not None
        (action,) = actions
        assert isinstance(action, lsp.CodeAction) and action.edit is not None and action.edit.changes is not None
        assert action.title == "write 'drive'"
        editor.type(editor.edited(action.edit.changes[editor.uri]))
        assert editor.text == RIG
        await editor.until(lambda: bool(editor.codes()) and "unknown-name" not in editor.codes())

    session(path, script)


def test_places_behind_a_sign_outside_the_basic_plane(path: Path) -> None:
    """In UTF-16 the clef is two characters; so the unknown name begins one further than in characters."""
    text = RIG.replace(
        "chain guitar -> drive -> echo", 'order drive before echoo "𝄞"\nchain guitar -> drive -> echo'
    ).replace('unit drive "overdrive"', 'unit drive "𝄞 overdrive"')

    async def script(editor: Editor) -> None:
        editor.open(text)
        await editor.until(lambda: "unknown-name" in editor.codes())
        hovered = await editor.client.text_document_hover_async(
            lsp.HoverParams(editor.document, editor.place('drive "𝄞'))
        )
        assert hovered is not None
        (finding,) = editor.told[editor.path.name].diagnostics
        assert finding.range.start == editor.place("echoo")
        editor.type(text.replace('order drive before echoo "𝄞"', 'feedback drive "𝄞"  zz'))
        await editor.until(lambda: "malformed-statement" in editor.codes())
        (finding,) = editor.told[editor.path.name].diagnostics
        assert finding.range.start == editor.place("zz")
        assert finding.range.start.character == len('feedback drive "') + 2 + len('"  ')

    session(path, script)


def test_another_encoding_if_the_editor_wants_it(path: Path) -> None:
    async def script(editor: Editor) -> None:
        editor.open(RIG.replace("chain guitar", 'feedback drive "𝄞"  zz\nchain guitar'))
        await editor.until(lambda: "malformed-statement" in editor.codes())
        (finding,) = editor.told[editor.path.name].diagnostics
        assert finding.range.start.character == len('feedback drive "') + 1 + len('"  ')

    session(path, script, general=lsp.GeneralClientCapabilities(position_encodings=[lsp.PositionEncodingKind.Utf32]))


def test_a_used_file_that_is_not_saved(path: Path) -> None:
    bench = path.parent / "bench.rig"
    bench.write_text("language 1\ncable thin {\n  carries audio\n}\n")
    text = RIG.replace('use "stock/premade.rig"', 'use "stock/premade.rig"\nuse "bench.rig"')

    async def script(editor: Editor) -> None:
        editor.open(text.replace("of mini-coax", "of thinner"))
        await editor.until(lambda: "unknown-name" in editor.codes())
        item = lsp.TextDocumentItem(bench.as_uri(), "rig", 7, "language 1\ncable thinner {\n  carries adio\n}\n")
        editor.client.text_document_did_open(lsp.DidOpenTextDocumentParams(item))
        await editor.until(lambda: any(each.diagnostics for name, each in editor.told.items() if name == "bench.rig"))
        assert editor.told["bench.rig"].version == 7
        await editor.until(lambda: "unknown-name" not in editor.codes())
        editor.client.text_document_did_close(
            lsp.DidCloseTextDocumentParams(lsp.TextDocumentIdentifier(bench.as_uri()))
        )
        await editor.until(lambda: "unknown-name" in editor.codes() and not editor.told["bench.rig"].diagnostics)

    session(path, script)


def test_typing_in_one_rig_does_not_keep_another_from_being_told(path: Path) -> None:
    other = path.parent / "other.rig"

    async def script(editor: Editor) -> None:
        editor.open(RIG)
        await asyncio.sleep(0.05)
        for number in range(12):
            text = f"language 1\n\nrig other {{\n  revision A 2026-01-01\n}}\n# {number}\n"
            document = lsp.TextDocumentItem(other.as_uri(), "rig", number, text)
            if number:
                editor.client.text_document_did_change(
                    lsp.DidChangeTextDocumentParams(
                        lsp.VersionedTextDocumentIdentifier(number, other.as_uri()),
                        [lsp.TextDocumentContentChangeWholeDocument(text)],
                    )
                )
            else:
                editor.client.text_document_did_open(lsp.DidOpenTextDocumentParams(document))
            await asyncio.sleep(0.05)
        await editor.until(lambda: "wrong-polarity" in editor.codes())

    session(path, script)


def test_a_text_that_was_never_saved(path: Path) -> None:
    async def script(editor: Editor) -> None:
        editor.uri, editor.path = "untitled:Untitled-1", Path("untitled:Untitled-1")
        editor.open(RIG.replace("of mini-coax", "of thinner"))
        await editor.until(lambda: "unknown-name" in editor.codes())

    session(path, script)


def test_what_is_no_text_is_told_in_the_file(path: Path) -> None:
    async def script(editor: Editor) -> None:
        editor.open("language 1\n\0\n")
        await editor.until(lambda: bool(editor.codes()))
        (finding,) = editor.told[editor.path.name].diagnostics
        assert "NUL" in finding.message
        assert finding.range.start == lsp.Position(1, 0)
        assert not await editor.client.text_document_hover_async(lsp.HoverParams(editor.document, lsp.Position(9, 9)))
        await editor.client.workspace_execute_command_async(
            lsp.ExecuteCommandParams("rigc.openSheet", arguments=[editor.uri, "../away"])
        )
        assert editor.shown == ["there is no sheet '../away'"]
        editor.type(RIG)
        await editor.until(lambda: "wrong-polarity" in editor.codes())

    session(path, script)


def test_without_the_package_the_command_says_what_to_install(tmp_path: Path) -> None:
    code = "import sys; sys.modules['pygls'] = None; from rigc.cli import main; sys.exit(main(['lsp']))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, cwd=tmp_path, input="")
    assert done.returncode == 2
    assert "pip install 'rigc[lsp]'" in done.stderr
