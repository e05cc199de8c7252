"""Rules on what was measured at the bench, against the sheet and against rails; they know nothing of how it is used."""
