"""What several rules of fits take alike."""
