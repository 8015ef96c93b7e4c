"""`diagnose instrument`: the technician's own instruments, with accuracy and calibration."""

from __future__ import annotations

import click

from diagnose.cli.kit import AS_JSON, Group, Setup, show, width

__all__ = ["instrument"]


@click.group(cls=Group)
def instrument() -> None:
    """Keep the accuracy and calibration of instruments of your own."""


@instrument.command("list")
@AS_JSON
@click.pass_obj
def instrument_list(setup: Setup, as_json: bool) -> None:
    """List your instruments, and how their readings are taken today."""
    from diagnose.batch.instruments import list_own

    show(list_own(setup.book(), setup.places.instruments, as_json, width()))


@instrument.command("add")
@click.argument("name")
@click.option("--kind", required=True, help="What it is: `diagnose knowledge list instruments` lists the kinds.")
@click.option("--accuracy", required=True, help="As its data sheet says: '1 F', '2 %', '1 % + 0.5 C'.")
@click.option("--calibrated", default="", metavar="DATE", help="Last calibration: 2026-03-14 or 2026-03.")
@click.option("--interval", default=12, show_default=True, metavar="MONTHS", help="Months between calibrations.")
@click.pass_obj
def instrument_add(setup: Setup, name: str, kind: str, accuracy: str, calibrated: str, interval: int) -> None:
    """Keep an instrument under NAME, or change the one kept under it."""
    from diagnose.batch.instruments import add_own

    show(add_own(setup.book(), setup.places.instruments, name, kind, accuracy, calibrated, interval, width()))


@instrument.command("remove")
@click.argument("name")
@click.pass_obj
def instrument_remove(setup: Setup, name: str) -> None:
    """Forget the instrument NAME; readings taken with it keep its accuracy."""
    from diagnose.batch.instruments import remove_own

    show(remove_own(setup.places.instruments, name, width()))
