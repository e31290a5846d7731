"""Makes `rigc/syntax/states.txt` when rigc is built or installed: what reading goes by, without which the first run takes a second more."""

from __future__ import annotations

import sys
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface


class States(BuildHookInterface[Any]):
    """Asks the package that is being built for it, before its files are gathered."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:  # noqa: ARG002
        """Writes the file into the source tree; a checkout does not keep it."""
        sys.path.insert(0, self.root)
        from rigc.files.reader import STATES, shipped_states

        STATES.write_text(shipped_states(), "ascii")
