package fish

// salmon is the table of the salmon, grayling, whitefish and cisco.
func salmon() []Fish {
	return []Fish{
		{
			Key: "grayling", Name: "Arctic grayling", Scientific: "Thymallus arcticus",
			Aliases: []string{"american grayling"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			ComfortLowC:  practice(10),   // 50 F
			ComfortHighC: practice(15.6), // 60 F
			LethalC:      known(23, "Lohr et al. 1996, TAFS 125:933 (fish kept at 8.4 to 16 C)"),
			OxygenMgL:    troutOxygen(),
			Note: "Weak: no study of what it chooses was seen, so the range is the stillwater angler's for trout in general, 50 to 60 F. Anglers' charts for it alone are colder, 42 to 50 F (from memory). " +
				"Fish kept at 20 C bore up to 25 C (Lohr et al. 1996).",
		},
		{
			Key: "kokanee", Name: "kokanee salmon", Scientific: "Oncorhynchus nerka",
			Aliases: []string{"koke", "landlocked sockeye"},
			Kind:    Coldwater, Salmonid: true, OpenWater: true, CanVent: true,
			LowerUseC:    practice(7.2), // 45 F
			ComfortLowC:  known(10, quotedSalmon),
			OptimumC:     known(11.1, "Fortune 1964 (where most fry were)"),
			ComfortHighC: known(12, quotedSalmon),
			UpperUseC:    recalled(18, epaGrowth+", sockeye"),
			OxygenMgL:    troutOxygen(),
			Note: "The comfort range is that of sockeye, the same fish with a way to the sea; the optimum is the temperature where most fry were found, on the thermocline. " +
				"Anglers' charts say 10 to 13 C.",
		},
		{
			Key: "landlocked salmon", Name: "landlocked Atlantic salmon", Scientific: "Salmo salar",
			Aliases: []string{"atlantic salmon", "ouananiche"},
			Kind:    Coldwater, Salmonid: true, OpenWater: true, CanVent: true,
			ComfortLowC:  practice(7.2),  // 45 F
			ComfortHighC: practice(12.8), // 55 F
			UpperUseC:    recalled(20, epaGrowth),
			OxygenMgL:    troutOxygen(),
			Note: "Weak: no figure for grown fish in lakes was seen; the comfort range is that of anglers' charts, who find it after smelt in open water. " +
				"Parr of streams grow best far warmer, near 16 C (Elliott & Hurley 1997, from memory).",
		},
		{
			Key: "lake whitefish", Name: "lake whitefish", Scientific: "Coregonus clupeaformis",
			Aliases: []string{"common whitefish", "humpback whitefish"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			ComfortLowC:  recalled(10, niche1988+" 10 to 14 C"),
			OptimumC:     recalled(12, niche1988+", its middle"),
			ComfortHighC: recalled(14, niche1988+" 10 to 14 C"),
			UpperUseC:    practice(18.3), // 65 F
			OxygenMgL:    troutOxygen(),
			Note:         "Weak: the niche is from memory. Anglers' charts say only that whitefish and cisco are under 65 F. The oxygen is that of trout.",
		},
		{
			Key: "mountain whitefish", Name: "mountain whitefish", Scientific: "Prosopium williamsoni",
			Aliases: []string{"whitey", "rocky mountain whitefish"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			ComfortLowC:  known(9.9, ihnat1981+" (lowest)"),
			ComfortHighC: known(17.7, ihnat1981+" (highest)"),
			OxygenMgL:    troutOxygen(),
			Note: "The range is that of the temperatures chosen over the seasons, 17.7, 11.9, 9.9 and 16.3 C. The oxygen is that of trout. " +
				"Caught and released in streams over 23 C, more than a quarter died (Boyd et al. 2010, NAJFM 30:898).",
		},
		{
			Key: "cisco", Name: "cisco", Scientific: "Coregonus artedi",
			Aliases: []string{"lake herring", "tullibee"},
			Kind:    Coldwater, Salmonid: true, OpenWater: true, CanVent: true,
			ComfortLowC:    recalled(13, "McCormick et al. 1971, growth of larvae from"),
			ComfortHighC:   known(17, "Water 2017, 9:675 (no refuge where warmer at 3 mg/L)"),
			UpperUseC:      practice(18.3), // 65 F
			LethalC:        known(23, "Jacobson et al. 2008, TAFS (at 5 mg/L)"),
			OxygenLeastMgL: known(3, "Jiang & Fang 2016, Water 8:279 (model limit)"),
			OxygenMgL:      troutOxygen(),
			Note: "What kills it hangs on the oxygen: 24 C at 8 mg/L, 23 C at 5 mg/L, 22 C at 3 mg/L, 19.5 C at 1 mg/L (Jacobson et al. 2008). Lakes whose water of 3 mg/L is under 11 C are its best refuges. " +
				"The lower comfort figure is weak: it is that of larvae. The weekly mean for growth is 17 C too (EPA 1976, from memory).",
		},
	}
}
