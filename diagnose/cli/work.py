"""`diagnose work`: the calculator. Every formula is a command with an option for each figure it takes."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING, Any

import click

from diagnose.cli.kit import AS_JSON, Setup, aside, fail, machine_named, show, width
from diagnose.view.exits import Exit

if TYPE_CHECKING:
    from diagnose.formulas import Formula

__all__ = ["work"]


class WorkGroup(click.Group):
    """Formulas as commands, made when asked for; subjects and near words lead to them."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return []  # the list by subject says it better: `diagnose work`

    def get_command(self, ctx: click.Context, name: str) -> click.Command | None:
        from diagnose.calculator import matching
        from diagnose.formulas import SUBJECTS, find_formula

        if name in SUBJECTS:
            return _subject(name)
        found = matching(name, near=False)
        if len(found) > 1:
            return _several(name, found)
        return _command(find_formula(found[0])) if found else None

    def resolve_command(self, ctx: click.Context, args: list[str]) -> Any:
        """Take as many words as make one formula: `work tank losses` as well as `work tank-losses`."""
        from diagnose.calculator import matching

        words = [a for a in args if not a.startswith("-")]
        for count in range(len(words), 1, -1):
            found = matching(" ".join(words[:count]), near=False) if args[:count] == words[:count] else []
            if found:
                named = found[0] if len(found) == 1 else " ".join(words[:count])
                return super().resolve_command(ctx, [named, *args[count:]])
        try:
            return super().resolve_command(ctx, args)
        except click.UsageError:
            near = matching(args[0])
            hint = f"it may mean {', '.join(near[:6])}" if near else "`diagnose work` lists what there is"
            raise click.UsageError(f"no one formula is called {args[0][:40]!r}; {hint}", ctx) from None


@click.command(cls=WorkGroup, invoke_without_command=True, subcommand_metavar="[WHAT] [FIGURES]...")
@click.pass_context
def work(ctx: click.Context) -> None:
    """Work out what a reading should be: WHAT is a subject or a formula.

    \b
    diagnose work                    all there is, by subject
    diagnose work heat               what the formulas of a subject answer
    diagnose work booster-rise --power 30kW --flow 4.2gpm
    diagnose work booster-rise --rise 40F --flow 16L/min    solved for the power
    diagnose work booster-rise --machine east --units si

    Figures come from the plate of a saved machine (or a type), are asked for, or given as options.
    """
    from diagnose.calculator import list_subjects

    if ctx.invoked_subcommand is None:
        show(list_subjects(width()))


def _subject(name: str) -> click.Command:
    def run() -> None:
        from diagnose.calculator import list_formulas

        show(list_formulas(name, width()))

    return click.Command(name, callback=run, help=f"What the formulas of {name} answer.")


def _several(words: str, names: list[str]) -> click.Command:
    """Words that many formulas answer to: those are listed, to choose from."""

    def run() -> None:
        from diagnose.calculator import list_some

        show(list_some(words, names, width()))

    return click.Command(words, callback=run, help=f"What the formulas answer that {words} may mean.")


def _command(formula: Formula) -> click.Command:
    from diagnose.calculator.parse import hint

    params: list[click.Parameter] = [click.Argument(["values"], nargs=-1, metavar="[FIGURES]...")]
    for argument in formula.takes:
        from_plate = "; from the plate" if argument.plate else f"; usual {argument.usual}" if argument.usual else ""
        params.append(_option(argument.name, f"{argument.ask}: {hint(argument, 'us')}{from_plate}."))
    taken = {a.name for a in formula.takes}
    first = formula.gives[0]
    if first.name not in taken and first.quantity != "words":
        params.append(_option(first.name, f"{first.title}, to solve back for what is left open."))
    params += [
        click.Option(["--find"], metavar="NAME", help="Which figure to solve for, when the answer is given."),
        click.Option(["--machine"], metavar="NAME", help="Take plate figures from this saved machine, or type."),
        click.Option(["--units"], type=click.Choice(["us", "si"]), help="Units to ask and answer in."),
    ]
    command = click.Command(
        formula.id,
        params=params,
        callback=_callback(formula),
        help=f"{formula.title}. {formula.asks}\n\n{formula.manual.formula}\n\nSource: {formula.manual.references}",
        no_args_is_help=False,
        context_settings={"ignore_unknown_options": False},
    )
    return AS_JSON(command)


def _option(name: str, text: str) -> click.Option:
    return click.Option([f"--{name.replace('_', '-')}", f"figure_{name}"], metavar="VALUE", help=text)


def _callback(formula: Formula) -> Any:
    @click.pass_obj
    def run(
        setup: Setup,
        /,
        values: tuple[str, ...],
        find: str | None,
        machine: str | None,
        units: str | None,
        as_json: bool,
        **options: str | None,
    ) -> None:
        from diagnose import calculator

        named = {n.removeprefix("figure_"): v for n, v in options.items() if v is not None}
        book = setup.book()
        whose = machine_named(setup, book, machine) if machine else None
        wanted_find = (find or "").replace("-", "_")
        ask = (lambda prompt: None) if as_json else _ask
        try:
            wanted = calculator.gather_figures(formula, named, values, whose, units or "", wanted_find, ask, _tell)
            reckoned = calculator.reckon(wanted, book, whose)
        except calculator.FigureError as error:
            fail(str(error), Exit.USAGE)
        show([calculator.as_json(reckoned)] if as_json else calculator.as_lines(reckoned, width()))

    return run


def _ask(prompt: str) -> str | None:
    """Ask on stderr, so that the answer alone stands on stdout; None at the end of input."""
    aside(prompt)
    line = sys.stdin.readline()
    if not line:
        aside("\n")
        return None
    if not sys.stdin.isatty():
        aside(line.rstrip("\n") + "\n")
    return line


def _tell(sentence: str) -> None:
    aside(sentence + "\n")
