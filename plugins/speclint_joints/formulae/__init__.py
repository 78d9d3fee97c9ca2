"""Formulae that the rules of joints need beside those of the handbook."""
