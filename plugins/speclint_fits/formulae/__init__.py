"""Formulae of fits, pads, castings and chains that no other family needs."""
