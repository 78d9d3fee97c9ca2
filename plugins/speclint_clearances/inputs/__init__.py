"""What several rules count at the worse of what is stated and what the parts give."""
