"""What a sheet holds, in no format: pages of tables, paragraphs, cautions, drawings; every number is already text in its cell."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from rigc.record import Record

if TYPE_CHECKING:  # a check makes no drawing, and need not load what one is made of
    from rigc.reports.drawings.shapes import Shape


class Cell(Record):
    """One cell of a table. `mark` is a word set apart beside the text (`assumed`, `FAIL`); `strong` stresses it; `sheet` is the name
    of the sheet that it points to, if any. `why` names the figure that it shows; cells that print the same are the same without it."""

    text: str
    strong: bool = False
    mark: str = ""
    sheet: str = ""
    why: str = ""

    def _key(self) -> tuple[Any, ...]:
        return self.text, self.strong, self.mark, self.sheet


class Column(Record):
    """A column: its heading, its unit (empty if none), whether its cells are numbers (set to the right).

    `least_mm` is the least width on paper, for what is written in by hand or must not break; 0 where the cells tell.
    `folds` are the words, with `{}` for what a cell says, in which the caption tells once what all rows but few have in common
    (`pieces {}`); the column is not printed then. Empty where it always is. With `blank_fits` an empty cell is one of which there is
    nothing to say, and no exception.
    A column with a `bar` holds shares in %, drawn beside their figures.
    """

    head: str
    unit: str = ""
    number: bool = False
    key: str = ""  # stable name for CSV and JSON; the heading in snake case if empty
    least_mm: float = 0.0
    folds: str = ""
    bar: bool = False
    blank_fits: bool = False


class Row(Record):
    """The cells of one row; `total` rows are set apart. `changed` holds the numbers of the changes of this revision that the row
    shows (`3`, `3, 5`); empty where it is as it was. A `fine` row needs no hand: pages leave it out where the table says how many are so."""

    cells: tuple[Cell, ...]
    total: bool = False
    changed: str = ""
    fine: bool = False


class Table(Record):
    """A table with its caption. `empty` is printed in its place when it has no rows; where
    that says nothing, the folder leaves it out. `tick` adds a box to tick by hand.

    `fine` says of its fine rows how many they are and what they have in common; where it is empty, they are printed.
    """

    name: str
    caption: str
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    empty: str = "nothing to list"
    tick: bool = False
    landscape: bool = False
    fine: str = ""

    @property
    def changed(self) -> bool:
        """Whether a row of it is changed in this revision."""
        return any(row.changed for row in self.rows)

    @property
    def says(self) -> bool:
        """Whether it tells anything about this rig."""
        return bool(self.rows or self.empty)


class Paragraph(Record):
    """Lines of plain text under an optional heading; `kind` is `text`, `caution`, `note` (the source's note to the crew)
    or `statements` (lines of the language, to paste)."""

    name: str
    lines: tuple[str, ...]
    heading: str = ""
    kind: str = "text"

    @property
    def says(self) -> bool:
        """Whether it tells anything about this rig."""
        return bool(self.lines)


class Drawing(Record):
    """Shapes on a ground of this size, in mm on paper, origin at the upper left; `desc` says in words what there is to see.

    `scale` is the n of 1:n of a drawing to scale, whose scale bar is added below it; 0 stands for none. Its facts stand
    in a table of the sheet too: `beside` is the name of the one that stands at its side on paper, if any.
    """

    name: str
    title: str
    desc: str
    width_mm: float
    height_mm: float
    shapes: tuple[Shape, ...]
    scale: float = 0.0
    caption: str = ""
    landscape: bool = False
    beside: str = ""

    @property
    def says(self) -> bool:
        """A drawing is made only where there is something to see."""
        return True


Block = Table | Paragraph | Drawing


class TitleBlock(Record):
    """What every page bears (data fields after ISO 7200, from memory). `faulty`: errors stand that were not accepted."""

    rig: str
    code: str
    client: str
    sheet: str
    revision: str
    date: str
    drawn: str
    checked: str
    source_hash: str
    draft: bool = False
    faulty: bool = False


class Sheet(Record):
    """One document: its file name (without ending), its title, its blocks in order; each block has a name. `silent` are blocks that say
    nothing about this rig: templates that put them somewhere put nothing there."""

    name: str
    title: str
    reader: str
    blocks: tuple[Block, ...]
    landscape: bool = False
    silent: tuple[Block, ...] = ()

    @property
    def is_lacking(self) -> bool:
        """Whether it stands for a sheet that the rig lacks, and says why; nobody takes it. (What an added template makes has no blocks.)"""
        return bool(self.blocks) and not self.reader

    @property
    def beside(self) -> tuple[str, ...]:
        """The names of the tables that stand at the side of a drawing."""
        return tuple(block.beside for block in self.blocks if isinstance(block, Drawing) and block.beside)

    def block(self, name: str) -> Block:
        """The block of that name; raises `LookupError`, with the names that there are, if the sheet has none."""
        for block in (*self.blocks, *self.silent):
            if block.name == name:
                return block
        raise LookupError(
            f"the sheet '{self.name}' has no block '{name}'; it has {', '.join(b.name for b in self.blocks)}"
        )


class NoSheet(Record):
    """In place of a sheet that has nothing to say about this rig: `reason` is one sentence that says why."""

    name: str
    title: str
    reason: str


class Document(Record):
    """A sheet ready to be written: with its title block and its place in the folder: `number` of `count`, and its `code` (`P1`)."""

    sheet: Sheet
    title: TitleBlock
    number: int
    count: int
    code: str = ""
