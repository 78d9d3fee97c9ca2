"""The rules of the family, one module for each subject."""
