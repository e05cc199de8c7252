"""Outside words to records and back: bodies, schemas, pointers; knows no catalogue, no formula and no rule."""
