"""What answers say to people, by language: one Fluent file each, ``en.ftl`` and those beside it.

The syntax is that of Project Fluent 1.0 (projectfluent.org), so that a client in any language of programming reads the
same files with a library of its own.
"""

from .english import as_told, english
from .fluent_library import said, said_code
from .leanness import INSTEAD, spared, spared_text
from .parsing import ENGLISH, LANGUAGES, LanguageFile, MessageReader, is_of_attention, parameters
from .preference import preferred

__all__ = [
    "ENGLISH",
    "INSTEAD",
    "LANGUAGES",
    "LanguageFile",
    "MessageReader",
    "as_told",
    "english",
    "is_of_attention",
    "parameters",
    "preferred",
    "said",
    "said_code",
    "spared",
    "spared_text",
]
