"""Records: values by place or by name, defaults, and what a slip in making one raises."""

from __future__ import annotations

from typing import Any

import pytest

from rigc.record import Record


class Plug(Record):
    """A record of a test."""

    kind: str
    angle: int = 0
    note: str = ""


@pytest.mark.parametrize(
    ("values", "named"),
    [
        (("ts", 90, ""), {}),
        (("ts", 90), {}),
        (("ts",), {"angle": 90}),
        ((), {"angle": 90, "kind": "ts"}),
        ((), {"note": "", "angle": 90, "kind": "ts"}),
    ],
)
def test_values_by_place_or_by_name_make_the_same(values: tuple[Any, ...], named: dict[str, Any]) -> None:
    made: Any = Plug
    assert made(*values, **named) == Plug("ts", 90, "")


@pytest.mark.parametrize(
    ("values", "named", "told"),
    [
        (("ts", 90, "", 1), {}, "Plug takes 3 values, not 4"),
        (("ts",), {"kind": "trs"}, "Plug: unknown or repeated field kind"),
        (("ts",), {"colour": "red"}, "Plug: unknown or repeated field colour"),
        (("ts", 90, ""), {"note": ""}, "Plug: unknown or repeated field note"),
        ((), {"angle": 90}, "Plug: missing field kind"),
    ],
)
def test_a_slip_raises_with_the_name(values: tuple[Any, ...], named: dict[str, Any], told: str) -> None:
    made: Any = Plug
    with pytest.raises(TypeError, match=told):
        made(*values, **named)
