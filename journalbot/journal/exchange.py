"""A journal as JSON lines, out and in. The settings come first, then each note with what became of it.

Beside the fields of the format a line may hold, so that nothing is lost:

    kind       of the note, where it is a "correction" or an "answer"
    read       for each of `entries`, where they were read from the text: [start, end] of the words, and a doubt if any;
               without it entries count as given with the note, and are never read again
    slips      entries that the note filed and took back itself
    ask        what the note waits for, with its `choices` and what it is `about`
    answers    what has been answered to the note's questions
    taught     (on the first line) words taught, with their meanings
"""

import json
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from journalbot.errors import ImportFileError
from journalbot.journal.store import NOTE_KINDS, Journal
from journalbot.model import Ask, Entry, Json, Note, Settings

_ALWAYS = ("units", "day_first", "currency")  # settings that an export names even where they are the defaults
_DAY = re.compile(r"\d{4}-\d{2}-\d{2}")
_DATE = re.compile(r"\d{4}(-\d{2}(-\d{2})?)?")
_LARGEST = 10**9  # batch number or place in a text
_VAST = 1e15  # any number
_NUMBERS = ("value", "amount", "volume", "weight", "count", "size", "capacity", "price", "score", "out_of", "times",
            "vintage")
_TEXTS = ("quantity", "unit", "material", "yeast", "culture", "stage", "vessel", "name", "colour", "closure", "item",
          "currency", "what", "due", "reason", "form", "toast", "origin", "text", "to")


@dataclass(frozen=True, slots=True)
class Opening:
    """What the first line of a notebook says about the journal."""

    settings: Json
    taught: dict[str, Json] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Row:
    """One note of a notebook."""

    line: int  # where it stands in the file
    on: str
    text: str
    kind: str = "note"
    entries: tuple[Entry, ...] | None = None  # None: to be read from the text
    withdrawn: tuple[Entry, ...] = ()
    slips: tuple[Entry, ...] = ()
    was_read: bool = False  # whether the entries were read from the text, and may be again
    ask: Ask | None = None
    answers: Json | None = None


# ---- out


def export(journal: Journal) -> Iterator[str]:
    """The whole journal, a line at a time, without line ends."""
    defaults = Settings._field_defaults
    settings = journal.settings._asdict()
    first: Json = {"settings": {k: v for k, v in settings.items() if k in _ALWAYS or v != defaults[k]}}
    if taught := journal.taught():
        first["taught"] = taught
    yield _dump(first)
    asks = {ask.note: ask for ask in journal.open_asks()}
    for note in journal.notes():
        yield _dump(_note_row(journal, note, asks.get(note.number)))


def _note_row(journal: Journal, note: Note, ask: Ask | None) -> Json:
    row: Json = {"on": note.on, "text": note.text}
    if note.kind != "note":
        row["kind"] = note.kind
    withdrawn, new = journal.changes_by(note.number)
    if new or not ask:
        row["entries"] = [e.to_json() for e in new]
    if new and not withdrawn and journal.was_read(note.number) and all(e.note == note.number for e in new):
        row["read"] = [[*e.span, e.doubt] if e.doubt else [*e.span] for e in new]
    for name, entries in (("withdrawn", withdrawn), ("slips", journal.slips(note.number))):
        if entries:
            row[name] = [e.to_json() for e in entries]
    if ask:
        row |= {"ask": ask.what, "choices": list(ask.choices), "about": ask.about}
    if answers := journal.answers(note.number):
        row["answers"] = answers
    return row


def _dump(row: Json) -> str:
    return json.dumps(row, ensure_ascii=False)


# ---- in


def read_notebook(lines: Iterable[str]) -> Iterator[Opening | Row]:
    """The rows of a notebook in JSON lines, as they come; ImportFileError, with the line's number, for a bad one."""
    for number, line in enumerate(lines, 1):
        text = line.removeprefix("\ufeff").strip() if number == 1 else line.strip()
        if not text:
            continue
        try:
            yield _row(number, json.loads(text, parse_constant=_no_constant))
        except _Bad as error:
            raise ImportFileError(f"line {number}: {error}") from None
        except json.JSONDecodeError as error:
            what = f"not JSON ({error.msg.lower()} at character {error.pos + 1})."
            raise ImportFileError(f"line {number}: {what}") from None
        except (RecursionError, ValueError):
            what = "holds something that cannot be read (a huge number, or deep nesting)."
            raise ImportFileError(f"line {number}: {what}") from None


def file_row(journal: Journal, row: Row) -> tuple[Note, list[Entry]]:
    """Add a row's note, and file its entries as they are given; a row without entries is for the reader."""
    with journal.turn():
        note = journal.add_note(row.on, row.text, row.kind)
        if row.answers:
            journal.answer_ask(note.number, row.answers)
        if row.ask:
            journal.put_ask(Ask(row.ask.what, row.ask.choices, row.ask.about, note.number))
        entries = list(row.entries or ())
        olds: list[int] = []
        for entry in row.withdrawn:
            olds.append(_standing(journal, entry, olds, row.line))
        filed = [journal.replace(old, entry, note.number) for old, entry in zip(olds, entries, strict=False)]
        journal.withdraw(olds[len(entries):], note.number)
        origin = "read" if row.was_read else "corrected" if row.kind == "correction" else "given"
        filed += journal.file(note.number, entries[len(olds):], origin=origin)
        journal.withdraw([e.id for e in journal.file(note.number, row.slips, origin=origin)], note.number)
    return note, filed


def open_with(journal: Journal, opening: Opening) -> None:
    """Take over what a notebook's first line says."""
    with journal.turn():
        journal.change_settings(**opening.settings)
        for word, meaning in opening.taught.items():
            journal.teach(word, meaning)


def _standing(journal: Journal, entry: Entry, taken: list[int], line: int) -> int:
    """The entry taken back by a correction: the latest filed that says just this, and is not taken back already."""
    same = [e for e in journal.entries(batch=entry.batch, kinds=[entry.kind], since=entry.date, until=entry.date)
            if _dump(e.to_json()) == _dump(entry.to_json()) and e.id not in taken]
    if not same:
        said = _dump(entry.to_json())
        raise ImportFileError(f"line {line}: takes back an entry that no line before it holds: {said}")
    return max(e.id for e in same)


class _Bad(Exception):
    """What is wrong with a line."""


def _no_constant(name: str) -> float:
    raise _Bad(f"{name} is no number that an entry can hold.")


def _row(line: int, data: object) -> Opening | Row:
    if not isinstance(data, dict):
        raise _Bad("a line is a JSON object, such as {\"on\": \"2025-10-04\", \"text\": \"racked batch 3\"}.")
    if "settings" in data and "text" not in data:
        return Opening(_settings(data["settings"]), _taught(data.get("taught", {})))
    for name in ("on", "text"):
        if not isinstance(data.get(name), str):
            raise _Bad(f"a note needs \"{name}\", a text.")
    if not _is_date(data["on"], _DAY):
        raise _Bad(f"\"on\" is the day of the note, such as 2025-10-04, not {data['on']!r}.")
    _sound(data)
    kind = data.get("kind", "note")
    if kind not in NOTE_KINDS:
        raise _Bad(f"\"kind\" of a note is one of {', '.join(NOTE_KINDS)}, not {kind!r}.")
    answers = data.get("answers")
    if answers is not None and not isinstance(answers, dict):
        raise _Bad("\"answers\" is an object.")
    ask = _ask(data)
    given = data.get("entries", [] if ask else None)  # what waits for an answer is not read again either
    entries = None if given is None else _entries(given, data.get("read"))
    withdrawn, slips = (_entries(data.get(name, []), None) for name in ("withdrawn", "slips"))
    return Row(line, data["on"], data["text"], kind, entries, withdrawn, slips, "read" in data, ask, answers)


def _entries(given: object, read: object) -> tuple[Entry, ...]:
    if not isinstance(given, list):
        raise _Bad("\"entries\" and \"withdrawn\" are lists of objects.")
    entries = tuple(map(_entry, given))
    if read is None:
        return entries
    if not isinstance(read, list) or len(read) != len(entries):
        raise _Bad("\"read\" is a list with one [start, end] for each entry.")
    return tuple(map(_with_span, entries, read))


def _with_span(entry: Entry, read: object) -> Entry:
    match read:
        case [int(start), int(end)] if 0 <= start <= end <= _LARGEST:
            doubt = None
        case [int(start), int(end), str(doubt)] if 0 <= start <= end <= _LARGEST:
            pass
        case _:
            raise _Bad("\"read\" is a list with one [start, end] for each entry.")
    return Entry(entry.kind, entry.batch, entry.date, entry.fields, entry.time, (start, end), doubt)


def _entry(data: object) -> Entry:
    if not isinstance(data, dict):
        raise _Bad("an entry is an object with \"kind\", \"batch\" and \"date\".")
    kind, batch, date, time = data.get("kind"), data.get("batch"), data.get("date"), data.get("time")
    if not isinstance(kind, str) or not re.fullmatch(r"[a-z_]{1,40}", kind):
        raise _Bad(f"an entry needs a \"kind\" such as \"reading\", not {kind!r}.")
    if batch is not None and (not isinstance(batch, int) or isinstance(batch, bool) or not 0 < batch <= _LARGEST):
        raise _Bad(f"\"batch\" is a number from 1 up, or null, not {batch!r}.")
    if not isinstance(date, str) or not _is_date(date, _DATE):
        raise _Bad(f"\"date\" of an entry is a date such as 2025-10-04, 2025-10 or 2025, not {date!r}.")
    if time is not None and (not isinstance(time, str) or not re.fullmatch(r"([01]\d|2[0-3]):[0-5]\d", time)):
        raise _Bad(f"\"time\" is a time such as 18:30, not {time!r}.")
    for names, sort, called in ((_NUMBERS, int | float, "a number"), (_TEXTS, str, "a text")):
        for name in names:
            if name in data and (not isinstance(data[name], sort) or isinstance(data[name], bool)):
                raise _Bad(f"\"{name}\" of an entry is {called}, not {data[name]!r}.")
    for part in data.get("with", ()) if kind == "blend" and isinstance(data.get("with", ()), list) else ():
        other = part.get("batch") if isinstance(part, dict) else None
        if not isinstance(other, int) or not 0 < other <= _LARGEST:
            raise _Bad("\"with\" of a blend is a list of objects, each with the number of a \"batch\".")
    return Entry.from_json(data)


def _ask(data: Mapping[str, Any]) -> Ask | None:
    what, choices, about = data.get("ask"), data.get("choices", []), data.get("about", "")
    if what is None:
        return None
    if not isinstance(what, str) or not isinstance(choices, list) or not isinstance(about, str):
        raise _Bad("\"ask\" and \"about\" are texts, \"choices\" is a list.")
    return Ask(what, tuple(map(str, choices)), about)


def _settings(given: object) -> Json:
    if not isinstance(given, dict):
        raise _Bad("\"settings\" is an object.")
    known = {name: type(default) for name, default in Settings._field_defaults.items()}
    for name, value in given.items():
        if name not in known:
            raise _Bad(f"{name!r} is no setting; known are {', '.join(known)}.")
        if not isinstance(value, known[name]) and not (name == "bottle_price" and isinstance(value, int | float)):
            raise _Bad(f"the setting {name!r} cannot be {value!r}.")
    if given.get("units", "us") not in ("us", "metric"):
        raise _Bad("\"units\" is \"us\" or \"metric\".")
    return dict(given)


def _taught(given: object) -> dict[str, Json]:
    if not isinstance(given, dict):
        raise _Bad("\"taught\" is an object.")
    return dict(given)


def _is_date(text: str, form: re.Pattern[str]) -> bool:
    from datetime import date

    if not form.fullmatch(text):
        return False
    try:
        date.fromisoformat(f"{text}-01-01"[:10])
    except ValueError:
        return False
    return True


def _sound(value: object) -> None:
    """Refuse what no journal can hold: halves of characters, numbers without bound."""
    if isinstance(value, str):
        try:
            value.encode()
        except UnicodeEncodeError:
            raise _Bad("the text holds half a character (a lone surrogate), which is not valid Unicode.") from None
    elif isinstance(value, dict):
        for key, item in value.items():
            _sound(key)
            _sound(item)
    elif isinstance(value, list):
        for item in value:
            _sound(item)
    elif isinstance(value, int | float) and abs(value) > _VAST:
        raise _Bad("a number is too large.")
