"""The rules of the motion, one module a subject."""
