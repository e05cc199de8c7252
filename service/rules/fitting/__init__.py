"""Rules about room in the case; they know nothing of power."""
