"""What a measure is: its name, how it is asked for, and how the entries of a batch give its facts."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date
from types import EllipsisType
from typing import Any, NamedTuple, Protocol

from journalbot.journal.cellar import Cellar
from journalbot.journal.search import Found
from journalbot.model import Ask, Batch, Entry, Note, Settings


class Source(Protocol):
    """What a question needs of a journal."""

    def entries(
        self,
        *,
        batch: int | Sequence[int] | EllipsisType | None = ...,
        kinds: Sequence[str] | None = None,
        since: str | None = None,
        until: str | None = None,
        note: int | None = None,
        seat: int | None = None,
        quantity: str | None = None,
        include_withdrawn: bool = False,
    ) -> list[Entry]: ...
    def cellar(self) -> Cellar: ...
    def note(self, number: int) -> Note | None: ...
    def open_asks(self) -> list[Ask]: ...
    def sql(self, statement: str, values: Sequence[Any] = ()) -> Iterable[Any]: ...
    def search(
        self, words: str, *, limit: int = 20, any_word: bool = False, prefix: bool = True
    ) -> Sequence[Found]: ...


class Fact(NamedTuple):
    """One thing that the journal knows: a value with its day, and the notes that it rests on."""

    batch: int | None
    date: str
    value: float | str | None = None
    unit: str = ""
    text: str = ""  # the value as said
    notes: tuple[int, ...] = ()
    working: str = ""  # how it was computed, and from which readings
    until: str = ""  # of a stretch of days: its end
    low: float | None = None  # the band of a computed value
    high: float | None = None
    bare: bool = False  # an act without the value that was asked for (a pitch that names no yeast)
    label: str = ""  # what it is of, where that is no batch (a vessel, a material, a quantity)
    order: tuple[int, int] = (0, 0)  # note and position, for facts of one day
    time: str = ""  # of day, where the note gives one: HH:MM


class Case(NamedTuple):
    """What a measure is computed from: the entries of one batch (None: those of no one batch), and the whole scene."""

    number: int | None
    entries: Sequence[Entry]
    of: Mapping[str, str]
    today: str
    settings: Settings
    cellar: Cellar
    source: Source

    @property
    def batch(self) -> Batch:
        """The batch; one without any content where there is none."""
        return self.cellar.batches.get(self.number or 0) or Batch(self.number or 0)

    def kind(self, *kinds: str) -> list[Entry]:
        """Its entries of these kinds, in order."""
        return [e for e in self.entries if e.kind in kinds]


POURED = "poured"  # a kind of entry for measures: bottles of the batch that another wine was topped up with


Compute = Callable[[Case], list[Fact]]


class Measure(NamedTuple):
    """One thing that can be asked of a batch, or of many."""

    name: str
    phrase: str  # how it is called in a sentence; {slots} are filled from what narrows it, [..] falls away unfilled
    kinds: tuple[str, ...]  # the kinds of entry it rests on
    compute: Compute
    asked: tuple[tuple[str, ...], ...]  # signs that together ask for it; `a|b` either; several rows, any one
    beside: tuple[str, ...] = ()  # signs that may stand beside without changing what is asked
    sort: str = "act"  # "act" (something done), "reading", "figure" (computed), "days", "money", "words", "story"
    usual: str = ""  # how the facts of one batch are brought together where the question does not say
    narrows: tuple[str, ...] = ()  # what may narrow it: "material", "vessel", "person", "words" …
    fixed: tuple[tuple[str, str], ...] = ()  # what narrows it by itself
    scope: str = "batch"  # "batch"; "none" where it is of no batch (vessels, plans); "any" where both count
    quantity: str = ""  # of a reading
    by_entry: bool = (
        False  # each fact is one entry and stands on its day, so that a span of days can be looked up alone
    )
    each: bool = False  # every entry of its kinds is a fact, unless something narrows it
    done: str = ""  # past participle of an act: "racked"
    counts: str = (
        "count"  # what "how many" of it means: "count" of the acts, or the "sum" of what each counts (bottles)
    )


def days_between(first: str, last: str) -> int | None:
    """Days from one date to another; None where either is less exact than a day."""
    if len(first) < 10 or len(last) < 10:
        return None
    return (date.fromisoformat(last) - date.fromisoformat(first)).days


def notes_of(*entries: Entry | None) -> tuple[int, ...]:
    """The notes that entries stand in, each once, in order."""
    return tuple(dict.fromkeys(e.note for e in entries if e is not None))


def fact_of(entry: Entry, value: float | str | None = None, unit: str = "", text: str = "", **more: Any) -> Fact:
    """A fact that rests on one entry."""
    return Fact(
        entry.batch, entry.date, value, unit, text, (entry.note,), order=entry.place, time=entry.time or "", **more
    )
