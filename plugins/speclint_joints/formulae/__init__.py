"""Formulae that the rules of joints need in addition to those of the handbook."""
