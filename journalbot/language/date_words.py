"""The words that dates are made of, as tables: days, months, seasons, feasts, and what only looks like one."""

from journalbot.language.number_words import words
from journalbot.vocabulary.units import UNITS


def _table(**rows: str) -> dict[str, str]:
    return {word: name for name, words in rows.items() for word in words.split()}


WEEKDAYS: dict[str, int] = {
    word: int(number[1])
    for word, number in _table(
        d0="monday mondays mon",
        d1="tuesday tuesdays tues tue tuseday",
        d2="wednesday wednesdays weds wed wensday wendesday wednsday",
        d3="thursday thursdays thurs thur thu thrusday thursady",
        d4="friday fridays fri firday",
        d5="saturday saturdays sat saterday",
        d6="sunday sundays sun",
    ).items()
}
MONTHS: dict[str, int] = {
    word: int(number[1:])
    for word, number in _table(
        m1="january jan janurary",
        m2="february feb febuary feburary",
        m3="march mar",
        m4="april apr",
        m5="may",
        m6="june jun",
        m7="july jul",
        m8="august aug",
        m9="september sept sep septmber",
        m10="october oct ocotber",
        m11="november nov novemeber",
        m12="december dec",
    ).items()
}

# Everyday words too ("sat on the lees", "in the sun", "it may need", "march on"): a date only beside a cue or a figure.
SHY_WEEKDAYS = frozenset({"sat", "sun", "mon"})
SHY_MONTHS = frozenset({"may", "march", "mar", "dec"})
# People too: "gave June two bottles".
NAMESAKES = frozenset({"april", "june", "august", "jan"})

RELATIVE_DAYS: dict[str, int] = {
    "today": 0,
    "tday": 0,
    "2day": 0,
    "tonight": 0,
    "tonite": 0,
    "tonigt": 0,
    "yesterday": -1,
    "yest": -1,
    "ystdy": -1,
    "yday": -1,
    "yesteday": -1,
    "yesterdy": -1,
    "tomorrow": 1,
    "tmrw": 1,
    "tmw": 1,
    "tomorow": 1,
    "tommorow": 1,
    "tommorrow": 1,
    "tomoro": 1,
    "2moro": 1,
}
DAY_PARTS = words(
    "morning am afternoon arvo pm evening eve night nite lunchtime dinnertime midday noon"
)  # after "this", "yesterday", a weekday
MEALS = words("breakfast lunch dinner supper tea work church bedtime bed")
MODIFIERS: dict[str, str] = _table(last="last past previous lst", this="this current", next="next coming nxt")
UNITS_OF_TIME: dict[str, str] = _table(
    hour="hour hours hr hrs minute minutes min mins",
    day="day days night nights",
    week="week weeks wk wks",
    fortnight="fortnight fortnights",
    month="month months mo mos mth mths",
    year="year years yr yrs",
    weekend="weekend weekends wknd",
)
SEASONS: dict[str, int] = {
    "spring": 3,
    "summer": 6,
    "fall": 9,
    "autumn": 9,
    "winter": 12,
}  # first month; meteorological, northern
PARTS_OF_PERIOD: dict[str, int] = {  # which third
    "early": 0,
    "earlier": 0,
    "beginning": 0,
    "start": 0,
    "begining": 0,
    "mid": 1,
    "middle": 1,
    "midway": 1,
    "late": 2,
    "later": 2,
    "end": 2,
    "latter": 2,
}

_TO_TWENTY = (
    "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth "
    "sixteenth seventeenth eighteenth nineteenth twentieth"
)
ORDINALS: dict[str, int] = {word: n for n, word in enumerate(_TO_TWENTY.split(), 1)} | {"thirtieth": 30}
ORDINALS |= {f"twenty-{word}": 20 + n for word, n in list(ORDINALS.items()) if n < 10} | {"thirty-first": 31}
ORDINAL_ENDS = frozenset({"st", "nd", "rd", "th"})
# "on the 4th racking": an ordinal of these is no day.
ORDINAL_NOUNS = words(
    "racking batch carboy demijohn dj day week month time try attempt bottle bottles glass pressing addition "
    "vessel year run half barrel tank one round dose pack packet quarter wine floor shelf go taste tasting "
    "reading punch hour night bucket jug lot pick pass case"
)

# Words before a date that say that it is one.
LICENCES = words("on since until till til by before after dated due through thru during")
MONTH_LICENCES = LICENCES | {"in", "of", "from", "between", "late", "early", "mid", "sometime", "around", "back"}
YEAR_LICENCES = words("in since until till during before after from of by through around")
SHY_WEEKDAY_CUES = words("on since until till by before after")
# "the last may have gone", "this may need a rack": what follows the verb.
AFTER_VERB_MAY = words(
    "be have need not take want well still get go never also just require turn start work help make seem look "
    "come stay show taste do even or as only already yet i we it the you they he she clear drop sit finish rack "
    "bottle become add try"
)
AFTER_VERB_SAT = words(
    "on in at for there around too under over down out untouched by with undisturbed here outside next all a "
    "about overnight"
)
NOT_BEFORE_SHY = words("the it that in just has had and have which wine a an they this there of no more some full")

# After a bare year or feast these do not make it a label ("2022 zin", "the christmas wine").
FUNCTION_WORDS = words(
    "and or but at in with i we it to for from by was were is are on the a an my our so then when where which "
    "that did do does had has have as if of into until till through during before after last this its went got "
    "since than because cause only not no both till vs again already also racked bottled pressed pitched added "
    "started tasted drank opened crushed checked measured"
)
# A number before one of these counts it, and is no day of a month.
COUNTED = frozenset(s.rstrip(".") for unit in UNITS.values() for s in unit.spellings if " " not in s) | words(
    "% ° º $ € £ f c deg degrees degree brix bricks bx ppm mg/l g/l gallons batches carboys demijohns djs corks "
    "campden tablets jugs barrels tanks buckets vessels times x days day weeks week months month years year hours "
    "hour hrs wks mins minutes points ph sg ta abv of cases case crates boxes grapes apples sachets capsules caps "
    "labels people friends inches inch in cm percent pct glasses punchdowns"
)
# "batch 3 Oct 5": the number belongs to the thing before it.
NUMBERED_THINGS = words(
    "batch batches carboy carboys demijohn demijohns dj djs vessel tank tanks barrel barrels bucket buckets jug "
    "jugs no number # b c cb vat keg bin lot fermenter fermentor cask drum vessels kegs balloon"
)
NEVER_DATES = frozenset({"24/7"})
AFTER_FRACTION = frozenset({"a", "an", "full", "inch", "teaspoon", "strength", "way", '"', "dose", "pack"})
SCORES = frozenset({5, 10, 20, 100})
FRACTIONS = frozenset(
    {
        (1, 2),
        (1, 3),
        (2, 3),
        (1, 4),
        (3, 4),
        (1, 5),
        (2, 5),
        (3, 5),
        (4, 5),
        (1, 8),
        (3, 8),
        (5, 8),
        (7, 8),
        (1, 6),
        (5, 6),
    }
)

# Feasts: month and day; or days from Easter Sunday; or (month, weekday, which), -1 for the last. Sources: common
# practice for the fixed days; US Code title 5, section 6103 for Thanksgiving and the Mondays; the church's calendar.
FIXED_FEASTS: dict[str, tuple[int, int]] = {
    "new year's day": (1, 1),
    "new years day": (1, 1),
    "new year's": (1, 1),
    "new years": (1, 1),
    "new year": (1, 1),
    "epiphany": (1, 6),
    "twelfth night": (1, 5),
    "burns night": (1, 25),
    "candlemas": (2, 2),
    "groundhog day": (2, 2),
    "valentine's day": (2, 14),
    "valentines day": (2, 14),
    "valentine's": (2, 14),
    "valentines": (2, 14),
    "valentine day": (2, 14),
    "st patrick's day": (3, 17),
    "st patricks day": (3, 17),
    "st patrick's": (3, 17),
    "st paddy's day": (3, 17),
    "st paddys day": (3, 17),
    "april fools": (4, 1),
    "april fool's day": (4, 1),
    "april fools day": (4, 1),
    "may day": (5, 1),
    "cinco de mayo": (5, 5),
    "midsummer's day": (6, 24),
    "midsummer day": (6, 24),
    "st john's day": (6, 24),
    "canada day": (7, 1),
    "fourth of july": (7, 4),
    "july fourth": (7, 4),
    "independence day": (7, 4),
    "bastille day": (7, 14),
    "assumption day": (8, 15),
    "michaelmas": (9, 29),
    "halloween": (10, 31),
    "hallowe'en": (10, 31),
    "all saints": (11, 1),
    "all saints'": (11, 1),
    "all saints' day": (11, 1),
    "all saints day": (11, 1),
    "all souls day": (11, 2),
    "all souls' day": (11, 2),
    "bonfire night": (11, 5),
    "guy fawkes night": (11, 5),
    "guy fawkes": (11, 5),
    "martinmas": (11, 11),
    "st martin's day": (11, 11),
    "st martins day": (11, 11),
    "veterans day": (11, 11),
    "armistice day": (11, 11),
    "st nicholas day": (12, 6),
    "christmas eve": (12, 24),
    "xmas eve": (12, 24),
    "christmas day": (12, 25),
    "xmas day": (12, 25),
    "christmas": (12, 25),
    "xmas": (12, 25),
    "chrismas": (12, 25),
    "boxing day": (12, 26),
    "st stephen's day": (12, 26),
    "new year's eve": (12, 31),
    "new years eve": (12, 31),
    "nye": (12, 31),
    "leap day": (2, 29),
}
EASTER_FEASTS: dict[str, int] = {
    "easter eve": -1,
    "shrove tuesday": -47,
    "pancake day": -47,
    "mardi gras": -47,
    "ash wednesday": -46,
    "palm sunday": -7,
    "maundy thursday": -3,
    "good friday": -2,
    "easter": 0,
    "easter sunday": 0,
    "easter day": 0,
    "easter monday": 1,
    "ascension day": 39,
    "ascension": 39,
    "whit sunday": 49,
    "whitsun": 49,
    "pentecost": 49,
    "whit monday": 50,
    "corpus christi": 60,
    "holy saturday": -1,
    "easter saturday": -1,
}
NTH_FEASTS: dict[str, tuple[int, int, int]] = {
    "thanksgiving": (11, 3, 4),
    "thanksgiving day": (11, 3, 4),
    "turkey day": (11, 3, 4),
    "labor day": (9, 0, 1),
    "labour day": (9, 0, 1),
    "memorial day": (5, 0, -1),
    "presidents day": (2, 0, 3),
    "presidents' day": (2, 0, 3),
    "mlk day": (1, 0, 3),
    "columbus day": (10, 0, 2),
}
# By first word, longest first; "year's" in its two parts, as the grammar sees it.
FEASTS_BY_WORD: dict[str, list[tuple[tuple[str, ...], str]]] = {}
for _name in sorted([*FIXED_FEASTS, *EASTER_FEASTS, *NTH_FEASTS], key=lambda name: -len(name.split())):
    FEASTS_BY_WORD.setdefault(_name.split()[0], []).append((tuple(_name.replace("year's", "year 's").split()), _name))
FEAST_CUES = words("on at since by until till before after over around last next this past")
NOT_BEFORE_LAST_YEAR = words("of like than as")  # "the Solaris of last year", "5 g like last year"
NOT_BEFORE_IN = words(
    "hasn't hasnt haven't havent hadn't hadnt wasn't wasnt isn't isnt nothing never no first twice times dropped fallen"
)
NOT_BEFORE_FEAST = words("for the my our a his her their your of")

# What a date may start with: tells the parts of a compound ("mid-October") and what may follow a year.
DATE_WORDS = (
    frozenset(WEEKDAYS)
    | frozenset(MONTHS)
    | frozenset(RELATIVE_DAYS)
    | frozenset(SEASONS)
    | frozenset(PARTS_OF_PERIOD)
    | frozenset(MODIFIERS)
    | frozenset(ORDINALS)
    | frozenset(FEASTS_BY_WORD)
    | {"the", "in", "day", "before"}
)
