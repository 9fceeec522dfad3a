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
_STOPS = {",", ".", ";", "!", "?", "\n", "and", "in", "into", "to", "with", "on", "for", "(", ")"}
_REACH = 6
_COUNTED = {"campden tablet": "tablet", "egg white": "piece"}
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
    figures = {m.first: m.value for m in amounts if m.kind == "number"}
    for amount in amounts:
        head = _following(text, amount, heads)
        if head and head.first not in out and (value := _as_dose(amount, head)):
            rate, unit, _ = (
                as_rate(value.value, value.unit, text.words, head.last, figures)
                if value.unit and "/" not in value.unit
                else (value.value, value.unit, 0)
            )
            out[head.first] = Amount(tidy(rate), unit, value.approx) if unit != value.unit else value
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
    _leftover(text, heads, [a for a in amounts if a.first not in used and a.kind == "amount"], out)
    return out


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
            "/" in value.unit and "g" not in unit
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
