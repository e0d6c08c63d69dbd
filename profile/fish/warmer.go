package fish

// Sources that several cool- and warmwater figures share.
const (
	wyoming    = "Wyoming review of bass temperatures"
	barans1973 = "Barans & Tubb 1973 (warmest seasonal choice)"
	brooks2025 = "Brooks et al. 2025, Movement Ecology (telemetry)"
)

// otherOxygen is the need used where no study of the fish gives its own: the step
// called slight impairment for fish not of the salmon family. A watershed council's
// field instructions give the same 5 mg/L as a state's law for warmwater fish.
func otherOxygen() Figure {
	return recalled(5, "EPA 1986, non-salmonid, slight impairment")
}

// warmer is the table of the coolwater and then the warmwater fish.
func warmer() []Fish {
	return []Fish{
		{
			Key: "smallmouth", Name: "smallmouth bass", Scientific: "Micropterus dolomieu",
			Aliases:      []string{"smallie", "bronzeback"},
			Kind:         Coolwater,
			ComfortLowC:  known(19, wyoming+", quoting Hile & Juday 1941"),
			ComfortHighC: known(27, wyoming+" (feeding declines above)"),
			UpperUseC:    known(31, barans1973),
			OptimumC:     known(26, "Horning & Pearson 1973 (growth)"),
			OxygenMgL:    otherOxygen(),
			Note: "In stratified lakes fish were at 19 to 21 C (Hile & Juday 1941), though they feed hardest at 21 to 27 C and grow best near 26 C with food to spare. " +
				"Anglers' charts say 18 to 22 C. The weekly mean for growth is 29 C (EPA 1976, from memory).",
		},
		{
			Key: "walleye", Name: "walleye", Scientific: "Sander vitreus",
			Aliases:      []string{"wally", "yellow pickerel"},
			Kind:         Coolwater,
			ComfortLowC:  known(18, brooks2025),
			ComfortHighC: known(23, brooks2025),
			UpperUseC:    recalled(25, "EPA 1976, weekly mean for growth"),
			OptimumC:     recalled(20, "Christie & Regier 1988, middle of the niche"),
			OxygenMgL:    known(5, brooks2025),
			Note: "Brooks et al. count over 5 mg/L as best and over 3 mg/L as usable. Found in the field up to a weekly mean of 29 C (Eaton et al. 1995, from memory). " +
				"Anglers' charts say 18 to 22 C.",
		},
		{
			Key: "perch", Name: "yellow perch", Scientific: "Perca flavescens",
			Aliases:      []string{"lake perch", "ringed perch"},
			Kind:         Coolwater,
			ComfortLowC:  practice(12.8), // 55 F
			ComfortHighC: practice(22.2), // 72 F
			UpperUseC:    known(29, barans1973),
			OptimumC:     known(21, "Ferguson 1958, JFRBC 15:607 (preferred, older fish)"),
			OxygenMgL:    otherOxygen(),
			Note: "Ferguson found young fish choose 24.2 C, and field means of 19.7 to 21.2 C. " +
				"Barans & Tubb 1973 found 10 to 29 C chosen over the seasons.",
		},
		{
			Key: "pike", Name: "northern pike", Scientific: "Esox lucius",
			Aliases: []string{"northern", "jackfish"},
			Kind:    Coolwater, CanVent: true,
			ComfortLowC:  practice(10),   // 50 F
			ComfortHighC: practice(21.7), // 71 F
			UpperUseC:    recalled(28, "EPA 1976, weekly mean for growth"),
			OptimumC:     recalled(18, "Christie & Regier 1988, middle of the niche"),
			OxygenMgL:    otherOxygen(),
			Note: "No figure for this fish was seen in print: the niche from memory is 16 to 20 C, some use 17 to 21 C. " +
				"The wide range of anglers' charts is kept so that colder water is not ruled out.",
		},
		{
			Key: "largemouth", Name: "largemouth bass", Scientific: "Micropterus salmoides",
			Aliases:      []string{"bucketmouth"},
			Kind:         Warmwater,
			ComfortLowC:  known(21, wyoming+" (feeds hardest from)"),
			ComfortHighC: known(27, wyoming+" (feeding declines above)"),
			UpperUseC:    recalled(32, "EPA 1976, weekly mean for growth"),
			OptimumC:     known(27, wyoming+", quoting Dendy 1948"),
			OxygenMgL:    otherOxygen(),
			Note:         "In stratified lakes fish were near 27 C, the very edge of hard feeding. Anglers' charts say 20 to 26 C.",
		},
	}
}
