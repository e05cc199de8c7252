"""Answers: the JSON dict and its English; renders what a verdict holds and decides nothing."""
