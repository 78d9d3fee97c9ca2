"""Formulae of valve gear that no other family needs, one module a subject."""
