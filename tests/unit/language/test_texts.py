"""Catalogues are current, keep their figures, and what has no translation stays English."""

from __future__ import annotations

import re
from gettext import GNUTranslations
from io import BytesIO
from pathlib import Path

import pytest
from babel.messages.catalog import Catalog

from diagnose.language import LanguageError, Texts, languages, load_texts, mark
from diagnose.language.texts import CATALOGUE, KNOWLEDGE
from diagnose.model import load_book
from diagnose.model.lint.aloud import spoken
from tests.golden.catalogue import LANGUAGES, TEMPLATE, as_mo, as_po, merge, read, template, updated

FIELD = re.compile(r"\{(\w*)\}")


@pytest.fixture(scope="module")
def texts() -> Catalog:
    return template(load_book())


@pytest.fixture(scope="module", params=LANGUAGES)
def catalogue(request: pytest.FixtureRequest) -> Catalog:
    return read(CATALOGUE / f"{request.param}.po", request.param)


def test_the_files_are_current(texts: Catalog) -> None:
    told = "bring them up to date: python -m tests.golden.catalogue"
    assert TEMPLATE.read_text("utf-8") == as_po(texts), told
    for language in LANGUAGES:
        made = updated(language, texts)
        assert (CATALOGUE / f"{language}.po").read_text("utf-8") == as_po(made), told
        kept = load_texts(language)._translations._catalog  # type: ignore[attr-defined]
        assert kept == GNUTranslations(BytesIO(as_mo(made)))._catalog, told  # type: ignore[attr-defined]


def test_texts_of_documents_and_of_the_knowledge_are_there(texts: Catalog) -> None:
    ids = {(m.id if isinstance(m.id, str) else m.id[0], m.context) for m in texts if m.id}
    assert ("Service report", None) in ids
    assert ("{number} minute", None) in ids
    assert ("Final rinse too cold", KNOWLEDGE) in ids
    book = load_book()
    for caution in book.cautions.values():
        assert {(text, KNOWLEDGE) for text in (caution.title, caution.hazard, *caution.text)} <= ids
    aloud = [c for c in book.checks.values() if c.aloud]
    assert {(c.aloud, KNOWLEDGE) for c in aloud} <= ids
    silent = next(c for c in book.checks.values() if not c.aloud and "while rinsing" in c.title)
    assert (silent.ask, KNOWLEDGE) not in ids


def test_everything_that_is_said_on_the_telephone_is_there_and_translated(texts: Catalog, catalogue: Catalog) -> None:
    ids = {m.id for m in texts if m.context == KNOWLEDGE}
    for key, said in spoken(load_book()):
        for text in said:
            assert text in ids, key
            assert catalogue.get(text, KNOWLEDGE).string, f"{key}: {text}"


def test_translations_name_the_same_figures(catalogue: Catalog) -> None:
    for message in catalogue:
        if not message.id:
            continue
        asked = [message.id] if isinstance(message.id, str) else [*message.id]
        said = [message.string] if isinstance(message.string, str) else [*message.string]
        fields = {field for text in asked for field in FIELD.findall(text)}
        for text in filter(None, said):
            assert set(FIELD.findall(text)) == fields, message.id
            assert text.strip() == text


def test_every_text_of_documents_is_translated_whole(catalogue: Catalog) -> None:
    for message in catalogue:
        if message.id and message.context is None:
            said = [message.string] if isinstance(message.string, str) else [*message.string]
            assert all(said), message.id
            assert len(said) == (1 if isinstance(message.id, str) else catalogue.num_plurals)


def test_every_catalogue_says_that_it_needs_a_check() -> None:
    for language in LANGUAGES:
        assert "needs a check by a native speaker of the trade" in (CATALOGUE / f"{language}.po").read_text("utf-8")
        note = "This translation still needs a check by a native speaker of the trade."
        assert load_texts(language).say(note) != note


def test_what_has_no_translation_stays_english() -> None:
    spanish = load_texts("es")
    assert spanish.say("Service report") == "Informe de servicio"
    assert spanish.say("no such text, {figure}", figure="{x}") == "no such text, {x}"
    assert spanish.known("no such text") == "no such text"
    assert spanish.known("") == ""
    assert [spanish.count("{number} minute", "{number} minutes", n) for n in (1, 2)] == ["1 minuto", "2 minutos"]
    english = load_texts("en")
    assert [english.count("{number} minute", "{number} minutes", n) for n in (0, 1)] == ["0 minutes", "1 minute"]
    assert mark("x") == "x"


def test_a_language_there_is_not_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert languages()[:2] == ("en", "es")
    for name in ("xx", "../es", ""):
        with pytest.raises(LanguageError, match="there are some in en, es"):
            load_texts(name)
    (tmp_path / "de.mo").write_bytes(b"no catalogue")
    monkeypatch.setattr("diagnose.language.texts.CATALOGUE", tmp_path)
    with pytest.raises(LanguageError, match="install the program again"):
        load_texts("de")


def test_a_fragment_is_merged_and_strangers_are_given_back(texts: Catalog, tmp_path: Path) -> None:
    fragment = tmp_path / "fragment.po"
    fragment.write_text(
        'msgctxt "knowledge"\nmsgid "SCALD"\nmsgstr "QUEMADURA"\n\n'
        'msgid "WET FLOOR"\nmsgstr "PISO MOJADO"\n\n'  # without its context
        'msgid "Nobody says this"\nmsgstr "Nadie"\n',
        "utf-8",
    )
    made = updated("es", texts)
    assert [m.id for m in merge(made, read(fragment, "es"))] == ["Nobody says this"]
    spanish = Texts("es", GNUTranslations(BytesIO(as_mo(made))))
    assert (spanish.known("SCALD"), spanish.known("WET FLOOR")) == ("QUEMADURA", "PISO MOJADO")
    assert spanish.say("Service report") == "Informe de servicio"
