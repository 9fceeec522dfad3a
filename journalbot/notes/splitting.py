"""A note parted into clauses: sentences first, then where a comma or "and" begins something of its own."""

from collections.abc import Iterator

from journalbot.language.lexicon import Mention
from journalbot.language.text import Text
from journalbot.notes.clauses import Clause
from journalbot.vocabulary.people import TITLES

_SENTENCE = {".", "!", "?", "\n", "•", "*"}
_SOFT = {
    ",", ";", "and", "n", "then", "so", "but", "plus", "also", "because", "cause", "since", "while", "(", ")", "-", "–",
    "—", "&", "+", "though", "tho", "although", "hence", ":", "yet", "/", "which", "where",
}

_AND = {",", "and", "n", "&", "+", "-", "–", "—", "/", "at", "(", "plus", ")"}
_PICTURES = 0x2190  # from here on come arrows, signs and emoji, which end a sentence as a full stop does
_ABBREVIATIONS = {
    "approx", "abt", "temp", "no", "tsp", "oz", "lb", "lbs", "gal", "vs", "incl", "etc", "e.g", "i.e", "jan", "feb",
    "mar", "apr", "jun", "jul", "aug", "sep", "sept", "oct", "nov", "dec", "st", "s.g", "fl",
}


def split(text: Text) -> list[Clause]:
    """The note's clauses in order."""
    clauses: list[Clause] = []
    for number, (first, last) in enumerate(_sentences(text)):
        clauses.extend(_pieces(text, first, last, number))
    return clauses


def _sentences(text: Text) -> Iterator[tuple[int, int]]:
    inside = {i for m in text.mentions if m.last - m.first > 1 and m.kind != "cue" for i in range(m.first, m.last - 1)}
    acts = {m.first for m in text.mentions if m.kind == "cue" and m.value.form == "done" and m.value.detail != "weak"}
    first = 0
    for i, word in enumerate(text.words):
        if (word in _SENTENCE or (len(word) == 1 and ord(word) > _PICTURES and word != "→")) and i not in inside:
            if (
                word == "."
                and i
                and i + 1 < len(text.words)
                and text.words[i + 1] != "\n"
                and (text.words[i - 1] in _ABBREVIATIONS or text.words[i - 1] in TITLES)
                and (not text.tokens[i + 1].text[:1].isupper() or text.words[i - 1] in TITLES)
                and i + 1 not in acts
            ):
                continue
            if i > first:
                yield first, i + (word == "?")
            first = i + 1
    if first < len(text.words):
        yield first, len(text.words)


def _pieces(text: Text, first: int, last: int, sentence: int) -> Iterator[Clause]:
    inside = {
        i for m in text.mentions if m.last - m.first > 1 and m.kind not in ("cue",) for i in range(m.first, m.last)
    }
    inside |= _asides(text, first, last) | {
        i for i in range(first + 1, last) if text.words[i] == "/" and text.words[i - 1] == "w"
    }
    inside |= {j for m in text.mentions if m.kind == "money" for j in _priced(text, m, last)}
    vessels = [m for m in text.mentions if m.kind == "vessel"]
    inside |= {
        i
        for i in range(first, last)
        if text.words[i] in ("+", "&", "and")
        and any(m.last == i for m in vessels)
        and any(m.first in (i + 1, i + 2) and not _again_into(m, vessels, text) for m in vessels)
    }
    base = {m.first for m in text.mentions if m.kind == "cue" and m.value.form == "base"}
    inside |= {i for i in range(first, last) if text.words[i] in ("&", "and", "+") and i - 1 in base and i + 1 in base}
    dated = {m.first - 1 for m in text.mentions if m.kind == "date"}
    cuts = [
        i
        for i in range(first, last)
        if text.words[i] in _SOFT and i not in inside and not (text.words[i] == "since" and i in dated)
    ]
    days = {m.last for m in text.mentions if m.kind in ("date", "time")}
    cuts += [
        i
        for i in range(first + 1, last)
        if text.words[i] in _SPEAKERS
        and i not in days
        and i not in inside
        and text.words[i - 1] not in _BEFORE_SPEAKER
        and text.words[i - 1] not in _SOFT
    ]
    cuts += [
        m.first for m in text.mentions if m.kind == "batch" and first < m.first < last and _runs_on(text, first, m)
    ]
    bounds: list[tuple[int, int, str]] = []
    start, joined = first, ""
    for cut in sorted(set(cuts)):
        if cut > start:
            bounds.append((start, cut, joined))
        word = text.words[cut]
        if cut == start and word not in _SOFT:
            continue
        start, joined = (cut + 1, word) if word in _SOFT else (cut, ",")
    if start < last:
        bounds.append((start, last, joined))
    merged: list[tuple[int, int, str]] = []
    for a, b, how in bounds:
        if merged and how in _AND and not _stands_alone(text, *merged[-1][:2], a, b, how):
            merged[-1] = (merged[-1][0], b, merged[-1][2])
        else:
            merged.append((a, b, how))
    for a, b, how in merged:
        yield Clause(
            text,
            a,
            b,
            sentence,
            mentions=[m for m in text.mentions if m.first >= a and m.last <= b],
            joined_by=how,
        )


def _priced(text: Text, money: Mention, last: int) -> set[int]:
    """Marks that hold a price together (`$2.80/kg ($229.60)`), which part nothing."""
    words = text.words
    out = {money.last} if words[money.last : money.last + 1] == ["/"] else set()
    if words[money.first - 1 : money.first] == ["("] and money.last < last and words[money.last] == ")":
        out |= {money.first - 1, money.last}
    return out


def _asides(text: Text, first: int, last: int) -> set[int]:
    """Brackets around a word or two, which part nothing: `the malolactic bacteria (MC-9) are in`."""
    out: set[int] = set()
    for i in range(first, last):
        if text.words[i] == "(":
            close = next((j for j in range(i, min(last, i + 8)) if text.words[j] == ")"), None)
            if (
                close is not None
                and close + 1 < last
                and not any(m.kind in ("cue", "reading", "batch") and i < m.first < close for m in text.mentions)
            ):
                out.update((i, close))
    return out


def _runs_on(text: Text, first: int, batch: Mention) -> bool:
    """`b3 1.010 b4 1.022`: a batch named straight after a reading of another begins something new."""
    if text.words[batch.first - 1] in (
        "of", "for", "on", "in", "the", "into", "from", "with", "is", "batch", "call", "this", "with", "and",
    ):
        return False
    return any(m.kind == "reading" and m.last == batch.first for m in text.mentions) and any(
        m.kind == "batch" and first <= m.first < batch.first for m in text.mentions
    )


def _stands_alone(text: Text, a0: int, b0: int, a: int, b: int, how: str) -> bool:
    """Whether the stretch `a`–`b` is a clause apart from the one before it, to which a comma or `and` joins it."""
    own = [m for m in text.mentions if m.first >= a and m.last <= b]
    before = [m for m in text.mentions if m.first >= a0 and m.last <= b0]
    measured = {m.value.quantity for m in before if m.kind == "reading"}
    if any(m.kind == "date" and m.first <= a + 1 for m in own) and any(
        m.kind == "reading" and m.value.quantity in measured for m in own
    ):
        return True  # "it read 18 Brix, on Friday it was 9.5 Brix"
    if _predicate(own, before, a) or (
        text.words[a] in _PREPOSITIONS
        and not all(any(m.kind == "date" for m in part) for part in (own, before))
        and not any(m.kind in ("cue", "amount", "reading") for m in own)
        and any(m.kind in ("amount", "code", "material", "cue") for m in before)
    ):
        return False
    dated = any(m.kind == "date" for m in before)
    if dated and _NOW.intersection(text.words[a:b]) and any(m.kind == "reading" for m in own):
        return True
    if how == "and" and _one_addition(own, before, text):
        return False
    begun = any(m.kind == "cue" and m.value.kind == "fermentation" for m in before)
    if begun and any(m.kind == "date" for m in before) and any(m.kind == "reading" for m in own):
        return True  # "got going on Tuesday and is down to 1.058"
    if text.words[a] in _VERBS_ON and not any(m.kind == "batch" for m in own):
        return False
    if (
        how in (",", "and", "&")
        and not any(m.kind in _SAYING for m in before)
        and b - a > 1
        and not _opens_with_cue(own, a)
    ):
        return False  # a list of things before the verb that all of them share
    if (
        any(m.kind == "reading" for m in own)
        and any(m.kind == "cue" for m in before)
        and not any(m.kind == "reading" for m in before)
    ):
        return True
    if any(m.kind == "reading" for m in own) and any(m.kind == "denied" for m in before):
        return True  # "no change, 1.010 again"
    if _named_count(text, a, b) and _named_count(text, a0, b0):
        return True  # "Dale 1 bottle, Hector 2"
    if _moved_too(own, before, text):
        return True  # "racked demijohn 4 into demijohn 1 and demijohn 5 into demijohn 3"
    if any(m.kind == "cue" and not _weak(m, text, a) for m in own) or any(
        m.kind in ("planned", "denied", "supposed", "hearsay") for m in own
    ):
        return True
    if any(m.kind in ("money", "score") and m.kind in {b.kind for b in before} for m in own):
        return True
    if (
        any(m.kind == "amount" for m in own)
        and any(m.kind == "vessel" and _led_into(m, text) for m in own)
        and any(m.kind in ("vessel", "oak_form") or m.kind == "cue" for m in before)
    ):
        return True
    if (
        _NOW.intersection(text.words[a:b])
        and any(m.kind == "reading" for m in own)
        and any(m.kind == "date" for m in before)
    ):
        return True
    when = ("date", "time")
    if any(m.kind == "stranger" and m.first <= a + 1 for m in own) and any(m.kind == "reading" for m in own):
        return True  # "zin .995, cider 1.002", where no wine is a cider
    given = any(m.kind == "cue" and m.value.kind == "give" for m in before)
    if given and text.tokens[a].text[:1].isupper() and not any(m.kind in ("number", "amount", "batch") for m in before):
        return False  # "gave Dale and Ray Jr a dewberry each"
    if any(m.kind == "batch" for m in own):
        # "batches 3 and 4", "the carboy and the jug": one subject, no more
        return not (
            how in ("and", "&", "+")
            and all(m.kind in ("batch", "vessel", "variety", "fruit", "colour") for m in before if m.last > b0 - 2)
        )
    return any(m.kind in when for m in own) and any(m.kind in when for m in before)


def _again_into(vessel: Mention, vessels: list[Mention], text: Text) -> bool:
    """`… into demijohn 1 and demijohn 5 into demijohn 3`: a vessel that wine goes from, after one that it went into."""
    goes = text.words[vessel.last : vessel.last + 1] in (["into"], ["to"])
    return goes and any(v.last <= vessel.first and text.words[v.first - 1] in ("into", "to") for v in vessels)


def _named_count(text: Text, first: int, last: int) -> bool:
    """Whether a stretch opens with a name or two and then a count, and says little more."""
    at = next((i for i in range(first, last) if text.tokens[i].kind == "number"), last)
    names = text.tokens[first:at]
    return 0 < len(names) <= 3 and at < last <= at + 4 and all(t.text[:1].isupper() and t.kind == "word" for t in names)


def _one_addition(own: list[Mention], before: list[Mention], text: Text) -> bool:
    """`added 1 lb sugar and 2 tsp sorbate to the blackberry`: two things put into what is named last."""
    added = any(m.kind == "cue" and m.value.kind == "add" and m.value.form == "done" for m in before)
    things = all(any(m.kind == "material" for m in part) for part in (own, before))
    to = any(m.kind == "batch" and {"to", "into"}.intersection(text.words[m.first - 2 : m.first]) for m in own)
    return (
        added
        and things
        and to
        and not any(m.kind in ("cue", "reading") for m in own)
        and not any(m.kind == "batch" for m in before)
    )


def _moved_too(own: list[Mention], before: list[Mention], text: Text) -> bool:
    """Whether two vessels, one into the other, stand after two more."""
    vessels = [m for m in own if m.kind == "vessel"]
    paired = len(vessels) > 1 and text.words[vessels[0].last] in ("into", "to", "->", "→")
    back = len(vessels) == 1 and "back" in text.words[max(0, vessels[0].first - 3) : vessels[0].first]
    went = any(m.kind == "vessel" and _led_into(m, text) for m in before)
    return went and (back or (paired and sum(m.kind == "vessel" for m in before) > 1))


def _led_into(vessel: Mention, text: Text) -> bool:
    return bool({"into", "to", "->", "→"}.intersection(text.words[max(0, vessel.first - 2) : vessel.first]))


# In a sentence that runs on, "I" or "we" begins something new, unless the words before still hold it.
_SPEAKERS = {"i", "we", "i'm", "i've", "i'll"}
_BEFORE_SPEAKER = {
    "that", "what", "like", "as", "if", "when", "than", "where", "which", "who", "how", "until", "till", "once",
    "before", "after", "whenever", "all", "wine", "batch", "one", "mead", "time", "day", "then", "thing", "white",
    "red", "best", "", "should", "did", "do", "can", "am", "was", "have", "had", "could", "would", "said", "says",
    "think", "guess", "know", "see", "hope",
}

_PREPOSITIONS = {"to", "for", "into", "onto", "on"}
_NOW = {"now", "rn", "currently", "atm"}
_VERBS_ON = {"is", "are", "was", "were", "has", "have"}
_SAYING = (
    "cue", "reading", "amount", "money", "date", "batch", "score", "planned", "denied", "time", "bottles", "times",
    "number",
)


def _predicate(own: list[Mention], before: list[Mention], a: int) -> bool:
    """`bentonite, 30 g, stirred in Wed`: a verb and its day, of a thing named just before."""
    things = ("material", "code", "oak_form")
    return (
        _opens_with_cue(own, a)
        and not any(m.kind in (*things, "amount", "reading", "vessel", "batch", "score", "money") for m in own)
        and any(m.kind in things for m in before)
        and not any(m.kind in ("cue", "batch", "reading") for m in before)
    )


def _opens_with_cue(own: list[Mention], a: int) -> bool:
    return any(m.kind == "cue" and m.first <= a + 1 for m in own)


def _weak(m: Mention, text: Text, first: int) -> bool:
    """A cue that makes no clause of its own: it needs more than itself to mean an act."""
    return (m.value.detail in ("weak", "lees") and m.first > first + 1) or (
        m.value.kind in ("add", "vessel")
        and m.last - m.first == 1
        and m.value.form == "done"
        and text.words[m.first] in ("with", "w/")
    )
