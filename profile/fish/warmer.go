package fish

// Sources that several cool- and warmwater figures share.
const (
	wyoming    = "Wyoming review of bass temperatures"
	barans1973 = "Barans & Tubb 1973"
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
			LowerUseC:    known(18, barans1973+" (coldest seasonal choice)"),
			ComfortLowC:  known(19, wyoming+", quoting Hile & Juday 1941"),
			OptimumC:     known(26, "Horning & Pearson 1973 (growth)"),
			ComfortHighC: known(27, wyoming+" (feeding declines above)"),
			UpperUseC:    known(31, barans1973+" (warmest seasonal choice)"),
			OxygenMgL:    otherOxygen(),
			Note: "In stratified lakes fish were at 19 to 21 C (Hile & Juday 1941), though they feed hardest at 21 to 27 C and grow best near 26 C with food to spare; at 35 C they lose weight. " +
				"Anglers' charts say 18 to 22 C. The weekly mean for growth is 29 C (EPA 1976, from memory).",
		},
		{
			Key: "walleye", Name: "walleye", Scientific: "Sander vitreus",
			Aliases:        []string{"wally", "yellow pickerel"},
			Kind:           Coolwater,
			ComfortLowC:    known(18, brooks2025),
			OptimumC:       known(20.5, brooks2025+", middle"),
			ComfortHighC:   known(23, brooks2025),
			UpperUseC:      recalled(25, epaGrowth),
			OxygenLeastMgL: known(3, brooks2025),
			OxygenMgL:      known(5, brooks2025),
			Note: "Brooks et al. count 18 to 23 C with over 5 mg/L as best and over 3 mg/L as usable; the best single temperature is the middle of theirs, not a finding. " +
				"The niche from memory is 18 to 22 C (Christie & Regier 1988). Found in the field up to a weekly mean of 29 C (Eaton et al. 1995, from memory). Anglers' charts say 18 to 22 C.",
		},
		{
			Key: "perch", Name: "yellow perch", Scientific: "Perca flavescens",
			Aliases:      []string{"lake perch", "ringed perch"},
			Kind:         Coolwater,
			LowerUseC:    known(10, barans1973+" (coldest seasonal choice)"),
			ComfortLowC:  practice(12.8), // 55 F
			OptimumC:     known(21, "Ferguson 1958, JFRBC 15:607 (preferred, older fish)"),
			ComfortHighC: practice(22.2), // 72 F
			UpperUseC:    known(29, barans1973+" (warmest seasonal choice)"),
			OxygenMgL:    otherOxygen(),
			Note: "Ferguson found young fish choose 24.2 C, and field means of 19.7 to 21.2 C. " +
				"The weekly mean for growth is 29 C too (EPA 1976, from memory).",
		},
		{
			Key: "pike", Name: "northern pike", Scientific: "Esox lucius",
			Aliases: []string{"northern", "jackfish"},
			Kind:    Coolwater, CanVent: true,
			ComfortLowC:    practice(10), // 50 F
			OptimumC:       recalled(18, niche1988+", its middle"),
			ComfortHighC:   practice(21.7), // 71 F
			UpperUseC:      recalled(28, epaGrowth),
			OxygenLeastMgL: recalled(3, "Headrick & Carline 1993, TAFS, telemetry"),
			OxygenMgL:      otherOxygen(),
			Note: "No figure for this fish was seen in print: the niche from memory is 16 to 20 C, some use 17 to 21 C; growth is best at 19 to 21 C (Casselman 1978, from memory). " +
				"The wide range of anglers' charts is kept so that colder water is not ruled out, which large pike seek in summer.",
		},
		{
			Key: "muskellunge", Name: "muskellunge", Scientific: "Esox masquinongy",
			Aliases: []string{"muskie", "musky", "lunge"},
			Kind:    Coolwater, CanVent: true,
			ComfortLowC:  practice(15.6), // 60 F
			ComfortHighC: practice(21.1), // 70 F
			OxygenMgL:    otherOxygen(),
			Note:         "Weak: the range is that of anglers' charts alone and the oxygen that of fish in general. Its anglers leave it alone over 80 F, since few live when released then (from memory).",
		},
		{
			Key: "largemouth", Name: "largemouth bass", Scientific: "Micropterus salmoides",
			Aliases:      []string{"bucketmouth"},
			Kind:         Warmwater,
			ComfortLowC:  known(21, wyoming+" (feeds hardest from)"),
			OptimumC:     known(27, wyoming+", quoting Dendy 1948"),
			ComfortHighC: known(27, wyoming+" (feeding declines above)"),
			UpperUseC:    recalled(32, epaGrowth),
			OxygenMgL:    otherOxygen(),
			Note:         "In stratified lakes fish were near 27 C, the very edge of hard feeding. Anglers' charts say 20 to 26 C.",
		},
		{
			Key: "crappie", Name: "black crappie", Scientific: "Pomoxis nigromaculatus",
			Aliases:      []string{"papermouth"},
			Kind:         Warmwater,
			ComfortLowC:  practice(15.6), // 60 F
			ComfortHighC: practice(23.9), // 75 F
			UpperUseC:    recalled(27, epaGrowth),
			OxygenMgL:    otherOxygen(),
			Note:         "Weak: no study of this fish was seen; the range is that of anglers' charts and the oxygen that of fish in general.",
		},
		{
			Key: "bluegill", Name: "bluegill", Scientific: "Lepomis macrochirus",
			Aliases:      []string{"bluegill sunfish", "bream"},
			Kind:         Warmwater,
			ComfortLowC:  practice(18.3), // 65 F
			ComfortHighC: practice(26.7), // 80 F
			UpperUseC:    recalled(32, epaGrowth),
			OxygenMgL:    otherOxygen(),
			Note:         "Weak: no study of this fish was seen; the range is that of anglers' charts and the oxygen that of fish in general. In tanks it chooses warmer water, near 31 C (from memory).",
		},
	}
}
