"""`rigc lsp`: the language server, for editors."""

from __future__ import annotations

import click


@click.command()
@click.option("--stdio", is_flag=True, help="Speak over standard input and output; it always does.")
def lsp(stdio: bool) -> int:  # noqa: ARG001
    """Serve an editor: findings, completion, lengths and loads as one types.

    It speaks the Language Server Protocol over standard input and output and is started by the editor. Needs the extra `lsp`:
    pip install 'rigc[lsp]'.
    """
    try:
        from rigc.editor.server.server import serve
    except ModuleNotFoundError as fault:
        if (fault.name or "").partition(".")[0] not in ("pygls", "lsprotocol", "cattrs"):
            raise
        raise click.ClickException(
            "the language server needs the package pygls, which is not installed: pip install 'rigc[lsp]'"
        ) from None
    serve()
    return 0
