package session

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"coldseam/profile"
)

// touch begins a session of an angler who touches a screen.
func touch(t testing.TB, page string) *talk { return begin(t, page, Options{Touch: true}) }

// does does something by touch, and looks at what came of it.
func (k *talk) does(do func(s *Session)) *talk {
	do(k.Session)
	k.see()
	return k
}

func (k *talk) wanted() float64 {
	if !k.view.Wanted.Known {
		return -1
	}
	return k.view.Drop.Units.Depth.From(k.view.Wanted.Value)
}

// The depth that a temperature alone is read at moves by a mark, stays within the water and
// what is noted, and goes back to what is advised with the reading.
func TestMove(t *testing.T) {
	k := touch(t, feet)
	move := func(marks int, want float64) {
		t.Helper()
		if k.does(func(s *Session) { s.Move(marks) }); k.wanted() < want-1e-9 || k.wanted() > want+1e-9 {
			t.Errorf("moved %d marks: %g, want %g", marks, k.wanted(), want)
		}
	}
	move(-1, 0)
	move(-1, 0)
	move(1, 1)
	k.types("74")
	move(1, 30)
	move(5, 30)
	move(-2, 28)
	k.types("wind: light S")
	if math.Abs(k.wanted()-28) > 1e-9 {
		t.Errorf("a note moved it to %g", k.wanted())
	}
	k.types("no line at all 1 2 3 x")
	k.types("53")
	if want := []string{"1 ft: 74 F", "28 ft: 53 F"}; !reflect.DeepEqual(k.rows(), want) {
		t.Errorf("%q, want %q", k.rows(), want)
	}
	move(-2, k.wanted()-2)
	k.types("bottom: 12 ft")
	if k.view.Wanted.Known && k.wanted() > 12 {
		t.Errorf("%g ft is under the bottom", k.wanted())
	}
	m := touch(t, "units: m C").types("", "skip", "skip")
	m.does(func(s *Session) { s.Move(-1) }).does(func(s *Session) { s.Move(1) }).does(func(s *Session) { s.Move(1) })
	if m.wanted()*4 != float64(int(m.wanted()*4)) {
		t.Errorf("%g m is no mark", m.wanted())
	}
}

// Nothing moves while a question is open, a reading is doubted or the drop has ended. Where
// enough is read there is a depth only once it was moved to, from the last reading.
func TestMoveOnlyWhereAsked(t *testing.T) {
	k := begin(t, "units: ft F", Options{Touch: true})
	if k.does(func(s *Session) { s.Move(1) }); k.view.Wanted.Known || k.view.Question == nil {
		t.Errorf("%+v", k.view)
	}
	k.types("30", "74", "52", "36")
	if k.does(func(s *Session) { s.Move(1) }); k.view.Wanted.Known || !k.view.Doubted {
		t.Errorf("%+v", k.view)
	}
	if k.types("skip"); k.view.Doubted || !k.view.Wanted.Known {
		t.Errorf("%+v", k.view)
	}
	same := touch(t, feet).types("74", "73.9", "74")
	if !same.view.Advice.Enough || same.view.Wanted.Known {
		t.Fatalf("%+v", same.view.Advice)
	}
	same.types("74")
	same.want("At which depth?")
	if same.does(func(s *Session) { s.Move(1) }); same.wanted() != 15 {
		t.Errorf("%g ft", same.wanted())
	}
	same.types("stop").does(func(s *Session) { s.Move(1) })
	if same.view.Wanted.Known {
		t.Error("moved after the end")
	}
}

// Any reading is put right or taken out, also one from before this sitting; oxygen stays, and
// what is odd is challenged.
func TestReplace(t *testing.T) {
	k := touch(t, feet).types("74", "52 DO 2", "63")
	replace := func(i int, text string) *talk { return k.does(func(s *Session) { s.Replace(i, text) }) }
	replace(1, "53")
	if want := []string{"1 ft: 74 F", "14 ft: 63 F", "29 ft: 53 F  DO 2 mg/L"}; !reflect.DeepEqual(k.rows(), want) {
		t.Errorf("%q, want %q", k.rows(), want)
	}
	if last := k.view.Last; last == nil || last.Temp != 53 {
		t.Errorf("undo takes back %+v", last)
	}
	for text, want := range map[string]string{"1 2 3 x": "Not taken: ", "bottom: 20 ft": "the one temperature", "12 60\n13 59": "the one temperature", "wind: light S": "the one temperature"} {
		from := k.said.Len()
		if replace(0, text); !strings.Contains(k.told(from), want) || len(k.rows()) != 3 || k.view.Drop.Bottom.Value > 9.2 {
			t.Errorf("%q: %s, %q", text, k.told(from), k.rows())
		}
	}
	if replace(1, "36"); !k.view.Doubted {
		t.Error("36 F is not doubted")
	}
	if replace(0, "15 62"); k.view.Doubted {
		t.Error("62 F is doubted")
	}
	for _, i := range []int{-1, 3, 9} {
		if replace(i, "60").does(func(s *Session) { s.TakeOut(i) }); len(k.rows()) != 3 {
			t.Errorf("%d: %q", i, k.rows())
		}
	}
	if k.store.saves == 0 || len(k.view.Drop.Readings) != 3 {
		t.Error("nothing was saved")
	}
	before := k.store.saves
	if k.does(func(s *Session) { s.TakeOut(0) }); len(k.rows()) != 2 || k.store.saves != before+1 {
		t.Errorf("%q, %d saves", k.rows(), k.store.saves-before)
	}
	k.want("Removed: ")
	k.store.fails = 1
	if replace(0, "61"); k.view.Question == nil || k.view.Question.Failed == nil {
		t.Fatal("that saving failed is not asked about")
	}
	replace(1, "50").does(func(s *Session) { s.TakeOut(0) }).types("1")
	if got := strings.Join(k.rows(), ";"); strings.Contains(got, "50 F") || !strings.Contains(got, "61 F") || len(k.rows()) != 2 {
		t.Errorf("while a question was open: %s", got)
	}
}

// What was read before this sitting is put right and taken out too, and undo leaves the rest.
func TestReplaceOld(t *testing.T) {
	was := touch(t, feet).types("74", "52")
	k := begin(t, "", Options{Touch: true, Cut: []Cut{{Drop: was.view.Drop, Store: was.store}}}).types("1")
	if k.view.Last != nil {
		t.Errorf("undo would take back %+v", k.view.Last)
	}
	k.does(func(s *Session) { s.Replace(0, "73") }).types("undo", "undo")
	if got := temps(k.view.Drop); !reflect.DeepEqual(got, []float64{52}) {
		t.Errorf("%v", got)
	}
	k.want("touch it in the list")
	k.does(func(s *Session) { s.TakeOut(0) })
	if len(k.view.Drop.Readings) != 0 || k.view.Last != nil {
		t.Errorf("%+v", k.view.Drop.Readings)
	}
}

// What is told to those who touch speaks of no key, no number to type and no flag; each kind
// of it is told apart.
func TestTouchedWords(t *testing.T) {
	k := begin(t, "", Options{Touch: true})
	kinds := map[Kind]bool{}
	see := func() {
		for _, told := range k.view.Told {
			kinds[told.Kind] = true
		}
	}
	for _, line := range []string{"", "help", "skip", "undo", "1", "deep", "help", "", "skip", "undo", "help", "", "68 12 11", "74", "wind: light S", "1 73", "help", "2", "36", "help", "skip",
		"10-68", "help", "skip", "for: dragon", "units: m C", "caught rainbow 16 ft", "74", "73", "72", "71", "70", "69", "stop"} {
		k.types(line)
		see()
		if q := k.view.Question; q != nil && q.Line() == "" && len(q.Choices) == 0 {
			t.Errorf("a question without an answer: %+v", q)
		}
	}
	for _, bad := range []string{"Enter", "--", "Type the number", "coldseam ", "stop ends"} {
		if strings.Contains(k.said.String(), bad) {
			t.Errorf("%q is said:\n%s", bad, k.said.String())
		}
	}
	for _, kind := range []Kind{Said, Why, Hint, Wrong, Odd} {
		if !kinds[kind] {
			t.Errorf("nothing of kind %d was told:\n%s", kind, k.said.String())
		}
	}
	none := begin(t, "", Options{Touch: true}).types("stop")
	if none.Err() == nil || none.Err().Error() != touchedWords.noUnits {
		t.Errorf("%v", none.Err())
	}
}

// A page that is pasted at once is taken whole or, with the number of its line, not at all.
func TestPastedAtOnce(t *testing.T) {
	k := touch(t, feet).types("74")
	k.types("12 68\n16 63\n20 6x8y")
	k.want("Not taken: line 3: ")
	if len(k.rows()) != 1 {
		t.Errorf("%q", k.rows())
	}
	k.types("water: Alder Kettle\n12 68\n16 63\n20 58")
	if want := []string{"1 ft: 74 F", "12 ft: 68 F", "16 ft: 63 F", "20 ft: 58 F"}; !reflect.DeepEqual(k.rows(), want) || k.view.Drop.Water != "Alder Kettle" {
		t.Errorf("%q, %q", k.rows(), k.view.Drop.Water)
	}
}

// A question tells whether it can be left and taken back.
func TestQuestionTells(t *testing.T) {
	k := begin(t, "", Options{Touch: true})
	if q := k.view.Question; q.Leaves() || q.Undoes() || q.Line() != "" {
		t.Errorf("%+v", q)
	}
	if k.types("1"); !k.view.Question.Leaves() || k.view.Question.Undoes() || k.view.Question.Line() != "How deep is the water here, in ft?" {
		t.Errorf("%+v", k.view.Question)
	}
	if k.types("30", "74", "1 73.8"); !k.view.Question.Leaves() || !k.view.Question.Undoes() {
		t.Errorf("%+v", k.view.Question)
	}
	var none profile.Optional
	if k.view.Wanted != none && k.view.Question == nil {
		t.Error("a depth is wanted while a question is open")
	}
}
