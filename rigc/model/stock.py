"""Stock: the cable, plugs, strips and premade lengths that a bench has."""

from __future__ import annotations

from functools import cached_property

from rigc.model.fact import Choice, Quantity
from rigc.model.jacks import Connector, Port
from rigc.record import Record
from rigc.source import Span


class Cable(Record):
    """A cable. `signal` is audio, dc, ac, midi or control; `area_mm2` is one conductor's copper."""

    name: str
    title: str
    declared: Span
    signal: str | None = None
    capacitance_pf_per_m: Quantity | None = None
    outer_mm: Quantity | None = None
    area_mm2: Quantity | None = None
    strand: str | None = None
    conductors: int | None = None
    mass_g_per_m: Quantity | None = None
    colour: str | None = None
    price: Choice | None = None


class Plug(Record):
    """A plug kind. It stands out `stand_out_mm` from the jack's face, its cable leaves `exit_mm` from it and needs `bend_mm` more;
    its body is `width_mm` by `height_mm`, centred on the jack. `cut_in_mm` is added to a lead's finished length when it is cut;
    None where the plug comes on a premade lead. `soldered` ends at a panel jack, inside."""

    name: str
    title: str
    declared: Span
    fits: tuple[Connector, ...] = ()
    stand_out_mm: Quantity | None = None
    bend_mm: Quantity | None = None
    exit_mm: Quantity | None = None
    width_mm: Quantity | None = None
    height_mm: Quantity | None = None
    cut_in_mm: Quantity | None = None
    strip_back_mm: tuple[float, float, float] | None = None
    poles: int | None = None
    mass_kg: Quantity | None = None
    price: Choice | None = None
    soldered: bool = False


class ChosenPlug(Record):
    """A plug kind that was chosen for a jack in place of the usual one (`instead`), because with that something would be in the way:
    `spares` names what."""

    port: Port
    plug: str
    instead: str
    spares: str = ""


class Strip(Record):
    """A fastening strip. `pull_kpa` is its working pull; it mates with `loop` (a partner of its own kind of tape) or with `itself`."""

    name: str
    title: str
    declared: Span
    width_mm: Quantity | None = None
    pull_kpa: Quantity | None = None
    mass_g_per_m: Quantity | None = None
    mates: str | None = None
    cycles: int | None = None
    roll_mm: Quantity | None = None
    price: Choice | None = None


class Stock(Record):
    """All stock by name; `premade_mm` holds the premade lengths of each signal, ascending, `premade_price` and
    `premade_kg` what those cost and weigh, plugs and all, whose price or mass is stated, by signal and length in mm."""

    cables: dict[str, Cable]
    plugs: dict[str, Plug]
    strips: dict[str, Strip]
    premade_mm: dict[str, tuple[float, ...]]
    premade_price: dict[str, dict[float, Choice]] = {}  # noqa: RUF012
    premade_kg: dict[str, dict[float, Quantity]] = {}  # noqa: RUF012

    @cached_property
    def going_in(self) -> dict[Connector, tuple[Plug, ...]]:
        """The plugs that go into a connector, of those that were asked for: a thousand jacks are of a few kinds."""
        return {}

    def premade_list(self, signal: str) -> str:
        """The signal from whose list a ready lead is bought: a control lead comes from the audio list if it has none of its own."""
        return "audio" if signal == "control" and not self.premade_mm.get("control") else signal
