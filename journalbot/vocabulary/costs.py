"""What a purchase is for, by its words: which part of a wine's cost it makes, and how it is shared out.

"base" is what the wine is made from, "piece" goes one to a bottle, "stuff" is used up by weight or packet, and all else
serves for years and is in no bottle's cost. How to share is this program's choice.
"""

# Item of ITEMS to the part it plays.
PARTS: dict[str, str] = {
    **dict.fromkeys(("kit", "juice", "grapes", "must", "fruit", "pail"), "base"),
    **dict.fromkeys(("corks", "caps", "capsules", "bottles", "labels"), "piece"),
    **dict.fromkeys(("yeast", "nutrient", "enzymes", "finings", "chemicals", "malolactic culture", "oak"), "stuff"),
    "kit of equipment": "lasting",
}

# Closure of CLOSURES to the item of ITEMS that is bought for it; None where the bottle brings its own.
CLOSURE_ITEMS: dict[str, str | None] = {
    **dict.fromkeys(("cork", "natural cork", "agglomerated cork", "synthetic cork", "mushroom cork", "flanged stopper"),
        "corks"),
    **dict.fromkeys(("screw cap", "crown cap"), "caps"),
    **dict.fromkeys(("swing top", "glass stopper", "wax", "bag valve"), None),
}

START_BEFORE, START_AFTER = 21, 3  # days a base is bought before the batch it is for is started, or noted after it
