"""Findings as SARIF 2.1.0: by its published schema, as read in a snapshot, and with fixes that do what `rigc mend` does."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from cases import READER, ROOT
from jsonschema import Draft4Validator
from some_findings import BOARD, FINDINGS, TO_MEND, at
from syrupy.assertion import SnapshotAssertion

from rigc.cli import main
from rigc.compile import compile_rig
from rigc.diagnostics.diagnostic import Kind
from rigc.edit.mended import changes, mended
from rigc.files.disk import Disk
from rigc.output.findings.sarif import Found, render
from rigc.proved import Bench
from rigc.source import Source

SCHEMA = json.loads((Path(__file__).parent / "sarif-2.1.0.schema.json").read_text("utf-8"))


def page(kind: Kind) -> str:
    return f"the page of {kind.name}"


def log(*found: Found, unread: tuple[str, ...] = (), code: int = 0) -> Any:
    """The document, which must be by the schema."""
    made = json.loads(render(found, unread, code, page))
    Draft4Validator(SCHEMA).validate(made)
    return made


def found() -> Found:
    def of(mend: Any) -> Any:
        return changes(mend, (mend.edits[0].span.source,), lambda source: READER.parse(source).file)

    return Found(FINDINGS, lambda name: name if name.startswith("stock/") else f"rigs/{name}", of)


def test_the_schema_refuses() -> None:
    """The schema is one that tells right from wrong."""
    made = log(found())
    made["runs"][0]["results"][0]["level"] = "can't-check"
    assert not Draft4Validator(SCHEMA).is_valid(made)


def test_every_sort_of_finding(snapshot: SnapshotAssertion) -> None:
    run = log(found(), code=1)["runs"][0]
    run["tool"]["driver"] |= {"version": "-", "semanticVersion": "-"}
    assert run == snapshot
    assert [each["kind"] for each in run["results"]].count("open") == 1
    assert len(run["results"]) == len(FINDINGS)


def test_a_finding_keeps_its_fingerprint_when_lines_move() -> None:
    lower = Source(BOARD.name, f"\n\n{BOARD.text}")
    moved = TO_MEND.replace(span=at(lower, "ceiling 100 mA"))
    prints = [
        log(Found((each,), str, lambda _: {}))["runs"][0]["results"][0]["partialFingerprints"]
        for each in (TO_MEND, moved)
    ]
    assert prints[0] == prints[1] == {"rigc/v1": TO_MEND.fingerprint}


def test_a_file_that_cannot_be_read_is_told() -> None:
    (invocation,) = log(unread=("cannot read 'a.rig'",), code=2)["runs"][0]["invocations"]
    assert (invocation["executionSuccessful"], invocation["exitCode"]) == (False, 2)
    assert invocation["toolExecutionNotifications"][0]["message"]["text"] == "cannot read 'a.rig'"


def test_places_on_disk() -> None:
    """An absolute path is a file's address, with what an address can't hold escaped."""
    made = log(Found((TO_MEND,), lambda name: f"/shop rigs/{name}", lambda _: {}))
    place = made["runs"][0]["results"][0]["locations"][0]["physicalLocation"]["artifactLocation"]
    assert place == {"uri": "file:///shop%20rigs/board.rig"}


WITH_MENDS = (
    "battery-left-in/by-its-clip",
    "cut-tails/delay-in-a-loop",
    "moved-switch/another-outlet-is-made-so",
    "plugs-collide/bend-of-the-cable-one-tenth-short",
    "unpowered-unit/centre-positive-and-wider-barrel",
    "unsettled-loop/preset-switches-a-loop-nobody-filled",
    "wish-against-place/on-two-decks",
)
"""Cases of rules whose mends, taken together, hold edits of every sort."""


def applied(lines: str, region: dict[str, int], new: str) -> str:
    """As a reader of SARIF would: lines and columns from 1, columns in code points, the end not included."""
    starts = [0]
    for line in lines.splitlines(keepends=True):
        starts.append(starts[-1] + len(line))
    start = starts[region["startLine"] - 1] + region["startColumn"] - 1
    end = starts[region["endLine"] - 1] + region["endColumn"] - 1
    return lines[:start] + new + lines[end:]


@pytest.mark.parametrize("case", WITH_MENDS)
def test_a_fix_does_what_the_mend_does(case: str) -> None:
    disk = Disk(ROOT / f"tests/analysis/checks/cases/{case}.rig", root=ROOT)
    made = compile_rig(disk, disk.name, READER)
    bench = Bench(made, disk, disk.name, READER)
    findings = tuple(bench.proved(each) for each in made.findings)
    sources = [disk(name) for name in disk.names]
    parse: Callable[[Source], Any] = lambda source: READER.parse(source).file  # noqa: E731
    run = log(Found(findings, str, lambda mend: changes(mend, sources, parse)))["runs"][0]
    assert any("fixes" in each for each in run["results"])
    for finding, result in zip(findings, run["results"], strict=True):
        assert [each["description"]["text"] for each in result.get("fixes", [])] == [m.words for m in finding.mends]
        for mend, fix in zip(finding.mends, result.get("fixes", []), strict=True):
            texts = {}
            for change in fix["artifactChanges"]:
                name = change["artifactLocation"]["uri"]
                text = disk(name).text
                for each in sorted(
                    change["replacements"],
                    key=lambda one: (one["deletedRegion"]["startLine"], one["deletedRegion"]["startColumn"]),
                    reverse=True,
                ):
                    text = applied(text, each["deletedRegion"], each.get("insertedContent", {}).get("text", ""))
                texts[name] = text
            assert texts == mended(mend, sources, parse)


def test_a_whole_run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]) -> None:
    """Two rigs of a folder in one document, the second time from what was kept; a file and standard output hold the same."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "units.rig").write_text("language 1\n\nunit tern {\n}\n")
    for name in ("a", "b"):
        (tmp_path / f"{name}.rig").write_text(f'language 1\n\nrig {name} "A" {{\n}}\n\nuse "units.rigg"\n')
    codes = [main(["check", ".", "--findings", "sarif=out.sarif", "--findings", "sarif"]) for _ in range(2)]
    out = capfd.readouterr().out
    file = Path("out.sarif").read_text("utf-8")
    assert codes == [1, 1]
    assert out == file * 2
    made = json.loads(file)
    Draft4Validator(SCHEMA).validate(made)
    (run,) = made["runs"]
    told = {each["locations"][0]["physicalLocation"]["artifactLocation"]["uri"] for each in run["results"]}
    assert told == {"a.rig", "b.rig"}
    assert all(rule["help"]["text"].startswith(f"{rule['id']} (") for rule in run["tool"]["driver"]["rules"])


def test_a_rig_that_is_not_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    code = main(["check", "none.rig", "--findings", "sarif"])
    (invocation,) = json.loads(capfd.readouterr().out)["runs"][0]["invocations"]
    assert (code, invocation["exitCode"], invocation["executionSuccessful"]) == (2, 2, False)
    assert "none.rig" in invocation["toolExecutionNotifications"][0]["message"]["text"]
