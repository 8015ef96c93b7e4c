"""JSON: a document as data, and the JSON Schemas of what is printed for machines."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from typing import Any

import msgspec

from diagnose.report.document import Document, Figure

__all__ = ["SCHEMA", "document_json", "pretty"]

SCHEMA = 1  # raised when a key changes its meaning or goes


def pretty(value: object) -> str:
    """Indented JSON, UTF-8, keys in the order of the record."""
    return msgspec.json.format(msgspec.json.encode(value), indent=2).decode()


def document_json(document: Document) -> str:
    """The document block by block, each with its kind; of a chart its figures and the table that says the same."""
    blocks = [{"kind": type(block).__name__.lower(), **_plain(block)} for block in document.blocks]
    head = {"schema": SCHEMA, "title": document.title, "subtitle": document.subtitle, "language": document.language}
    return pretty({**head, "made": document.made, "blocks": blocks})


def _plain(value: Any) -> Any:
    if isinstance(value, tuple):
        return [_plain(each) for each in value]
    if is_dataclass(value) and not isinstance(value, type):
        plain = {f.name: _plain(getattr(value, f.name)) for f in fields(value)}
        if isinstance(value, Figure):
            plain["chart"]["kind"] = type(value.chart).__name__
        return plain
    return value
