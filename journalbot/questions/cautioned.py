"""The cautions that an answer calls for: those of the act that it is about, as if that were done now."""

from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING

from journalbot.model import Entry
from journalbot.questions.query import Query, What

if TYPE_CHECKING:
    from journalbot.journal.store import Journal

# Measure -> the act that it leads to, with the fields that its cautions go by; a material asked for replaces theirs.
_ACTS: dict[str, tuple[str, dict[str, str]]] = {
    "sulfite dose": ("addition", {"material": "potassium metabisulfite"}),
    "sulfite needed": ("addition", {"material": "potassium metabisulfite"}),
    "sorbate dose": ("addition", {"material": "potassium sorbate"}),
    "sugar needed": ("addition", {"material": "sugar"}),
    "nitrogen dose": ("addition", {"material": "diammonium phosphate"}),
    "bottles needed": ("bottle", {}),
}
_OUTRIGHT = {"gas": ("carbon dioxide",)}  # measure -> cautions that it calls for whatever the batch


def cautions_for(query: Query, journal: "Journal", today: date) -> tuple[str, ...]:
    """The cautions to show with an answer, a sentence each: dangers always, others not where shown lately.

    Nothing is marked as shown here: an answer only reads. See `turns/care.py` for what marks them.
    """
    keys = [key for what in query.whats for key in _keys(what, query.batches.numbers, journal, today)]
    if not keys:
        return ()
    from journalbot.winemaking.cautions import sentence, to_show

    days = {key: date.fromisoformat(day) for key in keys if (day := journal.marked(f"caution {key}"))}
    return tuple(sentence(key) for key in to_show(dict.fromkeys(keys), days, today))


def _keys(what: What, numbers: Sequence[int], journal: "Journal", today: date) -> tuple[str, ...]:
    outright = _OUTRIGHT.get(what.measure, ())
    if what.measure not in _ACTS:
        return outright
    from journalbot.winemaking.cautions import called_for
    from journalbot.winemaking.record import record_of

    kind, fields = _ACTS[what.measure]
    cellar = journal.cellar()
    batch = int(what.get("batch") or 0) or (numbers[0] if len(numbers) == 1 else 0)
    known = cellar.batches.get(batch)
    records = {batch: record_of(known, journal.entries(batch=batch), today)} if known else {}
    material = {"material": what.get("material")} if what.get("material") and fields else {}
    act = Entry(kind, batch if known else None, today.isoformat(), {**fields, **material})
    return (*outright, *called_for("", [act], records))
