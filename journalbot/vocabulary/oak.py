"""Oak as winemakers buy it: form, toast and origin, canonical to spellings.

Spellings are whole words in lower case; all of them mean oak only beside an oak word ("heavy" alone is
anything). A plus sign is a word of its own ("med+" is "med +").
"""

FORMS: dict[str, tuple[str, ...]] = {
    "chips": ("chips", "chip", "oak chips", "oak chip", "woodchips", "wood chips", "oakchips", "granulate", "shavings",
        "oak shavings", "beans"),
    "cubes": ("cubes", "cube", "oak cubes", "oak cube", "dice", "dominoes", "dominos", "blocks", "oak blocks"),
    "spiral": ("spiral", "spirals", "oak spiral", "oak spirals", "helix", "helixes", "infusion spiral",
        "infusion spirals"),
    "staves": ("staves", "stave", "oak staves", "oak stave", "stick", "sticks", "oak stick", "oak sticks", "planks",
        "plank", "inner staves", "ministaves", "mini staves", "mini-staves", "rods", "slats", "segments"),
    "barrel": ("barrel", "barrels", "barrique", "barriques", "cask", "casks", "oak barrel", "oak barrels", "oak cask"),
    "powder": ("powder", "oak powder", "dust", "oak dust", "sawdust", "oak sawdust", "flour", "oak flour"),
}

TOASTS: dict[str, tuple[str, ...]] = {
    "light": ("light", "light toast", "light-toast", "lightly toasted", "light toasted", "lt toast", "lt"),
    "medium": ("medium", "medium toast", "medium-toast", "med toast", "med-toast", "med", "medium toasted", "mt",
        "m toast"),
    "medium plus": ("medium plus", "medium-plus", "medium plus toast", "medium-plus toast", "medium + toast",
        "medium +", "med plus", "med-plus", "med plus toast", "med-plus toast", "med +", "med + toast", "m +", "mt +"),
    "heavy": ("heavy", "heavy toast", "heavy-toast", "hvy toast", "heavily toasted", "heavy toasted", "dark toast",
        "ht", "h toast", "high toast", "strong toast"),
}

ORIGINS: dict[str, tuple[str, ...]] = {
    "American": ("american", "american oak", "amer", "amer oak", "am oak", "us oak", "missouri", "missouri oak",
        "minnesota", "minnesota oak", "appalachian", "appalachian oak", "white oak", "usa"),
    "French": ("french", "french oak", "fr oak", "fr", "limousin", "allier", "tronçais", "troncais", "nevers", "vosges",
        "frence", "frnch"),
    "Hungarian": ("hungarian", "hungarian oak", "hung oak", "hungarian-oak", "hungary", "zemplén", "zemplen", "tokaj",
        "hungarien"),
    "Slavonian": ("slavonian", "slavonian oak", "croatian", "croatian oak"),
    "Slovenian": ("slovenian", "slovenian oak"),
    "Romanian": ("romanian", "romanian oak"),
    "Bulgarian": ("bulgarian", "bulgarian oak"),
    "Caucasian": ("caucasian", "caucasian oak", "russian oak", "adygean oak"),
    "Portuguese": ("portuguese", "portuguese oak"),
    "Spanish": ("spanish", "spanish oak"),
    "Italian": ("italian", "italian oak"),
    "German": ("german", "german oak"),
    "Austrian": ("austrian", "austrian oak"),
    "English": ("english", "english oak"),
    "European": ("european", "european oak", "euro oak", "eastern european", "eastern european oak"),
}
