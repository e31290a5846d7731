"""Counts what mends are worth: over every case of the checks, and over slips dealt into the examples.

    python tests/bench/mends.py [SLIPS]      (2,000 if not said)

A mend counts as working when, applied to the text and compiled, its finding is gone and no error or warning has come. What does not
work is not printed by rigc; it is listed here, since each is advice that could be better.
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path

HERE = Path(__file__).parent.parent
sys.path[:0] = [str(HERE), str(HERE.parent)]

from cases import READER, ROOT  # noqa: E402
from dealt_faults import dealt_fault  # noqa: E402

from rigc.compile import compile_rig  # noqa: E402
from rigc.files.disk import Disk  # noqa: E402
from rigc.proved import Bench  # noqa: E402

EXAMPLES = ("back-bedroom", "tide-line", "long-haul")


class Tally:
    """Findings, those with a mend that works, mends offered and working, and the rules of those that fail."""

    def __init__(self) -> None:
        self.findings = self.mended = self.offered = self.working = 0
        self.failing: Counter[str] = Counter()

    def add(self, path: Path, text: str, rule: str = "", known: frozenset[str] = frozenset()) -> None:
        """Compiles the text as if it stood at the path, and tries the mends of what is found (of that rule; not known before)."""
        load = Disk(path, root=ROOT, given=text.encode())
        made = compile_rig(load, load.name, READER)
        bench = Bench(made, load, load.name, READER)
        for finding in made.findings:
            if rule not in ("", finding.kind.name) or finding.fingerprint in known or finding.accepted is not None:
                continue
            works = [bench.tried(finding, mend).works for mend in finding.mends]
            self.findings += 1
            self.mended += any(works)
            self.offered += len(works)
            self.working += sum(works)
            self.failing[finding.kind.name] += works.count(False)

    def __str__(self) -> str:
        worst = ", ".join(f"{rule} {count}" for rule, count in self.failing.most_common(12) if count)
        return (
            f"{self.findings} findings, {self.mended} of them with a mend that works; {self.offered} mends offered, "
            f"{self.working} work" + (f"; those that do not: {worst}" if worst else "")
        )


def main(slips: int) -> None:
    """Prints one line for the cases and one for the slips."""
    cases = Tally()
    for case in sorted((HERE / "analysis" / "checks" / "cases").rglob("*.rig")):
        cases.add(case, case.read_text("utf-8"), case.parent.name)
    print(f"cases: {cases}")
    dealt = Tally()
    boards = [ROOT / "examples" / name / "board.rig" for name in EXAMPLES]
    texts = [board.read_text("utf-8") for board in boards]
    known = []
    for board, text in zip(boards, texts, strict=True):
        load = Disk(board, root=ROOT, given=text.encode())
        known.append(frozenset(each.fingerprint for each in compile_rig(load, load.name, READER).findings))
    for seed in range(slips):
        at = seed % len(boards)
        dealt.add(boards[at], dealt_fault(texts[at], seed), known=known[at])
    print(f"{slips} slips: {dealt}")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 2_000)
