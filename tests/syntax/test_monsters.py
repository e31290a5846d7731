"""Input that nobody writes by hand: it is told in few findings, in bounded time."""

from __future__ import annotations

import pytest
from grammars import Uncached, parsed

from rigc.gather import gather
from rigc.source import Source

BLOCK = "unit plumb {\n  mass 350 g\n}\n"

WRONG = "  wobble\n"

MONSTERS = {
    "ten thousand nested braces": ("{" * 10_000, ["nested-block"]),
    "ten thousand nested braces of a unit": (f"unit plumb {'{' * 10_000}{'}' * 10_000}\n", ["nested-block"]),
    "ten thousand nested units": (
        "".join(f"{' ' * min(depth, 100)}unit plumb {{\n" for depth in range(10_000)),
        ["nested-block"],
    ),
    "a megabyte of one word on one line": ("x" * 1_000_000, ["malformed-statement"]),
    "a megabyte of words on one line": ("unit " * 200_000, ["malformed-statement"]),
    "a long word before a slip": (f"unit plumb {{\n  mass {'x' * 100_000} 300 mm\n}}\n", ["malformed-statement"]),
    "a long text before a slip": (f'note "{"x" * 100_000}" 300 mm\n', ["malformed-statement"]),
    "many digits before a slip": (f"unit plumb {{\n  body {'7' * 100_000} x mm\n}}\n", ["malformed-statement"]),
    "many blanks before a slip": (f"unit plumb {{\n  body{' ' * 100_000}, 300 mm\n}}\n", ["malformed-statement"]),
    "a megabyte without a closing quote": (f'note "{"x" * 1_000_000}', ["malformed-statement"]),
    "a hundred thousand closing braces": ("}" * 100_000, ["malformed-statement"]),
    "a hundred thousand lines that go on from nothing": ("-> plumb\n" * 100_000, ["malformed-statement"] * 2),
    "many mistakes in one block": (
        "unit marl {\n" + "".join(f"  wobble{at}\n" for at in range(500)) + "}\n",
        ["malformed-statement"] * 41,
    ),
    "one mistake many times in one block": ("unit marl {\n" + "  wobble\n" * 500 + "}\n", ["malformed-statement"] * 2),
    "many mistakes in one file": ("".join(f"wobble{at}\n" for at in range(5_000)), ["malformed-statement"] * 201),
}


@pytest.mark.parametrize("name", MONSTERS)
def test_a_monster_is_told_in_few_findings(name: str) -> None:
    text, codes = MONSTERS[name]
    read = parsed(f"{BLOCK}{text}")
    assert [finding.kind.name for finding in read.findings] == codes
    assert str(read.file.statements[0]) == BLOCK.strip()


@pytest.mark.parametrize("signs", [10_000, 10_001])
def test_a_text_has_a_limit(signs: int) -> None:
    read = parsed(f'{BLOCK}note "{"x" * signs}"\n')
    assert [finding.kind.name for finding in read.findings] == ["beyond-limit"] * (signs - 10_000)
    assert len(read.file.statements) == 2


@pytest.mark.parametrize("signs", [63, 64, 65])
def test_a_name_has_a_limit(signs: int) -> None:
    read = parsed(f'{BLOCK}unit {"a" * signs} {{\n}}\n# {"a" * 100}\nnote "{"a" * 100}"\n')
    assert [finding.kind.name for finding in read.findings] == ["beyond-limit"] * (signs == 65)


@pytest.mark.parametrize(("more", "told"), [(19_997, []), (19_998, [("used.rig", 30_000)])])
def test_a_rig_has_a_limit_over_all_its_files(more: int, told: list[tuple[str, int]]) -> None:
    """30,000 lines of the used file, and 3 + 19,997 of the rig's own are 50,000; with one more the used file's last is one too many."""
    files = {
        "used.rig": Source("used.rig", "language 1\n" + "# a\n" * 29_999),
        "board.rig": Source("board.rig", 'language 1\n\nuse "used.rig"\n' + "\n" * more),
    }

    def load(name: str) -> Source:
        return files[name]

    found = gather(load, "board.rig", Uncached()).findings
    beyond = [each.span for each in found if each.kind.name == "beyond-limit"]
    assert [(span.source.name, span.line) for span in beyond if span] == told


def test_a_long_block_is_read_about_twice() -> None:
    """Its last lines are wrong; what stands before them is not lost."""
    lines = "".join(f'  knob "k{number}" at 1, 1 mm\n' for number in range(3_000))
    read = parsed(f"unit plumb {{\n{lines}{WRONG}{WRONG}  mass 350 g\n}}\n")
    (finding,) = read.findings
    assert [place.line for place in (finding.span, *(label.span for label in finding.also)) if place] == [3_002, 3_003]
    (unit,) = read.file.statements
    assert str(unit).count("knob") == 3_000
    assert "mass 350 g" in str(unit)
