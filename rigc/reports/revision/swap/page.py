"""A trial -> the page that answers, before any plug goes in, whether the substitute can stand in."""

from __future__ import annotations

from rigc.analysis.revision.rework import Rework
from rigc.analysis.revision.substitute.trial import Trial
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.record import Record
from rigc.reports.content import Block, Cell, Column, Paragraph, Row, Sheet, Table
from rigc.reports.revision.swap.answer import NO, UNKNOWN, WORK, YES, Answer
from rigc.reports.revision.swap.leads import lead_plans, lead_table, lead_work
from rigc.reports.revision.swap.player import notice_table
from rigc.reports.revision.swap.power import power_answers
from rigc.reports.revision.swap.room import room_answers
from rigc.reports.revision.swap.tests import test_table

COLUMNS = (
    Column("what"),
    Column("on the board", key="there", least_mm=32),
    Column("substitute", least_mm=32),
    Column("fits", key="answer", least_mm=17),
    Column("note"),
)
CAUTION = ("Measure the DC plug: voltage and polarity as in the table. All figures are reckoned: verify them.",)
_ANSWERED = frozenset(
    (
        "overloaded-outlet",
        "wrong-voltage",
        "wrong-polarity",
        "ac-on-dc",
        "shared-positive-ground",
        "unfit-power-plug",
        "unpowered-unit",
        "bodies-overlap",
        "too-tall",
        "unfit-lead-length",
    )
)
"""Rules whose findings the rows and the leads tell already."""

_LACKING = "missing-fact"  # the rule on missing facts: its errors leave the answer open
_MOST = 3  # reasons that the verdict tells


class SwapPage(Record):
    """The page, and its answer: yes, with work, no, or not known; `verdict` is its first line."""

    sheet: Sheet
    answer: str
    verdict: str


def swap_page(trial: Trial) -> SwapPage:
    """Verdict, caution, fit, leads, what is new among the findings, what the player notices, tests."""
    answers = (*power_answers(trial), *room_answers(trial))
    findings = tuple(each for each in trial.findings if each.kind.name not in _ANSWERED or each.level is Level.REMARK)
    answer, verdict = _verdict(trial, answers, findings)
    blocks: list[Block] = [
        Paragraph("verdict", (_place(trial),), heading=verdict),
        *(
            (Paragraph("before-plugging", CAUTION, heading="before any plug goes in", kind="caution"),)
            if trial.into.powered
            else ()
        ),
        _fit_table(trial, answers),
        lead_table(trial),
        *_findings(findings),
        notice_table(trial),
        *(() if answer == NO else (test_table(trial),)),
    ]
    return SwapPage(Sheet("swap", "Swap", "the tech", tuple(blocks)), answer, verdict)


def _verdict(trial: Trial, answers: tuple[Answer, ...], findings: tuple[Diagnostic, ...]) -> tuple[str, str]:
    wrong = [each.short for each in answers if each.answer == NO and each.short]
    wrong += [each.message for each in findings if each.level is Level.ERROR and each.kind.name != _LACKING]
    if wrong:
        more = f"; and {len(wrong) - _MOST} more, see below" if len(wrong) > _MOST else ""
        return NO, f"no: {'; '.join(wrong[:_MOST])}{more}"
    unknown = [each.short for each in answers if each.answer == UNKNOWN]
    unknown = unknown or [each.message for each in findings if each.kind.name == _LACKING and each.level is Level.ERROR]
    if unknown:
        return UNKNOWN, f"not known: {'; '.join(unknown)}"
    work = _work(trial, answers)
    return (WORK, f"yes, with work: {'; '.join(work)}") if work else (YES, "yes")


def _work(trial: Trial, answers: tuple[Answer, ...]) -> list[str]:
    """What is to be done or lost: feed and place, adaptors, leads, statements that fall away."""
    work = [each.short for each in answers if each.answer == WORK and each.short]
    adaptors = [
        each.after for each in trial.mended.get(Rework).adaptors if each.before is None and each.after is not None
    ]
    work += [f"a {each.kind} adaptor ({each.mark})" for each in adaptors]
    work += [said for plan in lead_plans(trial) if (said := lead_work(trial.mended.rig, plan)[1])]
    if trial.lines:
        work.append(f"{len(trial.lines)} statement{'s' if len(trial.lines) > 1 else ''} without a counterpart")
    return work


def _place(trial: Trial) -> str:
    rig = trial.standing.results.rig
    new = sum(each.level is Level.WARNING for each in trial.findings)
    told = f"'{trial.into.name}' in the place of '{trial.out.name}' on revision {rig.head.letter} as it stands"
    return f"{told}; {new or 'no'} new warning{'' if new == 1 else 's'}."


def _fit_table(trial: Trial, answers: tuple[Answer, ...]) -> Table:
    rows = tuple(
        Row(
            (
                Cell(each.what),
                Cell(each.there),
                Cell(each.wanted),
                Cell(each.answer, strong=each.answer != YES),
                Cell(each.text),
            )
        )
        for each in answers
    )
    return Table("fit", f"Does '{trial.into.name}' fit?", COLUMNS, rows)


def _findings(findings: tuple[Diagnostic, ...]) -> tuple[Table, ...]:
    rows = tuple(
        Row(
            (
                Cell(each.level.word, strong=each.level is Level.ERROR),
                Cell(each.message),
                Cell(each.advice),
                Cell(each.kind.name),
            )
        )
        for each in sorted(findings, key=lambda each: each.level)
    )
    columns = (Column("level"), Column("finding"), Column("what to do", key="do"), Column("rule"))
    return (Table("findings", "What is new among the findings", columns, rows),) if rows else ()
