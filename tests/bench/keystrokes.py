"""How long an editor waits after an edit of the touring rig: `python tests/bench/keystrokes.py [EDITS]` (200).

Each edit is random, of a number, a word or a line, some of which can't be read; the text is put back after it. Told are the median and the worst of
processor time in ms: of the first answer after the edit (the rig read and resolved, its findings, what can stand at the cursor), of each
further answer, and of computing everything, which goes on behind these. No test compares them: they hang on the machine.
"""

from __future__ import annotations

import random
import re
import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path

from rigc.editor import rubbish
from rigc.editor.answers.colours import colours
from rigc.editor.answers.hover import hover
from rigc.editor.answers.inlays import inlays
from rigc.editor.answers.outline import outline
from rigc.editor.completion.offers import offers
from rigc.editor.completion.spot import spot
from rigc.editor.session import Session
from rigc.files.reader import CachedReader

BOARD = Path(__file__).parent.parent.parent / "examples" / "long-haul" / "board.rig"


def edited(text: str, dice: random.Random) -> tuple[str, int]:
    """The text after one edit, and where the cursor then stands."""
    way = dice.randrange(4)
    if way == 0:  # another digit
        found = dice.choice(list(re.finditer(r"\d", text)))
        return f"{text[: found.start()]}{dice.randrange(10)}{text[found.end() :]}", found.end()
    if way == 1:  # a word less at the end of a line, as when it is typed
        found = dice.choice(list(re.finditer(r" \S+$", text, re.MULTILINE)))
        return f"{text[: found.start() + 1]}{text[found.end() :]}", found.start() + 1
    at = dice.choice([found.end() for found in re.finditer(r"\n", text)])
    if way == 2:  # a new line is begun
        return f"{text[:at]}  dr\n{text[at:]}", at + 4
    return f"{text[:at]}# a remark\n{text[at:]}", at


def main(edits: int) -> None:
    """Prints a line for each thing that was timed."""
    rubbish.seldom()
    reader = CachedReader()
    session, path, dice = Session(reader), BOARD.resolve(), random.Random(14)
    text = path.read_text("utf-8")
    session.put(path, text)
    session.check(path).computed.reasoning  # type: ignore[union-attr]  # noqa: B018
    reader.grammar.follows("", "")
    times: dict[str, list[float]] = {}

    def timed(name: str, asked: Callable[[], object]) -> None:
        begin = time.process_time()
        asked()
        times.setdefault(name, []).append((time.process_time() - begin) * 1000)

    for number in range(edits):
        changed, offset = edited(text, dice)
        session.put(path, changed)

        def first(offset: int = offset) -> None:
            session.findings(path)
            draft, source = session.source(path)
            offers(spot(source.text, offset), draft, session.computed(path), reader.grammar.follows)

        timed("first answer", first)
        draft, source = session.source(path)
        done = session.computed(path)
        timed("hover", lambda d=draft, s=source, o=offset, c=done: hover(d, c, s, o))  # type: ignore[misc]
        timed("inlay values", lambda d=draft, s=source, c=done: inlays(d, c, s))  # type: ignore[misc]
        timed("colours", lambda d=draft, s=source: colours(d, s))  # type: ignore[misc]
        timed("outline", lambda s=source: outline(session.reader.parse(s).file))  # type: ignore[misc]
        if number % 10 == 0:
            timed("all findings", lambda: session.check(path))
            rubbish.tidy()
    for name, took in times.items():
        print(f"{name:14} {len(took):4} times  median {statistics.median(took):6.1f} ms  worst {max(took):6.1f} ms")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 200)
