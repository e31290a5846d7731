"""A rig with lines that could not be read -> whether the rest can be computed, and which of its findings do not merely follow from these."""

from __future__ import annotations

import re
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.gather import Gathered
from rigc.source import Span

_LINES = ("malformed-statement", "unclosed-block", "nested-block", "unstated-language")


def only_lines(gathered: Gathered) -> bool:
    """Whether nothing else is wrong than statements that can't be read."""
    return all(finding.kind.name in _LINES for finding in gathered.findings)


def the_rest(computed: tuple[Diagnostic, ...], gathered: Gathered) -> tuple[Diagnostic, ...]:
    """The computed findings that are true whatever those lines will say: on other things than theirs, and not for want of a fact."""
    touched = {word for span in gathered.skipped for word in _words(span, gathered)}
    return tuple(
        finding
        for finding in computed
        if finding.level is not Level.CANT_CHECK
        and not touched & {part for name in finding.subject for part in name.split(".")}
    )


def _words(span: Span, gathered: Gathered) -> list[str]:
    """The names in a line that was passed over, and that of the block in which it stands."""
    found = re.findall(r"[A-Za-z][\w-]*", span.text)
    for statement in gathered.statements:
        block: Any = statement
        if block.span.source is span.source and block.span.start <= span.start < block.span.end:
            name = getattr(block, "name", None)
            found += [name.text] if name is not None else []
    return found
