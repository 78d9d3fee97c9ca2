"""Formulae of cylinders and liners that no other family needs, one module a subject."""
