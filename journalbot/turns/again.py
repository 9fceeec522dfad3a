"""A wine to be made again: `make batch 3 again, 5 gal starting Oct 10` files the plans of a new batch."""

import datetime
import re
from typing import TYPE_CHECKING

from journalbot.model import Ask, Entry, Reply

if TYPE_CHECKING:
    from journalbot.assistant import Assistant
    from journalbot.language.lexicon import Mention
    from journalbot.language.text import Text
    from journalbot.winemaking.remake import Recipe

_SAID = re.compile(
    r"^\s*(?:please |let's |lets |i want to |i(?:'ll| will| would like to| am going to) )*"
    r"(?:(?:make|do|brew|repeat|plan)\b.*\b(?:again|once more|another time)\b|(?:remake|repeat)\b)",
    re.IGNORECASE,
)


_VERBS = frozenset(("make", "do", "brew", "repeat", "plan", "remake"))
_SMALL = frozenset(("the", "my", "our", "that", "a", "an", "same", "wine", "of", "'s"))


def make_again(assistant: "Assistant", text: str, today: datetime.date) -> Reply | None:
    """File what a wine's making was as plans of a new batch, at the volume and from the day that are said.

    None where the line does not ask for that. Where it fits several wines, or the wine's own volume is not known,
    nothing is filed and the reply says what is missing.
    """
    if not _SAID.match(text) or text.rstrip().endswith("?"):
        return None
    from journalbot.language.dates import find_dates
    from journalbot.language.text import understand
    from journalbot.questions.whom import label_of, whom
    from journalbot.winemaking.remake import how_made, scaled
    from journalbot.winemaking.units import litres

    journal, names = assistant.journal, assistant.words.names()
    cellar = journal.cellar()
    read = understand(text, names, today, journal.settings)
    who = whom(read, read.of("batch", "stranger"), names, cellar)
    meant = who.numbers
    if not _only_named(read):
        return None
    if not meant:
        return Reply(f"The journal has no {who.unknown} to make again.") if who.unknown else None
    if len(meant) > 1:
        choices = tuple(label_of(cellar.batches[n]) for n in meant)
        return Reply(f"Which of them: {', '.join(choices)}?", ask=Ask("batch", choices))
    volume = next((litres(m.value.value, m.value.unit) for m in _volumes(read)), None)
    entries = journal.entries(batch=meant[0])
    try:
        recipe = how_made(meant[0], entries, cellar.batches[meant[0]].volume)
        recipe = scaled(recipe, volume) if volume else recipe
    except ValueError as error:
        return Reply(f"That cannot be planned: {error}.")
    # "from 1 March" is a day here, though in a note it might be anything.
    days = find_dates(read.tokens, today, day_first=journal.settings.day_first)
    if any(d.future_iso and len(d.future_iso) < 10 for d in days):
        return Reply("From which day should it be planned? Say it with a day, as in “… starting 5 October”.")
    day = next((d.future_iso for d in days if d.future_iso), today.isoformat())
    number = cellar.next_number()
    with journal.turn():
        note = journal.add_note(today.isoformat(), text)
        filed = journal.file(note.number, _plans(recipe, number, day, today), origin="given")
        assistant.words.take_in(filed)
    told = _told(recipe, number, day, filed, label_of(cellar.batches[meant[0]]), journal.settings.units)
    return Reply(told, note, tuple(filed))


def _only_named(read: "Text") -> bool:
    """Whether the verb has a wine for its object and nothing else: "make sure to rack batch 3 again" has not."""
    at = next((i for i, w in enumerate(read.words) if w in _VERBS), -1)
    end = next((i for i, w in enumerate(read.words) if i > at and w in ("again", "once", "another")), at + 1)
    named = {i for m in read.of("batch", "stranger") for i in range(m.first, m.last)}
    first = next((i for i in range(at + 1, len(read.words)) if read.words[i] not in _SMALL), -1)
    return at >= 0 and first in named and all(i in named or read.words[i] in _SMALL for i in range(at + 1, end))


def _volumes(read: "Text") -> "list[Mention]":
    from journalbot.vocabulary.units import UNITS

    return [m for m in read.of("amount") if m.value.unit in UNITS and UNITS[m.value.unit].dimension == "volume"]


def _plans(recipe: "Recipe", number: int, day: str, today: datetime.date) -> list[Entry]:
    """The start and all that follows it as plans; the start is no entry of its own before it is made."""
    from journalbot.winemaking.remake import plans, said

    started = datetime.date.fromisoformat(day)
    start = [s for s in recipe.steps if s.kind == "start"]
    first = [Entry("plan", number, today.isoformat(), {"what": said(s), "due": day}) for s in start]
    return [*first, *plans(recipe, number, started, today)]


def _told(recipe: "Recipe", number: int, day: str, filed: list[Entry], made_like: str, units: str) -> str:
    from journalbot.questions.measures.readings import value_said
    from journalbot.questions.measures.vessels import volume_said
    from journalbot.questions.says import day_said
    from journalbot.vocabulary.quantities import QUANTITIES

    head = f"Batch {number} is planned like {made_like}, for {volume_said(recipe.litres, units)}, from {day_said(day)}:"
    lines = [f"  {day_said(str(e.get('due')))}: {e.get('what')}" for e in filed]
    watch = [
        f"  watch {QUANTITIES[w.quantity].label}: it was {value_said(w.value, w.unit)} at the {w.at}"
        for w in recipe.watches[:3]
    ]
    better = [f"  {c.advice} (tasted: {', '.join(c.words)})" for c in recipe.changes]
    return "\n".join([head, *lines, *watch, *better, "“undo” takes these plans back."])
