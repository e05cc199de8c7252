"""The wiring problem, its exact solver and the plan; knows nothing of rules, points of a verdict, or prose."""
