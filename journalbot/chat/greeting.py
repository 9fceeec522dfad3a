"""The line with which a talk begins: what the journal holds, and what waits."""

import datetime

from journalbot.assistant import Assistant
from journalbot.screen import one_line
from journalbot.turns.care import due

_SHOWN = 2  # of what is due


def greeting(assistant: Assistant, today: datetime.date) -> str:
    """One short line; one more where something waits for an answer, and one where something is due."""
    notes = assistant.journal.count_notes()
    if not notes:
        return "An empty journal. Type what you did in your own words, or help for examples. Ctrl-D leaves."
    cellar = assistant.journal.cellar()
    under_way = len(cellar.under_way())
    held = f"{_counted(notes, 'note')}, {_counted(len(cellar.batches), 'batch')}, {under_way} under way"
    lines = [f"{held}. “help” shows what to say."]
    waiting = len(assistant.journal.open_asks())
    if waiting:
        lines.append(
            f"{_counted(waiting, 'note')} {'waits' if waiting == 1 else 'wait'} for an answer: say “what is waiting?”"
        )
    todo = due(assistant.journal, today)
    if todo:
        first = [f"{one_line(d.what, 40)}{f' (batch {d.batch})' if d.batch else ''}: {d.reason}" for d in todo[:_SHOWN]]
        more = f"; and {len(todo) - _SHOWN} more" if len(todo) > _SHOWN else ""
        lines.append(f"Due: {'; '.join(first)}{more}.")
    return "\n".join(lines)


def _counted(count: int, what: str) -> str:
    return f"{count:,} {what if count == 1 else what + ('es' if what.endswith('ch') else 's')}"
