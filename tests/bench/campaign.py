"""Throws spoiled rigs at every command, and counts what comes back.

    python tests/bench/campaign.py 2000 [FIRST_SEED] [COMMAND ...] [60min] [keep]

Each input is one rig of this project (examples, the rigs of tests, the cases of the checks) with words gone, twice, exchanged, absurd or
of odd signs, with lines in other blocks, blocks of other rigs, one name for two things, another unit of measure or a number at an end of
its range, made from its seed alone. A command has to answer: with exit code 0, 1 or 2, in 10 s of processor time, within 1 GB, without
a value that is none in what it prints. What does not is kept in the folder `campaign-failures`, named by command and seed, and listed.
`compile` is the check without its command: no mend tried, nothing written, `RUN` spoils of one rig after another, each taking from the last what
the spoil left alone, as an editor does, so that many inputs can be; it is asked for alone. One of `FULL` is compiled afresh as well, and has to
come to the same, and once more with all that a command seeks. What is found is judged: each finding has a place, something
to do and no hole in a sentence (`poor`). After so many minutes no more are begun; `keep` adds what was counted to `campaign.md` beside
this file.
"""

from __future__ import annotations

import contextlib
import gc
import io
import random
import re
import resource
import signal
import sys
import time
from collections import Counter, defaultdict
from concurrent.futures import ProcessPoolExecutor
from datetime import date
from multiprocessing import get_context
from pathlib import Path
from shutil import copyfile
from tempfile import TemporaryDirectory
from types import FrameType

HERE = Path(__file__).parent.parent
sys.path[:0] = [str(HERE), str(HERE.parent)]

from spoiled import spoiled  # noqa: E402

from rigc.analysis.results import Beside, Results  # noqa: E402
from rigc.cli import main  # noqa: E402
from rigc.compile import compile_rig, read_rig  # noqa: E402
from rigc.diagnostics.diagnostic import Diagnostic, Level  # noqa: E402
from rigc.diagnostics.terminal import text as text_of  # noqa: E402
from rigc.files.disk import Disk  # noqa: E402
from rigc.files.reader import CachedReader  # noqa: E402
from rigc.files.reading import decode  # noqa: E402
from rigc.loader import Unreadable  # noqa: E402
from rigc.model.resolve import KnownThings  # noqa: E402
from rigc.source import Source  # noqa: E402
from rigc.syntax.parse import parse  # noqa: E402
from rigc.syntax.parsed import Parsed  # noqa: E402

COMMANDS = ("check", "build", "diff", "fmt", "pin", "rename", "mend", "why")
MOST_S = 10
MOST_BYTES = 1 << 30
BATCH, QUICK_BATCH = 400, 8000
"""So many inputs go through one process, of `compile` alone more: what it keeps is not the next ones' trouble."""
RUN = 40
"""So many spoils of one rig follow one another."""
FULL = 20
"""One of so many is compiled afresh too, and with the advice and the effort of a command; the others seek no places."""
FINE = ("exit 0", "exit 1", "exit 2")
FAILURES = Path("campaign-failures")
LITTLE_EFFORT = 50
TABLE = Path(__file__).with_suffix(".md")
READER = CachedReader()
_NO_VALUE = re.compile(r"(?<![\w-])(?:nan|inf|None|Traceback)(?![\w-])|<[a-z]+ ?[a-z.]* at 0x")

_HOLE = re.compile(
    r"  |(?<!\w)''|\(\)|\[\]| [,;:.](?![\w.])|\{\}|, ,|,,|\b(?:(?:the the|a a|of of)\b|an? $)|\w+\(\w+=|\b(and|or|the|with)$|^\W*$"
)
_QUOTED = re.compile(r"'[^']+'|\"[^\"]+\"")


class TooLong(BaseException):
    """An input took longer than any may."""


def rigs() -> list[Path]:
    """The rigs that are spoiled: few large ones and many small ones, in an order that stays."""
    large = [*(HERE.parent / "examples").glob("*/board.rig"), *(HERE / "rigs").glob("*.rig")]
    small = [
        path
        for path in (HERE / "analysis" / "checks" / "cases").rglob("*.rig")
        if path.name[0] != "." and path.stat().st_size < 4000
    ]
    return [
        path
        for path in sorted(large) + sorted(small)
        if path.name[0] != "." and re.search(r"\s\d\d? ", path.read_text("utf-8"))
    ]


def words_of(command: str, good: Path, bad: Path, out: Path, dice: random.Random) -> list[str]:
    """The command line for a spoiled rig."""
    names = re.findall(r"(?m)^(?:unit|amp|supply|instrument|deck) ([a-z][\w-]*)", good.read_text("utf-8")) or ["none"]
    return {
        "check": ["check", str(bad)],
        "build": ["build", "--draft", "-o", str(out), str(bad)],
        "diff": ["diff", *((str(good), str(bad)) if dice.random() < 0.5 else (str(bad), str(good)))],
        "fmt": ["fmt", "--diff", str(bad)],
        "pin": ["pin", "--diff", str(bad)],
        "rename": ["rename", dice.choice(names), "other-name", "--diff", str(bad)],
        "mend": ["mend", "--diff", str(bad)],
        "why": ["why", dice.choice((*names, "A1", "D1")), str(bad)],
    }[command]


class Shelf:
    """One rig and what it uses, read once, for many spoils of it: the loader and the reader of each of these."""

    def __init__(self, path: Path) -> None:
        self._disk = Disk(path)
        self.name = self._disk.name
        self.good = path.read_text("utf-8")
        self._source = Source(self.name, self.good)
        self._parsed: dict[Source, Parsed] = {}
        self._near: Parsed | None = None
        self._near = self.parse(self._source)
        self.reserved = READER.reserved
        self._last: Results | None = None
        self._known: KnownThings | None = None
        self.going_on()

    def spoil(self, text: str) -> None:
        """From now on the rig holds this text. Raises `Unreadable`."""
        self._source = decode(text.encode("utf-8", "surrogatepass"), self.name)

    def __call__(self, name: str) -> Source:
        return self._source if name == self.name else self._disk(name)

    def parse(self, source: Source, near: Parsed | None = None) -> Parsed:
        """As `CachedReader` does, from memory."""
        if near is not None or source.name == self.name:
            return parse(source, READER.grammar, near or self._near)
        if source not in self._parsed:
            self._parsed[source] = parse(source, READER.grammar)
        return self._parsed[source]

    def going_on(self) -> tuple[Diagnostic, ...]:
        """What is found, where what is as it was in the last text is not computed again. Raises `Unreadable`."""
        read = read_rig(self, self.name, self, KnownThings(self._known))
        self._known = read.known
        last = Beside(self._last, goes_on=True)
        made = compile_rig(self, self.name, self, advice=False, effort=LITTLE_EFFORT, read=read, beside=last)
        if made.results is not None:
            self._last = made.results
        return made.findings


def compiled(shelf: Shelf, text: str, full: bool) -> tuple[str, list[str]]:
    """What the check comes to, in a word, and what of its findings is poor."""
    try:
        shelf.spoil(text)
        found = shelf.going_on()
    except Unreadable:
        return "exit 2", []
    if not full:
        return f"exit {int(any(each.level is Level.ERROR for each in found))}", [
            lack for each in found for lack in lacks(each, text, False)
        ]
    if compile_rig(shelf, shelf.name, shelf, advice=False, effort=LITTLE_EFFORT).findings != found:
        return "found otherwise than in a first look", []
    made = compile_rig(shelf, shelf.name, shelf)
    odd = [found for found in _NO_VALUE.findall(text_of(made.findings)) if found.lower() not in text.lower()]
    outcome = f"printed {odd[0]}" if odd else f"exit {int(made.has_errors)}"
    return outcome, [lack for each in made.findings for lack in lacks(each, text, True)]


def lacks(finding: Diagnostic, text: str, full: bool) -> list[str]:
    """What a finding lacks, with the finding."""
    told = f"{finding.message} [{finding.kind.name}] do: {finding.advice}"
    return [f"{why}: {told}" for why in poor(finding, text, full)]


def poor(finding: Diagnostic, text: str, full: bool) -> list[str]:
    """What a finding lacks that each should have: a place, something to do, whole sentences. Its mends were not tried, and are not judged."""
    ours = (
        finding.message,
        finding.note,
        finding.label,
        *(each.text for each in finding.also),
        finding.help,
    )
    return [
        *(["no place"] if finding.span is None else []),
        *(["nothing to do"] if full and not finding.advice else []),
        *(f"hole in {each!r}" for each in ours if each and _HOLE.search(_QUOTED.sub("'x'", each))),
        *(
            f"{found} in {each!r}"
            for each in ours
            for found in _NO_VALUE.findall(each)
            if found.lower() not in text.lower()
        ),
    ]


def answered(words: list[str], text: str) -> tuple[str, float]:
    """What a command came to, in a word, and the seconds of processor time that it took."""
    out, err = (io.TextIOWrapper(io.BytesIO(), "utf-8", errors="backslashreplace") for _ in range(2))
    signal.setitimer(signal.ITIMER_PROF, MOST_S)
    begin = time.process_time()
    try:
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
            code = main(words)
    except TooLong:
        return f"longer than {MOST_S} s", time.process_time() - begin
    except MemoryError:
        return "more than 1 GB", time.process_time() - begin
    except Exception as fault:
        return f"raised {type(fault).__name__}", time.process_time() - begin
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
    took = time.process_time() - begin
    printed = "".join(_read(each) for each in (out, err))
    if code not in (0, 1, 2):
        return f"exit {code}", took
    odd = [found for found in _NO_VALUE.findall(printed) if found.lower() not in text.lower()]
    return (f"printed {odd[0]}" if odd else f"exit {code}"), took


def _read(stream: io.TextIOWrapper) -> str:
    stream.flush()
    stream.seek(0)
    return stream.read()


def batch(first: int, last: int, commands: tuple[str, ...]) -> list[tuple[int, str, str, str, float]]:
    """Seeds `first` to `last - 1`, in a process of its own: seed, command, rig, what it came to, seconds. What failed is kept."""
    _guarded()
    kept = READER.grammar  # each command reads the tables anew, which takes longer than most inputs
    CachedReader.grammar = property(lambda _: kept)  # type: ignore[assignment]
    sources = rigs()
    found = []
    for seed in range(first, last):
        dice = random.Random(seed)
        source = sources[dice.randrange(len(sources))] if dice.random() < 0.8 else sources[dice.randrange(12)]
        command = commands[seed % len(commands)]
        text = spoiled(source.read_text("utf-8"), seed)
        bad = source.with_name(f".campaign-{seed}.rig")
        try:
            bad.write_bytes(text.encode("utf-8", "surrogatepass"))
            with TemporaryDirectory() as folder:
                outcome, took = answered(words_of(command, source, bad, Path(folder) / "out", dice), text)
            if outcome not in FINE:
                FAILURES.mkdir(exist_ok=True)
                copyfile(bad, FAILURES / f"{command}-{seed}.rig")
        finally:
            bad.unlink(missing_ok=True)
        found.append((seed, command, source.relative_to(HERE.parent).as_posix(), outcome, took))
    return found


def quick_batch(first: int, last: int) -> list[tuple[int, str, str, str, float]]:
    """As `batch`, of `compile` alone."""
    _guarded()
    sources = rigs()
    found = []
    for start in range(first, last, RUN):
        dice = random.Random(start)
        source = dice.choice(sources) if dice.random() < 0.98 else sources[dice.randrange(12)]
        shelf = Shelf(source)
        name = source.relative_to(HERE.parent).as_posix()
        for seed in range(start, min(start + RUN, last)):
            text = spoiled(shelf.good, seed)
            short: list[str] = []
            begin = time.process_time()
            signal.setitimer(signal.ITIMER_PROF, MOST_S)
            try:
                outcome, short = compiled(shelf, text, seed % FULL == 0)
            except TooLong:
                outcome = f"longer than {MOST_S} s"
            except MemoryError:
                outcome = "more than 1 GB"
            except Exception as fault:
                outcome = f"raised {type(fault).__name__}"
            finally:
                signal.setitimer(signal.ITIMER_PROF, 0)
            found.append((seed, "compile", name, outcome, time.process_time() - begin))
            if outcome not in FINE or short:
                FAILURES.mkdir(exist_ok=True)
                (FAILURES / f"{'poor' if outcome in FINE else 'compile'}-{seed}.rig").write_bytes(
                    text.encode("utf-8", "surrogatepass")
                )
            for each in short:
                print(f"poor {seed} ({name}): {each}", flush=True)
    return found


def _guarded() -> None:
    signal.signal(signal.SIGPROF, _stop)
    resource.setrlimit(resource.RLIMIT_AS, (2 * MOST_BYTES, 2 * MOST_BYTES))
    gc.freeze()
    gc.set_threshold(100_000, 20, 20)


def run(count: int, first: int, commands: tuple[str, ...], minutes: float, keep: bool) -> int:
    """The campaign; the number of failures."""
    counts: dict[str, Counter[str]] = defaultdict(Counter)
    times: dict[str, list[float]] = defaultdict(list)
    failures = 0
    last, end = first, time.monotonic() + 60 * minutes
    with ProcessPoolExecutor(1, max_tasks_per_child=1, mp_context=get_context("spawn")) as workers:
        quick = commands == ("compile",)
        step = QUICK_BATCH if quick else BATCH
        for start in range(first, first + count, step):
            if time.monotonic() > end:
                break
            last = min(start + step, first + count)
            job = workers.submit(quick_batch, start, last) if quick else workers.submit(batch, start, last, commands)
            try:
                done = job.result()
            except KeyboardInterrupt:  # what was counted so far is told
                last = start
                break
            for seed, command, source, outcome, took in done:
                counts[command][outcome] += 1
                times[command].append(took)
                if outcome not in FINE:
                    failures += 1
                    print(f"{command} {seed} ({source}): {outcome}", flush=True)
            print(f"{last - first} inputs so far", file=sys.stderr, flush=True)
    rows = []
    for command, outcomes in counts.items():
        seconds = sorted(times[command])
        told = ", ".join(f"{outcome} {number}" for outcome, number in sorted(outcomes.items()))
        middle, worst = seconds[len(seconds) // 2], seconds[-1]
        print(f"{command:7}{len(seconds):7} inputs: {told}; middle {middle:.2f} s, worst {worst:.2f} s")
        wrong = sum(number for outcome, number in outcomes.items() if outcome not in FINE)
        seeds = f"{first} to {last - 1}"
        rows.append(
            f"| {date.today()} | {command} | {len(seconds)} | {wrong} | {middle:.2f} | {worst:.2f} | {seeds} |\n"
        )
    print(f"{last - first} inputs, seeds {first} to {last - 1}: {failures} failures")
    if keep:
        with TABLE.open("a", encoding="utf-8") as table:
            table.writelines(rows)
    return failures


def _stop(_signal: int, _frame: FrameType | None) -> None:
    raise TooLong


if __name__ == "__main__":
    given = sys.argv[1:]
    chosen = tuple(word for word in given if word in (*COMMANDS, "compile")) or COMMANDS
    limits = [float(word.removesuffix("min")) for word in given if re.fullmatch(r"\d+min", word)]
    numbers = [int(word) for word in given if word.isdigit()]
    minutes = limits[0] if limits else 1e6
    count, start = (*numbers, 2000, 0)[:2] if len(numbers) != 1 else (numbers[0], 0)
    sys.exit(run(count, start, chosen, minutes, "keep" in given) > 0)
