"""What several rules take of a weldment alike."""
