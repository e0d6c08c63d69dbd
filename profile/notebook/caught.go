package notebook

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/unit"
)

// A line about a catch is kept as it was written. What is read in it, in any order, are
// the time of day, how many fish, which, and the depth of the fly: a length in a unit of
// depth that is not said to be something else's, such as the water's or the leader's. A
// number without such a unit is none: it may be the fish's length or a hook's size.

const (
	catchNumber = `(\d+(?:[.,]\d+)?(?: \d/\d{1,2})?)`
	catchUnit   = `(ft|feet|foot|fts|'|m|met(?:er|re)s?|mtrs?|fathoms?|yds?|yards?)`
)

var (
	catchTime   = lazy(`(?i)(?:^|[\s,;(@])((?:\d{1,2}:\d{2}(?::\d{2})?(?:\s?(?:am|pm|a\.m\.|p\.m\.|a|p|hrs?|h))?|\d{1,2}h\d{2}|\d{1,2}(?:\.\d{2})?\s?(?:am|pm|a\.m\.|p\.m\.)))(?:$|[\s,;):.])`)
	catchDepth  = lazy(`(?i)` + catchNumber + `(?:(?:\s?-\s?|\sto\s)` + catchNumber + `)?\s?` + catchUnit + `(?:(\d{1,2})")?(?:$|[^\pL\d/'"])`)
	catchTimes  = lazy(`(?i)(?:^|[\s,;(])(x\s?\d{1,2}|\d{1,2}\s?x)(?:$|[\s,;)])`)
	countedFish = lazy(`(?i)^\W*(\d{1,2}|two|three|four|five|six|seven|eight|nine|ten)\s+(?:nice |good |big |small |more )?(?:fish\b|at\b|@)`)
	otherBefore = lazy(`(?i)\b(?:over|above|bottom|btm|water|leader|tippet|line|cast|casts|casting|in|of|long|length)\s*(?:of|at|is|was|with|a|:|=)?\s*$`)
	otherAfter  = lazy(`(?i)^\s*(?:of (?:water|depth|line|leader)|(?:long|deep )?(?:water|leader|tippet|line|fluoro\w*|rod|cast|out|away|off|from|up|boat|bottom|btm|fow|long)\b|(?:above|below|under|over|beneath) (?:the )?(?:boat|bottom|btm|weeds?|weedbed|thermocline|metalimnion|drop-?off|shelf)\b)`)
	depthLead   = lazy(`(?i)(?:^|\s)(?:(?:down )?(?:at|from|to)|@|about|~|down)\s*$`)
	noCatch     = lazy(`(?i)^\s*(?:nothing|none|no|not|nil|zero|0|zip|skunked|blank(?:ed)?|-+)\b`)
	flyWord     = lazy(`(?i)^(?:leech(?:es)?|midges?|chironomids?|buggers?|scuds?|nymphs?|fl(?:y|ies)|streamers?|minnows?|spoons?|jigs?|crankbaits?|worms?|baits?|balanced|boatm[ae]n|damsels?|mayfl(?:y|ies)|caddis|pupae?|larvae?|emergers?|boob(?:y|ies)|blobs?|buzzers?|imitations?|patterns?|lures?|spinners?|woolly|hare\w*|pheasant|shrimps?|daphnia|snails?|dries|dry|wet)$`)
	anyFish     = wordSet("trout bass char charr salmon whitefish sunfish pickerel catfish carp burbot eel eels zander")
	notTheFish  = wordSet("the my his her off from boat")
	beforeFly   = wordSet("on with using")
	ofNoFish    = wordSet("a an one two three four five six seven eight nine ten another big small nice fat good decent little huge few some couple pair and off by over near up down fish fishes released kept lost bank dock boat my the")
	catchWord   = lazy(`[\pL'’-]+`)
)

// ReadCatch reads what is said of a catch: "18:10 rainbow 16 ft black midge". own are the
// angler's fish besides those of the table.
func ReadCatch(text string, own ...fish.Fish) (profile.Catch, error) {
	text, err := kept(text)
	switch {
	case err != nil:
		return profile.Catch{}, err
	case text == "" || noCatch().MatchString(text):
		return profile.Catch{}, fmt.Errorf("%s names no catch: write e.g. 18:10 rainbow 16 ft black midge", shown(text))
	case len(text) > maxText:
		return profile.Catch{}, fmt.Errorf("%s is longer than %d letters: shorten it", shown(text), maxText)
	}
	c := caughtText{said: strings.TrimSpace(signs.Replace(strings.Map(narrow, text))), own: own}
	out := profile.Catch{Text: text, Count: 1}
	out.Time = c.time()
	c.depth(&out)
	c.fish(&out)
	out.Rest = c.rest()
	return out, nil
}

// CatchLine is the line of a page that says a catch.
func CatchLine(c profile.Catch) string { return "caught: " + commentSafe(c.Text) }

// addCatch is the header key: a line of its own for each catch.
func addCatch(d *profile.Drop, v string, _ unit.System) error {
	c, err := ReadCatch(v)
	if err == nil && len(d.Catches) >= maxNotes {
		err = fmt.Errorf("more than %d catches in one drop: leave some out", maxNotes)
	}
	if err == nil {
		d.Catches = append(d.Catches, c)
	}
	return err
}

// piece is a part of a text.
type piece struct{ from, to int }

// caughtText is what is said of a catch while it is read.
type caughtText struct {
	said  string
	own   []fish.Fish
	taken []piece
}

// time takes the first time of day.
func (c *caughtText) time() string {
	for _, m := range catchTime().FindAllStringSubmatchIndex(c.said, -1) {
		day, err := parseTime("2000-01-01", strings.ToLower(strings.ReplaceAll(c.said[m[2]:m[3]], " ", "")))
		if err == nil && len(day) == len("2000-01-01 15:04") {
			c.taken = append(c.taken, piece{m[2], m[3]})
			return day[len("2000-01-01 "):]
		}
	}
	return ""
}

// depth takes the depth of the fly; of two that differ neither.
func (c *caughtText) depth(out *profile.Catch) {
	var found []profile.Catch
	var at []piece
	for from := 0; from < len(c.said); {
		m := catchDepth().FindStringSubmatchIndex(c.said[from:])
		if m == nil {
			break
		}
		for i := range m {
			if m[i] >= 0 {
				m[i] += from
			}
		}
		is, end, ok := c.depthIn(m)
		if from = end; !ok {
			continue
		}
		start := m[2]
		if lead := depthLead().FindStringIndex(c.said[:start]); lead != nil {
			start = lead[0]
		}
		found, at = append(found, is), append(at, piece{start, end})
	}
	for _, f := range found {
		if f.DepthM() != found[0].DepthM() {
			return
		}
	}
	if len(found) > 0 {
		out.Depth, out.DepthUnit = found[0].Depth, found[0].DepthUnit
		c.taken = append(c.taken, at...)
	}
}

// depthIn is the depth of a match of catchDepth, the middle where it is a range, and where
// it ends.
func (c *caughtText) depthIn(m []int) (is profile.Catch, end int, ok bool) {
	group := func(i int) string {
		if m[2*i] < 0 {
			return ""
		}
		return c.said[m[2*i]:m[2*i+1]]
	}
	end = m[7]
	v, okNumber := lengthOf(group(1))
	if second := group(2); second != "" {
		w, ok := lengthOf(second)
		v, okNumber = (v+w)/2, okNumber && ok
	}
	u, known := unit.LengthNamed(strings.ToLower(group(3)))
	if group(3) == "'" {
		u, known = unit.Foot, true
	}
	if in := group(4); in != "" {
		n, _ := strconv.Atoi(in)
		v, end = v+float64(n)/12, m[9]+1
		known = known && u == unit.Foot && n < 12
	}
	ahead := c.said[:m[2]]
	glued := ahead != "" && !strings.ContainsAny(ahead[len(ahead)-1:], " ,;:(@~")
	is.Depth, is.DepthUnit = profile.Some(rounded(v)), u
	return is, end, okNumber && known && !glued && u.Metres(v) <= 300 &&
		!otherBefore().MatchString(ahead) && !otherAfter().MatchString(c.said[end:])
}

func lengthOf(s string) (float64, bool) {
	n, rest, ok := unit.ScanNumber(s, true)
	return n.Value, ok && rest == ""
}

// fish takes the fish and how many there were.
func (c *caughtText) fish(out *profile.Catch) {
	words := catchWord().FindAllStringIndex(c.said, -1)
	at, ok := c.knownFish(words, &out.Fish)
	if !ok {
		at, ok = c.leadingFish(&out.Fish)
	}
	if n, where, counted := c.count(at, ok); counted {
		out.Count = n
		c.taken = append(c.taken, where)
	}
	if ok {
		c.taken = append(c.taken, at)
	}
}

// knownFish finds the first fish that is known and is no part of a fly's name.
func (c *caughtText) knownFish(words [][]int, name *string) (piece, bool) {
	word := func(i int) string { return strings.ToLower(c.said[words[i][0]:words[i][1]]) }
	for i := range words {
		if beforeFly[word(i)] {
			break
		}
		if i > 0 && notTheFish[word(i-1)] {
			continue
		}
		for n := min(3, len(words)-i); n > 0; n-- {
			named := c.said[words[i][0]:words[i+n-1][1]]
			if strings.ContainsAny(named, "0123456789,;") || i+n < len(words) && flyWord().MatchString(word(i+n)) {
				continue
			}
			if f, ok := fish.Known(c.own, named); ok {
				*name = f.Key
				return piece{words[i][0], words[i+n-1][1]}, true
			}
			if n == 1 && anyFish[strings.ToLower(named)] {
				*name = strings.ToLower(named)
				return piece{words[i][0], words[i+n-1][1]}, true
			}
		}
	}
	return piece{}, false
}

// leadingFish takes the words that stand where the fish does, before a depth, a comma,
// "on" or the end, though they name no fish of the table.
func (c *caughtText) leadingFish(name *string) (piece, bool) {
	from := 0
	for _, t := range c.taken {
		if strings.Trim(c.said[:t.from], " ,;:") == "" {
			from = t.to
		}
	}
	start, end := -1, from
	for _, w := range catchWord().FindAllStringIndex(c.said[from:], 4) {
		w[0], w[1] = w[0]+from, w[1]+from
		word := strings.ToLower(c.said[w[0]:w[1]])
		gap := c.said[end:w[0]]
		if start >= 0 && strings.TrimSpace(gap) != "" || c.isTaken(w[0]) || beforeFly[word] || word == "at" || word == "in" || word == "from" {
			break
		}
		if start < 0 {
			if strings.Trim(gap, " ,;:0123456789") != "" || ofNoFish[word] {
				return piece{}, false
			}
			start = w[0]
		}
		if flyWord().MatchString(word) || ofNoFish[word] {
			return piece{}, false
		}
		end = w[1]
	}
	if start < 0 || len(strings.Fields(c.said[start:end])) > 3 {
		return piece{}, false
	}
	*name = c.said[start:end]
	return piece{start, end}, true
}

// count takes the number before the fish, of which two words may part it, or "3x", "x3",
// or that at the front where no fish is named.
func (c *caughtText) count(fish piece, named bool) (n int, at piece, ok bool) {
	end := fish.from
	for range 3 {
		ahead := strings.TrimRight(c.said[:end], " ")
		start := strings.LastIndexAny(ahead, " ,;(") + 1
		word := strings.TrimSuffix(ahead[start:], "x")
		if !named || word == "" || c.isTaken(start) || len(ahead) < len(c.said[:end]) && end-len(ahead) > 2 {
			break
		}
		if n, ok := number99(word); ok {
			return n, piece{start, len(ahead)}, true
		}
		if strings.ContainsAny(word, "0123456789") || otherUnit[word] {
			break
		}
		end = start
	}
	for _, find := range []pattern{catchTimes, countedFish} {
		m := find().FindStringSubmatchIndex(c.said)
		for i := 2; i < len(m); i += 2 {
			if m[i] < 0 || c.isTaken(m[i]) {
				continue
			}
			if n, ok := number99(strings.Trim(c.said[m[i]:m[i+1]], "xX ")); ok {
				return n, piece{m[i], m[i+1]}, true
			}
		}
	}
	return 0, piece{}, false
}

// number99 reads a number of fish in figures or as a word.
func number99(s string) (int, bool) {
	s = strings.ToLower(s)
	if s == "couple" || s == "pair" {
		return 2, true
	}
	n, err := strconv.Atoi(s)
	if err != nil {
		var ok bool
		if n, ok = numberWord(s); !ok {
			return 0, false
		}
	}
	return n, n > 0 && n < 100
}

func (c *caughtText) isTaken(at int) bool {
	return slices.ContainsFunc(c.taken, func(t piece) bool { return t.from <= at && at < t.to })
}

// rest is what was not taken.
func (c *caughtText) rest() string {
	var b strings.Builder
	last := 0
	slices.SortFunc(c.taken, func(a, b piece) int { return a.from - b.from })
	for _, t := range c.taken {
		if t.from > last {
			b.WriteString(c.said[last:t.from] + " ")
		}
		last = max(last, t.to)
	}
	b.WriteString(c.said[last:])
	said := emptyPieces().ReplaceAllString(" "+b.String()+" ", " ")
	said = strings.Trim(strings.Join(strings.Fields(said), " "), " ,;:")
	return strings.TrimPrefix(said, "on ")
}

var emptyPieces = lazy(`(?:\s[,;:]+)+\s|\s\(\s*\)`)

// sayCatch notes where a number of a catch was not taken for its depth.
func (b *builder) sayCatch(h Header) {
	if h.Key != "caught" || h.Value == "" {
		return
	}
	n := len(b.d.Catches)
	if again, err := ReadCatch(h.Value, b.r.o.Fish...); err == nil && n > 0 {
		b.d.Catches[n-1] = again
	}
	if c := b.d.Catches[n-1]; !c.Depth.Known && strings.ContainsAny(c.Rest, "0123456789") {
		b.r.note(h.Line, "no depth is read in caught: %s; write one with its unit, one catch a line: 16 ft", shown(h.Value))
	}
}

// caughtLine reads a line of words that begins with "caught" or the like and names a fish: of this day
// and this water.
func (r *reader) caughtLine(line int, c, raw string) (Header, bool) {
	m := caughtFirst().FindStringSubmatch(withoutComment(raw))
	if m == nil || otherDay().MatchString(c) {
		return Header{}, false
	}
	text := strings.TrimSpace(m[1] + " " + m[2])
	is, err := ReadCatch(text, r.o.Fish...)
	if err != nil || is.Fish == "" {
		return Header{}, false
	}
	if _, known := fish.Known(r.o.Fish, is.Fish); !known && !anyFish[is.Fish] {
		return Header{}, false
	}
	r.note(line, "%s read as a catch", shown(raw))
	return Header{Key: "caught", Value: text, Line: line}, true
}

var (
	caughtFirst = lazy(`(?i)^\s*(\d{1,2}:\d{2}(?:\s?(?:am|pm))?)?[\s,]*(?:caught|landed|netted|got)[\s:]+(.+?)\s*$`)
	otherDay    = lazy(`\b(?:yesterday|last|ago|week|year|month|guide|shop|said|says|creek|stream|river|tomorrow)\b`)
)
