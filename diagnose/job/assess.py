"""The one place where a state becomes an assessment: rules, then the fault tree, then advice."""

from __future__ import annotations

__all__ = ["Assessment", "assess"]
