"""A trial -> the answers on room: corner, neighbours, lid, strips, holes for its leads."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.mounting.mounting_strip import MountingStrip
from rigc.analysis.revision.rework import Rework
from rigc.analysis.revision.substitute.room import overlaps
from rigc.analysis.revision.substitute.trial import Trial
from rigc.diagnostics.diagnostic import Level
from rigc.diagnostics.figures import short
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.things import Unit
from rigc.reports.revision.swap.answer import NO, UNKNOWN, WORK, YES, Answer

_TOO_TALL = "too-tall"  # the rule on heights


def room_answers(trial: Trial) -> tuple[Answer, ...]:
    """Nothing for what has no place, such as an amp."""
    if trial.standing.out not in trial.standing.results.rig.places:
        return ()
    return tuple(_answers(trial))


def _answers(trial: Trial) -> Iterator[Answer]:
    there, here = _body(trial.out), _body(trial.into)
    body = trial.plugged.get(Placement).outline(trial.into.name)
    if body is None:
        yield Answer(
            "body",
            there,
            here,
            UNKNOWN,
            f"measure '{trial.into.name}'",
            f"the body of '{trial.into.name}' is not stated",
        )
        return
    after = trial.mended.get(Placement).outline(trial.into.name) or body
    answer, text, said = _fit(trial, body)
    yield Answer("body", there, here, answer, f"{text}{_gap_words(_gaps(trial, after))}", said)
    yield from _height(trial)
    yield from _strips(trial)
    yield from _passages(trial)


def _body(unit: Unit) -> str:
    sides = (unit.width_mm, unit.depth_mm, unit.height_mm)
    return " x ".join("?" if side is None else f"{side.value:g}" for side in sides) + " mm"


def _fit(trial: Trial, body: Outline) -> tuple[str, str, str]:
    """Whether it stands where the unit stood, front-left corner on front-left corner."""
    corner = f"same corner, {body.x_mm:g}, {body.y_mm:g}"
    if not overlaps(trial.plugged.rig, trial.plugged.get(Placement), trial.into.name):
        return YES, corner, ""
    why = _in_the_way(trial, body)
    if trial.corner is None:
        return NO, f"no room: {why}", f"no room: {why}"
    x, y = trial.corner
    ways = [f"{short(abs(by))} mm {way}" for by, way in (
        (x - body.x_mm, "to the right" if x > body.x_mm else "to the left"),
        (y - body.y_mm, "to the rear" if y > body.y_mm else "to the front")) if by]  # fmt: skip
    moved = f"set it {' and '.join(ways)}"
    return WORK, f"{why}: {moved}, corner at {short(x)}, {short(y)}", moved


def _in_the_way(trial: Trial, body: Outline) -> str:
    """What it would reach into, with how many mm."""
    found = []
    for other in trial.plugged.get(Placement).outlines.values():
        across, along = body.area.overlap(other.area)
        if (
            other.thing != body.thing
            and (other.deck, other.under) == (body.deck, body.under)
            and min(across, along) > 0
        ):
            found.append(f"overlaps '{other.thing}' by {short(across)} x {short(along)} mm")
    return ", ".join(found) or "it reaches over the deck's edge, or into what is kept free"


def _gaps(trial: Trial, body: Outline) -> list[tuple[str, float, str]]:
    """The nearest neighbour at each side: side, gap in mm, name."""
    names = (trial.out.name, trial.into.name)
    others = [
        other
        for other in trial.plugged.get(Placement).outlines.values()
        if other.thing not in names and (other.deck, other.under) == (body.deck, body.under)
    ]
    sides: dict[str, list[tuple[float, str]]] = {"left": [], "right": [], "front": [], "rear": []}
    for other in others:
        for side, gap in _beside(body.area, other.area):
            sides[side].append((gap, other.thing))
    return [(side, *min(found)) for side, found in sides.items() if found]


def _beside(here: Rectangle, there: Rectangle) -> Iterator[tuple[str, float]]:
    across, along = here.overlap(there)
    if along > 0 >= across:
        yield ("right" if there.x_mm >= here.x_mm else "left"), -across
    elif across > 0 >= along:
        yield ("rear" if there.y_mm >= here.y_mm else "front"), -along


def _gap_words(gaps: list[tuple[str, float, str]]) -> str:
    told = ", ".join(f"{side} {short(gap + 0.0)} mm to {name}" for side, gap, name in gaps)
    return f"; {told}" if told else ""


def _height(trial: Trial) -> Iterator[Answer]:
    """What is new under the lid or below the deck; no row where nothing is."""
    there, here = (
        "not stated" if unit.height_mm is None else f"{unit.height_mm.value:g} mm" for unit in (trial.out, trial.into)
    )
    found = [each for each in trial.findings if each.kind.name == _TOO_TALL]
    wrong = next((each for each in found if each.level is Level.ERROR), None)
    if wrong is not None:
        yield Answer("height", there, here, NO, wrong.message, wrong.message)
    elif found:
        yield Answer("height", there, here, WORK, found[0].message, "measure the height and what is above it")


def _passages(trial: Trial) -> Iterator[Answer]:
    """Holes that its leads want and that the deck does not have."""
    for plan in trial.mended.get(Rework).fittings:
        if plan.kind == "passage":
            leads = ", ".join(plan.leads)
            text = f"cut it, or lay {leads} over the deck as long as this is so, and try {'its' if len(plan.leads) == 1 else 'their'} length"
            yield Answer(
                f"hole in {plan.on}", plan.before or "none", plan.after, WORK, text, f"a hole for {leads} in {plan.on}"
            )


def _strips(trial: Trial) -> Iterator[Answer]:
    """What is cut for the unit, and whether the pieces on the deck lie where the substitute's would."""
    old = trial.standing.results.get(MountingStrip).of(trial.out.name)
    new = trial.mended.get(MountingStrip).of(trial.into.name)
    if old is None and new is None:
        return
    told = ["none" if each is None else f"{each.count} x {each.piece_mm:g} mm {each.strip}" for each in (old, new)]
    if new is None:
        yield Answer("strips", told[0], told[1], YES, "none is cut; the deck's come off")
    elif old is not None and old.deck_pieces == new.deck_pieces:
        yield Answer("strips", told[0], told[1], YES, "cut them for the unit; the deck's serve")
    else:
        yield Answer("strips", told[0], told[1], YES, "cut them for the unit, and lay the deck's anew")
