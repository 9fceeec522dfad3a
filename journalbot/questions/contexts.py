"""Signs whose meaning hangs on the words around them: `what gave`, `stronger than batch 3`, `what was it at`."""

from collections.abc import Sequence

from journalbot.language.amounts import unit_at
from journalbot.language.lexicon import Mention
from journalbot.language.text import Text
from journalbot.questions.signs import Sign
from journalbot.vocabulary.items import item_of
from journalbot.vocabulary.question_signs import MATERIAL_GROUPS
from journalbot.vocabulary.questions import GROUPS, SUPERLATIVES, words
from journalbot.vocabulary.units import UNITS

_WHICH_PERIOD = frozenset(("which month", "what month", "which year", "what year"))
_ASKING = frozenset(("what", "which", "where"))
_AFTER_AT = words("on in when now before after last by at during the currently then")
_WAS = frozenset(("was", "were", "is", "are"))
_FINDING = frozenset(("find", "found", "look for"))
_OWNERS = words("i we")
_KEEPING = words("keep keeping kept keeps store storing stored sit sits sitting age aging ageing is")


def in_context(text: Text, signs: Sequence[Sign], refs: Sequence[Mention]) -> list[Sign]:
    """The signs as the words around them make them."""
    batch_at = {m.first: m for m in refs}
    batch_end = {m.last: m for m in refs}
    out = []
    for s in signs:
        if not (s.name == "material" and s.value in ("co2", "carbon dioxide")):  # given off, never put in
            out += _compared_with_a_batch(s, text, batch_at)
    goods = _priced(text, refs)
    out = [s for s in out if not (s.name in ("closure", "bottles", "made") and goods & set(range(s.first, s.last)))]
    out += [Sign(name, s.first, s.last, s.value) for s in out for name in _sorts_of(s)]
    out = [_again(_yielded(s, text, batch_end), text) for s in out]
    out = _of_the_kind(_at_an_end(out), text)
    pieces = _pieces(text)
    out = [s for s in out if not (pieces and s.name == "how many")]
    return [
        *_paid_or_passed(out),
        *_periods(out),
        *_prices(text),
        *([Sign("money", min(goods) - 1, min(goods), "how much")] if goods else []),
        *_units(text),
        *pieces,
        *_bare_at(text, batch_end),
        *_last_word(text),
        *_to_be_done(text),
    ]


def _compared_with_a_batch(s: Sign, text: Text, batch_at: dict[int, Mention]) -> list[Sign]:
    """`stronger than night shift`: no figure to exceed, but the stronger of two."""
    at = s.last + (text.words[s.last : s.last + 1] in (["the"], ["my"]))
    if not s.name.startswith("test:") or at not in batch_at:
        return [s]
    word = text.words[s.first]
    if word in SUPERLATIVES:
        way, sign = SUPERLATIVES[word]
        return [Sign(f"way:{way}", s.first, s.last, word), Sign(sign, s.first, s.last, word)]
    way = {"over": "most", "under": "least"}.get(s.name.partition(":")[2], "")
    return [Sign(f"way:{way}", s.first, s.last, word)] if way else [s]


def _sorts_of(s: Sign) -> list[str]:
    """What sort of material a sign names: `kmeta` is a sulfite."""
    if s.name != "material":
        return []
    return [
        name for name, group in (("a sulfite", "sulfite"), ("an acid", "acid")) if s.value in MATERIAL_GROUPS[group]
    ]


def _yielded(s: Sign, text: Text, batch_end: dict[int, Mention]) -> Sign:
    """`which batch gave the most bottles`: what a wine gives is what was made of it."""
    if s.name != "given" or text.words[s.first] not in ("gave", "give", "gives") or s.last - s.first > 1:
        return s
    before = text.words[s.first - 1] if s.first else ""
    subject = s.first in batch_end or before in GROUPS
    return s._replace(name="made") if subject and "to" not in text.words[s.last :] else s


def _again(s: Sign, text: Text) -> Sign:
    """`when did it start fermenting again`: not the first start."""
    return s._replace(name="restarted") if s.name == "started" and "again" in text.words[s.last :] else s


def _at_an_end(signs: list[Sign]) -> list[Sign]:
    """`what pH did it start at`: the first pH, and no gravity."""
    if not any(s.name.startswith("quantity:") and s.name != "quantity:sg" for s in signs):
        return signs
    ends = {"start at": "way:first", "started at": "way:first", "finish at": "way:last", "finished at": "way:last"}
    return [s._replace(name=ends.get(s.value, s.name)) for s in signs]


def _of_the_kind(signs: list[Sign], text: Text) -> list[Sign]:
    """Words that others beside them give another meaning: a bottle given is no price, long corks are no length, and
    what was found in a wine was tasted.
    """
    names = {s.name for s in signs}
    handed = names & {"given", "drunk", "person"} and "money" not in names
    tasted = "descriptor" in names and "in" in text.words
    out = []
    for s in signs:
        if s.name == "per bottle" and s.value == "a bottle" and handed:
            s = s._replace(name="bottles")
        elif s.name == "mention" and s.value in _FINDING and tasted:
            s = s._replace(name="taste")
        elif s.name == "how long" and s.value == "long" and text.words[s.last : s.last + 1] and (
            text.words[s.last] in item_of()
        ):
            continue
        out.append(s)
    return out


def _pieces(text: Text) -> list[Sign]:
    """`how many campden tablets`: how much, in the pieces that the material is counted in."""
    for m in text.of("material"):
        unit = unit_at(text.words, m.last - 1)
        if m.first > 1 and text.words[m.first - 2 : m.first] == ["how", "many"] and unit and unit[1] == m.last:
            return [Sign("how much", m.first - 2, m.first, "how many"), Sign("unit", m.last - 1, m.last, unit[0])]
    return []


def _paid_or_passed(signs: list[Sign]) -> list[Sign]:
    """`how long has it spent in oak` speaks of no money, `what did I spend` of nothing else."""
    long = any(s.name == "how long" for s in signs)
    drop = "money" if long else "is"
    return [s for s in signs if not (s.name == drop and s.value in ("spend", "spent"))]


def _periods(signs: list[Sign]) -> list[Sign]:
    """`which month did I bottle most`: the month, of all, and not the date of one bottling."""
    ranked = any(s.name in ("way:most", "way:least") for s in signs)
    return [
        Sign(f"period:{s.value.split()[1]}", s.first, s.last, s.value)
        for s in signs
        if ranked and s.name == "when" and s.value in _WHICH_PERIOD
    ]


def _prices(text: Text) -> list[Sign]:
    """`at $15 a bottle`: a price to compare with."""
    return [
        Sign("price", m.first, m.last, f"{m.value.value:g} {m.value.unit}")
        for m in text.of("money")
        if m.first and text.words[m.first - 1] in ("at", "against", "to", "of", "for")
    ] + [
        Sign("price", m.first, m.last, f"{m.value.value:g}")
        for m in text.of("number")
        if m.first
        and text.words[m.first - 1] == "at"
        and text.words[m.last : m.last + 2] in (["a", "bottle"], ["per", "bottle"])
    ]


def _priced(text: Text, refs: Sequence[Mention]) -> set[int]:
    """The words of goods whose price is asked for: `how much were the synthetic corks`."""
    words = text.words
    spoken = [i for i, t in enumerate(text.tokens) if t.kind != "mark"]
    lead = [words[i] for i in spoken[:3]]
    if lead[:2] != ["how", "much"] or lead[-1] not in _WAS:
        return set()
    rest = [i for i in spoken[3:] if words[i] not in ("the", "my", "those", "these", "a", "our")]
    if any(m.value.fits and set(rest) <= set(range(m.first, m.last)) for m in refs):
        return set(rest)  # "how much were the plums"
    ends = " ".join(words[i] for i in rest[-1:])
    return set(rest) if ends in item_of() and len(rest) <= 4 else set()


def _units(text: Text) -> list[Sign]:
    """`how many grams`: how much, and in which unit."""
    out = []
    for i, word in enumerate(text.words):
        found = unit_at(text.words, i) if i > 1 and text.words[i - 2 : i] == ["how", "many"] else None
        if found and UNITS[found[0]].dimension in ("mass", "volume"):
            out += [Sign("how much", i - 2, found[1], word), Sign("unit", i, found[1], found[0])]
    return out


def _bare_at(text: Text, batch_end: dict[int, Mention]) -> list[Sign]:
    """`what was the mead at on 11 March`: its gravity."""
    out = []
    for i, word in enumerate(text.words):
        after = text.words[i + 1] if i + 1 < len(text.words) else ""
        subject = i in batch_end or (i and text.words[i - 1] in ("it", "that", "this"))
        dated = any(m.first == i + 1 for m in text.of("date"))
        did = i and text.words[0] == "what" and "did" in text.words[:i]
        if word in ("read", "show") and subject and did:
            out.append(Sign("sg", i, i + 1, word))
        if word == "at" and subject and (not after.isalnum() or after in _AFTER_AT or dated) and "what" in text.words:
            out.append(Sign("sg", i, i + 1, "at"))
    return out


def _last_word(text: Text) -> list[Sign]:
    """What the end of a question says: `what am I keeping it in`, `how many of it have I`."""
    spoken = [i for i, t in enumerate(text.tokens) if t.kind != "mark"]
    if len(spoken) < 3:
        return []
    end, before = spoken[-1], spoken[-2]
    if text.words[end] == "still" and "many" in text.words[:end]:
        return [Sign("left", end, end + 1, "still")]
    if text.words[end] == "in" and text.words[spoken[0]] in _ASKING and _KEEPING & set(text.words):
        return [Sign("where", end, end + 1, "in")]
    if text.words[end] in _OWNERS and text.words[before] == "have" and "many" in text.words[:before]:
        return [Sign("left", before, end + 1, "have i")]
    return []


def _to_be_done(text: Text) -> list[Sign]:
    """`when is the rondo to be bottled`: planned."""
    at = next((i for i in range(1, len(text.words) - 1) if text.words[i : i + 2] == ["to", "be"]), 0)
    return [Sign("plan", at, at + 2, "to be")] if at and {"is", "are"} & set(text.words[:at]) else []
