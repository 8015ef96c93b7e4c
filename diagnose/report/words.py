"""Words of documents that are chosen by a key; the sentences stand where they are said."""

from __future__ import annotations

from diagnose.language import Texts, mark

__all__ = ["CLOSED", "FOUND", "LEFT", "SKIPPED", "VERDICTS", "WHO", "duration", "renderer_words", "strength"]

CLOSED = {
    "repaired": mark("repaired and proved"),
    "stopped for safety": mark("stopped for safety"),
    "help called": mark("help called"),
    "no fault": mark("no fault of the machine"),
    "given up": mark("closed without a repair"),
    "handed over": mark("handed over"),
    "solved on the telephone": mark("solved on the telephone"),
}
FOUND = {
    "as expected": mark("found faulty as expected, and repaired"),
    "sound": mark("found sound: nothing was wrong with it"),
    "can't tell": mark("repaired or replaced; it could not be told whether it was faulty"),
}
FOUND_NO_FAULT = {
    "as expected": mark("found so, and set right"),
    "sound": mark("found not to be so"),
    "can't tell": mark("set right; it could not be told whether it was the reason"),
}
SKIPPED = {
    "don't know": mark("not known"),
    "can't reach": mark("could not be reached"),
    "not measured": mark("not measured"),
    "not now": mark("not at this visit"),
}
VERDICTS = {
    "pass": mark("pass"),
    "fail": mark("fail"),
    "cannot tell": mark("can't tell"),
    "again": mark("to be read again"),
    "left": mark("left"),
    "to do": mark("not done yet"),
    "not read": mark("not worked out"),
}
LEFT = {
    "not now": mark("left for a later visit"),
    "waits for another trade": mark("waits for another trade"),
    "no instrument here": mark("no instrument for it here"),
    "not at this site": mark("not at this site"),
    "remark": mark("stays as it is"),
}
WHO = {
    "operator": mark("operator"),
    "technician": mark("technician"),
    "licensed electrician": mark("licensed electrician"),
    "licensed gas fitter": mark("licensed gas fitter"),
    "licensed plumber": mark("licensed plumber"),
}
_FOR = (
    (4.0, mark("speaks decisively for it")),
    (2.0, mark("speaks strongly for it")),
    (1.0, mark("speaks clearly for it")),
    (0.0, mark("speaks slightly for it")),
)
_AGAINST = (
    (4.0, mark("speaks decisively against it")),
    (2.0, mark("speaks strongly against it")),
    (1.0, mark("speaks clearly against it")),
    (0.0, mark("speaks slightly against it")),
)


def strength(bits: float, sole: bool, texts: Texts) -> str:
    """How strongly a piece of evidence speaks, in words."""
    if sole:
        return texts.say("this alone decides it")
    scale = _FOR if bits > 0 else _AGAINST
    return texts.say(next(words for least, words in scale if abs(bits) >= least))


def duration(minutes: float, texts: Texts) -> str:
    """A length of time in hours and minutes."""
    hours, rest = divmod(round(minutes), 60)
    if not hours:
        return texts.count("{number} minute", "{number} minutes", rest)
    return texts.say("{hours} h {minutes} min", hours=hours, minutes=rest)


def renderer_words(texts: Texts) -> tuple[tuple[str, str], ...]:
    """What the formats say of their own."""
    return (
        ("as table", texts.say("The same as a table")),
        ("caution", texts.say("Caution")),
        ("page", texts.say("Page {number} of {count}", number="{number}", count="{count}")),
        ("signs", texts.say("Signs that the letters of this file lack are written out.")),
    )
