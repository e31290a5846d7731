"""Editors count UTF-16 units: a sign outside the basic plane takes two of them, four bytes of UTF-8, and is one character."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as some

from rigc.editor.places import UTF_8, UTF_16, UTF_32, Place, offset_of, place_of, units
from rigc.source import Source

# 'note "' is 6 characters; the clef U+1D11E is outside the basic plane; é and µ are inside it.
TEXT = Source("a.rig", 'language 1\nnote "𝄞 é" # µ\nend\n')


@pytest.mark.parametrize(
    ("encoding", "character"),
    [
        (UTF_16, 6 + 2 + 1),  # the clef is a surrogate pair
        (UTF_8, 6 + 4 + 1),  # and four bytes
        (UTF_32, 6 + 1 + 1),
    ],
)
def test_behind_a_sign_outside_the_basic_plane(encoding: str, character: int) -> None:
    offset = TEXT.text.index("é")
    assert place_of(TEXT, offset, encoding) == Place(1, character)
    assert offset_of(TEXT, Place(1, character), encoding) == offset


def test_inside_a_sign_is_before_it() -> None:
    assert offset_of(TEXT, Place(1, 7)) == TEXT.text.index("𝄞")


@pytest.mark.parametrize(
    ("place", "offset"),
    [
        (Place(0, 99), 10),  # behind the end of a line
        (Place(1, 99), TEXT.text.index("\nend")),
        (Place(99, 0), len(TEXT.text)),  # behind the last line
        (Place(3, 0), len(TEXT.text)),
    ],
)
def test_out_of_bounds(place: Place, offset: int) -> None:
    assert offset_of(TEXT, place) == offset


@given(some.text(alphabet="aé𝄞\n\u2028\x0c", max_size=30), some.sampled_from([UTF_8, UTF_16, UTF_32]))
def test_there_and_back(text: str, encoding: str) -> None:
    source = Source("a.rig", text)
    for offset in range(len(text) + 1):
        assert offset_of(source, place_of(source, offset, encoding), encoding) == offset


def test_units() -> None:
    assert [units("a𝄞é", each) for each in (UTF_8, UTF_16, UTF_32)] == [1 + 4 + 2, 1 + 2 + 1, 3]
