"""The works that the family of places cites: none of its own; that every part is drawn is common practice."""
