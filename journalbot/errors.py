"""Errors that the person is shown as one clear line.

    JournalbotError            anything below; `str()` of it is fit to print
    ├── JournalError           the file: not a journal, newer than this program, cannot be opened or written
    ├── ImportFileError        a notebook that cannot be read, with the line at fault
    └── OutOfRange             a figure that a calculation does not reach to

What a person types never raises: it gives an entry, a question back, a remark, or an answer that says no.
"""


class JournalbotError(Exception):
    """Base of every error that is the person's, the file's or the machine's, and not a bug."""


class JournalError(JournalbotError):
    """The journal's file cannot be opened, read or written."""


class ImportFileError(JournalbotError):
    """A notebook to import is not in a form that can be read."""


class OutOfRange(JournalbotError, ValueError):
    """A figure outside the range in which a calculation holds; the message names the range."""
