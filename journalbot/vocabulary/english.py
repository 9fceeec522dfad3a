"""Words of English that are never taken for a misspelling of the trade's: they are words in their own right.

The commonest words of four to fourteen letters, and those less common ones that lie within an edit of a term in the
other tables; names of people and places are among them. Words: the American and British lists of the SCOWL collection;
how common a word is: the wordfreq collection.
"""

from functools import cache
from pathlib import Path


@cache
def english() -> frozenset[str]:
    """The words; read when first needed, since most notes have no word that is in no other table."""
    return frozenset(Path(__file__).with_name("english.txt").read_text("ascii").split())
