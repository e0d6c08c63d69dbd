package fish

// Sources that several coldwater figures share.
const (
	northTwin    = "North Twin Lake study, Washington (hypolimnetic oxygenation)"
	bear2007     = "Bear, McMahon & Zale 2007, TAFS 136:1113"
	stratified   = "Brook trout in a stratified lake, AFS meeting 2011"
	plumb2009    = "Plumb & Blanchfield 2009, CJFAS"
	wehrly2007   = "Wehrly et al. 2007, TAFS 136:365"
	quotedSalmon = "Spohn 1996 and Birtwell 1994, as quoted (sockeye)"
)

// troutOxygen is the need used where no lake study of the fish gives its own: the
// 7-day mean of daily minima for coldwater fish past the early stages.
// A lake association's page for trout and salmon (Highland Lake, Maine) asks the
// same, 4 to 5 mg/L.
func troutOxygen() Figure {
	return recalled(5, "EPA 1986, coldwater 7-day mean minimum")
}

// coldwater is the table of the salmon family. A new fish is a new entry; Find and
// the tests pick it up.
func coldwater() []Fish {
	return []Fish{
		{
			Key: "rainbow", Name: "rainbow trout", Scientific: "Oncorhynchus mykiss",
			Aliases: []string{"bow", "kamloops", "redband"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			ComfortLowC:  known(13, northTwin),
			ComfortHighC: known(19, northTwin),
			UpperUseC:    known(21, "Review of rainbow trout in lakes and reservoirs"),
			OptimumC:     known(13.1, bear2007+" (growth)"),
			OxygenMgL:    known(5, northTwin),
			Note: "Garside & Tait 1958 (CJZ) found 13 C chosen in the end; Spigarelli & Thommes 1979 found small fish mostly at 19 C and large ones at 15 C. " +
				"The review of lakes and reservoirs puts the least oxygen used near 2.5 mg/L, half the need given here.",
		},
		{
			Key: "brown", Name: "brown trout", Scientific: "Salmo trutta",
			Aliases: []string{"brownie", "german brown"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			ComfortLowC:  practice(12.2), // 54 F
			ComfortHighC: practice(18.3), // 65 F
			UpperUseC:    known(21, wehrly2007+" (63-day mean)"),
			OptimumC:     known(16, "Larsson 2002, SLU thesis (preferred)"),
			OxygenMgL:    troutOxygen(),
			Note: "Brown 1946 (JEB 22:145) gives best growth at 10 to 15 C and high mortality over 20 C. " +
				"Anglers' catch of brown and rainbow was poor from 19 C up (McMichael & Kaya 1991, NAJFM 11:190). The 63-day mean is of brown and brook trout together, in the field.",
		},
		{
			Key: "brook", Name: "brook trout", Scientific: "Salvelinus fontinalis",
			Aliases: []string{"brookie", "brook char", "eastern brook", "speckled trout"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			ComfortLowC:  known(14, stratified),
			ComfortHighC: known(18, stratified),
			UpperUseC:    known(21, stratified+" (avoided above)"),
			OptimumC:     known(16, "Quebec brook trout study, Water 2017, 9:346 (growth)"),
			OxygenMgL:    troutOxygen(),
			Note: "McCormick et al. 1972 found fry grow best lower, at 12.4 to 15.4 C; in small lakes fish were at 7.2 to 17.7 C, adults colder than young. " +
				"The stratified-lake study found oxygen over 8.5 mg/L preferred and under 4 mg/L avoided.",
		},
		{
			Key: "cutthroat", Name: "cutthroat trout", Scientific: "Oncorhynchus clarkii",
			Aliases: []string{"cutt", "cuttie", "cutty", "westslope cutthroat"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			ComfortLowC:  known(13, bear2007),
			ComfortHighC: known(15, bear2007),
			UpperUseC:    known(19.6, bear2007+" (lethal limit)"),
			OptimumC:     known(13.6, bear2007+" (growth)"),
			OxygenMgL:    troutOxygen(),
			Note: "Figures of the westslope form; 13 to 15 C is the daily maximum said to protect it, and the upper figure is where half die in time, so keep well under it. " +
				"The Lahontan form bears more: stress begins over 22 C (Dunham et al. 2003, NAJFM 23:1042). Anglers' charts say 13 to 17 C.",
		},
		{
			Key: "lake trout", Name: "lake trout", Scientific: "Salvelinus namaycush",
			Aliases: []string{"laker", "lake char", "mackinaw", "togue"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			ComfortLowC:  known(6, "Lake trout in a warm environment, thermoregulation study"),
			ComfortHighC: known(12, plumb2009),
			UpperUseC:    known(15, plumb2009),
			OptimumC:     known(11.7, "McCauley & Tait 1970, JFRBC 27:1729 (preferred)"),
			OxygenMgL:    known(6, plumb2009),
			Note: "Plumb & Blanchfield found limits of 12 or 15 C with 4 or 6 mg/L fit best, and that the usual 8 to 12 C leaves out most of the water used; the stricter pair is taken. " +
				"The thermoregulation study gives 6 to 13 C; Edsall & Cleland 2000 (NAJFM 20:804) found 10.1 to 10.2 C chosen by young fish and best growth near 12.5 C.",
		},
		{
			Key: "kokanee", Name: "kokanee salmon", Scientific: "Oncorhynchus nerka",
			Aliases: []string{"koke", "landlocked sockeye"},
			Kind:    Coldwater, Salmonid: true, OpenWater: true, CanVent: true,
			ComfortLowC:  known(10, quotedSalmon),
			ComfortHighC: known(12, quotedSalmon),
			UpperUseC:    recalled(18, "EPA 1976, weekly mean for growth, sockeye"),
			OptimumC:     known(11.1, "Fortune 1964 (where most fry were)"),
			OxygenMgL:    troutOxygen(),
			Note: "The comfort range is that of sockeye, the same fish with a way to the sea; the optimum is the temperature where most fry were found, on the thermocline. " +
				"Anglers' charts say 10 to 13 C.",
		},
	}
}
