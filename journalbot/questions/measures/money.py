"""What was paid: in all, for an item, for a batch, per bottle."""


from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Fact, Measure, fact_of
from journalbot.questions.says import number_said
from journalbot.vocabulary.items import item_of
from journalbot.vocabulary.questions import words

_SIGNS = {"USD": "$", "EUR": "€", "GBP": "£"}
_JUICE = words("juice juices pail pails must concentrate")
_NOT_GRAPES = _JUICE | words("kit kits honey yeast corks cork bottles bottle")


def money_said(value: float, currency: str) -> str:
    """A sum of money: `$112.00`, `55.00 €`."""
    sign = _SIGNS.get(currency)
    amount = f"{value:,.2f}"
    return f"{sign}{amount}" if sign in ("$", "£") else f"{amount} {sign or currency}"


def _stems(text: str) -> frozenset[str]:
    return frozenset(
        w[:-1] if w.endswith("s") and len(w) > 3 else w
        for w in text.casefold().replace(",", " ").replace("-", " ").split()
    )


_IDLE = words("the a an my of for some all new and")


def item_fits(entry: Entry, wanted: str, case: Case) -> bool:
    """Whether a purchase is of the item asked for, by its words or by what kind of thing it is."""
    item = str(entry.get("item") or "")
    words = _stems(wanted) - _IDLE
    if words and words <= _stems(item):
        return True
    batch = case.cellar.batches.get(entry.batch or 0)
    told = _stems(" ".join((batch.name or "", *batch.fruit))) if batch else frozenset()
    if words & told and words - told and words - told <= _stems(item):
        return True  # "the Purple Toes grapes": the grapes bought for that wine
    sort = item_of()
    if sort.get(wanted.casefold()) and sort.get(wanted.casefold()) in {
        sort.get(item.casefold()),
        sort.get(item.casefold().split()[-1] if item else ""),
    }:
        return True
    base = " ".join(case.cellar.batches[entry.batch].fruit).casefold() if entry.batch in case.cellar.batches else ""
    if words <= _stems("juice pail"):
        return bool(_stems(item) & _stems("juice pail must")) or (
            bool(_stems(item) & _stems(base)) and bool(_stems(base) & _stems("juice pail"))
        )
    if words <= _stems("grapes fruit"):
        return bool(_stems(item) & _stems("grapes fruit")) or (
            bool(_stems(item) & _stems(base)) and not (_stems(f"{item} {base}") & _stems(" ".join(_NOT_GRAPES)))
        )
    return False


def spent(case: Case) -> list[Fact]:
    """What was paid, purchase by purchase, for the item asked for."""
    out = []
    for e in case.kind("purchase"):
        price = e.get("price")
        if not isinstance(price, int | float) or (
            case.of.get("item") and not any(item_fits(e, wanted, case) for wanted in case.of["item"].split(" or "))
        ):
            continue
        currency = str(e.get("currency") or case.settings.currency)
        out.append(fact_of(e, float(price), currency, f"{money_said(float(price), currency)} for {_bought(e)}"))
    return out


def _bought(entry: Entry) -> str:
    count, unit = entry.get("count"), entry.get("unit")
    size = f"{number_said(count)} {unit + ' of ' if unit else ''}" if isinstance(count, int | float) else ""
    return f"{size}{entry.get('item') or 'something'}"


def _bought_facts(case: Case) -> list[Fact]:
    out = []
    for e in case.kind("purchase"):
        if case.of.get("item") and not any(item_fits(e, wanted, case) for wanted in case.of["item"].split(" or ")):
            continue
        price = e.get("price")
        paid = (
            f" for {money_said(float(price), str(e.get('currency') or case.settings.currency))}"
            if isinstance(price, int | float)
            else ""
        )
        count = e.get("count") if e.get("count") is not None else 1.0  # "a kit"
        out.append(fact_of(e, count, str(e.get("unit") or ""), f"{_bought(e)}{paid}"))
    return out


MEASURES: tuple[Measure, ...] = (
    Measure(
        "money",
        "money spent[ on {item}]",
        ("purchase",),
        spent,
        (("money",), ("money", "sum"), ("how much", "money")),
        ("how much", "sum", "addition", "is", "made", "what"),
        sort="money",
        usual="sum",
        by_entry=True,
        narrows=("item",),
        scope="any",
    ),
    Measure(
        "bought",
        "what was bought[: {item}]",
        ("purchase",),
        _bought_facts,
        (("buy",), ("how much", "buy"), ("how many", "buy"), ("when", "buy"), ("what", "buy")),
        ("how much", "sum", "addition"),
        narrows=("item",),
        scope="any",
        done="bought",
        counts="sum",
        by_entry=True,
    ),
)
