"""Text made fit for a screen: nothing typed, imported or stored can move the cursor, change colours or hide words."""

import json
from collections.abc import Iterable

# C1 controls (a terminal may obey them as it does ESC), line and paragraph separators, and what turns the direction of
# writing (Unicode Standard Annex #9), so that shown text could read as other than it is.
_OTHERS = (*range(0x7F, 0xA0), 0x061C, 0x200E, 0x200F, *range(0x2028, 0x202F), *range(0x2066, 0x206A), 0xFEFF)
_HARMLESS = dict.fromkeys(_OTHERS, "\ufffd")
_HARMLESS |= {code: chr(0x2400 + code) for code in range(0x20)}  # ESC is shown as its picture, ␛
_HARMLESS |= {0x7F: "\u2421", ord("\n"): "\n", ord("\t"): " "}
_ESCAPED = {code: f"\\u{code:04x}" for code in _OTHERS}


def harmless(text: str) -> str:
    """The text with every control character made visible; only line breaks stay."""
    return text.translate(_HARMLESS)


def one_line(text: str, width: int = 60) -> str:
    """The text in one line of at most `width` characters, cut between words where there is room to."""
    words = text[: 4 * width].split()
    line = " ".join(words)
    if len(line) <= width and len(text) <= 4 * width:
        return line
    cut = line[: width - 1]
    space = cut.rfind(" ")
    return (cut[:space] if space > width // 2 else cut) + "…"


def escaped(line: str) -> str:
    """A line of JSON that says the same and holds no character that a terminal could obey."""
    return line.translate(_ESCAPED)


def json_line(data: object) -> str:
    """The data as one line of JSON, safe to show."""
    return escaped(json.dumps(data, ensure_ascii=False))


def listed(items: Iterable[str], last: str = "and") -> str:
    """`a, b and c`."""
    *most, end = list(items) or [""]
    return f"{', '.join(most)} {last} {end}" if most else end
