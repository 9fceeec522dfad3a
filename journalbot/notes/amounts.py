"""Which amount belongs to what: `2 oz med toast french oak cubes`, `K-17, 5g`, `pitched QB1120 in the sauv blanc, 7.5
g`.
"""

from journalbot.language.amounts import Amount, as_rate, tidy
from journalbot.language.lexicon import Mention
from journalbot.language.numerals import Number
from journalbot.language.text import Text
from journalbot.vocabulary.units import UNITS

_HEADS = ("material", "code", "oak_form", "fruit", "variety", "oak_word")
_BETWEEN = {
    "of", "the", "that", "a", "crushed", "fresh", "more", "level", "heaped", "extra", "another", "good", "fine", "my",
    "our", "some", "heaping", "worth", "dried", "powdered", "each", "same", "old", "new", "scant", "generous",
    "rounded", "x", "dissolved", "dry",
}
_LINKS = {",", ":", "(", "-", "=", "@", "at", "–", "—", "x", "~"}
_LISTING = {",", "and", "&", "+", "then", "plus", ":", "-", "–", "—"}
_REACH = 6
_COUNTED = {"campden tablet": "tablet", "egg white": "piece"}
_SINGULAR = {"tablet", "campden", "white"}
_DOSE_UNITS = {
    "g", "mg", "kg", "oz", "lb", "tsp", "tbsp", "tablet", "packet", "pinch", "ml", "cup", "piece", "fl oz", "L", "cl",
    "qt", "pt", "gal", "bottle",
}


def link(text: Text) -> dict[int, Amount]:
    """The amount of each thing that has one, by the first token of the mention of the thing."""
    heads = _outermost([m for m in text.mentions if m.kind in _HEADS])
    amounts = [m for m in text.mentions if m.kind in ("amount", "number", "percent")]
    out: dict[int, Amount] = {}
    used: set[int] = set()
    for amount in amounts:
        head = _following(text, amount, heads)
        if head and head.first not in out and (value := _as_dose(amount, head)):
            out[head.first] = _per(value, text, head, amounts)
            used.add(amount.first)
    for amount in amounts:
        if amount.first in used or amount.kind != "amount":
            continue
        head = next((h for h in reversed(heads) if h.last <= amount.first and h.kind not in ("fruit", "variety")), None)
        if (
            head
            and head.first not in out
            and amount.first - head.last <= 1
            and (amount.first == head.last or text.words[head.last] in _LINKS)
            and (value := _as_dose(amount, head))
        ):
            out[head.first] = value
            used.add(amount.first)
    for h in heads:  # "a campden tablet"
        unit = _COUNTED.get(h.value) if h.kind == "material" and text.words[h.last - 1] in _SINGULAR else None
        i = h.first - 1
        while i >= 0 and text.words[i] in _BETWEEN - {"a", "each", "of", "the"}:
            i -= 1
        if unit and i >= 0 and text.words[i] in ("a", "an", "another") and h.first not in out:
            out[h.first] = Amount(1, unit)
    _of_each(text, heads, amounts, out)
    _leftover(text, heads, [a for a in amounts if a.first not in used and a.kind == "amount"], out)
    return out


def _of_each(text: Text, heads: list[Mention], amounts: list[Mention], out: dict[int, Amount]) -> None:
    """`kieselsol then chitosan, 50 ml of each`: one amount for every substance of the list before it."""
    for amount in amounts:
        after = text.words[amount.last : amount.last + 2]
        if amount.kind != "amount" or not (after == ["of", "each"] or after[:1] == ["each"]):
            continue
        end = amount.first
        for h in reversed([h for h in heads if h.kind == "material" and h.last <= amount.first]):
            if not _LISTING.issuperset(text.words[h.last : end]) or out.get(h.first) not in (None, amount.value):
                break
            if dose := _as_dose(amount, h):
                out[h.first] = dose
            end = h.first


def _per(dose: Amount, text: Text, head: Mention, amounts: list[Mention]) -> Amount:
    """The dose as a rate where one follows its substance (`1/4 tsp kmeta per gallon`, `… per 5 gal`)."""
    if not dose.unit or "/" in dose.unit:
        return dose
    volume = next((m for m in amounts if m.kind == "amount" and m.first == head.last + 1), None)
    if volume and text.words[head.last] in ("per", "/") and UNITS[volume.value.unit].dimension == "volume":
        return Amount(tidy(dose.value / volume.value.value), f"{dose.unit}/{volume.value.unit}", dose.approx)
    figures = {m.first: m.value for m in amounts if m.kind == "number"}
    rate, unit, _ = as_rate(dose.value, dose.unit, text.words, head.last, figures)
    return Amount(tidy(rate), unit, dose.approx) if unit != dose.unit else dose


def _outermost(heads: list[Mention]) -> list[Mention]:
    out: list[Mention] = []
    for m in sorted(heads, key=lambda m: (m.first - m.last, _HEADS.index(m.kind))):
        if not any(m.first < o.last and o.first < m.last for o in out):
            out.append(m)
    return sorted(out, key=lambda m: m.first)


def _following(text: Text, amount: Mention, heads: list[Mention]) -> Mention | None:
    i = amount.last
    limit = min(len(text.words), i + _REACH)
    while i < limit:
        head = next((h for h in heads if h.first <= i < h.last and h.first >= amount.last), None)
        if head:
            return head
        skipped = max(
            (m for m in text.mentions if m.first == i and m.kind in ("oak_toast", "oak_origin", "colour")),
            key=lambda m: m.last,
            default=None,
        )
        if skipped:
            i = skipped.last
        elif text.words[i] in _BETWEEN or (text.words[i].endswith("ed") and i == amount.last) or text.words[i] == "oak":
            i += 1
        else:
            return None
    return None


def _as_dose(amount: Mention, head: Mention) -> Amount | None:
    """The amount as a dose of the thing; a bare count only of what is counted."""
    if amount.kind == "amount":
        value: Amount = amount.value
        unit = value.unit.partition("/")[0]
        return value if unit in _DOSE_UNITS else None
    if amount.kind != "number":
        return None
    n: Number = amount.value
    if n.style in ("suffix", "dictated", "decimal", "grouped") and n.value != 0.5:
        return None
    if head.kind == "oak_form":
        return Amount(tidy(n.value), "piece" if head.value in ("spiral", "staves") else "", n.approx)
    if head.kind == "material":
        return Amount(tidy(n.value), _COUNTED.get(head.value, ""), n.approx)
    return None


def _leftover(text: Text, heads: list[Mention], amounts: list[Mention], out: dict[int, Amount]) -> None:
    """A dose that stands apart from its yeast or material in one sentence, where only one of each is left."""
    for amount in amounts:
        value: Amount = amount.value
        unit = value.unit.partition("/")[0]
        if (UNITS[unit].dimension == "volume" and unit not in ("tsp", "tbsp", "ml")) or (
            "/" in value.unit and unit not in ("g", "mg", "tsp", "ml")
        ):
            continue
        free = [
            h
            for h in heads
            if h.first not in out and h.kind in ("code", "material") and _same_sentence(text, h, amount)
        ]
        rivals = [a for a in amounts if a is not amount and _same_sentence(text, a, amount)]
        if (
            len(free) == 1
            and not rivals
            and (dose := _as_dose(amount, free[0]))
            and 0 < amount.first - free[0].last < 9
        ):
            out[free[0].first] = dose


def _same_sentence(text: Text, a: Mention, b: Mention) -> bool:
    first, last = min(a.last, b.last), max(a.first, b.first)
    return not any(w in (".", ";", "!", "?", "\n") for w in text.words[first:last])
