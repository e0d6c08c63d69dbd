package fish

// Sources that several coldwater figures share.
const (
	northTwin    = "North Twin Lake study, Washington (hypolimnetic oxygenation)"
	review       = "Review of rainbow trout in lakes and reservoirs"
	bear2007     = "Bear, McMahon & Zale 2007, TAFS 136:1113"
	stratified   = "Brook trout in a stratified lake, AFS meeting 2011"
	quebec       = "Quebec brook trout study, Water 2017, 9:346"
	plumb2009    = "Plumb & Blanchfield 2009, CJFAS"
	wehrly2007   = "Wehrly et al. 2007, TAFS 136:365"
	kaya1991     = "McMichael & Kaya 1991, NAJFM 11:190 (catch best from)"
	larsson2002  = "Larsson 2002, SLU thesis"
	ihnat1981    = "Ihnat 1981, seasonal preferenda"
	quotedSalmon = "Spohn 1996 and Birtwell 1994, as quoted (sockeye)"
	niche1988    = "Christie & Regier 1988, niche"
	epaGrowth    = "EPA 1976, weekly mean for growth"
	habitatModel = "USFWS habitat model, lower limit"
)

// troutOxygen is the need used where no lake study of the fish gives its own: the
// 7-day mean of daily minima for coldwater fish past the early stages.
// A lake association's page for trout and salmon (Highland Lake, Maine) asks the
// same, 4 to 5 mg/L.
func troutOxygen() Figure {
	return recalled(5, "EPA 1986, coldwater 7-day mean minimum")
}

// coldwater is the table of the salmon family: trout, then char, then the rest. A new
// fish is a new entry; Find and the tests pick it up.
func coldwater() []Fish {
	return append(append(trout(), char()...), salmon()...)
}

// trout is the table of the trout and of their cross with char.
func trout() []Fish {
	return []Fish{
		{
			Key: "rainbow", Name: "rainbow trout", Scientific: "Oncorhynchus mykiss",
			Aliases: []string{"bow", "kamloops", "redband"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			LowerUseC:      known(8, kaya1991),
			ComfortLowC:    known(13, northTwin),
			OptimumC:       known(13.1, bear2007+" (growth)"),
			ComfortHighC:   known(19, northTwin),
			UpperUseC:      known(21, review),
			LethalC:        known(24.3, bear2007),
			OxygenLeastMgL: known(2.5, review),
			OxygenMgL:      known(5, northTwin),
			Note: "Garside & Tait 1958 (CJZ) found 13 C chosen in the end; Spigarelli & Thommes 1979 found small fish mostly at 19 C and large ones at 15 C. " +
				"Anglers' catch of rainbow and brown was best at 8 to 15 C and poor from 19 C up (McMichael & Kaya 1991).",
		},
		{
			Key: "brown", Name: "brown trout", Scientific: "Salmo trutta",
			Aliases: []string{"brownie", "german brown"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			LowerUseC:      known(3.5, "Norwegian hatchery study at 63 N (growth begins)"),
			ComfortLowC:    practice(12.2), // 54 F
			OptimumC:       known(16, larsson2002+" (preferred)"),
			ComfortHighC:   practice(18.3), // 65 F
			UpperUseC:      known(21, wehrly2007+" (63-day mean)"),
			LethalC:        recalled(24.7, "Elliott 1994, incipient lethal"),
			OxygenLeastMgL: recalled(3, habitatModel),
			OxygenMgL:      troutOxygen(),
			Note: "Brown 1946 (JEB 22:145) gives best growth at 10 to 15 C, high mortality over 20 C and none left over 25 C. " +
				"Anglers' catch of brown and rainbow was poor from 19 C up (McMichael & Kaya 1991, NAJFM 11:190). The 63-day mean is of brown and brook trout together, in the field.",
		},
		{
			Key: "cutthroat", Name: "cutthroat trout", Scientific: "Oncorhynchus clarkii",
			Aliases: []string{"cutt", "cuttie", "cutty", "westslope cutthroat"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			ComfortLowC:    known(13, bear2007),
			OptimumC:       known(13.6, bear2007+" (growth)"),
			ComfortHighC:   known(15, bear2007),
			UpperUseC:      practice(16.7), // 62 F
			LethalC:        known(19.6, bear2007),
			OxygenLeastMgL: recalled(3, habitatModel),
			OxygenMgL:      troutOxygen(),
			Note: "Figures of the westslope form; 13 to 15 C is the daily maximum said to protect it. No study of the warmest water it uses in lakes was seen: the upper end of anglers' charts, 55 to 62 F, is taken. " +
				"The Lahontan form bears more: stress begins over 22 C (Dunham et al. 2003, NAJFM 23:1042).",
		},
		{
			Key: "tiger trout", Name: "tiger trout", Scientific: "Salmo trutta x Salvelinus fontinalis",
			Kind: Coldwater, Salmonid: true, CanVent: true,
			ComfortLowC:  practice(10),
			ComfortHighC: practice(14),
			OxygenMgL:    troutOxygen(),
			Note: "Weak: no study of what this cross of brown and brook trout chooses was found, so the range is that of the trade and the oxygen that of trout in general. " +
				"Both parents use water up to 21 C.",
		},
	}
}
