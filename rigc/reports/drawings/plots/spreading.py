"""Wished heights of labels -> heights that keep them apart, each as near its wish as the others leave it."""

from __future__ import annotations


def spread(wishes: tuple[float, ...], gap: float, top: float, bottom: float) -> tuple[float, ...]:
    """Heights in mm, in the order given, at least `gap` apart and within top and bottom if they fit there at all.

    Labels that would overlap form a block about the middle of their wishes; blocks that meet become one.
    """
    order = sorted(range(len(wishes)), key=lambda at: (wishes[at], at))
    blocks: list[list[int]] = []
    for at in order:
        blocks.append([at])
        while len(blocks) > 1 and _start(blocks[-1], wishes, gap, top, bottom) < (
            _start(blocks[-2], wishes, gap, top, bottom) + gap * len(blocks[-2])
        ):
            blocks[-2:] = [blocks[-2] + blocks[-1]]
    heights = [0.0] * len(wishes)
    for block in blocks:
        start = _start(block, wishes, gap, top, bottom)
        for place, at in enumerate(block):
            heights[at] = start + gap * place
    return tuple(heights)


def _start(block: list[int], wishes: tuple[float, ...], gap: float, top: float, bottom: float) -> float:
    """The height of a block's first label."""
    length = gap * (len(block) - 1)
    middle = sum(wishes[at] for at in block) / len(block)
    return max(top, min(bottom - length, middle - length / 2))
