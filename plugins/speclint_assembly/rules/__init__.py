"""The rules of the family, one module a subject."""
