"""Care: how often a cellar's work comes round, what a ferment should look like, and what to try first when it does not.

Intervals are whole days, low to high, counted from `clock`. They are reminders, never orders: a person's own intervals
and a kit's or packet's own sheet come first. Without another source named, common practice, no source.
"""

from typing import NamedTuple

HABIT = "common practice, no source"


class Interval(NamedTuple):
    """What comes due, what its days are counted from, the usual least and most of them, and who says so."""

    what: str
    clock: str
    low: int
    high: int
    source: str = HABIT


INTERVALS: dict[str, Interval] = {
    "punch down": Interval("punch down", "the last punching down", 1, 1,
        "USDA, Canning, Freezing, Storing Garden Produce: twice a day"),
    "press red": Interval("press", "fermentation began", 5, 14),
    "press fruit": Interval("press", "fermentation began", 3, 7),
    "rack from primary": Interval("rack out of the primary", "fermentation began", 5, 14),
    "rack gross lees": Interval("rack off the gross lees", "fermentation ended", 7, 21),
    "rack again": Interval("rack", "the last racking", 42, 84),
    "top up glass": Interval("look at the level and top up", "it was last full", 30, 45),
    "top up small barrel": Interval("top up", "it was last full", 7, 28),
    "top up barrel": Interval("top up", "it was last full", 30, 60,
        "Penn State Extension, Summer in the cellar: about every other month; the low end common practice"),
    "airlock": Interval("refill the airlock", "it was last seen to", 14, 28),
    "check sulfite": Interval("check sulfite", "sulfite was last measured or added", 28, 56),
    "taste": Interval("taste", "the last tasting", 30, 90),
    "taste small oak": Interval("taste for oak", "the last tasting", 7, 14),
    "taste large oak": Interval("taste for oak", "the last tasting", 30, 45),
    "oak powder": Interval("take the oak out", "the oak went in", 3, 10),
    "oak chips": Interval("take the oak out", "the oak went in", 7, 42),
    "oak cubes": Interval("take the oak out", "the oak went in", 42, 84),
    "oak spiral": Interval("take the oak out", "the oak went in", 28, 56),
    "oak staves": Interval("take the oak out", "the oak went in", 90, 270),
    "oak small barrel": Interval("take it out of the barrel", "it went into the barrel", 14, 56),
    "oak barrel": Interval("take it out of the barrel", "it went into the barrel", 180, 720),
    "malolactic": Interval("check the malolactic", "it was last looked at", 7, 14),
    "settle bentonite": Interval("rack off the fining", "the fining went in", 3, 10),
    "settle kieselsol": Interval("rack off the fining", "the fining went in", 2, 14),
    "settle chitosan": Interval("rack off the fining", "the fining went in", 2, 14),
    "settle gelatin": Interval("rack off the fining", "the fining went in", 2, 14),
    "settle isinglass": Interval("rack off the fining", "the fining went in", 7, 14),
    "settle egg white": Interval("rack off the fining", "the fining went in", 7, 21),
    "chill": Interval("end the chilling and rack cold", "it went cold", 14, 28),
    "cold check": Interval("check a sample in the cold", "fermentation ended", 60, 180),
    "bottle white": Interval("bottle", "the start", 90, 360),
    "bottle rosé": Interval("bottle", "the start", 90, 180),
    "bottle red": Interval("bottle", "the start", 270, 540),
    "bottle fruit": Interval("bottle", "the start", 180, 360),
    "bottle cider": Interval("bottle", "the start", 180, 360),
    "bottle mead": Interval("bottle", "the start", 180, 540),
    "bottle rest": Interval("let it rest in the bottle", "the bottling", 21, 56),
    "drink white": Interval("drink", "the vintage", 180, 1095),
    "drink rosé": Interval("drink", "the vintage", 180, 730),
    "drink red": Interval("drink", "the vintage", 365, 1825),
    "drink fruit": Interval("drink", "the vintage", 365, 1095),
    "drink mead": Interval("drink", "the vintage", 365, 1460),
    "drink without sulfite": Interval("drink", "the vintage, with no sulfite on record", 180, 365),
}

# How people name the work whose days they set: phrase to keys of INTERVALS.
OWN_DAYS: dict[str, tuple[str, ...]] = {
    **dict.fromkeys(("rack", "rack again", "racking", "rack it", "rack them", "rack my wine", "rack my wines",
        "rack the wine", "rack the wines", "siphon"), ("rack again",)),
    **dict.fromkeys(("top up", "top up the carboys", "top up carboys", "top up the carboy", "top up the demijohns",
        "top off", "topping up", "top up my wine", "top up the wine", "check the level", "check the levels"),
        ("top up glass", "top up small barrel", "top up barrel")),
    **dict.fromkeys(("top up the barrel", "top up barrels", "top up the barrels", "top up my barrel"),
        ("top up small barrel", "top up barrel")),
    **dict.fromkeys(("check the airlock", "check the airlocks", "check airlocks", "refill the airlock",
        "refill the airlocks", "refill airlocks", "fill the airlock", "fill the airlocks", "look at the airlock",
        "look at the airlocks", "airlock", "airlocks", "top up the airlocks", "top up the airlock"), ("airlock",)),
    **dict.fromkeys(("check sulfite", "check the sulfite", "check sulphite", "check so2", "check the so2",
        "check free so2", "test so2", "test sulfite", "measure so2", "measure free so2", "measure sulfite",
        "add sulfite", "sulfite", "sulphite", "sulfite it", "test free so2"), ("check sulfite",)),
    **dict.fromkeys(("taste", "taste it", "taste them", "tasting", "taste the wine", "taste the wines", "taste my wine",
        "taste my wines", "taste everything"), ("taste",)),
    **dict.fromkeys(("taste the oak", "taste for oak"), ("taste small oak", "taste large oak")),
    **dict.fromkeys(("punch down", "punch down the cap", "punch the cap", "plunge", "plunge the cap"), ("punch down",)),
    **dict.fromkeys(("check the malolactic", "check malolactic", "check the ml", "check mlf", "test malolactic",
        "check malo", "check the malo"), ("malolactic",)),
}

PRIMARY_DAYS = 60  # a ferment not called finished is taken to be over by then
DRY_SG = 0.998  # read at or under it, a wine is taken to have fermented out
PRESS_SG = 1.010  # at or under it most sweetness is gone (USDA: press then; the number common practice)
MALIC_DONE = 0.3  # g/L
SMALL_BARREL = 100.0  # litres; this program's line between a small barrel and a full-size one
MOST_RACKINGS = 4
PLAN_EARLY = 7  # days: what is done so shortly before it was planned for counts as the plan kept

GLASS = frozenset(("carboy", "demijohn", "balloon", "jug", "growler"))
OPEN = frozenset(("bucket", "pail", "bin", "tub", "vat", "primary", "crock", "trash"))
SULFITES = frozenset(("potassium metabisulfite", "sodium metabisulfite", "campden tablet", "sulfur dioxide"))
SWEETENERS = frozenset((
    "sugar", "honey", "corn sugar", "invert sugar", "fructose", "brown sugar", "demerara sugar", "sugar syrup",
    "maple syrup", "agave syrup", "golden syrup", "molasses", "grape concentrate", "concentrate", "grape juice",
    "apple juice", "juice", "f-pack", "sweet reserve", "wine conditioner"))  # fmt: skip

# Fermenting temperature by colour, °C: low, high, source.
BANDS: dict[str, tuple[float, float, str]] = {
    "red": (21, 29, "University of California Bulletin 827 (1966): over 85 °F yeast turns sluggish; the low end habit"),
    "white": (10, 18, "University of California Bulletin 827 (1966): very slow under 50 °F; the high end habit"),
    "rosé": (12, 18, HABIT),
    "fruit": (16, 24, HABIT),
    "cider": (16, 24, HABIT),
    "mead": (15, 21, HABIT),
}

START_DAYS = 3  # a ferment shows within 12 to 72 hours of the pitch
SLUGGISH = 0.003  # SG a day; this program's threshold
SLUGGISH_ABOVE = 1.010
STUCK_DAYS = 2  # the same SG for 48 to 72 hours
SAME_SG = 0.001
RISE_SG = 0.002  # more than two readings' error
HEAD_SPACE = 0.05  # share of a carboy; kept wine stands in the neck (USDA), which is less; this program's threshold
AIRLOCK_LONG = 56  # days; twice the usual; this program's threshold
SULFITE_FREE = 20.0  # mg/L: about the least free SO2 against acetic bacteria. WineSkills, acetic acid bacteria
SULFITE_MOLECULAR = 0.5  # mg/L, the low end of what wine is kept at
FAULT_DAYS = 90  # a fault smelt longer ago, and not since, is history
BOTTLING_SOON = 21  # days: a plan to bottle so near counts as about to

# What looks wrong: the first thing to try, and who says so.
FIRST_STEPS: dict[str, tuple[str, str]] = {
    "no start": ("check temperature, sulfite and the age of the yeast; warm it to 20 to 24 °C and stir", HABIT),
    "sluggish": ("find the cause first: take its temperature, bring it into range slowly, rouse the lees",
        "Bisson and Butzke 2000: slow ferments differ in cause"),
    "stuck": ("read again at a known temperature, warm it to 20 to 24 °C; if nothing moves in 2 or 3 days, restart it "
        "with a lively starter", HABIT),
    "too warm": ("cool it a few degrees; keep it out of sun and off the heater",
        "University of California Bulletin 827 (1966)"),
    "too cold": ("warm it slowly, a few degrees a day", HABIT),
    "head space": ("top up into the neck, or move it to a smaller vessel",
        "USDA, Canning, Freezing, Storing Garden Produce: full, right into the neck"),
    "gravity rising": ("read again at a known temperature, well stirred and free of gas", HABIT),
    "airlock": ("look at it today: a dry airlock lets air in", HABIT),
    "sugar at bottling": ("hold it under an airlock until it is dry or stabilised and has stayed still", HABIT),
    "bottled with sugar": ("treat the bottles as under pressure: keep them cool and away from people, wear eye "
        "protection, ease one open to see", HABIT),
    "sulfite low": ("work out a dose from its volume and pH, then measure again", "WineSkills, acetic acid bacteria"),
    "sulfite never measured": ("measure free SO2, or note what was added", HABIT),
    "volatile acidity": ("keep air off it: full vessel, sulfite to its pH, cool; keep it apart from sound wine",
        "WineSkills, acetic acid bacteria"),
    "oxidation": ("top up, check sulfite, splash it less, drink it sooner", HABIT),
    "hydrogen sulfide": ("fermenting: stir air in; later: rack with some splash and wait a week or two",
        "Virginia Tech, Vintner's Corner, May 2001: left alone it gets harder to remove; the steps habit"),
    "mercaptans": ("try measured trials on small samples, or ask a wine laboratory",
        "Iowa State University Extension, Treatment for Removal of H2S"),
    "mould": ("stop and look hard; in doubt, do not drink it", HABIT),
    "film": ("siphon from under it, top up, check sulfite, keep it cool; throw it out if it smells of vinegar", HABIT),
    "refermentation": ("read its gravity; treat bottles of it as under pressure", HABIT),
}
ANY_FAULT = ("set a sample aside, taste again in a week, and rule out the glass and the closure", HABIT)

# Signs in remarks beyond the tasting words: phrase to fault.
REMARK_FAULTS: dict[str, str] = {
    "mould": "mould", "mold": "mould", "fuzzy": "mould", "white film": "film", "film on top": "film", "flor": "film",
    "pushing corks": "refermentation", "corks pushing": "refermentation", "bottle burst": "refermentation",
    "gone to vinegar": "volatile acidity", "turned to vinegar": "volatile acidity",
    "turning to vinegar": "volatile acidity", "bottles burst": "refermentation", "bottle exploded": "refermentation",
    "bottles exploded": "refermentation",
}
# Words that mean a fault in a tasting but anything else in a remark, unless the clause speaks of a smell or a taste.
ONLY_SMELT = frozenset((
    "egg", "eggs", "glue", "volatile", "va", "horse", "mouse", "stable", "reduced", "plaster", "drains", "onion",
    "onions", "garlic", "cabbage", "solvent", "sherry", "geranium", "geraniums", "skunk", "barnyard", "farmyard",
    "vinegar", "acetone", "nail polish", "fizzy", "gassy", "spritz", "prickly", "hazy", "cloudy", "murky", "ladybug",
    "oxidation", "sour milk", "sauerkraut", "tca", "struck match", "wet dog", "hospital"))  # fmt: skip
SMELLING = frozenset((
    "smell", "smells", "smelled", "smelling", "smelt", "stink", "stinks", "stank", "stinky", "nose", "whiff", "aroma",
    "reek", "reeks", "pong", "pongs", "taste", "tastes", "tasted", "tasting", "sniff", "sniffed", "notes of",
    "hint of", "smelly", "funk", "odour", "odor"))  # fmt: skip
FADED = frozenset(("gone", "disappeared", "vanished", "cleared", "faded", "blown", "blew"))
NORMAL_IN_FERMENT = frozenset(("haze", "refermentation", "sulfur dioxide"))

# What a plan's words ask for: phrase to kind of entry, after a colon the quantity read.
PLAN_ACTS: dict[str, str] = {
    **dict.fromkeys(("rack", "racked", "racking", "siphon", "syphon", "transfer", "rerack", "re-rack"), "rack"),
    **dict.fromkeys(("press", "pressing", "pressed"), "press"),
    **dict.fromkeys(("bottle", "bottling", "bottled", "bottle it", "bottle day"), "bottle"),
    **dict.fromkeys(("yeast", "pitch", "pitching", "inoculate", "pitch yeast"), "pitch"),
    **dict.fromkeys(("top up", "topping", "top off", "topup", "top-up"), "top_up"),
    **dict.fromkeys(("taste", "tasting", "sample", "try"), "taste"),
    **dict.fromkeys(("filter", "filtering"), "filter"),
    **dict.fromkeys(("degas", "degassing"), "degas"),
    **dict.fromkeys(("stir", "stir the lees", "stir lees"), "stir"),
    **dict.fromkeys(("chill", "cold crash", "cold stabilise", "cold stabilize", "cold stabilisation"), "chill"),
    **dict.fromkeys(("airlock", "airlocks", "air lock"), "airlock"),
    **dict.fromkeys(("punch down", "punch", "plunge", "punch the cap"), "punch_down"),
    **dict.fromkeys(("blend", "blending"), "blend"),
    **dict.fromkeys(("crush", "crushing", "destem"), "crush"),
    **dict.fromkeys(("malolactic", "mlf", "malo", "ml culture", "malolactic culture"), "malolactic"),
    **dict.fromkeys(("oak", "oak chips", "oak cubes", "add oak", "chips", "cubes"), "oak"),
    **dict.fromkeys(("pull the oak", "oak out", "take the oak out", "remove the oak", "off the oak"), "oak_out"),
    **dict.fromkeys(("drink", "open a bottle"), "drink"),
    **dict.fromkeys(("buy", "order", "purchase"), "purchase"),
    **dict.fromkeys(("gravity", "sg", "hydrometer"), "reading:sg"),
    **dict.fromkeys(("ph", "check ph", "measure ph"), "reading:ph"),
    **dict.fromkeys(("ta", "acidity"), "reading:ta"),
    **dict.fromkeys(("free so2", "check so2", "test so2", "measure so2", "check sulfite", "check sulphite"),
        "reading:free_so2"),
}
# Plans of these acts are overtaken once the wine is in bottles.
BEFORE_BOTTLES = frozenset(("rack", "press", "bottle", "pitch", "top_up", "filter", "degas", "stir", "chill", "airlock",
    "punch_down", "blend", "crush", "malolactic", "oak", "oak_out", "addition", "reading"))  # fmt: skip
