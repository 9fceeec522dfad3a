"""The nouns: what a person typed, what was read from it, and what comes back.

Plain records with no behaviour beyond their own JSON form. Dates are ISO 8601 strings, as precise as the note was:
`2024-10-05`, `2024-10` or `2024`; they sort as text. None is a dataclass: loading that machinery, and making the
classes with it, would take a tenth of the time of an answer.
"""

from collections.abc import Mapping
from operator import attrgetter
from typing import Any, NamedTuple

Json = dict[str, Any]

# The order in which an entry's own fields are printed; a field not listed here follows in the order it was given.
_HEAD = ("kind", "batch", "date", "time")


class Settings(NamedTuple):
    """How this journal reads and shows figures."""

    units: str = "us"  # "us" or "metric": what a bare `70 degrees` means, and what answers are shown in
    day_first: bool = False  # whether 3/10 is 3 October
    currency: str = "USD"  # ISO 4217; what a bare amount of money is in
    hydrometer: str = "60F"  # "60F" or "20C": the temperature at which the hydrometer is true
    bottle_price: float | None = None  # what a bought bottle would cost the person, for savings
    # The person's own days, least and most, of what care reminds of, by key of `vocabulary.care.INTERVALS`.
    intervals: Mapping[str, tuple[int, int]] = {}


class Note(NamedTuple):
    """What the person typed, kept verbatim for good."""

    number: int
    on: str
    text: str
    kind: str = "note"  # "note", "correction" or "answer"


class Entry(NamedTuple):
    """One thing that happened to one batch, or to the cellar as a whole, on one date."""

    kind: str
    batch: int | None
    date: str
    fields: Mapping[str, Any] = {}
    time: str | None = None
    span: tuple[int, int] = (0, 0)  # where in the note's text it was read
    doubt: str | None = None  # why it may be wrong, where it was filed all the same
    note: int = 0  # the note's number; 0 until filed
    id: int = 0  # the entry's number in the journal; 0 until filed
    place: tuple[int, int] = (0, 0)  # where it stands among those of its date: note and position, kept when corrected

    def get(self, name: str, default: Any = None) -> Any:
        """The field of that name, or `default`."""
        return self.fields.get(name, default)

    def with_fields(self, **changes: Any) -> "Entry":
        """The same entry with some fields set; `None` takes a field away."""
        merged = {**self.fields, **changes}
        return self._replace(fields={k: v for k, v in merged.items() if v is not None})

    def to_json(self) -> Json:
        """The entry in the project's JSON form."""
        head = {"kind": self.kind, "batch": self.batch, "date": self.date}
        if self.time:
            head["time"] = self.time
        return {**head, **self.fields}

    @staticmethod
    def from_json(data: Mapping[str, Any]) -> "Entry":
        """Read an entry from its JSON form; KeyError where kind or date is missing."""
        fields = {k: v for k, v in data.items() if k not in _HEAD}
        return Entry(data["kind"], data.get("batch"), data["date"], fields, data.get("time"))


class Ask(NamedTuple):
    """What must be known before a note can be filed, or a question answered."""

    what: str  # "batch", "quantity", "date" or "value"
    choices: tuple[str, ...] = ()
    about: str = ""  # the words that raised the question
    note: int = 0  # the note that waits for the answer; 0 for a question


class Held(NamedTuple):
    """Wine of one batch in one vessel."""

    date: str  # when it went there
    note: int  # the note that put it there
    litres: float | None  # how much, where known
    name: str  # the vessel as written


class Batch:
    """A batch as its entries so far describe it (a projection: see journal/cellar.py)."""

    number: int
    started: str = ""  # date
    name: str | None = None
    colour: str | None = None
    vintage: int | None = None
    fruit: tuple[str, ...] = ()  # what it was made from, as written
    vessels: dict[str, str]  # name of each vessel it is in now -> date it went there
    held: dict[str, Held]  # what its own entries say, by vessel key, taken over or not
    place: str | None = None
    volume: float | None = None  # litres, where last known
    pitched: str | None = None  # date of the first pitch
    finished: str | None = None  # date fermentation was called finished
    pressed: str | None = None  # date
    malolactic: str | None = None  # "started" or "finished"
    gravity: float | None = None  # last SG read
    gravity_on: str | None = None
    bottled: str | None = None  # date of the last bottling
    left: bool = False  # wine was still in a vessel after that
    filled: int = 0  # bottles filled in all
    taken: int = 0  # bottles drunk or given away
    ended: str | None = None  # date it was dumped or otherwise ended
    last_note: int = 0  # the last note that spoke of it
    last_id: int = 0  # and the last entry of that note
    latest: tuple[str, int, int] = ("", 0, 0)  # date and place of the latest of its entries

    def __init__(self, number: int, **known: Any) -> None:
        self.number, self.vessels, self.held = number, {}, {}
        for name, value in known.items():
            if name not in BATCH_FIELDS:
                raise TypeError(f"a batch has no {name!r}")
            setattr(self, name, value)

    def changed(self, **changes: Any) -> "Batch":
        """A copy with some fields set otherwise."""
        return Batch(**{**dict(zip(BATCH_FIELDS, _state(self), strict=True)), **changes})

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Batch) and _state(self) == _state(other)

    def __repr__(self) -> str:
        return f"Batch({', '.join(f'{name}={getattr(self, name)!r}' for name in BATCH_FIELDS)})"

    @property
    def under_way(self) -> bool:
        """Neither ended nor all in bottles."""
        return not self.ended and (not self.bottled or self.left)

    @property
    def bottles(self) -> int:
        """Bottles left."""
        return max(0, self.filled - self.taken)

    @property
    def last_date(self) -> str:
        """The latest date of its entries."""
        return self.latest[0]

    @property
    def year(self) -> int | None:
        """The vintage, or else the year in which it was started."""
        return self.vintage or (int(self.started[:4]) if self.started else None)


BATCH_FIELDS = tuple(Batch.__annotations__)
_state = attrgetter(*BATCH_FIELDS)


class Vessel(NamedTuple):
    """A vessel as the journal knows it."""

    name: str  # as first written
    capacity: float | None = None  # litres


class Answer(NamedTuple):
    """The answer to a question, in the project's JSON form."""

    question: str
    understood_as: str | None
    found: bool
    answer: str
    notes: tuple[int, ...] = ()
    ask: Ask | None = None
    cautions: tuple[str, ...] = ()  # keys of those told with it

    def to_json(self) -> Json:
        """The answer in the project's JSON form."""
        out: Json = {"question": self.question, "understood_as": self.understood_as, "found": self.found,
                     "answer": self.answer, "notes": list(self.notes)}
        if self.ask:
            out["ask"] = self.ask.what
            out["choices"] = list(self.ask.choices)
        return out


class Reply(NamedTuple):
    """What one turn gives back: the text a person reads, and what it was made from."""

    text: str
    note: Note | None = None
    entries: tuple[Entry, ...] = ()
    withdrawn: tuple[Entry, ...] = ()
    ask: Ask | None = None
    answer: Answer | None = None
    cautions: tuple[str, ...] = ()
