"""`diagnose machine`: the machines saved under a name."""

from __future__ import annotations

import click

from diagnose.cli.kit import AS_JSON, Group, Setup, show, width

__all__ = ["machine"]


@click.group(cls=Group)
def machine() -> None:
    """See the machines of your own that are saved."""


@machine.command("list")
@AS_JSON
@click.pass_obj
def machine_list(setup: Setup, as_json: bool) -> None:
    """List saved machines."""
    from diagnose.batch.machines import list_saved

    show(list_saved(setup.places.machines, as_json, width()))


@machine.command("show")
@click.argument("name")
@AS_JSON
@click.pass_obj
def machine_show(setup: Setup, name: str, as_json: bool) -> None:
    """Show the plate of machine NAME and its history: jobs, readings over time, what came back."""
    from diagnose.batch.machines import show_saved

    show(show_saved(setup.book(), setup.places.machines, setup.journal(), name, as_json, width()))
