package batch

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
)

var usual = Options{ErrC: 0.25, Intervals: true}

// names and problems of the lines, which must be JSON.
func read(t *testing.T, out []string) (names, problems, structures []string) {
	t.Helper()
	for _, line := range out {
		var v struct{ Profile, Problem, Structure *string }
		if err := json.Unmarshal([]byte(line), &v); err != nil || v.Profile == nil || (v.Problem == nil) == (v.Structure == nil) {
			t.Fatalf("%v: the line %s", err, line)
		}
		text := func(s *string) string {
			if s == nil {
				return ""
			}
			return *s
		}
		names, problems, structures = append(names, *v.Profile), append(problems, text(v.Problem)), append(structures, text(v.Structure))
	}
	return names, problems, structures
}

// Each way a CSV may be written: the lines' names, with what is wrong after a "!".
func TestRead(t *testing.T) {
	for _, c := range []struct{ name, csv, want string }{
		{"one", "profile,depth_m,temp_c\na,0,20\na,1,20\na,2,15\n", "a"},
		{"two", "profile,depth_m,temp_c\na,0,20\na,1,20\nb,0,15\n", "a|b"},
		{"a profile comes back", "profile,depth_m,temp_c\na,0,20\nb,1,20\na,0,15\na,2,14\nb,2,20\nc,0,1\n", "a|b|a!t:4: " + comesBack + "|b!t:6: " + comesBack + "|c"},
		{"no name twice", "profile,depth_m,temp_c\n,0,20\na,1,20\n,1,20\n", "!t:2: the profile's name is empty: each row needs it|a|!t:4: the profile's name is empty: each row needs it"},
		{"no end of the last line", "profile,depth_m,temp_c\na,0,20\nb,1,20", "a|b"},
		{"other order, case, columns", "\ufeff x, Temp_C ,OXYGEN_MGL,PROFILE,depth_m,date\r\n?,20,,a,0,2026-07-18\r\n?,20,bad,b,0,\r\n", "a|b"},
		{"blank lines and rows", "\n\nprofile,depth_m,temp_c\n\na,0,20\n,,\n\r\na,1,20\nb,0,20\n", "a|b"},
		{"quotes", "\"profile\",depth_m,temp_c\n\"a, \"\"b\"\"\",\"0\", 20 \n\"c\",0,20\n", `a, "b"|c`},
		{"names verbatim", "profile,depth_m,temp_c\n a ,0,20\na,0,20\nA,0,20\n\x1b[2J\u202eé\u2028,0,20\n", " a |a|A|\x1b[2J\u202eé\u2028"},
		{"oxygen only", "profile,depth_m,temp_c\na,0,20\na,x,\na,1,  \nb,1,20\n", "a|b"},
		{"no rows", "profile,depth_m,temp_c\n", ""},
		{"no temperature", "profile,depth_m,temp_c\na,0,\na,1,\nb,1,20\n", "a!t:2: the profile has no row with a temperature|b"},

		{"no number", "profile,depth_m,temp_c\na,0,20\na,1,warm\na,2,cold\nb,1,20\n", `a!t:3: temp_c "warm" is no usable number|b`},
		{"NaN", "profile,depth_m,temp_c\na,0,NaN\nb,0,20\n", `a!t:2: temp_c "NaN" is no usable number|b`},
		{"Inf", "profile,depth_m,temp_c\na,-Inf,20\nb,0,20\n", `a!t:2: depth_m "-Inf" is no usable number|b`},
		{"too great for a float", "profile,depth_m,temp_c\na,0,1e999\nb,0,20\n", `a!t:2: temp_c "1e999" is no usable number|b`},
		{"hexadecimal", "profile,depth_m,temp_c\na,0,0x1p4\n", `a!t:2: temp_c "0x1p4" is no usable number`},
		{"no depth", "profile,depth_m,temp_c\na,,20\n", `a!t:2: depth_m "" is no usable number`},
		{"decimal comma", "profile,depth_m,temp_c\na,0,\"20,5\"\n", `a!t:2: temp_c "20,5" is no usable number`},
		{"a long value is cut", "profile,depth_m,temp_c\na,0," + strings.Repeat("9x", 99) + "\n", `a!t:2: temp_c "` + strings.Repeat("9x", 20) + `..." is no usable number`},
		{"depth above the water", "profile,depth_m,temp_c\na,0,20\na,-1,20\nb,0,20\n", "a!t:3: a depth of -1 m is outside 0 to 2000 m|b"},
		{"Fahrenheit", "profile,depth_m,temp_c\na,0,20\na,1,73\n", "a!t:3: a temperature of 73 C is outside -5 to 60 C"},
		{"the first problem counts", "profile,depth_m,temp_c\na,0,99\na,1,x\n", `a!t:3: temp_c "x" is no usable number`},
		{"no name", "profile,depth_m,temp_c\na,0,20\n,1,20\nb,0,20\n", "a|!t:3: the profile's name is empty: each row needs it|b"},

		// Rows that cannot be parted. The name in front of the fault is good ...
		{"a cell too many", "profile,depth_m,temp_c\na,0,20\na,1,20,5\nb,0,20\n", "a!t:3: the line has 4 cells, the line of names has 3|b"},
		{"a cell too few, of the next", "profile,depth_m,temp_c\na,0,20\nb,1\nb,0,20\nc,0,20\n", "a|b!t:3: the line has 2 cells, the line of names has 3|c"},
		{"a quote within a cell", "profile,depth_m,temp_c\na,0,20\nb,1\",20\nb,0,20\nc,0,20\n", "a|b!t:3: the line " + notCSV + "|c"},
		{"a quote that stays open ends with its line", "profile,depth_m,temp_c\na,\"0,20\nb,0,20\n", "a!t:2: the line " + notCSV + "|b"},
		{"and at the end of the input", "profile,depth_m,temp_c\nb,0,20\na,\"0,20", "b|a!t:3: the line " + notCSV},
		// ... else both neighbours may lack the row.
		{"a quote in the name", "profile,depth_m,temp_c\na,0,20\nb\",0,20\nb,1,20\nc,0,20\n", unknownPair("a", "b", "t:3: the line "+notCSV) + "|c"},
		{"a quote in the name of the same", "profile,depth_m,temp_c\na,0,20\na\",0,20\na,1,20\nc,0,20\n", "a!t:3: the line " + notCSV + mayBe + "|c"},
		{"a decimal comma before the name", "temp_c,profile,depth_m\n20,a,0\n20,5,b,0\n20,b,1\n20,c,0\n", unknownPair("a", "b", "t:3: the line has 4 cells, the line of names has 3") + "|c"},
		{"a cell too many after the name", "temp_c,profile,depth_m\n20,a,0\n20,a,0,5\n20,b,1\n", "a!t:3: the line has 4 cells, the line of names has 3|b"},
		{"nothing but such a row", "profile,depth_m,temp_c\n\",\n", "!t:2: the line " + notCSV + mayBe},
		{"such a row first", "profile,depth_m,temp_c\n\",\na,0,20\nb,0,20\n", "a!t:2: the line " + notCSV + mayBe + "|b"},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, full := range []int{1, 2, fullColumns} {
				var out bytes.Buffer
				sum, err := run([]Input{text("t", []byte(c.csv))}, &out, usual, full)
				if err != nil {
					t.Fatal(err)
				}
				var got []string
				if out.Len() > 0 {
					names, problems, _ := read(t, lines(out.String()))
					for i := range names {
						if problems[i] != "" {
							names[i] += "!" + problems[i]
						}
					}
					got = names
				}
				if s := strings.Join(got, "|"); s != c.want {
					t.Errorf("full %d:\n got %s\nwant %s", full, s, c.want)
				}
				if n := strings.Count(c.want, "!"); sum.Columns != len(got) || sum.Problems != n || (n > 0) != (sum.Problem != "") {
					t.Errorf("summary %+v", sum)
				}
			}
		})
	}
}

const comesBack = "rows of this profile stood further up too: sort the rows by profile, or use --unsorted"

const mayBe = "; it may be a row of this profile"

func unknownPair(a, b, problem string) string {
	return a + "!" + problem + mayBe + "|" + b + "!" + problem + mayBe
}

// An input that is no CSV of columns is refused, and says what it has.
func TestRefused(t *testing.T) {
	for _, c := range []struct{ name, csv, want string }{
		{"empty", "", "t: is empty: CSV with the columns profile, depth_m and temp_c is wanted"},
		{"blank", "\n\r\n", "t: is empty: CSV with the columns profile, depth_m and temp_c is wanted"},
		{"a name missing", "profile,depth,temp_c\na,0,20\n", `t: has no column named depth_m; its first line names "profile, depth, temp_c"`},
		{"all missing", "a;b;c\n", `t: has no column named profile or depth_m or temp_c; its first line names "a;b;c"`},
		{"twice", "profile,depth_m,temp_c,Depth_M\n", "t: has two columns named depth_m"},
		{"a quote", "profile,depth_m,\"temp_c\n", "t: line 1, of the columns' names, " + notCSV},
		{"no text", strings.Repeat("\x00", MaxLine+1), "t: its first line is longer than 1048576 bytes: is it CSV?"},
	} {
		var out bytes.Buffer
		_, err := Run([]Input{text("t", []byte(c.csv))}, &out, usual)
		var input *InputError
		if !errors.As(err, &input) || err.Error() != c.want || out.Len() > 0 {
			t.Errorf("%s: %v, want %s", c.name, err, c.want)
		}
		if check := Check("t", strings.NewReader(c.csv)); check == nil || check.Error() != c.want {
			t.Errorf("%s: Check says %v", c.name, check)
		}
	}
}

// Each limit from both sides.
func TestCaps(t *testing.T) {
	var b strings.Builder
	b.WriteString("profile,depth_m,temp_c\n")
	for _, n := range []int{MaxRows, MaxRows + 1} {
		for i := range n {
			fmt.Fprintf(&b, "%d rows,%g,%g\n", n, float64(i)/10, 20-float64(i)/1000)
		}
	}
	pad := func(n int) string { // a row of n bytes with its end
		return strings.Repeat("x", n-len(",0,20\n")) + ",0,20\n"
	}
	b.WriteString(pad(MaxLine) + pad(MaxLine+1) + "after,0,20\nlast,0,20\n")
	sum, out := answer(t, b.String(), usual)
	_, problems, structures := read(t, out)
	long := "in:20004: the line is longer than 1048576 bytes" + mayBe
	want := []string{"", "in:20002: more than 10000 rows of one profile", long, long, ""}
	if fmt.Sprint(problems) != fmt.Sprint(want) || sum.Problems != 3 {
		t.Errorf("problems %q\nwant %q", problems, want)
	}
	if structures[0] == "" {
		t.Error("no layers of as many rows as are allowed")
	}
}

// Several inputs are one run: columns of one name in two of them are two.
func TestInputs(t *testing.T) {
	one := text("one", []byte("profile,depth_m,temp_c\na,0,20\n"))
	two := text("two", []byte("temp_c,depth_m,profile\nx,0,a\n20,1,b\n"))
	var out bytes.Buffer
	var many []Input
	for range 50 {
		many = append(many, one, two)
	}
	sum, err := Run(many, &out, usual)
	if err != nil || sum != (Summary{150, 50, "a", `two:2: temp_c "x" is no usable number`}) {
		t.Errorf("%+v, %v", sum, err)
	}
	names, _, _ := read(t, lines(out.String()))
	if strings.Join(names, "") != strings.Repeat("aab", 50) {
		t.Errorf("%q", names)
	}

	// What was found before a bad input is written; what comes after it is not opened.
	never := Input{"never", func() (io.ReadCloser, error) { t.Error("opened"); return nil, io.EOF }}
	out.Reset()
	_, err = Run([]Input{one, text("bad", []byte("x\n")), never}, &out, usual)
	if !errors.As(err, new(*InputError)) || len(lines(out.String())) != 1 {
		t.Errorf("%v, %s", err, out.String())
	}
	broken := errors.New("no such thing")
	if _, err = Run([]Input{{"gone", func() (io.ReadCloser, error) { return nil, broken }}}, &out, usual); !errors.Is(err, broken) {
		t.Errorf("%v", err)
	}
}
