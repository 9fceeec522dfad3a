"""What wine cost: purchases shared out to batches, what a bottle came to, and what is missing from the sum."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache

from journalbot.journal.fold import litres, order_of
from journalbot.model import Entry
from journalbot.vocabulary.closures import CLOSURES
from journalbot.vocabulary.costs import CLOSURE_ITEMS, PARTS, START_AFTER, START_BEFORE
from journalbot.vocabulary.fruits import FRUITS
from journalbot.vocabulary.items import item_of
from journalbot.vocabulary.materials import MATERIALS
from journalbot.vocabulary.varieties import VARIETIES
from journalbot.winemaking.record import last_day, notes_of
from journalbot.winemaking.said import phrases
from journalbot.winemaking.units import UnknownUnit, grams
from journalbot.winemaking.volumes import BOTTLE


@dataclass(frozen=True)
class Share:
    """The part of a purchase that one batch bears, and how that was reckoned."""

    item: str
    amount: float
    currency: str
    how: str
    notes: tuple[int, ...]


@dataclass(frozen=True)
class Unshared:
    """A purchase, or what is left of one, that no batch bears, and why."""

    item: str
    amount: float
    currency: str
    why: str
    notes: tuple[int, ...]


@dataclass(frozen=True)
class BatchCost:
    """What a batch cost as far as is known: totals by currency, cost of a bottle, and what is missing from the sum.

    `bottles` are those filled, `full` the same wine in bottles of 75 cl. `per_bottle` is by those filled: None where
    none were, where nothing was paid, or where it was paid in several currencies.
    """

    batch: int
    shares: tuple[Share, ...]
    bottles: int
    full: float
    missing: tuple[str, ...]

    @property
    def totals(self) -> dict[str, float]:
        """The sum of its shares in each currency."""
        return _sums((s.currency, s.amount) for s in self.shares)

    @property
    def currency(self) -> str | None:
        """The currency of all its shares; None where there is none, or several."""
        return next(iter(self.totals)) if len(self.totals) == 1 else None

    @property
    def per_bottle(self) -> float | None:
        """Cost of a bottle, in `currency`."""
        return self.totals[self.currency] / self.bottles if self.currency and self.bottles else None

    @property
    def notes(self) -> tuple[int, ...]:
        """The notes that the sum rests on."""
        return tuple(dict.fromkeys(n for s in self.shares for n in s.notes))


@dataclass(frozen=True)
class Costs:
    """All batches' costs by number, and what was shared to none: together they are what was paid."""

    batches: Mapping[int, BatchCost]
    unshared: tuple[Unshared, ...]


@dataclass
class _Lot:
    """What is left of a purchase used up bit by bit."""

    entry: Entry
    keys: frozenset[str]
    left: float
    each: float  # money for one


@dataclass(frozen=True)
class _Use:
    """So much of something used for a batch: pieces, packets or grams."""

    entry: Entry
    keys: frozenset[str]
    amount: float
    name: str


@dataclass
class _Sheet:
    """One batch's sums while they are made."""

    shares: list[Share] = field(default_factory=list)
    missing: list[str] = field(default_factory=list)


def costs(entries: Iterable[Entry], currency: str = "USD") -> Costs:
    """Share all purchases among entries out to their batches.

    One that names a batch is borne by it whole; fruit, juice or a kit by the one batch started from it within days;
    corks, bottles and the like by bottles filled since, the first bought first used; yeast and chemicals by what was
    used of them, where both sides say how much. `currency` is that of a purchase which names none.
    """
    known = sorted(entries, key=order_of)
    starts = [e for e in known if e.kind == "start" and e.batch is not None]
    sheets = {e.batch: _Sheet() for e in starts if e.batch is not None}
    lots: list[_Lot] = []
    unshared: list[Unshared] = []
    for e in known:
        price = e.get("price")
        if e.kind != "purchase" or not isinstance(price, int | float):
            continue
        part, why = part_of(str(e.get("item") or "")), ""
        target = e.batch if e.batch in sheets else None
        if target is None and part == "base":
            target, why = _started_from(e, starts)
        if target is not None:
            sheets[target].shares.append(_share(e, float(price), currency, "bought for it"))
        elif part in ("piece", "stuff") and (lot := _lot(e, float(price))):
            lots.append(lot)
        else:
            unshared.append(Unshared(_item(e), float(price), _currency(e, currency), why or _WHY[part], notes_of(e)))
    _use_up(known, lots, sheets, currency)
    unshared += [Unshared(_item(lot.entry), lot.left * lot.each, _currency(lot.entry, currency), "not used yet",
                          notes_of(lot.entry)) for lot in lots if lot.left * lot.each > 0.005]
    return Costs({n: _total(n, sheet, known) for n, sheet in sheets.items()}, tuple(unshared))


_WHY = {"base": "no batch was started from it near that day", "piece": "no count given",
        "stuff": "how much was bought or used is not known by weight or packet", "lasting": "serves for years"}


def spent_by_year(entries: Iterable[Entry], currency: str = "USD") -> dict[str, dict[str, float]]:
    """What was paid in each year, by currency, equipment and all."""
    paid = [e for e in entries if e.kind == "purchase" and isinstance(e.get("price"), int | float)]
    paid.sort(key=order_of)
    return {year: _sums((_currency(e, currency), float(e.get("price"))) for e in paid if e.date[:4] == year)
            for year in dict.fromkeys(e.date[:4] for e in paid)}


def savings(cost: BatchCost, price: float) -> float | None:
    """What a batch saved against buying its wine at so much for 75 cl, in its own currency; below 0 where it cost more.

    None where its cost or bottles are not known. What is missing from the cost is missing here.
    """
    if price < 0:
        raise ValueError(f"the price of a bottle must be 0 or more, not {price:g}")
    total = cost.totals.get(cost.currency or "")
    return price * cost.full - total if total is not None and cost.full else None


@cache
def _bases() -> frozenset[str]:
    return frozenset(s for table in (FRUITS, VARIETIES) for base in table.values() for s in base.spellings)


@cache
def _materials() -> dict[str, str]:
    return {s: name for name, spellings in MATERIALS.items() for s in spellings}


def part_of(item: str) -> str:
    """What a purchase is by its words: "base", "piece", "stuff" or "lasting" (see PARTS).

    The last thing that it names tells: "merlot juice pail" is a base, "juice press" equipment, "wine yeast" stuff.
    """
    sorts = {PARTS.get(item_of()[p], "lasting") for p in _last_named(item, item_of())}
    if sorts:
        return sorts.pop()
    if phrases(item, _bases()):
        return "base"
    return "stuff" if phrases(item, _materials()) else "lasting"


def _last_named(item: str, known: Iterable[str]) -> list[str]:
    table = frozenset(known)
    words = item.lower().split()
    ends = (" ".join(words[k:]) for k in range(len(words)))
    whole = next((end for end in ends if end in table), None)
    return [whole] if whole else sorted(phrases(item, table))[-1:]


def _started_from(purchase: Entry, starts: Sequence[Entry]) -> tuple[int | None, str]:
    """The one batch that was started from what was bought, within days of it; or why there is none."""
    bought = _stems(str(purchase.get("item") or ""))
    near = {e.batch for e in starts if -START_AFTER <= (last_day(e.date) - last_day(purchase.date)).days <= START_BEFORE
            and bought & _stems(" ".join(map(str, e.get("from") or ())))}
    if len(near) == 1:
        return near.pop(), ""
    return None, f"fits batches {', '.join(map(str, sorted(n for n in near if n)))}" if near else ""


def _stems(text: str) -> frozenset[str]:
    words = text.lower().replace(",", " ").split()
    return frozenset(w.rstrip("s") for w in words) - {"of", "the", "a", "fresh", "wine"}


def _item(entry: Entry) -> str:
    return str(entry.get("item") or "something")


def _currency(entry: Entry, usual: str) -> str:
    return str(entry.get("currency") or usual)


def _share(entry: Entry, amount: float, currency: str, how: str, *also: Entry) -> Share:
    return Share(_item(entry), amount, _currency(entry, currency), how, notes_of(entry, *also))


# ---- used up bit by bit


def _lot(purchase: Entry, price: float) -> _Lot | None:
    """A purchase as so many pieces, packets or grams; None where it does not say how many."""
    item, count = str(purchase.get("item") or ""), purchase.get("count")
    keys = _keys(item)
    if not isinstance(count, int | float) or count <= 0 or not keys:
        return None
    amount = _amount(float(count), str(purchase.get("unit") or "piece"), item)
    return _Lot(purchase, keys, amount, price / amount) if amount else None


def _keys(item: str) -> frozenset[str]:
    """What a thing may be used as: materials by name, yeast by "yeast", closures and bottles by their item."""
    materials = {_materials()[p] for p in phrases(item, _materials())}
    return frozenset(materials or {item_of()[p] for p in _last_named(item, item_of())})


def _amount(count: float, unit: str, material: str) -> float | None:
    """An amount as grams, or as pieces where it is counted; None where the unit tells neither."""
    if unit in ("piece", "packet", "tablet", "bottle"):
        return count
    named = next((_materials()[p] for p in sorted(phrases(material, _materials()))), material)
    try:
        return grams(count, unit, named).value
    except (UnknownUnit, ValueError):
        return None


def _uses(entries: Sequence[Entry]) -> Iterator[_Use]:
    for e in entries:
        count = e.get("count") if e.kind == "bottle" else e.get("amount")
        if e.batch is None or not isinstance(count, int | float) or count <= 0:
            continue
        if e.kind == "bottle":
            yield _Use(e, frozenset(("bottles",)), float(count), "bottles")
            if closure := _closure_item(str(e.get("closure") or "")):
                yield _Use(e, frozenset((closure,)), float(count), closure)
        elif e.kind in ("addition", "pitch", "oak") and e.get("material") != "water":
            name = str(e.get("material") or e.get("yeast") or {"pitch": "yeast"}.get(e.kind, e.kind))
            keys = frozenset((e.kind.replace("pitch", "yeast"),)) if e.kind != "addition" else _keys(name)
            if size := _amount(float(count), str(e.get("unit") or ""), name):
                yield _Use(e, keys, size, name)


def _closure_item(closure: str) -> str | None:
    kinds = {kind for kind, spellings in CLOSURES.items() if closure.lower() in spellings}
    return next((CLOSURE_ITEMS.get(kind) for kind in kinds), None) if closure else None


def _use_up(entries: Sequence[Entry], lots: list[_Lot], sheets: Mapping[int, _Sheet], currency: str) -> None:
    """Charge every use to what was bought for it by then, the first bought first; say what no purchase covers."""
    for use in _uses(entries):
        sheet, wanted = sheets.get(use.entry.batch or 0), use.amount
        if sheet is None or _bought_for(use, entries):
            continue
        for lot in lots:
            fits = lot.keys & use.keys and lot.left > 0 and lot.entry.date <= use.entry.date and _alike(lot, use)
            taken = min(wanted, lot.left) if fits else 0.0
            if taken > 0:
                lot.left -= taken
                wanted -= taken
                sheet.shares.append(_share(lot.entry, taken * lot.each, currency, f"{taken:.4g} used", use.entry))
        if wanted > 1e-9:
            of = "" if wanted == use.amount else f" for {wanted:.4g} of {use.amount:.4g}"
            sheet.missing.append(f"{use.name}{of}")


def _alike(lot: _Lot, use: _Use) -> bool:
    """Whether both are weighed, or both counted: a packet of so many grams is not known."""
    weighed = {"g", "kg", "mg", "oz", "lb", "tsp", "tbsp", "cup", "ml", "L"}
    units = (str(lot.entry.get("unit") or "piece"), str(use.entry.get("unit") or "piece"))
    return use.entry.kind == "bottle" or len({unit in weighed for unit in units}) == 1


def _bought_for(use: _Use, entries: Sequence[Entry]) -> bool:
    """Whether a purchase that names the batch already covers what was used."""
    own = [e for e in entries if e.kind == "purchase" and e.batch == use.entry.batch and e.get("price") is not None]
    return any(_keys(str(e.get("item") or "")) & use.keys for e in own)


# ---- the sum


def _total(number: int, sheet: _Sheet, entries: Sequence[Entry]) -> BatchCost:
    own = [e for e in entries if e.batch == number]
    counted = [(int(e.get("count")), e) for e in own if e.kind == "bottle" and isinstance(e.get("count"), int | float)]
    full = sum(n * (litres(e.get("size"), e.get("unit")) or BOTTLE) / BOTTLE for n, e in counted)
    missing = list(dict.fromkeys(sheet.missing))
    if not any(part_of(s.item) == "base" for s in sheet.shares):
        missing.insert(0, "what it was made from")
    missing += [f"wine of batch {part['batch']} blended in" for e in own if e.kind == "blend"
                for part in e.get("with") or () if isinstance(part, dict) and part.get("batch")]
    return BatchCost(number, tuple(sheet.shares), sum(n for n, _ in counted), full, tuple(missing))


def _sums(amounts: Iterable[tuple[str, float]]) -> dict[str, float]:
    out: dict[str, float] = {}
    for currency, amount in amounts:
        out[currency] = out.get(currency, 0.0) + amount
    return out
