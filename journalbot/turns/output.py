"""What came of notes as JSON for programs, and, after many of them, what needs the person's attention."""

from collections.abc import Iterator
from dataclasses import dataclass, field

from journalbot.model import Entry, Json, Note, Reply
from journalbot.phrases import day, phrases
from journalbot.screen import one_line
from journalbot.turns.many import Reread

_CHANGES = 12  # notes read differently that are shown


def note_json(reply: Reply) -> Json:
    """A note and what became of it, in the project's JSON form."""
    out: Json = {"on": reply.note.on, "text": reply.note.text} if reply.note else {}
    if reply.ask:
        return out | {"ask": reply.ask.what, "choices": list(reply.ask.choices)}
    out["entries"] = [entry.to_json() for entry in reply.entries]
    if reply.withdrawn:
        out["withdrawn"] = [entry.to_json() for entry in reply.withdrawn]
    return out


@dataclass(slots=True)
class Attention:
    """What an import came to: counts, and the first notes of each sort that the person should look at."""

    notes: int = 0
    again: int = 0  # in the journal already
    entries: int = 0
    asking: int = 0
    unmatched: int = 0  # corrections of which it is not clear what they correct
    doubtful: int = 0
    unread: int = 0  # nothing but a remark
    shown: dict[str, list[Note]] = field(default_factory=dict)

    def add(self, reply: Reply) -> None:
        """Count one note."""
        self.notes += 1
        if reply.note and not reply.note.number:
            self.again += 1
            return
        self.entries += len(reply.entries)
        if reply.ask and reply.note and reply.note.kind == "correction":
            self.unmatched += 1
            self._show("unmatched", reply)
        elif reply.ask:
            self.asking += 1
            self._show("asks", reply)
        elif any(e.doubt for e in reply.entries):
            self.doubtful += 1
            self._show("doubts", reply)
        elif all(e.kind == "remark" for e in reply.entries) and not reply.withdrawn:
            self.unread += 1
            self._show("remarks", reply)

    def told(self, most: int) -> str:
        """The summary, naming at most so many notes of each sort."""
        filed = self.notes - self.again
        lines = [f"{_counted(filed, 'note')} filed, {_counted(self.entries, 'entry')}."]
        if self.again:
            were = "was" if self.again == 1 else "were"
            lines.append(f"{_counted(self.again, 'note')} of the notebook {were} in the journal already.")
        for sort, count, one, many, says in (
            ("asks", self.asking, "waits", "wait", "for an answer (say in the chat: what is waiting?)"),
            (
                "unmatched",
                self.unmatched,
                "corrects",
                "correct",
                "something that could not be told; nothing was changed",
            ),
            ("doubts", self.doubtful, "was", "were", "filed, but may hold a slip"),
            ("remarks", self.unread, "was", "were", "kept as a remark: no act, reading or plan was found in it"),
        ):
            if count:
                lines.append(f"{_counted(count, 'note')} {one if count == 1 else many} {says}:")
                notes = self.shown[sort][:most]
                lines += [f"  note {n.number}, {day(n.on)}: {one_line(n.text, 70)}" for n in notes]
                if count > len(notes):
                    lines.append(f"  and {count - len(notes)} more")
        return "\n".join(lines)

    def _show(self, sort: str, reply: Reply) -> None:
        shown = self.shown.setdefault(sort, [])
        if reply.note and len(shown) < 10:
            shown.append(reply.note)


def reread_json(done: Reread) -> Iterator[Json]:
    """One object for each note that is read differently now."""
    for note, before, now in done.changed:
        yield {
            "on": note.on,
            "text": note.text,
            "entries": [e.to_json() for e in now],
            "withdrawn": [e.to_json() for e in before],
        }


def reread_told(done: Reread) -> str:
    """What reading everything again came to."""
    lines = [
        f"{_counted(done.notes, 'note')} read again; {len(done.changed)} read differently now; "
        f"{done.kept} left as you corrected, answered or gave them."
    ]
    for note, before, now in done.changed[:_CHANGES]:
        lines.append(f"  note {note.number}, {day(note.on)}: {_of(before)} → {_of(now)}")
    if len(done.changed) > _CHANGES:
        lines.append(f"  and {len(done.changed) - _CHANGES} more")
    if done.asking:
        lines.append(
            f"{_counted(len(done.asking), 'note')} would be asked about today, and stay as they were filed: "
            + ", ".join(str(n.number) for n in done.asking[:_CHANGES])
        )
    return "\n".join(lines)


def _of(entries: list[Entry]) -> str:
    return one_line(phrases(entries), 80) or "waiting for an answer"


def _counted(count: int, what: str) -> str:
    return f"{count:,} {what if count == 1 else 'entries' if what == 'entry' else what + 's'}"
