"""Reports: each reads an assessment and decides nothing."""
