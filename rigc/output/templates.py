"""Documents -> text, by the templates of a format; ours, or the user's where his folder has a file of the same name.

A sheet's template is one file for all formats. It places the sheet's blocks through `put`, the macros of the format:
ours first, and over them each macro that the user's own macro file defines. `put.document` is the document at hand.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache
from pathlib import Path
from traceback import walk_tb
from types import SimpleNamespace

from jinja2 import (
    BaseLoader,
    ChoiceLoader,
    Environment,
    FileSystemBytecodeCache,
    FileSystemLoader,
    PrefixLoader,
    StrictUndefined,
)
from jinja2.exceptions import TemplateError, TemplateNotFound, TemplateSyntaxError

from rigc.output import svg
from rigc.output.escapes import cell, css_string, held, line, pieces
from rigc.output.layout import Layout
from rigc.output.sandbox import Sandbox
from rigc.output.template_mistake import TemplateMistake
from rigc.output.typeface import page_faces
from rigc.reports.content import Document, Table
from rigc.resources import folder

PAGE = "{{ put.page(documents, bodies, layout) }}"
TABLES = "{% for table in tables %}{{ put.table(table) }}{% endfor %}"
GENERIC = "sheet.j2"

# What a template can raise when it is filled in, besides the engine's own errors: `{{ 1 / 0 }}`, a macro called wrongly.
SLIPS = (ArithmeticError, LookupError, RecursionError, TypeError, ValueError)


def render(macros: str, documents: tuple[Document, ...], layout: Layout) -> str:
    """All documents as one text. `macros` is the name of the format's macro file without its ending.

    Raises `TemplateMistake` for what is wrong in a template. A slip in our own templates is a bug, and raised as it is.
    """
    with _blamed():
        environment = _environment(layout.templates, layout.cache, escaped=macros == "html")
        put = _macros(environment, macros, layout.templates)
        bodies = [_body(environment, document, put, macros) for document in documents]
        return environment.from_string(PAGE).render(put=put, documents=documents, bodies=bodies, layout=layout)


def render_tables(macros: str, tables: tuple[Table, ...], layout: Layout) -> str:
    """Tables alone, by the same macros; raises as `render` does."""
    with _blamed():
        environment = _environment(layout.templates, layout.cache, escaped=macros == "html")
        return environment.from_string(TABLES).render(put=_macros(environment, macros, layout.templates), tables=tables)


@contextmanager
def _blamed() -> Iterator[None]:
    try:
        yield
    except (TemplateError, *SLIPS) as error:
        mistake = _mistake(error)
        if mistake is None:
            raise
        raise mistake from error


@lru_cache(maxsize=4)
def _environment(own: Path | None, cache: Path | None, escaped: bool) -> Environment:
    ours = FileSystemLoader(folder("templates"))
    loaders: list[BaseLoader] = [ours, PrefixLoader({"builtin": ours})]
    if own is not None:
        loaders.insert(0, FileSystemLoader(own))
    environment = Sandbox(
        loader=ChoiceLoader(loaders),
        undefined=StrictUndefined,
        autoescape=escaped,
        trim_blocks=True,
        lstrip_blocks=True,
        # a template that prints by itself is compiled to other code where its text is escaped
        bytecode_cache=cache and FileSystemBytecodeCache(str(cache), "escaped-%s" if escaped else "plain-%s"),
    )
    environment.filters.update(cell=cell, line=line, css_string=css_string, pieces=pieces, held=held, inline=svg.inline)
    environment.globals.update(file_name=svg.file_name, page_faces=page_faces)
    return environment


def _macros(environment: Environment, name: str, own: Path | None) -> SimpleNamespace:
    put = SimpleNamespace()
    for file in (f"builtin/{name}.j2", *([f"{name}.j2"] if own is not None else [])):
        module = environment.get_template(file).make_module({"put": put})
        vars(put).update({key: value for key, value in vars(module).items() if not key.startswith("_")})
    return put


def _body(environment: Environment, document: Document, put: SimpleNamespace, macros: str) -> str:
    put.document = document
    template = environment.select_template([f"{document.sheet.name}.j2", GENERIC])
    return template.render(document=document, sheet=document.sheet, title=document.title, put=put, format=macros)


def _mistake(error: Exception) -> TemplateMistake | None:
    """The mistake that an error stands for, at the innermost line of the user's own templates; None if none has a part in it."""
    places = list(_places(error))
    own = [place for place in places if not place[0].startswith("builtin/")]
    if not own and not isinstance(error, (TemplateError, UnicodeDecodeError)):
        return None
    file, number = (own or places or [("templates", 0)])[-1]
    return TemplateMistake(file, number, _message(error))


def _places(error: Exception) -> Iterator[tuple[str, int]]:
    """File and line of each template that the error came through, from the outside in."""
    for frame, number in walk_tb(error.__traceback__):
        if frame.f_code.co_filename.endswith((".j2", ".css")):
            yield _shown(frame.f_code.co_filename), number
    if isinstance(error, TemplateSyntaxError):
        yield _shown(error.filename or error.name or "templates"), error.lineno


def _shown(file: str) -> str:
    path, ours = Path(file), folder("templates")
    return f"builtin/{path.relative_to(ours).as_posix()}" if path.is_relative_to(ours) else path.as_posix()


def _message(error: Exception) -> str:
    if isinstance(error, TemplateNotFound):
        return f"no template '{error.name}'"
    if isinstance(error, UnicodeDecodeError):
        return "the file is not UTF-8 text"
    if isinstance(error, RecursionError):
        return "the template calls itself without end"
    text = " ".join(str(error).split())
    return text.replace("'types.SimpleNamespace object' has no attribute", "'put' has no macro")
