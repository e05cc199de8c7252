"""One file for each thing asked; puts rooms in order and knows no HTTP."""
