"""Formulae of the family: none, since its rules count parts and compare words."""
