"""What stands, and a thing or a few that are put beside it -> how those leads run that may run otherwise for that."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.laying.search.ground import At, Ground
from rigc.analysis.laying.search.lengths import Run, Standing, some_runs


class MetLeads:
    """The leads of one board."""

    def __init__(self, ground: Ground) -> None:
        self.ground, self.links = ground, ground.board.links

    def with_ends(self, standing: Iterable[int]) -> list[int]:
        """The numbers of the leads of which all ends stand."""
        there = {*standing, -1}
        return [number for number, link in enumerate(self.links) if link.start.item in there and link.end.item in there]

    def runs(self, at: list[At], standing: set[int], placed: dict[int, At]) -> dict[int, Run]:
        """By number the leads of what is placed, and those of what stands (`at` some places) for which that may be in the way."""
        ground = self.ground
        stood = {item: ground.stand(item, at[item]) for item in standing}
        stood.update((item, ground.stand(item, there)) for item, there in placed.items())
        numbers = [number for number in self.with_ends(stood) if self._is_met(number, stood, placed)]
        runs = some_runs(ground.board, [self.links[number] for number in numbers], stood)
        return dict(zip(numbers, runs, strict=True))

    def _is_met(self, number: int, stood: dict[int, Standing], placed: dict[int, At]) -> bool:
        """Whether a lead is one of what is placed, or has some of that between its left and its right."""
        start, end = self.links[number].start, self.links[number].end
        if start.item in placed or end.item in placed:
            return True
        left = min(each.x if each.item < 0 else stood[each.item].box.left for each in (start, end))
        right = max(each.x if each.item < 0 else stood[each.item].box.right for each in (start, end))
        return any(stood[item].box.left < right and stood[item].box.right > left for item in placed)
