"""Words of questions that want something worked out: the part a figure plays, what it is of, and what is asked about "
    "it.

Common speech, no source. `calculations.py` says which of them together ask for which calculation.
"""

from journalbot.vocabulary.questions import words

# What a figure's small word makes of it.
ROLES: dict[str, str] = {
    "from": "from", "starting": "from", "to": "to", "reach": "to", "hit": "to", "get": "to", "make": "to", "into": "in",
    "until": "to", "at": "at", "by": "by", "of": "of", "in": "in", "for": "for", "with": "with", "and": "and",
    "add": "by", "adding": "by", "another": "by", "+": "by", "is": "", "read": "at", "holds": "in", "=": "",
    "vs": "and", "&": "and", "than": "than", "gives": "to", "on": "in", "wants": "to", "target": "to", "drop": "by",
}
ROLE_OF_NAME = {"og": "from", "fg": "to"}
STEPS_OVER = frozenset(("of", "is", "at", "=", ":", "was", "reads"))
# Names right before a number.
NAMED: dict[str, str] = {
    "ph": "ph", "ta": "ta", "acidity": "ta", "titratable acidity": "ta", "total acidity": "ta", "sg": "sg",
    "gravity": "sg", "og": "sg", "fg": "sg", "specific gravity": "sg", "brix": "brix", "abv": "alcohol",
    "alcohol": "alcohol", "yan": "yan", "nitrogen": "yan", "free so2": "free_so2", "free": "free_so2",
    "so2": "free_so2", "malic": "malic", "malic acid": "malic", "molecular": "molecular",
    "molecular so2": "molecular", "free sulfite": "free_so2", "free sulphite": "free_so2", "rs": "residual_sugar",
    "residual sugar": "residual_sugar",
}
OWN_UNITS: dict[str, tuple[str, str]] = {
    "brix": ("brix", "Brix"), "bx": ("brix", "Brix"), "°bx": ("brix", "Brix"), "balling": ("brix", "Brix"),
    "plato": ("brix", "Brix"), "abv": ("percent", "%"), "bar": ("pressure", "bar"), "psi": ("pressure", "psi"),
}
AFTER_UNITS: dict[str, str] = {"molecular": "molecular", "free": "free_so2"}
LENGTHS: dict[str, str] = {"cm": "cm", "centimetres": "cm", "centimeters": "cm", "inch": "in", "inches": "in"}
SMALL_VOLUMES = frozenset(("tsp", "tbsp", "cup", "ml", "fl oz", "cl"))

TOPICS: dict[str, tuple[str, ...]] = {
    "how much": ("how much", "how many", "what dose", "what amount", "calculate", "work out", "dose of", "dosage",
        "grams of", "how big a dose", "grams"),
    "needed": ("need", "needs", "needed", "should i", "should we", "should", "required", "require", "requires",
        "call for", "calls for", "have to", "shall i", "want", "wants", "ought"),
    "raising": ("raise", "increase", "bring up", "bump", "lift", "go up", "up", "rise", "bring", "get", "boost",
        "chaptalize", "chaptalise", "chaptalizing", "chaptalising"),
    "lowering": ("dilute", "water down", "lower", "reduce", "drop", "drops", "dropped", "falls", "fall", "fell",
        "decrease", "bring down", "cut", "take down", "down", "knock", "remove"),
    "giving": ("give", "gives", "add", "adds", "do", "does", "worth", "supply", "supplies", "mean", "come to",
        "adding", "added", "takes", "take", "put"),
    "scale": ("brix", "sg", "gravity", "specific gravity", "density", "plato", "balling", "scales", "g / l", "sugar",
        "g per litre", "g per liter", "extract", "sweet", "per litre", "per liter"),
    "in scale": ("in brix", "as brix", "to brix", "in sg", "as sg", "to sg", "in g / l", "in plato", "into brix",
        "on other scales", "on the other scales", "in density", "as density"),
    "potential": ("potential", "potential alcohol", "potential abv", "pa", "probable alcohol"),
    "alcohol": ("alcohol", "abv", "strength", "strong", "alc", "%", "percent", "boozy"),
    "ending": ("end", "finish", "at the end", "end up", "finishes", "goes dry", "ferments out", "ferments dry",
        "go dry", "ferment out", "ferments", "finished", "when dry", "dry", "fully ferments", "final", "to dryness",
        "reach", "reaches", "get to", "come to", "down to"),
    "may": ("could", "can", "would", "will", "might", "if", "may"),
    "correct": ("correct", "corrected", "correction", "really", "true", "adjusted", "adjust", "actual", "compensate",
        "actually"),
    "instrument": ("hydrometer", "reading", "read", "reads", "measured", "showed", "shows", "says", "calibrated",
        "sample"),
    "refractometer": ("refractometer",),
    "attenuation": ("attenuation", "attenuated", "apparent attenuation"),
    "dryness": ("dry", "dry enough", "done", "finished", "how dry", "fermented out"),
    "dry now": ("dry",),
    "sugar left": ("sugar left", "residual sugar", "sugar is left", "leftover sugar", "rs", "sugar remaining",
        "sugar remains", "sugar in it", "sugar would be left", "have sugar", "any sugar", "fermentable sugar"),
    "so2": ("so2", "sulfite", "sulphite", "sulfites", "sulphites", "sulfur dioxide", "meta", "sulfur"),
    "free": ("free", "free so2", "free sulfite", "free sulphite"),
    "molecular": ("molecular", "molecular so2"),
    "estimate": ("estimate", "estimated", "about", "roughly", "now", "today", "by now", "likely", "probably", "guess"),
    "acid": ("acid", "ta", "acidity", "titratable acidity", "total acidity", "sour", "tart"),
    "ph": ("ph",),
    "too acid": ("too acidic", "too sour", "too tart", "too sharp", "acidic enough", "acid enough", "enough acid"),
    "acids": ("tartaric", "malic", "citric", "sulfuric", "sulphuric", "lactic", "acetic", "as tartaric", "as malic",
        "as sulfuric", "as sulphuric", "as citric", "as lactic", "tartaric acid"),
    "as acid": tuple(f"{small} {name}" for small in ("as", "to", "in", "into")
        for name in ("tartaric", "malic", "citric", "sulfuric", "sulphuric", "lactic", "acetic")),
    "malolactic": ("malolactic", "mlf", "ml", "malo", "malolactic fermentation"),
    "sweeten": ("sweeten", "backsweeten", "back-sweeten", "back sweeten", "sweetening", "backsweetening", "sweeter",
        "sweetened", "backsweetened"),
    "nutrient": ("yeast nutrient", "nutrient", "nutrients", "nitrogen", "yan", "dap", "feed", "yeast food"),
    "blend": ("blend", "blending", "mix", "mixing", "combine", "mixed", "blended", "pearson", "square",
        "pearson square", "put together", "together", "combined", "ratio", "proportion", "proportions", "parts"),
    "half": ("half and half", "half", "equal parts", "fifty-fifty", "equal", "50 / 50"),
    "dilute": ("dilute", "diluted", "water down", "water", "diluting"),
    "primary": ("bucket", "primary", "fermenter", "vessel", "vat", "bin", "tub", "pail", "tank"),
    "how big": ("how big", "what size", "how large", "size", "big enough", "large enough", "big", "large", "holds"),
    "fermenting": ("fermentation", "the fermentation", "ferment", "fermenting", "ferments"),
    "headspace": ("headspace", "head space", "head", "headroom", "foam", "foam-over", "foam over", "room", "too much",
        "too full", "overflow", "foaming over", "foaming", "overflowing", "fit", "cap", "boil over"),
    "losing": ("lose", "loss", "losses", "leave behind", "leaves behind", "left behind", "lost", "leave", "behind",
        "left"),
    "racking": ("when racking", "when i rack", "rack", "racking", "racked", "lees", "gross lees", "fine lees",
        "siphon"),
    "top up": ("top up", "top-up", "topping up", "topping", "top off", "top", "fill up", "fill"),
    "fitting": ("fit", "fits", "hold", "holds", "take", "go into", "go in", "rack into", "rack it into", "into",
        "suit", "suits", "put it in", "put", "keep", "enough for", "use for", "move it to", "use", "rack"),
    "which vessels": ("which vessel", "which vessels", "what vessel", "what vessels", "which carboy", "which carboys",
        "what carboys", "which demijohn", "which demijohns", "what can i", "which jugs", "which containers",
        "what will", "what would", "where can i", "where could i", "which of my vessels", "vessels", "carboys",
        "demijohns", "which of"),
    "bottles": ("bottle", "bottles", "btls"),
    "corks": ("cork", "corks", "closures", "caps", "screwcaps", "labels"),
    "filling": ("fill", "need", "get", "yield", "expect", "make", "will", "would", "should", "for", "give", "gives"),
    "gas": ("co2", "carbon dioxide", "gas"),
    "gassing": ("give off", "gives off", "given off", "make", "makes", "made", "produce", "produces", "release",
        "come off", "comes off", "comes", "give", "off", "so far", "breathe out"),
    "pressure": ("pressure", "bar", "psi", "atmospheres", "how fizzy", "fizz", "bomb", "bombs", "burst"),
    "in bottle": ("in the bottle", "in bottles", "in a bottle", "in bottle", "bottled", "refermented", "referments",
        "referment", "restarts", "ferments", "fermented", "ferment", "restarted", "bottle", "starts", "again"),
    "swelling": ("expand", "swell", "swells", "expands", "warm", "warms", "expansion", "warmed"),
    "sorbate": ("sorbate", "potassium sorbate"),
    "fining": ("fining", "fine"),
    "oak": ("oak", "oak chips", "oak cubes", "chips", "cubes"),
    "honey": ("honey",), "sugar": ("sugar", "table sugar", "white sugar", "sucrose"),
    "concentrate": ("concentrate", "grape concentrate", "juice concentrate", "syrup"),
    "water": ("water",),
    "stop": ("stop", "stopping"),
    "advice": ("should i", "should we", "does", "do i need", "is it worth"),
}
# Work whose time is asked for: act as plans name it -> phrases; what looks wrong -> phrases.
ACTS: dict[str, tuple[str, ...]] = {
    "rack": ("rack", "racking", "racked", "siphon", "rack it"),
    "top_up": ("top up", "topping up", "top off", "topped up"),
    "bottle": ("bottle", "bottling", "bottled"), "taste": ("taste", "tasting"),
    "airlock": ("airlock", "airlocks", "refill the airlock", "check the airlock", "refill airlocks"),
    "press": ("press", "pressing"), "punch_down": ("punch down", "punching down", "plunge"),
    "oak_out": ("oak come out", "the oak come out", "take the oak out", "oak out", "pull the oak",
        "take it off the oak", "take out the oak",
        "remove the oak", "take off the oak"),
    "drink": ("drink", "open a bottle", "open it", "drinking", "drinkable", "drunk", "open"),
    "malolactic": ("check the malolactic", "check malolactic", "check the ml", "check mlf"),
    "sulfite": ("check sulfite", "check the sulfite", "check so2", "check free so2", "test sulfite", "measure so2",
        "test so2", "check sulphite"),
}
WORRIES: dict[str, tuple[str, ...]] = {
    "stuck": ("stuck", "stalled", "sluggish"), "too cold": ("too cold",), "too warm": ("too warm", "too hot"),
    "head space": ("too much head space", "too much headspace", "enough head space"),
    "gravity rising": ("gravity rising",),
}
for _table, _kind in ((ACTS, "act"), (WORRIES, "worry")):
    TOPICS |= {f"{_kind}:{name}": phrases for name, phrases in _table.items()}
TOPICS |= {
    "all right": ("ok", "okay", "alright", "all right", "healthy", "fine", "wrong", "safe", "in trouble", "doing well"),
    "when": ("when", "how soon", "what day", "how long until", "how long before"),
    "due what": ("due", "due now", "needs doing", "need doing", "to do", "to be done",
        "needs to be done", "should i do", "do i need to do", "do i have to do", "what to do"),
    "overdue": ("overdue", "behind on", "past due"),
    "should now": ("should i", "should we", "do i need to", "do we need to", "is it time to", "time to", "due",
        "is it due", "ready to", "ready for", "can i", "next", "need to", "need", "needs", "is the next",
        "be ready to"),
    "is it": ("is", "has", "does", "are", "looks", "seem", "seems", "getting"),
}
# Words that any calculation may be asked with.
COMMON = words(
    "calculate work out please how much many need needs needed required would will should could can i we if it its add "
    "added adding get to reach in of for from at by into dose amount grams g teaspoons tsp level spoon spoons tablets "
    "ounces oz ml kilos kg pounds lb lbs litres liters gallons l gal wine must juice batch what's whats what is are "
    "the a an and be come bring take raise use using using per each us uk imperial exact exactly more extra total ppm "
    "mg / % one another half weigh percent same right now like liquid currently my me hey so it's there goes go going "
    "went "
    "out up do does did put want wants enough powder make makes made reading last latest value me tell know give gives "
    "this that these those which has have let say convert equals equal dissolve stir level instead about roughly "
    "target ideal aim usual grape grapes considered counts starting start "
    "someone got buy fruit country mead cider have translate started finished ended without"
)
