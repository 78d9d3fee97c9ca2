"""What several rules of pairings share: the pairs, and facts of components."""
