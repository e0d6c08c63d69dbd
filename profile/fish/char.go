package fish

// char is the table of the char and their crosses.
func char() []Fish {
	return []Fish{
		{
			Key: "brook", Name: "brook trout", Scientific: "Salvelinus fontinalis",
			Aliases: []string{"brookie", "brook char", "eastern brook", "speckled trout"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			LowerUseC:      known(7.2, "Brook trout data set wdbrv15jw (small lakes)"),
			ComfortLowC:    known(14, stratified),
			OptimumC:       known(16, quebec+" (growth)"),
			ComfortHighC:   known(18, stratified),
			UpperUseC:      known(21, stratified+" (avoided above)"),
			LethalC:        known(24.9, quebec+" (as used)"),
			OxygenLeastMgL: known(4, stratified+" (avoided below)"),
			OxygenMgL:      recalled(6, "EPA 1986, salmonids, slight impairment"),
			Note: "McCormick et al. 1972 found fry grow best lower, at 12.4 to 15.4 C; in small lakes fish were at 7.2 to 17.7 C, adults colder than young. " +
				"The stratified-lake study found oxygen over 8.5 mg/L preferred and under 4 mg/L avoided; 8.5 is more than cool water holds high in the mountains, so a figure between the two is taken.",
		},
		{
			Key: "lake trout", Name: "lake trout", Scientific: "Salvelinus namaycush",
			Aliases: []string{"laker", "lake char", "mackinaw", "togue"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			LowerUseC:      practice(3.9), // 39 F
			ComfortLowC:    known(6, "Lake trout in a warm environment, thermoregulation study"),
			OptimumC:       known(11.7, "McCauley & Tait 1970, JFRBC 27:1729 (preferred)"),
			ComfortHighC:   known(12, plumb2009),
			UpperUseC:      known(15, plumb2009),
			LethalC:        known(23.5, "Study of lethal temperature and activity of lake trout"),
			OxygenLeastMgL: known(4, plumb2009),
			OxygenMgL:      known(6, plumb2009),
			Note: "Plumb & Blanchfield found limits of 12 or 15 C with 4 or 6 mg/L fit best, and that the usual 8 to 12 C leaves out most of the water used; the stricter pair is taken. " +
				"The thermoregulation study gives 6 to 13 C; Edsall & Cleland 2000 (NAJFM 20:804) found 10.1 to 10.2 C chosen by young fish and best growth near 12.5 C.",
		},
		{
			Key: "bull trout", Name: "bull trout", Scientific: "Salvelinus confluentus",
			Aliases: []string{"bull", "bull char"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			ComfortLowC:  recalled(10.9, selong2001+", best growth from"),
			OptimumC:     recalled(13.2, selong2001+", growth"),
			ComfortHighC: recalled(15.4, selong2001+", best growth up to"),
			LethalC:      recalled(20.9, selong2001+", 60 days"),
			OxygenMgL:    troutOxygen(),
			Note: "Weak: every figure is from memory, of young fish with food to spare in tanks. Streams that pass 15 C in summer seldom hold it, so what it uses in lakes is likely colder. " +
				"It is protected in much of its range: look up whether it may be fished for at all.",
		},
		{
			Key: "splake", Name: "splake", Scientific: "Salvelinus namaycush x Salvelinus fontinalis",
			Aliases: []string{"wendigo"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			ComfortLowC:  practice(10),
			ComfortHighC: practice(14),
			OxygenMgL:    troutOxygen(),
			Note: "Weak: no figure of what this cross of lake and brook trout chooses was seen, so the range is that of the trade and the oxygen that of trout in general. " +
				"Sadler, Friars & Ihssen 1986 (CJAS 66:599) found it grows better at 16 than at 10 C.",
		},
		{
			Key: "arctic char", Name: "Arctic char", Scientific: "Salvelinus alpinus",
			Aliases: []string{"arctic charr", "alpine char"},
			Kind:    Coldwater, Salmonid: true, CanVent: true,
			LowerUseC:    known(3, larsson2005+" (limits 2 to 3)"),
			ComfortLowC:  known(9.4, larsson2002+" (2 C under the preferred)"),
			OptimumC:     known(11.4, larsson2002+" (preferred)"),
			ComfortHighC: known(13.4, larsson2002+" (2 C over the preferred)"),
			UpperUseC:    known(21, larsson2005+" (limits 21 to 22)"),
			LethalC:      known(21.6, "Baroudy & Elliott 1994, JFB 45:1041 (parr, 7 days)"),
			OxygenMgL:    troutOxygen(),
			Note: "The comfort range is taken from the preferred temperature, not measured. Best growth is warmer, at 14.4 to 17.2 C with food to spare (Larsson et al. 2005, Freshw Biol 50:353). " +
				"What lies between 13 and 21 C is borne rather than sought.",
		},
	}
}

// larsson2005 are the thesis and Freshwater Biology 50:353.
const larsson2005 = "Larsson 2002 and Larsson et al. 2005"

// selong2001 is Selong, McMahon, Zale & Barrows in the Transactions of the American
// Fisheries Society 130:1026.
const selong2001 = "Selong et al. 2001, TAFS"
