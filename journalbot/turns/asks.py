"""What a line says as the answer to a question about a note, in any wording; or that it is no answer at all."""

import datetime
from collections.abc import Iterable
from typing import TYPE_CHECKING, NamedTuple

from journalbot.language.text import Text, understand
from journalbot.model import Ask, Json, Settings
from journalbot.replies import batch_number
from journalbot.turns import sayings
from journalbot.vocabulary.quantities import QUANTITIES

if TYPE_CHECKING:
    from journalbot.journal.cellar import Cellar
    from journalbot.language.names import Names

# Words that may stand around an answer without saying anything of their own.
_FILLERS = frozenset(
    (
        "it",
        "it's",
        "its",
        "that",
        "that's",
        "thats",
        "this",
        "was",
        "is",
        "were",
        "be",
        "to",
        "in",
        "for",
        "of",
        "the",
        "a",
        "an",
        "i",
        "i'd",
        "we",
        "meant",
        "mean",
        "said",
        "say",
        "sorry",
        "no",
        "oh",
        "yes",
        "yep",
        "yeah",
        "ah",
        "um",
        "hmm",
        "one",
        "batch",
        "please",
        "should",
        "have",
        "been",
        "make",
        "definitely",
        "actually",
        "probably",
        "wine",
        "must",
        "with",
        "on",
        "from",
        "my",
        "our",
        "read",
        "reading",
        "course",
        "choice",
        "option",
        "number",
        "#",
        "and",
        "so",
        "well",
        "both",
    )
)
_ORDINALS = {
    "first": 0,
    "1st": 0,
    "former": 0,
    "second": 1,
    "2nd": 1,
    "third": 2,
    "3rd": 2,
    "fourth": 3,
    "4th": 3,
    "fifth": 4,
    "5th": 4,
    "last": -1,
    "latter": -1,
}
# What people say for a quantity beside its names: its unit.
_BY_UNIT = {
    "f": "temperature",
    "c": "temperature",
    "degrees": "temperature",
    "degree": "temperature",
    "deg": "temperature",
    "fahrenheit": "temperature",
    "celsius": "temperature",
    "°": "temperature",
    "b": "brix",
}
_LIKE_NUMBER = ("number", "amount", "temperature", "percent", "reading")


class Response(NamedTuple):
    """How a line answers a question: with what is now known, with a narrower question, or by putting it off."""

    given: Json | None = None
    still: Ask | None = None  # it was meant as an answer, but does not settle the question
    why: str = ""  # what is wrong with it, where it does not
    put_off: bool = False
    let_go: bool = False  # the note is to stay unfiled


class _Line(NamedTuple):
    text: Text
    words: list[str]  # those that say something, in order
    on: datetime.date
    ask: Ask
    cellar: "Cellar"

    def only(self, *spans: tuple[int, int]) -> bool:
        """Whether the line says nothing beside these ranges of tokens."""
        covered = {i for a, b in spans for i in range(a, b)}
        return all(i in covered or _says_nothing(w) for i, w in enumerate(self.text.words))


def read_response(
    line: str,
    ask: Ask,
    on: datetime.date,
    settings: Settings,
    names: "Names",
    cellar: "Cellar",
    *,
    strict: bool = False,
) -> Response | None:
    """How `line` answers `ask`; None where it is something else. `strict`: the question was not asked just before."""
    said = sayings.plain(line)
    if not strict:
        if said in sayings.LATER:
            return Response(put_off=True)
        if said in sayings.LET_GO:
            return Response(let_go=True)
        if said in sayings.YES and len(ask.choices) == 1:
            return _chosen(ask.choices[0], ask)
    if len(line) > 120:
        return None
    text = understand(line, names, on, settings)
    words = [w for w in text.words if not _says_nothing(w)]
    scene = _Line(text, words, on, ask, cellar)
    response = _READERS[ask.what](scene) if ask.what in _READERS else None
    if strict:
        # A bare figure some turns later is sooner a new reading than an answer.
        figure = any(m.kind in _LIKE_NUMBER for m in text.mentions) and not text.of("batch", "date")
        return None if figure or response is None or response.given is None else response
    return response or _by_place(scene) or _by_words(scene)


def _says_nothing(word: str) -> bool:
    return word in _FILLERS or not any(c.isalnum() or c in "°#%" for c in word)


def _chosen(choice: str, ask: Ask) -> Response | None:
    if ask.what == "batch":
        number = batch_number(choice)
        return Response({"batch": number}) if number else None
    if ask.what == "value":
        value = _figure(choice)
        return None if value is None else Response({"value": value})
    return Response({ask.what: choice})


def _figure(text: str) -> float | None:
    digits = "".join(c for c in text.replace(",", ".") if c.isdigit() or c in ".-")
    try:
        return float(digits)
    except ValueError:
        return None


def _batch(line: _Line) -> Response | None:
    offered = [n for n in map(batch_number, line.ask.choices) if n]
    mentions = [m for m in line.text.of("batch") if line.only((m.first, m.last))]
    if mentions:
        ref = mentions[0].value
        if ref.new is not None:
            return Response(still=line.ask, why=f"There is no batch {ref.new} yet.")
        fits = set(ref.fits) & set(offered) or set(ref.fits)
        return _narrowed(fits, line)
    if len(line.words) == 1 and line.words[0].isdecimal() and len(line.words[0]) < 7:
        number = int(line.words[0])
        if number in offered or number in line.cellar.batches:
            return Response({"batch": number})
        return Response(still=line.ask, why=f"There is no batch {number} yet.")
    for m in line.text.of("vessel"):
        if line.only((m.first, m.last)):
            inside = {b.number for b in line.cellar.in_vessel(m.value.name)}
            if inside:
                return _narrowed(inside & set(offered) or inside, line)
    return None


def _narrowed(fits: Iterable[int], line: _Line) -> Response | None:
    numbers = sorted(fits)
    if len(numbers) == 1:
        return Response({"batch": numbers[0]})
    if numbers:
        return Response(
            still=line.ask._replace(choices=tuple(f"batch {n}" for n in numbers)), why="That fits more than one."
        )
    return None


def _quantity(line: _Line) -> Response | None:
    named = list(line.text.of("quantity", "reading"))
    for m in named:
        quantity = m.value if m.kind == "quantity" else m.value.quantity
        others = [(n.first, n.last) for n in line.text.of(*_LIKE_NUMBER)]
        if line.only((m.first, m.last), *others):
            return Response({"quantity": str(quantity)})
    units = {_BY_UNIT[w] for w in line.words if w in _BY_UNIT}
    figures = [(n.first, n.last) for n in line.text.of(*_LIKE_NUMBER)]
    if len(units) == 1 and line.only(*figures, *((i, i + 1) for i, w in enumerate(line.text.words) if w in _BY_UNIT)):
        return Response({"quantity": units.pop()})
    if len(line.words) == 1 and line.words[0].isdecimal() and 0 < int(line.words[0]) <= min(len(line.ask.choices), 9):
        return _chosen(line.ask.choices[int(line.words[0]) - 1], line.ask)
    return None


def _value(line: _Line) -> Response | None:
    figures = [
        m
        for m in line.text.of(*_LIKE_NUMBER)
        if not any(
            o is not m and o.first <= m.first and m.last <= o.last and (o.last - o.first) > (m.last - m.first)
            for o in line.text.of(*_LIKE_NUMBER)
        )
    ]
    names = [(m.first, m.last) for m in line.text.of("quantity")]
    spans = {(m.first, m.last): m for m in figures}
    if len(spans) != 1 or not line.only(*spans, *names):
        return None
    return Response({"value": float(next(iter(spans.values())).value.value)})


def _date(line: _Line) -> Response | None:
    dates = line.text.of("date")
    if len(dates) == 1 and line.only((dates[0].first, dates[0].last)) and dates[0].value.iso:
        return Response({"date": dates[0].value.iso})
    if line.text.impossible and line.only(*((d.first, d.last) for d in line.text.impossible)):
        return Response(still=line.ask, why="That is no day of the calendar either.")
    return None


def _by_place(line: _Line) -> Response | None:
    """`the second one`, `the latter`."""
    if len(line.words) == 1 and line.words[0] in _ORDINALS and line.ask.choices:
        at = _ORDINALS[line.words[0]]
        if at < len(line.ask.choices):
            return _chosen(line.ask.choices[at], line.ask)
    return None


def _by_words(line: _Line) -> Response | None:
    """Words that only one of the choices holds."""
    said = set(line.words)
    fits = [c for c in line.ask.choices if said and said <= _words_of(c)]
    return _chosen(fits[0], line.ask) if len(fits) == 1 else None


def _words_of(choice: str) -> set[str]:
    row = QUANTITIES.get(choice)
    known = " ".join((row.label, *row.spellings)).lower() if row else ""
    return set(sayings.plain(f"{choice} {known}").split())


_READERS = {"batch": _batch, "quantity": _quantity, "value": _value, "date": _date}
