"""One turn: text in, reply out. Decides what a line is, calls what reads it, and files what was read, all in one go.

What a turn has changed is on the disk before its reply is returned. The day is passed in; no clock is read here.
"""

import datetime
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import TYPE_CHECKING

from journalbot.journal.store import Journal
from journalbot.model import Answer, Ask, Entry, Json, Note, Reply
from journalbot.turns.words import Words

if TYPE_CHECKING:
    from journalbot.notes.reader import Reading
    from journalbot.questions.query import Query
    from journalbot.turns.asks import Response
    from journalbot.turns.many import Reread

_RECENT = 100  # notes looked back over for one typed twice
LONGEST = 10_000  # characters of a note that is read; a longer one is kept as it is


class Assistant:
    """The one who sees both what was said and the journal. `turn` is a plain call; what it remembers is the talk."""

    def __init__(self, journal: Journal) -> None:
        self.journal = journal
        self.words = Words(journal)
        self._table: tuple[
            Ask, ...
        ] = ()  # questions about notes just put to the person; the first is to be answered next
        self._mine: list[int] = []  # notes asked about in this talk, the latest last
        self._before: Query | None = None  # the last question understood, for "and batch 4?"
        self._open: tuple[Ask, Callable[[int], Reply | None]] | None = (
            None  # "which batch?", and what to do once it is named
        )
        self._revert: Callable[[], str] | None = None  # how to take back what was just set or taught

    # ---- one turn

    def turn(self, text: str, today: datetime.date) -> Reply:
        """Any line typed: a note, question, answer, correction or setting, a word taught, a call for help."""
        if not text.strip():
            return Reply("")
        table, self._table = self._table, ()
        revert, self._revert = self._revert, None
        return (
            self._answered(text, today, table)
            or self._about_us(text, today)
            or self._asked(text, today)
            or self._told(text, today)
            or self._made_again(text, today)
            or self._put_right(text, today, revert)
            or self._noted(text, today)
        )

    def note(self, text: str, on: datetime.date) -> Reply:
        """Keep and file a note, or do what a correction says; JournalError, and nothing kept, where that fails."""
        return self._put_right(text, on, None) or self._noted(text, on)

    def keep(self, text: str, on: datetime.date) -> Reply:
        """The same without wording, for notes by the hundred; what must be asked is kept, but not put to the person."""
        corrected = self._put_right(text, on, None)
        if corrected:
            return corrected
        with self.journal.turn():
            note = self.journal.add_note(on.isoformat(), text)
            entries, ask = self.read(note, {})
        return Reply("", note, tuple(entries), ask=ask)

    def ask(self, text: str, today: datetime.date) -> Answer:
        """Answer a question from the journal; nothing is written."""
        from journalbot.questions import ask

        answer, query = ask(text, today, self.journal, self.words.names(), self._before)
        self._before = query or self._before
        if answer.ask and query:
            self.hold(answer.ask, lambda batch: self._answer_reply(self.ask(f"and batch {batch}?", today)))
        return answer

    def pending(self) -> list[tuple[Ask, Note]]:
        """The notes that wait for an answer, the oldest first, each with what must be known."""
        return [(ask, note) for ask in self.journal.open_asks() if (note := self.journal.note(ask.note))]

    # ---- many at once

    def import_lines(self, lines: Iterable[str]) -> Iterator[Reply]:
        """File a notebook, JSON lines or plain text; a reply for each note, given once it is on the disk.

        ImportFileError, with the line, for one that cannot be read; what came before it has been kept.
        """
        from journalbot.turns.many import import_lines

        return import_lines(self, lines)

    def reread(self, progress: Callable[[int, int], None] | None = None) -> "Reread":
        """Read every note again with the reader as it is now; what the person corrected or answered stays as it is."""
        from journalbot.turns.many import reread

        return reread(self, progress)

    # ---- used by both

    def reading(self, note: Note, given: Json) -> "Reading":
        """What a note kept before says, with what was answered about it; nothing is filed."""
        from journalbot.notes.reader import Reading, read_note
        from journalbot.turns.then import cellar_for

        if len(note.text) > LONGEST:
            return Reading((Entry("remark", None, note.on, {"text": note.text}, span=(0, len(note.text))),))
        on, cellar = datetime.date.fromisoformat(note.on), cellar_for(self.journal, note)
        reading = read_note(note.text, on, self.journal.settings, self.words.names(), cellar, given)
        return reading._replace(ask=reading.ask and reading.ask._replace(note=note.number))

    def read(self, note: Note, given: Json) -> tuple[list[Entry], Ask | None]:
        """Read a note kept before and file it, or keep what must be asked; inside a turn of the journal."""
        self._learn_shorthand(note.text)
        reading = self.reading(note, given)
        if reading.ask:
            self.journal.put_ask(reading.ask)
            return [], reading.ask
        filed = self.journal.file(note.number, reading.entries)
        self.words.take_in(filed)
        return filed, None

    def _learn_shorthand(self, text: str) -> None:
        """Remember what a note sets equal to a word of the vocabulary (`tbl = tablet`)."""
        if "=" not in text:
            return
        from journalbot.notes.shorthand import read_shorthand

        for word, meaning in read_shorthand(text, self.words.names()):
            self.words.teach(word, {"word": meaning})

    def put(self, ask: Ask) -> str:
        """Put a question about a note to the person, to be answered by the next line; its wording."""
        from journalbot import replies

        self._table = (ask,)
        self._mine.append(ask.note)
        return replies.asked(ask, self.journal.cellar())

    def hold(self, ask: Ask, named: Callable[[int], Reply | None]) -> None:
        """Wait, for one line, for the batch that a question or a correction is about; `named` then goes on with it."""
        self._open = (ask, named)

    # ---- what a line can be

    def _noted(self, text: str, on: datetime.date) -> Reply:
        from journalbot import replies
        from journalbot.turns.care import cautions

        twin = self._twin(text, on.isoformat())
        with self.journal.turn():
            note = self.journal.add_note(on.isoformat(), text)
            entries, ask = self.read(note, {})
            warned = cautions(self.journal, text[:LONGEST], entries, on)
        said = self.put(ask) if ask else replies.filed(entries, self.journal.cellar(), note.on)
        if len(text) > LONGEST:
            said = replies.too_long(LONGEST)
        if twin:
            said += f" {replies.same_again(twin)}"
        return Reply("\n".join((said, *warned)), note, tuple(entries), ask=ask, cautions=warned)

    def _answered(self, text: str, today: datetime.date, table: Sequence[Ask]) -> Reply | None:
        if reply := self._named(text, today):
            return reply
        from journalbot import replies
        from journalbot.turns.asks import read_response

        settings, cellar = self.journal.settings, self.journal.cellar()
        if table:
            response = read_response(text, table[0], today, settings, self.words.names(), cellar)
            return self._respond(text, today, table, response) if response else None
        open_asks = {a.note: a for a in self.journal.open_asks()}
        recent = [open_asks[n] for n in reversed(self._mine) if n in open_asks][:5] or (
            list(open_asks.values()) if len(open_asks) == 1 else []
        )
        fits = [
            (a, r)
            for a in recent
            if (r := read_response(text, a, today, settings, self.words.names(), cellar, strict=True))
        ]
        if len(fits) == 1:
            return self._respond(text, today, [fits[0][0]], fits[0][1])
        if fits:  # an answer, but to which?
            self._table = tuple(a for a, _ in fits)
            notes = [note for a in self._table if (note := self.journal.note(a.note))]
            return Reply(replies.waiting(self._table, notes, cellar), ask=self._table[0])
        return None

    def _respond(self, text: str, today: datetime.date, table: Sequence[Ask], response: "Response") -> Reply:
        """Do what an answer to the first question on the table says, then put the next."""
        from journalbot import replies
        from journalbot.turns.changes import ANSWERED

        ask, rest = table[0], tuple(table[1:])
        cellar = self.journal.cellar()
        if response.still:
            self._table = (response.still, *rest)
            return Reply(f"{response.why} {replies.asked(response.still, cellar)}", ask=response.still)
        if response.put_off:
            return Reply(replies.later(len(self.journal.open_asks())))
        with self.journal.turn():
            answer = self.journal.add_note(today.isoformat(), text, "answer")
            note = self.journal.note(ask.note)
            assert note is not None  # an ask refers to a note by a foreign key
            given = {**(response.given or {}), ANSWERED: answer.number - note.number}
            given = self.journal.answer_ask(note.number, given)
            if response.let_go:
                remark = Entry("remark", None, note.on, {"text": note.text}, span=(0, len(note.text)))
                entries, again = self.journal.file(note.number, [remark], origin="corrected"), None
                said = replies.let_go(note)
            else:
                entries, again = self.read(note, given)
                said = "" if again else replies.filed(entries, self.journal.cellar(), today.isoformat())
        if again:
            said, self._table = self.put(again), (again, *rest)
        elif rest:
            self._table = rest
            following = self.journal.note(rest[0].note)
            said += (
                f"\n{replies.reminder(following) if following else ''} {replies.asked(rest[0], self.journal.cellar())}"
            )
        return Reply(said, note, tuple(entries), ask=again)

    def _named(self, text: str, today: datetime.date) -> Reply | None:
        """Go on with a question or a correction once the batch that it is about has been named."""
        from journalbot.turns.asks import read_response

        held, self._open = self._open, None
        if held is None:
            return None
        ask, go_on = held
        response = read_response(text, ask, today, self.journal.settings, self.words.names(), self.journal.cellar())
        batch = (response.given or {}).get("batch") if response else None
        return go_on(batch) if isinstance(batch, int) else None

    def _about_us(self, text: str, today: datetime.date) -> Reply | None:
        """Help, what is waiting, the settings, the words taught: whole lines, so that no note is taken for one."""
        from journalbot import replies
        from journalbot.turns import sayings

        said = sayings.plain(text)
        if said in sayings.WAITING:
            waiting = self.pending()
            self._table = tuple(ask for ask, _ in waiting)
            return Reply(
                replies.waiting(self._table, [note for _, note in waiting], self.journal.cellar()),
                ask=next(iter(self._table), None),
            )
        if said in sayings.SETTINGS:
            return Reply(replies.settings_said(self.journal.settings))
        if said in sayings.TAUGHT:
            return Reply(replies.taught_said(self.journal.taught()))
        if said in sayings.HELP:
            from journalbot.turns.help import help_text

            return Reply(help_text(self.journal))
        return None

    def _asked(self, text: str, today: datetime.date) -> Reply | None:
        from journalbot.questions.recognise import is_question, surely_asks

        if not is_question(text):
            return None
        before, held = self._before, self._open
        answer = self.ask(text, today)
        doubtful = answer.understood_as is None and not text.rstrip().endswith("?") and not surely_asks(text)
        if doubtful and self._tells(text, today):
            self._before, self._open = before, held  # it only looked like a question: "What was left of b6 is bottled"
            return None
        for key in answer.cautions:  # told in the talk: once a day a kind is enough, but for dangers
            self.journal.mark(f"caution {key}", today.isoformat())
        return self._answer_reply(answer)

    def _tells(self, text: str, today: datetime.date) -> bool:
        """Whether a line, read as a note, holds more than a remark."""
        reading = self.reading(Note(self.journal.count_notes() + 1, today.isoformat(), text), {})
        return reading.ask is not None or any(e.kind != "remark" for e in reading.entries)

    def _answer_reply(self, answer: Answer) -> Reply:
        from journalbot import replies

        return Reply(replies.answered(answer), answer=answer, ask=answer.ask)

    def _put_right(self, text: str, on: datetime.date, revert: Callable[[], str] | None) -> Reply | None:
        from journalbot.turns.changes import put_right

        return put_right(self, text, on, revert)

    def _told(self, text: str, today: datetime.date) -> Reply | None:
        """A setting, or a word taught."""
        from journalbot import replies
        from journalbot.turns.intervals import read_intervals
        from journalbot.turns.settings import read_setting
        from journalbot.turns.teaching import read_lesson

        changes = read_setting(text) or read_intervals(text, self.journal.settings.intervals)
        if isinstance(changes, str):
            return Reply(changes)
        if changes:
            before = self.journal.settings
            now = self.journal.change_settings(**changes)
            was = {name: getattr(before, name) for name in changes}
            self._revert = lambda: replies.settings_said(self.journal.change_settings(**was))
            return Reply(replies.settings_said(now))
        lesson = read_lesson(text, today, self.journal.settings, self.words.names(), self.journal.cellar())
        if lesson is None:
            return None
        if lesson.meaning is None:
            return Reply(lesson.why)
        earlier = self.words.teach(lesson.word, lesson.meaning)
        self._revert = lambda: self._taught_again(lesson.word, earlier)
        return Reply(replies.lesson_said(lesson.word, lesson.meaning, self.journal.cellar()))

    def _made_again(self, text: str, today: datetime.date) -> Reply | None:
        """A wine to be made again, laid out as plans."""
        if "again" not in text.lower() and "repeat" not in text.lower() and "remake" not in text.lower():
            return None
        from journalbot.turns.again import make_again

        return make_again(self, text, today)

    def _taught_again(self, word: str, meaning: Json | None) -> str:
        """Give a word back the meaning that it had before, if any."""
        from journalbot import replies

        if meaning is None:
            self.words.unteach(word)
            return replies.unlearnt(word)
        self.words.teach(word, meaning)
        return replies.lesson_said(word, meaning, self.journal.cellar())

    # ---- small things

    def _twin(self, text: str, on: str) -> int | None:
        """The number of a note of that day that says the same, among those typed lately."""
        said = text.split()
        last = self.journal.count_notes()
        recent = self.journal.notes(max(1, last - _RECENT + 1))
        return next((n.number for n in recent if n.on == on and n.kind == "note" and n.text.split() == said), None)
