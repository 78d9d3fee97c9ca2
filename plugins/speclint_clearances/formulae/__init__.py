"""Formulae of clearance, access and lifting that no other family needs."""
