"""What an `accept` does: all findings of a rule on a target, the rig itself as target, its end, and rules that are none."""

from __future__ import annotations

from cases import READER

from rigc.compile import compile_rig
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.source import Source

# Invented: a board of 25 kg is over what one person lifts (23 kg).
HEAVY = """language 1
rig sample {
  revision A 2026-03-02
}
deck plank {
  size 400 x 300 mm
  thickness 12 mm
  mass 24 kg
}
unit organ {
  body 200 x 200 x 80 mm
  mass 1 kg
}
place {
  organ at 10, 10 mm
}
mounting {
  organ bolted
}
"""
# 120 V at a supply for 230 V is an error in each scenario, and no signature makes it good.
MAINS = """scenario us {
  mains 120 V 60 Hz
}
scenario jp {
  mains 100 V 50 Hz
}
unit marl {
  input in ts
  output out ts
  inlet dc barrel 5.5 x 2.1 mm
  needs 9 V dc
  draws 8 mA
}
supply brook {
  linear
  mains 230 V 50 Hz
  outlet o1 9 V dc 100 mA isolated
}
power {
  marl from brook.o1
}
"""
SIGNED = '"two of us carry it" by "R.K." until 2026-12-31\n'


def test_the_rig_itself_can_be_what_a_finding_is_about() -> None:
    (heavy,) = _told(f"accept too-heavy on sample {SIGNED}", "too-heavy")
    assert heavy.accepted is not None
    assert heavy.accepted.by == "R.K."


def test_a_name_that_nothing_declares_is_told() -> None:
    (unknown,) = _told(f"accept too-heavy on simple {SIGNED}", "unknown-name")
    assert unknown.message.startswith("nothing declares 'simple'")


def test_a_rule_that_there_is_not_is_told_with_the_nearest() -> None:
    (useless,) = _told(f"accept to-heavy on sample {SIGNED}", "useless-accept")
    assert useless.message == "to-heavy is accepted, but there is no such rule"
    assert useless.span is not None
    assert useless.span.text == "to-heavy"
    assert useless.advice == "write too-heavy"


def test_an_end_before_the_revision_accepts_nothing() -> None:
    text = 'accept too-heavy on sample "once" by "R.K." until 2026-03-01\n'
    (heavy,) = _told(text, "too-heavy")
    assert heavy.accepted is None
    assert len(_told(text, "ended-accept")) == 1


def test_errors_that_are_firm_are_told_once_an_accept() -> None:
    text = f"{MAINS}accept unfit-mains on brook {SIGNED}"
    assert [finding.accepted for finding in _told(text, "unfit-mains")] == [None, None]
    (firm,) = _told(text, "firm-finding")
    assert firm.message.endswith("(and 1 more)")
    assert len(firm.also) == 2


def _told(text: str, code: str) -> list[Diagnostic]:
    made = compile_rig(lambda name: Source(name, HEAVY + text), "sample.rig", READER)
    return [finding for finding in made.findings if finding.kind.name == code]
