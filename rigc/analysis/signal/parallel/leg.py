"""The things on one of several ways -> what matters where the ways meet: polarity, latency, dry sound."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.record import Record
from rigc.traced.given import stated
from rigc.traced.means import found, total
from rigc.traced.term import Number, Term, Traced, Unknown, number

POLARITY = frozenset(("inverts", "inverts unknown", "non-inverting"))
TIME = frozenset(("delay", "reverb"))


class Leg(Record):
    """One way: the things on it that are not on all ways, in order.

    `label` is what people call it (`dry`, `wet 1`, an amp's name); `share` a blend's share in percent, None where not
    said; `flipped` whether the mixer turns it over. `turning` invert when on and can be off; `turned` invert always;
    `unsure` are units of which nobody knows the polarity, `unsaid` those that do not say it: they
    count as not inverting, and what follows can't be checked. `latency` is in ms with everything on; unknown where one of `untimed` does not say it.
    `saved_ms` tells of those that are `turning` how much earlier the sound arrives when they are off; None where not known.
    `dry_left` are delays and reverbs in a wet way that are not set to give wet sound only, `wet_only` those that are.
    """

    label: str
    things: tuple[str, ...]
    wet: bool
    share: Term | None
    flipped: bool
    turning: tuple[str, ...]
    turned: tuple[str, ...]
    unsure: tuple[str, ...]
    unsaid: tuple[str, ...]
    latency: Traced
    saved_ms: tuple[tuple[str, float | None], ...]
    untimed: tuple[str, ...]
    dry_left: tuple[str, ...]
    wet_only: tuple[str, ...]
    tails: tuple[str, ...]

    @property
    def direct(self) -> bool:
        """Whether the sound itself arrives, and not only its echoes: those are heard beside the other ways, and make no
        comb with them."""
        return not self.wet_only

    @property
    def latency_ms(self) -> float | None:
        """How late it is in ms with everything on; None where not known."""
        return _plain(self.latency)

    def inverted(self, on: Collection[str]) -> bool:
        """Whether the sound arrives turned over with these units on."""
        count = len(self.turned) + self.flipped + sum(name in on for name in self.turning)
        return count % 2 == 1

    def late_ms(self, on: Collection[str]) -> float | None:
        """By how much the sound arrives late with these of the turning units on and the others of them off; None: not known."""
        saved = [saved for name, saved in self.saved_ms if name not in on]
        known = [each for each in saved if each is not None]
        return None if self.latency_ms is None or len(known) < len(saved) else self.latency_ms - sum(known)


def leg(
    rig: Rig, label: str, things: Iterable[str], wet: bool = False, share: Term | None = None, flipped: bool = False
) -> Leg:
    """Looks at each unit, amp and desk on the way."""
    names = tuple(things)
    units = [rig.units[name] for name in names if name in rig.units]
    inverting = [unit for unit in units if "inverts" in unit.flags]
    times = {unit.name: latency(unit) for unit in units}
    untimed = tuple(name for name, each in times.items() if isinstance(each, Unknown))
    delays = [each for each in times.values() if not isinstance(each.how, Number)]
    return Leg(
        label,
        names,
        wet,
        share,
        flipped,
        tuple(unit.name for unit in inverting if _can_be_off(unit)),
        tuple(unit.name for unit in inverting if not _can_be_off(unit)),
        tuple(unit.name for unit in units if "inverts unknown" in unit.flags),
        tuple(unit.name for unit in units if not unit.flags & POLARITY and not _only_passive(unit)),
        _sum(delays),
        tuple((unit.name, _saved_ms(unit)) for unit in inverting if _can_be_off(unit)),
        untimed,
        tuple(unit.name for unit in units if wet and unit.flags & TIME and "set wet" not in unit.flags),
        tuple(unit.name for unit in units if unit.flags & TIME and "set wet" in unit.flags),
        tuple(unit.name for unit in units if "tails" in unit.flags),
    )


def _sum(delays: list[Traced]) -> Traced:
    if not delays:
        return found(0.0, lambda: "all that is on it stays analogue: 0")
    whole: Traced = total(delays)
    return whole if len(delays) > 1 else delays[0]


def latency(unit: Unit) -> Traced:
    """By how much a unit delays the sound that it lets through, in ms: nothing where that stays analogue.

    A digital unit that says nothing is not known, nor is one that says neither `digital` nor `analogue`. Amps and desks
    count as analogue unless they say `digital`.
    """
    if "dry analogue" in unit.flags and "set wet" not in unit.flags:
        return number(0.0)
    analogue = bool({"analogue", "passive"} & unit.flags) or unit.ends
    if unit.latency_ms is None and analogue and "digital" not in unit.flags:
        return number(0.0)
    return stated(f"latency of {unit.name}", unit.latency_ms)


def latency_ms(unit: Unit) -> float | None:
    """The same as a plain number; None where not known."""
    return _plain(latency(unit))


def _plain(value: Traced) -> float | None:
    return None if isinstance(value, Unknown) else float(value)


def _saved_ms(unit: Unit) -> float | None:
    """How much earlier the sound gets through when it is off: by true or buffered bypass it goes round the converters, with
    trails it does not; None where its bypass or its latency is not said."""
    late, bypass = latency_ms(unit), unit.bypass.value if unit.bypass is not None else "unknown"
    if not late or bypass == "trails":
        return late if late is None else 0.0
    return late if bypass in ("true", "buffered") else None


def _only_passive(unit: Unit) -> bool:
    """Whether nothing in it could turn the sound over: resistors can't, a transformer can."""
    return "passive" in unit.flags and not any(path.how.startswith("transformer") for path in unit.paths)


def _can_be_off(unit: Unit) -> bool:
    always = unit.bypass is not None and unit.bypass.value == "always-on"
    return unit.kind == "unit" and not always and "passive" not in unit.flags
