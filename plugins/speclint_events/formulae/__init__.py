"""Formulae of valve events and of the cycle that no other family needs, and the bands of what is worked from them."""
