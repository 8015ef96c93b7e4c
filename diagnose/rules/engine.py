"""Forward chaining: rules fire on what is left unread until none has more to say."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from diagnose.model import Book, Finding, Machine, Reading, fits
from diagnose.rules.facts import Facts, Silent, gather

__all__ = ["Firing", "Rule", "RuleRun", "Unanswered", "run"]


@dataclass(frozen=True)
class Rule:
    """One rule: the higher its salience, the earlier it may take a reading."""

    name: str
    salience: int
    run: Callable[[Facts], Finding | Silent | None]
    many: bool = False  # speaks for many checks, each by itself

    @property
    def manual(self) -> str:
        """The manual page: the docstring of the function that runs."""
        return str(getattr(self.run, "func", self.run).__doc__ or "")


@dataclass(frozen=True)
class Firing:
    """What one rule did at one stage: the finding it made, or why it kept silent."""

    rule: str
    stage: int
    finding: Finding | None = None
    silent: str = ""

    @property
    def counts(self) -> tuple[str, ...]:
        return self.finding.counts if self.finding else ()

    @property
    def consults(self) -> tuple[str, ...]:
        return self.finding.consults if self.finding else ()


@dataclass(frozen=True)
class Unanswered:
    """A reading no rule could use, and why."""

    reading: Reading
    why: str


@dataclass(frozen=True)
class RuleRun:
    """The outcome of running all rules over all readings."""

    findings: tuple[Finding, ...]
    firings: tuple[Firing, ...]
    unanswered: tuple[Unanswered, ...]

    def by_reading(self, reading: str) -> Firing | None:
        """The firing that counted a reading, to answer "why"."""
        return next((f for f in self.firings if reading in f.counts), None)


def run(book: Book, machine: Machine, readings: Sequence[Reading], rules: Sequence[Rule]) -> RuleRun:
    """Run the rules stage by stage. Within a stage the most salient rule with something to say fires, its readings are
    spent, and the agenda starts again from the top, as a finding may serve other rules. A rule that speaks for many
    checks goes on by itself: those above it had nothing to say to the readings that are left.

    Two readings with one id raise ValueError: they could not be told apart afterwards.
    """
    ids = [r.id for r in readings]
    if len(set(ids)) != len(ids):
        raise ValueError("two readings have the same id")
    agenda = sorted(rules, key=lambda rule: -rule.salience)
    facts = gather(book, machine, readings)
    firings: list[Firing] = []
    for stage in sorted({r.stage for r in readings}):
        facts = _stage(replace(facts, stage=stage), agenda, firings)
    findings = tuple(f.finding for f in firings if f.finding is not None)
    newest = [r for r in facts.newest.values() if r.id not in facts.spent]
    return RuleRun(findings, tuple(firings), tuple(Unanswered(r, _why(facts, firings, r)) for r in newest))


def _stage(facts: Facts, agenda: Sequence[Rule], firings: list[Firing]) -> Facts:
    """Run one stage to its end. A rule's reason for silence is kept, though a lower rule took the reading."""
    silent: dict[str, Firing] = {}
    nth = 0
    while nth < len(agenda):
        rule = agenda[nth]
        result = _ask(rule, facts)
        if result is None or isinstance(result, Silent):
            if result is not None:
                silent[rule.name] = Firing(rule.name, facts.stage, silent=result.why)
            nth += 1
            continue
        firings.append(Firing(rule.name, facts.stage, result))
        facts = _spend(facts, rule, result)
        nth = nth if rule.many else 0
    fired = {f.rule for f in firings if f.stage == facts.stage}
    firings.extend(silent[r.name] for r in agenda if r.name in silent and (r.many or r.name not in fired))
    return facts


def _ask(rule: Rule, facts: Facts) -> Finding | Silent | None:
    """A formula refuses nonsense with a sentence: that is why the rule keeps silent."""
    try:
        return rule.run(facts)
    except ValueError as error:
        return Silent(f"{rule.name}: {error}")


def _spend(facts: Facts, rule: Rule, finding: Finding) -> Facts:
    """Mark the counted readings; a rule that counts nothing or counts twice is wrong in itself."""
    counted = set(finding.counts)
    if not counted or counted & facts.spent or (facts.stage, finding.check) in facts.found:
        raise RuntimeError(f"rule {rule.name} must count readings that nothing counted before")
    found = {**facts.found, (facts.stage, finding.check): finding}
    return replace(facts, spent=facts.spent | counted, found=found)


def _why(facts: Facts, firings: Sequence[Firing], reading: Reading) -> str:
    check = facts.book.checks.get(reading.check)
    if check is None:
        return f"no check {reading.check} is known"
    if not fits(facts.machine, check.fits):
        return f"{check.title}: does not belong to this machine"
    for firing in firings:
        about = firing.rule == reading.check or firing.silent.startswith(check.title)
        if firing.silent and firing.stage == reading.stage and about:
            return firing.silent
    return f"{check.title}: no rule answers it"
