"""The revision that a rig is compared with: read from where the rig says or the command points, named as the rig names things."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.unplaced import open_rooms, unplaced
from rigc.analysis.findings.known_findings import known_findings
from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.analysis.laying.placed import placed
from rigc.analysis.previous import NOTHING_BEFORE, Previous
from rigc.analysis.results import Results
from rigc.analysis.revision.built.unmade_swap import KIND as UNMADE
from rigc.analysis.revision.no_comparison import KIND as NO_COMPARISON
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.gather import Gathered, gather
from rigc.loader import Loader, Unreadable, used_name
from rigc.model.jacks import Port
from rigc.model.resolve import resolve
from rigc.model.resolve.renaming import renamed
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Node
from rigc.syntax.parsed import Reader


class Before(Record):
    """The revision before, the findings about it, and the sources that were read for it."""

    previous: Previous = NOTHING_BEFORE
    findings: tuple[Diagnostic, ...] = ()
    sources: tuple[Source, ...] = ()


def before(
    load: Loader,
    gathered: Gathered,
    rig: Rig,
    reader: Reader,
    effort: int | None,
    seen: frozenset[str] = frozenset(),
    kept: Kept = NOTHING_KEPT,
) -> Before:
    """The revision that the rig block's `follows` names; nothing where it names none, and a finding where that
    is one of the files `seen`, which follow it."""
    follows = next((item for item in _head_items(gathered) if isinstance(item, nodes.Follows)), None)
    if follows is None:
        return Before()
    name = used_name(follows.span.source.name, follows.path.value)
    seen |= {gathered.sources[0].name}
    if name in seen:
        return _none(follows, f"'{name}' is this file or follows it: no revision is its own before")
    try:
        old = gather(load, name, reader)
    except Unreadable as fault:
        return _none(follows, f"revision {follows.letter} can't be compared with: {fault.message}")
    found = earlier(old, rig, reader, effort, load, seen, kept)
    errors = [each for each in found.findings if each.level is Level.ERROR]
    if errors:
        return _none(follows, f"'{name}' can't be compared with: {errors[0].message}", old.sources)
    if found.previous.letter != follows.letter.text:
        return _another(follows, name, found.previous.letter, old.sources)
    told = (*_out_of_turn(follows, found.previous, rig), *(each for each in found.findings if each.kind is UNMADE))
    return Before(found.previous, told, found.sources)


def _out_of_turn(follows: nodes.Follows, previous: Previous, rig: Rig) -> Iterator[Diagnostic]:
    """A finding where the revision before bears this one's letter, or a later date; it is compared with all the same."""
    head, stood = rig.head, previous.results
    if previous.letter == head.letter:
        message = f"this is revision {head.letter}, too: one that follows another bears another letter"
    elif stood is not None and stood.rig.head.date > head.date:
        message = f"revision {previous.letter} is of {stood.rig.head.date}, later than this one of {head.date}"
    else:
        return
    yield from _none(follows, message, help=_GO_ON).findings


def stood_before(
    load: Loader | None,
    gathered: Gathered,
    rig: Rig,
    reader: Reader,
    effort: int | None,
    seen: frozenset[str] = frozenset(),
) -> Rig | None:
    """The rig of the revision that this one follows, for what has no place in this one and stood there; None where all have places."""
    if load is None or not (unplaced(rig) or open_rooms(rig)):
        return None
    results = before(load, gathered, rig, reader, effort, seen).previous.results
    return None if results is None else results.rig


def earlier(
    old: Gathered,
    rig: Rig,
    reader: Reader,
    effort: int | None,
    load: Loader | None = None,
    seen: frozenset[str] = frozenset(),
    kept: Kept = NOTHING_KEPT,
) -> Before:
    """An earlier revision as `rig` sees it: its things are called as they are called now. With errors in its names or
    quantities there is none; the findings are all that was found wrong with it. With `load` its places and numbers are those that follow
    from the revision before it, as its own documents have them."""
    from rigc.analysis.revision.built.swapped_board import swapped_board  # most rigs follow none

    end = Span(old.sources[0], 0, 0)
    first, told = resolve(old.statements, reader.reserved, end)
    findings = (*old.findings, *told)
    if first is None or any(each.level is Level.ERROR for each in findings):
        return Before(NOTHING_BEFORE, findings, old.sources)
    names = _renames(first, rig)
    statements = renamed(old.statements, names, reader.reserved, end)
    older = Before() if load is None else before(load, old, first, reader, effort, seen)
    before_it = older.previous.results
    first, _ = placed(first, effort, before=None if before_it is None else before_it.rig)
    if names:
        again, _ = resolve(statements, reader.reserved, end)
        first = first if again is None else _called(again, first, names)
        older = Before() if load is None else before(load, old, first, reader, effort, seen)
    built = tuple(each for each in (*first.as_built, *rig.as_built) if each.revision == first.head.letter)
    stood = swapped_board(statements, first, built, rig, reader, end)
    renames = tuple((now, then) for then, now in names.items())
    known = known_findings(
        stood.rig, older.previous, (kept,), kept=kept, sources=old.sources, of=f"before {rig.head.name}"
    )
    previous = Previous(Results(stood.rig, older.previous, given=(kept, known)), built, renames, effort)
    return Before(previous, (*findings, *stood.findings), tuple(dict.fromkeys((*old.sources, *older.sources))))


def _called(rig: Rig, laid: Rig, names: dict[str, str]) -> Rig:
    """The rig whose things bear other names, laid as it was under the names of before: what is built is not laid anew for a name."""
    places = {names.get(name, name): place for name, place in laid.places.items()}
    called: Rig = rig.replace(
        places={name: place.replace(thing=name) for name, place in places.items()},
        reserved_rooms=laid.reserved_rooms,
        chosen_plugs=tuple(
            each.replace(port=Port(names.get(each.port.thing, each.port.thing), each.port.jack))
            for each in laid.chosen_plugs
        ),
    )
    return called


def _renames(old: Rig, rig: Rig) -> dict[str, str]:
    """Names before -> names now, from the `was` clauses; a clause that an older revision still knows by itself does not count."""
    found: dict[str, str] = {}
    for thing in (*rig.units.values(), *rig.supplies.values()):
        if thing.was in old.things and thing.was not in rig.things and thing.name not in old.things:
            found.setdefault(thing.was, thing.name)
    return found


def _head_items(gathered: Gathered) -> tuple[Node, ...]:
    return next((statement.items for statement in gathered.statements if isinstance(statement, nodes.Rig)), ())


def _another(follows: nodes.Follows, name: str, letter: str, sources: tuple[Source, ...]) -> Before:
    """The file that is followed holds another revision than is said."""
    none = _none(follows, f"'{name}' is revision {letter}, not {follows.letter}", sources)
    written = Mend(f"write `follows {letter}`", (Replace(follows.letter.span, letter),))
    told = (each.replace(mends=(written,), subject=(*each.subject, letter)) for each in none.findings)
    return Before(NOTHING_BEFORE, tuple(told), sources)


_NAME_IT = "name the file of the revision before, counted from this file"
_GO_ON = "correct the letter and the date of the one that is wrong, or name the file of the revision before"


def _none(follows: nodes.Follows, message: str, sources: tuple[Source, ...] = (), help: str = _NAME_IT) -> Before:
    told = NO_COMPARISON.at(
        follows.span,
        message,
        subject=(follows.letter.text,),
        label="followed here",
        help=help,
    )
    return Before(NOTHING_BEFORE, (told,), sources)
