"""Frozen records of parts and builds, ranges and canonical digests; knows nothing of JSON, formulas or limits."""
