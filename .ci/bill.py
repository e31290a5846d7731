"""Writes `.ci/rigc.cdx.json`, the bill of what rigc ships and what it builds on, as CycloneDX 1.6 (an open standard, ECMA-424).

    python .ci/bill.py

Components are what an installed rigc needs, with all that this needs in turn, and what its extras need (scope "optional"), in the versions
with which everything last passed (`versions.txt` beside this file) and under the licence that each states; and the typeface that the wheel
ships. It is made in an environment with the extras, asks no network and bears no date, so that it changes only with what it lists.
"""

from __future__ import annotations

import hashlib
import json
import re
import tomllib
from importlib.metadata import PackageNotFoundError, distribution
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parent.parent
BILL = ROOT / ".ci" / "rigc.cdx.json"
EXTRAS = ("pdf", "dxf", "lsp", "solver", "tables")
FONTS = ROOT / "templates" / "fonts"


def plain(name: str) -> str:
    """A package's name as indexes compare it."""
    return re.sub(r"[-_.]+", "-", name).lower()


def named(requirement: str) -> str:
    """The name at the head of a requirement."""
    found = re.match(r"[A-Za-z0-9._-]+", requirement)
    return plain(found[0]) if found else ""


def versions() -> dict[str, str]:
    """The versions with which everything last passed, by name."""
    lines = (ROOT / ".ci" / "versions.txt").read_text("utf-8").split()
    return {plain(name): version for name, _, version in (line.partition("==") for line in lines)}


def wanted() -> tuple[set[str], set[str]]:
    """The names that an installed rigc needs, and those that only its extras need; each with all that it needs in turn."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    extras = [each for extra in EXTRAS for each in project["optional-dependencies"][extra]]
    needed = _closure({named(each) for each in project["dependencies"]})
    return needed, _closure({named(each) for each in extras}) - needed


def _closure(names: set[str]) -> set[str]:
    found: set[str] = set()
    queue = sorted(names)
    while queue:
        name = queue.pop()
        if name in found or name not in versions():
            continue
        found.add(name)
        try:
            needs = distribution(name).requires or []
        except PackageNotFoundError:
            continue
        queue += [named(each) for each in needs if "extra ==" not in each]
    return found


def licence(name: str) -> str:
    """What a package says of its licence, in one line."""
    told = distribution(name).metadata
    stated = told.get("License-Expression") or ""
    classes = [each.split(" :: ")[-1] for each in told.get_all("Classifier") or [] if each.startswith("License ::")]
    text = (told.get("License") or "").strip().split("\n")[0]
    return stated or ", ".join(classes) or text[:80] or "not stated"


def component(name: str, scope: str) -> dict[str, Any]:
    """A package as the standard lists it."""
    version, said = versions()[name], licence(name)
    return {
        "type": "library",
        "bom-ref": f"pkg:pypi/{name}@{version}",
        "name": name,
        "version": version,
        "scope": scope,
        "licenses": [{"license": {"name": said}}],
        "purl": f"pkg:pypi/{name}@{version}",
    }


def typeface() -> dict[str, Any]:
    """The files of the typeface that is shipped, with their digests."""
    files = sorted(FONTS.glob("*.woff2"))
    return {
        "type": "file",
        "bom-ref": "templates/fonts",
        "name": "Lidfolder Sans (a subset of an open typeface)",
        "licenses": [{"license": {"id": "OFL-1.1"}}],
        "components": [
            {
                "type": "file",
                "name": f"templates/fonts/{path.name}",
                "hashes": [{"alg": "SHA-256", "content": hashlib.sha256(path.read_bytes()).hexdigest()}],
            }
            for path in files
        ],
    }


def bill() -> dict[str, Any]:
    """The whole bill."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    needed, optional = wanted()
    packages = [*(component(name, "required") for name in sorted(needed))]
    packages += [component(name, "optional") for name in sorted(optional)]
    return {
        "$schema": "http://cyclonedx.org/schema/bom-1.6.schema.json",
        "bomFormat": "CycloneDX",
        "specVersion": "1.6",
        "version": 1,
        "metadata": {
            "component": {
                "type": "application",
                "bom-ref": f"pkg:pypi/rigc@{project['version']}",
                "name": project["name"],
                "version": project["version"],
                "description": project["description"],
                "purl": f"pkg:pypi/rigc@{project['version']}",
            }
        },
        "components": [*packages, typeface()],
    }


if __name__ == "__main__":
    BILL.write_text(json.dumps(bill(), indent=1) + "\n", "utf-8")
