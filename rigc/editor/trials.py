"""Mends that were tried for an editor: each once after an edit, since it asks at every move of the cursor."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.mend import Mend
from rigc.proved import Bench, Tried


class Trials:
    """Tries mends on a bench, so many as this allows; what was tried stays known."""

    def __init__(self, bench: Bench) -> None:
        self.bench = bench
        self._known: dict[tuple[str, str, str], Tried] = {}

    def tried(self, finding: Diagnostic, mend: Mend) -> Tried | None:
        """What it came to; None where too many were tried."""
        key = (finding.fingerprint, finding.message, mend.words)
        if key not in self._known:
            if self.bench.left == 0:
                return None
            self.bench.left -= 1
            self._known[key] = self.bench.tried(finding, mend)
        return self._known[key]
