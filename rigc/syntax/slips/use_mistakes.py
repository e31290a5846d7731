"""What can be wrong with the files that a file uses, and with the language it says it is written in."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Kind, Level

_WRITTEN = "the language reference, grammar/README.md"

UNUSABLE = Kind(
    "unusable-file",
    Level.ERROR,
    """A file that `use` names can't be read, or lies outside the project.

    Why it matters: all that it declares is missing.
    What to do: correct the path, which counts from the file that says `use`; `--root DIR` allows files of a wider folder.
    Source: the language reference, grammar/README.md.
    """,
    "a used file can be read and lies in the project",
    _WRITTEN,
)
CIRCLE = Kind(
    "circle-of-files",
    Level.ERROR,
    """Files use each other in a circle.

    Why it matters: no order of reading them is right.
    What to do: move what both need into a third file.
    Source: the language reference, grammar/README.md.
    """,
    "files do not use each other in a circle",
    _WRITTEN,
)
UNSTATED_LANGUAGE = Kind(
    "unstated-language",
    Level.REMARK,
    """A file does not say in which version of the language it is written.

    Why it matters: it is read as language 1; a later rigc, in whose language a word means something else, could not know that.
    What to do: write `language 1` as its first line.
    Source: the language reference, grammar/README.md.
    """,
    "each file begins with the version of its language",
    _WRITTEN,
)
OTHER_LANGUAGE = Kind(
    "other-language",
    Level.ERROR,
    """The file is written in a version of the language that this rigc does not know, or says twice in which it is written.

    Why it matters: a word may mean something else there.
    What to do: use a newer rigc, or write `language 1`.
    Source: the language reference, grammar/README.md.
    """,
    "the language's version is 1, and is said once",
    _WRITTEN,
)
