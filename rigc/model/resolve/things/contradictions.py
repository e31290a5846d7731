"""Two facts of one thing that can't both be true: a window that leaves out what is needed, less at switch-on than in use, a peak
below its nominal level or above what the jack takes, a passive unit that is digital, has a buffer or draws, AC with a polarity, a jack
with fewer contacts than it is said to need, phantom power of a jack that is not balanced, a body too light or too heavy for its size, more heat than what is taken, a ceiling far above what
the outlets give, an earth by an inlet
that has none."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from rigc.diagnostics.diagnostic import Label, Level
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.facts import mains, power, weight
from rigc.model.fact import Fact, spread_of
from rigc.model.jacks import AUDIO_IN, AUDIO_OUT, Jack, Levels
from rigc.model.resolve.context import Context, Item
from rigc.model.scope import MISUSED, SAID_TWICE
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.things import Supply, Thing, Unit
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Word

_THREE_CONTACTS = ("stereo", "balanced", "insert")
_BUFFERED = ("buffered", "trails")


def check_supply_facts(context: Context, name: str, own: Span, fields: dict[str, Any]) -> None:
    """Of a unit, whose `own` block has this place: what it needs lies in what it accepts, and it draws no less at switch-on than in use."""
    needs, low, high = (fields.get(each) for each in ("volts", "accepts_low_v", "accepts_high_v"))
    if needs is not None and low is not None and high is not None and not low.value <= needs.value <= high.value:
        _told(
            context,
            low,
            needs,
            f"'{name}' needs {needs.typed} and accepts {low.value:g}..{high.value:g} V, which leaves that out",
            "write a window that holds what it needs",
        )
    draws, starts = fields.get("draws_ma"), fields.get("starts_ma")
    if draws is None or starts is None or starts.value >= draws.value:
        return
    if _within(own, draws.span) and not _within(own, starts.span):
        _told(
            context,
            draws,
            starts,
            f"'{name}' draws {draws.typed} and bears the {starts.typed} at switch-on of what it is like: the current at switch-on is no less than that in use",
            f"measure what '{name}' takes at switch-on, and write it in its block: starts ___ mA",
        )
    else:
        _told(
            context,
            starts,
            draws,
            f"'{name}' starts with {starts.typed} and draws {draws.typed}: the current at switch-on is no less than that in use",
            "measure both again, or delete the line `starts`",
        )


def _within(block: Span, span: Span) -> bool:
    return span.source is block.source and block.start <= span.start < block.end


def check_mass(context: Context, thing: Thing) -> None:
    """Of a body and its mass, both stated: it is no lighter than foam and no heavier than steel, else a unit of measure has slipped."""
    mass, sizes = thing.mass_kg, (thing.width_mm, thing.depth_mm, thing.height_mm)
    if mass is None or any(each is None or each.value <= 0 for each in sizes):
        return
    if any(each is not None and each.span is finding.span for each in sizes for finding in context.findings):
        return  # the size is told to be wrong
    litres = 1.0
    for each in sizes:
        litres *= 0.0 if each is None else each.value / 100
    density = mass.value / litres
    if weight.LIGHTEST_BODY.value <= density <= weight.HEAVIEST_BODY.value:
        return
    light = density < weight.LIGHTEST_BODY.value
    limit = weight.LIGHTEST_BODY if light else weight.HEAVIEST_BODY
    _told(
        context,
        mass,
        next(each for each in sizes if each is not None),
        f"'{thing.name}' weighs {mass.typed} and is {litres:.3g} litres large: {'lighter' if light else 'heavier'} than {limit.says}",
        "weigh it again, and look at the units of its mass and its body",
    )


def check_ceiling(context: Context, supply: Supply) -> None:
    """Of a supply: its ceiling is not many times what its outlets give together, else amperes were written for watts, or a point is missing."""
    ratings = [outlet.ratings for outlet in supply.outlets]
    if not ratings or not all(ratings):
        return
    watts = sum(max(each.volts.value * each.milliamps.value / 1000 for each in settings) for settings in ratings)
    amperes = sum(max(each.milliamps.value for each in settings) for settings in ratings) / 1000
    ceiling, unit, given = (
        (supply.ceiling_w, "W", watts) if supply.ceiling_w is not None else (supply.ceiling_ma, "A", amperes)
    )
    if ceiling is None or _told_already(context, ceiling.span):
        return
    stated = ceiling.value / (1000 if unit == "A" else 1)
    if stated * 100 <= given * power.MOST_CEILING_SHARE.value:
        return
    other = f"{stated:g} W" if unit == "A" and stated * 100 <= watts * power.MOST_CEILING_SHARE.value else ""
    context.report(
        WRONG_QUANTITY.at(
            ceiling.span,
            f"'{supply.name}' has a ceiling of {ceiling.typed}, and its outlets give {given:.3g} {unit} together",
            subject=(supply.name,),
            label=f"more than {power.MOST_CEILING_SHARE.value / 100:g} times as much",
            also=(Label(supply.outlets[0].span, "the first of its outlets"),),
            mends=(Mend(f"write {other}", (Replace(ceiling.span, other),)),) if other else (),
            help="look at its label again, and at the ratings of its outlets",
            level=Level.WARNING,
        )
    )


def check_heat(context: Context, unit: Unit) -> None:
    """Of a unit fed by an outlet, which no loudspeaker's power reaches: it gives off no more heat than it takes (conservation of energy),
    whatever both may be off by."""
    warm, draws, volts = unit.warm_w, unit.draws_ma, unit.accepts_high_v or unit.volts
    if unit.kind != "unit" or warm is None or draws is None or volts is None or not unit.powered:
        return
    if _told_already(context, draws.span):
        return
    if any(jack.carries == "speaker" for jack in unit.jacks):
        return
    least, most = _ends(warm)[0], _ends(draws)[1] * volts.value / 1000
    if least > most:
        _told(
            context,
            warm,
            draws,
            f"'{unit.name}' gives off {warm.typed} and takes {draws.typed} at no more than {volts.value:g} V, which is {most:.3g} W",
            "measure both again; what it gives off is at most what it takes",
        )


def _ends(fact: Fact[float]) -> tuple[float, float]:
    spread = spread_of(fact)
    return (fact.value, fact.value) if spread is None else (spread.least, spread.most)


def check_earth(context: Context, name: str, items: Sequence[Item]) -> None:
    """Of a thing: what is earthed, or has its minus on earth, has no inlet without a contact for earth, and is no microphone."""
    facts = [item.fact for item in items]
    earth = next(
        (each for each in facts if isinstance(each, nodes.MinusEarthed) or _is(each, nodes.Earth, "earthed")), None
    )
    kind = next((each for each in facts if _is(each, nodes.SourceKind, "microphone")), None)
    mains_side = next((each for each in facts if isinstance(each, nodes.Earth)), None)
    if kind is not None and mains_side is not None:
        _not_both(
            context, mains_side, kind, f"'{name}' is a microphone and is {mains_side.kind}; a microphone has no mains"
        )
        return
    for inlet in (
        each.connector.kind
        for each in facts
        if isinstance(each, nodes.Inlet) and isinstance(each.connector, nodes.Appliance)
    ):
        if earth is not None and inlet.text in mains.WITHOUT_EARTH and not _told_already(context, inlet.span):
            with_earth = ", ".join(mains.WITH_EARTH)
            context.report(
                SAID_TWICE.at(
                    inlet.span,
                    f"'{name}' {'has its minus on earth' if isinstance(earth, nodes.MinusEarthed) else 'is earthed'} and has an inlet {inlet}, which has no contact for earth",
                    subject=(name,),
                    label="this can't be",
                    also=(Label(earth.span, "with this"),),
                    help=f"look at the inlet: those with a contact for earth are {with_earth}; never lift or leave out a protective earth",
                )
            )


def _is(fact: Any, kind: type[Any], word: str) -> bool:
    return isinstance(fact, kind) and fact.kind.text == word


_LIVELY = {"high gain": "has high gain", "delay": "is a delay", "reverb": "is a reverb"}


def _is_flag(fact: Any, words: dict[str, str]) -> bool:
    return isinstance(fact, nodes.Flag) and fact.words.text in words


def check_words(context: Context, block: Any, items: Sequence[Item]) -> None:
    """Of a unit's own block, without what it is like: what is passive is not digital, has no buffer and draws nothing without an inlet; AC
    has no poles."""
    facts = [item.fact for item in items if block.span.start <= item.fact.span.start < block.span.end]
    passive = next((each for each in facts if isinstance(each, nodes.Flag) and each.words.text == "passive"), None)
    digital = next((each for each in facts if isinstance(each, nodes.Flag) and each.words.text == "digital"), None)
    buffer = next((each for each in facts if isinstance(each, nodes.Bypass) and each.kind.text in _BUFFERED), None)
    name = block.name.text
    if passive and digital:
        _not_both(context, digital, passive, f"'{name}' is passive and digital; what is digital takes power")
    elif passive and (lively := next((each for each in facts if _is_flag(each, _LIVELY)), None)):
        _not_both(context, lively, passive, f"'{name}' is passive and {_LIVELY[lively.words.text]}; that takes power")
    elif passive and buffer:
        _not_both(context, buffer, passive, f"'{name}' is passive and has a buffer in its bypass; a buffer takes power")
    draws = next((each for each in facts if isinstance(each, nodes.Draws)), None)
    if (
        passive
        and draws
        and not digital
        and not buffer
        and not any(isinstance(item.fact, nodes.Inlet | nodes.Battery) for item in items)
    ):
        _not_both(context, draws, passive, f"'{name}' is passive, has no inlet and draws {draws.amount}")
    needs = next((each for each in facts if isinstance(each, nodes.Needs) and each.current.text == "ac"), None)
    poles = next((each for each in facts if isinstance(each, nodes.Polarity)), None)
    if needs and poles:
        dc = Mend(f"write `needs {needs.voltage} dc`", (Replace(needs.current.span, "dc"),))
        _not_both(context, poles, needs, f"'{name}' needs AC and states a polarity; AC has none", (dc, _gone(poles)))


def _gone(node: Any) -> Mend:
    return Mend(f"delete '{node}'", (Delete(node.span),))


def _not_both(context: Context, here: Any, other: Any, message: str, mends: tuple[Mend, ...] = ()) -> None:
    if not _told_already(context, here.span):
        context.report(
            SAID_TWICE.at(
                here.span,
                message,
                label="this can't be",
                also=(Label(other.span, "with this"),),
                mends=mends or (_gone(other), _gone(here)),
            )
        )


def check_contacts(context: Context, fact: Any) -> None:
    """Of a jack: a TS jack has two contacts, a DIN jack for MIDI is wired one way, and what comes through the air has no jack."""
    if not isinstance(fact, nodes.Input | nodes.Output | nodes.PanelJack | nodes.Expression | nodes.MidiJack):
        return
    kind: Word = fact.jack
    if isinstance(fact, nodes.Input | nodes.Output | nodes.PanelJack):
        if kind.text == "ts" and fact.carries is not None and fact.carries.text in _THREE_CONTACTS:
            word = fact.carries
            _misfit(
                context,
                kind,
                word.span,
                f"'{fact.name if isinstance(fact, nodes.PanelJack) else fact.names}' is a TS jack, which has two contacts, and is said to be {word}",
            )
    elif isinstance(fact, nodes.Expression):
        if kind.text == "ts":
            _misfit(
                context, kind, None, f"'{fact.name}' is a TS jack, which has two contacts; an expression jack has three"
            )
    elif fact.form is not None and kind.text == "din":
        message = f"'{fact.name}' is a DIN jack, which is wired in one way only; a type is that of a small jack"
        _misfit(context, None, fact.form.span, message)


def _misfit(context: Context, kind: Word | None, extra: Span | None, message: str) -> None:
    """What is no jack: its kind is another, or the word that it can't bear goes."""
    at = extra or (kind.span if kind is not None else None)
    if at is None or _told_already(context, at):
        return
    mends = []
    if kind is not None:
        mends.append(Mend("write trs", (Replace(kind.span, "trs"),)))
    if extra is not None:
        blank = Span(extra.source, extra.start - 1, extra.end)
        mends.append(Mend(f"delete '{extra.text}'", (Replace(blank, ""),)))
    also = (Label(kind.span, "with this"),) if kind is not None and extra is not None else ()
    context.report(MISUSED.at(at, message, label="this can't be", also=also, mends=tuple(mends)))


def check_levels(context: Context, levels: Levels, roles: Sequence[str]) -> None:
    """Of a jack, or of jacks of these roles: its peak is not below its nominal level; an output takes nothing, and no more comes to an input
    than it takes."""
    most, drives = levels.maximum_dbu, levels.sensitivity_dbu
    for taken in (most, drives):
        if taken is not None and AUDIO_OUT in roles:
            _told(
                context,
                taken,
                taken,
                f"{taken.typed} is what an input takes, and this is an output",
                "say here what it gives, as in level out -20 dBu peak 4 dBu",
            )
    above = next((each for each in (levels.peak_dbu, levels.nominal_dbu) if each is not None), None)
    if above is not None and most is not None and AUDIO_IN in roles and above.value > most.value:
        _told(
            context,
            above,
            most,
            f"{above.typed} comes to this input, and it takes {most.typed} at most",
            "measure both again; what another thing sends to it is stated of that thing's output",
        )
    nominal, peak = levels.nominal_dbu, levels.peak_dbu
    if nominal is not None and peak is not None and peak.value < nominal.value:
        _told(
            context,
            peak,
            nominal,
            f"a peak of {peak.typed} is below the nominal level of {nominal.typed}",
            f"measure both again; if they were interchanged, write {peak.typed} peak {nominal.typed}",
        )


def check_phantom(context: Context, fact: nodes.Phantom, jack: Jack) -> None:
    """Of a jack that gives or needs phantom power: it is balanced, for the voltage comes along both conductors and goes back by the screen
    (IEC 61938, from memory); and an input gives it, while an output needs or bears it."""
    if (fact.how.text in ("gives", "none")) != (jack.role == AUDIO_IN) and not _told_already(context, fact.span):
        side, may = (
            ("input", "gives it or has none")
            if jack.role == AUDIO_IN
            else ("output", "needs it, bears it or must never get it")
        )
        context.report(
            MISUSED.at(
                fact.span,
                f"'{jack.name}' is an {side}; of phantom power an {side} {may}",
                label="not of this jack",
                also=(Label(jack.span, "this jack"),),
                help=f"write how it is with '{jack.name}', or name the jack that is meant",
            )
        )
        return
    if fact.how.text in ("gives", "needs") and jack.carries != "balanced" and not _told_already(context, fact.span):
        context.report(
            MISUSED.at(
                fact.span,
                f"'{jack.name}' {fact.how} phantom power, which comes along both conductors of a balanced jack, and is not said to be balanced",
                label="phantom power",
                also=(Label(jack.span, "this jack"),),
                help="write `balanced` behind the jack if it is; or delete the phantom power",
            )
        )


def _told_already(context: Context, span: Span) -> bool:
    """A thing that is like another bears the same lines."""
    return any(each.span is span and each.kind in (SAID_TWICE, MISUSED, WRONG_QUANTITY) for each in context.findings)


def _told(context: Context, here: Fact[float], other: Fact[float], message: str, advice: str) -> None:
    if _told_already(context, here.span):
        return
    also = (Label(other.span, "with this"),) if other is not here else ()
    context.report(
        WRONG_QUANTITY.at(
            here.span,
            message,
            label="this can't be",
            also=also,
            help=advice,
        )
    )
