"""Pure formulas, floats in and out, each with its units and its source; knows nothing of parts or limits of a build."""
