"""Formulae of weldments that no other family needs."""
