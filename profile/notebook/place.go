package notebook

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"coldseam/profile/fish"
	"coldseam/profile/remark"
	"coldseam/profile/unit"
)

// Words by which a piece of a title tells what it names. English and French.
var (
	waterWord = wordSet("lake lk l. lac lough loch pond reservoir res res. tarn mere kettle llyn lago laguna quarry flowage impoundment étang etang lagoon")
	spotWord  = wordSet("bay cove inlet outlet arm basin point pt pt. dam island narrows reef shoal hump weedbed weeds reeds dock pier jetty launch ramp shore shoreline bank mouth buoy drop-off dropoff ledge ledges flat flats hole corner end side channel springs spring anse baie pointe barrage île ile digue creek bridge boathouse landing bar pool")
	whereWord = wordSet("north south east west n s e w ne nw se sw n. s. e. w. northern southern eastern western upper lower near far mid middle main big little small deep deepest shallow reed reedy rock rocky weed weedy gravel sand sandy mud muddy first second third back front old new inner outer off by at in over on the of from under across behind opposite beside between and above below station stn site spot de du des la le les l' d' sur au aux nord sud est ouest à petit petite grand grande public boat cabin spring 1 2 3 4")
	joinWord  = wordSet("of the de du des la le les à l' d' on upper lower north south east west big little and")
	never     = wordSet("fish fished fishing caught no with trip session notes note temps temp temperature temperatures reading readings log profile day today morning evening afternoon night noon drop thermometer probe test water good bad slow hot cold warm fast new old big our my this that whole is was turned turnover trout bass perch walleye pike ice early late first last after before mostly some very")
	dayPart   = wordSet("am pm a.m. p.m. morning evening afternoon noon midday dawn dusk night today drop first second third 1st 2nd 1 2 3 sunrise sunset matin soir")
)

// titleFiller are the words of a title that name nothing.
var titleFiller = wordSet("water lake temp temps temp. temperature temperatures log readings reading profile notes trip session thermometer data fishing profil températures")

// besideDay is a part of the day before or behind a name.
var besideDay = lazy(`(?i)^(?:am|pm|early|late|a\.m|p\.m|morning|evening|afternoon)\s+|\s+(?:am|pm|morning|evening|afternoon|midday|noon)$`)

func wordSet(s string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(s) {
		set[w] = true
	}
	return set
}

// fishy are the words of a catch: what a line with one tells of depths is about fish.
var fishy = lazy(`(?i)\b(?:caught|catch|landed|hooked|lost|missed|released|kept|took|takes?|strikes?|bites?|hits?|hit|fish|fishes|rises?|rising|follows?|marked|marking|suspended|limit|pris|poissons?|saw|seen|bugs?|hatch|hatches|cast|casting|tried|trolled|trolling)\b`)

// pieces are the parts of what is left between commas, semicolons and dashes.
var pieceEnd = lazy(`[;,|\t]|\s-+\s|\s/\s|\.\s+|\.$`)

// names takes the sky, the fish and the names of a place out of what is left. title says
// that the line stands where titles do; waters are those that are known by name. What
// was told and is not in a value stays for the note.
func (p *prose) names(title bool, o Options) (left []string) {
	pieces := pieceEnd().Split(p.text, -1)
	for i, piece := range pieces {
		piece = strings.Trim(piece, " .:;-!()")
		if at := besideDay().FindStringIndex(piece); at != nil && at[1]-at[0] < len(piece) { // "am north bay"
			p.inexact = true
			piece = besideDay().ReplaceAllString(piece, "")
		}
		words := strings.Fields(strings.ToLower(piece))
		if len(words) == 0 || p.tells(piece, words, title) {
			continue
		}
		h := p.nameIn(piece, words, title, o)
		if h.Key == "" && title && i == 0 && !p.has("water") && p.leads(pieces[1:], piece, words) {
			h = Header{Key: "water", Value: piece}
		}
		if h.Key == "" {
			left = append(left, piece)
		} else {
			p.found = append(p.found, h)
		}
	}
	return left
}

// tells takes a piece that names nothing: of a title's own words, of the wind, of the part
// of the day or of the sky.
func (p *prose) tells(piece string, words []string, title bool) bool {
	if title && all(words, titleFiller) || all(words, dayPart) {
		p.inexact = true
		return true
	}
	return p.windy(piece) || p.wet(piece)
}

// nameIn is the fish, the water or the spot that a piece names; its key is empty where it
// names none.
func (p *prose) nameIn(piece string, words []string, title bool, o Options) (h Header) {
	switch {
	case !title && p.timed && fishNamed(piece, o): // "18:40 perch, 5 m" was caught
		p.caught = true
	case !p.has("for") && fishNamed(piece, o):
		return Header{Key: "for", Value: afterFor(piece)}
	case title && !p.has("water") && waterNamed(piece, words, o):
		return Header{Key: "water", Value: piece}
	case title && !p.has("spot") && spotNamed(words):
		return Header{Key: "spot", Value: piece}
	}
	return h
}

// windy takes a piece that speaks of nothing but the wind.
func (p *prose) windy(piece string) bool {
	if p.has("wind") || startsWithDigit(piece) {
		return false
	}
	w, err := readWind(piece, unit.System{Depth: unit.Foot})
	low := strings.ToLower(piece)
	if err != nil || !w.speed.Known && !strings.Contains(low, "wind") {
		return false
	}
	if !strings.Contains(low, "wind") && !strings.Contains(low, "breez") && (w.from == "" || placeNamed(low)) {
		return false
	}
	p.inexact = true
	p.found = append(p.found, Header{Key: "wind", Value: afterWind(piece)})
	return true
}

// placeNamed reports whether a piece may name a place: the S flat, Mirror Lake N.
func placeNamed(piece string) bool {
	words := strings.Fields(piece)
	return spotNamed(words) || slices.ContainsFunc(words, func(w string) bool { return waterWord[w] })
}

// wet takes a piece that speaks of nothing but the sky or the wind.
func (p *prose) wet(piece string) bool {
	facts := remark.Sky(piece)
	if !facts.Has(remark.Thunder|remark.Whitecaps) && !skyOnly(piece) {
		return false
	}
	p.addSky(piece)
	if h := windOf(facts); h.Key != "" && !p.has("wind") {
		if w, err := readWind(piece, unit.System{}); err == nil && w.speed.Known { // "light chop" is less than chop
			h.Value = piece
		}
		p.found = append(p.found, h)
	}
	return true
}

// windOf is the wind that the look of the water tells; its key is empty where it tells none.
func windOf(facts remark.Facts) Header {
	switch {
	case facts.Has(remark.Whitecaps):
		return Header{Key: "wind", Value: "whitecaps"}
	case facts.Has(remark.Chop) == facts.Has(remark.Calm):
		return Header{}
	case facts.Has(remark.Chop):
		return Header{Key: "wind", Value: "chop"}
	}
	return Header{Key: "wind", Value: "calm"}
}

// addSky takes what was said of the sky besides what was said of it before: "overcast,
// thunder far off".
func (p *prose) addSky(said string) {
	for i := range p.found {
		if p.found[i].Key == "sky" {
			p.found[i].Value += ", " + said
			return
		}
	}
	p.found = append(p.found, Header{Key: "sky", Value: said})
}

// skyFiller are words that say nothing of the sky themselves and may stand beside
// those that do.
var skyFiller = wordSet("and with sky skies partly part partial partially ptly some few half scattered broken patchy light heavy high low very mostly now then later still flat hot warm cool cold humid blue air day morning evening all a bit of no not or day's fog ciel au loin quelques fine léger légère faible forte fort et avec")

// skyOnly reports whether every word of a piece speaks of the sky or may stand beside
// one that does.
func skyOnly(piece string) bool {
	said := false
	for _, w := range strings.Fields(wordsOnly(strings.ToLower(piece))) {
		switch {
		case remark.Sky(w) != 0:
			said = true
		case !skyFiller[w]:
			return false
		}
	}
	return said
}

// spotNamed: "north bay", "off the reed point".
func spotNamed(words []string) bool {
	for n := 1; n < len(words); n++ { // "north end of the lake"
		if rest := strings.Join(words[n:], " "); rest == "of lake" || rest == "of the lake" || rest == "of the pond" || rest == "of pond" {
			words = words[:n]
		}
	}
	if len(words) > 6 {
		return false
	}
	named := false
	for _, w := range words {
		switch w = strings.Trim(w, `"'`); {
		case spotWord[w]:
			named = true
		case !whereWord[w]:
			return false
		}
	}
	return named
}

// waterNamed: a name that holds a word such as lake or pond, or one that is known.
func waterNamed(piece string, words []string, o Options) bool {
	if slices.ContainsFunc(o.Waters, func(known string) bool { return strings.EqualFold(strings.TrimSpace(known), piece) }) {
		return true
	}
	if spotNamed(words) || len(words) > 6 {
		return false
	}
	named, others := false, 0
	for i, w := range strings.Fields(piece) {
		switch low := words[i]; {
		case !named && waterWord[strings.TrimSuffix(low, ",")]:
			named = true
		case never[low] || strings.ContainsAny(low, "0123456789") && !strings.HasPrefix(low, "#"):
			return false
		case joinWord[low]:
		case len(words) > 3 && !capital(w):
			return false
		default:
			others++
		}
	}
	return named && others > 0 && (!joinWord[words[0]] || capital(piece))
}

// capital reports whether a word begins with a capital letter.
func capital(w string) bool {
	r, _ := utf8.DecodeRuneInString(w)
	return unicode.IsUpper(r) || unicode.IsTitle(r)
}

// leads reports whether the first piece of a title is a name because a date or a spot
// stands in the title too: "Alder Kettle, north bay, 18 July 2026".
func (p *prose) leads(after []string, piece string, words []string) bool {
	if !capitals(piece, words) {
		return false
	}
	if p.titled || p.has("date") {
		return true
	}
	for _, a := range after {
		if w := strings.Fields(strings.ToLower(strings.Trim(a, " .:;-!()"))); len(w) > 0 && spotNamed(w) {
			return true
		}
	}
	return false
}

// capitals: two to four words, each with a capital, none that no name holds.
func capitals(piece string, words []string) bool {
	fields := strings.Fields(piece)
	if len(fields) < 2 || len(fields) > 4 || strings.ContainsAny(piece, "0123456789") {
		return false
	}
	for i, w := range fields {
		last := i == len(fields)-1 && words[i] == "water" // Great Scar Water
		if never[words[i]] && !last || !capital(w) && !joinWord[words[i]] {
			return false
		}
	}
	return true
}

var forFish = lazy(`(?i)^(?:fishing |fished |fish )?(?:for|after|targeting|target|targets|chasing)\s+|\s+(?:fishing|today)$`)

// afterFor is a piece without the words that say that a fish is wanted.
func afterFor(piece string) string { return strings.TrimSpace(forFish().ReplaceAllString(piece, "")) }

// fishNamed reports whether a piece names a fish and no more.
func fishNamed(piece string, o Options) bool {
	name := afterFor(piece)
	if len(name) < 4 || len(strings.Fields(name)) > 3 || strings.ContainsAny(name, "0123456789") {
		return false
	}
	_, ok := fish.Known(o.Fish, name)
	return ok
}

func all(words []string, set map[string]bool) bool {
	for _, w := range words {
		if !set[w] {
			return false
		}
	}
	return len(words) > 0
}
