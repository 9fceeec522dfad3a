"""Settings said in plain words: "use metric", "dates are day first", "my hydrometer is true at 20 C"."""

import re
from typing import Any

from journalbot.turns.sayings import plain

Changes = dict[str, Any]

# Words that may lead up to what is set, and follow it. What stands between must be said whole, so that no note is taken
# for a setting.
_LEAD = (
    r"(?:(?:please|let's|lets|i|i'd|we|would|like|prefer|want|to|use|using|work|think|write|now|always|from now on|"
    r"switch|change|over|set|make|show|me|it|everything|figures|dates?|in|my|the|units?|are|is|as|be|should|come|"
    r"go|with) )*"
)
_TAIL = r"(?: (?:please|units?|dates?|system|measures|and|from now on|now|everywhere|always))*"
_SCALE = r"(?:degrees )?(?:celsius|centigrade|litres|liters)"
_SAID: tuple[tuple[str, Changes], ...] = (
    (rf"metric|{_SCALE}(?: and {_SCALE})?", {"units": "metric"}),
    (r"(?:us|american)(?: customary)? (?:units|measures|system)|us customary", {"units": "us"}),
    (r"(?:degrees )?fahrenheit|gallons(?: and fahrenheit)?", {"units": "us"}),
    (r"(?:the )?day (?:first|(?:before|then)? ?(?:the )?month)|dd mm|(?:european|british) dates", {"day_first": True}),
    (r"(?:the )?month (?:first|(?:before|then)? ?(?:the )?day)|mm dd|(?:us|american) dates", {"day_first": False}),
)
_SETTINGS = tuple((re.compile(f"{_LEAD}(?:{body}){_TAIL}"), changes) for body, changes in _SAID)

# ISO 4217 codes of currencies by their plain names.
_CURRENCIES = {
    "dollar": "USD", "us dollar": "USD", "american dollar": "USD", "euro": "EUR", "pound": "GBP",
    "british pound": "GBP", "pound sterling": "GBP", "sterling": "GBP", "australian dollar": "AUD",
    "canadian dollar": "CAD", "new zealand dollar": "NZD", "swiss franc": "CHF", "franc": "CHF", "rand": "ZAR",
    "yen": "JPY", "real": "BRL", "zloty": "PLN", "forint": "HUF", "lei": "RON", "rupee": "INR", "shekel": "ILS",
    "lira": "TRY", "krona": "SEK", "danish krone": "DKK", "norwegian krone": "NOK", "swedish krona": "SEK",
    "koruna": "CZK", "czech koruna": "CZK",
}
_SIGNS = {"€": "EUR", "$": "USD", "£": "GBP", "¥": "JPY"}
_CODES = frozenset((*_CURRENCIES.values(), "HKD", "SGD", "MXN", "ARS", "CLP", "GEL", "MDL", "BGN", "ISK", "CNY", "KRW"))
_CURRENCY = re.compile(
    r"(?:please |use |set )*(?:the |my |our )?(?:currency|money|prices)(?: (?:is|are|to|in|as|be|should))*:? "
    r"(?P<name>[^\W\d_]+(?: [^\W\d_]+){0,2}|[€$£¥])[.!]?", re.IGNORECASE)
_HYDROMETER = re.compile(
    r"(?:the |my |our )?hydrometer(?:'s)? (?:(?:is|reads|was|calibrated|true|right|correct|set|at|to|for) )+"
    r"(?P<degrees>\d{2}(?:[.,]\d+)?) ?(?:°|deg|degrees)? ?(?P<scale>[fc]|fahrenheit|celsius)?[.!]?", re.IGNORECASE)
# Makers mark 60 °F as 59 °F or 15.5 °C too; 68 °F is 20 °C.
_TRUE_AT = {
    "60F": "60F", "59F": "60F", "15C": "60F", "15.5C": "60F", "15.6C": "60F", "15.56C": "60F", "16C": "60F",
    "20C": "20C", "68F": "20C",
}
_BOTTLE = re.compile(
    r"(?:a |one |the )?(?:bought|shop|store|similar|comparable|(?:shop|store)[- ]bought) bottle (?:would )?"
    r"(?:costs?|is|be)(?: me| us)?(?: about| around)? [€$£]?(?P<price>\d{1,4}(?:[.,]\d{1,2})?)(?: ?[€$£a-z]+)?[.!]?",
    re.IGNORECASE)


def read_setting(text: str) -> Changes | str | None:
    """What a line sets; a sentence where it would set what cannot be; None where it is no setting."""
    if len(text) > 100:
        return None
    line = plain(text)
    for said, changes in _SETTINGS:
        if said.fullmatch(line):
            return dict(changes)
    whole = " ".join(text.replace("’", "'").split())
    if found := _CURRENCY.fullmatch(whole):
        name = found["name"].lower().removesuffix(" please")
        code = _currency(name)
        return {"currency": code} if code else f"“{name}” is no currency I know; give its three letters, such as EUR."
    if found := _HYDROMETER.fullmatch(whole):
        degrees = found["degrees"].replace(",", ".")
        scale = (found["scale"] or ("F" if float(degrees) > 40 else "C"))[0].upper()
        true_at = _TRUE_AT.get(f"{degrees}{scale}")
        return {"hydrometer": true_at} if true_at else "I know hydrometers true at 60 °F and at 20 °C; which is yours?"
    if found := _BOTTLE.fullmatch(whole):
        return {"bottle_price": float(found["price"].replace(",", "."))}
    return None


def _currency(name: str) -> str | None:
    known = _SIGNS.get(name) or _CURRENCIES.get(name) or _CURRENCIES.get(name.removesuffix("s"))
    return known or (name.upper() if name.upper() in _CODES else None)
