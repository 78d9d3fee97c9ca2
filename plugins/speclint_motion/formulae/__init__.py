"""Formulae of the motion, one module a subject."""
