"""Words for those who get bottles and for the occasions on which bottles go; lower case, whole words."""

TITLES: frozenset[str] = frozenset(("dr", "mr", "mrs", "ms", "st", "rev", "prof"))  # a full stop after one ends nothing

# Nouns for a person or a group: with "my", "the", "our", "his", "her" or a name before them they can receive a bottle.
PEOPLE: frozenset[str] = frozenset({
    # family
    "mother", "mum", "mom", "mam", "mommy", "mummy", "ma", "father", "dad", "daddy", "pa", "pop", "parents", "folks",
    "brother", "brothers", "bro", "sister", "sisters", "sis", "son", "sons", "daughter", "daughters", "kid", "kids",
    "child", "children", "twins", "wife", "husband", "hubby", "missus", "spouse", "partner", "girlfriend", "boyfriend",
    "fiancé", "fiancée", "fiance", "fiancee", "ex", "uncle", "uncles", "aunt", "aunts", "auntie", "aunty", "cousin",
    "cousins", "nephew", "nephews", "niece", "nieces", "grandma", "grandmother", "granny", "nan", "nana", "gran",
    "nonna", "nonno", "oma", "opa", "grandpa", "grandfather", "grandad", "granddad", "grandson", "grandsons",
    "granddaughter", "granddaughters",
    "grandchild", "grandchildren", "grandkids", "grandparents", "in-laws", "in laws", "inlaws", "mother-in-law",
    "mother in law", "father-in-law", "father in law", "brother-in-law", "brother in law", "sister-in-law",
    "sister in law", "son-in-law", "son in law", "daughter-in-law", "daughter in law", "stepson", "stepdaughter",
    "stepdad", "stepmum", "stepmom", "stepbrother", "stepsister", "godson", "goddaughter", "godfather", "godmother",
    "family", "relatives", "better half", "other half",
    # friends and neighbours
    "friend", "friends", "mate", "mates", "buddy", "buddies", "pal", "pals", "chum", "chums", "neighbor", "neighbors",
    "neighbour", "neighbours", "next door", "the people next door", "folks next door", "roommate", "roommates",
    "flatmate", "flatmates", "housemate", "housemates", "guest", "guests", "visitor", "visitors", "hosts", "host",
    "hostess", "crowd", "gang", "crew", "lads", "ladies", "girls", "boys", "guys", "guy", "couple", "old friend",
    "old friends", "bride", "groom", "newlyweds",
    # work, trades and officials
    "boss", "colleague", "colleagues", "coworker", "coworkers", "co-worker", "co-workers", "workmate", "workmates",
    "office", "team", "secretary", "manager", "client", "clients", "customer", "customers", "teacher", "teachers",
    "professor", "tutor", "doctor", "doc", "dentist", "vet", "nurse", "nurses", "midwife", "surgeon", "physio",
    "lawyer", "solicitor", "accountant", "plumber", "electrician", "builder", "builders", "roofer", "carpenter",
    "mechanic", "gardener", "painter", "farmer", "grower", "growers", "beekeeper", "butcher", "baker", "postman",
    "mailman", "postie", "milkman", "bin men", "mail carrier", "driver", "landlord", "landlady", "tenant", "tenants",
    "vicar", "priest", "pastor", "minister", "rabbi", "nun", "nuns", "barber", "hairdresser", "babysitter", "nanny",
    "cleaner", "coach", "instructor", "mayor", "firefighters", "firemen", "vineyard owner", "winemaker", "sommelier",
    "judge", "judges", "harvest crew", "pickers", "helpers", "volunteers",
    # clubs and causes
    "club", "wine club", "book club", "wine circle", "wine guild", "guild", "choir", "band", "church", "parish",
    "school", "pta", "charity", "charities", "scouts", "society", "committee", "co-op", "cooperative", "food bank",
    "hospice", "raffle", "the raffle", "fire hall raffle", "church raffle", "school raffle", "tombola", "auction",
    "silent auction", "charity auction", "fundraiser", "fund-raiser", "fire hall", "fire department", "fire brigade",
    "competition", "contest", "wine show", "show bench", "village hall", "library",
})

# Times and gatherings at which bottles go; "for" or "at" before them.
OCCASIONS: frozenset[str] = frozenset({
    "birthday", "birthday party", "anniversary", "wedding", "engagement", "engagement party", "christening", "baptism",
    "funeral", "wake", "retirement", "retirement do", "graduation", "housewarming", "house-warming",
    "housewarming party", "baby shower", "bridal shower", "hen do", "stag do", "stag night", "hen night", "reunion",
    "family reunion", "party", "parties", "dinner party", "garden party", "block party", "street party", "office party",
    "potluck", "cookout", "barbecue", "bbq", "barbie", "braai", "picnic", "dinner", "lunch", "supper", "brunch", "tea",
    "sunday lunch", "sunday roast", "roast", "wine tasting", "tasting night", "book club night", "games night",
    "game night", "poker night", "movie night", "girls' night", "quiz night", "christmas", "xmas", "christmas eve",
    "christmas day", "christmas dinner", "boxing day", "new year", "new year's", "new years", "new year's eve",
    "new years eve", "nye", "easter", "easter sunday", "thanksgiving", "halloween", "valentine's", "valentines",
    "valentine's day", "mother's day", "mothers day", "father's day", "fathers day", "memorial day", "labor day",
    "labour day", "fourth of july", "canada day", "australia day", "anzac day", "super bowl", "superbowl", "passover",
    "seder", "hanukkah", "chanukah", "rosh hashanah", "diwali", "burns night", "bonfire night", "midsummer",
    "whit sunday", "pentecost", "fête", "fete", "village fête", "village fete", "fair", "county fair", "harvest supper",
    "harvest party", "harvest festival", "festival", "raffle", "tombola", "auction", "fundraiser", "competition",
    "state fair", "show", "village show", "flower show", "open day", "concert", "camping trip", "fishing trip",
    "camping", "holiday", "holidays",
})
