"""What several rules of steamways share: the steam path, and facts of a pipe."""
