"""What the rules work."""
