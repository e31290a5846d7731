"""Numbers that the compiler gives stay with their leads from revision to revision; none is given twice. Rigs are
invented."""

from __future__ import annotations

from cases import READER, ROOT
from small_rigs import HEAD, unit

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.results import Results
from rigc.compile import compile_rig
from rigc.files.disk import Disk
from rigc.source import Source

UNITS = 'use "stock/plugs.rig"\nuse "stock/cables.rig"\n' + "".join(
    unit(name) for name in ("knot", "spit", "ebb", "lee")
)
DISK = Disk(ROOT / "examples/long-haul/board.rig", root=ROOT)
LATER = HEAD.replace("revision A 2026-03-02", 'revision B 2026-06-02\n  follows A "a.rig"')


def after(old: str, new: str) -> Results:
    texts = {"a.rig": HEAD + UNITS + old, "b.rig": LATER + UNITS + new}
    made = compile_rig(lambda name: Source(name, texts[name]) if name in texts else DISK(name), "b.rig", READER)
    assert made.results is not None, [finding.message for finding in made.findings]
    return made.results


def numbers(results: Results) -> dict[str, str]:
    return {f"{lead.start} {lead.end}": lead.mark for lead in results.get(Leads).all}


def test_a_unit_comes_between_two_others() -> None:
    """A2 lies where it lay; A1 is gone for ever, and the two new ones are A3 and A4."""
    assert numbers(after("chain knot -> spit -> ebb\n", "chain knot -> lee -> spit -> ebb\n")) == {
        "knot.out lee.in": "A3",
        "lee.out spit.in": "A4",
        "spit.out ebb.in": "A2",
    }


def test_a_lead_keeps_its_number_at_the_thing_that_stands_in() -> None:
    """Between the jacks of the same names; at fresh's other output, side, there is a new lead, A3. Without the statement all are new."""
    fresh = "unit fresh {{\n  input in ts\n  output out ts\n  output side ts\n{}}}\n"
    old = "chain knot -> spit -> ebb\n"
    said = fresh.format("  stands in for spit\n")
    only = UNITS.replace(unit("spit"), "")
    texts = {"a.rig": HEAD + UNITS + old}
    for text, expected in (
        (
            said + "chain knot -> fresh.in\nchain fresh.out -> ebb\n",
            {"knot.out fresh.in": "A1", "fresh.out ebb.in": "A2"},
        ),
        (
            said + "chain knot -> fresh.in\nchain fresh.side -> ebb\n",
            {"knot.out fresh.in": "A1", "fresh.side ebb.in": "A3"},
        ),
        (
            fresh.format("") + "chain knot -> fresh.in\nchain fresh.out -> ebb\n",
            {"knot.out fresh.in": "A3", "fresh.out ebb.in": "A4"},
        ),
    ):
        texts["b.rig"] = LATER + only + text
        made = compile_rig(lambda name: Source(name, texts[name]) if name in texts else DISK(name), "b.rig", READER)
        assert made.results is not None, [finding.message for finding in made.findings]
        assert numbers(made.results) == expected


def test_retired_numbers_of_the_revision_before_stay_retired() -> None:
    """A7 is retired, so that the first lead is A8, then as now."""
    old = "chain knot -> spit\nleads {\n  retired A7\n}\n"
    assert numbers(after(old, "chain knot -> spit -> ebb\n")) == {"knot.out spit.in": "A8", "spit.out ebb.in": "A9"}


def test_a_stated_number_goes_before_one_that_was_given() -> None:
    """A1 is stated for another lead (which is told as a fault); the lead that bore it gets a fresh one."""
    new = "chain knot -> spit -> ebb\nleads {\n  A1 spit.out -> ebb.in\n}\n"
    assert numbers(after("chain knot -> spit\n", new)) == {"knot.out spit.in": "A2", "spit.out ebb.in": "A1"}


SUPPLY = "supply mill {\n  outlet o1..o6 9 V dc 100 mA isolated\n}\n"
FED = "  inlet dc barrel 5.5 x 2.1 mm\n  needs {} V dc\n  draws 20 mA\n"


def adaptors(results: Results) -> dict[str, str]:
    return {each.mark: " ".join(each.units) for each in results.get(SpecialLeads).all}


def fed(*feeds: str) -> str:
    """Two units of 18 V and three of 9 V, fed as is said."""
    volts = {"ridge": 18, "scarp": 18, "dell": 9, "fell": 9, "glen": 9}
    units = "".join(f"unit {name} {{\n{FED.format(each)}}}\n" for name, each in volts.items())
    return f"{SUPPLY}{units}power {{\n" + "".join(f"  {feed}\n" for feed in feeds) + "}\n"


def test_an_adaptor_keeps_its_number_and_none_takes_that_of_one_that_goes() -> None:
    """Y1 was that of ridge and Y2 that of scarp. Where ridge goes, scarp keeps Y2; where it is fed in series anew, scarp's is Y2 and
    no other's Y1 is given again."""
    ridge, scarp = "ridge from mill.o1, mill.o2 series", "scarp from mill.o3, mill.o4 series"
    assert adaptors(after(fed(ridge), fed(ridge, scarp))) == {"Y1": "ridge", "Y2": "scarp"}
    assert adaptors(after(fed(ridge), fed(scarp, ridge))) == {"Y1": "ridge", "Y2": "scarp"}
    assert adaptors(after(fed(ridge, scarp), fed(scarp))) == {"Y2": "scarp"}
    assert adaptors(after(fed(ridge), fed(scarp))) == {"Y2": "scarp"}


def test_a_leg_takes_no_letter_of_one_that_goes() -> None:
    """fell leaves the Y lead D1 and glen comes: it is D1c, and nothing is D1b any more."""
    old, new = fed("dell, fell from mill.o1 shared"), fed("dell, glen from mill.o1 shared")
    assert {where.split()[1]: mark for where, mark in numbers(after(old, new)).items()} == {
        "dell.dc": "D1a",
        "glen.dc": "D1c",
    }


def test_a_third_revision_sees_the_second_as_its_own_documents_have_it() -> None:
    """A2 lies where it lay in A; A3 and A4 are of B, and C, which changes nothing of them, has them, too."""
    texts = {
        "a.rig": HEAD + UNITS + "chain knot -> spit -> ebb\n",
        "b.rig": LATER + UNITS + "chain knot -> lee -> spit -> ebb\n",
        "c.rig": LATER.replace("B 2026-06-02", "C 2026-07-02").replace('follows A "a.rig"', 'follows B "b.rig"')
        + UNITS
        + "chain knot -> lee -> spit -> ebb\n",
    }

    def load(name: str) -> Source:
        return Source(name, texts[name]) if name in texts else DISK(name)

    second, third = (compile_rig(load, name, READER).results for name in ("b.rig", "c.rig"))
    assert second is not None and third is not None
    assert (
        numbers(third) == numbers(second) == {"knot.out lee.in": "A3", "lee.out spit.in": "A4", "spit.out ebb.in": "A2"}
    )


NINES = ("dell", "fell", "glen")
HELD = "  input in ts\n  output out ts\n"


def chosen(units: tuple[str, ...], more: str = "", supply: str = "mill") -> str:
    blocks = "".join(f"unit {name} {{\n{HELD}{FED.format(9)}}}\n" for name in units)
    names = (*units, *(line.split()[1] for line in more.splitlines() if line.startswith("unit")))
    chain = f"chain knot -> {' -> '.join(names)} -> ebb\n"
    return f"{SUPPLY.replace('mill', supply)}{blocks}{more}{chain}power {{\n  others from {supply}\n}}\n"


def outlets(results: Results) -> dict[str, str]:
    return {feed.unit: str(feed.outlets[0]) for feed in results.get(PowerAssignment).feeds}


def test_a_chosen_outlet_stays_where_it_was() -> None:
    """By names alone dell has o1, fell o2, glen o3; where dell goes nobody is plugged elsewhere, though o1 is free."""
    old = chosen(NINES)
    assert outlets(after(old, old)) == {"dell": "mill.o1", "fell": "mill.o2", "glen": "mill.o3"}
    assert outlets(after(old, chosen(NINES[1:]))) == {"fell": "mill.o2", "glen": "mill.o3"}
    heir = f"unit holt {{\n{HELD}{FED.format(9)}  stands in for fell\n}}\n"
    assert outlets(after(old, chosen(("dell", "glen"), heir))) == {
        "dell": "mill.o1",
        "glen": "mill.o3",
        "holt": "mill.o2",
    }


def test_what_fed_it_before_gives_way_to_what_is_stated_and_to_what_does_not_bear_it() -> None:
    """glen draws 120 mA now, more than an outlet of 100 mA gives; o9 gives 200 mA. fell is stated on o1."""
    more = "supply kiln {\n  outlet o9 9 V dc 200 mA isolated\n}\n"
    new = chosen(NINES[:2], more + f"unit glen {{\n{HELD}{FED.format(9).replace('20 mA', '120 mA')}}}\n")
    new = new.replace("others from mill", "fell from mill.o1\n  others from mill, kiln")
    assert outlets(after(chosen(NINES), new)) == {"fell": "mill.o1", "dell": "mill.o2", "glen": "kiln.o9"}


def test_a_lead_keeps_its_plugs_where_a_neighbour_goes() -> None:
    """Two jacks 20 mm apart take no flat plugs, 27 mm wide. With one of them left empty a flat one would go in, and the lead that is
    there has a slim one: nothing is cut off. A plug that the rig names for all leads is another matter."""
    pairs = "".join(
        f"unit {name} {{\n" + "".join(f"  {way} {jack} ts rear {x} mm up 30 mm\n" for jack, x in (("l", 20), ("r", 40)))
        + "  pair l, r\n}\n"
        for name, way in (("weir", "output"), ("pool", "input"))
    )  # fmt: skip
    both, one = pairs + "chain weir => pool\n", pairs + "chain weir.l -> pool.l\n"
    slim, flat = ("barrel-angle", "barrel-angle"), ("flat-angle", "flat-angle")
    assert [lead.ends for lead in after(both, both).get(Leads).all] == [slim, slim]
    assert [lead.ends for lead in after(one, one).get(Leads).all] == [flat]
    assert [lead.ends for lead in after(both, one).get(Leads).all] == [slim]
    assert [lead.ends for lead in after(one, both).get(Leads).all] == [slim, slim]
    named = one + "leads {\n  audio plug flat-angle\n}\n"
    assert [lead.ends for lead in after(both, named).get(Leads).all] == [flat]
