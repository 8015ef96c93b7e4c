"""`diagnose desk`: what a support desk does: follow a job live, take a call, see all open jobs."""

from __future__ import annotations

import click

from diagnose.cli.desk_board import board, serve
from diagnose.cli.desk_call import call, visit
from diagnose.cli.desk_follow import follow
from diagnose.cli.kit import Group

__all__ = ["desk"]


@click.group(cls=Group)
def desk() -> None:
    """The support desk: follow a job live, take a call, see all open jobs."""


desk.add_command(board)
desk.add_command(serve)
desk.add_command(call)
desk.add_command(visit)
desk.add_command(follow)
