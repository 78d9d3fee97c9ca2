"""The review pack and the reference in a real browser."""
