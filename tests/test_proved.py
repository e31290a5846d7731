"""Mends are tried before they are told: one that leaves its finding, or brings another, is not."""

from __future__ import annotations

from typing import NamedTuple

import pytest
from cases import READER, ROOT
from dealt_faults import dealt_fault

from rigc.compile import Compiled, compile_rig
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.files.disk import Disk
from rigc.files.reader import CachedReader
from rigc.proved import Bench, _against
from rigc.source import Source
from rigc.syntax.parsed import Parsed

BEFORE = """rig toy "Toy" {
  revision A 2026-03-02
}
"""
USELESS = 'accept too-heavy on toy "as it is" by "R.K." until 2026-12-31'


def bench() -> Bench:
    """A rig whose only finding is an accept that accepts nothing."""
    load = Disk(ROOT / "toy.rig", root=ROOT, given=f"{BEFORE}{USELESS}\n".encode())
    return Bench(compile_rig(load, load.name, READER), load, load.name, READER)


def useless(made: Compiled) -> Diagnostic:
    (finding,) = [each for each in made.findings if each.kind.name == "useless-accept"]
    return finding


def test_a_mend_that_works_is_told() -> None:
    on = bench()
    finding = useless(on.made)
    assert on.proved(finding).advice == "delete this line"
    assert on.tried(finding, finding.mends[0]).texts == {"toy.rig": BEFORE}


def test_a_mend_that_leaves_its_finding_or_brings_another_is_not_told() -> None:
    on = bench()
    finding = useless(on.made)
    assert finding.span is not None
    nothing = Mend("write it again", (Replace(finding.span, USELESS),))
    another = Mend("write what can't be read", (Replace(finding.span, "accept what is to come"),))
    good = Mend("delete it", (Delete(finding.span),))
    assert on.proved(finding.replace(mends=(nothing, another, good))).mends == (good,)


def test_what_is_left_is_told_only_where_no_mend_works() -> None:
    on = bench()
    finding = useless(on.made).replace(otherwise="ask who signed it")
    assert finding.span is not None
    nothing = Mend("write it again", (Replace(finding.span, USELESS),))
    assert on.proved(finding.replace(mends=(nothing,))).advice == "ask who signed it"
    assert on.proved(finding).advice == "delete this line"


def test_where_no_mend_works_what_speaks_against_each_is_told() -> None:
    on = bench()
    finding = useless(on.made)
    assert finding.span is not None
    nothing = Mend("write it again", (Replace(finding.span, USELESS),))
    another = Mend("name what is nowhere", (Replace(finding.span, USELESS.replace("toy", "tern")),))
    tried = on.proved(finding.replace(mends=(nothing, another)))
    assert tried.mends == ()
    assert tried.advice == (
        "no single change that was tried mends it: to write it again would not change it; to name what is nowhere would bring "
        "the error that nothing declares 'tern'; what the finding is about goes here. More than one thing must change together"
    )
    assert on.proved(finding.replace(mends=(nothing,), help="measure it")).advice == "measure it"
    assert on.proved(finding.replace(mends=(nothing,), otherwise="add a supply")).advice == "add a supply"


def test_when_too_many_were_tried_the_rest_is_left_to_the_command() -> None:
    on = bench()
    on.left = 0
    assert on.proved(useless(on.made)).advice == "`rigc mend` tries the ways to mend it"


def test_one_mend_is_made_on_top_of_another() -> None:
    on = bench()
    finding = useless(on.made)
    above = on.on_top(on.tried(finding, finding.mends[0]))
    assert "useless-accept" in {each.kind.name for each in on.made.findings}
    assert "useless-accept" not in {each.kind.name for each in above.made.findings}


class _Watched(NamedTuple):
    files: list[str]
    tried: list[str]
    reserved: frozenset[str] = READER.reserved

    def parse(self, source: Source, near: Parsed | None = None) -> Parsed:
        (self.files if near is None else self.tried).append(source.text)
        return READER.parse(source, near)


def test_what_is_only_tried_never_takes_the_place_of_a_file() -> None:
    on = bench()
    watched = _Watched([], [])
    on.reader = watched
    made = on.tried(useless(on.made), useless(on.made).mends[0])
    assert list(made.texts.values()) == watched.tried
    assert not {*watched.tried} & {*watched.files}


RING = """language 1
use "stock/plugs.rig"
rig toy "Toy" {
  revision A 2026-03-02
}
amp left {
  input in ts
  earthed
}
amp right like left {
}
unit fork {
  body 145 x 130 x 60 mm
  output outl ts rear 70 mm up 25 mm
  output outr ts rear 45 mm up 25 mm
}
unit tern {
  input in ts
  output out ts
}
chain tern -> right
chain fork.outl -> left
chain fork.outr -> tern
deck plank {
  size 400 x 200 mm
}
place {
  fork at 10, 10 mm
}
leads {
  audio plug flat-angle
}
"""


def test_what_was_found_before_is_no_new_trouble_when_leads_get_other_numbers() -> None:
    """The mend states A2 and A3, so that the lead from tern to right, A1 before, becomes A4 behind them."""
    load = Disk(ROOT / "toy.rig", root=ROOT, given=RING.encode())
    on = Bench(compile_rig(load, load.name, READER), load, load.name, READER)
    by_kind = {each.kind.name: each for each in on.made.findings if each.level is Level.ERROR}
    assert "two-mains-earths" in by_kind
    assert on.proved(by_kind["plugs-collide"]).advice.startswith("use 'barrel-angle' at 'outr' and 'outl'")


@pytest.mark.parametrize("seed", range(4))
def test_a_trial_that_goes_by_what_the_mend_does_not_touch_comes_to_the_same(seed: int) -> None:
    """As one that reads, resolves and computes all."""
    board = ROOT / "examples/back-bedroom/board.rig"
    load = Disk(board, root=ROOT, given=dealt_fault(board.read_text("utf-8"), seed).encode())
    reader = CachedReader()
    on = Bench(compile_rig(load, load.name, reader), load, load.name, reader)
    for finding in [each for each in on.made.findings if each.mends][:2]:
        tried = on.tried(finding, finding.mends[0])
        assert tried.against == _against(finding, on.made, on.after(tried.texts), set(tried.texts))


def advice(line: str, end: str = "\n") -> list[str]:
    """What is advised on a supply's line that is written wrongly."""
    text = f"language 1\n{BEFORE}supply mill {{\n  {line}\n}}\n".replace("\n", end)
    load = Disk(ROOT / "toy.rig", root=ROOT, given=text.encode())
    on = Bench(compile_rig(load, load.name, READER), load, load.name, READER)
    return [on.proved(each).advice for each in on.made.findings if each.kind.name == "malformed-statement"]


@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_of_several_mistakes_in_a_line_all_are_mended(end: str) -> None:
    """Each mend alone leaves the next mistake; together they make the line."""
    whole = "write mains 100..240 V 50..60 Hz"
    assert advice("mains 100 to 240 V 50 to 60 Hz", end) == [whole]
    assert advice("mains 100 to 240 V 50 to 60 Hz  # as printed", end) == [whole]
    assert advice("mains 100 to 240 V 50..60 Hz", end) == ["write 100..240"]


def test_where_nothing_mends_a_line_the_reference_shows_one() -> None:
    (told,) = advice("outlet 1 100 to 240 V of mains")
    assert told.startswith("write it as in the language reference: outlet ")
