"""The rules of the family, one module a subject: each is imported where a component of its kinds is checked."""
