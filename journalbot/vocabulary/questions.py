"""Words of questions: what each says is wanted. One row a sign, its phrases in lower case; common speech, no source.

A sign is what a question is recognised by; `questions/measures` says which signs together ask for which measure.
Words of `FILLERS` say nothing that could change an answer.
"""


def words(text: str) -> frozenset[str]:
    """The words of a text as a set."""
    return frozenset(text.split())


# Short forms, written out before a question is read.
SHORT: dict[str, str] = {
    "thats": "that is", "whats": "what is", "what's": "what is", "wats": "what is", "what're": "what are",
    "what'd": "what did",
    "whatd": "what did", "wat": "what", "wht": "what", "whens": "when is", "when's": "when is", "when'd": "when did",
    "wen": "when", "wheres": "where is", "where's": "where is", "where'd": "where did", "whered": "where did",
    "who's": "who is", "whos": "who is", "who'd": "who did", "whod": "who did", "hows": "how is", "how's": "how is",
    "how'd": "how did", "howd": "how did", "hw": "how", "why'd": "why did", "whyd": "why did", "why's": "why is",
    "which'd": "which did", "n": "and", "r": "are", "u": "you", "avg": "average", "gimme": "give me",
    "lemme": "let me", "i've": "i have", "ive": "i have", "i'd": "i had", "i'm": "i am", "im": "i am",
    "we've": "we have", "there's": "there is", "theres": "there is", "ferm": "ferment", "didja": "did you",
    "d'you": "do you", "bout": "about", "howmuch": "how much", "howmany": "how many", "temprature": "temperature",
    "wich": "which", "whihc": "which", "waht": "what", "teh": "the", "thru": "through", "w": "with",
    "rn": "now", "atm": "now", "owt": "anything", "nowt": "nothing", "abt": "about", "plz": "please",
    "gravitys": "gravities", "yeasts": "yeast", "vs.": "vs", "pls": "please",
}

# What kind of answer is wanted.
ASKS: dict[str, tuple[str, ...]] = {
    "what": ("what", "which", "what all", "what kind of", "what sort of", "what type of", "which kind of",
        "which sort of",
        "what exactly", "tell me", "show me", "give me", "remind me", "let me see", "let me know", "what were",
        "what are", "what is", "what was", "show", "list", "i want to know", "i need to know"),
    "when": ("when", "what day", "which day", "what date", "which date", "what month", "which month", "what year",
        "which year", "since when", "on what day", "on which day", "on what date", "the date", "date", "dates",
        "time when", "the day", "last time", "first time"),
    "clock": ("what time", "at what time", "what hour", "time of day", "what time of day", "at what hour"),
    "where": ("where", "in which vessel", "in what vessel", "which vessel", "what vessel", "which vessels",
        "what vessels", "whereabouts", "which carboy", "what carboy", "which demijohn", "which bucket",
        "which tank", "location"),
    "who": ("who", "whom", "to whom", "who all", "which people", "which friends"),
    "why": ("why", "how come", "for what reason", "what for", "the reason", "reason", "what happened to",
        "what went wrong with"),
    "how long": ("how long", "how fast", "how quickly", "how slowly", "how many days", "how many weeks",
        "how many months", "how many years", "how much time", "number of days", "days from", "days between",
        "days", "weeks", "duration", "length", "time from", "time between", "time spent", "what length of time",
        "time since",
        "how old", "for how long", "weeks between", "months between", "months from", "weeks from", "long"),
    "how much": ("how much", "what amount", "amount", "amounts", "dose", "dosage", "doses", "what quantity",
        "quantity", "quantities", "how big a dose", "what dose", "rate", "how many grams", "how many g",
        "how many teaspoons", "how many tsp", "how many tablets", "how many ounces", "how many oz", "how many ml",
        "how much wine", "how many pounds", "how many lb", "how many kilos", "how many kg", "how many packets",
        "at what rate"),
    "how many": ("how many", "number of", "count of", "how big a number of", "count"),
    "how": ("how", "how did", "how was", "how has", "in what way"),
    "times": ("how many times", "how often", "number of times", "times", "how frequently"),
    "did": ("did", "was", "is", "are", "were", "has", "have", "had", "do", "does", "ever", "any", "anything",
        "was there", "is there", "were there", "am", "been", "some"),
}

# How what is found is put together.
WAYS: dict[str, tuple[str, ...]] = {
    "last": ("last", "latest", "most recent", "most recently", "recent", "recently", "newest", "the last time",
        "last time", "currently", "current", "now", "at the moment", "right now", "at present", "these days",
        "lately", "presently", "today", "last known", "final"),
    "first": ("first", "starting", "initial", "initially", "original", "originally", "at the start",
        "to start with", "to begin with", "start", "at the beginning", "the first time", "first time", "opening",
        "beginning", "earliest", "at first"),
    "most": ("most", "highest", "maximum", "max", "peak", "biggest", "largest", "greatest", "top", "more",
        "higher", "bigger", "larger", "greater", "peaked", "most often"),
    "least": ("least", "lowest", "minimum", "min", "smallest", "fewest", "lower", "smaller", "less", "fewer",
        "bottom", "least often"),
    "mean": ("average", "mean", "on average", "averaged", "typical", "typically", "averages", "usual", "usually"),
    "sum": ("total", "in total", "in all", "altogether", "all told", "overall", "totals", "sum", "combined",
        "all together", "summed", "both sizes together", "both sizes", "together", "grand total", "all up"),
    "change": ("changed", "change", "over time", "over the years", "trend", "progress", "progressed", "develop",
        "developed", "development", "evolved", "evolve", "come along", "coming along", "went down", "go down",
        "getting better", "getting worse", "improving", "improved", "improve",
        "dropped", "course", "curve", "moved on", "plot", "graph", "chart", "day by day", "come on",
        "aged", "changes", "through time"),
    "compare": ("compare", "compared", "comparison", "versus", "vs", "difference", "differences", "differ",
        "differently", "side by side", "against", "compared to", "compared with", "different"),
    "range": ("range", "ranged", "between what", "swing"),
    "each": ("each", "every", "all", "both", "each of", "all of", "all of my", "respectively", "every one of",
        "per batch", "by batch", "both times"),
}

# Adjectives that say both how to choose and, most of them, by what.
SUPERLATIVES: dict[str, tuple[str, str]] = {  # word -> (way, sign)
    "hottest": ("most", "temperature"), "warmest": ("most", "temperature"), "hotter": ("most", "temperature"),
    "warmer": ("most", "temperature"),
    "coldest": ("least", "temperature"), "coolest": ("least", "temperature"), "colder": ("least", "temperature"),
    "cooler": ("least", "temperature"),
    "strongest": ("most", "alcohol"), "stronger": ("most", "alcohol"), "weakest": ("least", "alcohol"),
    "weaker": ("least", "alcohol"), "booziest": ("most", "alcohol"),
    "longest": ("most", "how long"), "longer": ("most", "how long"), "slowest": ("most", "ferment time"),
    "slower": ("most", "ferment time"), "shortest": ("least", "how long"),
    "shorter": ("least", "how long"), "fastest": ("least", "ferment time"), "quickest": ("least", "ferment time"),
    "faster": ("least", "ferment time"), "quicker": ("least", "ferment time"),
    "best": ("most", "score"), "better": ("most", "score"), "favourite": ("most", "score"),
    "favorite": ("most", "score"), "nicest": ("most", "score"), "tastiest": ("most", "score"),
    "like best": ("most", "score"), "like the best": ("most", "score"), "like most": ("most", "score"),
    "like the most": ("most", "score"), "liked best": ("most", "score"), "liked most": ("most", "score"),
    "enjoy most": ("most", "score"), "enjoyed most": ("most", "score"), "like least": ("least", "score"),
    "like the least": ("least", "score"), "liked least": ("least", "score"), "enjoyed least": ("least", "score"),
    "least favourite": ("least", "score"), "least favorite": ("least", "score"),
    "worst": ("least", "score"), "worse": ("least", "score"),
    "cheapest": ("least", "money"), "cheaper": ("least", "money"), "dearest": ("most", "money"),
    "priciest": ("most", "money"), "costliest": ("most", "money"),
    "most expensive": ("most", "money"), "least expensive": ("least", "money"), "more expensive": ("most", "money"),
    "dearer": ("most", "money"),
    "driest": ("least", "gravity now"), "drier": ("least", "gravity now"), "dryer": ("least", "gravity now"),
    "sweetest": ("most", "gravity now"), "sweeter": ("most", "gravity now"),
    "biggest": ("most", "batch size"), "largest": ("most", "batch size"), "smallest": ("least", "batch size"),
    "bigger": ("most", "batch size"), "larger": ("most", "batch size"), "smaller": ("least", "batch size"),
    "oldest": ("most", "age"), "older": ("most", "age"), "youngest": ("least", "age"), "younger": ("least", "age"),
    "more acidic": ("least", "ph"), "less acidic": ("most", "ph"), "sharper": ("most", "ta"),
    "most acidic": ("least", "ph"), "least acidic": ("most", "ph"), "sharpest": ("most", "ta"),
}

# Which batches are meant, where none is named.
GROUPS: tuple[str, ...] = (
    "wine", "wines", "batch", "batches", "one", "ones", "vintage", "vintages", "bottlings", "lots", "lot", "ferment",
    "ferments", "fermentation", "fermentations", "of them", "of mine", "brews", "anything", "something",
)
COLOURED: dict[str, tuple[str, ...]] = {
    "red": ("reds",), "white": ("whites",), "rosé": ("rosés", "pinks", "roses"),
    "fruit": ("fruit wines", "country wines"), "mead": ("meads",), "cider": ("ciders",),
}
STATES: dict[str, tuple[str, ...]] = {  # state -> phrases; what each means is in questions/answers.py
    "bottled": ("in bottles", "bottled", "in bottle", "already bottled", "in the bottle"),
    "under way": ("under way", "underway", "on the go", "in progress", "active", "not bottled", "not yet bottled",
        "unbottled", "unfinished", "in bulk", "not in bottles", "still going", "not bottled yet", "current",
        "aging", "ageing", "not in bottle"),
    "fermenting": ("fermenting", "still fermenting", "bubbling", "in primary"),
    "gone": ("all gone", "drunk up", "finished off", "used up", "gone", "all drunk", "empty", "sold out"),
    "ended": ("dumped", "ended", "thrown away", "lost", "failed", "poured away", "dead"),
}
EVERY: tuple[str, ...] = (
    "all", "every", "any", "any of", "one of", "each", "all of", "each of", "either", "either of", "any one of",
    "all my", "all the", "some of", "none of", "both", "my", "ever", "whole lot",
)

# Comparisons in conditions: phrase -> test.
TESTS: dict[str, tuple[str, ...]] = {
    "over": ("over", "above", "more than", "greater than", "higher than", "better than", "exceeding",
        "longer than", "hotter than", "warmer than", "stronger than", "beyond", "past", "later than", "upwards of",
        ">", "exceeded", "bigger than"),
    "under": ("under", "below", "less than", "fewer than", "lower than", "cooler than", "colder than",
        "shorter than", "weaker than", "worse than", "<", "smaller than", "cheaper than"),
    "at least": ("at least", "no less than", "or more", "minimum of", "≥", "or over", "or higher", "or better"),
    "at most": ("at most", "no more than", "up to", "or less", "or fewer", "maximum of", "≤", "or under", "or lower"),
    "exactly": ("exactly", "just", "only", "precisely", "of exactly"),
}
DENIALS: tuple[str, ...] = (
    "no", "not", "never", "without", "none", "didn't", "didnt", "did not", "haven't", "havent", "have not", "hasn't",
    "hasnt", "has not", "wasn't", "wasnt", "was not", "weren't", "no longer", "don't", "dont", "isn't", "isnt",
    "aren't", "lacking", "lack", "nothing", "free of", "un",
)
RELATIVES: tuple[str, ...] = (
    "that", "which", "who", "where", "whose", "with", "without", "having", "i", "we", "but", "from which",
)
ANCHORS: dict[str, tuple[str, ...]] = {  # a span of days named by what was done in it
    "day": ("the day", "on the day", "the same day", "that day"),
    "week": ("the week", "in the week", "the same week", "that week"),
    "month": ("the month", "in the month", "the same month"), "year": ("the year", "in the year"),
}

# What people say before they ask; it is passed over where an asking word follows.
LEAD_INS: tuple[str, ...] = (
    "do you remember", "do you recall", "do you know", "do you happen to know", "can you tell me", "could you tell me",
    "can you remember", "can you remind me", "could you remind me", "would you know", "i forget", "i forgot",
    "i can not remember", "i can't remember", "i cannot remember", "i don't remember", "i do not remember",
    "i can't recall", "i was wondering", "i am wondering", "just wondering", "wondering", "any idea", "any clue",
    "quick question", "question", "hey", "hi", "hello", "ok so", "okay so", "so", "um", "hmm", "remind me", "please",
    "i would like to know", "i'd like to know", "i want to know", "out of interest", "just out of interest",
    "for the record", "let me see", "right", "well", "now then",
)
# Words that carry no meaning of their own in a question.
FILLERS: frozenset[str] = words(
    "a an the my our your his her their this that these those it its it's i me we us you he she they them one ones "
    "i'd we'd of in on at to for from with by into onto out off up down as about and or but so if than then too "
    "also just only really actually exactly roughly approximately approx please thanks thank hey hi ok okay well "
    "say do does did done doing is are was were be been being am has have had having can could would will shall "
    "should may might must get got gets go goes went gone going make made take took taken put ever yet already "
    "still now again once far there here what which when where who whom whose why how much many long often all any "
    "some each every both either no not wine wines batch batches stuff thing things juice kind sort type tell show "
    "give remind know see want like need think guess wonder wondering wondered believe remember recall told old new "
    "use used using come came look looked check total time times day days week weeks month months year years ago "
    "back since until till before after during between over under through per cellar journal notebook book records "
    "entries recorded noted wrote written right left own other another same more most less least very quite bit "
    "little lot end ended sir mate buddy me? yes no. o' o ' s d re ve ll t m gonna wanna gotta let's lets let turn "
    "turned happen happened happens while work worked run ran gave level value values figure figures number numbers "
    "reading readings anybody anyone somebody someone everything something anything nothing else around name called "
    "call named sorts kinds note notes logged log list data stated listed information info details sum altogether "
    "elapsed passed house home made-up notes' season seasons sit sat sitting sits seen part parts bottle's "
    "reach reached reaches hit hits showed shows achieve achieved brought manage managed counted contained lasted "
    "become becomes whatever whichever honestly anyway possibly maybe perhaps properly kindly quickly again lovely "
    "away dear lately somehow simply nicely fully possible "
    "different together himself myself tho lol btw hmm um uh erm tbh imo folks cheers finally"
)

# Words that say that something was done, which is looked up and not calculated.
DEEDS: frozenset[str] = frozenset((
    "added", "used", "gave", "given", "dosed", "recorded", "noted", "wrote", "received", "had",
))
MODALS: frozenset[str] = frozenset((
    "am i", "are we", "will i", "should i", "should we", "shall i", "ready to", "ready for", "time to", "can i",
    "could i", "ought i to", "do i need to", "must i", "am i to", "going to",
))
# Periods that figures are told by.
PERIODS: dict[str, tuple[str, ...]] = {
    "year": ("per year", "by year", "each year", "every year", "yearly", "year by year", "annually", "by the year"),
    "month": ("per month", "by month", "each month", "every month", "monthly", "month by month", "by the month"),
}
# The first days of a wine: what is said of them -> as in `questions.says.RELATIONS`.
OPENINGS: dict[str, tuple[str, ...]] = {
    "first day": ("first day", "day one", "day 1"), "first week": ("first week", "first seven days", "first 7 days"),
    "first fortnight": ("first fortnight", "first two weeks", "first 2 weeks"),
    "first month": ("first month", "first four weeks", "first 30 days"), "first year": ("first year",
        "first twelve months"),
}
# What money goes to that is no one thing: "on this hobby".
NO_ITEM: frozenset[str] = words(
    "hobby hobbies winemaking wine-making brewing everything lot whole thing wine wines stuff all this or "
    "making supplies"
)
