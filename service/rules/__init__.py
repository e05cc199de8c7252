"""One limit, one weight, one file; a rule compares numbers that stand in a case, knows nothing of scores or prose."""
