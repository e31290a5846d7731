"""Findings as people read them; every expectation is written by hand."""

from __future__ import annotations

from textwrap import dedent

from rigc.diagnostics.diagnostic import Acceptance, Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.terminal import short, summary, text
from rigc.source import Source, Span

OVERLOAD = Kind("overloaded-supply", Level.ERROR, None, "load <= rating", "arithmetic on declared values")
BARE = Kind("not-understood", Level.WARNING, None, "", "")

BOARD = Source("stage.rig", "language 1\n\nsupply main {\n  ceiling 100 mA\n}\nunit echo {\n\tdraws 150 mA\n}\n")


def span(source: Source, word: str) -> Span:
    """The first place of a word."""
    start = source.text.index(word)
    return Span(source, start, start + len(word))


def overload(**more: object) -> Diagnostic:
    finding = OVERLOAD.at(
        span(BOARD, "100 mA"),
        "'main' gives 100 mA but its units draw 170 mA",
        label="all that it gives",
        also=(Label(span(BOARD, "150 mA"), "'echo' draws 150 mA"),),
        numbers=(Number("draws", 170.0, "mA"), Number("gives", 100.0, "mA"), Number("load", 1.7, "")),
        note="a supply above its rating sags or shuts down",
        help="feed 'echo' from another supply",
    )
    changed: Diagnostic = finding.replace(**more)
    return changed


def test_a_finding_in_full() -> None:
    assert text([overload()]) == dedent("""\
        stage.rig:4:11: error: 'main' gives 100 mA but its units draw 170 mA [overloaded-supply]
          4 |   ceiling 100 mA
            |           ~~~~~~ all that it gives
          7 |     draws 150 mA
            |           ~~~~~~ 'echo' draws 150 mA
          numbers: draws 170 mA, gives 100 mA, load 1.7
          note: a supply above its rating sags or shuts down
          do: feed 'echo' from another supply
          rule: load <= rating; arithmetic on declared values
        """)


def test_a_finding_without_extras_is_its_sentence_and_its_line() -> None:
    assert text([BARE.at(span(BOARD, "language"), "this is not understood")]) == dedent("""\
        stage.rig:1:1: warning: this is not understood [not-understood]
          1 | language 1
            | ~~~~~~~~
        """)


def test_no_place_at_all() -> None:
    assert text([BARE.at(None, "there is no deck")]) == "warning: there is no deck [not-understood]\n"


def test_places_come_in_line_order_and_other_files_under_their_names() -> None:
    stock = Source("bench/stock.rig", "\n" * 119 + "unit echo\n")
    also = (Label(span(stock, "echo"), "declared here"), Label(span(BOARD, "main"), "this supply"))
    lines = text([overload(also=also, numbers=(), note="", help="")]).splitlines()
    assert lines[1:] == [
        "  3 | supply main {",
        "    |        ~~~~ this supply",
        "  4 |   ceiling 100 mA",
        "    |           ~~~~~~ all that it gives",
        "  bench/stock.rig:",
        " 120 | unit echo",
        "     |      ~~~~ declared here",
        "  rule: load <= rating; arithmetic on declared values",
    ]


def test_two_places_in_one_line_share_it() -> None:
    also = (Label(span(BOARD, "ceiling"), "said here"),)
    lines = text([overload(also=also)]).splitlines()
    assert lines[1:4] == [
        "  4 |   ceiling 100 mA",
        "    |   ~~~~~~~ said here",
        "    |           ~~~~~~ all that it gives",
    ]


def test_a_place_over_several_lines_shows_the_first() -> None:
    lines = text([BARE.at(span(BOARD, "main {\n  ceiling 100 mA\n}"), "m", label="this block")]).splitlines()
    assert lines[1:] == ["  3 | supply main {", "    |        ~~~~~~ this block (to line 5)"]


def test_the_line_end_at_the_end_of_a_place_does_not_count() -> None:
    lines = text([BARE.at(span(BOARD, "main {\n"), "m")]).splitlines()
    assert lines[1:] == ["  3 | supply main {", "    |        ~~~~~~"]


def test_the_end_of_the_file() -> None:
    for source, line, excerpt in (
        (Source("a.rig", "rig x {"), "a.rig:1:8", ["  1 | rig x {", "    |        ~ here"]),
        (Source("a.rig", "rig x {\n"), "a.rig:2:1", ["  2 |", "    | ~ here"]),
        (Source("a.rig", ""), "a.rig:1:1", ["  1 |", "    | ~ here"]),
    ):
        end = len(source.text)
        lines = text([BARE.at(Span(source, end, end), "not closed", label="here")]).splitlines()
        assert lines == [f"{line}: warning: not closed [not-understood]", *excerpt]


def test_wide_and_combining_characters_keep_the_mark_in_place() -> None:
    source = Source("a.rig", 'note "音e\u0301" mark\n')
    lines = text([BARE.at(span(source, "mark"), "m")]).splitlines()
    # note, space, quote: 6 cells; one wide character: 2; e with its accent: 1; quote and space: 2
    assert lines[1:] == ['  1 | note "音e\u0301" mark', "    | " + " " * 11 + "~~~~"]
    wide = text([BARE.at(span(source, "音"), "m")]).splitlines()
    assert wide[2] == "    | " + " " * 6 + "~~"


def test_a_tab_goes_to_the_next_stop() -> None:
    source = Source("a.rig", "ab\tcd\tef")
    lines = text([BARE.at(span(source, "\tef"), "m")]).splitlines()
    assert lines[1:] == ["  1 | ab  cd  ef", "    |       ~~~~"]


def test_a_long_line_is_cut_around_the_place() -> None:
    source = Source("a.rig", "a" * 500_000 + "HERE" + "b" * 500_000)
    lines = text([BARE.at(span(source, "HERE"), "m")]).splitlines()
    assert lines[0].startswith("a.rig:1:500001: ")
    assert lines[1] == "  1 | …" + "a" * 40 + "HERE" + "b" * 66 + "…"
    assert lines[2] == "    | " + " " * 41 + "~~~~"


def test_places_far_apart_in_a_long_line_get_an_excerpt_each() -> None:
    source = Source("a.rig", "FIRST" + "-" * 300 + "LAST")
    finding = BARE.at(span(source, "FIRST"), "m", also=(Label(span(source, "LAST"), "and this"),))
    lines = text([finding]).splitlines()
    assert lines[1:] == [
        "  1 | FIRST" + "-" * 105 + "…",
        "    | ~~~~~",
        "  1 | …" + "-" * 40 + "LAST",
        "    | " + " " * 41 + "~~~~ and this",
    ]


def test_a_place_longer_than_the_width_is_cut_too() -> None:
    source = Source("a.rig", "x" * 1000)
    lines = text([BARE.at(Span(source, 0, 1000), "m")]).splitlines()
    assert lines[1:] == ["  1 | " + "x" * 110 + "…", "    | " + "~" * 110]


def test_nothing_in_a_source_acts_on_the_terminal() -> None:
    source = Source("a.rig", "note \x1b[31m\u202e\ud800\x07\u200b end")
    told = text([BARE.at(span(source, "end"), "found \x1b[2J\ud800 'x'")])
    assert told.splitlines() == [
        r"a.rig:1:16: warning: found \x1b[2J\ud800 'x' [not-understood]",
        r"  1 | note \x1b[31m\u202e\ud800\x07\u200b end",
        "    | " + " " * (len(r"note \x1b[31m\u202e\ud800\x07\u200b ")) + "~~~",
    ]


def test_a_message_of_a_megabyte_is_cut() -> None:
    assert text([BARE.at(None, "x" * 1_000_000)]) == f"warning: {'x' * 499}… [not-understood]\n"


def test_the_same_said_of_several_places_is_told_once() -> None:
    source = Source("a.rig", "echo\necho\nother\necho\n")
    message = "nothing is called 'echo'"
    same = [BARE.at(Span(source, at, at + 4), message) for at in (0, 5, 16)]
    assert text([same[0], same[1], BARE.at(Span(source, 10, 15), "something else"), same[2]]).splitlines() == [
        "a.rig:1:1: warning: nothing is called 'echo' [not-understood]",
        "  1 | echo",
        "    | ~~~~",
        "  the same at a.rig:2:1, a.rig:4:1",
        "",
        "a.rig:3:1: warning: something else [not-understood]",
        "  3 | other",
        "    | ~~~~~",
    ]


def test_an_accepted_finding_is_its_sentence_and_the_reason() -> None:
    accepted = Acceptance("lives in the lid", "R.K.", "2026-12-31", span(BOARD, "main"))
    assert text([overload(level=Level.WARNING, accepted=accepted)]) == (
        "stage.rig:4:11: accepted warning: 'main' gives 100 mA but its units draw 170 mA [overloaded-supply]\n"
        '  accepted by R.K. until 2026-12-31: "lives in the lid"\n'
    )


def test_colour_adds_to_the_words_and_takes_none_away() -> None:
    plain, coloured = text([overload()]), text([overload()], colour=True)
    assert "\x1b[" not in plain
    assert "\x1b[1;31merror\x1b[0m: " in coloured
    assert coloured.replace("\x1b[1;31m", "").replace("\x1b[0m", "") == plain


def test_small_numbers_do_not_become_nothing() -> None:
    numbers = (Number("leak", 0.0000123, "A"), Number("none", 0.0, "A"), Number("room", 12.50, "mm"))
    assert "  numbers: leak 1.23e-05 A, none 0 A, room 12.5 mm\n" in text([overload(numbers=numbers)])


def test_short_is_one_line_each() -> None:
    cant = OVERLOAD.cant_check(None, "'echo' does not say what it draws")
    assert short([overload(), cant], shown=lambda name: f"rigs/{name}") == (
        "rigs/stage.rig:4:11: error: 'main' gives 100 mA but its units draw 170 mA [overloaded-supply]\n"
        "can't-check: 'echo' does not say what it draws [overloaded-supply]\n"
    )


def test_the_summary_counts_five_kinds() -> None:
    accepted = overload(accepted=Acceptance("r", "b", "2026-12-31", span(BOARD, "main")))
    findings = [overload(), accepted, BARE.at(None, "m"), BARE.at(None, "n"), BARE.cant_check(None, "o")]
    assert summary(findings) == "1 error, 2 warnings, 0 remarks, 1 can't-check, 1 accepted"
    assert summary([]) == "0 errors, 0 warnings, 0 remarks, 0 can't-check, 0 accepted"


def test_the_same_fact_of_several_things_is_asked_for_once() -> None:
    source = Source("stage.rig", "unit echo { }\nunit tern { }\nunit fen { }\n")

    def silent(name: str, what: str = "passes sound") -> Diagnostic:
        message = f"'{name}' does not say whether it {what}"
        return OVERLOAD.cant_check(span(source, name), message, subject=(name,), help=f"write it in '{name}'")

    assert text([silent("echo"), silent("tern", "hums"), silent("fen")]) == dedent("""\
        stage.rig:1:6: can't-check: 'echo' does not say whether it passes sound [overloaded-supply]
          1 | unit echo { }
            |      ~~~~
          the same of 'fen' (stage.rig:3:6)
          do: write it in 'echo'
          rule: load <= rating; arithmetic on declared values

        stage.rig:2:6: can't-check: 'tern' does not say whether it hums [overloaded-supply]
          2 | unit tern { }
            |      ~~~~
          do: write it in 'tern'
          rule: load <= rating; arithmetic on declared values
    """)
    wrong = [OVERLOAD.at(span(source, name), f"'{name}' is wrong", subject=(name,)) for name in ("echo", "fen")]
    assert "the same" not in text(wrong)
