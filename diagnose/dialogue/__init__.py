"""Floor 7: the conversation of a job, and its fronts: live, plain, scripted."""

from diagnose.dialogue.front import Front, Paused
from diagnose.dialogue.fronts import front_here
from diagnose.dialogue.plain import PlainFront
from diagnose.dialogue.run import run_job
from diagnose.dialogue.scripted import ScriptedFront, answers_in
from diagnose.dialogue.start import start

__all__ = ["Front", "Paused", "PlainFront", "ScriptedFront", "answers_in", "front_here", "run_job", "start"]
