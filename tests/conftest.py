"""How long Hypothesis looks: ``dev`` by default, ``ci`` in CI (the same examples each time), ``nightly`` at leisure."""

import os

from hypothesis import HealthCheck, settings

# Whole sheets are large and some changes find nothing to change: both are wanted.
SLOW_TO_DRAW = [HealthCheck.too_slow, HealthCheck.filter_too_much, HealthCheck.data_too_large]

settings.register_profile("dev", deadline=None, max_examples=60, suppress_health_check=SLOW_TO_DRAW)
settings.register_profile(
    "ci", deadline=None, max_examples=100, derandomize=True, print_blob=True, suppress_health_check=SLOW_TO_DRAW,
)
settings.register_profile(
    "nightly", deadline=None, max_examples=int(os.environ.get("HYPOTHESIS_EXAMPLES", "3000")),
    suppress_health_check=SLOW_TO_DRAW,
)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "ci" if os.environ.get("CI") else "dev"))
