"""Values and entries as TOML text, which the standard library only reads."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

__all__ = ["toml_entry", "toml_value"]

_BARE = re.compile(r"[A-Za-z0-9_-]+")
_ROOM = 100  # a list longer than this stands one item a line
_ESCAPES = {'"': '\\"', "\\": "\\\\", "\b": "\\b", "\t": "\\t", "\n": "\\n", "\f": "\\f", "\r": "\\r"}


def toml_value(value: Any) -> str:
    """A value on one line.

    >>> toml_value({"kind": "judgement", "a b": [1, 2.5, True]})
    '{ kind = "judgement", "a b" = [1, 2.5, true] }'
    """
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return _string(value)
    if isinstance(value, int):
        return str(value)
    if isinstance(value, float):
        return repr(value)
    if isinstance(value, Mapping):
        inside = ", ".join(f"{_key(name)} = {toml_value(each)}" for name, each in value.items())
        return f"{{ {inside} }}" if inside else "{}"
    if isinstance(value, Sequence):
        return f"[{', '.join(toml_value(each) for each in value)}]"
    raise TypeError(f"{type(value).__name__} has no place in TOML")


def toml_entry(kind: str, entry: Mapping[str, Any]) -> str:
    """An entry `[[kind]]`; tables of tables stand after all else, each line one of theirs."""
    lines = [f"[[{_key(kind)}]]"]
    tables = {name: value for name, value in entry.items() if _is_table_of_tables(value)}
    lines += [f"{_key(name)} = {_spread(value)}" for name, value in entry.items() if name not in tables]
    for name, table in tables.items():
        lines.append(f"[{_key(kind)}.{_key(name)}]")
        lines += [f"{_key(inner)} = {toml_value(each)}" for inner, each in table.items()]
    return "\n".join(lines) + "\n"


def _is_table_of_tables(value: Any) -> bool:
    return isinstance(value, Mapping) and bool(value) and all(isinstance(each, Mapping) for each in value.values())


def _spread(value: Any) -> str:
    text = toml_value(value)
    if len(text) <= _ROOM or isinstance(value, str) or not isinstance(value, Sequence):
        return text
    return "[\n" + "".join(f"  {toml_value(each)},\n" for each in value) + "]"


def _key(name: str) -> str:
    return name if _BARE.fullmatch(name) else _string(name)


def _string(text: str) -> str:
    return '"' + "".join(_ESCAPES.get(sign) or _sign(sign) for sign in text) + '"'


def _sign(sign: str) -> str:
    control = ord(sign) < 0x20 or ord(sign) == 0x7F
    return f"\\u{ord(sign):04x}" if control else sign
