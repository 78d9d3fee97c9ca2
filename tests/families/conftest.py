"""What is here for the tests of families."""

# The family of a stranger is a distribution of its own: test_stranger.py builds it and installs it elsewhere.
collect_ignore = ["stranger"]
