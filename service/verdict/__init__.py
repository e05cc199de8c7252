"""``check(build)``: case, rules, verdict and score; the one way in. It knows nothing of JSON, prose or HTTP."""
