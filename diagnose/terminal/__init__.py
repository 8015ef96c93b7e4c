"""Floor 8: the terminal. Fronts (live, plain, scripted), letters, long lists, and words understood; no job in it."""

from diagnose.terminal.front import Front, Paused
from diagnose.terminal.fronts import front_here
from diagnose.terminal.plain import PlainFront
from diagnose.terminal.scripted import ScriptedFront, answers_in

__all__ = ["Front", "Paused", "PlainFront", "ScriptedFront", "answers_in", "front_here"]
