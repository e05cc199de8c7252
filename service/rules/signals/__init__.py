"""Rules about headers and lights on the board's side; they know nothing of the supply."""
