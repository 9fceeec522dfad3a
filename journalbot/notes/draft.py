"""What a kind's reader makes of a clause, before its batch is settled; and what it may look at."""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from journalbot.journal.cellar import Cellar
from journalbot.language.amounts import Amount
from journalbot.language.lexicon import Mention
from journalbot.language.names import Names
from journalbot.language.text import Text
from journalbot.model import Settings
from journalbot.notes.clauses import Clause


@dataclass(slots=True)
class Draft:
    """An entry in the making: its fields, the clause it came from, and how sure its batch must be."""

    kind: str
    clause: Clause
    first: int  # the tokens it accounts for
    last: int
    fields: dict[str, Any] = field(default_factory=dict)
    # "batch": ask where none is clear; "maybe": drop it then; "maybe-null": file it for the cellar then; "none": it is
    # of no one batch; "tied": of one only where the clause names it
    needs: str = "batch"
    batches: tuple[int, ...] = ()  # where the kind itself knows
    ref: Mention | None = None  # the reference that is its own, of several in the clause
    dates: tuple[str, ...] = ()  # where not the clause's
    doubt: str | None = None
    ask: str = ""  # "value", "quantity": what must be asked before it can be filed


@dataclass(slots=True)
class Scene:
    """The note as a whole, and the journal that it is read against."""

    text: Text
    clauses: list[Clause]
    on: datetime.date
    settings: Settings
    names: Names
    cellar: Cellar
    doses: Mapping[int, Amount]
    given: Mapping[str, Any] = field(default_factory=dict)
    started: int | None = None  # the batch that this note starts
    start_clauses: tuple[int, ...] = ()  # clauses (by first token) that describe the start

    def clause_before(self, clause: Clause) -> Clause | None:
        """The clause before, in the same sentence."""
        i = self.clauses.index(clause)
        return self.clauses[i - 1] if i and self.clauses[i - 1].sentence == clause.sentence else None

    def sentence(self, clause: Clause) -> list[Clause]:
        """The clauses of the same sentence."""
        return [c for c in self.clauses if c.sentence == clause.sentence]


def amount_fields(amount: Amount | None) -> dict[str, Any]:
    """An amount as fields of an entry."""
    if amount is None:
        return {}
    out: dict[str, Any] = {"amount": amount.value}
    if amount.unit:
        out["unit"] = amount.unit
    if amount.approx:
        out["approx"] = True
    return out
