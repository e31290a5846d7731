"""A page with an answer -> JSON: the answer, its words, and its tables as records."""

from __future__ import annotations

import json

from rigc.output.json import render_tables
from rigc.reports.content import Sheet, Table


def render_page(sheet: Sheet, answer: str, verdict: str) -> str:
    """The shape of `rigc show --to json`, with `answer` (yes, with work, no, not known) and `verdict` before the tables."""
    held = json.loads(render_tables(tuple(block for block in sheet.blocks if isinstance(block, Table))))
    told = {"format": held["format"], "answer": answer, "verdict": verdict, "tables": held["tables"]}
    return json.dumps(told, ensure_ascii=False, indent=2) + "\n"
