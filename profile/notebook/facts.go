package notebook

import (
	"strings"

	"coldseam/profile/unit"
)

// prose is a line of words while what is known in it is taken out.
type prose struct {
	text    string   // what is left, in the case it was written in; ";" where something was taken
	found   []Header // what was taken
	twoDays error    // of a date taken that may be two days
	inexact bool     // more was said than the values hold
	titled  bool     // it begins with a date
	timed   bool     // it holds a time of day
	caught  bool     // it tells of a catch
}

// take cuts a piece of the text out and takes a fact from it.
func (p *prose) take(from, to int, h Header) {
	p.found = append(p.found, h)
	p.text = p.text[:from] + " ; " + p.text[to:]
}

const (
	aNumber = `(\d+(?:[.,]\d+)?(?: \d/\d{1,2})?)`
	aLength = aNumber + `\s?(ft|feet|foot|fts|'|m|meters?|metres?|mtrs?|fathoms?|yds?|yards?)?`
	aClock  = `(?:\d{1,2}(?:[:.h]\d{2})?\s?(?:am|pm|a\.m\.|p\.m\.|a|p|hrs?|h)|\d{1,2}[:h]\d{2})`
	ofWords = `(?:\s|[:=~]|\b(?:at|is|was|here|depth|disk|disc|reads?|about|approx|of|on|in|down|to)\b)*`
)

var (
	bottomFirst = lazy(`(?i)\b(?:bottom|btm|bttm|bot|fond|water depth|depth here|sounder|(?:sinker|weight|lead) (?:touched|hit)(?: down| bottom)?|(?:anchored|anchor|parked|sitting|tied up)(?: up| down)?(?: in| over| at)?|over|(?:depth )?under (?:the )?(?:boat|canoe|kayak|tube|keel|transducer|hole|ice))\b` + ofWords + aLength)
	bottomLast  = lazy(`(?i)` + aLength + `(?:\s(?:of )?(?:water|deep))?\s(?:here )?(?:(?:under|beneath|below)\s(?:the |my |our |us\b)?(?:boat|canoe|kayak|tube|keel|transducer|hole|ice)?|to (?:the )?bottom|bottom|btm|fow)\b`)
	waterHere   = lazy(`(?i)(?:^|[;,])\s*(?:in |over |about )?` + aLength + `\s(?:of water|water|deep|of depth)(?: here)?\s*(?:$|[;,.])`)
	bottomWord  = lazy(`(?i)\b(?:bottom|btm|bttm|bot|fond|boat|canoe|kayak|tube|hole|ice)\b`)
	denied      = lazy(`(?i)(?:\b(?:no|not|never|without|off|above|near|from|past|over|before|find)|n't)(?: the| any)?\s*$`)
	secchiFirst = lazy(`(?i)\b(?:secc?hi|secci|sechi|sd|vis|viz|visibility|clarity|disk|disc)\b` + ofWords + aLength)
	windPiece   = lazy(`(?i)\b(?:winds?|vent)\s(?:from\s)?(?:the\s)?` + compass + `,\s?\d+(?:\s?(?:-|to)\s?\d+)?\s?` + speedUnit + `\b|(?:\b` + compass + `\s)?\b(?:winds?|vent|gusts?|gusting)\b[^;,.|]*(?:\d\.\d[^;,.|]*)?|(?:\b` + compass + `\s)?\d+(?:\.\d+)?\s?(?:-|to)?\s?(?:\d+(?:\.\d+)?)?\s?` + speedUnit + `\b(?:\s` + compass + `\b)?|(?:^|[;,|])\s*` + compass + `\s\d{1,2}(?:\s?(?:-|to)\s?\d{1,2})?\s*(?:$|[;,|])`)
	dateInside  = lazy(`(?i)(?:` + weekdayName + `[.,]?\s+)?(?:\b\d{4}[-/.]\d{1,2}[-/.]\d{1,2}\b|\b\d{1,2}(/|\.|-)\d{1,2}(/|\.|-)(?:\d{4}|\d{2})\b)`)
	clockInside = lazy(`(?i)^[ ,;]*(?:at )?(` + aClock + `)(?:$|[ ,;)]|\.(?:$|\s))`)
	clockAlone  = lazy(`(?i)(?:^|[\s,;(@])(\d{1,2}(?:[:.h]\d{2})?\s?(?:am|pm|a\.m\.|p\.m\.)|\d{1,2}h\d{2}|\d{1,2}[:h]\d{2}\s?(?:a|p|hrs?|h))(?:$|[\s,;).])`)
	anyClock    = lazy(`(?i)(?:^|[\s,;(@])` + aClock + `(?:$|[\s,;).])`)
	shortDay    = lazy(`^(\d{1,2})[/.](\d{1,2})(?:$|[ ,;])`)
)

// dayInside reports whether a line holds a day and a month: a title's date without a year.
func dayInside(c string) bool {
	m := shortDay().FindStringSubmatch(c)
	return m != nil && dayAndMonth(m) || wordDayInside().MatchString(c)
}

const weekdayName = `\b(?:mon|tues?|wed|thu|thurs?|fri|sat|sun)(?:day|nesday|rsday|urday|sday)?`

// certain takes out what no reading holds: dates with their year, times of day, winds
// with a unit.
func (p *prose) certain() {
	if s, err := unit.ParseSystem(strings.TrimSpace(p.text)); err == nil && s.Depth != unit.NoLength && s.Temp != unit.NoTemperature { // "ft F" alone
		p.take(0, len(p.text), Header{Key: "units", Value: s.String()})
		return
	}
	p.timed = anyClock().MatchString(p.text)
	p.dates()
	if m := titleLine().FindStringSubmatch(strings.ToLower(p.text)); len(p.found) == 0 && m != nil && dayAndMonth(m) && strings.HasPrefix(p.text, m[1]+"/") {
		p.titled, p.inexact = true, true
		p.text = p.text[len(m[1]+"/"+m[2]):]
	}
	if m := clockAlone().FindStringSubmatchIndex(p.text); m != nil {
		p.addTime(p.text[m[2]:m[3]])
		p.text = p.text[:m[2]] + " ; " + p.text[m[3]:]
	}
}

// dates takes the first date with its year, and the time of day behind it.
func (p *prose) dates() {
	for _, find := range []pattern{dateInside, wordDateInside} {
		loc := find().FindStringIndex(p.text)
		if loc == nil {
			continue
		}
		from, to := loc[0], loc[1]
		if m := clockInside().FindStringSubmatchIndex(p.text[to:]); m != nil {
			to += m[3]
		}
		day, e := parseDate(strings.TrimSpace(p.text[from:to]))
		if e != nil && to != loc[1] {
			to = loc[1]
			day, e = parseDate(strings.TrimSpace(p.text[from:to]))
		}
		if two, ok := e.(twoDates); ok {
			day, p.twoDays = two.text, e
		} else if e != nil {
			continue
		}
		p.titled = strings.TrimSpace(p.text[:from]) == ""
		p.take(from, to, Header{Key: "date", Value: day})
		return
	}
}

// addTime puts a time of day that stands apart to its date.
func (p *prose) addTime(clock string) {
	for i, h := range p.found {
		if day, err := parseDate(h.Value + " " + clock); h.Key == "date" && err == nil {
			p.found[i].Value = day
			return
		}
	}
	p.inexact = true
}

var (
	wordDayInside  = lazy(`(?i)\b(?:\d{1,2}(?:st|nd|rd|th|er)?[ .-]*` + monthName + `|` + monthName + `[ .-]*\d{1,2}(?:st|nd|rd|th)?)(?:$|[ ,;.-])`)
	wordDateInside = lazy(`(?i)(?:` + weekdayName + `[.,]?\s+)?\b(?:\d{1,2}(?:st|nd|rd|th|er)?[ .-]*` + monthName + `|` + monthName + `[ .-]*\d{1,2}(?:st|nd|rd|th|er)?)[ ,.-]+(?:\d{4}|'?\d{2})\b`)
)

// lengths takes the bottom and the Secchi depth.
func (p *prose) lengths() {
	caught := fishy().MatchString(p.text)
	for _, f := range []struct {
		key  string
		find pattern
		last bool // the word follows the length
	}{{"bottom", bottomFirst, false}, {"bottom", bottomLast, true}, {"bottom", waterHere, true}, {"secchi", secchiFirst, false}} {
		m := f.find().FindStringSubmatchIndex(p.text)
		if m == nil || p.has(f.key) {
			continue
		}
		if caught && f.key == "bottom" && !bottomWord().MatchString(p.text[m[0]:m[1]]) { // "took one over 20 ft" says where a fish was
			continue
		}
		if denied().MatchString(p.text[:m[0]]) {
			continue
		}
		number, u := p.text[m[2]:m[3]], ""
		if m[4] >= 0 {
			u = p.text[m[4]:m[5]]
		}
		to := m[1]
		if u != "" && !f.last {
			to = m[5]
		} else if !f.last {
			to = m[3]
		}
		if u == "" && (f.last || m[0] < m[2] && strings.HasPrefix(strings.ToLower(p.text[m[0]:]), "over")) || !f.last && !endsHere(p.text[to:]) {
			continue
		}
		p.take(m[0], to, Header{Key: f.key, Value: strings.TrimSpace(number + " " + strings.ReplaceAll(u, "'", "ft"))})
	}
}

// endsHere reports whether a length has ended: no letter, digit, degree or range follows
// that would make it something else, a temperature or a wind.
func endsHere(after string) bool {
	after = strings.TrimPrefix(after, ".")
	if after == "" {
		return true
	}
	if strings.ContainsRune("-°%/", rune(after[0])) || after[0] >= '0' && after[0] <= '9' {
		return false
	}
	rest := strings.TrimSpace(after)
	if after[0] != ' ' && startsWithLetter(rest) {
		return false
	}
	word, _, _ := strings.Cut(strings.ToLower(rest), " ")
	word = strings.TrimRight(word, ".,;:)")
	_, temp := unit.TemperatureNamed(word)
	return !temp && word != "deg" && word != "degrees" && !(rest != "" && (rest[0] >= '0' && rest[0] <= '9' || rest[0] == '-'))
}

func startsWithLetter(s string) bool {
	return s != "" && (s[0] >= 'a' && s[0] <= 'z' || s[0] >= 'A' && s[0] <= 'Z')
}

// wind takes the wind.
func (p *prose) wind() {
	if p.has("wind") {
		return
	}
	for _, loc := range windPiece().FindAllStringIndex(p.text, -1) { // "wind picking up, 12 mph gusts": the first may hold no speed
		piece := strings.Trim(p.text[loc[0]:loc[1]], " ;,|.")
		if w, err := readWind(piece, unit.System{Depth: unit.Foot}); err == nil && w.speed.Known {
			p.inexact = true
			p.take(loc[0], loc[1], Header{Key: "wind", Value: afterWind(piece)})
			return
		}
	}
}

// afterWind is a wind without the word.
func afterWind(piece string) string {
	if word, rest, ok := strings.Cut(piece, " "); ok && (strings.EqualFold(word, "wind") || strings.EqualFold(word, "winds")) {
		return rest
	}
	return piece
}

func (p *prose) has(key string) bool {
	for _, h := range p.found {
		if h.Key == key {
			return true
		}
	}
	return false
}
