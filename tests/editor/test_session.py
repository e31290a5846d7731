"""What an editor has open counts before the disk, in every rig that uses it; a half-written line leaves the rest checked."""

from __future__ import annotations

from pathlib import Path

import pytest

from editor.desk import LEADS, STARTER, Desk
from rigc.editor.session import Session

RIG = STARTER + LEADS


def codes(desk: Desk) -> set[str]:
    """The names of the rules that are told."""
    return {each.kind.name for each in desk.session.findings(desk.path)}


def test_findings_of_lines_and_names_need_no_computing(tmp_path: Path) -> None:
    desk = Desk(tmp_path, RIG.replace("draws 8 mA", "draws mA"))
    assert codes(desk) == {"malformed-statement"}
    desk.put(RIG.replace("of mini-coax", "of mini-coxa"))
    assert codes(desk) == {"unknown-name"}


def test_computed_findings_stay_where_their_lines_go(tmp_path: Path) -> None:
    desk = Desk(tmp_path, RIG)
    desk.check()
    before = [(each.kind.name, each.span.line) for each in desk.session.findings(desk.path) if each.span]
    desk.put(f"# one\n# two\n{RIG}")
    after = [(each.kind.name, each.span.line) for each in desk.session.findings(desk.path) if each.span]
    assert before
    assert sorted(after) == sorted((name, line + 2) for name, line in before)


def test_the_rest_is_checked_while_a_line_is_half_written(tmp_path: Path) -> None:
    """The second unit needs 12 V, which no outlet gives; the half-written line is in the first one's block."""
    wrong = RIG.replace("  digital\n  delay\n", "  digital\n  delay\n  needs 12 V dc\n")
    whole = Desk(tmp_path, wrong)
    whole.check()
    half = Desk(tmp_path, wrong.replace("draws 8 mA", "draws 8 mA x"))
    half.check()
    assert "malformed-statement" in codes(half)
    told = {each.message for each in half.session.findings(half.path)}
    on_echo = {
        each.message for each in whole.session.findings(whole.path) if "echo" in each.subject and each.level == 0
    }
    assert on_echo
    assert on_echo <= told
    assert not any("drive" in each.subject for each in half.session.findings(half.path))
    assert half.session.computed(half.path) is not None


def test_a_rig_whose_names_are_broken_is_not_computed(tmp_path: Path) -> None:
    desk = Desk(tmp_path, RIG.replace("chain guitar -> drive", "chain guitar -> drivee"))
    desk.check()
    assert desk.session.computed(desk.path) is None


def test_an_open_file_counts_in_the_rig_that_uses_it(tmp_path: Path) -> None:
    bench = tmp_path / "bench.rig"
    bench.write_text("language 1\ncable thin {\n  carries audio\n}\n")
    text = RIG.replace('use "stock/premade.rig"', 'use "stock/premade.rig"\nuse "bench.rig"')
    desk = Desk(tmp_path, text.replace("of mini-coax", "of thinner"))
    assert codes(desk) == {"unknown-name"}
    desk.session.put(bench, "language 1\ncable thinner {\n  carries audio\n}\n")
    assert desk.session.rig_of(bench) == desk.path
    assert desk.session.rigs_touched_by(bench) == [desk.path]
    assert codes(desk) == set()
    desk.session.put(bench, None)
    assert codes(desk) == {"unknown-name"}


def test_a_file_that_is_open_alone_finds_the_rig_that_uses_it(tmp_path: Path) -> None:
    bench = tmp_path / "bench.rig"
    bench.write_text("language 1\ncable thin {\n  carries audio\n}\n")
    desk = Desk(tmp_path, RIG)
    desk.path.write_text(RIG.replace('use "stock/premade.rig"', 'use "stock/premade.rig"\nuse "bench.rig"'))
    alone = Session(desk.session.reader)
    alone.put(bench, bench.read_text())
    assert alone.rig_of(bench) == desk.path


def test_a_file_of_stock_that_no_rig_uses_is_no_rig_and_need_not_be(tmp_path: Path) -> None:
    desk = Desk(tmp_path, "language 1\ncable thin {\n  carries audio\n}\n")
    assert codes(desk) == set()
    desk.put("language 1\nchain a -> b\n")
    assert "no-rig" in codes(desk)


def test_computing_is_stopped_between_two_computations(tmp_path: Path) -> None:
    desk = Desk(tmp_path, RIG)

    class Stopped(Exception):
        pass

    calls = []

    def between() -> None:
        calls.append(1)
        if len(calls) == 5:
            raise Stopped

    with pytest.raises(Stopped):
        desk.session.check(desk.path, between)
    assert len(calls) == 5
    assert desk.session.computed(desk.path) is None
    desk.check()
    assert desk.session.computed(desk.path) is not None


def test_a_file_outside_the_project_is_not_read_because_it_is_open(tmp_path: Path) -> None:
    outside = tmp_path.parent / f"{tmp_path.name}-outside.rig"
    desk = Desk(tmp_path, f'language 1\nuse "../{outside.name}"\n')
    desk.session.put(outside, "language 1\n")
    assert "unusable-file" in codes(desk)
