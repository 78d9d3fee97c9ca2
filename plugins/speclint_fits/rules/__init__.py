"""The rules of fits, pads, castings and chains, one module a subject."""
