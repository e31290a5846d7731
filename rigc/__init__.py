"""A rig as text -> the documents for its build.

    source (files) -> statements (syntax) -> the rig (model) -> what follows from it (analysis)
    -> sheets (reports) -> text (output) -> files

`rigc.compile` runs these phases in order; `rigc.cli` and `rigc.files` are the only ones that touch terminal and disk.
"""

__version__ = "0.1.0"
