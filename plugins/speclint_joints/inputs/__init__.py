"""What several rules of joints take alike."""
