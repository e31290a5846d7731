"""A user's own templates as texts, read before any of them runs; and the sheets that they add to ours."""

from __future__ import annotations

from rigc.record import Record

SUFFIXES = (".j2", ".css", ".json")
"""Endings of files that are templates; others in the folder are left alone."""


class OwnTemplates(Record):
    """The folder as it was named, and name and text of each template in it; a name counts from the folder, with `/`."""

    folder: str
    files: tuple[tuple[str, str], ...] = ()

    def path(self, name: str) -> str:
        """The path of a template as a finding prints it."""
        return f"{self.folder}/{name}"

    def text(self, path: str) -> str | None:
        """The text of the template with this path; None where it is none of these."""
        return next((text for name, text in self.files if self.path(name) == path), None)


class AddedSheet(Record):
    """A sheet of the user's own: its name, what its template says of it, and whether it comes before ours."""

    name: str
    title: str
    reader: str = ""
    landscape: bool = False
    first: bool = False
