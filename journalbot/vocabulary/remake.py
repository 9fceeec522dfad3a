"""What a tasting's words suggest for the next time. Common practice, no source; a first thing to weigh, no recipe."""

# Words of a tasting to what to do otherwise.
CHANGES: dict[str, tuple[str, ...]] = {
    "less oak, or a shorter time on it": ("oaky", "over-oaked", "overoaked", "too oaky", "planky", "sawdust", "sawmill",
        "lumber", "charred", "ashy"),
    "more fruit for the volume, and no more water": ("thin", "thinnish", "watery", "weak", "hollow", "empty", "dilute"),
    "measure TA before the yeast goes in; think of malolactic, or less acid": ("tart", "sharp", "sour", "acidic",
        "high acid", "high acidity", "puckering", "puckery", "too tart"),
    "measure TA and pH before the yeast goes in; it may want acid": ("flabby", "flat", "low acid", "low acidity"),
    "press sooner or more gently; try a fining on a small sample": ("harsh", "astringent", "drying", "bitter",
        "bitter finish", "green tannin", "green tannins", "harsh tannin", "harsh tannins", "drying tannins", "stemmy",
        "stalky", "rough", "coarse"),
    "a lower gravity to start from": ("hot", "boozy", "alcoholic", "spirity", "hot finish", "burning"),
    "let it ferment further, or sweeten less": ("cloying", "sickly", "sickly sweet", "too sweet", "sugary"),
    "riper fruit, less of leaf and stalk": ("green", "vegetal", "green pepper", "bell pepper", "grassy", "leafy"),
    "longer before it is opened": ("young", "too young", "raw", "immature", "tight", "closed",
        "green around the edges"),
}  # fmt: skip

# Fault of FAULTS to what to do otherwise.
FAULT_CHANGES: dict[str, str] = {
    "volatile acidity": "keep vessels full and air off; keep free SO2 to the pH",
    "oxidation": "less splashing, fuller vessels, sulfite checked more often",
    "hydrogen sulfide": "nutrient by measured YAN, and early; stir air in while it ferments fast",
    "mercaptans": "rack off the lees sooner; nutrient by measured YAN, and early",
    "reduction": "rack off the lees sooner",
    "cork taint": "other closures, and no chlorine in the cellar",
    "brettanomyces": "keep sulfite to the pH, and barrels clean and full",
    "geranium taint": "no sorbate where malolactic bacteria may be at work",
    "refermentation": "steady gravity for weeks before bottling; stabilise what is sweet",
    "lactic spoilage": "sulfite once malolactic is over",
    "mould": "sort the fruit; clean and dry what wine touches",
    "haze": "pectic enzyme for fruit; longer to clear before bottling",
}
