"""Rules about parts that must be made for each other; they know nothing of power or room."""
