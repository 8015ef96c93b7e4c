"""Find what a person means by a few words, with slips of the finger: complaints, checks, causes."""

from __future__ import annotations

import re
import unicodedata
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher, get_close_matches
from functools import lru_cache
from math import log, sqrt

__all__ = ["Match", "clear_winner", "find"]

_TOKEN = re.compile(r"[^\W_]+")
_IDLE_WORDS = """
    a an and are at be by do does for from has have in is it its my of on or our so some
    that the their them there they this to too up us was we when with you your
"""
_IDLE = frozenset(_IDLE_WORDS.split())
_ALIKE = 0.75  # how alike two words must be to count as one word with a slip in it
_ALIKE_SHORT = 0.85  # the same for words of three letters: "rak" is "rack", but "fan" is not "pan"
_SHORTEST_FUZZY = 3
_SHORT = 4  # letters of a word in which one wrong letter makes another word: "trip" is not "drip"
_WORTH_SHOWING = 0.25
_CLEAR = 0.45
_ABOUT = 0.3  # what counts besides the best text: how much of all texts is about the words
_STRANGE = log(2.0)  # weight of a word nobody has
_WHOLE = 0.98  # all its words, and no others
_CLEAR_LEAD = 1.2  # the first must be so much better than the second to be taken without asking

# Words of the kitchen and of the trade that mean the same. Each row is one meaning.
_SAME = (
    ("hot", "warm", "heat", "heats", "heated", "heating", "temperature", "temp"),
    ("cold", "cool", "lukewarm", "tepid", "unheated"),
    ("not", "no", "never", "without", "none", "nothing", "hardly", "barely", "dont", "doesnt", "wont", "isnt", "cant"),
    ("ware", "dish", "dishes", "plate", "plates", "glass", "glasses", "cups", "silverware", "forks", "cutlery"),
    ("disbelieve", "trust", "believe", "believed", "disbelieved", "wrong", "agree", "disagree", "right"),
    ("soap", "detergent", "soapy"),
    ("chemical", "chemicals", "sanitiser", "sanitizer", "chlorine", "bleach"),
    ("foam", "suds", "bubbles", "lather"),
    ("drip", "drips", "dripping", "dribbles", "leak", "leaks", "leaking", "leaky"),
    ("noise", "loud", "noisy", "sound", "squealing", "grinding", "humming", "rattles", "rattling"),
    ("start", "starts", "starting", "begin"),
    ("fill", "fills", "filling"),
    ("burn", "burnt", "burning", "burned", "scorched"),
    ("smell", "smells", "smelling", "stinks", "odour", "odor"),
    ("breaker", "fuse", "fuses"),
    ("jerk", "jerks", "jerky", "stutters"),
    ("speed", "pace"),
    ("steam", "steams", "steaming", "vapour", "vapor", "fog", "mist", "sauna"),
    (
        "jam",
        "jams",
        "jammed",
        "jamming",
        "stuck",
        "sticks",
        "sticking",
        "hang",
        "hangs",
        "hung",
        "blocked",
        "catch",
        "catches",
        "caught",
    ),
    ("trip", "trips", "tripped", "tripping", "cuts", "kicks"),
    ("rack", "racks", "basket", "baskets", "crate", "crates", "tray", "trays"),
    ("conveyor", "chain", "belt"),
    ("motor", "motors", "engine"),
    ("rinse", "rinsing", "rinses"),
    ("final", "last", "end"),
    ("gauge", "dial", "thermometer", "thermometers", "meter", "needle", "display"),
    ("amps", "amp", "current", "ampere", "amperes"),
    ("volts", "volt", "voltage"),
    ("ohms", "ohm", "resistance"),
    ("curtain", "curtains", "flaps"),
    ("inlet", "supply", "incoming", "entering"),
    ("stop", "stops", "stopped", "halts", "shuts", "shut", "dies"),
)
_OPPOSITE = {"hot": "cold", "cold": "hot", "dry": "wet", "clean": "dirty"}
_MEANING = {word: row[0] for row in _SAME for word in row}


@dataclass(frozen=True)
class Match:
    """A candidate and how well the words fit it, 0 to 1."""

    id: str
    score: float


def find(words: str, candidates: Mapping[str, Sequence[str]], most: int = 6) -> list[Match]:
    """The candidates whose texts fit the words, the best first; nothing that hardly fits.

    Every candidate has several texts (a title, phrases); the best fitting one counts most, then how many of them
    have the words. Words that many candidates share weigh little.
    """
    wanted = _tokens(words)
    if not wanted:
        return []
    texts = {name: [_tokens(t) for t in each] for name, each in candidates.items()}
    weight = _weights(texts)
    matches = [Match(name, _score(wanted, each, weight)) for name, each in texts.items()]
    good = [m for m in matches if m.score >= _WORTH_SHOWING]
    return sorted(good, key=lambda m: -m.score)[:most]


def clear_winner(matches: Sequence[Match]) -> str | None:
    """The id of a match that needs no asking back; None when there is a choice to make."""
    if not matches or matches[0].score < _CLEAR:
        return None
    if len(matches) == 1 or matches[0].score >= _CLEAR_LEAD * matches[1].score:
        return matches[0].id
    return matches[0].id if matches[0].score >= _WHOLE > matches[1].score else None


@lru_cache(maxsize=4096)
def _tokens(text: str) -> tuple[str, ...]:
    plain = "".join(c for c in unicodedata.normalize("NFKD", text.casefold()) if not unicodedata.combining(c))
    words = [w for w in _TOKEN.findall(plain.replace("'", "")) if w not in _IDLE]
    return _turned([_meaning(w) for w in words])


def _turned(words: Sequence[str]) -> tuple[str, ...]:
    """What is said not to be so becomes its opposite: "not getting hot" is about cold."""
    turned: list[str] = []
    for word in words:
        back = next((n for n in (1, 2) if len(turned) >= n and turned[-n] == "not"), 0)
        if word in _OPPOSITE and back:
            del turned[-back]
            word = _OPPOSITE[word]
        turned.append(word)
    return tuple(turned)


@lru_cache(maxsize=4096)
def _meaning(word: str) -> str:
    if word in _MEANING or len(word) <= _SHORTEST_FUZZY:
        return _MEANING.get(word, word)
    close = get_close_matches(word, _MEANING, 1, _ALIKE_SHORT)
    return _MEANING[close[0]] if close else word


def _weights(texts: Mapping[str, Sequence[Sequence[str]]]) -> dict[str, float]:
    seen = Counter(word for each in texts.values() for word in {w for t in each for w in t})
    return {word: log(1 + len(texts) / count) for word, count in seen.items()}


def _score(wanted: Sequence[str], texts: Sequence[Sequence[str]], weight: Mapping[str, float]) -> float:
    """Mostly the text that fits best, and then how much of the candidate is about these words at all."""
    best = max((_fit(wanted, text, weight) for text in texts), default=0.0)
    often = Counter(word for text in texts for word in set(text))
    about = total = 0.0
    for word in wanted:
        nearest, likeness = _closest(word, tuple(often))
        total += weight.get(nearest if likeness else word, _STRANGE)
        about += weight.get(nearest, _STRANGE) * likeness * sqrt(often[nearest] / len(texts)) if likeness else 0.0
    return (1.0 - _ABOUT) * best + _ABOUT * about / total


def _fit(wanted: Sequence[str], text: Sequence[str], weight: Mapping[str, float]) -> float:
    """How much of the wanted weight is found in the text, and a little for how much of the text is used."""
    if not text:
        return 0.0
    used = {best for best, likeness in (_closest(word, text) for word in wanted) if likeness}
    share_of_text = sum(weight.get(w, _STRANGE) for w in used) / sum(weight.get(w, _STRANGE) for w in set(text))
    return _covered(wanted, text, weight) * (0.7 + 0.3 * share_of_text)


def _covered(wanted: Sequence[str], text: Sequence[str], weight: Mapping[str, float]) -> float:
    """How much of the weight of the words wanted is found in the text."""
    found = total = 0.0
    for word in wanted:
        best, likeness = _closest(word, text)
        total += weight.get(best if likeness else word, _STRANGE)
        found += weight.get(best, _STRANGE) * likeness if likeness else 0.0
    return found / total


def _closest(word: str, text: Sequence[str]) -> tuple[str, float]:
    if word in text:
        return word, 1.0
    best, likeness = "", 0.0
    for other in text:
        alike = _alike(word, other)
        if alike > likeness:
            best, likeness = other, alike
    return best, likeness


@lru_cache(maxsize=65536)
def _alike(word: str, other: str) -> float:
    shorter, longer = sorted((word, other), key=len)
    if len(shorter) < _SHORTEST_FUZZY or word.isdigit() or other.isdigit():
        return 0.0
    if longer.startswith(shorter) and len(shorter) > _SHORTEST_FUZZY:
        return 0.9
    if 2 * len(shorter) < _ALIKE * (len(shorter) + len(longer)):
        return 0.0  # so different in length that they can't be alike
    alike = SequenceMatcher(None, word, other).ratio()
    return alike if alike >= (_ALIKE if len(shorter) > _SHORT else _ALIKE_SHORT) else 0.0
