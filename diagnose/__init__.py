"""Troubleshooting assistant for technicians of commercial conveyor warewashers."""

__all__ = ["__version__"]

__version__ = "0.1.0"
