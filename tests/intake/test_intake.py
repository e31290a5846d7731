"""Lists of gear of all makings: each gives source that can be read, and says what is missing as checks do."""

from __future__ import annotations

import io
import re
from functools import cache
from pathlib import Path

import openpyxl
import pytest
from cases import READER
from hypothesis import given, settings
from hypothesis import strategies as st

from rigc.cli import main
from rigc.compile import compile_rig
from rigc.diagnostics.diagnostic import Level
from rigc.edit.starter import starter
from rigc.files.intake.books import book
from rigc.files.intake.books.book import NoBook
from rigc.files.intake.source_text import Intake, intake
from rigc.files.intake.template import LISTED, template
from rigc.model.asked_facts import COLUMNS, FACTS
from rigc.source import Source


def taken(text: str | bytes, name: str = "gear.csv") -> Intake:
    return intake(book(name, text.encode() if isinstance(text, str) else text, "2026-03-02"), READER)


def asked(text: str | bytes) -> list[str]:
    return [each.asked for each in taken(text).questions]


@cache
def filled() -> bytes:
    """The empty list with the examples of its own help, in its first row."""
    workbook = openpyxl.load_workbook(io.BytesIO(template()))
    sheet = workbook["Units"]
    for at, column in enumerate(LISTED, 1):
        sheet.cell(2, at).value = column.example
    made = io.BytesIO()
    workbook.save(made)
    return made.getvalue()


def on_a_board(units: str) -> tuple[set[str], set[str]]:
    """The rules that can't be checked, and those that find an error, where the unit `tern` stands for those of the starter, whose other facts are whole."""
    rig = starter("sample", "Sample", "2026-03-02", "board.rig")
    rig = re.sub(r"^unit .*?^}\n", "", rig, flags=re.MULTILINE | re.DOTALL).replace("-> drive -> echo ->", "-> tern ->")
    rig = (
        rig.replace("  drive at", "  tern at")
        .replace("  echo at 60, 20 mm\n", "")
        .replace("rear 30..90 mm", "rear 30..90 mm up 20 mm")
    )
    rig = (
        rig.replace("  mass 900 g", "  mass 900 g\n  feet 20 mm in")
        + "leads {\n  A2 tern.out -> combo.in of stage-coax made 3 m\n}\n"
    )
    text = rig + units.replace("language 1", "")
    made = compile_rig(lambda name: Source(name, text if name == "board.rig" else stock(name)), "board.rig", READER)
    levels = (Level.CANT_CHECK, Level.ERROR)
    unsure, wrong = ({each.kind.name for each in made.findings if each.level is level} for level in levels)
    return unsure, wrong


@cache
def stock(name: str) -> str:
    return (Path(__file__).parents[2] / "rigc" / name).read_text("utf-8")


def test_the_empty_list_says_how_to_fill_it_in_and_is_read_as_it_says() -> None:
    """Each example is understood, nothing is missing, and a board with the unit has no error and no can't-check about it."""
    empty, made = taken(template(), "gear.xlsx"), taken(filled(), "gear.xlsx")
    assert (empty.found.units, empty.questions) == ((), ())
    assert (made.questions, made.missing) == ((), {"tern": ()})
    assert on_a_board(made.text) == (set(), set())


@pytest.mark.parametrize("fact", [each for each in FACTS if each.needed], ids=lambda fact: fact.key)
def test_what_is_called_needed_is_what_checks_ask_for(fact: object) -> None:
    """Without the fact some check can't tell, or the rig is refused; and the list says that it is missing."""
    key = getattr(fact, "key", "")
    lines = taken(filled(), "gear.xlsx").text.splitlines(keepends=True)
    dropped = {"level in": "level in ", "level out": "level out "}.get(key, f"{key} ")
    text = "".join(
        line
        for line in lines
        if not line.startswith(f"  {dropped}") and (key not in ("input", "output") or f"level {key[:-3]}" not in line)
    )
    assert on_a_board(text) != (set(), set())


def test_each_word_to_choose_from_is_one_of_the_language() -> None:
    for column in COLUMNS:
        for each in column.words if column.key not in ("source",) and not column.key.endswith(("side", "jack")) else ():
            made = taken(f"Name,{column.heading}\nTern,{each}\n")
            assert made.questions == () and f"{column.fact} {each} " in made.text


def test_headings_are_each_of_one_column() -> None:
    said = [each.lower() for column in COLUMNS for each in (column.heading, *column.others)]
    assert len(said) == len(set(said))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Name;Mass\nTern;0,4 kg\n", "mass 0.4 kg"),
        ("Name\tMass\nTern\t400 g\n", "mass 400 g"),
        ("sep=;\nName;Mass\nTern;400 g\n", "mass 400 g"),
        ("\ufeffName,Mass\nTern,400 g\n", "mass 400 g"),
        ("Name,Weight in lb\nTern,1.5\n", "mass 1.5 lb"),
        ("Name,Weight [kg]\nTern,1.5\n", "mass 1.5 kg"),
        ("Name,Size (W x H x D)\nTern,70 x 55 x 120 mm\n", "body 70 x 120 x 55 mm"),
        ("Name,mA\nTern,ca. 20\n", 'draws 20 mA assumed 2026-03-02 by "gear.csv B2"'),
        ("Name,mA,How known,On,By\nTern,20,measured,2026-02-14,R.K.\n", 'draws 20 mA measured 2026-02-14 by "R.K., gear.csv B2"'),
        ("Name,Owner\nTern,\"the \"\"Fox\"\" \\ band\nof two\"\n", 'owner "the \\"Fox\\" \\\\ band / of two"'),
    ],
)  # fmt: skip
def test_lists_as_programs_save_them(text: str, said: str) -> None:
    made = taken(text)
    assert said in made.text
    assert made.questions == ()


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_encodings(encoding: str) -> None:
    made = taken("Name,Owner\nÉcho,Zoë\n".encode(encoding))
    assert 'owner "Zoë"' in made.text
    assert bool(made.found.remarks) == (encoding == "cp1252")


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("Name,Mass\nTern,400 g\nTern,410 g\n", 'A3 "Tern": "Tern" in A2 makes the same name; this one is called tern-2'),
        ("Name,Mass\n,400 g\n", 'row 2 "400 g": it has no name; it was left out'),
        ("Name,Mass,\nTern,400 g,blue\n", ""),
        ("Name,Mass\nTern,\n", 'A2 "Tern": nothing stands in its row but the name'),
        ("Name,Mass\nTern,400 kg\n", 'B2 "400 kg": 400 kg is too much for a thing on a board: did you mean 400 g?'),
        ("Pedals I like\nTern\n", "all rows: no row of it has headings that are known: a column 'Name' and another"),
        ("Name,Polarity,Power\nTern,C+,9V 100mA C-\n", "C2 \"9V 100mA C-\": it says 'polarity centre-negative', and another cell of its row says it already"),
        ("Name,Mass\nTotal,1 kg\n", 'row 2 "Total | 1 kg": it looks like a total; it was left out'),
        ("Name,Mass\nTotal Eclipse,1 kg\n", ""),
        ("Name,Level in\nTern,-20 dBu\n", 'B2 "-20 dBu": the kind of its input jack is not known'),
        ("Name,Size (L x W x H)\nTern,120 x 70 x 55 mm\n", 'B2 "120 x 70 x 55 mm": which of L x W x H is width, seen by the player, can\'t be told'),
        ("Name,How many,Serial\nTern,2,X1\n", 'C2 "X1": it stands for 2 units, and each has a serial of its own'),
    ],
)  # fmt: skip
def test_what_is_asked(text: str, why: str) -> None:
    assert asked(text) == ([why] if why else [])


def test_several_of_one_kind() -> None:
    made = taken("Name,Mass,Qty\nTern,400 g,3\n")
    assert "unit tern-2 like tern {\n}\n\nunit tern-3 like tern {\n}\n" in made.text
    assert list(made.missing) == ["tern", "tern-2", "tern-3"]


@settings(max_examples=25)
@given(
    st.lists(st.lists(st.text(max_size=12), min_size=3, max_size=3), max_size=4),
    st.sampled_from(["Mass", "Power", "Owner", "Size", "Price"]),
)
def test_whatever_stands_in_a_list_the_source_can_be_read(rows: list[list[str]], heading: str) -> None:
    import csv

    text = io.StringIO()
    csv.writer(text).writerows([["Name", heading, "Note"], *rows])
    made = taken(text.getvalue().encode("utf-8", "surrogatepass"))
    assert READER.parse(Source("units.rig", made.text)).findings == ()


def test_files_that_are_no_lists() -> None:
    for name, data in (
        ("gear.xls", b""),
        ("gear.xlsx", b"no archive"),
        ("gear.ods", b"PK"),
        ("gear.csv", b"\xff\xfeabc"),
        ("gear.csv", b" \n"),
        ("gear.csv", b"a\n" * 5001),
    ):
        with pytest.raises(NoBook):
            book(name, data, "")


def test_the_command(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["intake", "--template", "gear.csv"]) == 2
    assert main(["intake", "--template", "gear.xlsx"]) == 0
    assert main(["intake", "--template", "gear.xlsx"]) == 2
    assert "is there already; nothing was written" in capfd.readouterr().err
    Path("full.xlsx").write_bytes(filled())
    assert main(["intake", "full.xlsx", "-o", "units.rig"]) == 0
    assert main(["intake", "full.xlsx", "-o", "units.rig"]) == 2
    assert main(["fmt", "--check", "units.rig"]) == 0
    assert main(["intake", "nothing.csv"]) == 2
    assert "cannot read 'nothing.csv': there is no such file" in capfd.readouterr().err


@pytest.mark.parametrize(("name", "package"), [("gear.xlsx", "openpyxl"), ("gear.ods", "odf")])
def test_a_package_that_is_not_installed(
    name: str, package: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setitem(__import__("sys").modules, package, None)
    (tmp_path / name).write_bytes(b"PK")
    assert main(["intake", str(tmp_path / name)]) == 2
    assert "do: pip install 'rigc[tables]'" in capfd.readouterr().err


def test_the_page_lists_the_columns() -> None:
    """The table of `grammar/intake.md`, line by line."""
    needed = {fact.key for fact in FACTS if fact.needed}
    rows = [
        f"| {each.heading} | {each.how}{': ' + ', '.join(each.words) if each.words else ''} | {each.example} "
        f"| {'yes' if each.key == 'name' or each.fact in needed else ''} | {', '.join(each.others)} |"
        for each in COLUMNS
    ]
    page = (Path(__file__).parents[2] / "grammar" / "intake.md").read_text("utf-8")
    assert page.endswith("|---|---|---|---|---|\n" + "\n".join(rows) + "\n")
