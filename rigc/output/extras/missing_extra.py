"""A format's package, loaded when it is asked for; where it is not installed, a finding that says what to install."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level

MISSING_EXTRA = Kind(
    "missing-extra",
    Level.ERROR,
    """A format was asked for that needs a package which is not installed.

    Why it matters: nothing of that format can be written. All other formats can.
    What to do: install the extra that is named. PDF is made by weasyprint (extra `pdf`), DXF by ezdxf (extra `dxf`); XLSX by
    openpyxl and ODS by odfpy (extra `tables`). Whoever wants none of them need not carry them.
    Source: the packages' own documentation.
    """,
    "a format's package is installed",
    "pyproject.toml of rigc",
)


class MissingExtra(Exception):
    """What a format needs is not there; `help` says what to install."""

    def __init__(self, message: str, help: str) -> None:
        super().__init__(message)
        self.message = message
        self.help = help

    def finding(self) -> Diagnostic:
        """The finding that tells it."""
        return MISSING_EXTRA.at(None, self.message, subject=(self.message,), help=self.help)


@contextmanager
def of_extra(extra: str, form: str, package: str, module: str = "") -> Iterator[None]:
    """Within it the `package` that makes or reads a format is imported, by its `module` where that is called otherwise. Raises
    `MissingExtra` where it is not installed."""
    try:
        yield
    except ModuleNotFoundError as fault:
        if (fault.name or "").partition(".")[0] != (module or package):
            raise
        message = f"{form} needs the package {package}, which is not installed"
        raise MissingExtra(message, f"pip install 'rigc[{extra}]'") from None
