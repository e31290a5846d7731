"""Documents -> text, by the templates of a format; ours, or the user's where his folder has a file of the same name.

A sheet's template is one file for all formats. It places the sheet's blocks through `put`, the macros of the format:
ours first, and over them each macro that the user's own macro file defines. `put.document` is the document at hand, `put.documents` are all of the file.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from functools import cache, lru_cache, partial
from traceback import walk_tb
from types import SimpleNamespace
from typing import Any

import jinja2
from jinja2 import BaseLoader, Environment, StrictUndefined, Template
from jinja2.exceptions import SecurityError, TemplateError, TemplateNotFound, TemplateSyntaxError, UndefinedError
from jinja2.nodes import Assign, Const, Name
from markupsafe import Markup

from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.diagnostics.near import nearest
from rigc.output import own_words, ready, svg
from rigc.output.escapes import cell, css_string, held, line, pieces, share, straight
from rigc.output.layout import Layout
from rigc.output.own_templates import AddedSheet, OwnTemplates
from rigc.output.paper.band import FIELD, band, cut
from rigc.output.paper.constant import CAPTION_WORDS, without_constants
from rigc.output.paper.fit import Fit, as_stated, fitted
from rigc.output.sandbox import Sandbox
from rigc.output.template_mistake import TemplateMistake
from rigc.output.typeface import page_faces
from rigc.record import Record
from rigc.reports import content
from rigc.reports.content import Document, Sheet, Table
from rigc.resources import folder

PAGE = "{{ put.page(documents, bodies, layout) }}"
LIVE = "{{ put.sheets(documents, bodies) }}"
TABLES = "{% for table in tables %}{{ put.table(table) }}{% endfor %}"
GENERIC = "sheet.j2"
MOST_TEXT = 32 * 1024 * 1024
"""Characters of one document: some ten times the largest folder in one file."""

# What a template can raise when it is filled in, besides the engine's own errors: `{{ 1 / 0 }}`, a macro called wrongly.
SLIPS = (ArithmeticError, LookupError, RecursionError, TypeError, ValueError)


class LimitPassed(Exception):
    """A template takes or writes too much; raised in its midst, so that its line is known."""


class Whole(Record):
    """What the user's own templates are given beside their document: all sheets of the rig, and its model as data."""

    sheets: tuple[Sheet, ...] = ()
    model: Any = None


NOTHING = Whole()


def render(macros: str, documents: tuple[Document, ...], layout: Layout, whole: Whole = NOTHING) -> str:
    """All documents as one text. `macros` is the name of the format's macro file without its ending.

    Raises `TemplateMistake` for what is wrong in a template. A slip in our own templates is a bug, and raised as it is.
    """
    with _blamed(layout.templates):
        environment = _environment(layout.templates, escaped=macros == "html")
        environment.globals["file_name"] = partial(_file_name, whole)
        put = _macros(environment, macros, layout.templates)
        words = own_words.words(layout.templates)
        documents = own_words.reworded(documents, words)
        if not layout.live:  # there each cell tells where its figure is from
            documents = _printed(documents, words)
        kept = layout.kept if layout.templates is None else NOTHING_KEPT
        names = [kept.name(each.sheet) for each in documents]
        put.fits = _fits(documents, layout, names) if macros == "html" else as_stated(documents)
        put.sharing = {fit.document.number: fit.names for fit in put.fits}
        documents = tuple(fit.document for fit in put.fits)
        put.documents, put.live = documents, layout.live
        there = kept.name((macros, layout.live, [(each.sheet.name, each.number) for each in documents]))
        bodies = [
            _once(fit, name + there, kept, lambda fit: _body(environment, fit, put, macros, whole))
            for fit, name in zip(put.fits, names, strict=True)
        ]
        page = environment.from_string(LIVE if layout.live else PAGE)
        return _filled(page, put=put, documents=documents, bodies=bodies, layout=layout)


def render_tables(macros: str, tables: tuple[Table, ...], layout: Layout) -> str:
    """Tables alone, by the same macros; raises as `render` does."""
    with _blamed(layout.templates):
        environment = _environment(layout.templates, escaped=macros == "html")
        put = _macros(environment, macros, layout.templates)
        put.documents, put.live = (), False
        return environment.from_string(TABLES).render(put=put, tables=tables)


def added_sheets(own: OwnTemplates, ours: tuple[str, ...]) -> tuple[AddedSheet, ...]:
    """The sheets that the user's templates add to `ours`, in the order of their names: each file of the folder itself
    that stands for none of our templates. One whose name begins with `_` is there for others to take in.

    What a sheet is called it says itself: `{% set sheet_title = "..." %}`. Nothing of a template runs. Raises `TemplateMistake`.
    """
    with _blamed(own):
        taken = {*(name.removesuffix(".j2") for name in our_templates()), *ours}
        stems = [name.removesuffix(".j2") for name, _ in own.files if name.endswith(".j2") and "/" not in name]
        return tuple(_added(own, stem, ours) for stem in sorted(set(stems) - taken) if not stem.startswith("_"))


def parsed(own: OwnTemplates) -> None:
    """Read every template of the user's, so that a slip of form is told though no sheet needs the file. Raises `TemplateMistake`."""
    with _blamed(own):
        environment = _environment(own, escaped=False)
        for name, text in own.files:
            environment.parse(text, name, own.path(name))


@cache
def our_templates() -> Mapping[str, str]:
    """Name and text of every template that ships with rigc."""
    return {
        path.name: path.read_text("utf-8")
        for path in sorted(folder("templates").iterdir())
        if path.suffix in (".j2", ".css")
    }


def fixed_words() -> tuple[str, ...]:
    """Every phrase that our templates look up in the user's wording themselves, a text with the filter `word`, and those of captions
    that tell what all rows have in common."""
    found = (found[1] for text in our_templates().values() for found in _FIXED.finditer(text))
    return tuple(dict.fromkeys((*found, *CAPTION_WORDS)))


_FIXED = re.compile(r"""["']([^"'\n]+)["'] \| word""")


def _added(own: OwnTemplates, stem: str, ours: tuple[str, ...]) -> AddedSheet:
    file = own.path(f"{stem}.j2")
    if not re.fullmatch(r"[a-z0-9][a-z0-9-]*", stem):
        name = re.sub(r"[^a-z0-9]+", "-", stem.lower()).strip("-") or "a-sheet"
        what = "the sheet of ours" if name in ours else "letters a to z, digits and '-'"
        raise TemplateMistake(
            file,
            0,
            f"no sheet can be called '{stem}'",
            f"rename the file to {name}.j2 ({what}), or _{stem}.j2 to take it in",
        )
    environment = _environment(own, escaped=False)
    said = {
        node.target.name: node.node.value
        for node in environment.parse(dict(own.files)[f"{stem}.j2"], stem, file).find_all(Assign)
        if isinstance(node.target, Name) and isinstance(node.node, Const)
    }
    title = str(said.get("sheet_title", stem.replace("-", " ").capitalize()))
    first, landscape = said.get("sheet_first") is True, said.get("sheet_landscape") is True
    return AddedSheet(stem, title, str(said.get("sheet_reader", "")), landscape, first)


@contextmanager
def _blamed(own: OwnTemplates | None) -> Iterator[None]:
    try:
        yield
    except (TemplateError, LimitPassed, MemoryError, *SLIPS) as error:
        mistake = _mistake(error, own)
        if mistake is None:
            raise
        raise mistake from error


class _Texts(BaseLoader):
    """The user's templates and ours, from texts at hand: a template can name no other file.

    Every sheet of ours can be extended as `builtin/<sheet>.j2`, also where it is laid out by the generic template.
    """

    def __init__(self, own: OwnTemplates | None) -> None:
        self.own = own
        self.texts = {} if own is None else {name: (text, own.path(name)) for name, text in own.files}

    def get_source(self, environment: Environment, template: str) -> tuple[str, str, Any]:  # noqa: ARG002
        if template in self.texts:
            return (*self.texts[template], lambda: True)
        ours = template.removeprefix("builtin/")
        if ours not in our_templates() and template != ours and re.fullmatch(r"[a-z0-9-]+\.j2", ours):
            ours = GENERIC
        if ours not in our_templates():
            raise TemplateNotFound(template)
        return our_templates()[ours], f"builtin/{ours}", lambda: True

    def load(self, environment: Environment, name: str, globals: Any = None) -> Template:
        """As the base, but for code that was made before; it tells nothing of the user's words, which are looked up when it runs."""
        if self.own is None:
            ours = name.removeprefix("builtin/")
            code = ready.code_of(bool(environment.autoescape), ours, _made_of()) if ours in our_templates() else None
            if code is not None:
                return environment.template_class.from_code(environment, code, globals or {}, lambda: True)
        return super().load(environment, name, globals)


def made_ready() -> dict[str, str]:
    """The files that a built rigc bears, by their names: the code of all our templates, and what it was made of."""
    made = {ready.MADE_OF: _made_of()}
    for escaped in (True, False):
        environment = _environment(None, escaped)
        for name, text in our_templates().items():
            made[ready.file_name(escaped, name)] = environment.compile(text, name, f"builtin/{name}", raw=True)
    return made


@cache
def _made_of() -> str:
    return ready.digest(our_templates(), jinja2.__version__)


@lru_cache(maxsize=4)
def _environment(own: OwnTemplates | None, escaped: bool) -> Environment:
    environment = Sandbox(
        loader=_Texts(own),
        undefined=StrictUndefined,
        finalize=_straight,
        autoescape=escaped,
        trim_blocks=True,
        lstrip_blocks=True,
        optimized=False,
    )
    environment.filters.update(
        cell=cell, line=line, css_string=css_string, breakable=_breakable, held=held, inline=svg.inline, share=share
    )
    environment.filters["cut_field"] = lambda text, room: cut(text, FIELD, room)
    words = own_words.words(own)
    environment.filters["word"] = lambda text: words.get(text, text)
    environment.globals.update(words=words, page_faces=page_faces, band_of=band)
    return environment


@lru_cache(maxsize=1 << 14)
def _breakable(text: str) -> Markup:
    """The text with places where a long word may break."""
    return Markup("<wbr>").join(straight(piece) for piece in pieces(held(text)))


def _straight(value: Any) -> Any:
    return straight(value) if isinstance(value, str) else value


def _macros(environment: Environment, name: str, own: OwnTemplates | None) -> SimpleNamespace:
    put = SimpleNamespace()
    for file in (f"builtin/{name}.j2", *([f"{name}.j2"] if own is not None else [])):
        module = environment.get_template(file).make_module({"put": put})
        vars(put).update({key: value for key, value in vars(module).items() if not key.startswith("_")})
    return put


def _printed(documents: tuple[Document, ...], words: Mapping[str, str]) -> tuple[Document, ...]:
    return tuple(
        each.replace(sheet=without_constants(each.sheet, lambda text: words.get(text, text))) for each in documents
    )


def _fits(documents: tuple[Document, ...], layout: Layout, names: list[str]) -> tuple[Fit, ...]:
    """How our style sets them; where the user has his own, as each sheet says. `names` stand for their sheets."""
    ours = our_templates()
    own = {name for name, text in layout.templates.files if ours.get(name) != text} if layout.templates else set()
    if own & {"sheet.css", "html.j2", GENERIC}:
        return as_stated(documents)
    stay = frozenset(name.removesuffix(".j2") for name in {*own, *ours})
    return fitted(documents, layout.paper, stay, layout.kept, names)


def _once(fit: Fit, name: str, kept: Kept, body: Callable[[Fit], str]) -> str:
    """The body of a sheet, kept by all that it shows but the digest of the sources, which another rig's edit changes too: while it is
    made, a digest of what it shows stands there instead, which no text of the rig can hold."""
    if kept.store is None:
        return body(fit)
    title = fit.document.title
    shown = title.replace(source_hash="")
    mark = kept.name(
        (name, fit.replace(document=None), fit.document.replace(sheet=None, title=shown), fit.document.sheet.landscape)
    )
    blank = fit.replace(document=fit.document.replace(title=title.replace(source_hash=mark)))
    return kept.named("body", mark, lambda: body(blank), str).replace(mark, title.source_hash)


def _body(environment: Environment, fit: Fit, put: SimpleNamespace, macros: str, whole: Whole) -> str:
    document = fit.document
    put.document, put.fit = document, fit
    own = [] if document.sheet.is_lacking else [f"{document.sheet.name}.j2"]
    template = environment.select_template([*own, GENERIC])
    given = {
        "document": document,
        "sheet": document.sheet,
        "title": document.title,
        "put": put,
        "format": macros,
        "sheets": {sheet.name: sheet for sheet in whole.sheets},
        "model": whole.model,
    }
    return _filled(template, **given)


def _file_name(whole: Whole, sheet: Sheet, drawing: content.Drawing) -> str:
    """The file of a drawing: of the sheet that has it, where an added one places it."""
    owner = (
        next((each for each in whole.sheets if drawing in each.blocks), sheet) if drawing not in sheet.blocks else sheet
    )
    return svg.file_name(owner, drawing)


def _filled(template: Template, **given: Any) -> str:
    """The template's text; where it grows past all measure, the template is stopped at the line that it has come to."""
    parts, length = [], 0
    run: Any = template.generate(**given)
    for part in run:
        length += len(part)
        if length > MOST_TEXT:
            run.throw(LimitPassed(f"the template writes more than {MOST_TEXT // 1024**2} MB"))
        parts.append(part)
    return "".join(parts)


def _mistake(error: Exception, own: OwnTemplates | None) -> TemplateMistake | None:
    """The mistake that an error stands for, at the innermost line of the user's own templates; None if none has a part in it."""
    places = list(_places(error))
    mine = [place for place in places if own is not None and own.text(place[0]) is not None]
    if not mine and own is None and not isinstance(error, TemplateError):
        return None
    if not mine and own is not None and not isinstance(error, (TemplateError, LimitPassed, MemoryError)):
        return None
    file, number = (mine or places or [(own.folder if own else "templates", 0)])[-1]
    over = isinstance(error, (LimitPassed, MemoryError, RecursionError))
    text = (own and own.text(file)) or ""
    return TemplateMistake(file, number, _message(error), _help(error, own), over, text)


def _places(error: Exception) -> Iterator[tuple[str, int]]:
    """File and line of each template that the error came through, from the outside in."""
    for frame, number in walk_tb(error.__traceback__):
        if frame.f_code.co_filename.endswith((".j2", ".css")):
            yield frame.f_code.co_filename, number
    if isinstance(error, TemplateSyntaxError):
        yield error.filename or error.name or "templates", error.lineno


_NO_FIELD = re.compile(r"'(?:rigc\.)?[\w.]*?(\w+) object' has no attribute '(\w+)'")


def _message(error: Exception) -> str:
    if isinstance(error, TemplateNotFound):
        return f"no template '{error.name}'"
    if isinstance(error, RecursionError):
        return "the template calls itself without end"
    if isinstance(error, MemoryError):
        return "the template needs more memory than any page does"
    text = " ".join(str(error).split())
    text = text.replace("'types.SimpleNamespace object' has no attribute", "'put' has no macro")
    return _NO_FIELD.sub(lambda found: f"a {found[1].lower()} has no '{found[2]}'", text)


def _help(error: Exception, own: OwnTemplates | None) -> str:
    """One thing to do."""
    if isinstance(error, TemplateNotFound):
        names = [*(dict(own.files) if own else ()), *(f"builtin/{name}" for name in our_templates())]
        near = nearest(str(error.name), names)
        return f"write '{near}'" if near else f"take one of {', '.join(names)}"
    if isinstance(error, (LimitPassed, MemoryError, RecursionError)):
        return "take out the loop that does not end, or the text that is repeated so often"
    if isinstance(error, SecurityError):
        return "take this out: a template places what it is given, and reaches nothing else"
    if isinstance(error, TemplateSyntaxError):
        return "correct the form of this line"
    found = _NO_FIELD.search(str(error)) if isinstance(error, UndefinedError) else None
    kind = getattr(content, found[1], None) if found else None
    near = nearest(found[2], kind.FIELDS) if found and kind is not None else ""
    return (
        f"write '{near}'" if near else "correct this line; `rigc templates README.md` prints what a template is given"
    )
