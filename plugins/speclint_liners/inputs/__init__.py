"""What several rules of cylinders and liners take alike."""
