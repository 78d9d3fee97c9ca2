"""Formulae of steam ways that no other family needs."""
