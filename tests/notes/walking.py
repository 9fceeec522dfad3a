"""A notebook gone through note by note, each read in other ways too, against the journal as it stood at the time."""

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from journalbot.assistant import Assistant
from journalbot.journal.store import Journal
from journalbot.language.text import Text, understand
from journalbot.model import Entry, Note
from journalbot.notes.reader import Reading

from ..corpus.scoring import lines, rows

Json = dict[str, Any]


@dataclass(frozen=True)
class Page:
    """A note, and the journal as it stands before the note is filed."""

    on: str
    text: str
    assistant: Assistant

    def read(self, text: str | None = None) -> Reading:
        """What the note is read as, or another text in its place."""
        note = Note(self.assistant.journal.count_notes() + 1, self.on, self.text if text is None else text)
        return self.assistant.reading(note, {})

    def understood(self) -> Text:
        """What the note mentions."""
        names, settings = self.assistant.words.names(), self.assistant.journal.settings
        return understand(self.text, names, date.fromisoformat(self.on), settings)


def walk(name: str, folder: Path, extra: Iterable[Entry] = ()) -> Iterator[Page]:
    """The pages of a notebook in order; each note is filed once its page has been looked at.

    The journal holds the `extra` entries before the first of them.
    """
    with Journal.open(folder / f"{name}.db") as journal:
        with journal.turn():
            for entry in extra:
                journal.file(journal.add_note(entry.date, f"{entry.kind}, as given").number, [entry], origin="given")
        assistant = Assistant(journal)
        notebook = rows(name, "notes")
        opening = [row for row in notebook if "settings" in row]
        for _ in assistant.import_lines(lines(opening)):
            pass
        for row in notebook:
            if "text" in row:
                yield Page(row["on"], row["text"], assistant)
                assistant.keep(row["text"], date.fromisoformat(row["on"]))


def facts(reading: Reading) -> list[str]:
    """What a reading says, in whatever letter case it was written: what is asked, or the entries but for remarks."""
    if reading.ask:
        return [f"asks for {reading.ask.what}"]
    entries = [entry.to_json() for entry in reading.entries if entry.kind != "remark"]
    return sorted(json.dumps(entry, sort_keys=True, ensure_ascii=False).casefold() for entry in entries)
