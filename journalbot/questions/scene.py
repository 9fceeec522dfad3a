"""The journal as a question sees it: which batches, which of their entries, which days, and the facts these give."""

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Any

from journalbot.journal.cellar import Cellar
from journalbot.language.names import Names
from journalbot.language.text import understand
from journalbot.model import Batch, Entry, Settings
from journalbot.questions.measures import MEASURES, Case, Fact, Measure
from journalbot.questions.measures.base import POURED, Source, days_between
from journalbot.questions.measures.standing import STATES, as_of
from journalbot.questions.measures.vessels import keys_of
from journalbot.questions.query import Batches, Condition, What, When
from journalbot.questions.reduce import in_unit, reduce_facts
from journalbot.questions.says import OPENING_DAYS
from journalbot.questions.whom import colour_of

SHOWN = 40  # batches of a list that are shown with what is known of them
_BOUGHT = frozenset(("store", "shop", "bought", "shop-bought", "store-bought", "commercial", "supermarket"))
_NEAR = 3  # days within which a reading still belongs to an act


def day_meant(when: When) -> bool:
    """Whether one day is meant."""
    return bool(when.until) and when.since == when.until


class Incomparable(Exception):
    """A condition whose value has a unit that the batch's facts cannot be brought to."""


class Scene:
    """The journal as a question sees it. Entries are fetched once for each set of batches and kinds."""

    def __init__(self, source: Source, cellar: Cellar, names: Names, settings: Settings, today: str) -> None:
        self.source, self.cellar, self.names, self.settings, self.today = source, cellar, names, settings, today
        self._kept: dict[tuple[Any, ...], dict[int | None, list[Entry]]] = {}

    def entries(
        self, numbers: Sequence[int] | None, measure: Measure, when: When | None
    ) -> dict[int | None, list[Entry]]:
        """The entries that a measure rests on, by batch: of these batches only, unless `numbers` is None."""
        since = until = quantity = None
        if measure.by_entry and when and not when.anchor:
            # By the month, so that an entry dated no closer than that is not lost; the fact's own day decides later.
            since, until = when.since[:7] or None, when.until[:7] or None
        if measure.by_entry and measure.kinds == ("reading",):
            quantity = measure.quantity
        key = (None if numbers is None else tuple(numbers), measure.kinds, since, until, quantity)
        if key not in self._kept:
            batch = ... if numbers is None else list(numbers)
            kinds = None if quantity else measure.kinds
            found: dict[int | None, list[Entry]] = {}
            if measure.kinds:
                for e in self.source.entries(batch=batch, kinds=kinds, since=since, until=until, quantity=quantity):
                    found.setdefault(e.batch, []).append(e)
            if POURED in measure.kinds:
                for number, poured in self.poured().items():
                    if number in found:
                        found[number] = [*found[number], *poured]
            self._kept[key] = found
        return self._kept[key]

    def poured(self) -> dict[int, list[Entry]]:
        """Toppings up with whole bottles, by the batch of the journal that the bottles were of."""
        rows = self.source.sql(
            "SELECT note FROM entries INDEXED BY entries_poured "
            "WHERE kind = 'top_up' AND fields ->> 'unit' = 'bottle' AND withdrawn_by IS NULL"
        )
        out: dict[int, list[Entry]] = {}
        for (note,) in rows:
            for e in self.source.entries(note=note, kinds=["top_up"]):
                if e.get("unit") == "bottle" and isinstance(e.get("amount"), int | float):
                    owner = self._owner(str(e.get("with") or ""), e)
                    out.setdefault(owner or 0, []).append(e)
        return out

    def _owner(self, called: str, entry: Entry) -> int | None:
        """The one batch in bottles by that day that is called so; None for wine that was bought, or of several."""
        if len(entry.date) < 10 or set(called.lower().split()) & _BOUGHT:
            return None
        text = understand(called, self.names, date.fromisoformat(entry.date), self.settings)
        fits = {n for m in text.of("batch") for n in m.value.fits}
        bottled = [n for n in sorted(fits) if (day := self.cellar.batches[n].bottled) and day <= entry.date]
        return bottled[0] if len(bottled) == 1 else None

    def facts(
        self, what: What, numbers: Sequence[int] | None, when: When | None = None
    ) -> dict[int | None, list[Fact]]:
        """The facts of a measure by batch; batches without any are left out."""
        measure = MEASURES[what.measure]
        if measure.scope == "none":
            return _by_batch(
                self._within(
                    measure.compute(self._case(None, self.entries(None, measure, None).get(None, []), what)), when, None
                )
            )
        found = self.entries(numbers, measure, when)
        owners: list[int | None] = [*sorted(n for n in (found if numbers is None else numbers) if n is not None)]
        if measure.scope == "any" and numbers is None:
            owners.append(None)
        elif not measure.kinds or what.measure == "where":  # told from what the batch is, not from its entries
            owners = list[int | None](numbers if numbers is not None else sorted(self.cellar.batches))
        out: dict[int | None, list[Fact]] = {}
        for number in owners:
            facts = self._within(measure.compute(self._case(number, found.get(number, []), what)), when, number)
            if facts:
                out[number] = facts
        return out

    def _case(self, number: int | None, entries: Sequence[Entry], what: What) -> Case:
        return Case(
            number,
            entries,
            {**dict(MEASURES[what.measure].fixed), **dict(what.of)},
            self.today,
            self.settings,
            self.cellar,
            self.source,
        )

    # ---- which batches

    def batches(
        self, which: Batches, when: When
    ) -> tuple[list[int] | None, list[tuple[Condition, dict[int | None, list[Fact]]]]]:
        """The batches meant (None: all of them), and for each condition the facts that it was judged by."""
        if which.vessel:
            return self.in_vessel(which.vessel, when), []
        if not which.described:
            return (list(which.numbers), []) if which.numbers else (None, [])
        numbers = list(which.numbers) or sorted(self.cellar.batches)
        day = when.until if which.state and day_meant(when) else ""
        numbers = [n for n in numbers if n in self.cellar.batches and self._fits(self.cellar.batches[n], which, day)]
        judged = []
        narrow = numbers if which.numbers or which.colours or which.years or which.state else None
        told: list[Condition] = []  # those that only ask whether there is any such entry
        for condition in which.conditions:
            if narrow is None and not (when or condition.since or condition.until) and self._plain(condition):
                having = self._having(MEASURES[condition.what.measure])
                numbers = [n for n in numbers if (n in having) == (condition.test == "some")]
                told.append(condition)
                continue
            if narrow is None and not (when or condition.since or condition.until) and self._of_a_score(condition):
                scored = self._scoring(condition)
                numbers = [n for n in numbers if n in scored]
                told.append(condition)
                continue
            facts = self.facts(condition.what, narrow, When(condition.since, condition.until) or when)
            numbers = [n for n in numbers if self.meets(condition, facts.get(n, []))]
            judged.append((condition, facts))
        judged += [(c, self.facts(c.what, numbers[:SHOWN]) if c.test != "none" else {}) for c in told]
        return numbers, judged

    def _plain(self, condition: Condition) -> bool:
        """Whether a condition holds of every batch with an entry of a kind, and there are many batches to judge."""
        measure = MEASURES[condition.what.measure]
        plain = measure.each and not condition.what.of and condition.test in ("some", "none") and not condition.method
        return plain and len(self.cellar.batches) > SHOWN

    def _having(self, measure: Measure) -> set[int]:
        """The batches that have an entry of a measure's kinds."""
        marks = ", ".join("?" * len(measure.kinds))
        rows = self.source.sql(
            f"SELECT DISTINCT batch FROM entries WHERE kind IN ({marks}) AND withdrawn_by IS NULL", measure.kinds
        )
        return {n for (n,) in rows if n is not None}

    def _of_a_score(self, condition: Condition) -> bool:
        """Whether a condition holds where any one score meets it, and there are many batches to judge."""
        return condition.what == What("score") and not condition.method and len(self.cellar.batches) > SHOWN

    def _scoring(self, condition: Condition) -> set[int]:
        """The batches with a score that meets a condition: each score that was ever given is judged once."""
        given = "fields ->> 'score'", "fields ->> 'out_of'"
        of = "FROM entries WHERE kind = 'taste' AND withdrawn_by IS NULL AND batch IS NOT NULL"
        rows = self.source.sql(f"SELECT batch, {given[0]}, {given[1]} {of}")
        met: dict[tuple[float, Any], bool] = {}
        out: set[int] = set()
        for batch, score, out_of in rows:
            if not isinstance(score, int | float):
                continue
            if (score, out_of) not in met:
                fact = Fact(batch, "", float(score), f"/{out_of:g}" if out_of else "")
                met[score, out_of] = self.meets(condition, [fact])
            if met[score, out_of]:
                out.add(batch)
        return out

    def in_vessel(self, name: str, when: When) -> list[int]:
        """The batches that are in a vessel, or that have been where a time is spoken of or none is there now."""
        keys = keys_of(self.cellar, name)
        now = [b.number for key in keys for b in self.cellar.in_vessel(key)]
        return sorted(set(now)) if now and not when else sorted(self.held_in(name))

    def held_in(self, name: str) -> dict[int, list[Fact]]:
        """The stays of every batch that has been in a vessel."""
        found = self.facts(What("held", (("vessel", name),)), None)
        return {n: facts for n, facts in found.items() if n is not None}

    def while_in(self, name: str, facts: dict[int | None, list[Fact]]) -> dict[int | None, list[Fact]]:
        """The facts of the days on which their batch was in a vessel."""
        stays = self.held_in(name)
        return {
            n: inside
            for n, found in facts.items()
            if (inside := [f for f in found if any(s.date <= f.date <= s.until for s in stays.get(n or 0, ()))])
        }

    def _fits(self, batch: Batch, which: Batches, day: str = "") -> bool:
        if which.colours and colour_of(batch, self.names) not in which.colours:
            return False
        if which.years and batch.year not in which.years:
            return False
        if day and day < self.today:  # how it stood then
            return bool(batch.started) and batch.started <= day and STATES[which.state](as_of(batch, day))
        return not which.state or STATES[which.state](batch)

    def meets(self, condition: Condition, facts: list[Fact]) -> bool:
        """Whether the facts of a batch meet a condition; Incomparable where their unit does not allow to tell."""
        real = [f for f in facts if not f.bare]
        if condition.test == "some":
            return bool(real)
        if condition.test == "none":
            return not real
        if condition.method == "count" or (condition.unit == "times" and not condition.method):
            return _compare(condition.test, float(len(real)), condition.value)
        reduced = (
            reduce_facts(real, condition.method, MEASURES[condition.what.measure], self.settings)
            if condition.method
            else real
        )
        values = [v for f in reduced if (v := in_unit(f, condition.unit)) is not None]
        if reduced and not values:
            raise Incomparable(condition)
        return any(_compare(condition.test, v, condition.value) for v in values)

    # ---- which days

    def _within(self, facts: list[Fact], when: When | None, number: int | None) -> list[Fact]:
        if not when or not facts:
            return facts
        if when.anchor:
            return self._by_anchor(facts, when, number)
        return [f for f in facts if _overlaps(f, when.since, when.until)]

    def span_of(self, when: When, numbers: Sequence[int] = ()) -> When:
        """The days that a span around an anchor comes to: one of the batches asked about, unless it has its own."""
        if not when.anchor or when.relation in ("at", "before", "after", *OPENING_DAYS):
            return when
        days = self._anchor_days(when, list(when.of.numbers or numbers) or None)
        if not days:
            return when
        day = date.fromisoformat(days[-1])
        if when.relation == "week":
            first = day - timedelta(day.weekday())
            return When(first.isoformat(), (first + timedelta(6)).isoformat())
        size = {"day": 10, "month": 7, "year": 4}[when.relation]
        return When(days[-1][:size], days[-1][:size])

    def _anchor_days(self, when: When, numbers: list[int] | None) -> list[str]:
        facts = self.facts(What(when.anchor, when.narrow), numbers)
        return sorted(f.date for found in facts.values() for f in found if len(f.date) == 10)

    def _by_anchor(self, facts: list[Fact], when: When, number: int | None) -> list[Fact]:
        numbers = list(when.of.numbers) or ([number] if number is not None else None)
        anchors = [f for found in self.facts(What(when.anchor, when.narrow), numbers).values() for f in found if f.date]
        if not anchors:
            return []
        if days := OPENING_DAYS.get(when.relation):
            since = anchors[0].date
            return [f for f in facts if (gap := days_between(since, f.date)) is not None and 0 <= gap < days]
        if when.relation == "before":
            return [f for f in facts if (f.date, f.order) <= (anchors[0].date, anchors[0].order)]
        if when.relation == "after":
            last = anchors[-1]
            # What the same note tells further on came after: "2 kg sugar, now 1.086".
            return [f for f in facts if (f.date, f.order) > (last.date, last.order)]
        same = [
            f
            for f in facts
            if any((set(f.notes) & set(a.notes) and f.date == a.date) or f.date == a.date for a in anchors)
        ]
        if same:
            return same
        near = [
            (abs(days_between(f.date, a.date) or 99), f)
            for f in facts
            for a in anchors
            if len(f.date) == len(a.date) == 10
        ]
        return [f for gap, f in near if gap == min(g for g, _ in near) and gap <= _NEAR]


def _by_batch(facts: list[Fact]) -> dict[int | None, list[Fact]]:
    out: dict[int | None, list[Fact]] = {}
    for f in facts:
        out.setdefault(f.batch, []).append(f)
    return out


def _overlaps(fact: Fact, since: str, until: str) -> bool:
    if not fact.date:
        return False
    end = fact.until or fact.date
    n, m = len(end), len(fact.date)
    return (not since or end >= since[:n]) and (not until or fact.date <= until[:m])


def _compare(test: str, value: float, limit: float) -> bool:
    return {
        "over": value > limit,
        "under": value < limit,
        "at least": value >= limit,
        "at most": value <= limit,
        "exactly": abs(value - limit) < 1e-9,
    }[test]
