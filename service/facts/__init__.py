"""Published figures as typed constants, our own judgements apart and each with its reason; imports nothing of the house."""
