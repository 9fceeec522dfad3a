"""Words of questions: what each says is wanted. One row a sign, its phrases in lower case; common speech, no source.

A sign is what a question is recognised by; `questions/measures` says which signs together ask for which measure.
Words of `FILLERS` say nothing that could change an answer.
"""


def words(text: str) -> frozenset[str]:
    """The words of a text as a set."""
    return frozenset(text.split())


# Short forms, written out before a question is read.
SHORT: dict[str, str] = {
    "whats": "what is", "what's": "what is", "wats": "what is", "what're": "what are", "what'd": "what did",
    "whatd": "what did", "wat": "what", "wht": "what", "whens": "when is", "when's": "when is", "when'd": "when did",
    "wen": "when", "wheres": "where is", "where's": "where is", "where'd": "where did", "whered": "where did",
    "who's": "who is", "whos": "who is", "who'd": "who did", "whod": "who did", "hows": "how is", "how's": "how is",
    "how'd": "how did", "howd": "how did", "hw": "how", "why'd": "why did", "whyd": "why did", "why's": "why is",
    "which'd": "which did", "n": "and", "r": "are", "u": "you", "avg": "average", "gimme": "give me",
    "lemme": "let me", "i've": "i have", "ive": "i have", "i'd": "i had", "i'm": "i am", "im": "i am",
    "we've": "we have", "there's": "there is", "theres": "there is", "ferm": "ferment", "didja": "did you",
    "d'you": "do you", "bout": "about", "howmuch": "how much", "howmany": "how many", "temprature": "temperature",
    "wich": "which", "whihc": "which", "waht": "what", "teh": "the", "thru": "through", "w": "with",
    "gravitys": "gravities", "yeasts": "yeast", "vs.": "vs", "pls": "please",
}

# What kind of answer is wanted.
ASKS: dict[str, tuple[str, ...]] = {
    "what": ("what", "which", "what kind of", "what sort of", "what type of", "which kind of", "which sort of",
        "what exactly", "tell me", "show me", "give me", "remind me", "let me see", "let me know", "what were",
        "what are", "what is", "what was", "show", "list", "i want to know", "i need to know"),
    "when": ("when", "what day", "which day", "what date", "which date", "what month", "which month", "what year",
        "which year", "since when", "on what day", "on which day", "on what date", "the date", "date", "dates",
        "what time", "time when", "the day", "last time", "first time"),
    "where": ("where", "in which vessel", "in what vessel", "which vessel", "what vessel", "which vessels",
        "what vessels", "whereabouts", "which carboy", "what carboy", "which demijohn", "which bucket",
        "which tank", "location"),
    "who": ("who", "whom", "to whom", "who all", "which people", "which friends"),
    "why": ("why", "how come", "for what reason", "what for", "the reason", "reason", "what happened to",
        "what went wrong with"),
    "how long": ("how long", "how fast", "how quickly", "how slowly", "how many days", "how many weeks",
        "how many months", "how many years", "how much time", "number of days", "days from", "days between",
        "days", "weeks", "duration", "length", "time from", "time between", "time spent", "what length of time",
        "how old", "for how long", "weeks between", "months between", "months from", "weeks from", "long"),
    "how much": ("how much", "what amount", "amount", "amounts", "dose", "dosage", "doses", "what quantity",
        "quantity", "quantities", "how big a dose", "what dose", "rate", "how many grams", "how many g",
        "how many teaspoons", "how many tsp", "how many tablets", "how many ounces", "how many oz", "how many ml",
        "how many pounds", "how many lb", "how many kilos", "how many kg", "how many packets", "at what rate"),
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
        "all together", "summed", "together", "grand total"),
    "change": ("changed", "change", "over time", "over the years", "trend", "progress", "progressed", "develop",
        "developed", "development", "evolved", "evolve", "come along", "coming along", "went down", "go down",
        "dropped", "course", "history", "curve", "moved on", "plot", "graph", "chart", "day by day", "come on",
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
    "longest": ("most", "how long"), "longer": ("most", "how long"), "slowest": ("most", "how long"),
    "slower": ("most", "how long"), "shortest": ("least", "how long"),
    "shorter": ("least", "how long"), "fastest": ("least", "how long"), "quickest": ("least", "how long"),
    "faster": ("least", "how long"), "quicker": ("least", "how long"),
    "best": ("most", "score"), "better": ("most", "score"), "favourite": ("most", "score"),
    "favorite": ("most", "score"), "nicest": ("most", "score"), "tastiest": ("most", "score"),
    "worst": ("least", "score"), "worse": ("least", "score"),
    "cheapest": ("least", "money"), "cheaper": ("least", "money"), "dearest": ("most", "money"),
    "priciest": ("most", "money"), "costliest": ("most", "money"),
    "most expensive": ("most", "money"), "least expensive": ("least", "money"), "more expensive": ("most", "money"),
    "dearer": ("most", "money"),
    "driest": ("least", "final gravity"), "drier": ("least", "final gravity"), "dryer": ("least", "final gravity"),
    "sweetest": ("most", "final gravity"), "sweeter": ("most", "final gravity"),
    "oldest": ("most", "age"), "older": ("most", "age"), "youngest": ("least", "age"), "younger": ("least", "age"),
    "most acidic": ("least", "ph"), "least acidic": ("most", "ph"), "sharpest": ("most", "ta"),
}

# Signs: what is asked about. Signs for quantities and materials come from the language layer too.
SIGNS: dict[str, tuple[str, ...]] = {
    "yeast": ("yeast", "strain", "strains", "yeast strain", "yeast strains", "fermented with", "ferment it with",
        "inoculated with", "pitched with"),
    "culture": ("culture", "cultures", "bacteria", "bugs", "bug", "ml culture", "malolactic culture",
        "malolactic bacteria"),
    "ferment": ("ferment", "fermented", "fermenting", "fermentation", "fermentations", "ferments", "primary",
        "in primary", "bubble", "bubbling", "primary fermentation", "alcoholic fermentation", "bubbled"),
    "ferment time": ("fermentation time", "ferment time", "fermentation length", "fermentation duration",
        "time fermenting", "days fermenting"),
    "started": ("start", "started", "begin", "began", "kick off", "take off", "took off", "get going", "got going",
        "set off", "begun", "kicked off"),
    "finished": ("finish", "finished", "end", "ended", "done", "go dry", "went dry", "gone dry", "complete",
        "completed", "stop", "stopped", "over", "through", "finish fermenting", "dry", "ferment out",
        "fermented out", "to dryness", "get done", "come to an end", "reach dryness"),
    "restarted": ("restart", "restarted", "start again", "get going again", "got going again", "started again",
        "take off again", "took off again", "come back to life"),
    "oak out": ("out", "out of", "remove", "removed", "pull", "pulled", "taken out", "take out", "took out",
        "came out", "come out", "take off", "taken off", "took off", "come off", "came off", "off", "fish out",
        "fished out"),
    "past": ("was in", "were in", "has been in", "have been in", "been in", "used to be in", "has been through",
        "was inside", "was last in", "used to hold", "passed through", "before", "previously", "held",
        "was kept in", "did i have in", "did i keep in"),
    "stuck": ("stuck", "stick", "stall", "stalled", "get stuck", "got stuck", "sluggish", "stop early"),
    "final gravity": ("fg", "f.g", "f.g.", "final gravity", "finishing gravity", "final density",
        "finishing density", "final sg", "finishing sg", "terminal gravity", "final specific gravity",
        "end gravity", "ending gravity", "final reading", "how dry", "last gravity before bottling", "ended up at",
        "finish at", "finish up at", "end at", "end up at", "ended at", "finished at"),
    "original gravity": ("og", "o.g", "o.g.", "original gravity", "starting gravity", "starting density",
        "initial gravity", "initial density", "original density", "starting sg", "initial sg", "start gravity",
        "opening gravity", "starting specific gravity", "original specific gravity", "beginning gravity",
        "start at", "started at", "start out at", "starting sugar"),
    "sweetness": ("how sweet", "sweetness", "is sweet"),
    "harvest": ("harvest", "harvested", "picking", "harvesting", "picked"),
    "sg": ("gravity", "gravities", "sg", "s.g", "s.g.", "density", "densities", "specific gravity",
        "hydrometer reading", "hydrometer readings", "hydrometer"),
    "temperature": ("temperature", "temperatures", "temp", "temps", "hot", "warm", "cold", "cool", "how hot",
        "how warm", "how cold", "how cool", "heat"),
    "alcohol": ("alcohol", "abv", "strength", "alc", "strong", "how strong", "alcohol level", "alcohol content",
        "proof", "percent alcohol", "alcoholic strength"),
    "attenuation": ("attenuation", "apparent attenuation", "attenuate", "attenuated", "how far did it ferment",
        "attenuates"),
    "residual sugar": ("residual sugar", "rs", "sugar left", "sugar is left", "leftover sugar", "remaining sugar",
        "sugar remaining"),
    "lab": ("lab", "laboratory", "lab sheet", "lab slip", "lab slips", "analysis", "lab results", "lab result",
        "measured", "by the lab"),
    "reading": ("reading", "readings", "measurements", "measurement", "numbers", "figures", "numbers on", "stats",
        "vitals"),
    "addition": ("add", "added", "addition", "additions", "adding", "put in", "put into", "went in", "went into",
        "go in", "go into", "gone into", "got", "get", "gets", "given", "give", "used", "use", "dosed",
        "dose with", "dosing", "chemicals", "additives", "goes in", "dosed with", "put", "received", "receive",
        "threw in", "stirred in", "treated", "treated with", "need"),
    "acid": ("acid", "acids", "acid addition", "acid adjustment", "acidify", "acidified", "acidifying",
        "acidification"),
    "deacidify": ("deacidify", "deacidified", "deacidification", "de-acidify", "de-acidified", "acid reduction",
        "take acid out of", "reduce the acid", "reduce acid", "deacidifying", "lower the acid", "lower acid",
        "lower acidity", "lower the acidity"),
    "sulfite": ("sulfite", "sulphite", "sulfites", "sulphites", "sulfited", "sulphited", "sulfiting", "sulphiting",
        "so2 addition", "so2", "sulfur", "sulphur", "sulfur dioxide", "sulphur dioxide", "meta",
        "sulfite addition", "sulphite addition", "sulfite additions", "sulphite additions"),
    "nutrients": ("nutrient", "nutrients", "feed", "feeding", "fed", "yeast food", "feedings", "yeast nutrient",
        "yeast nutrients"),
    "sweeten": ("sweeten", "sweetened", "sweetening", "backsweeten", "backsweetened", "back-sweeten",
        "back-sweetened", "back sweeten", "back sweetened", "backsweetening", "back-sweetening", "sweetener"),
    "sugar": ("chaptalise", "chaptalize", "chaptalised", "chaptalized", "chaptalisation", "chaptalization"),
    "fining": ("fine", "fined", "fining", "finings", "clarify", "clarified", "clearing agent", "fining agent",
        "fining agents", "clear with"),
    "stabilise": ("stabilise", "stabilize", "stabilised", "stabilized", "stabilising", "stabilizing"),
    "oak": ("oak", "oaked", "oaking", "oak treatment", "wood", "on oak", "in oak", "oaks"),
    "toast": ("toast", "toast level", "toasting"),
    "lees": ("lees", "on the lees", "on its lees", "fine lees", "gross lees", "sur lie", "on lees"),
    "rack": ("rack", "racked", "racking", "rackings", "siphoned", "transferred", "transfers", "transfer", "racks"),
    "press": ("press", "pressed", "pressing", "pressings", "press off", "pressed off"),
    "crush": ("crush", "crushed", "crushing", "destem", "destemmed"),
    "punch_down": ("punch down", "punched down", "punch downs", "punchdowns", "punchdown", "punching down",
        "pumped over", "pump over", "pump overs", "pumpovers", "plunge", "plunged", "cap work", "punched",
        "punch the cap", "punched the cap"),
    "degas": ("degas", "degassed", "degassing", "de-gas", "de-gassed"),
    "filter": ("filter", "filtered", "filtering", "filtration"),
    "stir": ("stir", "stirred", "stirring", "lees stirring", "batonnage", "bâtonnage", "stir the lees",
        "stirred the lees", "stir its lees"),
    "chill": ("chill", "chilled", "chilling", "cold stabilise", "cold stabilize", "cold stabilised",
        "cold stabilized", "cold stabilising", "cold stabilizing", "cold stabilisation", "cold stabilization",
        "cold crash", "cold crashed", "cold crashing"),
    "airlock": ("airlock", "airlocks", "air lock", "bubbler"),
    "top_up": ("top up", "topped up", "topping up", "top off", "topped off", "top-up", "top-ups", "topped",
        "top ups", "topping", "top"),
    "blend": ("blend", "blended", "blending", "blends", "mixed into", "mixed in"),
    "malolactic": ("malolactic", "ml", "mlf", "malo", "malolactic fermentation", "malo-lactic", "ml fermentation",
        "secondary fermentation"),
    "pitch": ("pitch", "pitched", "pitching", "inoculate", "inoculated", "pitch date", "yeast pitch",
        "at pitching", "when pitched", "at pitch"),
    "move": ("move", "moved", "moving", "carried", "relocated", "carry", "moves"),
    "bottle": ("bottle", "bottled", "bottling", "bottlings", "fill", "filled", "filling", "bottling day"),
    "bottles": ("bottle", "bottles", "btl", "btls", "in bottle", "in bottles", "bottle count"),
    "left": ("left", "remaining", "remain", "remains", "still got", "still have", "still lying", "left over",
        "in stock", "on hand", "in hand", "still there", "have left", "got left", "lying there", "do we have",
        "do i have", "in the rack", "have i got", "have we got", "do i still have", "have we still got",
        "have i still got", "unopened", "not drunk", "inventory", "stock", "do we still have", "left to drink",
        "left over"),
    "gone": ("gone", "used up", "left the cellar", "disappeared", "gone already"),
    "anyone": ("anyone", "anybody", "someone", "somebody", "people", "friends", "away"),
    "made": ("made", "make", "fill", "filled", "produced", "produce", "got", "get", "yield", "yielded", "come out",
        "came out", "bottled", "bottle", "come to", "came to", "put up", "end up with", "fill of",
        "put into bottles", "did"),
    "drunk": ("drunk", "drank", "drink", "opened", "open", "consumed", "consume", "gone through", "went through",
        "emptied", "uncorked", "drinking", "get through", "got through", "been through", "polished off", "killed",
        "kill"),
    "given": ("give", "gave", "given", "given away", "gave away", "give away", "gift", "gifted", "went to",
        "handed out", "hand out", "giving", "got", "took", "received", "gifts", "donate", "donated", "get"),
    "closure": ("closure", "closures", "cork", "corks", "cap", "caps", "closed with", "stopper", "stoppers",
        "sealed with", "seal", "corked"),
    "money": ("cost", "costs", "pay", "paid", "spend", "spent", "price", "prices", "expense", "expenses", "run me",
        "set me back", "outlay", "money", "spending", "expensive", "charge", "charged", "costing", "work out at",
        "works out at", "worked out at", "worth", "shell out", "shelled out", "fork out", "dollars", "euros",
        "bucks", "invoice", "bill", "cost me", "dear", "price tag", "money go", "outgoings"),
    "buy": ("buy", "bought", "purchase", "purchased", "purchases", "buying", "order", "ordered", "shopping"),
    "per bottle": ("per bottle", "a bottle", "each bottle", "apiece", "by the bottle", "for each bottle",
        "bottle cost", "cost per bottle", "price per bottle", "a pop", "every bottle"),
    "score": ("score", "scores", "scored", "scoring", "mark", "marks", "marked", "rating", "ratings", "rate",
        "rated", "points", "out of ten", "out of twenty", "grade", "graded", "top-rated", "highest-rated",
        "lowest-rated"),
    "taste": ("taste", "tastes", "tasted", "tasting", "tastings", "tasting note", "tasting notes", "flavour",
        "flavours", "flavor", "flavors", "descriptor", "descriptors", "impression", "impressions", "say about",
        "said about", "think of", "thought of", "palate", "aroma", "aromas", "describe", "described", "taste like",
        "tasted like", "notes on the taste", "tasting words", "nose", "drinking like", "taste of", "tasted of"),
    "smell": ("smell", "smelt", "smelled", "smells", "stink", "stank", "stunk", "stinks", "reek", "reeked",
        "reeks", "whiff", "pong", "ponged", "smell of", "smelt of", "smelled of", "stinky", "smelly"),
    "mention": ("mention", "mentions", "mentioned", "mentioning", "say", "says", "saying", "said", "notes", "note",
        "containing", "contain", "contains", "search", "find", "look for", "looking for", "search for", "wrote",
        "write", "wrote about", "write about", "written", "entries", "entry", "where did i write", "notes about",
        "notes on", "anything about", "talk about", "search my notes for", "with the word", "word", "words"),
    "drained": ("dumped", "dump", "poured away", "pour away", "thrown away", "throw away", "threw away",
        "threw out", "throw out", "thrown out", "tipped out", "ditched", "ditch", "chucked", "chuck", "tossed",
        "toss", "lost", "down the drain", "drain", "sink", "down the sink", "binned", "end up", "poured out",
        "get rid of", "got rid of", "throw", "threw", "thrown", "pour", "poured", "dumping", "gave up on",
        "give up on", "failed", "fail", "scrapped", "discard", "discarded"),
    "made of": ("made of", "made from", "make up", "made up of", "composed of", "consist of", "consists of",
        "composition", "in the blend", "made with", "what fruit", "which fruit", "ingredients", "what grapes",
        "which grapes", "base", "come from", "came from"),
    "begin": ("start", "started", "starting", "begin", "began", "begun", "set up", "make", "made", "kicked off",
        "put on", "on the go"),
    "in vessel": ("in", "inside", "sitting in", "sat in", "lying in", "holds", "hold", "holding", "contents",
        "contents of", "contain", "contains", "occupies", "occupying"),
    "free": ("free", "empty", "unused", "available", "vacant", "not in use", "spare"),
    "in use": ("in use", "full", "occupied", "being used", "taken"),
    "vessels": ("vessel", "vessels", "containers", "carboys", "demijohns", "buckets", "tanks", "fermenters",
        "carboy", "demijohn", "container", "barrels"),
    "capacity": ("capacity", "capacities", "size", "hold", "holds", "how big", "big", "large", "how large",
        "fit in", "fit into", "fits"),
    "is": ("is", "are", "sit", "sits", "sitting", "sat", "kept", "stored", "live", "stash", "stashed", "put",
        "keep", "store", "lives", "standing", "stand", "stood", "now", "currently", "stay", "stayed", "spend",
        "spent", "lying", "resting", "aging", "ageing", "hiding"),
    "volume": ("volume", "how much wine", "gallons", "litres", "liters", "gallon", "litre", "liter",
        "how many gallons", "how many litres", "how many liters"),
    "plan": ("plan", "plans", "planned", "planning", "due", "coming up", "am i", "are we", "should i", "ready to",
        "should we", "shall i", "time to", "can i", "could i", "ought i to", "ready for", "will i", "do i need to",
        "to do", "to-do", "todo", "meant to", "supposed to", "should i do", "upcoming", "scheduled", "schedule",
        "jobs", "tasks", "next up", "on the list", "need to do", "needs doing", "have to do", "going to",
        "intend to", "intended", "reminders", "reminder", "promised", "pending", "overdue", "agenda", "next",
        "chores", "need doing", "outstanding", "am i to", "want to do", "must i", "planning on", "intending to",
        "about to", "to-dos", "booked", "booked for", "pencilled in"),
    "story": ("story", "timeline", "history", "everything", "whole story", "everything about", "all about",
        "life of", "log", "full story", "diary", "chronicle", "life story", "all entries", "whole history",
        "summary", "summarise", "summarize", "sum up", "rundown", "run down", "overview", "from start to finish",
        "start to finish", "life", "details", "full history", "the lot about", "whole tale", "whole record",
        "the whole record", "tale", "entire history", "what happened with", "what happened to", "record",
        "records", "walk me through", "talk me through", "take me through", "run me through"),
    "recipe": ("recipe", "how did i make", "how i made", "how was made", "how did we make", "how to make",
        "make it again", "made again", "method", "procedure", "how do i make", "process"),
    "doing": ("do", "did", "done", "doing", "happened", "happen", "up to", "work on", "worked on", "get up to",
        "going on", "went on", "activity", "activities", "jobs"),
    "state": ("under way", "underway", "on the go", "in progress", "active", "going", "unfinished", "still going",
        "not bottled", "not yet bottled", "unbottled", "in bulk", "aging", "ageing", "not finished",
        "on at the moment", "not in bottles yet", "bulk aging", "still fermenting", "still on the go"),
    "summary": ("latest on", "how it stands", "how does it stand", "status", "state", "how are things with",
        "news of", "news on", "update on", "where are we with", "how far along", "stage", "is doing",
        "going on with", "up to date on", "any news", "what about", "tell me about", "introduce"),
    "how to": ("how do i", "how do you", "how to", "how can i", "how should i", "how does one", "how would i"),
    "age": ("age", "how old"),
    "unread": ("waiting", "not understood", "did not understand", "didn't understand", "open asks", "unanswered",
        "unread", "open question", "open questions", "need an answer", "needs an answer"),
    "between": ("between", "from", "since", "after"),
    "juice": ("juice", "pail", "pails", "juices"), "grapes": ("grapes", "grape", "fruit", "fruits"),
    "note": ("note", "notes", "wording", "what i wrote", "original note", "original notes", "exact words"),
}

# Which batches are meant, where none is named.
GROUPS: tuple[str, ...] = (
    "wine", "wines", "batch", "batches", "one", "ones", "vintage", "vintages", "bottlings", "lots", "lot", "ferment",
    "ferments", "fermentation", "fermentations", "of them", "of mine", "brews",
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

# Kinds of material that questions name as one.
MATERIAL_GROUPS: dict[str, tuple[str, ...]] = {
    "acid": ("tartaric acid", "malic acid", "citric acid", "acid blend", "lactic acid"),
    "deacidify": ("calcium carbonate", "potassium bicarbonate", "potassium carbonate"),
    "sulfite": ("potassium metabisulfite", "sodium metabisulfite", "campden tablet", "sulfur dioxide"),
    "nutrients": ("yeast nutrient", "diammonium phosphate", "yeast energizer"),
    "sweeten": ("sugar", "honey", "glycerin", "concentrate", "grape concentrate", "syrup"),
    "sugar": ("sugar",),
    "fining": ("bentonite", "gelatin", "isinglass", "egg white", "kieselsol", "chitosan", "casein", "sparkolloid",
        "pvpp", "activated carbon"),
    "stabilise": ("potassium sorbate", "potassium metabisulfite", "sodium metabisulfite", "campden tablet"),
}
GROUP_NAMES: dict[str, str] = {
    "acid": "acid", "deacidify": "anything to lower the acid", "sulfite": "sulfite", "nutrients": "nutrient",
    "sweeten": "sweetening", "sugar": "sugar", "fining": "finings", "stabilise": "stabiliser",
}

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
    "different together himself myself"
)

# Words that ask for a calculation, and words that say that something was done and is looked up instead.
CALCULATE: frozenset[str] = frozenset((
    "need", "needed", "needs", "raise", "lower", "lift", "bump", "bring", "get", "add", "should", "convert",
    "calculate", "work out", "reach", "hit", "give", "gives", "grams", "required", "require", "increase", "reduce",
    "dose", "for", "equals", "takes", "would", "will",
))
DEEDS: frozenset[str] = frozenset((
    "added", "used", "gave", "given", "dosed", "recorded", "noted", "wrote", "received", "had",
))
MODALS: frozenset[str] = frozenset((
    "am i", "are we", "will i", "should i", "should we", "shall i", "ready to", "ready for", "time to", "can i",
    "could i", "ought i to", "do i need to", "must i", "am i to", "going to",
))
