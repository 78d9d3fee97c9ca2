"""Formulae of valve gear that no other family needs, one module for each subject."""
