package page_test

import (
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// TestShell is what the page does, with a stand-in for the program.
func TestShell(t *testing.T) {
	ctx := browser(t)
	home := looks(t)["home"]
	for _, c := range []struct {
		name   string
		html   string
		screen screen
		run    func(v *tab)
	}{
		{"before the program runs", shell(t, home, 3*time.Second), phone, early},
		{"what is typed stays", shell(t, home, 0), phone, typed},
		{"any screen becomes any other", shell(t, home, 0), desk, anyScreen},
		{"one at a time", shell(t, home, 0), phone, oneAtATime},
		{"forms, buttons and files", shell(t, home, 0), phone, sends},
		{"the sink timer", shell(t, home, 0), phone, sinkTimer},
		{"copied, shared, saved", shell(t, home, 0), phone, leaves},
		{"hostile markup", shell(t, home, 0), phone, hostile},
		{"hostile markup without the policy", strings.Replace(shell(t, home, 0), `http-equiv="Content-Security-Policy"`, `name="nothing"`, 1), phone, hurt},
		{"back", shell(t, home, 0), phone, back},
		{"by keyboard alone", shell(t, home, 0), desk, keyboard},
		{"the program ends", shell(t, home, 0), phone, ends},
		{"texts outlive loading again", shell(t, home, 0), phone, loadsAgain},
		{"a program that cannot be unpacked", put(t, `class Go {} const unpack = () => { throw new Error("damaged"); }; globalThis.pocketFolder = { ready: {} };`+read(t, "worker.js"), "AAAA"), phone, func(v *tab) { fails(v, "did not start", "damaged") }},
		{"no WebAssembly", put(t, `delete globalThis.WebAssembly; globalThis.pocketFolder = { ready: {} };`+read(t, "worker.js"), "AAAA"), phone, func(v *tab) { fails(v, "too old", "") }},
		{"a worker that is no script", put(t, `(`, "AAAA"), phone, func(v *tab) { fails(v, "did not start", "SyntaxError") }},
	} {
		t.Run(c.name, func(t *testing.T) { c.run(open(t, ctx, c.html, c.screen)) })
	}
}

// early: what is touched and typed before the program runs is done afterwards, once each.
func early(v *tab) {
	v.touch("#page")
	v.types("0 78\n5 77")
	v.touch("#drop")
	v.touch("#drop")
	v.touch("#paste button")
	v.is("still starting", `[given.do, waiting.length, !!byId("say").textContent]`, `["start",2,true]`)
	v.settled()
	v.is("done afterwards", sent, `[["drop","",{}],["paste","",{"page":"0 78\n5 77"}]]`)
	v.is("the text", `byId("page").value`, `"0 78\n5 77"`)
	v.is("no longer starting", `byId("say").textContent`, `""`)
	v.quiet()
}

const taking = `<h1 id="what">Reading 3</h1><p class="depth">12 ft</p>
<form data-do="type"><label for="value">F</label><input id="value" name="value" data-once></form>
<details><summary>More</summary><label><input type="checkbox" name="tick">tick</label></details>
<ol><li id="r0"><button data-do="correct" data-value="0">78</button></li></ol><textarea id="note">as it was</textarea>
<select name="unit"><option value="a">a</option><option value="b">b</option></select>`

// typed: what stays the same on the screen keeps what was typed, ticked and opened.
func typed(v *tab) {
	v.shows(taking, ``)
	v.do(`const f = byId("value"); f.focus(); f.value = "64.25"; f.setSelectionRange(2, 3); f.mine = main.querySelector("li button").mine = true;
		main.querySelector("details").open = true; main.querySelector("[name=tick]").checked = true; byId("note").value = "as typed"; main.querySelector("select").value = "b"`)
	more := `<p class="warning">Warm</p>` + strings.NewReplacer("12 ft", "14 ft", "<ol>", `<ol class="column"><li id="r1"><button data-do="correct" data-value="1">77</button></li>`).Replace(taking)
	v.shows(more, `say: "77 at 12 ft noted"`)
	state := `[document.activeElement.id, f.value, f.selectionStart, f.selectionEnd, !!f.mine, main.querySelector("details").open, main.querySelector("[name=tick]").checked,
		byId("note").value, main.querySelector("select").value, main.querySelector(".depth").textContent, main.querySelectorAll("li").length, byId("say").textContent]`
	v.do(`window.f = byId("value")`)
	v.is("after a reading", state, `["value","64.25",2,3,true,true,true,"as typed","b","14 ft",2,"77 at 12 ft noted"]`)
	v.is("what has a value of its own", `main.querySelector("[data-value='0']").mine`, `true`)
	v.shows(strings.NewReplacer(`name="value"`, `name="value" value="70"`, "as it was", "as it is", `name="tick"`, `name="tick" checked`, `value="a"`, `value="a" selected`).Replace(more), ``)
	v.is("after the program itself changed the fields", `[f.value, byId("note").value, main.querySelector("[name=tick]").checked, main.querySelector("select").value, byId("say").textContent]`, `["70","as it is",true,"a",""]`)
	v.do(`f.value = "71"; scrollTo(0, 40)`)
	v.shows(`<h1 id="what">Another</h1>`, `turn: true`)
	v.is("another screen", `[main.innerHTML, document.activeElement.id, scrollY]`, `["<h1 id=\"what\" tabindex=\"-1\">Another</h1>","what",0]`)
	v.shows(taking, `turn: true, focus: "value", title: "Taking"`)
	v.is("the focus and the title", `[document.activeElement.id, document.title, byId("value").value]`, `["value","Taking",""]`)
	v.shows(`<h1 id="what">Gone</h1><button id="b">b</button>`, ``)
	v.is("what had the focus is gone", `document.activeElement.id`, `"what"`)
	v.quiet()
}

// anyScreen: whatever was there before, the document is what the program shows.
func anyScreen(v *tab) {
	v.is("screens that differ", `(() => {
		let seed = 16;
		const dice = (n) => (seed = (seed * 1103515245 + 12345) % 2147483648, Math.floor(seed / 65536) % n);
		const tree = (deep) => {
			let out = "";
			for (let i = dice(5); i > 0; i--) {
				const tag = ["p", "div", "ul", "section", "button", "b"][dice(6)];
				const id = dice(3) ? "" : ' id="' + tag + dice(1e9) % 6 + deep + '"';
				const more = [' class="a"', ' class="b"', ' data-do="x" data-value="' + dice(4) + '"', "", ' title="t' + dice(3) + '"'][dice(5)];
				const kids = deep && dice(2) && !["p", "button"].includes(tag) ? tree(deep - 1) : dice(2) ? "text " + dice(5) : "";
				if (id && out.includes(id)) continue; // an id stands once
				out += "<" + tag + id + more + ">" + kids + "</" + tag + ">" + (dice(6) ? "" : "loose " + dice(3));
			}
			return out;
		};
		const wrong = [];
		for (let i = 0; i < 3000; i++) {
			const had = main.innerHTML, html = tree(3);
			const focus = main.querySelectorAll("button")[0];
			focus?.focus();
			patch(html);
			if (main.innerHTML !== html) wrong.push([had, html, main.innerHTML]);
		}
		return wrong.slice(0, 1);
	})()`, `[]`)
	v.quiet()
}

// oneAtATime: what is touched while the program works is done after it, and that it works is
// said when it takes long.
func oneAtATime(v *tab) {
	v.shows(`<h1>One</h1><button id="a" data-do="slow" data-value="1500">a</button><button id="b" data-do="b">b</button>`, ``)
	v.touch("#a")
	v.touch("#b")
	v.touch("#b")
	v.is("waiting", `[given.do, waiting.length]`, `["slow",2]`)
	v.until("what follows by itself is shown, and is no answer", `document.title === "Meanwhile" && given.do === "slow" && byId("say").textContent !== "aside"`)
	v.until("it is said", `!byId("busy").hidden && main.getAttribute("aria-busy") === "true"`)
	v.settled()
	v.is("done", sent, `[["slow","1500",{}],["b","",{}],["b","",{}]]`)
	v.is("no longer said", `byId("busy").hidden && main.getAttribute("aria-busy")`, `"false"`)
	v.quiet()
}

// sends: what each kind of markup sends.
func sends(v *tab) {
	v.shows(`<h1>Forms</h1><button id="below" data-do="below" data-value="1">below</button><form id="f" data-do="type"><input id="value" name="value" data-once><input id="kept" name="kept" value="k"><input type="checkbox" name="tick" checked><button id="go">go</button></form>
		<form id="none"><button id="nothing">no</button></form>
		<input id="file" type="file" multiple data-file="import"><label><input id="tick" type="checkbox" data-do="tick">t</label>`, ``)
	v.touch("#value")
	v.types("64")
	v.touch("#below")
	v.is("the keyboard of the phone stays", `document.activeElement.id`, `"value"`)
	v.touch("#go")
	v.settled()
	v.is("emptied, and kept", `[byId("value").value, byId("kept").value, document.activeElement.id]`, `["","k","value"]`)
	v.types("65")
	v.press("Enter")
	v.touch("#nothing")
	v.do(`byId("tick").click();
		const files = new DataTransfer(); files.items.add(new File(["0 78"], "a.txt")); files.items.add(new File(["1 °"], "b.txt")); files.items.add(new File([new Uint8Array(9e6)], "big"));
		byId("file").files = files.files; byId("file").dispatchEvent(new Event("change", { bubbles: true }))`)
	v.until("all is sent", `shown.events?.length === 6`)
	v.is("sent", sent, `[["below","1",{}],["type","",{"value":"64","kept":"k","tick":"on"}],["type","",{"value":"65","kept":"k","tick":"on"}],`+
		`["tick","",{"checked":"true"}],["import","0 78",{"name":"a.txt"}],["import","1 °",{"name":"b.txt"}]]`)
	v.is("the file can be chosen again", `byId("file").files.length`, `0`)
	v.do(`send({ do: "lock", value: "", fields: {} })`)
	v.settled()
	v.is("the lock", `byId("say").textContent`, `"locked"`)
	v.do(`send({ do: "lock", value: "", fields: {} })`)
	v.settled()
	v.is("the lock, held already", `byId("say").textContent`, `"in use"`)
	v.quiet()
}

// back: the way back of the phone leads through the screens, and leaves the page only from
// the first.
func back(v *tab) {
	v.shows(`<h1>One deeper</h1><button id="b" data-do="b">b</button>`, `depth: 1`)
	v.touch("#b")
	v.shows(`<h1>Two deeper</h1>`, `depth: 2`)
	v.is("the steps", `history.state.depth`, `2`)
	v.do(`send({ do: "slow", value: "300", fields: {} }); history.back(); await new Promise((go) => addEventListener("popstate", go, { once: true })); history.back()`)
	v.until("both are sent", `shown.events?.length === 4`)
	v.is("sent", sent, `[["b","",{}],["slow","300",{}],["back","",{}],["back","",{}]]`)
	v.shows(`<h1>First</h1>`, `depth: 0`)
	v.until("the first step", `(history.state?.depth ?? 0) === 0`)
	v.shows(`<h1>Three deeper</h1>`, `depth: 3`)
	v.shows(`<h1>First</h1>`, `depth: 0`)
	v.until("the program itself went to the first", `(history.state?.depth ?? 0) === 0`)
	v.do(`history.forward(); await new Promise((go) => addEventListener("popstate", go, { once: true }))`)
	v.until("nothing leads forward", `(history.state?.depth ?? 0) === 0`)
	v.is("nothing more was sent", `shown.events.length`, `4`)
	v.shows(`<h1>One deeper</h1>`, `depth: 1`)
	v.do(`const was = shown; show({ ...was, main: "<h1>First</h1>", depth: 0 }); show({ ...was, depth: 1 }); await new Promise((go) => addEventListener("popstate", go, { once: true }))`)
	v.until("a step that was taken late leads nowhere", `history.state?.depth === 1 && !going && !given && !waiting.length`)
	v.is("nothing was sent for it", `shown.events.length`, `4`)
	v.quiet()
}

// keyboard: the page can be used without touching it.
func keyboard(v *tab) {
	v.settled()
	v.press("Tab")
	v.is("first", `document.activeElement.id`, `"drop"`)
	v.press("Enter")
	v.press("Tab")
	v.types("0 78")
	v.press("Enter")
	v.types("5 77")
	v.press("Tab")
	v.press(" ")
	v.settled()
	v.is("sent", sent, `[["drop","",{}],["paste","",{"page":"0 78\n5 77"}]]`)
	v.shows(`<h1>Timer</h1><button class="timer" data-low="7" data-seconds="9" data-high="12"></button>`, `turn: true`)
	v.is("a screen reader begins at its heading", `document.activeElement.nodeName`, `"H1"`)
	v.press("Tab")
	v.press(" ")
	v.until("it runs", `timer.stopped === null`)
	v.is("it is seen what has the focus", `getComputedStyle(document.activeElement).outlineStyle`, `"solid"`)
	v.quiet()
}

// ends: a program that has ended says so; what was typed and not kept stands in its field.
func ends(v *tab) {
	v.shows(taking, ``)
	v.touch("#value")
	v.types("64")
	v.do(`send({ do: "slow", value: "200", fields: {} }); send({ do: "throw", value: "", fields: {} }); send({ do: "slow", value: "200", fields: {} })`)
	v.press("Enter")
	fails(v, "has stopped", "broken")
	v.is("the field", `byId("value").value`, `"64"`)
	v.do(`send({ do: "more", value: "", fields: {} })`)
	v.is("said once", `byId("trouble").querySelectorAll("button").length`, `1`)
}

// loadsAgain: after a fault a text is in its field again, on the first screen and on a later
// one, but only where the field says what it said before; a number is not.
func loadsAgain(v *tab) {
	again := func() {
		v.do(`window.old = true; fail("ended")`)
		v.touch("#trouble button")
		for range 200 {
			if old, err := chromedp.Run(v.ctx, chromedp.Evaluate[bool](`!!window.old`)); err == nil && !old {
				break
			}
			time.Sleep(20 * time.Millisecond)
		}
		v.settled()
	}
	v.do(`byId("page").value = "0 78"`)
	again()
	v.is("the first screen", `byId("page").value`, `"0 78"`)
	v.shows(taking+`<textarea id="line"></textarea><textarea id="other">one</textarea>`, ``)
	v.do(`byId("line").value = "wind: light S"; byId("note").value = "as it is now"; byId("other").value = "two"; byId("value").value = "64"`)
	again()
	v.shows(taking+`<textarea id="line"></textarea><textarea id="other">another</textarea>`, ``)
	v.is("the texts", `["line", "note", "other", "value"].map((id) => byId(id).value)`, `["wind: light S","as it is now","another",""]`)
	v.shows(`<h1>Other</h1>`, ``)
	v.shows(taking+`<textarea id="line"></textarea>`, ``)
	v.is("once", `byId("line").value`, `""`)
}

// fails: why the page cannot go on, what to do, and nothing that was typed is lost.
func fails(v *tab, words, detail string) {
	v.until("it is said", `!!byId("trouble").textContent`)
	if text := value[string](v, `byId("trouble").innerText`); !strings.Contains(text, words) || !strings.Contains(text, detail) || !strings.Contains(text, "oad again") && !strings.Contains(text, "up-to-date") {
		v.Errorf("said: %s", text)
	}
	v.is("it no longer works on it", `[byId("busy").hidden, byId("say").textContent]`, `[true,""]`)
}
