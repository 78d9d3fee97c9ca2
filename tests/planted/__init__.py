"""Parts planted for each rule by somebody who worked it from its statement and sources alone: bad ones and a sound one.

A folder for each family, in it a file for each rule. ``python -m tests.planted springs`` tries those of a family.
"""
