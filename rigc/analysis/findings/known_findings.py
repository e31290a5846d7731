"""What checks found in an earlier run, kept with all that they had read of the rig: found again without a check where that is the same."""

from __future__ import annotations

import json
from collections.abc import Callable, Collection, Mapping, Sequence
from hashlib import sha256
from typing import Any

from rigc.analysis.kept import Kept, Store
from rigc.analysis.previous import Previous
from rigc.diagnostics.diagnostic import Diagnostic, tells_line
from rigc.diagnostics.saved import restored_at, saved
from rigc.model.rig import Rig
from rigc.model.rig_parts import Parts, digest
from rigc.model.seen_rig import looked_at_finely
from rigc.source import InCommon, Source, Span

_FEW = 8
"""So many checks, and no more, are made anew each time before what is kept is written anew."""


Found = Mapping[str, tuple[Diagnostic, ...]]
Reads = Mapping[str, frozenset[str]]


class KnownFindings:
    """The findings of checks by the checks' names, and the parts of the rig that each had read, itself and by what it was handed."""

    def __init__(self, at: _Shelf | None = None, found: Found | None = None, reads: Reads | None = None) -> None:
        self.at = at
        self.found: Found = found or {}
        self._reads: Reads = reads or {}
        self._elsewhere: frozenset[str] = frozenset()

    def beside(self, other: KnownFindings, differ: Collection[str]) -> KnownFindings:
        """With those of a rig that differs in these parts, where they stand; they are not kept again."""
        standing = {name: found for name, found in other.found.items() if other._reads[name].isdisjoint(differ)}
        reads = {**self._reads, **{name: other._reads[name] for name in standing}}
        made = KnownFindings(self.at, {**self.found, **standing}, reads)
        made._elsewhere = frozenset(standing)
        return made

    @property
    def mark(self) -> str:
        """What stands for all that follows from the rig, the revision before it with it; empty where nothing is kept."""
        return "" if self.at is None else self.at.mark

    def all(self, found: Found, reads: Callable[[str], frozenset[str]]) -> None:
        """All that was found, known from now on; and in the next run, where more than a few were not known, or the last was of the same. `reads` tells what a check
        that was asked has read."""
        if self.at is None:
            return
        anew = [name for name in found if name not in self.found]
        few = bool(self.found.keys() - self._elsewhere)
        self._reads = {name: self._reads[name] if name in self.found else reads(name) for name in found}
        self.found = found
        if anew and (len(anew) > (_FEW if few else 0) or self.at.seen_again()):
            self.at.keep({name: each for name, each in found.items() if name not in self._elsewhere}, self._reads)


NOTHING_KNOWN = KnownFindings()


def known_findings(
    rig: Rig,
    previous: Previous,
    given: tuple[object, ...],
    *,
    kept: Kept,
    sources: Sequence[Source],
    of: str = "",
    like: KnownFindings = NOTHING_KNOWN,
) -> KnownFindings:
    """What is kept of the last run on a rig that has all its places in these `sources`. What is `given` beside it is the same each time. `of`
    tells it from other rigs with the same first source; it is `like` one of which more is known, that has its sources before others.

    A part of the rig is the same as then if it holds the same, and each of its places lies where the text is as it was. Of a rig with so many
    things that each is read as a whole, nothing is kept: nearly all would hang on any of them.
    """
    if kept.store is None or not looked_at_finely(rig):
        return NOTHING_KNOWN
    at = _Shelf(rig, previous, given, kept.store, kept.code(), sources, of, like.at)
    try:
        return KnownFindings(at, *at.again())
    except (ValueError, TypeError, LookupError):
        return KnownFindings(at)


class _Shelf:
    """Where the findings of a rig are kept."""

    def __init__(
        self,
        rig: Rig,
        previous: Previous,
        given: tuple[object, ...],
        store: Store,
        code: str,
        sources: Sequence[Source],
        of: str,
        like: _Shelf | None,
    ) -> None:
        self._rig = rig
        self._previous = previous
        self._given = [type(each).__name__ for each in given]
        self._store = store
        self._code = code
        self._sources = sources
        self._like = like
        who = "\0".join((sources[0].origin, sources[0].name, of)).encode("utf-8", "surrogatepass")
        self._name = f"checks-{sha256(who).hexdigest()[:24]}"
        self.places: _Places | None = None
        self.parts: Parts | None = None
        self._now: dict[str, str] = {}
        self._texts = [[each.name, each.origin, each.text] for each in sources]

    @property
    def _of_texts(self) -> bytes:
        return sha256(json.dumps([self._code, self._texts]).encode("ascii")).hexdigest().encode("ascii")

    @property
    def mark(self) -> str:
        """What stands for the rig and the texts that tell its places, for this rigc."""
        if self.parts is None:
            self._digests(_Places(self._sources, self._texts))
        return sha256(b"".join((self._of_texts, json.dumps(self._now).encode("ascii")))).hexdigest()[:40]

    def seen_again(self) -> bool:
        """Whether the last run that asks this was of the same texts."""
        name = f"{self._name}-last"
        was = self._store.read(name)
        if was != self._of_texts:
            self._store.write(name, self._of_texts)
        return was == self._of_texts

    def again(self) -> tuple[Found, Reads]:
        """What still stands of what was kept. Raises ValueError, TypeError or LookupError where that is none of ours."""
        found: dict[str, tuple[Diagnostic, ...]] = {}
        reads: dict[str, frozenset[str]] = {}
        code, texts, before, told = json.loads(self._store.read(self._name) or b"[]")
        if code != self._code:
            return found, reads
        now, names = self._digests(_Places(self._sources, texts)), [*before]
        same = [now.get(part) == digest for part, digest in before.items()]
        assert self.places is not None
        for check, (read, text) in told.items():
            if all(map(same.__getitem__, read)):
                each = _moved(text, self.places)
                if each is not None:
                    found[check], reads[check] = each, frozenset(map(names.__getitem__, read))
        return found, reads

    def keep(self, found: Found, reads: Reads) -> None:
        """Keeps these findings, and no others any more."""
        now = self._digests(_Places(self._sources, self._texts))
        numbers = {part: number for number, part in enumerate(now)}
        told = {
            check: [sorted(numbers[part] for part in reads[check]), text]
            for check, each in found.items()
            if reads[check] <= now.keys() and (text := _told(each, self._sources)) is not None
        }
        self._store.write(self._name, json.dumps([self._code, self._texts, now, told]).encode("ascii"))

    def _digests(self, places: _Places) -> dict[str, str]:
        like = self._like if self._like is not None and places.agree(self._like.places) else None
        self.places, self.parts = places, Parts(self._rig, places.then, None if like is None else like.parts)
        self._now = {
            **self.parts.digests,
            **dict.fromkeys(self._given, ""),
            Previous.__name__: _of_previous(self._previous, places),
        }
        return self._now


def _told(found: tuple[Diagnostic, ...], sources: Sequence[Source]) -> str | None:
    """The findings as text; None where they tell what may be otherwise though all that was read is the same."""
    if not found:
        return ""
    return None if any(map(tells_line, found)) else saved(found, sources)


def _moved(text: str, places: _Places) -> tuple[Diagnostic, ...] | None:
    """The findings, each place where it lies now; None where one was edited."""
    if not text:
        return ()
    try:
        return restored_at(text, places.now)
    except _Edited:
        return None


def _of_previous(previous: Previous, places: _Places) -> str:
    if previous.results is None:
        return ""
    told = previous.as_built, previous.renamed, previous.effort
    return f"{digest(told, places.then)} {' '.join(Parts(previous.results.rig, places.then).digests.values())}"


class _Edited(Exception):
    """A place is in what was edited."""


class _Places:
    """Where in the texts of then stood what stands in the sources of now, and the other way round."""

    def __init__(self, sources: Sequence[Source], texts: Sequence[Sequence[str]]) -> None:
        self._texts = texts
        left = [*enumerate(texts)]
        self._sources: dict[int, tuple[Source, InCommon | None]] = {}
        self._numbers: dict[int, int] = {}
        for source in sources:
            at = next((at for at, (_, text) in enumerate(left) if text[:2] == [source.name, source.origin]), None)
            if at is not None:
                number, (_, _, text) = left.pop(at)
                self._numbers[id(source)] = number
                self._sources[number] = source, None if text == source.text else InCommon(text, source.text)

    def agree(self, other: _Places | None) -> bool:
        """Whether all that lies in the sources of the other is told as there."""
        return other is not None and self._texts[: len(other._texts)] == other._texts

    def then(self, span: Span) -> tuple[Any, ...]:
        """A place of now as it was told then; of one that is new, or was edited, what was told of none."""
        number, start, end = self._numbers.get(id(span.source)), span.start, span.end
        if number is None:
            return None, span.source.name, start, end
        edit = self._sources[number][1]
        by = 0 if edit is None else edit.came(start, end)
        return (None, number, start, end) if by is None else (number, start - by, end - by)

    def now(self, number: int, start: int, end: int) -> Span:
        """Where what stood there then stands now. Raises `_Edited`."""
        if number not in self._sources:
            raise _Edited
        source, edit = self._sources[number]
        by = 0 if edit is None else edit.moved(start, end)
        if by is None:
            raise _Edited
        return Span(source, start + by, end + by)
