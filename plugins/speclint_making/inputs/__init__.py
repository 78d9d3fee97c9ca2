"""What several rules take alike: a list of steps, and the order of some of them."""
