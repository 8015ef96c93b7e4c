"""Machines of one's own, saved by name: a type, and what their plates say."""

from __future__ import annotations

import os
import re
from collections.abc import Iterable
from pathlib import Path

import msgspec

from diagnose.model import PLATE_FIGURES, Book, Machine
from diagnose.units import UnitError, parse_quantity

__all__ = ["MachineError", "SavedMachine", "check_plate", "list_machines", "load_machine", "save_machine"]

_NAME = re.compile(r"[^\W_][\w .-]{0,39}")


class MachineError(ValueError):
    """A machine can't be saved or read; the message gives the remedy."""


class SavedMachine(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """What is kept of a machine: `own` holds only figures read from its plate."""

    name: str
    type: str
    own: dict[str, str] = {}
    serial: str = ""
    site: str = ""

    def machine(self, book: Book) -> Machine:
        """The machine in this knowledge; MachineError when its type or a figure is not known here."""
        if self.type not in book.machines:
            raise MachineError(f"machine {self.name!r} is of type {self.type!r}, which this knowledge lacks")
        for figure, text in self.own.items():
            check_plate(figure, text)
        return Machine(self.name, book.machines[self.type], self.own, self.serial, self.site)


def check_plate(figure: str, text: str) -> str:
    """A plate figure as typed, checked; returns it with its unit. Raises MachineError."""
    if figure not in PLATE_FIGURES:
        raise MachineError(f"{figure!r} is no plate figure; known are {', '.join(PLATE_FIGURES)}")
    kind = PLATE_FIGURES[figure]
    try:
        quantity = parse_quantity(text, kind.quantity, kind.unit)
    except UnitError as error:
        raise MachineError(f"{kind.ask}: {error}") from None
    if quantity.value <= 0:
        raise MachineError(f"{kind.ask}: {quantity} can't stand on a plate; read it again")
    return quantity.exact


def save_machine(folder: Path, machine: SavedMachine) -> Path:
    """Write a machine, replacing one of the same name. Raises MachineError for a name that can't be kept."""
    if not _NAME.fullmatch(machine.name):
        raise MachineError(
            f"{machine.name[:40]!r} won't do as a name; use up to 40 letters, digits, blanks, dots or dashes"
        )
    folder.mkdir(parents=True, exist_ok=True, mode=0o700)
    path = _path(folder, machine.name)
    fresh = path.with_suffix(".new")
    with open(os.open(fresh, os.O_CREAT | os.O_WRONLY | os.O_TRUNC, 0o600), "wb") as file:
        file.write(msgspec.json.format(msgspec.json.encode(machine), indent=2) + b"\n")
        file.flush()
        os.fsync(file.fileno())
    fresh.replace(path)
    return path


def load_machine(folder: Path, name: str) -> SavedMachine:
    """The saved machine of that name, whatever its case. Raises MachineError."""
    path = _path(folder, name)
    if not path.exists():
        names = ", ".join(m.name for m in list_machines(folder)) or "none yet"
        raise MachineError(f"no machine {name[:40]!r} is saved; saved are: {names}")
    return _read(path)


def list_machines(folder: Path) -> tuple[SavedMachine, ...]:
    """All saved machines by name; a file that can't be read is passed over here and named by load_machine."""
    return tuple(_readable(sorted(folder.glob("*.json")))) if folder.is_dir() else ()


def _readable(paths: Iterable[Path]) -> Iterable[SavedMachine]:
    for path in paths:
        try:
            yield _read(path)
        except MachineError:
            continue


def _read(path: Path) -> SavedMachine:
    try:
        return msgspec.json.decode(path.read_bytes(), type=SavedMachine)
    except (OSError, msgspec.MsgspecError) as error:
        raise MachineError(f"{path} can't be read ({error}); mend or delete it") from None


def _path(folder: Path, name: str) -> Path:
    return folder / (re.sub(r"[^\w-]", "_", name.strip().casefold()) + ".json")
