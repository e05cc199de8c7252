"""Published figures as typed constants, our judgements apart, each with its reason; imports nothing of the house."""
