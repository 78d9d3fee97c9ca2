"""Formulae of release: the margin of the design temperature, the share of checks assessed."""
