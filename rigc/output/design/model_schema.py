"""The JSON Schema of what `rigc model` prints."""

from __future__ import annotations

import json
from typing import Any

VERSION = 1  # counts up when a reader of the old shape would go wrong; what is only added leaves it

_TEXT = {"type": "string"}
_COUNT = {"type": "integer", "minimum": 1}


def _object(about: str, **fields: Any) -> dict[str, Any]:
    return {
        "description": about,
        "type": "object",
        "properties": fields,
        "required": list(fields),
        "additionalProperties": False,
    }


def _list(of: dict[str, Any]) -> dict[str, Any]:
    return {"type": "array", "items": of}


def _told(about: str) -> dict[str, Any]:
    return {"description": about, "type": "string"}


_PLACE = {
    "anyOf": [
        _object("A place in the sources; lines and columns count from 1.", file=_TEXT, line=_COUNT, column=_COUNT),
        {"type": "null"},
    ]
}
_AT: dict[str, Any] = {
    "file": {"type": ["string", "null"]},
    **{name: {"type": ["integer", "null"]} for name in ("line", "column", "end_line", "end_column")},
}

_RIG = _object(
    "What the title block of each sheet says.",
    name=_told("The rig's name in the source."),
    title=_TEXT,
    client=_TEXT,
    revision=_told("The letter of the revision."),
    date=_told("Of the revision, as 2026-12-31."),
    drawn=_TEXT,
    checked=_TEXT,
    source=_told("A hash of every source read and of rigc's version."),
)

_THING = _object(
    "A unit, lead, supply, place, hole or anything else that has a name.",
    kind=_TEXT,
    name=_TEXT,
    said={
        "description": "What holds for it, by field; the field `is` says that it is there.",
        "type": "object",
        "additionalProperties": _object(
            "One statement or choice.",
            text=_told("As a person reads it, with its unit."),
            origin={"enum": ["design", "facts", "stock", "rules", "computed"]},
            place=_PLACE,
        ),
    },
)

_FIGURE = _object(
    "A value that was reckoned.",
    name=_told("By which `rigc why` tells how it came about."),
    value={
        "description": "As it was reckoned, in `unit`; a text where it is no number; null where it is not known.",
        "type": ["number", "string", "null"],
    },
    unit=_told("Empty where the value has none."),
    text=_told("As a sheet prints it, rounded once."),
    called=_told("What it is called in words."),
    assumed={"description": "It rests on a fact that nobody measured or read anywhere.", "type": "boolean"},
    incomplete={"description": "Something that is not known was left out of a sum in it.", "type": "boolean"},
    rule=_TEXT,
    source=_told("Where the rule comes from."),
)

_FINDING = _object(
    "Something that is wrong, doubtful or not known.",
    rule=_told("The name by which `rigc explain` tells its page."),
    level={"enum": ["error", "warning", "remark", "can't-check"]},
    message=_TEXT,
    **_AT,
    label=_TEXT,
    related=_list(_object("A further place.", message=_TEXT, **_AT)),
    numbers=_list(_object("A number that it compares.", name=_TEXT, value={"type": "number"}, unit=_TEXT)),
    note=_TEXT,
    help=_told("What to do."),
    mends=_list(_TEXT),
    follow=_list(_object("A finding that only follows from this one.", rule=_TEXT, message=_TEXT)),
    condition=_TEXT,
    source=_TEXT,
    fingerprint=_TEXT,
    accepted={"anyOf": [_object("Who signed for it.", reason=_TEXT, by=_TEXT, until=_TEXT), {"type": "null"}]},
)

SCHEMA: dict[str, Any] = {
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": f"urn:rigc:model:{VERSION}",
    "title": "The computed design of a rig",
    **_object(
        "What `rigc model PATH` prints.",
        version={"description": "The version of this shape.", "const": VERSION},
        rigc=_told("The version of rigc."),
        rig=_RIG,
        things=_list(_THING),
        figures=_list(_FIGURE),
        findings=_list(_FINDING),
    ),
}


def render() -> str:
    """The schema as JSON, indented."""
    return json.dumps(SCHEMA, ensure_ascii=False, indent=2) + "\n"
