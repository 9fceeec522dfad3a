"""What a batch cost with its share of what was bought for all, what a bottle of it came to, and what it saved."""

from journalbot.questions.measures.base import Case, Fact, Measure, notes_of
from journalbot.questions.measures.money import money_said, spent
from journalbot.questions.says import join, number_said

_KINDS = ("purchase", "start", "bottle", "addition", "pitch", "oak", "blend")
_MOST_BATCHES = 200  # beyond so many, only what was bought for the batch itself is counted: sharing looks at them all


def _reckoned(case: Case) -> tuple[list[Fact], float | None, list[str], tuple[int, ...]]:
    """What was bought for the batch; the sum with its share of the rest, what is not in it, and the notes of it all."""
    direct = spent(case)
    if case.of.get("item") or len(case.cellar.batches) > _MOST_BATCHES or case.number is None:
        return direct, None, [], tuple(n for f in direct for n in f.notes)
    from journalbot.winemaking.cost import costs

    entries = case.source.entries(batch=..., kinds=_KINDS)
    cost = costs(entries, case.settings.currency).batches.get(case.number)
    if cost is None or cost.currency is None:
        return direct, None, [], tuple(n for f in direct for n in f.notes)
    return direct, cost.totals[cost.currency], list(cost.missing), cost.notes


def _total(facts: list[Fact]) -> tuple[float, str] | None:
    """Their sum and currency; None where there is none, or several."""
    currencies = {f.unit for f in facts}
    return (sum(float(f.value or 0) for f in facts), currencies.pop()) if len(currencies) == 1 else None


def _not_in_it(missing: list[str]) -> str:
    return f"; not in it: {join(missing)}" if missing else ""


def _cost(case: Case) -> list[Fact]:
    """What a batch cost: what was bought for it, and the sum with its share of what was bought for all."""
    direct, shared, missing, notes = _reckoned(case)
    paid = _total(direct)
    if paid is None and shared is None:
        return direct
    currency = paid[1] if paid else case.settings.currency
    said = money_said(paid[0], currency) if paid else ""
    working = join([f.text for f in direct])
    if shared is not None and (paid is None or shared > paid[0] + 0.005):
        whole = f"{money_said(shared, currency)} with its share of what was bought for all"
        said = f"{said} bought for it; {whole}" if said else whole
    value = shared if shared is not None else paid[0] if paid else None
    told = f"{working}{_not_in_it(missing)}".removeprefix("; ")
    return [Fact(case.number, case.batch.started, value, currency, said, notes, told)]


def _per_bottle(case: Case) -> list[Fact]:
    direct, shared, missing, notes = _reckoned(case)
    bottles = [e for e in case.kind("bottle") if e.get("count")]
    made = sum(float(e.get("count")) for e in bottles)
    paid = _total(direct)
    if not made or (paid is None and shared is None):
        return []
    currency = paid[1] if paid else case.settings.currency
    parts = [f"{money_said(paid[0] / made, currency)} a bottle"] if paid else []
    if shared is not None and (paid is None or shared > paid[0] + 0.005):
        parts.append(f"{money_said(shared / made, currency)} a bottle with its share of what was bought for all")
    only = "; only what was bought for this batch is in it" if shared is None else _not_in_it(missing)
    working = f"{join([*(f.text for f in direct), f'{number_said(made)} bottles'])}{only}"
    value = round((shared if shared is not None else paid[0] if paid else 0.0) / made, 2)
    return [
        Fact(
            case.number,
            bottles[-1].date,
            value,
            currency,
            "; ".join(parts),
            (*notes, *notes_of(*bottles)),
            working,
            order=bottles[-1].place,
        )
    ]


def _saved(case: Case) -> list[Fact]:
    """What a batch saved against buying its wine at the price of a bottle that the question gives."""
    from journalbot.winemaking.cost import costs, savings

    price, _, currency = case.of.get("price", "").partition(" ")
    if not price and case.settings.bottle_price is not None:
        price, currency = f"{case.settings.bottle_price:g}", case.settings.currency
    if case.number is None:
        return []
    if not price:
        text = "a price to compare with is not known: ask “… at 15 a bottle”, or say “a bought bottle costs 15”"
        return [Fact(case.number, "", None, "", text)]
    cost = costs(case.source.entries(batch=..., kinds=_KINDS), case.settings.currency).batches.get(case.number)
    found = savings(cost, float(price)) if cost else None
    if cost is None or found is None or cost.currency is None:
        return []
    working = (
        f"{number_said(cost.full, 1)} bottles of 75 cl at {money_said(float(price), currency)}, less "
        f"{money_said(cost.totals[cost.currency], cost.currency)}{_not_in_it(list(cost.missing))}"
    )
    text = f"{money_said(abs(found), cost.currency)} {'saved' if found >= 0 else 'more than that'}"
    return [Fact(case.number, case.batch.bottled or "", round(found, 2), cost.currency, text, cost.notes, working)]


MEASURES: tuple[Measure, ...] = (
    Measure("cost", "what it cost", ("purchase",), _cost, (), sort="money"),
    Measure(
        "cost per bottle",
        "cost per bottle[, {item} only]",
        ("purchase", "bottle"),
        _per_bottle,
        (("money", "per bottle"), ("per bottle",), ("money", "bottles", "per bottle")),
        ("how much", "made", "bottles"),
        sort="money",
        narrows=("item",),
    ),
    Measure(
        "saved",
        "money saved[ against {price} a bottle]",
        ("purchase", "bottle"),
        _saved,
        (("save",), ("save", "price"), ("save", "per bottle"), ("save", "price", "per bottle")),
        ("how much", "made", "bottles", "per bottle", "value", "money"),
        sort="money",
        narrows=("price",),
    ),
)
