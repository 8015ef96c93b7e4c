"""What a job wants next, for one who looks on: the question, the care before it, and why it is asked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from diagnose.desk.now_asked import asked_now, next_of
from diagnose.dialogue import requests as rq
from diagnose.dialogue.care import work_named
from diagnose.dialogue.scene import Scene
from diagnose.report.document import Block, Items, Paragraph
from diagnose.view import board_words as words
from diagnose.view import together_words
from diagnose.view import words as all_words
from diagnose.view.together import hint_text

__all__ = ["next_blocks"]


def next_blocks(scene: Scene) -> Iterator[Block]:
    """Cautions come before what they belong to, as on every screen."""
    request = next_of(scene)
    match request:
        case rq.Ended():
            assert scene.state.closed is not None
            yield Paragraph(words.CLOSED.format(how=all_words.CLOSED[scene.state.closed.how]), "lead")
        case rq.Waiting():
            assert scene.state.waits is not None
            whom, text = together_words.WAITS_FOR[scene.state.waits.to], scene.state.waits.text
            told = f"{whom}: {text}" if text else whom
            yield Paragraph(together_words.WAITS.format(job=scene.session.job, whom=told), "lead")
        case rq.Stopped():
            yield Paragraph(words.CLOSES, "lead")  # the danger itself stands above, in how the job stands
        case rq.AskCaution():
            yield from _care(request, scene)
        case rq.AskCheck():
            yield from _check(request, scene)
        case rq.AskHint(number, hint):
            yield Paragraph(words.QUESTION.format(number=number, asked=hint_text(hint.given, scene.book)), "lead")
        case _:
            yield Paragraph(words.QUESTION.format(number=request.number, asked=asked_now(request, scene)), "lead")
            if isinstance(request, rq.Decide):
                yield Items(tuple(_option(option, scene) for option in request.options), ordered=True)


def _care(request: rq.AskCaution, scene: Scene) -> Iterator[Block]:
    """The cautions that are due, then what they are due for."""
    yield from _cautions(request.cautions, scene)
    work = work_named(scene.book, request.before)
    if request.licence:
        yield Paragraph(words.ONLY_BY.format(who=all_words.WHO[request.licence]), "caution")
    yield Paragraph(words.QUESTION.format(number=request.number, asked=work.title), "lead")
    yield Paragraph(words.FIRST_CARE.format(typed=" ".join(request.words)))
    yield from _why(request.options, scene)


def _check(request: rq.AskCheck, scene: Scene) -> Iterator[Block]:
    check = scene.book.checks[request.check]
    yield from _cautions(check.cautions, scene)
    yield Paragraph(words.QUESTION.format(number=request.number, asked=check.ask), "lead")
    figure = scene.expected(check.id)
    if figure is not None:
        yield Paragraph(all_words.EXPECTED + " ".join(figure.lines))
    if check.steps:
        yield Paragraph(words.BY_HAND)
        yield Items(tuple(check.steps), ordered=True)
    yield from _why(request.options, scene)


def _cautions(names: Sequence[str], scene: Scene) -> Iterator[Block]:
    known = [scene.book.cautions[name] for name in names if name in scene.book.cautions]
    for caution in known:
        yield Paragraph(f"{caution.title}. {' '.join(caution.text)}", "caution")
    if known and not any(all_words.DEFER_SAID in text for caution in known for text in caution.text):
        yield Paragraph(all_words.DEFER, "note")


def _why(options: Sequence[rq.Option], scene: Scene) -> Iterator[Block]:
    """Why this one, and what else would be good now."""
    if not options:
        return
    if options[0].why:
        yield Paragraph(f"{all_words.WHY_THIS}{options[0].why}")
    if options[1:]:
        yield Paragraph(f"{words.ALSO}: {'; '.join(option.title(scene.book) for option in options[1:])}")


def _option(option: rq.Option, scene: Scene) -> str:
    title = option.title(scene.book)
    return f"{title}: {option.why}" if option.why else title
