"""The review pack in a real browser."""
