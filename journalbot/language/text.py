"""One text, understood as far as words go: its tokens and its mentions, with overlaps settled.

Recognisers only propose. Where two hard mentions (of numbers, dates, vessels, batches' numbers) overlap, the longer
wins, and of equals the one that stands first in `PRECEDENCE`. Words of the vocabulary are kept side by side: whether
"cherry" is the fruit, the batch or the taste is for the clause to tell.
"""

import datetime
import re
from collections.abc import Iterable

from journalbot.language.amounts import find_amounts
from journalbot.language.batch_index import BatchRef
from journalbot.language.batches import find_batches
from journalbot.language.dates import DateMention, find_dates, find_times
from journalbot.language.lexicon import Mention
from journalbot.language.names import Names
from journalbot.language.numerals import find_numbers
from journalbot.language.readings import find_readings
from journalbot.language.relatives import told_in_passing
from journalbot.language.tokens import Token, as_meant, tokenize
from journalbot.language.vessels import find_vessels
from journalbot.model import Settings
from journalbot.vocabulary.descriptors import INTENSIFIERS
from journalbot.vocabulary.everyday import EVERYDAY

# Who keeps the words that two claim at equal length.
PRECEDENCE = (
    "vessel", "batch", "stranger", "date", "time", "code", "bottles", "money", "score", "amount", "temperature",
    "percent", "times", "number",
)
_RANK = {kind: i for i, kind in enumerate(PRECEDENCE)}
# A strain's code: letters and digits in one word, as K-17, QB1120, 62C.
_CODE = re.compile(r"^(?=.*\d)(?:[a-z]{1,5}-?\d{1,5}[a-z]{0,2}|\d{1,4}[a-z]{1,2}|[a-z]{1,4}-[a-z]?\d{1,4}[a-z]?)$")
_SHOUTED = re.compile(r"(?<![\w.-])[^\W\d_]{2,}(?![\w-]|\.\w)|\bI\b")  # a word with no figure in it
_OPENING = re.compile(r"(?<=[.!?]\s)(?!(?:of|in|into|per|to|at|and|a|an|the)\b)[^\W\d_]|^[^\W\d_]")
_SOLID = ("vessel", "date", "code", "amount", "bottles", "money", "score")
_PARTED_HARD = {".", ";", "!", "?", "\n", ":"}
_PARTED = _PARTED_HARD | {",", "and", "&", "+", "-", "–", "—", "with", "but", "(", ")"}
_SHADES = {
    "a", "an", "of", "the", "now", "more", "still", "some", "in", "good", "way", "bit", "really", "much", "it's", "its",
    "and",
}
# A verb's base form is a noun ("a timber rack", "the last press") unless one of these stands before it.
_BEFORE_VERB = {
    "i", "we", "to", "and", "then", "will", "should", "must", "not", "dont", "i'll", "we'll", "ill", "gonna", "please",
    "or", "also", "didn't", "did", "didnt", "don't", "can", "could", "lets", "let's", "now", "so", "but", "just",
    "today", "wanna", "gotta", "they", "you", "might", "may", "would", "cannot", "can't", "never", "tomorrow", "next",
    "saturday", "sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "it", "them", "shall", "help",
    "quick", "needs", "need", "probably", "maybe", "finally", "good", "b",
}
_BEFORE_NAME = {"the", "my", "our", "of", "in", "into", "to", "new", "old", "year's", "\n", ".", ";"}
_LICENCE = {
    "on", "by", "since", "until", "till", "before", "sometime", "around", "about", "back", "early", "late", "mid",
}
_CODE_WORDS = {"var", "strain"}
_CODE_LED = {"of", "gets", "got", "pitched", "yeast", "strain", "using", "used"}
_WHOLE = {  # words whose "'s" makes a date, a pronoun or a set phrase
    "it", "that", "this", "there", "here", "what", "who", "let", "he", "she", "year", "day", "week", "month", "season",
    "today", "yesterday", "night", "morning", "vintage", "autumn", "fall", "spring", "summer", "winter", "one",
}
_UNIT_LETTERS = {
    "g", "l", "x", "ml", "kg", "mg", "oz", "lb", "cl", "gr", "gm", "qt", "pt", "st", "nd", "rd", "th", "am", "pm", "bx",
    "h", "hr", "d", "wk", "yo", "s", "in", "k", "cm", "mm", "m", "p",
}


class Text:
    """A text with what it mentions."""

    __slots__ = ("impossible", "mentions", "text", "tokens", "words")

    def __init__(
        self,
        text: str,
        tokens: list[Token],
        words: list[str],
        mentions: list[Mention],
        impossible: list[DateMention],
    ) -> None:
        self.text = text
        self.tokens = tokens
        self.words = words  # lower case, misspellings mended
        self.mentions = mentions  # in order; vocabulary mentions may overlap
        self.impossible = impossible  # dates that no calendar has

    def of(self, *kinds: str, first: int = 0, last: int | None = None) -> list[Mention]:
        """The mentions of these kinds that lie within a range of tokens."""
        stop = len(self.tokens) if last is None else last
        return [m for m in self.mentions if m.kind in kinds and m.first >= first and m.last <= stop]

    def slice(self, first: int, last: int) -> str:
        """The text of a range of tokens, as typed."""
        return self.text[self.tokens[first].start : self.tokens[last - 1].end] if last > first else ""

    def meant(self, first: int, last: int) -> str:
        """The text of a range of tokens, with misspelt words put right."""
        return as_meant(self.text, self.tokens, self.words, first, last) if last > first else ""


def understand(text: str, names: Names, on: datetime.date, settings: Settings) -> Text:
    """Find everything that a text mentions, read on the day `on`."""
    text = _calmed(text) if text.isupper() else text
    typed = _parted(tokenize(text), names)
    tokens = names.mend(typed)
    words = [t.low for t in tokens]
    numbers = find_numbers(tokens, text)
    known = list(names.lexicon.find(words, tokens))
    own = names.own.find(words, tokens)
    typed = _with_capitals(typed, own)
    vessels = [v for v in find_vessels(tokens, words, text, numbers, names.vessels, names.lexicon) if not v.value.weak]
    dates = [
        d for d in find_dates(tokens, on, day_first=settings.day_first) if words[d.last - 1] not in ("years", "year's")
    ]
    if aside := told_in_passing(words, known, dates):
        dates = [d for d in dates if d not in aside.values()]
        known = [m for m in known if m.kind != "cue" or m.first not in aside]
    amounts = find_amounts(tokens, words, numbers, settings)
    priced = {m.first for m in amounts if m.kind == "money"}
    hard = [
        *vessels,
        *(c for c in _codes(tokens, words, own, names) if c.first not in priced),
        *(
            Mention("date", d, d.first, d.last, d.start, d.end)
            for d in dates
            if (d.iso or d.future_iso) and (not d.weak or _licensed(d, words))
        ),
        *(Mention("time", t, t.first, t.last, t.start, t.end) for t in find_times(tokens)),
        *amounts,
    ]
    tasted = _tasting_words(words, tokens, known)
    tasted -= {  # a line that opens with a wine's name
        i for i in tasted if (i == 0 or words[i - 1] == "\n") and words[i] in names.batches.by_term
    }
    no_batch = {i for m in vessels for i in range(m.first, m.last)} | tasted
    batches = find_batches(tokens, words, known, numbers, names.batches, on.year, no_batch)
    batches += _unclear(tokens, words, names)
    kept = settle([*hard, *batches])
    taken = {
        i
        for m in kept
        if m.kind in ("vessel", "batch", "date", "time", "money", "score", "bottles", "code")
        for i in range(m.first, m.last)
    }
    quantities = _longest(m for m in known if m.kind == "quantity" and not taken.intersection(range(m.first, m.last)))
    values = [m for m in kept if m.kind in ("amount", "temperature", "percent", "number")]
    named = {i for m in quantities for i in range(m.first, m.last)}
    dosed = {i for m in known if m.kind == "material" for i in range(m.first, m.last)} - named
    readings = find_readings(tokens, words, quantities, values, settings, taken, dosed)
    read = {m.first: m for m in readings}
    kept = [read.get(m.first, m) if m.kind in ("amount", "temperature", "percent", "number") else m for m in kept]
    # The name before a bare figure may turn a weaker reading of it into a stronger one, so both lists are merged.
    vocabulary = [
        m
        for m in (*known, *own)
        if m.kind != "quantity"
        and not any(_inside(m, k) for k in kept if k.kind in _SOLID)
        and not _noun(m, words)
        and not (m.kind == "material" and (m.first in tasted or words[m.last : m.last + 1] == ["wine"]))
    ]
    mentions = sorted((*kept, *quantities, *vocabulary), key=lambda m: (m.first, m.last))
    return Text(text, typed, words, mentions, [d for d in dates if d.impossible])


def _unclear(tokens: list[Token], words: list[str], names: Names) -> list[Mention]:
    """Misspelt words in the place of a wine's name that may be meant for a batch's, and for something else as well."""
    return [
        Mention("stranger", BatchRef((), "unclear"), i, i + 1, tokens[i].start, tokens[i].end)
        for i, word in enumerate(words)
        if names.may_name_a_batch(word)
        and (
            i == 0
            or words[i - 1] in _BEFORE_NAME
            or (words[i - 1] in _PARTED and i + 1 < len(words) and tokens[i + 1].kind == "number")
        )
    ]


def _with_capitals(tokens: list[Token], own: list[Mention]) -> list[Token]:
    """The tokens, with the capitals of people's names given back in a note that has none."""
    for m in own:
        if m.kind == "person" and m.value[:1].isupper() and tokens[m.first].low not in EVERYDAY:
            first = tokens[m.first]
            tokens = [*tokens[: m.first], first._replace(text=first.text.capitalize()), *tokens[m.first + 1 :]]
    return tokens


def _calmed(text: str) -> str:
    """A text all in capitals as others write: small letters, but for codes, labels ("CARBOY B") and where a sentence
    opens; as it is where that would change its length.
    """
    calm = _OPENING.sub(lambda m: m.group().upper(), _SHOUTED.sub(lambda m: m.group().lower(), text))
    return calm if len(calm) == len(text) else text


def _parted(tokens: list[Token], names: Names) -> list[Token]:
    """The tokens with the "'s" of a known word made one of its own: `the zin's at 1.010`, `MLF's done`."""
    out: list[Token] = []
    for token in tokens:
        stem = token.low.removesuffix("'s")
        known = stem in names.lexicon.words or stem in names.batches.by_term or stem in names.vessels.words
        if stem == token.low or not known or token.low in names.lexicon or token.low.removesuffix("'s") in _WHOLE:
            out.append(token)
            continue
        end = token.start + len(stem)
        out.append(Token(token.kind, token.text[: len(stem)], stem, token.start, end))
        out.append(Token(token.kind, token.text[len(stem) :], "'s", end, token.end))
    return out


def _tasting_words(words: list[str], tokens: list[Token], known: list[Mention]) -> set[int]:
    """The tokens of lists of descriptors (`honey, ripe pear, petrol, 16/20`), where a fruit's name is a taste and no
    batch.
    A list is two stretches between commas that hold nothing else, or one with a mark beside it."""
    covered = {i for m in known if m.kind == "descriptor" for i in range(m.first, m.last)}
    out: set[int] = set()
    run: list[int] = []
    stretches = 0
    marked = False
    start = 0
    for i in range(len(words) + 1):
        if i < len(words) and words[i] not in _PARTED:
            continue
        stretch = list(range(start, i))
        figures = [k for k in stretch if tokens[k].kind != "word"]
        plain = [k for k in stretch if k not in figures]
        described = any(k in covered for k in plain) and all(
            k in covered or words[k] in INTENSIFIERS or words[k] in _SHADES for k in plain
        )
        scored = bool(figures) and any(words[k] == "/" or words[k : k + 2] == ["out", "of"] for k in stretch)
        if (described and (not figures or scored)) or (scored and run and not plain):
            if not run and start > 1 and words[start - 1] in (",", "and", "&"):
                k = start - 2  # "old one honey and toast 9/10": the list begins within the stretch before
                while k >= 0 and k in covered and words[k] not in _PARTED:
                    run.append(k)
                    k -= 1
                if run and k >= 0 and words[k] in ("a", "an", "of", "the", "last", "first"):
                    run.clear()  # "opened a rhubarb, jammy": a wine, not its taste
                stretches += bool(run)
            run.extend(stretch)
            stretches += described
            marked = marked or scored
        else:
            if stretches > 1 or (stretches and marked):
                out.update(run)
            run, stretches, marked = [], 0, False
        if i < len(words) and words[i] in _PARTED_HARD:
            if stretches > 1 or (stretches and marked):
                out.update(run)
            run, stretches, marked = [], 0, False
        start = i + 1
    if stretches > 1 or (stretches and marked):
        out.update(run)
    return out


def settle(mentions: Iterable[Mention]) -> list[Mention]:
    """Of overlapping mentions, the longest; of equals the first in `PRECEDENCE`."""
    out: list[Mention] = []
    used: set[int] = set()
    for m in sorted(mentions, key=lambda m: (m.first - m.last, _RANK[m.kind], m.first)):
        span = range(m.first, m.last)
        if not used.intersection(span):
            out.append(m)
            used.update(span)
    return sorted(out, key=lambda m: m.first)


def _longest(mentions: Iterable[Mention]) -> list[Mention]:
    out: list[Mention] = []
    for m in sorted(mentions, key=lambda m: (m.first - m.last, m.first)):
        if not any(m.first < o.last and o.first < m.last for o in out):
            out.append(m)
    return sorted(out, key=lambda m: m.first)


def _inside(m: Mention, outer: Mention) -> bool:
    return outer.first <= m.first and m.last <= outer.last


def _licensed(d: DateMention, words: list[str]) -> bool:
    """Whether a word before a doubtful date asks for one (`by the 4th`)."""
    opens = d.first == 0 or words[d.first - 1] in ("-", "\n", ".", "•", "*")
    return (
        (opens and len(d.iso) == 10 and "/" not in words[d.first : d.last])
        or (d.first > 0 and words[d.first - 1] in _LICENCE)
        or (words[d.last : d.last + 1] == [":"] and len(d.iso) == 10)
    )


def _noun(m: Mention, words: list[str]) -> bool:
    """Whether a word that could be a verb is a noun here: "a bottle", "the siphon", "last press"."""
    if m.kind != "cue" or m.value.form != "base" or m.value.kind == "taste" or m.last - m.first > 1 or m.first == 0:
        return False
    before = words[m.first - 1]
    return before.isalpha() and before not in _BEFORE_VERB


def _codes(tokens: list[Token], words: list[str], own: list[Mention], names: Names) -> list[Mention]:
    """Words that can only be a strain's code, and the names of yeasts and cultures that the journal knows."""
    out = [Mention("code", m.value, m.first, m.last, m.start, m.end) for m in own if m.kind in ("yeast", "culture")]
    i = 0
    while i < len(tokens):
        token = tokens[i]
        if (
            token.kind == "word"
            and _CODE.match(token.low)
            and words[i] not in names.lexicon
            and words[i - 1 : i] != ["at"]
            and (not token.low.startswith("b") or len(token.low) > 3)
        ):
            out.append(Mention("code", token.text, i, i + 1, token.start, token.end))
        elif words[i] in _CODE_WORDS and i + 1 < len(tokens) and tokens[i + 1].kind == "number":
            out.append(Mention("code", f"{token.text} {tokens[i + 1].text}", i, i + 2, token.start, tokens[i + 1].end))
        elif token.kind == "number" and i + 1 < len(tokens) and _glued_code(tokens, words, i):
            out.append(Mention("code", token.text + tokens[i + 1].text, i, i + 2, token.start, tokens[i + 1].end))
        i += 1
    return out


def _glued_code(tokens: list[Token], words: list[str], i: int) -> bool:
    """Whether a number run into a letter is a code (`48J`); one like a temperature (`31C`) needs words before it that
    say so.
    """
    letter = tokens[i + 1]
    if (
        letter.start != tokens[i].end
        or not tokens[i].text.isdigit()
        or len(letter.low) > 2
        or not letter.text.isalpha()
    ):
        return False
    if letter.low in ("c", "f"):
        led = i > 0 and words[i - 1] in _CODE_LED
        return led or (letter.low == "c" and 45 < int(tokens[i].text) < 100)
    return letter.low not in _UNIT_LETTERS
