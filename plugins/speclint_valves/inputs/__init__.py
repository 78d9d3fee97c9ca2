"""What several rules of valves take alike."""
