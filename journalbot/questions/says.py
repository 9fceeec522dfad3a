"""How days, numbers and lists are said; the phrases that a Query's parts are described by."""

from collections.abc import Sequence

_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_FULL = ("January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
         "December")  # fmt: skip

METHODS: dict[str, str] = {  # how facts are brought together, as said before what is asked
    "": "",
    "all": "",
    "list": "",
    "compare": "side by side:",
    "last": "the last",
    "first": "the first",
    "most": "the highest",
    "least": "the lowest",
    "mean": "the average",
    "sum": "the total",
    "count": "the number of",
    "change": "over time:",
    "range": "the range of",
    "distinct": "how many different values of",
    "difference": "the difference in",
}
PARTS: dict[str, str] = {
    "": "{}",
    "date": "the date of {}",
    "time": "the time of day of {}",
    "amount": "the amount of {}",
    "times": "how many times there is a record of {}",
    "done": "whether there is a record of {}",
}
TESTS: dict[str, str] = {
    "over": "over",
    "under": "under",
    "at least": "of at least",
    "at most": "of at most",
    "exactly": "of exactly",
}
OPENING_DAYS: dict[str, int] = {
    "first day": 1, "first week": 7, "first fortnight": 14, "first month": 31, "first year": 366,
}  # fmt: skip
RELATIONS: dict[str, str] = {
    **{name: f"in the {name} after" for name in OPENING_DAYS},
    "at": "at the time of",
    "before": "before",
    "after": "after",
    "day": "on the day of",
    "week": "in the week of",
    "month": "in the month of",
    "year": "in the year of",
}


def day_said(iso: str) -> str:
    """A day as people say it, and unambiguous: `2 Oct 2024`; `October 2024` and `2024` where no more is known."""
    parts = iso.split("-")
    if len(parts) == 1:
        return parts[0]
    month = int(parts[1]) - 1
    return f"{_FULL[month]} {parts[0]}" if len(parts) == 2 else f"{int(parts[2])} {_MONTHS[month]} {parts[0]}"


def join(parts: Sequence[str], last: str = "and") -> str:
    """The parts as one phrase: `a, b and c`."""
    parts = [p for p in parts if p]
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} {last} {parts[-1]}" if parts else ""


def number_said(value: float, decimals: int | None = None) -> str:
    """A number without useless zeros; with a thousands comma from 10,000."""
    if decimals is not None:
        value = round(value, decimals)
    if abs(value - round(value)) < 1e-9:
        return f"{round(value):,}" if abs(value) >= 10000 else str(round(value))
    return f"{value:.{decimals}f}".rstrip("0") if decimals else f"{value:.4g}"


def days_said(days: float) -> str:
    """So many days; with weeks, months or years beside where that helps."""
    n = round(days)
    said = f"{n} day{'' if n == 1 else 's'}"
    if n >= 700:
        return f"{said} ({n / 365.25:.1f} years)"
    if n >= 90:
        return f"{said} ({n / 30.44:.0f} months)"
    return f"{said} ({n / 7:.0f} weeks)" if n >= 21 else said
