"""A check on a cluster of this machine: ``python -m tests.cluster``."""
