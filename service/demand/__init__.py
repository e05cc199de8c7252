"""Device to watts and amps, by rail, plug and moment; knows nothing of supplies' limits, cables or verdicts."""
