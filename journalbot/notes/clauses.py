"""A note's text as clauses: each with its mood (done, planned, denied …), its date and the batches it speaks of."""

from dataclasses import dataclass, field

from journalbot.language.dates import DateMention
from journalbot.language.lexicon import Mention
from journalbot.language.text import Text


@dataclass(slots=True)
class Clause:
    """A stretch of a note that says one thing, as tokens `first` to `last`."""

    text: Text
    first: int
    last: int
    sentence: int
    mood: str = "done"  # "done", "planned", "denied", "supposed", "told" (somebody else's word) or "asked"
    own_date: DateMention | None = None
    date: str = ""
    time: str | None = None
    mentions: list[Mention] = field(default_factory=list)
    joined_by: str = ""  # the mark or word that links it to the clause before

    @property
    def done(self) -> bool:
        """Whether the clause tells of something done."""
        return self.mood == "done"

    def of(self, *kinds: str) -> list[Mention]:
        """The clause's mentions of these kinds, in order."""
        return [m for m in self.mentions if m.kind in kinds]

    def words(self) -> list[str]:
        """The clause's words, lower case and mended."""
        return self.text.words[self.first : self.last]

    def has(self, *words: str) -> bool:
        """Whether any of these words is in the clause."""
        return not set(words).isdisjoint(self.words())

    def cues(self, *kinds: str) -> list[Mention]:
        """The clause's cues for these kinds of act."""
        return [m for m in self.mentions if m.kind == "cue" and m.value.kind in kinds]
