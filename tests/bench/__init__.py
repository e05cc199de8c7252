"""Speed as ratios taken in one run: ``python -m tests.bench``."""
