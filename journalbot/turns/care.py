"""What the winemaking side has to say unasked: what is due on a day, and the caution that a note calls for."""

import datetime
from collections.abc import Sequence
from typing import TYPE_CHECKING

from journalbot.journal.fold import touched
from journalbot.journal.store import Journal
from journalbot.model import Entry

if TYPE_CHECKING:
    from journalbot.winemaking.care import Due
    from journalbot.winemaking.record import Record

_LATEST = 20  # batches under way that are looked at, the latest spoken of first


def due(journal: Journal, today: datetime.date) -> "list[Due]":
    """What is due for the batches under way and for the cellar as a whole: the overdue first, of these the plans."""
    from journalbot.winemaking.care import care, plans_due

    latest = sorted(journal.cellar().under_way(), key=lambda b: -b.last_id)[:_LATEST]
    found = plans_due(journal.entries(batch=None, kinds=["plan", "purchase"]), today)
    for record in _records(journal, [b.number for b in latest], today).values():
        found += care(record, journal.settings.intervals)
    return sorted(found, key=lambda d: (not d.overdue, d.key != "plan", d.since))


def cautions(journal: Journal, text: str, entries: Sequence[Entry], today: datetime.date) -> tuple[str, ...]:
    """The cautions that a note just filed calls for; one shown lately is kept back, unless it is of a danger."""
    from journalbot.winemaking.cautions import called_for, sentence, to_show

    numbers = sorted({number for entry in entries for number in touched(entry)})
    records = _records(journal, numbers, today)
    keys = called_for(text, entries, records)
    days = {key: day for key in keys if (day := journal.marked(f"caution {key}"))}
    show = to_show(keys, {key: datetime.date.fromisoformat(day) for key, day in days.items()}, today)
    for key in show:
        journal.mark(f"caution {key}", today.isoformat())
    return tuple(sentence(key, next(iter(records.values()), None) if len(records) == 1 else None) for key in show)


def _records(journal: Journal, numbers: Sequence[int], today: datetime.date) -> "dict[int, Record]":
    from journalbot.winemaking.record import record_of

    cellar = journal.cellar()
    capacities = {v.name: v.capacity for v in cellar.vessels.values() if v.capacity is not None}
    return {
        n: record_of(cellar.batches[n], journal.entries(batch=n), today, capacities)
        for n in numbers
        if n in cellar.batches
    }
