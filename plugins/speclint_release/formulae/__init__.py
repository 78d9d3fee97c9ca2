"""What a record of release is held against."""
