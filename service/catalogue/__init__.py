"""Editions of the catalogue, and from a sheet and an edition to a build; knows no demand, no wiring and no rule."""
