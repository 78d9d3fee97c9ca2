"""Formulae of room, access and lifting that no other family needs."""
