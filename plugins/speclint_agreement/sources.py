"""The works that the family of agreements cites: none of its own; that two drawings agree is common practice."""
