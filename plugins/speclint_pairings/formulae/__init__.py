"""Formulae and tables of pairings that no other family needs."""
