"""LeadMake: how the conductors of a lead are joined end to end, and the words for it on every sheet and label."""

from __future__ import annotations

from rigc.record import Record

CROSSED, REVERSED = "CROSSED", "REVERSED"
SIGNS = {
    "ac": ("~", "AC"),
    REVERSED: ("±", "reversing"),
    CROSSED: ("×", "crossed"),
    "Y": ("Y", "leg of Y"),
    "series": ("+", "series"),
    "parallel": ("=", "parallel"),
}
"""What stands behind a lead's number in drawings, and what it says; behind a sign for an adaptor stands the adaptor's number."""


class Via(Record):
    """An adaptor between a lead and its unit: its number, and its kind (`series`, `parallel`, `reversing` or `size`). `end` is `lower` or
    `upper` for the lead from that outlet of a series pair, where the source says which is the lower."""

    mark: str
    kind: str
    end: str = ""


class LeadMake(Record):
    """How a lead is made beyond its cable, plugs and length.

    `turned` is empty where each conductor goes to its like at the other end, CROSSED where tip and ring change places,
    REVERSED where + and − do. `leg_of` is the number of the Y lead whose leg it is, `via` the adaptors behind it. Of a
    lead that feeds a unit: `volts` of kind `current` (dc, ac) stand at its far end, adaptors apart, and `polarity` is
    that of its plug there (None where not stated, or where it has none); `settable` where the outlet could be set
    otherwise. Of a MIDI lead: `forms` are the types (a, b, tip) of its two jacks, None where it is no small one.
    """

    turned: str = ""
    leg_of: str = ""
    via: tuple[Via, ...] = ()
    volts: float | None = None
    current: str = ""
    polarity: str | None = None
    settable: bool = False
    forms: tuple[str | None, str | None] = (None, None)
    shield_at_both: bool = False

    @property
    def special(self) -> bool:
        """Whether it must not be taken for a straight lead between two jacks, nor a straight one for it."""
        return bool(self.turned or self.leg_of or self.via)

    @property
    def conductors(self) -> tuple[object, ...]:
        """What two leads must have in common so that the one can take the other's place."""
        return self.turned, self.forms, self.shield_at_both

    @property
    def words(self) -> str:
        """How it is made, for a table; empty for a straight lead."""
        said = [_TURNED[self.turned] + self._between] if self.turned else []
        if self.leg_of:
            said.append(f"leg of the Y lead {self.leg_of}")
        said += [f"by the {each.kind} {adaptor_word(each.kind)} {each.mark}" + _from(each) for each in self.via]
        if self.shield_at_both:
            said.append("shield joined at both ends")
        return "; ".join(said)

    @property
    def kind(self) -> str:
        """In a word or two how it differs from a straight one: `REVERSED`, `CROSSED A to B`, `leg of Y D2`; empty for a
        straight one."""
        said = [self.turned + self._types] if self.turned else []
        if self.leg_of:
            said.append(f"leg of Y {self.leg_of}")
        said += [" ".join(filter(None, (each.kind, each.mark, each.end))) for each in self.via]
        return ", ".join(said)

    @property
    def flag(self) -> str:
        """What its label says at both ends beside the template: what it is set to, and how it is made; empty where
        nothing sets it apart."""
        told = self.volts is not None and (self.special or self.settable or self.current == "ac")
        parts = [f"{self.volts:g} V {self.current.upper()}"] if told else []
        return " ".join((*parts, *filter(None, (self.kind.upper(),))))

    @property
    def signs(self) -> str:
        """The signs that stand behind its number in drawings."""
        return " ".join(SIGNS[kind][0] + mark for kind, mark in self._signed)

    @property
    def sign_words(self) -> tuple[str, ...]:
        """What those signs say, each with its sign, for a legend."""
        return tuple(f"{SIGNS[kind][0]} {SIGNS[kind][1]}" for kind, _ in self._signed)

    @property
    def _signed(self) -> list[tuple[str, str]]:
        kinds = [("ac", "")] if self.current == "ac" else []
        kinds += [(self.turned, ""), ("Y" if self.leg_of else "", ""), *((each.kind, each.mark) for each in self.via)]
        return [each for each in kinds if each[0] in SIGNS]

    @property
    def _between(self) -> str:
        return f", type {' to type '.join(self._forms)}" if self._forms else ""

    @property
    def _types(self) -> str:
        return f" {' to '.join(self._forms)}" if self._forms else ""

    @property
    def _forms(self) -> tuple[str, ...]:
        """Both types of a lead that joins two small MIDI jacks."""
        known = tuple(form.upper() for form in self.forms if form in ("a", "b"))
        return known if len(known) == 2 else ()


STRAIGHT = LeadMake()
_TURNED = {
    CROSSED: "CROSSED: tip to ring, ring to tip, sleeve to sleeve",
    REVERSED: "REVERSED: + and − change places between its plugs",
}


def _from(each: Via) -> str:
    return f", from the pair's {each.end.upper()} outlet" if each.end else ""


def adaptor_word(kind: str) -> str:
    """`adaptor`, or `lead` where that kind of it is a lead itself: a series, parallel or Y lead."""
    return "adaptor" if kind in ("reversing", "size") else "lead"
