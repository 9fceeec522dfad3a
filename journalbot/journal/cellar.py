"""The cellar as the entries so far describe it: batches, what is in which vessel, and the names met. No SQL."""

from collections.abc import Iterable

from journalbot.journal.fold import Order, fold, litres, names_in, order_of, step, touched, vessels_in
from journalbot.journal.vessel_names import is_bare, vessel_key
from journalbot.model import Batch, Entry, Held, Vessel


class Known:
    """A name that the journal has met, and in how many standing entries."""

    __slots__ = ("first", "litres", "name", "said", "uses")

    def __init__(
        self, name: str, uses: int, first: int, litres: float | None = None, said: Order = ("", 0, 0)
    ) -> None:
        self.name = name  # as first written
        self.uses = uses
        self.first = first  # the entry that first had it
        self.litres = litres  # of a vessel described: what it holds
        self.said = said  # and the entry that says so


class Cellar:
    """Batches, vessels and names. `apply` keeps it in step with entries as they are filed.

    Batches are folds of their entries in order of date. An entry that is not its batch's latest cannot be taken in
    alone: `apply` and `retract` give the numbers of the batches that must be folded again, `put` takes the result.
    """

    def __init__(self) -> None:
        self.batches: dict[int, Batch] = {}
        self.names: dict[str, dict[str, Known]] = {}  # sort of name -> lower case -> what is known of it
        self.known_vessels: dict[str, Known] = {}  # by vessel_key
        self._same: dict[str, str] = {}  # vessel key -> key of the fuller name of the same vessel
        self._holders: dict[str, dict[int, Held]] = {}  # vessel -> batches under way that say they are in it
        self._seats: dict[int, dict[str, Held]] = {}  # of each batch under way, what `_holders` was made from
        self._spoken: int | None = None
        self._vessels: dict[str, Vessel] | None = None

    @classmethod
    def of(cls, entries: Iterable[Entry]) -> "Cellar":
        """The cellar that these entries describe, in whatever order they come."""
        cellar = cls()
        each: dict[int, list[Entry]] = {}
        own: set[int] = set()
        for entry in entries:
            cellar.meet(entry, 1)
            for number in touched(entry):
                each.setdefault(number, []).append(entry)
            if entry.batch is not None:
                own.add(entry.batch)
        cellar.settle(fold(number, each[number]) for number in sorted(own))
        return cellar

    # ---- asked of it

    @property
    def vessels(self) -> dict[str, Vessel]:
        """Every vessel by its key, under its fullest name."""
        if self._vessels is None:
            self._vessels = self._as_vessels()
        return self._vessels

    def _as_vessels(self) -> dict[str, Vessel]:
        out: dict[str, Vessel] = {}
        for key, known in self.known_vessels.items():
            if known.uses > 0 and self._same[key] == key:
                out[key] = Vessel(known.name, known.litres)
        for key, known in self.known_vessels.items():
            same = out.get(self._same[key])
            if known.uses > 0 and same and same.capacity is None:
                out[self._same[key]] = same._replace(capacity=known.litres)
        return out

    @property
    def yeasts(self) -> list[str]:
        return self._names("yeast")

    @property
    def cultures(self) -> list[str]:
        return self._names("culture")

    @property
    def materials(self) -> list[str]:
        return self._names("material")

    @property
    def people(self) -> list[str]:
        return self._names("person")

    @property
    def places(self) -> list[str]:
        return self._names("place")

    @property
    def items(self) -> list[str]:
        return self._names("item")

    @property
    def last_spoken(self) -> int | None:
        """The number of the batch that the latest note spoke of last."""
        if self._spoken is None and self.batches:
            self._spoken = max(self.batches.values(), key=_spoken).number
        return self._spoken

    def next_number(self) -> int:
        """The number that the next batch gets."""
        return max(self.batches, default=0) + 1

    def under_way(self) -> list[Batch]:
        """The batches neither ended nor all in bottles, by number."""
        return [self.batches[n] for n in sorted(self._seats)]

    def find_vessel(self, name: str) -> Vessel | None:
        """The vessel that a name means, where only one fits: `the blue bin` is `big blue bin`."""
        key = self._find(name)
        return self.vessels.get(key) if key else None

    def vessel_key(self, name: str) -> str:
        """The key under which that name's vessel is kept; for one not met yet, the normal form of the name."""
        return self._find(name) or vessel_key(name)

    def in_vessel(self, name: str) -> list[Batch]:
        """The batches under way in that vessel now, the latest to arrive first; two only where racked together."""
        key = self._find(name)
        if key is None:
            return []
        inside = self._inside(key)
        if not inside and is_bare(vessel_key(name)):  # "the barrel", where only "oak barrel" has anything in it
            fuller = [k for k in self._holders if k != key and key in k.split() and self._inside(k)]
            inside = self._inside(fuller[0]) if len(fuller) == 1 else {}
        order = sorted(inside, key=lambda n: (inside[n].date, inside[n].note, n), reverse=True)
        return [self.batches[n] for n in order]

    # ---- kept in step

    def apply(self, entry: Entry) -> set[int]:
        """Take in an entry; the batches to be folded again because it is not their latest (or is their first)."""
        self.meet(entry, 1)
        again = set()
        for number in touched(entry):
            batch = self.batches.get(number)
            if batch is None:
                if number != entry.batch:
                    continue  # a blend with a batch of which nothing else is known
                batch = self.batches[number] = Batch(number)
                again.add(number)
            if order_of(entry) < batch.latest:
                again.add(number)
                continue
            step(batch, entry)
            self._seat(batch)
            if self._spoken is not None and _spoken(batch) >= _spoken(self.batches[self._spoken]):
                self._spoken = number
        return again

    def retract(self, entry: Entry) -> set[int]:
        """Let go of an entry withdrawn; the batches that must be folded again."""
        self.meet(entry, -1)
        return touched(entry)

    def put(self, batch: Batch) -> None:
        """Take a batch as folded anew."""
        self.batches[batch.number] = batch
        self._spoken = None
        self._seat(batch, anew=True)

    def drop(self, number: int) -> None:
        """Forget a batch of which no entry is left."""
        if number in self.batches:
            self.batches[number].held = {}
            self._seat(self.batches.pop(number))
            self._seats.pop(number, None)
            self._spoken = None

    def meet(self, entry: Entry, uses: int) -> None:
        """Count the names in an entry: 1 when filed, -1 when withdrawn, 0 for one that only was there once."""
        for sort, name in names_in(entry):
            _count(self.names.setdefault(sort, {}), name.lower(), name, uses, entry.id)
        for name in vessels_in(entry):
            self._vessels = None
            key = vessel_key(name)
            known = self.known_vessels.get(key)
            gone = known is None or known.uses <= 0
            known = _count(self.known_vessels, key, name, uses, entry.id)
            if gone != (known.uses <= 0):
                self._met(key)
            if uses > 0 and entry.kind == "vessel" and order_of(entry) >= known.said:
                _describe(known, entry)

    def first_met_in(self, entries: set[int]) -> bool:
        """Whether any name was first met in one of the entries of these numbers."""
        tables = (self.known_vessels, *self.names.values())
        return any(known.first in entries for table in tables for known in table.values())

    def describe(self, entries: Iterable[Entry]) -> None:
        """Set what vessels hold from all entries that describe them, after one was withdrawn."""
        self._vessels = None
        for known in self.known_vessels.values():
            known.litres, known.said = None, ("", 0, 0)
        for entry in sorted(entries, key=order_of):
            for name in vessels_in(entry):
                _describe(self.known_vessels[vessel_key(name)], entry)

    def settle(self, batches: Iterable[Batch]) -> None:
        """Take many batches at once; the names have been met."""
        self.batches.update((b.number, b) for b in batches)
        self._spoken = None
        self._settle_all()

    # ---- who is in which vessel

    def _seat(self, batch: Batch, *, anew: bool = False) -> None:
        """Keep the table of vessels in step with one batch."""
        before = self._seats.pop(batch.number, {})
        now = dict(batch.held) if batch.under_way else {}
        if batch.under_way:
            self._seats[batch.number] = now
        if before == now and not anew:
            return
        batch.vessels = {}
        changed = {self._same.get(k, k) for k in (*before, *now)}
        for key in changed:
            self._holders.setdefault(key, {}).pop(batch.number, None)
        for key, held in now.items():
            self._holders[self._same.get(key, key)][batch.number] = held
        for key in changed:
            self._tell(key)

    def _inside(self, key: str) -> dict[int, Held]:
        """Who is in a vessel: the latest to arrive, and what the same note put there with it."""
        holders = self._holders.get(key)
        if not holders:
            return {}
        last = max((h.date, h.note) for h in holders.values())
        return {n: h for n, h in holders.items() if (h.date, h.note) == last}

    def _tell(self, key: str) -> None:
        """Write who is in a vessel into the batches themselves."""
        inside = self._inside(key)
        known = self.known_vessels.get(key)
        for number, held in self._holders.get(key, {}).items():
            name = known.name if known else held.name
            if number in inside:
                self.batches[number].vessels[name] = held.date
            else:
                self.batches[number].vessels.pop(name, None)

    def _settle_all(self) -> None:
        self._same = _same_vessels([k for k, known in self.known_vessels.items() if known.uses > 0])
        self._same |= {k: k for k in self.known_vessels if k not in self._same}
        self._vessels = None
        self._holders, self._seats = {}, {}
        for batch in self.batches.values():
            batch.vessels = {}
            if batch.under_way:
                self._seats[batch.number] = dict(batch.held)
                for key, held in batch.held.items():
                    self._holders.setdefault(self._same.get(key, key), {})[batch.number] = held
        for key in self._holders:
            self._tell(key)

    def _met(self, key: str) -> None:
        """A vessel's name has come or gone: whether another is short for it may have changed."""
        words = set(key.split())
        related = any(words < other or other < words for other in map(set, map(str.split, self.known_vessels)))
        self._same.setdefault(key, key)
        if related and not is_bare(key):
            self._settle_all()

    def _find(self, name: str) -> str | None:
        key = vessel_key(name)
        known = self.known_vessels.get(key)
        if known and known.uses > 0:
            return self._same[key]
        words = set(key.split())
        there = {k: set(k.split()) for k in set(self._same.values()) if self.known_vessels[k].uses > 0}
        for fits in (
            [k for k, other in there.items() if words < other],
            [k for k, other in there.items() if other < words and len(other) > 1],
        ):
            if len(fits) == 1:
                return fits[0]
        return None

    def _names(self, sort: str) -> list[str]:
        return [k.name for k in sorted(self.names.get(sort, {}).values(), key=lambda k: k.first) if k.uses > 0]


def _spoken(batch: Batch) -> tuple[int, int]:
    return (batch.last_note, batch.last_id)


def _count(table: dict[str, Known], key: str, name: str, uses: int, entry: int) -> Known:
    known = table.get(key)
    if known is None:
        known = table[key] = Known(name, uses, entry)
    else:
        known.uses += uses
        if entry < known.first:
            known.name, known.first = name, entry
    return known


def _describe(known: Known, entry: Entry) -> None:
    size = litres(entry.get("capacity"), entry.get("unit"))
    if size is not None:
        known.litres, known.said = size, order_of(entry)


def _same_vessels(keys: list[str]) -> dict[str, str]:
    """For each key, that of the fuller name of the same vessel, where exactly one fits; a bare noun is no such name."""
    words = {key: frozenset(key.split()) for key in keys}
    by_word: dict[str, list[str]] = {}
    same: dict[str, str] = {}
    for key in sorted(keys, key=lambda k: (-len(words[k]), k)):
        near = min((by_word.get(w, []) for w in words[key]), key=len)
        fuller = {same[k] for k in near if words[key] < words[k]}
        same[key] = fuller.pop() if len(fuller) == 1 and not is_bare(key) else key
        for word in words[key]:
            by_word.setdefault(word, []).append(key)
    return same
