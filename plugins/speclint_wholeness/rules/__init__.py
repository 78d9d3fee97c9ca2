"""The rules of the family."""
