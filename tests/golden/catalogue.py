"""The catalogues of other languages: texts are taken from code and knowledge, translations kept, the .mo made anew.

python -m tests.golden.catalogue                 bring template, .po and .mo up to date
python -m tests.golden.catalogue --merge FILE    take translations from a .po fragment first
python -m tests.golden.catalogue --begin fr      a new language, empty
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from datetime import UTC, datetime
from io import BytesIO
from pathlib import Path
from typing import Any

from babel.messages.catalog import Catalog, Message
from babel.messages.extract import extract_from_dir
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po, write_po

from diagnose.language.texts import CATALOGUE, KNOWLEDGE
from diagnose.model import Book, load_book

__all__ = ["LANGUAGES", "TEMPLATE", "as_mo", "as_po", "merge", "read", "template", "updated"]

PACKAGE = Path(__file__).resolve().parents[2] / "diagnose"
TEMPLATE = CATALOGUE / "diagnose.pot"
LANGUAGES = sorted(path.stem for path in CATALOGUE.glob("*.po"))
_KEYWORDS = {"say": None, "mark": None, "count": (1, 2)}
_HEAD = """# Texts of documents, and those of the knowledge that are read to or by the kitchen (context "knowledge").
# Written by `python -m tests.golden.catalogue`; translations stand behind msgstr.
# Words in braces, as {count}, stay as they are, in any place.
# This translation still needs a check by a native speaker of the trade."""


class _Ours(Catalog):
    """Without the time and the tool of its making, so that the same texts give the same file."""

    @property
    def mime_headers(self) -> Any:
        kept = ("Project-Id-Version", "Language", "Plural-Forms", "MIME-Version", "Content-Type")
        return [(n, v) for n, v in super().mime_headers if n in (*kept, "Content-Transfer-Encoding")]

    @mime_headers.setter
    def mime_headers(self, headers: Any) -> None:
        Catalog.mime_headers.fset(self, headers)  # type: ignore[attr-defined]


def _empty(language: str | None) -> Catalog:
    made = _Ours(language, project="diagnose", version="1", header_comment=_HEAD, fuzzy=False)
    made.creation_date = made.revision_date = datetime(2026, 1, 1, tzinfo=UTC)
    return made


def template(book: Book) -> Catalog:
    """Every text there is to translate."""
    made = _empty(None)
    for file, _, text, comments, _ in _in_code():
        made.add(text, locations=[(f"diagnose/{file}", 0)], auto_comments=comments)
    for where, text in _in_knowledge(book):
        made.add(text, locations=[(where, 0)], context=KNOWLEDGE)
    return made


def _in_code() -> Iterator[Any]:
    found = extract_from_dir(
        PACKAGE, [("report/**.py", "python"), ("view/call_words.py", "python")], keywords=_KEYWORDS
    )
    return iter(sorted(found, key=lambda each: (each[0], each[1])))


def _in_knowledge(book: Book) -> Iterator[tuple[str, str]]:
    """What the kitchen hears and reads: (where it stands, the text)."""
    for name, complaint in book.complaints.items():
        until = (text for each in complaint.until for text in each.say)
        yield from ((f"complaint.{name}", text) for text in (complaint.title, *complaint.advice, *until))
    for name, caution in book.cautions.items():
        yield from ((f"caution.{name}", text) for text in (caution.title, caution.hazard, *caution.text))
    for name, stop in book.stops.items():
        aloud = (*filter(None, [stop.aloud]), *stop.aloud_then)
        yield from ((f"stop.{name}", text) for text in (stop.ask, *stop.instruction, *aloud))
    for name, question in book.context.items():
        yield from ((f"question.{name}", text) for text in (question.aloud or question.ask, *question.answers))
    for name, asked in book.tell_apart.items():
        yield from ((f"tell_apart.{name}", text) for text in (asked.aloud, *(each.answer for each in asked.answers)))
    for name, cause in book.causes.items():
        yield from ((f"cause.{name}", text) for text in cause.aloud)
    for name, check in book.checks.items():
        if check.aloud:
            yield f"check.{name}", check.aloud
            yield from ((f"check.{name}.{o}", outcome.title) for o, outcome in check.outcomes.items())


def read(path: Path, language: str) -> Catalog:
    """A .po file; of a fragment the header may be missing."""
    with path.open("rb") as file:
        return read_po(file, language)


def updated(language: str, texts: Catalog) -> Catalog:
    """The language's catalogue with the texts of the template; what is no longer a text is kept, set aside."""
    made = _empty(language)
    path = CATALOGUE / f"{language}.po"
    if path.exists():
        old = read(path, language)
        made._num_plurals, made._plural_expr = old.num_plurals, old.plural_expr  # as the file has them
        for message in (*old, *old.obsolete.values()):
            if message.id and message.string:
                made.add(message.id, message.string, context=message.context)
    made.update(texts, no_fuzzy_matching=True)
    for message in made:
        message.user_comments = []
    return made


def merge(made: Catalog, fragment: Catalog) -> list[Message]:
    """Take the fragment's translations; those of texts that are none of ours are given back."""
    strange = []
    for message in fragment:
        if not message.id or not message.string:
            continue
        ours = made.get(message.id, message.context) or made.get(message.id, KNOWLEDGE)
        if ours is None:
            strange.append(message)
        else:
            ours.string = message.string
            ours.flags.discard("fuzzy")
    return strange


def as_po(made: Catalog) -> str:
    """The file's text, lines wrapped."""
    out = BytesIO()
    write_po(out, made, width=110, include_lineno=False)
    return out.getvalue().decode()


def as_mo(made: Catalog) -> bytes:
    """The compiled file."""
    out = BytesIO()
    write_mo(out, made)
    return out.getvalue()


def main() -> None:
    """Bring all files up to date, and say how much is translated."""
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("--merge", type=Path, metavar="FILE", help="a .po fragment with translations")
    words.add_argument("--lang", default="es", help="the language of the fragment (es)")
    words.add_argument("--begin", metavar="LANG", help="begin a language")
    said = words.parse_args()
    texts = template(load_book())
    TEMPLATE.write_text(as_po(texts), "utf-8")
    for language in sorted({*LANGUAGES, *([said.begin] if said.begin else [])}):
        made = updated(language, texts)
        if said.merge and language == said.lang:
            for strange in merge(made, read(said.merge, language)):
                print(f"{language}: not one of our texts: {strange.id!r}")
        (CATALOGUE / f"{language}.po").write_text(as_po(made), "utf-8")
        (CATALOGUE / f"{language}.mo").write_bytes(as_mo(made))
        for context, what in ((None, "texts of documents"), (KNOWLEDGE, "texts of the knowledge")):
            ours = [m for m in made if m.id and m.context == context]
            print(f"{language}: {sum(_done(m) for m in ours)} of {len(ours)} {what}")


def _done(message: Message) -> bool:
    said = message.string
    return all(said) if isinstance(said, tuple | list) else bool(said)


if __name__ == "__main__":
    main()
