"""`diagnose report`: a job as a document, for the customer, the stockroom or the office."""

from __future__ import annotations

from pathlib import Path

import click

from diagnose.cli.kit import Setup, aside, fail, show, width
from diagnose.view.exits import Exit

__all__ = ["report"]

_WHAT = ("service", "handover", "parts", "office")
_FORMATS = ("terminal", "md", "html", "pdf", "json")


@click.command()
@click.argument("job", metavar="JOB", required=False)
@click.option(
    "--what",
    type=click.Choice(_WHAT),
    help="service: the report; handover: the sheet; parts: the parts list; office: one JSON record for other programs. "
    "When nothing is said, the sheet of a handover and the report of any other job.",
)
@click.option("--format", "form", type=click.Choice(_FORMATS), help="terminal when nothing is said; pdf needs --out.")
@click.option("--units", type=click.Choice(["us", "si", "both"]), help="Figures in these units instead of as typed.")
@click.option("--lang", default="en", metavar="LANG", help="Language of the document's own texts: en, es.")
@click.option("--out", metavar="FILE", help="Write to this file.")
@click.option("--force", is_flag=True, help="Write over a file that is there.")
@click.option("--schema", type=click.Choice(["office"]), help="Print the JSON Schema of the office copy.")
@click.pass_obj
def report(
    setup: Setup,
    job: str | None,
    what: str | None,
    form: str | None,
    units: str | None,
    lang: str,
    out: str | None,
    force: bool,
    schema: str | None,
) -> None:
    """Print JOB as a document: service report, handover sheet, parts list, or the office's copy.

    \b
    diagnose report job-4821
    diagnose report job-4821 --format html --out report.html
    diagnose report job-4821 --format pdf --units both --lang es --out report.pdf
    diagnose report job-4821 --what parts
    diagnose report job-4821 --what office --out job.json
    """
    from diagnose.language import LanguageError, load_texts
    from diagnose.report import Dossier, Measures, ReportError, may_write, render, schema_text, write

    if schema:
        show([schema_text()])
        return
    if job is None:
        raise click.UsageError("name a job; `diagnose jobs` lists them")
    form = _format(what or "", form, out)
    journal = setup.journal()
    if not journal.has(job):
        fail(f"no job {job[:40]!r}; `diagnose jobs` lists them", Exit.NO_SUCH_JOB)
    try:
        texts = load_texts(lang)
        if out is not None:
            may_write(Path(out), force)
        book, records = setup.book(), journal.records(job)
        dossier = Dossier(book, job, records, texts, Measures(units or "typed"))  # type: ignore[arg-type]
        what = what or ("handover" if dossier.state.purpose == "handover" else "service")
        made = render(dossier, what, form, width())
        if out is not None:
            aside(write(made, Path(out), force) + "\n")
        elif isinstance(made, str):
            show([made.rstrip("\n")])
    except LanguageError as error:
        raise click.UsageError(str(error)) from None
    except ReportError as error:
        fail(str(error), Exit.BAD_DATA)


def _format(what: str, form: str | None, out: str | None) -> str:
    """The format meant, refused where it can't be."""
    if what == "office":
        if form not in (None, "json"):
            raise click.UsageError("the office copy is JSON; leave out --format")
        return "json"
    if form == "pdf" and out is None:
        raise click.UsageError("a PDF goes to a file; name it with --out")
    return form or "terminal"
