package markup

import (
	"testing"
)

// Text is never markup, wherever it stands.
func TestEscaped(t *testing.T) {
	hostile := `</p><script>alert("1")</script>&'` + "\x1b[2J\u202e"
	got := Write(El("p", A("title", hostile), hostile, El("br"), []Node{El("b", "x"), nil}))
	want := `<p title="&lt;/p&gt;&lt;script&gt;alert(&#34;1&#34;)&lt;/script&gt;&amp;&#39;�[2J�">` +
		`&lt;/p&gt;&lt;script&gt;alert(&#34;1&#34;)&lt;/script&gt;&amp;&#39;�[2J�<br><b>x</b></p>`
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// A text of several lines keeps them.
func TestLines(t *testing.T) {
	if got, want := Write(Pre(ID("page"), "\na\n  b\n")), "<pre id=\"page\">\n\na\n  b\n</pre>"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// An attribute without a value is only named; elements that hold nothing are not closed.
func TestAttributes(t *testing.T) {
	if got, want := Write(El("input", A("disabled", ""), A("name", "a")), nil), `<input disabled name="a">`; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// Picture stands as it is.
func TestPicture(t *testing.T) {
	if got, want := Write(El("figure", Picture("<svg></svg>"))), "<figure><svg></svg></figure>"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// Exact keeps what a text holds, and is no markup either.
func TestExact(t *testing.T) {
	if got, want := Write(Pre(Exact("a\tb\u200d\u202e</pre><b>&\n"))), "<pre>\na\tb\u200d\u202e&lt;/pre&gt;&lt;b&gt;&amp;\n</pre>"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
