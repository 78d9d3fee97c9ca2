"""Formulae and tables of springs that no other family needs."""
