"""Everything that can go wrong, as one tree.

A ``SpeclintError`` is one line for a person and an exit code; it is printed without a traceback.
Anything else that reaches the top is a defect of speclint and keeps its traceback.

::

    SpeclintError                      exit 2
    ├── QuantityError (ValueError)     a quantity that cannot be read, and what to write instead
    ├── SettingsError                  speclint.toml or an option
    ├── DesignError                    paths and names on the command line
    ├── TableError                     a table of a shop that cannot be read
    ├── SigningError                   ssh-keygen absent, or a key that will not sign
    ├── RevisionError                  git absent, or a revision that cannot be read
    ├── OutputError                    a file that cannot be written; what was there is left as it was
    ├── StreamError                    standard output closed or full; exit 141 where its reader has left
    ├── FamilyError                    exit 3: a family absent, broken or claiming a taken name
    ├── OutOfRange (ValueError)        a formula or a table used outside its range: a query on the sheet
    └── NotKnown (LookupError)         a table that does not hold the entry: not assessed on the sheet
"""

from __future__ import annotations


class SpeclintError(Exception):
    """Base of all errors that are reported to the user in one line."""

    exit_code = 2


class QuantityError(SpeclintError, ValueError):
    """A quantity as written cannot be read.

    ``instead`` says what to write; it is empty only where nothing useful can be proposed.
    """

    def __init__(self, message: str, instead: str = "") -> None:
        super().__init__(message)
        self.instead = instead


class SettingsError(SpeclintError):
    """A setting in speclint.toml, or an option, cannot be used."""


class DesignError(SpeclintError):
    """A path or a name does not lead to anything in the design repository, or it cannot be read with a change."""


class TableError(SpeclintError):
    """A table that a shop sent cannot be read, or nothing in it can."""


class SigningError(SpeclintError):
    """A signature cannot be made or verified."""


class RevisionError(SpeclintError):
    """A git revision, or what is staged, cannot be read."""


class OutputError(SpeclintError):
    """A file cannot be written, or must not be: what was there is left as it was."""


class StreamError(SpeclintError):
    """What a command has to say cannot be written to standard output: it is closed, or full, or its reader has left."""


class ReaderLeft(StreamError):
    """The reader of standard output has closed it, as ``head`` does; there is nobody to tell."""

    exit_code = (
        141  # as shells have it of a program that a closed pipe ends: 128 and the number of the signal
    )


class FamilyError(SpeclintError):
    """A family of rules that is needed cannot be used."""

    exit_code = 3


class OutOfRange(SpeclintError, ValueError):
    """A formula or a table was used outside the range of validity of its source."""


class NotKnown(SpeclintError, LookupError):
    """A table has no such entry."""
