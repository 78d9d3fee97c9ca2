"""Formulae of steam passages that no other family needs."""
