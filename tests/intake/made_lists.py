"""Lists of gear as clients send them, invented: a workbook with merged heads, inches and formulas, and one of a free office program."""

from __future__ import annotations

import io
import re
import zipfile
from datetime import date
from typing import Any

from odf import dc, office, style, table, text
from odf.namespaces import TABLENS
from odf.opendocument import OpenDocumentSpreadsheet
from openpyxl import Workbook
from openpyxl.comments import Comment
from openpyxl.styles import Font

_RESULTS = {"D6*25.4": "120.65", "SUM(F6:F8)": "5.8"}
"""What the program reckoned last, which openpyxl does not write."""


def fly_rig_xlsx() -> bytes:
    """Two sheets: pedals under heads of two rows with merged cells, and a hidden one."""
    book = Workbook()
    sheet = book.active
    sheet.title = "Pedals"
    rows: list[tuple[Any, ...]] = [
        ("Fly rig, spring (invented)",),
        (),
        ("Pedal", "Type", "Size (in)", None, None, "Weight (lb)", "DC", None, None, "Qty", "Checked", "Owner"),
        (None, None, "Width", "Depth", "Height", None, "Volts", "mA", "Polarity", None, "Date", None),
        ("DRIVES",),
        ("Tern #1", "overdrive", 2.76, 4.75, 2.1, 0.9, "9 V dc", 18, "C-", 1, date(2026, 2, 14), "player B"),
        ("Tern 1", "overdrive", 2.76, 4.75, 2.1, 0.9, "9 V dc", "~ 20", "neg centre", 2, "14.2.2026", None),
        (
            "Signal Box",
            "loop switcher",
            "17-1/4",
            "=D6*25.4",
            '1.9"',
            4,
            "9 V dc",
            "1.2 A",
            "centre positive",
            "two",
            "3/4/2026",
            None,
        ),
        ("Under", "booster", "2,5", "4.7 / 5", "55 mm", "=SUM(F6:F8)", "18", "≥ 80", "-", None, "March 2026", None),
        ("Old fuzz", "fuzz", 2.5, 4.5, 2, 0.8, "9 V dc", 3, "C+", 1, None, None),
        ("Pedal", "Type", "Size (in)", None, None, "Weight (lb)", "DC", None, None, "Qty", "Checked", "Owner"),
        (None, None, "Width", "Depth", "Height", None, "Volts", "mA", "Polarity", None, "Date", None),
        ("Hum", "hum filter", 2.5, 4.5, 2, 400, "9 V dc", 10, "=C6", 1, None, None),
        ("spare", "Grand total", None, None, None, "=SUM(F6:F9)", None, None, None, None, None, None),
    ]
    for row in rows:
        sheet.append(row)
    for head in (3, 11):
        for cells in ("A{0}:A{1}", "B{0}:B{1}", "C{0}:E{0}", "F{0}:F{1}", "G{0}:I{0}", "J{0}:J{1}", "L{0}:L{1}"):
            sheet.merge_cells(cells.format(head, head + 1))
    sheet.merge_cells("A1:L1")
    sheet.merge_cells("A5:L5")
    sheet["L7"] = "player B"
    sheet.merge_cells("L7:L8")
    sheet["A8"].comment = Comment("ask whether the lid closes over it", "client")
    sheet["H13"].number_format = '0" mA"'
    for cell in sheet[10]:
        cell.font = Font(strike=True)
    hidden = book.create_sheet("old list")
    hidden.append(("Pedal", "Weight"))
    hidden.append(("Fen", "400 g"))
    hidden.sheet_state = "hidden"
    book.create_sheet("To do").append(("call the airline",))
    made = io.BytesIO()
    book.save(made)
    return _settled(made.getvalue())


def _settled(data: bytes) -> bytes:
    """The workbook with the results of its formulas, saved on a day of its own."""
    settled = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(settled, "w") as new:
        for name in old.namelist():
            part = old.read(name).decode() if name.endswith(".xml") else old.read(name)
            if isinstance(part, str):
                part = re.sub(r"\d{4}-\d\d-\d\dT[\d:]+Z", "2026-02-20T08:00:00Z", part)
                for formula, result in _RESULTS.items():
                    part = re.sub(
                        rf"<f>{re.escape(formula)}</f><v ?/?>(?:</v>)?", f"<f>{formula}</f><v>{result}</v>", part
                    )
            new.writestr(name, part)
    return settled.getvalue()


def bench_ods() -> bytes:
    """One sheet: measured on the bench, with places of jacks, a hidden row, a row repeated, and a remark pinned to a cell."""
    document = OpenDocumentSpreadsheet()
    document.meta.addElement(dc.Date(text="2026-02-18T10:00:00"))
    sheet = table.Table(name="Bench")
    sheet.addElement(table.TableColumn(numbercolumnsrepeated=20))
    heads = (
        "Name", "What it is", "Size W x H x D", "Mass", "In", "Input side", "Input distance mm", "Input height (mm)", "In Z",
        "Power plug", "Volts", "Current draw in mA", "Inrush", "Polarity", "Without power", "Traits", "Made in", "Lattency", "Source", "On", "By",
    )  # fmt: skip
    bench = ("measured", ("date", "2026-02-14"), "R.K.")
    rows = (
        ("Lant", "delay", "120 x 60 x 95 mm", "0.5 kg ±10 g", "1/4\" mono", "right", "40", "2.5 cm", "1M", "5.5/2.1", "9VDC", ("float", "165"), "0.4A", "−ve centre", "mutes",
         "digital, delay", "PL", "3 ms", *bench),
        ("Marl", "fuzz", "70x50x110", "350", "TS", "top", "40", "25", "10k", "2.1 mm", "9V", "80–100", "", "centre", "passes sound", "fuzzy", "Poland", "", *bench),
        ("Plumb", "tuner", "L 90 x W 60 x H 40 mm", "about 0,3 kg", "stereo", "", "30", "", "1 m", "USB", "5 V dc", "max. 90", "", "", "latch", "Digital / analog", "de", "", "guess", "", ""),
        ("Dibox", "DI", "100 x 45 x 110 mm", "400 kg", "trs", "rear", "30", "20", "1 Mohm", "", "", "", "", "", "passes", "passive", "", "", *bench),
    )  # fmt: skip
    for row in (heads, *rows):
        sheet.addElement(_row(row))
    hidden = _row(("Hedge", "spare"))
    hidden.setAttrNS(TABLENS, "visibility", "collapse")
    sheet.addElement(hidden)
    again = _row(("Fen", "booster", "", "200 g"))
    again.setAttrNS(TABLENS, "number-rows-repeated", "2")
    sheet.addElement(again)
    sheet.addElement(table.TableRow(numberrowsrepeated=1000))
    document.spreadsheet.addElement(sheet)
    away = style.Style(name="away", family="table")
    away.addElement(style.TableProperties(display="false"))
    document.automaticstyles.addElement(away)
    old = table.Table(name="old", stylename=away)
    old.addElement(_row(("Name", "Mass")))
    document.spreadsheet.addElement(old)
    made = io.BytesIO()
    document.write(made)
    return made.getvalue()


def _row(cells: tuple[Any, ...]) -> Any:
    row = table.TableRow()
    for each in cells:
        kind, said = each if isinstance(each, tuple) else ("string", each)
        values = {"float": {"value": said}, "date": {"datevalue": said}}.get(kind, {})
        cell = table.TableCell(valuetype=kind, **values)
        if said == "fuzz":
            pinned = office.Annotation()
            pinned.addElement(text.P(text="germanium, dislikes heat"))
            cell.addElement(pinned)
        cell.addElement(text.P(text="14/02/26" if kind == "date" else said))
        row.addElement(cell)
    return row
