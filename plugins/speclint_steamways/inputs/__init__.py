"""What several rules of steam ways take alike."""
