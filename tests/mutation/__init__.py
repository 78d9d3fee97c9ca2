"""Changes one thing of the code, or one number of a table, at a time and asks whether any test notices.

``python -m tests.mutation [PACKAGE|FILE...] [--sample N | --each N] [--seed S] [--cap SECONDS] [--tables]``

Each change is tried in a fork of a process that has collected the tests of the package, on the tests that run the
changed block: nearest first, then the quickest, up to a cap. What was found is kept by the text of the module and of
those tests. Survivors are listed; what no test can catch stands in ``accepted.toml`` with the reason.
"""
