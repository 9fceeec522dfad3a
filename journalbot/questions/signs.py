"""The signs in a question: what its words say is asked, from the tables of question words and the language layer."""

import re
from collections.abc import Iterable, Set
from datetime import date
from functools import cache
from typing import NamedTuple

from journalbot.language.lexicon import Lexicon, Mention
from journalbot.language.names import Names
from journalbot.language.text import Text, understand
from journalbot.model import Settings
from journalbot.vocabulary import questions as vocabulary
from journalbot.vocabulary.people import PEOPLE
from journalbot.vocabulary.question_signs import SIGNS
from journalbot.vocabulary.units import UNITS

_WORD = re.compile(r"(?<![\w'])[^\W\d_][\w']*\.?(?![\w'-])")
# "spent since I started": all of it, where nothing says what was started.
_EVER = r"(?i)\bsince (?:i|we) (?:started|began)(?: out)?(?: (?:making|doing) (?:wine|this|it))?\s*(?=[?.!]*$)"
# "batch 1 to 30 ppm": a batch and what it is to reach, no span of figures.
_BATCH_TO = r"(?i)(\b(?:batch|b|no\.?|#) ?\d{1,4})(?= (?:to|up to|down to|by|at) (?:a |an |about |pH |SG |TA )?[\d.])"
_LABEL = r"(?i)\b(batch \d+) \([^()]*\)"  # a batch as answers call it: the number says it all
# "the riesling's gravity": the owner is named; "last year's" and "what's" are words of their own.
_OWNER = re.compile(r"\b([^\W\d_]{3,})'s\b")
_NO_OWNERS = vocabulary.words(
    "what who when where how why that there here let which year season week month today yesterday vintage fall"
)
_VALUES = ("amount", "temperature", "percent", "number", "times", "reading", "score", "money", "bottles")
_CUES = {
    "give": "given",
    "drink": "drunk",
    "end": "drained",
    "purchase": "money",
    "add": "addition",
    "malolactic": "malolactic",
    "oak_out": "oak out",
    "top_up": "top_up",
    "rack": "rack",
    "press": "press",
    "crush": "crush",
    "bottle": "bottle",
    "taste": "taste",
    "filter": "filter",
    "degas": "degas",
    "chill": "chill",
    "punch_down": "punch_down",
    "pitch": "pitch",
    "blend": "blend",
    "move": "move",
    "stir": "stir",
}
_WHICH_YEAR = frozenset(("this", "last"))
_NO_PARTS = frozenset(("start", "end", "finish", "begin"))
_UNIT_WORDS = frozenset(s for unit in UNITS.values() for s in unit.spellings)
# What a longer phrase swallows: signs inside it say nothing of their own.
_HARD = (
    "vessel",
    "date",
    "code",
    "time",
    "amount",
    "money",
    "score",
    "temperature",
    "percent",
    "times",
    "reading",
    "bottles",
)


class Sign(NamedTuple):
    """Something that a stretch of words says; `value` is what it names (a material, a vessel …)."""

    name: str
    first: int
    last: int
    value: str = ""

    def inside(self, other: "Sign | Mention") -> bool:
        """Whether it lies within something longer."""
        return (
            other.first <= self.first
            and self.last <= other.last
            and (self.last - self.first) < (other.last - other.first)
        )


@cache
def question_lexicon() -> Lexicon:
    """The question words as one lexicon, built once a process."""
    rows: list[tuple[str, str, object]] = []
    for table, kind in (
        (vocabulary.ASKS, "ask"),
        (vocabulary.WAYS, "way"),
        (SIGNS, "sign"),
        (vocabulary.TESTS, "test"),
        (vocabulary.ANCHORS, "anchor"),
        (vocabulary.STATES, "state"),
        (vocabulary.COLOURED, "coloured"),
        (vocabulary.PERIODS, "period"),
        (vocabulary.OPENINGS, "opening"),
    ):
        rows += [(phrase, f"{kind} {name}", name) for name, phrases in table.items() for phrase in phrases]
    rows += [(word, "superlative", word) for word in vocabulary.SUPERLATIVES]
    rows += [(word, "group", word) for word in vocabulary.GROUPS]
    rows += [(word, "every", word) for word in vocabulary.EVERY]
    rows += [(word, "denial", word) for word in vocabulary.DENIALS]
    rows += [(word, "people", word) for word in PEOPLE]
    return Lexicon(rows)


_ASKING = vocabulary.words("what when which who whom where why how if whether did do is was are were have has")
_LEAD_INS = {phrase: len(phrase.split()) for phrase in vocabulary.LEAD_INS}
_LONGEST_LEAD_IN = max(_LEAD_INS.values())


def without_lead_in(question: str) -> str:
    """The question itself: `do you remember when I …` without what is said before it."""
    words = question.split()
    first = 0
    while (n := _lead_in(words[first:])) and words[first + n].lower().strip(_ROUND) in _ASKING:
        first += n
    if not first:
        return question
    # "if" asks whether only after a lead-in: "if I add 2 lb of sugar, what …" supposes.
    begins = "did" if words[first].lower() in ("if", "whether") else words[first]
    return " ".join([begins, *words[first + 1 :]])


_ROUND = ",:;.…-!"


def _lead_in(words: list[str]) -> int:
    """How many words at the beginning only lead in."""
    for n in range(min(_LONGEST_LEAD_IN, len(words) - 1), 0, -1):
        if " ".join(words[:n]).lower().strip(_ROUND) in _LEAD_INS:
            return n
    return 0


def written_out(question: str) -> str:
    """The question with its short forms written out: `whats` becomes `what is`."""
    question = without_lead_in(question)
    # Patterns are compiled only where they may fit: most questions need none of them.
    if "(" in question:
        question = re.sub(_LABEL, r"\1", question)
    if any(c.isdigit() for c in question):
        question = re.sub(_BATCH_TO, r"\1,", question)
    if "since" in question.lower():
        question = re.sub(_EVER, "ever", question)
    question = question.replace("’", "'")
    if "'s" in question:
        question = _OWNER.sub(lambda m: m.group(1) if m.group(1).lower() not in _NO_OWNERS else m.group(), question)
    return _WORD.sub(lambda m: _short(m.group()), question)


def _short(word: str) -> str:
    low = word.lower()
    if low.endswith(".") and low not in vocabulary.SHORT:
        return vocabulary.SHORT.get(low[:-1], word[:-1]) + "."
    return vocabulary.SHORT.get(low, word)


def read_text(question: str, names: Names, today: date, settings: Settings, tasted: Set[str] = frozenset()) -> Text:
    """The question understood as far as words go, misspelt question words mended too. `tasted` are words of the
    journal's tastings that no table holds.
    """
    text = understand(written_out(question), names, today, settings)
    text.mentions += [m for m in names.own.find(text.words, text.tokens) if m.kind == "culture"]
    text.mentions[:] = [_whole_year(m, text) if m.kind == "date" else m for m in text.mentions]
    lexicon = question_lexicon()
    for i, token in enumerate(text.tokens):
        # The notes' own words come first, but a question word that was typed right is never "mended" away.
        if text.words[i] != token.low and (token.low in lexicon.words or token.low in _UNIT_WORDS):
            text.words[i] = token.low
    unknown = [
        w
        for w in text.words
        if len(w) > 4
        and w.isalpha()
        and w not in lexicon.words
        and w not in names.lexicon
        and w not in vocabulary.FILLERS
    ]
    if unknown:
        mended = _speller().mend(
            text.words,
            lambda w: w in names.lexicon or w in names.own or w in names.batches.by_term or w in names.vessels,
        )
        text.words[:] = mended
    for i, t in enumerate(text.tokens):
        if t.low in tasted:
            text.mentions.append(Mention("descriptor", t.low, i, i + 1, t.start, t.end))
    return text


def _whole_year(m: Mention, text: Text) -> Mention:
    """A date; in "did I start in 2022", "did I start this year" the start is an act, and the date the whole year."""
    first, last = text.words[m.first], text.words[m.last - 1]
    link = text.words[m.first + 1] if m.last - m.first > 1 else ""
    if first not in _NO_PARTS or not ((link == "in" and last.isdigit()) or (link in _WHICH_YEAR and last == "year")):
        return m
    year = last if last.isdigit() else m.value.iso[:4]
    if len(year) != 4:
        return m
    begin = m.last - 1 if last.isdigit() else m.first + 1
    date = m.value._replace(span=(f"{year}-01-01", f"{year}-12-31"))
    return m._replace(value=date, first=begin, start=text.tokens[begin].start)


@cache
def _speller():  # type: ignore[no-untyped-def]
    from journalbot.language.spelling import Speller

    return Speller(w for w in question_lexicon().words if len(w) > 4)


def find_signs(text: Text, batches: Iterable[Mention] = ()) -> list[Sign]:
    """Every sign of the question; those within something longer fall away. `batches` are references kept as such."""
    kept = list(batches)
    out: list[Sign] = []
    for m in question_lexicon().find(text.words, text.tokens):
        kind, _, name = m.kind.partition(" ")
        if kind == "superlative":
            way, sign = vocabulary.SUPERLATIVES[m.value]
            out += [Sign(f"way:{way}", m.first, m.last, m.value), Sign(sign, m.first, m.last, m.value)]
        elif kind in ("ask", "sign"):
            out.append(Sign(name, m.first, m.last, text.text[m.start : m.end].lower()))
        elif kind == "people":
            out.append(Sign("person", m.first, m.last, m.value))
        else:
            out.append(
                Sign(f"{kind}:{name}" if name else kind, m.first, m.last, " ".join(text.words[m.first : m.last]))
            )
    covered = {i for s in out for i in range(s.first, s.last) if not s.name.startswith(("every", "denial", "test"))}
    for m in text.mentions:
        out += _from_language(m, text, covered)
    # "OG" is the spelling of a quantity too, and says more than that quantity.
    named = {(s.first, s.last) for s in out if s.name in ("original gravity", "final gravity")}
    out = [s for s in out if not (s.name.startswith("quantity:") and (s.first, s.last) in named)]
    hard = [m for m in text.mentions if m.kind in _HARD] + kept
    return [
        s
        for s in out
        if not any(s.inside(h) for h in hard if s.name != "batch")
        and not any(s.inside(o) for o in out if o.name != "person" or s.name == "person")
        and not _is_batch(s, kept)
    ]


def _is_batch(sign: Sign, batches: list[Mention]) -> bool:
    return any(b.first <= sign.first and sign.last <= b.last for b in batches)


def _from_language(m: Mention, text: Text, covered: set[int]) -> list[Sign]:
    def sign(name: str, value: object = "") -> list[Sign]:
        return [Sign(name, m.first, m.last, str(value))]

    if m.kind == "quantity":
        return sign(f"quantity:{m.value}")
    if m.kind == "material":
        return sign("material", m.value)
    if m.kind == "vessel":
        return sign("vessel", m.value.name)
    if m.kind == "culture":
        return sign("culture code", m.value)
    if m.kind == "code" and any(o.kind == "culture" and (o.first, o.last) == (m.first, m.last) for o in text.mentions):
        return []
    if m.kind == "descriptor" and covered.intersection(range(m.first, m.last)):
        return []
    if m.kind in ("code", "yeast"):
        return [] if str(m.value).lower() in ("so2", "so₂") else sign("code", m.value)
    if m.kind in ("oak_form", "oak_toast", "oak_origin"):
        return sign(m.kind.replace("_", " "), m.value)
    if m.kind in ("person", "place", "closure", "descriptor"):
        return sign(m.kind if m.kind != "closure" else "closure", m.value)
    if m.kind in _VALUES:
        return sign("value")
    if m.kind == "cue" and m.value.detail != "weak" and not covered.intersection(range(m.first, m.last)):
        name = _CUES.get(m.value.kind) or {
            "started": "ferment",
            "finished": "finished",
            "stuck": "stuck",
            "restarted": "restarted",
        }.get(m.value.detail, "")
        return sign(name) if name else []
    return []
