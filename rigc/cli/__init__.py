"""Arguments in, text out, an exit code: the commands of rigc. What they need beyond click is imported when they run."""

from rigc.cli.exits import main

__all__ = ["main"]
