"""Input that is no terminal: no prompt, no colours, one reply for each line, sent once the turn is on the disk."""

import datetime
from collections.abc import Callable
from typing import TextIO

from journalbot.assistant import Assistant
from journalbot.errors import JournalbotError
from journalbot.screen import harmless
from journalbot.turns import sayings


def answer_lines(
    assistant: Assistant, lines: TextIO, out: TextIO, today: Callable[[], datetime.date] = datetime.date.today
) -> int:
    """Answer every line but empty ones; 1 where one could not be kept (its reply says why), else 0."""
    status = 0
    if hasattr(lines, "reconfigure"):  # bytes that are no text are refused by the journal, line by line
        lines.reconfigure(errors="surrogateescape")
    for line in lines:
        text = line.rstrip("\r\n")
        if not text.strip():
            continue
        if sayings.plain(text) in sayings.GOODBYE:
            break
        try:
            said = assistant.turn(text, today()).text
        except JournalbotError as error:
            said, status = f"Not kept: {error}", 1
        out.write(f"{harmless(said)}\n")
        out.flush()
    return status
