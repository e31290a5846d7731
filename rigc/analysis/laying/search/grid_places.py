"""A board -> the places of its grid where a thing may stand."""

from __future__ import annotations

from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.lengths import Standing

_COARSE = 100  # no finer grid than one of 10 mm is tried
_MOST_PLACES = 4_000  # of one thing; where its grid has more, a coarser one is laid


class Sites:
    """All places of a board's things; found when they are first asked for."""

    def __init__(self, layout: Layout) -> None:
        self.board, self._layout = layout.board, layout
        self._sites: dict[int, list[Standing]] = {}

    def of(self, item: int) -> list[Standing]:
        """The places on the grid, not off the deck, of an item in all its shapes."""
        if item not in self._sites:
            self._sites[item] = [self.site(item, at) for at in self._grid(item) if not self._layout.alone(item, at)]
        return self._sites[item]

    def site(self, item: int, at: At) -> Standing:
        """An item at any place."""
        return self._layout.ground.stand(item, at)

    def pitch(self, item: int) -> int:
        """The pitch of the grid for an item: that of the board, or as much coarser as it must be."""
        board, shapes = self.board, self._layout.solids[item]
        pitch = -(-_COARSE // board.step) * board.step
        while len(shapes) * (board.width // pitch) * (board.depth // pitch) > _MOST_PLACES:
            pitch += board.step
        return pitch

    def _grid(self, item: int) -> list[At]:
        board, shapes, pitch = self.board, self._layout.solids[item], self.pitch(item)
        return [
            (x, y, number)
            for number, solid in enumerate(shapes)
            for x in range(0, board.width - solid.width + 1, pitch)
            for y in range(0, board.depth - solid.depth + 1, pitch)
        ]
