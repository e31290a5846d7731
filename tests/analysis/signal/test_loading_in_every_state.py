"""Sections of random rigs in every state against a plain walk of each state's ways, which remembers nothing."""

from __future__ import annotations

import random
from typing import Any

import pytest
from every_way import every_way
from small_rigs import block, results_of, unit

from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Results
from rigc.analysis.signal.audio_states import AudioState
from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.section_walk import Walker
from rigc.model.jacks import Port
from rigc.model.ways.state_ways import leads_in
from rigc.model.wishes import Connection

COAX = block("cable", "coax", "carries audio", "capacitance 100 pF/m")
GUITAR = block("instrument", "guitar", "inductance 4 H", "capacitance 100 pF", "lead 3 m of coax")
COMBO = block("amp", "combo", "input in ts 1 Mohm")


@pytest.mark.parametrize("seed", range(40))
def test_every_state_is_what_walking_it_afresh_gives(seed: int) -> None:
    """Only changes are walked again; the reference walks each state's ways from the instrument, remembering nothing."""
    made = results_of(drawn(random.Random(seed)))
    loading = made.get(Loading)
    assert len(loading.audio.all) > 2
    for state in loading.audio.all:
        mine = {plain(each) for each in loading.sections if state in loading.states(each)}
        assert mine == afresh(made, state), state.name


def drawn(source: random.Random) -> str:
    """A random rig: a chain with a switcher in it, branches by scenario, presets."""
    text = block("scenario", "van") + block("scenario", "stage") + COAX + GUITAR + COMBO
    names = [f"u{at}" for at in range(source.randint(3, 9))]
    for name in names:
        facts = [f"bypass {source.choice(('true', 'true', 'buffered', 'always-on', 'trails'))}"]
        facts.append(f"unpowered {source.choice(('passes', 'mutes', 'passes'))}")
        if source.random() < 0.2:
            facts.append("impedance in 300 kohm bypassed")
        text += unit(name, *facts)
    held, chained = names[: source.randint(1, 3)], names[3:]
    text += unit(
        "box", f"bypass {source.choice(('true', 'buffered'))}", "unpowered passes", "output s1..s3 ts", "input r1..r3 ts",
        "loop 1..3 send s1..s3 return r1..r3",
    )  # fmt: skip
    source.shuffle(held)
    loops = [held[:1], held[1:]]
    text += "".join(f"loop {at} of box holds {' -> '.join(loop)}\n" for at, loop in enumerate(loops, 1) if loop)
    front, rear = chained[: len(chained) // 2], chained[len(chained) // 2 :]
    text += f"chain {' -> '.join(['guitar', *front, 'box', *rear])}\n"
    last = rear[-1] if rear else "box"
    if source.random() < 0.5:
        text += f"chain for van: {last} -> combo\nchain for stage: {last} -> moss -> combo\n" + unit(
            "moss", "bypass true"
        )
    else:
        text += f"chain {last} -> combo\n"
    for number in range(source.randint(0, 3)):
        on = source.sample(names, source.randint(1, 2))
        text += f"preset {number} {{\n  loops {source.randint(1, len(loops) if loops[1] else 1)}\n  on {', '.join(on)}\n}}\n"
    return text


def plain(found: Section) -> tuple[object, ...]:
    """What drives a section, its leads, and the inputs that end it."""
    leads = frozenset(lead.mark for lead in found.leads)
    ends = frozenset(
        (str(load.port), load.ohm) for load in found.loads if load.what not in ("dead end", "blocked", "bridged")
    )
    return str(found.source), leads, ends


def afresh(made: Results, state: AudioState) -> set[tuple[object, ...]]:
    """The sections of a state from its ways alone: wire is followed, everything else ends a section and drives the next."""
    rig = made.rig
    wired, inner = leads_in(rig, state), every_way(rig, state)
    marks = {frozenset((lead.start, lead.end)): lead.mark for lead in made.get(Leads).all}
    found: set[tuple[object, ...]] = set()
    todo, done = [Port("guitar", "out")], set[Port]()
    while todo:
        source = todo.pop()
        if source in done:
            continue
        done.add(source)
        leads, ends, here, muted = set[Connection](), set[tuple[str, float | None]](), [source], False
        while here:
            port = here.pop()
            for lead in (each for each in wired if each.start == port):
                leads.add(lead)
                inside = [way for way in inner if way.start == lead.end]
                here += [way.end for way in inside if way.how == "cable"]
                driving = [way.end for way in inside if way.how in ("buffer", "active")]
                muted = muted or any(way.how in ("blocked", "unknown") for way in inside)
                todo += driving
                if driving or rig.units[lead.end.thing].kind == "amp":
                    jack = rig.jack(lead.end)
                    assert jack is not None
                    off = any(way.how == "buffer" for way in inside)
                    fact = jack.bypassed_ohm if off and jack.bypassed_ohm else jack.impedance_ohm
                    ends.add((str(lead.end), fact.value if fact else None))
        if state.kind == "unpowered" and (source.thing != "guitar" or muted):
            continue
        if leads:
            passed = frozenset(marks[frozenset((lead.start, lead.end))] for lead in leads)
            found.add((str(source), passed, frozenset(ends)))
    return found


def test_a_row_of_true_bypass_units_is_walked_along_once_and_then_only_where_it_is_switched(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """In each state one unit of the row is switched: before and behind it all is as with all off."""
    asked: list[int] = []
    arrival = Walker.arrival

    def counted(walker: Walker, at: int, port: Port, state: AudioState) -> Any:
        asked.append(at)
        return arrival(walker, at, port, state)

    monkeypatch.setattr(Walker, "arrival", counted)
    counts = []
    for units in (20, 40):
        names = [f"u{at}" for at in range(units)]
        text = COAX + GUITAR + COMBO + "".join(unit(name, "bypass true") for name in names)
        results_of(f"{text}chain guitar -> {' -> '.join(names)} -> combo\n").get(Loading)
        counts.append(len(asked))
        asked.clear()
    assert counts[1] <= 2 * counts[0]
