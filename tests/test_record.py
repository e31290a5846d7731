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


class Many(Record):
    """A record of which so many are made that it gets an `__init__` of its own; a field bears a name that such code might use itself."""

    state: str
    kind: str = "ts"
    angle: int = 0


class More(Many):
    """One with a field more."""

    note: str = ""


def test_of_many_each_is_made_as_the_first_was() -> None:
    first, more = Many("new"), More("new", note="x")
    for _ in range(300):
        assert Many("new") == first
        assert More("new", note="x") == more

    class Late(More):
        """Declared when its base has its own already."""

        length: int = 1

    assert Many("new", angle=1).__dict__ == {"state": "new", "kind": "ts", "angle": 1}
    assert Late("new", length=2).__dict__ == {"state": "new", "kind": "ts", "angle": 0, "note": "", "length": 2}
    with pytest.raises(TypeError, match="colour"):
        More("new", colour="red")  # type: ignore[call-arg]
