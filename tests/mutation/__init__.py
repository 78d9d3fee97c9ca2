"""Corrupts one number of the code or of a table at a time by 2 % and asks whether any test notices.

``python -m tests.mutation [FILE...] [--tables] [--sample N] [--seed S] [--tests PATH...]``
"""
