"""Batches, vessels and names as kept in tables, so that a journal of any age opens at once."""

import json
from operator import attrgetter
from typing import TYPE_CHECKING, Any

from journalbot.journal.cellar import Cellar, Known
from journalbot.journal.fold import FOLD
from journalbot.model import BATCH_FIELDS, Batch, Held

if TYPE_CHECKING:
    from journalbot.journal.filing import Filing

# A batch is kept as the list of its fields; `vessels` follows from all batches together and is made on loading.
_FIELDS = tuple(name for name in BATCH_FIELDS if name != "vessels")
_STATE = attrgetter(*_FIELDS)
_MADE = json.dumps([FOLD, *_FIELDS])


def load(journal: "Filing") -> Cellar | None:
    """The cellar from its tables; None where another version of the fold wrote them."""
    made = journal.sql("SELECT value FROM settings WHERE key = 'fold'").fetchone()
    if made is None or made[0] != _MADE:
        return None if journal.count_entries() else Cellar()
    cellar = Cellar()
    for sort, key, name, uses, first in journal.sql("SELECT sort, key, name, uses, first FROM names"):
        cellar.names.setdefault(sort, {})[key] = Known(name, uses, first)
    for key, name, uses, first, size, said in journal.sql("SELECT key, name, uses, first, litres, said FROM vessels"):
        date, note, position = json.loads(said) if said else ("", 0, 0)
        cellar.known_vessels[key] = Known(name, uses, first, size, (date, note, position))
    states = [state for (state,) in journal.sql("SELECT state FROM batches ORDER BY number")]
    cellar.settle(map(_batch, json.loads(f"[{','.join(states)}]")))
    return cellar


def save(journal: "Filing", cellar: Cellar, batches: set[int], names: set[tuple[str, str]], vessels: set[str]) -> None:
    """Write what a turn has changed."""
    journal.sql("INSERT INTO settings VALUES ('fold', ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value "
                "WHERE value <> excluded.value", (_MADE,))
    for number in batches:
        if batch := cellar.batches.get(number):
            journal.sql("INSERT OR REPLACE INTO batches VALUES (?, ?)", (number, _state(batch)))
        else:
            journal.sql("DELETE FROM batches WHERE number = ?", (number,))
    for sort, key in names:
        known = cellar.names[sort][key]
        journal.sql("INSERT OR REPLACE INTO names VALUES (?, ?, ?, ?, ?)",
                    (sort, key, known.name, known.uses, known.first))
    for key in vessels:
        known = cellar.known_vessels[key]
        said = json.dumps(known.said) if known.litres is not None else None
        journal.sql("INSERT OR REPLACE INTO vessels VALUES (?, ?, ?, ?, ?, ?)",
                    (key, known.name, known.uses, known.first, known.litres, said))


def rebuild(journal: "Filing") -> Cellar:
    """Make all projections anew from the entries, in one transaction."""
    with journal.turn():
        cellar = compute(journal)
        for table in ("batches", "names", "vessels"):
            journal.sql(f"DELETE FROM {table}")
        names = {(sort, key) for sort, table in cellar.names.items() for key in table}
        save(journal, cellar, set(cellar.batches), names, set(cellar.known_vessels))
    return cellar


def compute(journal: "Filing") -> Cellar:
    """The cellar from the entries alone, not from its tables."""
    cellar = Cellar()
    for entry, stands in journal.all_entries():
        cellar.meet(entry, int(stands))
    cellar.settle(filter(None, map(journal.folded, journal.batch_numbers())))
    return cellar


def differences(kept: Cellar, made: Cellar) -> list[str]:
    """How two cellars of the same entries differ, in words; nothing where they agree."""
    out = [f"batch {n}" for n in sorted(set(kept.batches) | set(made.batches))
           if kept.batches.get(n) != made.batches.get(n)]
    for sort in sorted(set(kept.names) | set(made.names)):
        if _uses(kept.names.get(sort, {})) != _uses(made.names.get(sort, {})):
            out.append(f"names ({sort})")
    if _uses(kept.known_vessels) != _uses(made.known_vessels):
        out.append("vessels")
    return out


def _uses(table: dict[str, Known]) -> dict[str, tuple[int, float | None]]:
    return {key: (known.uses, known.litres) for key, known in table.items() if known.uses > 0}


def _state(batch: Batch) -> str:
    return json.dumps(_STATE(batch), ensure_ascii=False, separators=(",", ":"))


def _batch(state: list[Any]) -> Batch:
    batch = Batch(**dict(zip(_FIELDS, state, strict=True)))
    date, note, position = batch.latest  # a list, as JSON has it
    batch.fruit, batch.latest = tuple(batch.fruit), (date, note, position)
    batch.held = {key: Held(*value) for key, value in batch.held.items()}
    return batch
