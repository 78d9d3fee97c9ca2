"""Mutants of design repositories, checked for what must hold whatever a file says.

``python -m tests.fuzzing SECONDS SEED`` mutates specs, duties, settings and registers and asks of each mutant: no
traceback, no hang, memory within its bound, an exit code as documented, and no hold that vanishes without cause.
Cases that were found stand in ``test_fuzzing.py``.
"""
