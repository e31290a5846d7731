"""A slip: what a builder did to a good rig, as an edit of its bytes that is written down and can be made again."""

from __future__ import annotations

from collections.abc import Callable

from rigc.record import Record

Edit = Callable[[bytes], bytes]
"""The bytes of the file as they should be -> as the builder saved them."""


class Slip(Record):
    """One wrong (or odd) input. `base` is the file beside this one that is edited; `beside` are further files of the folder."""

    name: str
    done: str
    edit: Edit
    base: str = "tutorial.rig"
    beside: tuple[tuple[str, str], ...] = ()


def swap(old: str, new: str, *more: str) -> Edit:
    """`old` becomes `new` (at its first place), and so on for further pairs. Each `old` must be there."""
    pairs = [(old, new), *zip(more[::2], more[1::2], strict=True)]

    def edit(data: bytes) -> bytes:
        for before, after in pairs:
            assert before.encode() in data, before
            data = data.replace(before.encode(), after.encode(), 1)
        return data

    return edit


def each(old: str, new: str) -> Edit:
    """Every `old` becomes `new`."""
    return lambda data: data.replace(old.encode(), new.encode())


def without(text: str) -> Edit:
    """The line that holds this text is missing."""

    def edit(data: bytes) -> bytes:
        lines = data.split(b"\n")
        (gone,) = [line for line in lines if text.encode() in line]
        return b"\n".join(line for line in lines if line is not gone)

    return edit


def also(text: str) -> Edit:
    """The text stands at the end of the file as well."""
    return lambda data: data + b"\n" + text.encode() + b"\n"


def whole(data: bytes) -> Edit:
    """The file holds these bytes and nothing else."""
    return lambda _: data
