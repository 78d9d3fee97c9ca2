"""What several rules take alike: room beside a part, sizes of ends, and what forces one part before another."""
