"""The judge's parts: jobs on simulated machines, ways of working, and what is measured."""
