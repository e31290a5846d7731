"""What an `accept` does: all findings of a rule on a target, the rig itself as target, its end, and rules that are none."""

from __future__ import annotations

import re

import pytest
from cases import READER

from rigc.analysis.acceptance import accepted, read_seal, seal_of, signature
from rigc.compile import compile_rig
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.explain import all_kinds, page
from rigc.model.records import Accept
from rigc.source import Source, Span

SPAN = Span(Source("a.rig", "x"), 0, 1)

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


# Signed at 25 kg over the 23 kg of one lifter.
SEALED = f'accept too-heavy on sample {SIGNED[:-1]} seal "912e10b0 25 kg, 23 kg"\n'


def test_the_rig_itself_can_be_what_a_finding_is_about() -> None:
    (heavy,) = _told(SEALED, "too-heavy")
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


def test_an_accept_without_a_seal_is_told_the_seal_and_accepts_nothing() -> None:
    text = f"accept too-heavy on sample {SIGNED}"
    (heavy,) = _told(text, "too-heavy")
    assert heavy.accepted is None
    (unsigned,) = _told(text, "unsigned-accept")
    assert unsigned.message == "what too-heavy on sample accepts is not signed for"
    seal = unsigned.help.rpartition("seal ")[2]
    assert f"{text[:-1]} seal {seal}\n" == SEALED  # what is told is what is to be written


@pytest.mark.parametrize(("deck_g", "holds"), [(24_000, True), (23_999, True), (22_001, True), (24_001, False)])
def test_a_seal_covers_the_figure_that_was_signed_and_better_ones(deck_g: int, holds: bool) -> None:
    """24 kg of deck and 1 kg of unit were signed; a gram less is covered, a gram more is not."""
    made = _compiled(HEAVY.replace("mass 24 kg", f"mass {deck_g} g") + SEALED)
    (heavy,) = [each for each in made if each.kind.name == "too-heavy"]
    assert (heavy.accepted is not None) is holds
    changed = [each for each in made if each.kind.name == "unsigned-accept"]
    assert [each.message for each in changed] == (
        [] if holds else ["too-heavy on sample was accepted at 25 kg, 23 kg; now it is 25.001 kg, 23 kg"]
    )


def test_a_seal_of_another_state_accepts_nothing() -> None:
    text = re.sub(r'seal "\w+', 'seal "00000000', SEALED)
    (heavy,) = _told(text, "too-heavy")
    assert heavy.accepted is None
    (unsigned,) = _told(text, "unsigned-accept")
    assert unsigned.message.startswith("too-heavy on sample was accepted in another state")
    assert "in place of its seal" in unsigned.help


# Two lifts of one rule on one amp: the seal of the first state, and later a second one beside it.
def test_a_second_finding_is_not_accepted_by_the_seal_of_the_first() -> None:
    first = _warning("'lant' loses 3 dB with hum on")
    second = _warning("'lant' loses 3 dB with marl on")
    accept = Accept("test-rule", "lant", "heard", "R.K.", "2026-12-31", SPAN, SPAN, seal_of([first]), SPAN)
    told = accepted((first, second), (accept,), "2026-03-02")
    assert [each.accepted is not None for each in told[:2]] == [True, False]
    assert [each.kind.name for each in told[2:]] == ["unsigned-accept"]
    both = accept.replace(seal=seal_of([first, second]))
    assert all(each.accepted is not None for each in accepted((first, second), (both,), "2026-03-02"))


@pytest.mark.parametrize(
    ("value", "limit", "name", "holds"),
    [
        (165, 160, "limit", True),
        (162, 160, "limit", True),
        (166, 160, "limit", False),
        (165, 150, "limit", False),
        (162, 160, "along", False),  # two figures of which neither is a limit must be as signed
        (158, 160, "limit", False),  # on the other side of its limit: another thing
    ],
)
def test_only_a_value_and_its_limit_are_weighed(value: float, limit: float, name: str, holds: bool) -> None:
    signed = signature(_warning("'o1' bears 165 mA", (165, 160), name))
    assert signed.covers(_warning(f"'o1' bears {value} mA", (value, limit), name)) is holds
    assert read_seal(signed.text) == (signed,)


@pytest.mark.parametrize("seal", ["", "what", "0b52c6", "0b52c6e1 lots mA", ";;"])
def test_a_seal_that_is_none_binds_nothing(seal: str) -> None:
    assert not any(part.covers(_warning("'o1' bears 165 mA", (165, 160))) for part in read_seal(seal))


def _warning(message: str, figures: tuple[float, float] | None = None, name: str = "limit") -> Diagnostic:
    kind = Kind("test-rule", Level.WARNING, "page", "rule", "source")
    numbers = () if figures is None else (Number("load", figures[0], "mA"), Number(name, figures[1], "mA"))
    return kind.at(SPAN, message, subject=("lant",), numbers=numbers)


def _compiled(text: str) -> tuple[Diagnostic, ...]:
    return compile_rig(lambda name: Source(name, text), "sample.rig", READER).findings


def _told(text: str, code: str) -> list[Diagnostic]:
    made = compile_rig(lambda name: Source(name, HEAVY + text), "sample.rig", READER)
    return [finding for finding in made.findings if finding.kind.name == code]


def test_a_rule_that_had_another_name_is_told_with_the_name_of_today() -> None:
    (useless,) = _told(f"accept guess-near-limit on sample {SIGNED}", "useless-accept")
    assert useless.message == "guess-near-limit is called limit-in-doubt now"
    assert [mend.words for mend in useless.mends] == ["write limit-in-doubt"]
    assert page(all_kinds(), "guess-near-limit").startswith("limit-in-doubt (warning)")
