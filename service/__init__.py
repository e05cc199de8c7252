"""The power and connector validator: build sheets in, honest verdicts out."""

__version__ = "0.1.0"
