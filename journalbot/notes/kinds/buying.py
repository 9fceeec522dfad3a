"""Purchases: what, how many, and the total paid."""

from collections.abc import Iterator

from journalbot.language.amounts import Amount, tidy
from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.notes.kinds.start_fields import MADE_OF

_EACH = {"each", "apiece", "ea", "per", "a"}
_LEADING = {
    "bought", "buy", "got", "picked", "up", "ordered", "paid", "pay", "for", "spent", "on", "the", "a", "an", "some",
    "and", "also", "new", "from", "today", "i", "we", "me", "it", "they", "were", "was", "is", "cost", "came", "to",
    "of", "my", "our", "at", "grabbed", "another", "more", "him", "her", "them", "=", ":", "-", ",", "(", "which",
    "had", "have", "did", "do", "least", "started", "starting", "collected", "fetched", "that", "total", "with", "only",
    "just", "then", "plus", "in", "this", "set", "back", "are", "those", "these", "&", "about",
}
_TRAILING = {
    "for", "at", "cost", "costs", "were", "was", "came", "to", "is", "@", "=", ":", "-", ",", "(", "set", "me", "back",
    "paid", "from", "only", "about", "of", "in", "all", "and", "–", "ran", "us", "total", "a", "now", "i", "we", "are",
}
_REDUCED = (["sale"], ["offer"], ["special"], ["discount"])
_STOP = {"from", "at", "off", "via", "because", "since", "so", "this", "for", "("}
_CONTAINERS = {"bag", "box", "pack", "packet", "case", "pot", "jar", "tub", "carton", "crate"}
_VESSELS = {"jug", "carboy", "demijohn", "bucket", "pail", "fermenter", "barrel", "tank", "bin", "jar"}
_SUM_REACH = 4  # tokens between the price of one and the sum
_UNITS = {"lb", "kg", "oz", "g", "gal", "L", "ml", "packet", "tablet", "bottle", "piece", "qt", "pt"}


def read(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """A purchase for each sum of money in a clause."""
    if clause.mood in ("planned", "told", "asked", "supposed", "denied"):
        return
    money = clause.of("money")
    for k, m in enumerate(money):
        if _of_one(m, clause):
            continue  # "$2.25/kg = $90": the sum that follows is the price
        if clause.has("worth", "refund", "save", "saved", "owes", "bet"):
            return
        if clause.has("sold") and not clause.has("me", "us"):
            return
        unit_price = money[k - 1] if k and _of_one(money[k - 1], clause) else None
        start = k - 1 if unit_price else k
        first = money[start - 1].last if start else clause.first
        yield _purchase(m, unit_price, clause, scene, first, money[k + 1].first if k + 1 < len(money) else clause.last)


def _of_one(m: Mention, clause: Clause) -> bool:
    """Whether a price is that of one, with the sum behind it: `@ $2.25/kg = $90`, `$2.80/kg ($229.60)`."""
    total = next((t for t in clause.of("money") if t.first > m.first), None)
    between = clause.text.words[m.last : total.first] if total else []
    return {"=", "("}.intersection(between) != set() and len(between) <= _SUM_REACH


def _purchase(m: Mention, unit_price: Mention | None, clause: Clause, scene: Scene, first: int, last: int) -> Draft:
    price: Amount = m.value
    words = clause.text.words
    lo, hi = _noun_before(unit_price or m, clause, first)
    if _payee(lo, hi, clause):
        lo, hi = hi, hi
    if lo >= hi:
        lo, hi = _noun_after(m, clause, last)
    fields: dict[str, object] = {}
    count, unit, lo = _count(lo, hi, clause)
    if count is None:
        count, unit = _count_beside(unit_price or m, clause, first)
    behind = next((n for n in clause.of("number") if n.last == hi and n.first > lo and words[n.first - 1] == ","), None)
    if behind is not None and count is None:  # "more screw caps today, 50 for $21"
        count, hi = tidy(behind.value.value), behind.first - 1
        while hi > lo and any(d.first < hi <= d.last for d in clause.of("date", "time")):
            hi -= 1
    item = clause.text.slice(lo, hi) if lo < hi else ""
    for tail in (" for it", " for this", " for that"):
        item = item.removesuffix(tail)
    item = "" if item.lower() in ("both", "all", "it", "them", "that", "everything", "the lot", "that lot") else item
    if not item:
        before = scene.clause_before(clause)
        priced = before.of("money") if before is not None else []
        if before is not None and (not priced or priced[-1].last < before.last):
            b_lo, b_hi = _noun_before_end(before, priced[-1].last if priced else before.first)
            count2, unit2, b_lo = _count(b_lo, b_hi, before)
            if b_lo < b_hi and (before.of("fruit", "variety", "material", "vessel") or scene.started is None):
                item = clause.text.slice(b_lo, b_hi)
            if count is None:
                count, unit = count2, unit2
    if scene.started is not None and (not item or not _names_goods(lo, hi, clause)):
        item = _start_item(scene) or item
        dose = next((scene.doses[f.first] for f in scene.text.of(*MADE_OF) if f.first in scene.doses), None)
        if (
            count is None
            and dose
            and item
            and any(c.cues("purchase") or c.has("brought") for c in scene.sentence(clause))
        ):
            count, unit = dose.value, dose.unit or None
    if item:
        fields["item"] = item
    if count is not None:
        fields["count"] = count
        if unit:
            fields["unit"] = unit
    by_unit = words[m.last : m.last + 1] == ["/"] and words[m.last + 1 : m.last + 2] in (
        ["kg"],
        ["lb"],
        ["l"],
        ["bottle"],
        ["gal"],
        ["ea"],
    )
    each = by_unit or (
        words[m.last : m.last + 1]
        and words[m.last] in _EACH
        and (
            words[m.last] not in ("a", "per")
            or words[m.last + 1 : m.last + 2]
            in (
                ["bottle"],
                ["piece"],
                ["pop"],
                ["pound"],
                ["lb"],
                ["kg"],
                ["kilo"],
                ["box"],
                ["crate"],
                ["packet"],
                ["pail"],
                ["gallon"],
                ["gal"],
                ["litre"],
                ["liter"],
                ["l"],
            )
        )
    )
    each = each or (
        words[m.last : m.last + 1] == ["the"]
        and words[m.last + 1 : m.last + 2]
        and words[m.last + 1]
        in ("box", "kilo", "pound", "bottle", "piece", "crate", "gallon", "litre", "pail", "case", "packet")
    )
    total = price.value * count if each and count else price.value
    fields["price"], fields["currency"] = tidy(total), price.unit
    return Draft("purchase", clause, m.first, m.last, fields, needs="tied")


def _payee(lo: int, hi: int, clause: Clause) -> bool:
    """`paid the juice guy $89`: who was paid stands where the goods usually do."""
    words = clause.text.words
    paid = [
        c
        for c in clause.of("cue")
        if words[c.first] in ("paid", "gave", "pay", "transferred") and clause.first <= c.first <= lo
    ]
    return bool(paid) and not any(x.first >= lo and x.last <= hi for x in clause.of("number", "amount", "closure"))


def _count_beside(m: Mention, clause: Clause, first: int) -> tuple[float | int | None, str | None]:
    """`zin grapes from the coast, 80 lb for $120`: the count right before the price."""
    words = clause.text.words
    for a in clause.of("amount"):
        if a.first == m.last + 1 and words[m.last] == "for" and a.value.unit in _UNITS:
            return a.value.value, a.value.unit
        if (
            first <= a.first < m.first
            and a.value.unit in ("lb", "kg", "gal", "L")
            and all(w in ("for", "at", ",", "=", "cost", "me", "was", "@") for w in words[a.last : m.first])
        ):
            return a.value.value, a.value.unit
    return None, None


def _noun_before(m: Mention, clause: Clause, first: int) -> tuple[int, int]:
    words = clause.text.words
    lo, hi = first, m.first
    while hi > lo and (_trails(words, hi) or any(c.first == hi - 1 for c in clause.cues("purchase"))):
        hi -= 1
    for i in range(hi - 1, lo, -1):
        if (
            words[i] in ("from", "at", "off")
            and words[i + 1] != "least"
            and not any(x.first <= i < x.last for x in clause.of("number", "amount"))
        ):
            hi = i
    return _strip(lo, hi, clause)


def _trails(words: list[str], hi: int) -> bool:
    """Whether the word before `hi` belongs to the price, not to the goods ("set" only in "set me back")."""
    return words[hi - 1] in _TRAILING and (words[hi - 1] != "set" or words[hi : hi + 1] in (["me"], ["us"]))


def _noun_after(m: Mention, clause: Clause, last: int) -> tuple[int, int]:
    words = clause.text.words
    lo = m.last
    while lo < last and words[lo] in ("for", "each", "of", "worth", "on") and words[lo + 1 : lo + 2] not in _REDUCED:
        lo += 1
    hi = lo
    while hi < last and words[hi] not in _STOP and words[hi] not in (",", "."):
        hi += 1
    return _strip(lo, hi, clause) if lo > m.last else (lo, lo)


def _noun_before_end(clause: Clause, lo: int) -> tuple[int, int]:
    words = clause.text.words
    hi = clause.last
    for i in range(hi - 1, lo, -1):
        if words[i] in ("from", "at"):
            hi = i
    return _strip(lo, hi, clause)


def _strip(lo: int, hi: int, clause: Clause) -> tuple[int, int]:
    words = clause.text.words
    counted = {m.first for m in clause.of("amount", "number")}
    while (
        lo < hi
        and lo not in counted
        and (
            words[lo] in _LEADING
            or any(d.first <= lo < d.last for d in clause.of("date", "time"))
            or (clause.text.tokens[lo].kind == "mark" and words[lo] != "#")
        )
    ):
        lo += 1
    while hi > lo and (_trails(words, hi) or clause.text.tokens[hi - 1].kind == "mark"):
        hi -= 1
    for i in range(lo, hi):
        cue = next((c for c in clause.cues("purchase") if c.first == i), None)
        if cue and i > lo:
            return _strip(cue.last, hi, clause) if cue.last < hi else (lo, i)
    return lo, hi


def _count(lo: int, hi: int, clause: Clause) -> tuple[float | int | None, str | None, int]:
    """The count at the head of what was bought, its unit, and where the item's own words begin."""
    words = clause.text.words
    if words[lo : lo + 1] and words[lo] in _CONTAINERS and words[lo + 1 : lo + 2] == ["of"]:
        inside = next((m for m in clause.of("amount", "number") if m.first == lo + 2), None)
        lo = lo + 2 if inside else lo  # "a bag of 50 screw caps"
    for m in clause.of("amount", "number"):
        if m.first != lo or m.last > hi:
            continue
        if m.kind == "amount" and m.value.unit in ("gal", "L") and words[m.last : m.last + 1] and m.last < hi:
            if words[m.last] in _VESSELS:
                return None, None, lo  # "5 gallon bucket"
            if words[m.last].removesuffix("s") in _VESSELS and clause.text.tokens[m.first].kind == "word":
                return m.value.value, None, m.first + 1  # "two gallon jugs"
        if m.kind == "amount" and m.value.unit in _UNITS:
            last = m.last + (words[m.last : m.last + 1] == ["of"])
            if m.value.unit == "bottle" and last == m.last:
                return m.value.value, None, m.last - 1
            return m.value.value, m.value.unit, last
        if m.kind == "number" and m.value.style in ("figure", "words", "grouped"):
            return tidy(m.value.value), None, m.last
    return None, None, lo


def _names_goods(lo: int, hi: int, clause: Clause) -> bool:
    return any(
        m.first >= lo and m.last <= hi
        for m in clause.of("fruit", "variety", "material", "vessel", "closure", "code", "oak_form")
    ) or (hi - lo > 0 and not clause.of("batch"))


def _start_item(scene: Scene) -> str | None:
    """What a batch is started from, as the note calls it, for a price that names nothing else."""
    from journalbot.notes.kinds.start_fields import base_of

    bases = base_of(scene)
    return bases[0] if bases else None
