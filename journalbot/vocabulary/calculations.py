"""What can be worked out, and the words that ask for it. Common speech, no source.

A row of `CALCULATIONS` fits a question that has all its `needs`: a topic of `TOPICS`, a sort of figure (`sg`, with a
role `sg@to`), a batch, or a material of a group; `a|b` is either. Of the rows that fit, the one with the most needs is
taken; words and figures that a row has no use for keep it from fitting. `slots` say what fills the measure's parts, in
order: `to:sg@to|sg` is the gravity to reach, or any gravity not yet used; a `?` marks what may be missing.
"""

from typing import NamedTuple

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
    "raising": ("raise", "increase", "bring up", "bump", "lift", "go up", "up", "rise", "bring", "get", "boost", "chaptalize", "chaptalise", "chaptalizing", "chaptalising"),
    "lowering": ("lower", "reduce", "drop", "drops", "dropped", "falls", "fall", "fell", "decrease", "bring down", "cut", "take down", "down", "knock", "remove"),
    "giving": ("give", "gives", "add", "adds", "do", "does", "worth", "supply", "supplies", "mean", "come to",
        "adding", "added", "takes", "take", "put"),
    "scale": ("brix", "sg", "gravity", "specific gravity", "density", "plato", "balling", "scales", "g / l", "sugar",
        "g per litre", "g per liter", "extract", "sweet", "per litre", "per liter"),
    "in scale": ("in brix", "as brix", "to brix", "in sg", "as sg", "to sg", "in g / l", "in plato", "into brix",
        "on other scales", "on the other scales", "in density", "as density"),
    "potential": ("potential", "potential alcohol", "potential abv", "pa", "probable alcohol"),
    "alcohol": ("alcohol", "abv", "strength", "strong", "alc", "%", "percent", "boozy"),
    "ending": ("end", "finish", "at the end", "end up", "finishes", "goes dry", "ferments out", "ferments dry",
        "go dry", "ferment out", "ferments", "finished", "when dry", "dry", "fully ferments", "final", "to dryness", "reach", "reaches", "get to", "come to", "down to"),
    "may": ("could", "can", "would", "will", "might", "if", "may"),
    "correct": ("correct", "corrected", "correction", "really", "true", "adjusted", "adjust", "actual", "compensate",
        "actually"),
    "instrument": ("hydrometer", "reading", "read", "reads", "measured", "showed", "shows", "calibrated", "sample"),
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
    "nutrient": ("nutrient", "nutrients", "nitrogen", "yan", "dap", "feed", "yeast food"),
    "blend": ("blend", "blending", "mix", "mixing", "combine", "mixed", "blended", "pearson", "square",
        "pearson square", "put together", "together", "combined", "ratio", "proportion", "proportions", "parts"),
    "half": ("half and half", "half", "equal parts", "fifty-fifty", "equal", "50 / 50"),
    "dilute": ("dilute", "diluted", "water down", "water", "diluting"),
    "primary": ("bucket", "primary", "fermenter", "vessel", "vat", "bin", "tub", "pail", "tank"),
    "how big": ("how big", "what size", "how large", "size", "big enough", "large enough", "big", "large", "holds"),
    "fermenting": ("ferment", "fermenting", "ferments"),
    "headspace": ("headspace", "head space", "head", "headroom", "foam", "foam-over", "foam over", "room", "too much",
        "too full", "overflow", "fit", "cap", "boil over"),
    "losing": ("lose", "loss", "losses", "leave behind", "leaves behind", "left behind", "lost", "leave", "behind",
        "left"),
    "racking": ("when racking", "when i rack", "rack", "racking", "racked", "lees", "gross lees", "fine lees", "siphon"),
    "top up": ("top up", "top-up", "topping up", "topping", "top off", "top", "fill up", "fill"),
    "fitting": ("fit", "fits", "hold", "holds", "take", "go into", "go in", "rack into", "rack it into", "into",
        "suit", "suits", "put it in", "put", "keep", "enough for", "use for", "move it to", "use", "rack"),
    "which vessels": ("which vessel", "which vessels", "what vessel", "what vessels", "which carboy", "which carboys",
        "what carboys", "which demijohn", "which demijohns", "what can i", "which jugs", "which containers",
        "what will", "what would", "where can i", "where could i", "vessels", "carboys", "demijohns"),
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
    "oak_out": ("take the oak out", "oak out", "pull the oak", "take it off the oak", "take out the oak",
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
    "when": ("when", "how soon", "what day", "how long until", "how long before"),
    "due what": ("due", "due now", "needs doing", "need doing", "to do", "to be done", "needs to be done"),
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
    "mg / % one another half weigh percent same right now like liquid currently my me hey so it's there goes go going went "
    "out up do does did put want wants enough powder make makes made reading last latest value me tell know give gives "
    "this that these those which has have let say convert equals equal dissolve stir level instead about roughly "
    "target ideal aim usual grape grapes considered counts starting start someone"
)


class Calculation(NamedTuple):
    """What a question needs to be this calculation, what fills it, and which topics' words it may be asked with."""

    measure: str
    needs: tuple[str, ...]
    slots: tuple[str, ...] = ()
    also: tuple[str, ...] = ()
    done: bool = False  # whether it may be asked of what has been


def _row(measure: str, needs: str, slots: str = "", also: str = "", *, done: bool = False) -> Calculation:
    return Calculation(measure, tuple(needs.split()), tuple(slots.split()), tuple(also.split()), done)


_HERE = "volume:volume|capacity? batch?"
CALCULATIONS: tuple[Calculation, ...] = (
    # care
    _row("overdue", "overdue batch", "batch", "due_what should_now"),
    _row("due", "due_what batch", "batch", "should_now"),
    _row("when due", "when should_now act", "=act batch?", "may"),
    _row("when due", "should_now act_now", "=act batch?", "may"),
    _row("one worry", "is_it worry batch", "=worry batch", "acid"),
    # gravity and sugar
    _row("scales", "sg|brix", "value:sg|brix", "scale in_scale how_much alcohol giving", done=True),
    _row("scales", "batch in_scale", "batch", "scale instrument", done=True),
    _row("potential alcohol", "potential sg|brix", "value:sg|brix", "alcohol giving may scale"),
    _row("potential alcohol", "alcohol may sg|brix", "value:sg|brix", "instrument alcohol giving potential scale how_much ending"),
    _row("potential alcohol", "potential batch", "batch", "alcohol giving may"),
    _row("corrected gravity", "sg temperature", "value:sg temperature:temperature",
        "correct instrument scale headspace", done=True),
    _row("corrected gravity", "correct batch", "temperature:temperature? batch", "instrument scale", done=True),
    _row("corrected Brix", "brix temperature refractometer", "value:brix temperature:temperature",
        "correct instrument scale", done=True),
    _row("strength from gravities", "sg@from sg@to", "from:sg@from to:sg", "alcohol ending giving may how_much scale"),
    _row("strength from gravities", "sg sg alcohol", "from:sg to:sg", "ending giving may how_much scale"),
    _row("strength from gravities", "sg alcohol ending", "from:sg", "giving may how_much scale potential"),
    _row("attenuation from gravities", "attenuation sg sg", "from:sg to:sg", "ending"),
    _row("alcohol at the end", "alcohol ending batch", "batch", "may how_much potential giving"),
    _row("alcohol at the end", "ending may batch", "batch", "alcohol how_much giving scale"),
    _row("dryness", "dry_now batch", "batch", "dryness how_much"),
    _row("dryness", "dryness sg", "value:sg alcohol:percent|alcohol?", "alcohol scale"),
    _row("dryness", "sugar_left batch may|is_it", "batch", "dryness how_much sugar losing"),
    _row("sugar of a reading", "sg sugar_left", "value:sg", "scale how_much sugar losing"),
    _row("sugar of a reading", "sg percent|alcohol sugar_left", "value:sg alcohol:percent|alcohol",
        "alcohol scale how_much"),
    # sulfite
    _row("sulfite dose", "#sulfite mg/L|free_so2", f"material:#sulfite from:free_so2@from|mg/L@from? to:free_so2@to|"
        f"mg/L@to|free_so2@at? rise:mg/L|free_so2? {_HERE}", "how_much needed raising so2 free giving"),
    _row("sulfite for molecular", "molecular@for|molecular@to|molecular@at|molecular@by #sulfite",
        f"material:#sulfite molecular:molecular ph:ph? from:free_so2|mg/L? {_HERE}",
        "how_much needed raising so2 free molecular giving"),
    _row("sulfite dose", "#sulfite volume how_much", "material:#sulfite volume:volume", "needed so2 free"),
    _row("sulfite for molecular", "#sulfite ph volume", f"material:#sulfite ph:ph from:free_so2|mg/L? {_HERE}",
        "how_much needed so2 free giving"),
    _row("sulfite needed", "#sulfite batch needed", "batch", "how_much advice so2 free raising giving"),
    _row("sulfite needed", "#sulfite batch how_much", "batch", "so2 free raising"),
    _row("sulfite given", "#sulfite mass|spoon|tablet|rate", f"material:#sulfite amount:mass|spoon|tablet|rate {_HERE}",
        "how_much giving so2 free raising"),
    _row("free SO2 needed", "free|so2 ph", "ph:ph molecular:molecular? alcohol:percent|alcohol? "
        "temperature:temperature?", "how_much needed so2 free molecular giving"),
    _row("free SO2 needed", "free|so2 ph molecular", "ph:ph molecular:molecular alcohol:percent|alcohol? "
        "temperature:temperature?", "how_much needed so2 free molecular giving"),
    _row("free SO2 needed", "free needed batch", "batch", "how_much so2 molecular giving"),
    _row("molecular SO2", "molecular mg/L|free_so2 ph", "value:mg/L|free_so2 ph:ph alcohol:percent|alcohol? "
        "temperature:temperature?", "so2 free giving how_much alcohol", done=True),
    _row("molecular SO2", "molecular batch", "batch ph:ph? value:mg/L|free_so2?", "so2 free how_much giving", done=True),
    _row("free SO2 now", "free batch estimate", "batch", "so2 how_much raising giving"),
    # acid
    _row("TA in other units", "acid as_acid ta|g/L", "value:ta|g/L", "acid acids giving so2"),
    _row("TA in other units", "g/L as_acid acids", "value:g/L", "acid acids giving so2"),
    _row("acid dose", "#acid g/L@to|ta@to", f"material:#acid to:ta@to|g/L@to from:ta|g/L? {_HERE}",
        "how_much needed raising acid giving acids"),
    _row("acid dose", "#acid g/L|ta", f"material:#acid rise:g/L|ta {_HERE}",
        "how_much needed raising acid giving acids"),
    _row("acid dose", "#acid percent", f"material:#acid rise:percent {_HERE}", "how_much needed raising acid acids"),
    _row("acid dose", "acid raising g/L|ta how_much", f"from:ta@from|g/L@from? to:ta@to|g/L@to? rise:g/L|ta? {_HERE}",
        "needed giving"),
    _row("acid dose", "#deacidify g/L|ta", f"material:#deacidify from:ta@from|g/L@from? to:ta@to|g/L@to? rise:g/L|ta? "
        f"{_HERE}", "how_much needed lowering acid giving raising"),
    _row("acid dose", "acid lowering g/L|ta how_much", f"from:ta@from|g/L@from? to:ta@to|g/L@to? rise:g/L|ta? "
        f"lower=yes {_HERE}", "needed giving"),
    _row("acid given", "#acid mass|spoon volume|batch", f"material:#acid amount:mass|spoon {_HERE}",
        "how_much giving acid raising acids"),
    _row("pH not promised", "ph #acid lowering|raising|giving|to",
        "with:g/L|mass|spoon? to:ph|bare? volume:volume? batch?",
        "how_much lowering raising acid needed acids giving ending may"),
    _row("pH not promised", "ph lowering|raising how_much", "to:ph|bare? volume:volume? batch?",
        "acid needed giving lowering raising may"),
    _row("acid advice", "too_acid batch", "batch", "acid"),
    _row("TA in other units", "ta acid", "value:ta", "scale in_scale how_much acids"),
    _row("malolactic change", "malolactic malic|g/L", "value:malic|g/L", "acid how_much lowering giving acids ph"),
    _row("malolactic change", "malolactic acid batch", "batch", "how_much lowering giving ph acids"),
    _row("diluted", "water|dilute volume volume ta|g/L|percent", "first:volume second:volume value:ta|g/L|percent",
        "acid how_much giving alcohol ending"),
    # sugar, honey, concentrate, water
    _row("sugar needed", "#sugar sg volume|batch", f"material:#sugar to:sg@to|sg@at|sg@by? from:sg? {_HERE}",
        "how_much needed raising lowering scale giving"),
    _row("sugar needed", "#sugar brix volume|batch", f"material:#sugar at:brix@at? to:brix@to? from:brix? {_HERE}",
        "how_much needed raising lowering scale giving"),
    _row("sugar needed", "#sugar percent|alcohol", f"material:#sugar alcohol:percent|alcohol from:sg|brix? {_HERE}",
        "how_much needed raising lowering alcohol giving potential scale"),
    _row("sugar for alcohol", "#sugar percent@by|alcohol@by volume|batch", f"material:#sugar rise:percent|alcohol {_HERE}",
        "how_much needed raising alcohol giving potential"),
    _row("sugar given", "#sugar mass|spoon volume|batch sg|brix", f"material:#sugar amount:mass|spoon from:sg|brix "
        f"{_HERE}", "how_much giving raising scale potential may alcohol"),
    _row("sugar given", "#sugar mass|spoon volume water", "material:#sugar amount:mass|spoon volume:volume",
        "how_much giving scale potential may alcohol"),
    _row("sugar given", "#sugar mass|spoon batch", "material:#sugar amount:mass|spoon batch",
        "how_much giving raising scale potential may alcohol"),
    _row("sweetening", "sweeten sg", f"material:#sugar? from:sg@from? to:sg {_HERE}", "how_much needed sugar scale"),
    _row("sweetening", "sweeten g/L", f"material:#sugar? by:g/L {_HERE}", "how_much needed sugar scale giving"),
    _row("sorbate dose", "sorbate how_much|needed", f"alcohol:percent|alcohol? ph:ph? {_HERE}",
        "how_much needed giving alcohol advice"),
    _row("nitrogen dose", "nutrient yan|mg/L", f"from:yan@from|mg/L@from? to:yan@to|mg/L@to? rise:yan|mg/L? {_HERE}",
        "how_much needed raising giving"),
    _row("nitrogen need", "nutrient brix|sg", "value:brix|sg", "how_much needed giving scale"),
    _row("nitrogen need", "nutrient batch how_much|needed", "batch", "how_much needed giving advice raising"),
    _row("nitrogen given", "nutrient mass|spoon volume|batch", f"amount:mass|spoon {_HERE}",
        "how_much giving raising"),
    _row("usual dose", "#usual volume", "material:#usual volume:volume", "how_much needed giving fining oak"),
    _row("usual dose", "#usual volume|batch how_much", f"material:#usual {_HERE}", "needed giving fining oak"),
    # blends
    _row("blend to add", "three_and_volume blend|to3", "=topped volume:volume", "blend how_much acid alcohol scale giving "
        "needed may"),
    _row("blend shares", "sort3 blend|to3", "=shares",
        "blend how_much acid ph alcohol scale giving may free so2 needed"),
    _row("blend of lots", "volume volume lots", "=lots",
        "blend how_much acid ph alcohol scale giving may free so2 ending"),
    _row("blend of batches", "two_batches blend", "=batches", "blend how_much acid ph alcohol scale giving may half "
        "free so2 ending sugar"),
    _row("blend to reach", "two_batches percent|alcohol|ta|ph|sg", "=batches to:percent|alcohol|ta|ph|sg",
        "blend how_much acid ph alcohol scale giving may"),
    # units, volumes and vessels
    _row("conversion", "unit_wanted volume|spoon|mass|tablet", "value:volume|spoon|mass|tablet =unit material:#any?",
        "how_much scale"),
    _row("conversion", "unit_wanted temperature", "value:temperature =unit", "how_much"),
    _row("room for foam", "headspace volume capacity", "volume:volume capacity:capacity",
        "primary how_much how_big may giving fitting needed"),
    _row("room for foam", "headspace volume volume", "volume:volume capacity:volume",
        "primary how_much how_big may giving fitting needed"),
    _row("room for foam", "volume capacity may|is_it|how_big|fermenting", "volume:volume capacity:capacity",
        "primary how_much how_big may giving fitting needed headspace fermenting"),
    _row("primary size", "how_big|headspace primary volume", "volume:volume",
        "how_big needed giving headspace how_much primary"),
    _row("racking loss", "losing racking volume|batch", _HERE, "how_much giving may"),
    _row("top-up needed", "top_up capacity volume|batch", f"capacity:capacity {_HERE}",
        "how_much needed primary racking may giving"),
    _row("top-up needed", "top_up how_much batch", "vessel? batch", "needed primary racking may giving"),
    _row("top-up needed", "top_up volume volume", "volume:volume capacity:volume|capacity", "how_much needed giving"),
    _row("vessels that fit", "which_vessels fitting volume|batch", _HERE, "may needed giving racking primary"),
    _row("bottles needed", "bottles volume", "size:size|spoon? volume:volume", "how_much filling corks giving needed"),
    _row("bottles needed", "corks volume", "size:size|spoon? volume:volume", "how_much filling giving needed corks"),
    _row("bottles needed", "bottles batch filling how_much", "size:size|spoon? batch", "corks giving"),
    _row("bottles needed", "bottles batch may|needed how_much", "size:size|spoon? batch",
        "how_much filling corks giving needed"),
    _row("bottles needed", "corks batch filling how_much", "size:size|spoon? batch",
        "how_much filling bottles corks giving needed"),
    _row("gas of a wine", "gas volume percent|alcohol", "volume:volume alcohol:percent|alcohol",
        "how_much gassing alcohol giving"),
    _row("bottle pressure", "pressure g/L|residual_sugar", "sugar:g/L|residual_sugar temperature:temperature?",
        "in_bottle sugar how_much giving may"),
    _row("bottle pressure", "pressure sg sg", "from:sg to:sg temperature:temperature?",
        "in_bottle sugar how_much giving may lowering"),
    _row("bottle pressure", "in_bottle sg may", "value:sg temperature:temperature?", "pressure sugar how_much giving"),
    _row("bottle pressure", "pressure sg", "value:sg temperature:temperature?",
        "in_bottle sugar how_much giving may scale"),
    _row("swelling", "swelling volume temperature temperature", "volume:volume from:temperature to:temperature "
        "alcohol:percent|alcohol?", "how_much giving alcohol"),
)  # fmt: skip
