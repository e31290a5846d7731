"""The design as data: its shape is what the schema says, and its figures are those that `why` tells."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from rigc.analysis.reasoning import Reasoning
from rigc.compile import Compiled, compile_rig
from rigc.files.disk import Disk
from rigc.files.reader import CachedReader
from rigc.output.design import model_schema
from rigc.output.design.model import render

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*/board.rig"))


def compiled(path: Path) -> Compiled:
    disk = Disk(path)
    return compile_rig(disk, disk.name, CachedReader())


def model(result: Compiled) -> dict[str, Any]:
    assert result.results is not None
    told: dict[str, Any] = json.loads(render(result.results, result.findings, result.hash))
    return told


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.parent.name)
def test_every_example_has_the_shape_of_the_schema(path: Path) -> None:
    result = compiled(path)
    told = model(result)
    schema = json.loads(model_schema.render())
    Draft202012Validator.check_schema(schema)
    faults = [f"{list(each.absolute_path)}: {each.message}" for each in Draft202012Validator(schema).iter_errors(told)]
    assert not faults
    assert result.results is not None
    reasons = Reasoning(result.results).by_name
    assert [each["name"] for each in told["figures"]] == list(reasons)
    for each in told["figures"]:
        reason = reasons[each["name"]]
        assert each["text"] == f"{reason.value} {reason.unit}".rstrip()
        assert (each["value"] is None) == (reason.value == "not known")
    assert len(told["findings"]) == len(result.findings)


def test_a_figure_is_a_number_in_its_unit() -> None:
    figures = {each["name"]: each for each in model(compiled(EXAMPLES[0]))["figures"]}
    numbers = [each for each in figures.values() if isinstance(each["value"], int | float)]
    assert len(numbers) > len(figures) / 2
    for each in numbers:
        said = each["text"].replace("−", "-").split(" ")[0]
        if said.replace("-", "").replace(".", "").isdigit():  # rounded once, to the last place that is told
            places = len(said.partition(".")[2])
            third = 0.005 * abs(each["value"])  # of three significant figures
            assert abs(each["value"] - float(said)) <= max(0.5000001 * 10**-places, third), each


def test_the_schema_takes_nothing_that_it_does_not_name() -> None:
    told = model(compiled(EXAMPLES[0]))
    check = Draft202012Validator(model_schema.SCHEMA)
    for spoiled in (
        {**told, "more": 1},
        {**told, "version": 99},
        {**told, "figures": [{**told["figures"][0], "value": []}]},
        {**told, "figures": [{key: value for key, value in told["figures"][0].items() if key != "unit"}]},
    ):
        assert not check.is_valid(spoiled)


def test_the_same_sources_give_the_same_bytes() -> None:
    texts = []
    for _ in range(2):
        result = compiled(EXAMPLES[0])
        assert result.results is not None
        texts.append(render(result.results, result.findings, result.hash))
    assert texts[0] == texts[1]
