package fish

import (
	"math"
	"strings"
	"testing"
)

// figureNames are the names of the figures in the tables below.
var figureNames = map[string]string{
	"lower use": UseLow, "comfort low": ComfortLow, "optimum": Optimum, "comfort high": ComfortHigh,
	"upper use": UseHigh, "lethal": Lethal, "oxygen least": OxygenLeast, "oxygen": Oxygen,
}

// figure finds one figure of the table, or ends the test.
func figure(t *testing.T, key, name string) Figure {
	t.Helper()
	f, err := Find(key)
	if err != nil {
		t.Fatal(err)
	}
	for _, g := range f.Figures() {
		if g.Name == figureNames[name] {
			return g.Figure
		}
	}
	t.Fatalf("no figure is called %q", name)
	return Figure{}
}

// TestPublished holds the table to figures of the publications it names.
func TestPublished(t *testing.T) {
	for _, c := range []struct {
		key, figure string
		want, tol   float64
		source      string // must be part of the figure's own source
	}{
		{"rainbow", "comfort low", 13, 0, "North Twin Lake"},
		{"rainbow", "comfort high", 19, 0, "North Twin Lake"},
		{"rainbow", "oxygen", 5, 0, "North Twin Lake"},
		{"rainbow", "upper use", 21, 0, "Review of rainbow trout in lakes"},
		{"rainbow", "optimum", 13.1, 0, "Bear, McMahon & Zale 2007"},
		{"rainbow", "lethal", 24.3, 0, "Bear, McMahon & Zale 2007"}, // 24.0 to 24.7
		{"rainbow", "oxygen least", 2.5, 0, "Review of rainbow trout in lakes"},
		{"rainbow", "lower use", 8, 0, "McMichael & Kaya 1991"},            // catch best at 8 to 15
		{"brown", "comfort low", (54 - 32) / 1.8, 0.05, "common practice"}, // charts: 54 F
		{"brown", "comfort high", (65 - 32) / 1.8, 0.05, "common practice"},
		{"brown", "upper use", 21, 0, "Wehrly et al. 2007"},
		{"brown", "optimum", 16, 0, "Larsson 2002"},
		{"brown", "lower use", 3.5, 0, "Norwegian hatchery study at 63 N"},
		{"brook", "comfort low", 14, 0, "AFS meeting 2011"},
		{"brook", "comfort high", 18, 0, "AFS meeting 2011"},
		{"brook", "upper use", 21, 0, "AFS meeting 2011"},
		{"brook", "optimum", 16, 0, "Water 2017, 9:346"},
		{"brook", "lethal", 24.9, 0, "Water 2017, 9:346"},
		{"brook", "lower use", 7.2, 0, "data set wdbrv15jw"},
		{"brook", "oxygen least", 4, 0, "AFS meeting 2011"},
		{"cutthroat", "comfort low", 13, 0, "Bear, McMahon & Zale 2007"},
		{"cutthroat", "comfort high", 15, 0, "Bear, McMahon & Zale 2007"},
		{"cutthroat", "lethal", 19.6, 0, "Bear, McMahon & Zale 2007"}, // 19.1 to 19.9
		{"cutthroat", "upper use", (62 - 32) / 1.8, 0.05, "common practice"},
		{"cutthroat", "optimum", 13.6, 0, "Bear, McMahon & Zale 2007"},
		{"lake trout", "comfort low", 6, 0, "thermoregulation study"},
		{"lake trout", "comfort high", 12, 0, "Plumb & Blanchfield 2009"},
		{"lake trout", "upper use", 15, 0, "Plumb & Blanchfield 2009"},
		{"lake trout", "oxygen", 6, 0, "Plumb & Blanchfield 2009"},
		{"lake trout", "oxygen least", 4, 0, "Plumb & Blanchfield 2009"},
		{"lake trout", "lethal", 23.5, 0, "Study of lethal temperature and activity"},
		{"lake trout", "lower use", (39 - 32) / 1.8, 0.05, "common practice"},
		{"tiger trout", "comfort low", 10, 0, "common practice"},
		{"tiger trout", "comfort high", 14, 0, "common practice"},
		{"splake", "comfort low", 10, 0, "common practice"},
		{"splake", "comfort high", 14, 0, "common practice"},
		{"arctic char", "optimum", 11.4, 0, "Larsson 2002"},
		{"arctic char", "comfort low", 11.4 - 2, 1e-9, "Larsson 2002"},
		{"arctic char", "comfort high", 11.4 + 2, 1e-9, "Larsson 2002"},
		{"arctic char", "lower use", 3, 0, "Larsson 2002"},  // limits 2 to 3
		{"arctic char", "upper use", 21, 0, "Larsson 2002"}, // limits 21 to 22
		{"arctic char", "lethal", 21.6, 0, "Baroudy & Elliott 1994"},
		{"grayling", "comfort low", (50 - 32) / 1.8, 0.05, "common practice"},
		{"grayling", "comfort high", (60 - 32) / 1.8, 0.05, "common practice"},
		{"grayling", "lethal", 23, 0, "Lohr et al. 1996"},
		{"landlocked salmon", "comfort low", (45 - 32) / 1.8, 0.05, "common practice"},
		{"landlocked salmon", "comfort high", (55 - 32) / 1.8, 0.05, "common practice"},
		{"lake whitefish", "upper use", (65 - 32) / 1.8, 0.05, "common practice"},
		{"mountain whitefish", "comfort low", 9.9, 0, "Ihnat 1981"},
		{"mountain whitefish", "comfort high", 17.7, 0, "Ihnat 1981"},
		{"cisco", "comfort high", 17, 0, "Water 2017, 9:675"},
		{"cisco", "upper use", (65 - 32) / 1.8, 0.05, "common practice"},
		{"cisco", "lethal", 23, 0, "Jacobson et al. 2008"}, // at 5 mg/L
		{"cisco", "oxygen least", 3, 0, "Jiang & Fang 2016"},
		{"lake trout", "optimum", 11.7, 0, "McCauley & Tait 1970"},
		{"kokanee", "comfort low", 10, 0, "Spohn 1996"},
		{"kokanee", "comfort high", 12, 0, "Birtwell 1994"},
		{"kokanee", "optimum", 11.1, 0, "Fortune 1964"},
		{"kokanee", "lower use", (45 - 32) / 1.8, 0.05, "common practice"},
		{"smallmouth", "lower use", 18, 0, "Barans & Tubb 1973"},
		{"smallmouth", "comfort low", 19, 0, "Hile & Juday 1941"},
		{"smallmouth", "comfort high", 27, 0, "Wyoming review"},
		{"smallmouth", "upper use", 31, 0, "Barans & Tubb 1973"},
		{"smallmouth", "optimum", 26, 0, "Horning & Pearson 1973"},
		{"walleye", "comfort low", 18, 0, "Brooks et al. 2025"},
		{"walleye", "comfort high", 23, 0, "Brooks et al. 2025"},
		{"walleye", "optimum", (18 + 23) / 2., 0, "Brooks et al. 2025"},
		{"walleye", "oxygen", 5, 0, "Brooks et al. 2025"},
		{"walleye", "oxygen least", 3, 0, "Brooks et al. 2025"},
		{"perch", "lower use", 10, 0, "Barans & Tubb 1973"},
		{"perch", "comfort low", (55 - 32) / 1.8, 0.05, "common practice"},
		{"perch", "comfort high", (72 - 32) / 1.8, 0.05, "common practice"},
		{"perch", "upper use", 29, 0, "Barans & Tubb 1973"},
		{"perch", "optimum", 21, 0, "Ferguson 1958"},
		{"pike", "comfort low", (50 - 32) / 1.8, 0.05, "common practice"},
		{"pike", "comfort high", (71 - 32) / 1.8, 0.05, "common practice"},
		{"largemouth", "comfort low", 21, 0, "Wyoming review"},
		{"largemouth", "comfort high", 27, 0, "Wyoming review"},
		{"largemouth", "optimum", 27, 0, "Dendy 1948"},
		{"muskellunge", "comfort low", (60 - 32) / 1.8, 0.05, "common practice"},
		{"muskellunge", "comfort high", (70 - 32) / 1.8, 0.05, "common practice"},
		{"crappie", "comfort low", (60 - 32) / 1.8, 0.05, "common practice"},
		{"crappie", "comfort high", (75 - 32) / 1.8, 0.05, "common practice"},
		{"bluegill", "comfort low", (65 - 32) / 1.8, 0.05, "common practice"},
		{"bluegill", "comfort high", (80 - 32) / 1.8, 0.05, "common practice"},
	} {
		g := figure(t, c.key, c.figure)
		if !g.Known || math.Abs(g.Value-c.want) > c.tol || !strings.Contains(g.Source, c.source) {
			t.Errorf("%s, %s: %v (%q), want %v by %s", c.key, c.figure, g.Value, g.Source, c.want, c.source)
		}
	}
}

// TestFromMemory keeps the figures nobody has seen in print from drifting, and from
// passing for more than they are: each must say so in its source. It confirms none.
func TestFromMemory(t *testing.T) {
	for _, c := range []struct {
		key, figure string
		want        float64
		source      string
	}{
		{"brown", "oxygen", 5, "EPA 1986, coldwater"},
		{"brook", "oxygen", 6, "EPA 1986, salmonids, slight impairment"},
		{"brown", "lethal", 24.7, "Elliott 1994"},
		{"brown", "oxygen least", 3, "USFWS"},
		{"cutthroat", "oxygen least", 3, "USFWS"},
		{"bull trout", "comfort low", 10.9, "Selong et al. 2001"},
		{"bull trout", "optimum", 13.2, "Selong et al. 2001"},
		{"bull trout", "comfort high", 15.4, "Selong et al. 2001"},
		{"bull trout", "lethal", 20.9, "Selong et al. 2001"},
		{"landlocked salmon", "upper use", 20, "EPA 1976"},
		{"lake whitefish", "comfort low", 10, "Christie & Regier 1988"},
		{"lake whitefish", "optimum", 12, "Christie & Regier 1988"},
		{"lake whitefish", "comfort high", 14, "Christie & Regier 1988"},
		{"cisco", "comfort low", 13, "McCormick et al. 1971"},
		{"cutthroat", "oxygen", 5, "EPA 1986, coldwater"},
		{"kokanee", "oxygen", 5, "EPA 1986, coldwater"},
		{"kokanee", "upper use", 18, "EPA 1976"},
		{"smallmouth", "oxygen", 5, "EPA 1986, non-salmonid"},
		{"walleye", "upper use", 25, "EPA 1976"},
		{"perch", "oxygen", 5, "EPA 1986, non-salmonid"},
		{"pike", "oxygen", 5, "EPA 1986, non-salmonid"},
		{"pike", "upper use", 28, "EPA 1976"},
		{"pike", "optimum", 18, "Christie & Regier 1988"}, // niche 16 to 20
		{"largemouth", "oxygen", 5, "EPA 1986, non-salmonid"},
		{"pike", "oxygen least", 3, "Headrick & Carline 1993"},
		{"largemouth", "upper use", 32, "EPA 1976"},
		{"crappie", "upper use", 27, "EPA 1976"},
		{"bluegill", "upper use", 32, "EPA 1976"},
	} {
		g := figure(t, c.key, c.figure)
		if g.Value != c.want || !strings.HasPrefix(g.Source, "from memory ("+c.source) {
			t.Errorf("%s, %s: %v (%q), want %v from memory of %s", c.key, c.figure, g.Value, g.Source, c.want, c.source)
		}
	}
}

// TestAgainstOthers holds the chosen figures to what publications they were not
// taken from found for the same fish.
func TestAgainstOthers(t *testing.T) {
	for _, c := range []struct {
		key, figure string
		low, high   float64
		source      string
	}{
		{"rainbow", "optimum", 13.0, 19.0, "optimum, Nevada draft 2015 citing Brungs & Jones 1977"},
		{"rainbow", "optimum", 12.5, 13.5, "final preferendum 13, Garside & Tait 1958"},
		{"rainbow", "upper use", 18.2, 22.0, "upper optimum, Nevada draft 2015 citing Brungs & Jones 1977"},
		{"rainbow", "upper use", 0, 24.0, "below the lethal limit 24.3 (24.0 to 24.7), Bear et al. 2007"},
		{"rainbow", "comfort high", 8, 19, "angler catch unsatisfactory from 19 to 20 up, McMichael & Kaya 1991"},
		{"brown", "comfort high", 8, 19, "angler catch unsatisfactory from 19 to 20 up, McMichael & Kaya 1991"},
		{"brown", "optimum", 15, 19, "growth optimum 15 or over, Norwegian hatchery study at 63 N"},
		{"brook", "comfort high", 17.5, 18.5, "7.2 to 17.7 in small lakes, brook trout data set wdbrv15jw"},
		{"brook", "upper use", 20, 23, "sub-lethal threshold, Morrison et al. 2020"},
		{"brook", "upper use", 0, 22.1, "mean borne for 21 days, Wehrly et al. 2007"},
		{"cutthroat", "upper use", 0, 22, "acute stress of the Lahontan form, Dunham et al. 2003"},
		{"lake trout", "optimum", 10.1, 12.5, "preferendum to growth optimum, Edsall & Cleland 2000"},
		{"lake trout", "comfort low", 0, 6.9, "mean capture temperature 6.9, juveniles of Lake Ontario"},
		{"lake trout", "comfort high", 12, 13, "92 % caught at 12 or less, juveniles of Lake Ontario; 13, thermoregulation study"},
		{"lake trout", "upper use", 12, 17, "activity maximum 15 to 17, study of lethal temperature and activity of lake trout"},
		{"brown", "lethal", 20, 25, "mortality high over 20, complete over 25, Brown 1946"},
		{"brook", "lethal", 24.5, 25.4, "7-day TL50 of fry 24.5, McCormick et al. 1972; 7-day maximum borne 25.4, Wehrly et al. 2007"},
		{"brook", "oxygen", 4, 8.5, "avoided to preferred, stratified-lake study"},
		{"arctic char", "comfort high", 0, 14.4, "growth optimum 14.4 to 17.2, Larsson et al. 2005: the choice is colder"},
		{"arctic char", "upper use", 20.8, 23.2, "upper limits of growth, Larsson et al. 2005"},
		{"arctic char", "lethal", 20.8, 26.6, "fry over 7 days to 10 minutes, Baroudy & Elliott 1994"},
		{"grayling", "lethal", 0, 25, "kept at 20, Lohr et al. 1996"},
		{"cisco", "lethal", 22.1, 24, "model limit, Jiang & Fang 2016, to 8 mg/L, Jacobson et al. 2008"},
		{"kokanee", "optimum", 10, 12, "sockeye preferred, Spohn 1996 and Birtwell 1994 as quoted"},
		{"smallmouth", "comfort low", 18, 31, "seasonal choice, Barans & Tubb 1973"},
		{"smallmouth", "comfort high", 26, 35, "growth greatest near 26, negative at 35, Horning & Pearson 1973"},
		{"perch", "optimum", 19.7, 21.2, "field means, Ferguson 1958"},
		{"walleye", "optimum", 18, 22, "niche from memory, Christie & Regier 1988"},
		{"perch", "comfort low", 10, 29, "seasonal choice, Barans & Tubb 1973"},
		{"perch", "comfort high", 21.2, 24.2, "highest field mean to preferendum of young, Ferguson 1958"},
	} {
		if g := figure(t, c.key, c.figure); g.Value < c.low || g.Value > c.high {
			t.Errorf("%s, %s: %v is outside %v to %v (%s)", c.key, c.figure, g.Value, c.low, c.high, c.source)
		}
	}
}
