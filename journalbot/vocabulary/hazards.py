"""What a note says that calls for a caution. Which words tell of which hazard is this program's choice, no source."""

from typing import NamedTuple


class Hazard(NamedTuple):
    """A caution's key, and groups of phrases: the note must state one of each."""

    key: str
    groups: tuple[tuple[str, ...], ...]
    dosed: bool = True  # whether it counts too where the note records sulfite put into a wine


_GLASS = ("carboy", "carboys", "demijohn", "demijohns", "dj", "jug", "glass", "glass carboy", "glass demijohn")
_FERMENT = ("ferment", "fermenting", "fermentation", "bubbling", "fermenter", "must", "cellar", "co2", "carbon dioxide",
            "closet", "cupboard", "basement", "vat", "tank", "primary", "bucket", "bin")  # fmt: skip
_OTHERS = ("he", "she", "wife", "husband", "son", "daughter", "friend", "neighbour", "neighbor", "someone", "somebody",
           "brother", "sister", "dad", "mum", "mom", "father", "mother", "helper", "kid", "child")  # fmt: skip
_PERSON = (*_OTHERS, "i", "they", "we")
_RINSING = ("sanitize", "sanitise", "sanitizing", "sanitising", "sanitizer", "sanitiser", "rinse", "rinsed", "rinsing",
            "stock solution", "strong solution")  # fmt: skip
_MIXING = ("solution", "together", "mix", "mixed", "mixing", "combine", "combined")
_SULFITE = ("sulfite", "sulphite", "metabisulfite", "metabisulphite", "kmeta", "k-meta", "meta", "campden", "kmbs",
            "potassium metabisulfite", "sodium metabisulfite", "so2")  # fmt: skip
_ACID = ("citric", "citric acid", "tartaric", "tartaric acid", "acid", "vinegar", "lemon juice", "phosphoric acid")
_CHLORINE = ("bleach", "chlorine", "hypochlorite", "chlorine cleaner")
_BOTTLE = ("bottle", "bottles", "cork", "corks", "cap", "caps")
_STONE = ("cherry", "cherries", "plum", "plums", "apricot", "apricots", "peach", "peaches", "sloe", "sloes", "damson",
          "damsons", "apple", "apples")  # fmt: skip
_VAT = ("vat", "tank", "tun", "pit", "cistern")

# A vessel shut with no way out for gas.
SEALED = ("solid bung", "solid stopper", "sealed it", "sealed up", "seal it", "sealed tight", "airtight",
          "sealed the lid", "clamped the lid", "lid clamped", "screwed down", "screwed the lid")  # fmt: skip

_ROWS: tuple[tuple[str, tuple[tuple[str, ...], ...]], ...] = (
    ("emergency", (("can't breathe", "cannot breathe", "couldn't breathe", "trouble breathing", "struggling to breathe",
        "in my eye", "in my eyes", "in his eye", "in her eye", "in his eyes", "in her eyes", "in the eye",
        "unconscious",
        "burned my hand", "burnt my hand", "burned myself", "scalded", "cut myself", "cut my hand", "deep cut",
        "vomiting", "throwing up", "poisoned", "swallowed some", "ill after drinking", "sick after drinking"),)),
    ("emergency", (_PERSON, ("passed out", "fainted", "blacked out", "keeled over", "not breathing"))),
    ("emergency", (_OTHERS, ("collapsed", "collapse"))),
    ("emergency", (("swallowed", "drank"),
        ("cleaner", "caustic", "lye", "bleach", "sanitizer", "sanitiser", "peroxide"))),
    ("sulfite", (("asthma", "asthmatic", "wheezing", "wheeze", "wheezy"),)),
    ("sulfite", (("sulfur strip", "sulphur strip", "sulfur wick", "sulphur wick", "burned sulfur", "burnt sulphur",
        "burning sulfur", "burning sulphur", "sulfured the barrel", "sulphured the barrel"),)),
    ("mixing chemicals", (_CHLORINE, (*_ACID, *_SULFITE, "ammonia", "peroxide"))),
    ("mixing chemicals", (_SULFITE, _ACID, _RINSING)),
    ("carbon dioxide", (("headache", "headaches", "dizzy", "dizziness", "lightheaded", "light-headed",
        "short of breath", "breathless", "drowsy"), _FERMENT)),
    ("carbon dioxide", (("sleep", "sleeping", "slept", "bedroom", "caravan", "camper", "in the car", "bathroom"),
        ("ferment", "fermenting", "fermenter", "fermentation", "bubbling"))),
    ("entering a vat", (("climbed in", "climbed into", "climb in", "climb into", "got into", "get into", "went into",
        "inside the tank", "inside the vat", "head in", "head into", "leaned in", "leaned into", "leant into", "hop in",
        "jumped in", "crawled in", "crawled into", "stood in", "trod in"), _VAT)),
    ("entering a vat", (("scrubbed out", "cleaned out", "cleaning out", "clean out", "shovelled out", "shoveled out",
        "dug out"), _VAT)),
    ("lifting", (("lift", "lifted", "lifting", "carry", "carried", "carrying", "lugged", "hauled", "heaved", "stairs",
        "my back", "slipped", "dropped it", "dropped the carboy", "dropped a carboy", "dropped the demijohn"), _GLASS)),
    ("glass", (("by the neck", "neck ring"), (*_GLASS, "carried", "carry", "lifted", "carrying"))),
    ("glass", (("hot water", "hot must", "hot juice", "hot syrup", "boiling", "boiling water", "freezer", "frozen",
        "scalding"), _GLASS)),
    ("glass", (("crack in", "cracked", "chip in", "chipped", "shattered"), _GLASS)),
    ("sealed ferment", (SEALED, ("ferment", "fermenting", "fermentation", "bubbling", "still going", "still working",
        "active"))),
    ("blocked airlock", (("airlock", "airlocks", "lid", "bung", "blow-off", "blowoff", "hose"),
        ("blocked", "clogged", "bulging", "pulp in", "seeds in", "plugged", "jammed", "volcano", "erupted", "gushed",
         "gushing", "foamed over", "foam over", "foaming over", "foamed up", "full of foam", "blew off", "blown off"))),
    ("bottle pressure", (_BOTTLE, ("fizzing", "fizzy", "gushed", "gushing", "exploded", "exploding", "burst",
        "bursting", "blew up", "popped out", "pushing corks", "corks pushing", "pushed out", "under pressure",
        "hissed"))),
    ("bottle pressure", (("corks", "cork"), ("pushing", "pushing out", "are pushing", "coming out", "popping out"))),
    ("bottle pressure", (("pushing corks", "corks pushing", "bottle bomb", "bottle bombs", "popped corks"),)),
    ("sorbate", (("sorbate",), ("stop", "stopped", "stops", "kill", "halt", "end"))),
    ("cleaners", (("caustic", "caustic soda", "lye", "soda ash", "percarbonate", "sodium percarbonate",
        "oxygen cleaner", "peracetic", "peracetic acid", "peroxide", "hydrogen peroxide", "phosphoric acid",
        "iodine sanitizer", "iodine sanitiser", *_CHLORINE),)),
    ("containers", (("paint bucket", "trash can", "garbage can", "trash bag", "garbage bag", "bin bag", "bin liner",
        "galvanised", "galvanized", "pewter", "lead crystal", "glazed crock", "cast iron", "plastic drum", "oil drum",
        "water butt", "rain barrel"),)),
    ("containers", (("copper", "brass", "aluminium", "aluminum", "iron", "enamel"),
        ("pot", "kettle", "pan", "tub", "bucket", "tank", "vessel", "tap", "fitting", "fittings", "trough"))),
    ("wild plants", (("elderberry", "elderberries", "elderflower", "elderflowers", "elder", "rowan", "hawthorn"),
        ("make", "making", "pick", "picked", "picking", "gathered", "use", "can i", "stems", "leaves", "branches"))),
    ("wild plants", (("foraged", "wild berries", "wild plums", "wild cherries", "wild fruit", "hedgerow",
        "unknown berries", "yew"),)),
    ("wild plants", (_STONE, ("stones in", "pits in", "kernels", "crushed stones", "crushed pits", "stones and all",
        "pits and all", "leaves", "stalks", "crushed seeds"))),
    ("mould", (("mould", "mold", "mouldy", "moldy", "fuzzy", "fuzz", "rot", "rotten", "sour rot", "furry"),)),
    ("allergens", (("allergic", "allergy", "allergies", "allergen", "allergens", "label"), ("wine", "bottle", "bottles",
        "sulfite", "sulphite", "sulfites", "sulphites", "egg", "milk", "nuts", "fish"))),
    ("drinking", (("pregnant", "pregnancy", "breastfeeding", "nursing", "medication", "medicine", "medicines",
        "antibiotics", "drive", "driving"), ("wine", "drink", "drinking", "drank", "glass", "bottle", "alcohol"))),
    ("selling", (("sell", "selling", "raffle", "swap for money"), ("wine", "bottle", "bottles", "batch"))),
    ("selling", (("legal", "illegal", "license", "licence", "excise", "duty", "permit"),
        ("wine", "make", "making", "sell", "batch"))),
    ("distilling", (("distil", "distill", "distilled", "distilling", "distillation", "moonshine", "pot still",
        "reflux still", "through the still", "through a still", "freeze distil", "freeze distill", "freeze concentrate",
        "freeze for strength", "freeze it for strength", "alembic"),)),
    ("distilling", (("grappa", "eau de vie", "brandy", "spirits"), ("make", "making", "made"))),
    ("roots", (("potato", "potatoes", "parsnip", "parsnips", "beetroot", "beets", "carrot", "carrots", "garlic"),
        ("make", "making", "dangerous", "can i", "recipe", "boil", "boiled", "mash"))),
    ("heating", (("heat belt", "heating belt", "heat pad", "heating pad", "heat mat", "heat wrap", "brew belt",
        "aquarium heater", "immersion heater", "space heater", "fan heater", "extension cord", "extension lead"),)),
    ("copper and test chemicals", (("copper", "penny", "pennies", "coin", "coins"), ("egg smell", "egg", "eggs", "eggy",
        "rotten egg", "rotten eggs", "sulfur", "sulphur", "h2s", "smell", "stink", "stinks"))),
    ("copper and test chemicals", (("copper sulfate", "copper sulphate", "bluestone", "copper coin", "copper coins",
        "copper pipe", "copper wire", "chromatography", "titration", "titrate", "titrated",
        "sodium hydroxide", "naoh"),)),
)  # fmt: skip
HAZARDS: tuple[Hazard, ...] = (
    *(Hazard(key, groups) for key, groups in _ROWS),
    # Sulfite and acid stirred into one wine is normal work: thin, and not one with the other.
    Hazard("mixing chemicals", (_SULFITE, _ACID, _MIXING), dosed=False),
)

# What only looks like a sign: the longer phrase is taken for what it is.
HARMLESS: frozenset[str] = frozenset((
    "distilled water", "noble rot", "crack a bottle", "cracked a bottle", "cracked open", "must be",
    "wax cap", "acid blend", "hot day", "hot days", "enamel paint", "acid test", "malic acid", "red hot",
    "i must", "we must", "cap collapsed", "cap has collapsed", "foam collapsed", "cap to collapse",
    "must have", "rubber bung", "water heater", "elder brother", "elder sister",
))  # fmt: skip

# Where gas gathers: words of a place.
CLOSED_PLACES: frozenset[str] = frozenset((
    "cellar", "cellars", "basement", "crawl space", "crawlspace", "closet", "cupboard", "pantry", "larder", "bathroom",
    "bedroom", "spare room", "spare bedroom", "guest room", "box room", "boiler room", "under the stairs", "vault",
    "cave", "caravan", "camper", "van", "car", "wardrobe", "laundry room", "cold room", "root cellar", "wine cellar",
))  # fmt: skip

ROOTS: frozenset[str] = frozenset((
    "potato", "potatoes", "beet", "beets", "beetroot", "parsnip", "parsnips", "carrot", "carrots", "garlic", "onion",
    "onions", "mushroom", "mushrooms", "turnip", "turnips", "sweet potato", "sweet potatoes", "swede", "pumpkin",
))  # fmt: skip
WILD: frozenset[str] = frozenset((
    "elder", "elderberry", "elderberries", "elderflower", "elderflowers", "wild", "foraged", "hedgerow", "rowan",
    "hawthorn", "unknown", "leaves",
))  # fmt: skip
