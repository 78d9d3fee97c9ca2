"""What several rules of pairings take alike."""
