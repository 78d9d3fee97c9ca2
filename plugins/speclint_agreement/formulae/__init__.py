"""Formulae that only agreements need."""
