"""Likes that go on deeper than anyone writes them, and more unknown names than any can be compared with: told, and no more than that."""

from __future__ import annotations

import pytest
from cases import READER
from small_rigs import HEAD, block

from rigc.compile import Compiled, compile_rig
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model import scope
from rigc.model.resolve.things import things
from rigc.source import Source


def compiled_text(text: str) -> Compiled:
    return compile_rig(lambda name: Source(name, HEAD + text), "board.rig", READER)


def told(text: str, kind: str) -> list[Diagnostic]:
    return [finding for finding in compiled_text(text).findings if finding.kind.name == kind]


def likes(kind: str, count: int, first: str = "") -> str:
    return block(kind, "s0", *([first] if first else [])) + "".join(
        f"{kind} s{at} like s{at - 1} {{\n}}\n" for at in range(1, count + 1)
    )


@pytest.mark.parametrize("kind", ["unit", "instrument", "deck", "plug"])
@pytest.mark.parametrize(("deep", "count"), [(3, 0), (4, 1), (9, 1)])  # up to 3 here
def test_likes_go_so_deep(kind: str, deep: int, count: int, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(things, "MOST_LIKES", 3)
    found = [each for each in told(likes(kind, deep), "beyond-limit") if "more than 3 deep" in each.message]
    assert len(found) == count
    assert [each.span.text for each in found if each.span is not None] == ["s3"] * count


def test_what_is_a_hundred_deep_has_its_facts() -> None:
    made = compiled_text(likes("unit", 100, "mass 400 g"))
    assert made.results is not None
    mass = made.results.rig.units["s100"].mass_kg
    assert mass is not None and mass.value == 0.4


def test_a_circle_that_is_too_deep_is_told() -> None:
    circle = likes("unit", 300).replace("unit s0 {", "unit s0 like s300 {")
    (found,) = told(circle, "beyond-limit")
    assert "more than 100 deep" in found.message


def test_so_many_names_are_compared(monkeypatch: pytest.MonkeyPatch) -> None:
    """Of three declared names; each that nothing declares is compared with all of them: the third would be the ninth comparison."""
    text = block("unit", "plumb") + block("unit", "marl") + block("unit", "tern") + "chain plumbb -> marll -> ternn\n"
    monkeypatch.setattr(scope, "_MOST_COMPARED", 6)
    near = [finding.label for finding in told(text, "unknown-name")]
    assert near[:2] == ["did you mean 'plumb'?", "did you mean 'marl'?"]
    assert "did you mean" not in near[2]
    monkeypatch.setattr(scope, "_MOST_COMPARED", 9)
    assert told(text, "unknown-name")[2].label == "did you mean 'tern'?"
