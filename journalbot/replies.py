"""What the assistant says back about notes: what was filed, what must be asked, what a correction changed.

One short line where one will do, batch by batch, so that a misreading is seen at once. Plain text; `screen.harmless`
makes it fit to show.
"""

from collections.abc import Iterable, Mapping, Sequence
from itertools import groupby

from journalbot.journal.cellar import Cellar
from journalbot.model import Answer, Ask, Entry, Json, Note, Settings
from journalbot.phrases import day, label, phrase, phrases
from journalbot.screen import listed, one_line
from journalbot.vocabulary.quantities import QUANTITIES

KEPT = "Kept as a note; nothing in it was read as an act, a reading or a plan."
UNMATCHED = "I cannot tell what that puts right, so nothing was changed; say which batch, act or figure is meant."
_QUESTIONS = {
    "batch": "Which batch is that",
    "quantity": "What is {about} a reading of",
    "value": "{about} cannot be right. What was it",
    "date": "{about} is no day I know. Which day was it",
}
_NAMELESS = {"quantity": "that figure", "value": "That figure", "date": "That"}


def batch_head(batch: int | None, cellar: Cellar) -> str:
    """`Batch 3, Hillside Red`; `Cellar` for what is of no one batch."""
    if batch is None:
        return "Cellar"
    known = cellar.batches.get(batch)
    called = label(known) if known else ""
    return f"Batch {batch}{f', {called}' if called else ''}"


def filed(entries: Sequence[Entry], cellar: Cellar, on: str) -> str:
    """What was filed, per batch and date; the date is told where it is not that of the note."""
    entries = [e for e in entries if e.kind != "remark"] + [e for e in entries if e.kind == "remark"]
    if all(e.kind == "remark" for e in entries):
        return KEPT
    groups: dict[tuple[int | None, str], list[Entry]] = {}
    for entry in entries:
        at = (entry.batch, entry.date)
        if entry.kind == "remark":  # told beside what was read, not as a line of its own
            at = next((key for key in groups if key[0] == entry.batch), next(iter(groups)))
        groups.setdefault(at, []).append(entry)
    said = [f"{_head(batch, date, cellar, on)}: {phrases(group)}." for (batch, date), group in groups.items()]
    return " ".join([*said, *doubts(entries)])


def doubts(entries: Iterable[Entry]) -> list[str]:
    """What may be wrong with entries that were filed all the same."""
    return [f"Check this: {one_line(d, 120).rstrip('.')}." for d in dict.fromkeys(e.doubt for e in entries) if d]


def same_again(number: int) -> str:
    """Said where a note is the same as one of that day."""
    return f"This says the same as note {number} of that day, and both are kept. If it was typed twice, say undo."


def too_long(longest: int) -> str:
    """Said where a note is kept whole, but not read."""
    return f"Kept whole, but not read: more than {longest:,} characters. Type it again in parts, or import a notebook."


def asked(ask: Ask, cellar: Cellar) -> str:
    """The question to the person, with the choices named."""
    about = f"“{one_line(ask.about, 40)}”" if ask.about else _NAMELESS.get(ask.what, "")
    question = _QUESTIONS.get(ask.what, "What is meant by {about}").format(about=about)
    choices = choices_said(ask, cellar)
    return f"{question}: {listed(choices, 'or')}?" if choices else f"{question}?"


def choices_said(ask: Ask, cellar: Cellar) -> list[str]:
    """The choices by name: a batch goes by its own number, quantities are numbered."""
    if ask.what == "batch":
        return [_choice(n, cellar) if (n := batch_number(c)) else one_line(c) for c in ask.choices]
    if ask.what == "quantity":
        return [
            f"({i}) {QUANTITIES[c].label if c in QUANTITIES else one_line(c)}" for i, c in enumerate(ask.choices, 1)
        ]
    if ask.what == "date":
        return [day(c) if c[:4].isdigit() else one_line(c) for c in ask.choices]
    return [one_line(c) for c in ask.choices]


def batch_number(choice: str) -> int | None:
    """The number of the batch that a choice names: `batch 3 (merlot)`, `3`."""
    digits = choice.lower().removeprefix("batch").strip()
    end = next((i for i, c in enumerate(digits) if not c.isdecimal()), len(digits))
    return int(digits[:end]) if end and end < 10 else None


def waiting(asks: Sequence[Ask], notes: Sequence[Note], cellar: Cellar) -> str:
    """What waits for an answer: the first as a question, then the others in short."""
    if not asks:
        return "Nothing is waiting for an answer."
    first, note = asks[0], notes[0]
    lines = [f"{reminder(note)} {asked(first, cellar)}"]
    if len(asks) > 1:
        more = [f"  {_note(n)}: {a.what}?" for a, n in zip(asks[1:6], notes[1:6], strict=False)]
        rest = f"  and {len(asks) - 6} more" if len(asks) > 6 else ""
        lines += [f"After that {len(asks) - 1} more:", *more, *([rest] if rest else [])]
    return "\n".join(lines)


def reminder(note: Note) -> str:
    """The note that a question is about."""
    return f"{_note(note)}."


def later(count: int) -> str:
    """Said where the person puts a question off."""
    return f"Left open; say “what is waiting?” to come back to {'it' if count == 1 else f'the {count} that are open'}."


def let_go(note: Note) -> str:
    """Said where the person wants a note to stay unfiled."""
    return f"Left as it is: note {note.number} stays in the journal as a remark, and nothing else was filed from it."


def corrected(
    withdrawn: Sequence[Entry], entries: Sequence[Entry], pairs: Sequence[tuple[Entry, Entry]], cellar: Cellar, on: str
) -> str:
    """What a correction changed: was → now. `pairs` are the entries replaced, also among the other two."""
    said = []
    for (was, now), group in groupby(pairs, key=lambda p: (_place(p[0]), _place(p[1]))):
        said.append(_changed(was, now, list(group), cellar, on))
    old, new = [e for p in pairs for e in (p[0],)], [e for p in pairs for e in (p[1],)]
    gone = [e for e in withdrawn if all(e.id != o.id for o in old)]
    added = [e for e in entries if all(e.id != n.id for n in new)]
    if gone:
        said.append(f"Taken back: {_briefly(gone, cellar, on)}")
    if added:
        said.append(f"Filed: {_briefly(added, cellar, on)}")
    return " ".join(said + doubts(entries)) or "Nothing was changed."


def undone(note: Note, withdrawn: Sequence[Entry], back: Sequence[Entry], cellar: Cellar, on: str) -> str:
    """What an undo took back, and what stands again."""
    said = [f"Undone: {_note(note)}."]
    if withdrawn:
        said.append(f"Taken back: {_briefly(withdrawn, cellar, on)}")
    if back:
        said.append(f"Stands again: {_briefly(back, cellar, on)}")
    return " ".join(said)


def answered(answer: Answer) -> str:
    """An answer, with how the question was read and the notes that it rests on."""
    notes = answer.notes
    rests = (
        f"note{'s' if len(notes) > 1 else ''} {listed(map(str, notes[:8]))}{' …' if len(notes) > 8 else ''}"
        if notes
        else ""
    )
    understood = (answer.understood_as or "").rstrip(".")
    beneath = "; ".join(p for p in (understood and f"read as: {understood}", rests) if p)
    return f"{answer.answer}\n  ({beneath})" if beneath and not answer.ask else answer.answer


def lesson_said(word: str, meaning: Json, cellar: Cellar) -> str:
    """What a word was taught to mean."""
    ((sort, target),) = meaning.items()
    said = batch_head(target, cellar) if sort == "batch" else f"the {sort} “{one_line(str(target))}”"
    return f"From now on “{one_line(word)}” means {said[0].lower()}{said[1:]}."


def unlearnt(word: str) -> str:
    """Said where the teaching of a word is undone."""
    return f"“{one_line(word)}” means nothing of its own any more."


def taught_said(taught: Mapping[str, Json]) -> str:
    """The words taught so far."""
    if not taught:
        return "You have taught me no words yet. Say for example: when I say bubbly I mean batch 6."
    return "\n".join(
        f"  {one_line(word)}: {' '.join(f'{k} {one_line(str(v))}' for k, v in meaning.items())}"
        for word, meaning in taught.items()
    )


def settings_said(settings: Settings) -> str:
    """How the journal is set."""
    units = "metric (a bare temperature is in °C)" if settings.units == "metric" else "US (a bare temperature is in °F)"
    order = "day first (3/10 is 3 October)" if settings.day_first else "month first (3/10 is 10 March)"
    true_at = "20 °C" if settings.hydrometer == "20C" else "60 °F"
    said = f"Units: {units}. Dates: {order}. Currency: {settings.currency}. Hydrometer true at {true_at}."
    if settings.bottle_price is not None:
        said += f" A bought bottle: {settings.bottle_price:g} {settings.currency}."
    if not settings.intervals:
        return said
    from journalbot.vocabulary.care import INTERVALS

    own = [f"{INTERVALS[key].what} every {low if low == high else f'{low} to {high}'} days"
           for key, (low, high) in sorted(settings.intervals.items()) if key in INTERVALS]
    return f"{said} Your own days: {'; '.join(dict.fromkeys(own))}."


def _choice(number: int, cellar: Cellar) -> str:
    batch = cellar.batches.get(number)
    called = label(batch) if batch else ""
    return f"{number}{f' ({called})' if called else ''}"


def _head(batch: int | None, date: str, cellar: Cellar, on: str) -> str:
    return f"{batch_head(batch, cellar)}{'' if date == on else f', {day(date, on)}'}"


def _place(entry: Entry) -> tuple[int | None, str]:
    return entry.batch, entry.date


def _changed(
    was: tuple[int | None, str],
    now: tuple[int | None, str],
    pairs: Sequence[tuple[Entry, Entry]],
    cellar: Cellar,
    on: str,
) -> str:
    things = []
    for old, new in pairs:
        before, after = phrase(old), phrase(new)
        things.append(before if before == after else f"{before} → {after}")
    if was == now:
        return f"{_head(*was, cellar, on)}: {'; '.join(things)}."
    if was[0] == now[0]:
        return f"{batch_head(was[0], cellar)}, {day(was[1], on)} → {day(now[1], on)}: {'; '.join(things)}."
    to = _head(*now, cellar, on)
    return f"{_head(*was, cellar, on)} → {to[0].lower()}{to[1:]}: {'; '.join(things)}."


def _briefly(entries: Sequence[Entry], cellar: Cellar, on: str) -> str:
    groups: dict[tuple[int | None, str], list[Entry]] = {}
    for entry in entries:
        groups.setdefault(_place(entry), []).append(entry)
    return " ".join(f"{_head(*at, cellar, on)}: {phrases(group)}." for at, group in groups.items())


def _note(note: Note) -> str:
    return f"Note {note.number} ({day(note.on)}, “{one_line(note.text, 50)}”)"
