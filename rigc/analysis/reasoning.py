"""Results -> the reasons of every value, by name; and what to answer to a name that has none."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from rigc.analysis import revision
from rigc.analysis.results import Results, needed
from rigc.diagnostics.near import nearest
from rigc.discover import declaring
from rigc.traced.collected import figures
from rigc.traced.figure import Told, assumed
from rigc.traced.reason import Input, Reason
from rigc.traced.told_range import ToldRange, told_range


class UnknownValue(Exception):
    """No value has this name; the message names the nearest one that has."""


def told(results: Results) -> dict[str, Told]:
    """Every figure that a computation holds, by its name; those of a comparison with another revision are left out."""
    found: dict[str, Told] = {}
    for function in declaring("rigc.analysis", "COMPUTE"):
        needs, result = needed(function)
        if Results not in needs and not function.__module__.startswith(f"{revision.__name__}."):
            for each in figures(results.get(result)):
                found.setdefault(each.name, each)
    return found


class Reasons(Mapping[str, Reason]):
    """The reasons of figures by their names; the text of one is made when it is asked for."""

    def __init__(self, figures: dict[str, Told]) -> None:
        self.figures = figures
        self._made: dict[str, Reason] = {}

    def __getitem__(self, name: str) -> Reason:
        if name not in self._made:
            self._made[name] = self.figures[name].reason()
        return self._made[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self.figures)

    def __len__(self) -> int:
        return len(self.figures)


class Reasoning:
    """Every value of a rig with how it came about."""

    def __init__(self, results: Results) -> None:
        self.by_name = Reasons(told(results))

    def of(self, name: str) -> tuple[Reason, ...]:
        """The reason of that name; of a thing, lead or group all its reasons. Raises `UnknownValue`."""
        if name in self.by_name:
            return (self.by_name[name],)
        found = tuple(self.by_name[each] for each in self.by_name if each.startswith(f"{name}."))
        if not found:
            raise UnknownValue(self._unknown(name))
        return found

    def deep(self, reasons: tuple[Reason, ...]) -> tuple[Reason, ...]:
        """These reasons and, each once, all that they rest on, in the order in which they are met."""
        found = {reason.name: reason for reason in reasons}
        open_ones = list(reasons)
        for reason in open_ones:
            for behind in self.behind(reason):
                if behind.name not in found:
                    found[behind.name] = behind
                    open_ones.append(behind)
        return tuple(found.values())

    def behind(self, reason: Reason) -> Iterator[Reason]:
        """The reasons of a reason's inputs."""
        return (self.by_name[each.why] for each in reason.inputs if each.why in self.by_name)

    def assumed(self, one: Input) -> bool:
        """Whether an input is assumed, or rests on something that is."""
        if one.assumed:
            return True
        return assumed(self.by_name.figures.get(one.why))

    def leans(self, reason: Reason) -> bool:
        """Whether a value rests on an assumed fact."""
        return assumed(self.by_name.figures.get(reason.name))

    def range_of(self, reason: Reason) -> ToldRange | None:
        """The range in which a value lies; None where no fact behind it may be off."""
        return told_range(self.by_name.figures[reason.name])

    def _unknown(self, name: str) -> str:
        parts = name.split(".")
        known = next((head for at in range(len(parts) - 1, 0, -1) if self._has(head := ".".join(parts[:at]))), "")
        if known:
            fields = list(
                dict.fromkeys(each[len(known) + 1 :] for each in self.by_name if each.startswith(f"{known}."))
            )
            typed = name[len(known) + 1 :]
            near = nearest(typed, fields)
            advice = f"did you mean '{known}.{near}'?" if near else f"it has {', '.join(fields)}"
            return f"'{known}' has no value '{typed}'; {advice}"
        near = self._nearest(name)
        return f"nothing named '{name}' has a value" + (f"; did you mean '{near}'?" if near else "")

    def _has(self, head: str) -> bool:
        return head in self.by_name or any(each.startswith(f"{head}.") for each in self.by_name)

    def _nearest(self, name: str) -> str:
        """The nearest whole name, whatever its capitals; a lead's mark is written in capitals, a unit's name is not."""
        heads = [".".join(each.split(".")[:at]) for each in self.by_name for at in range(1, each.count(".") + 2)]
        lower = {each.lower(): each for each in heads}
        near = nearest(name, lower)
        return lower.get(near, "")
