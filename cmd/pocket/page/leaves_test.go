package page_test

// leaves: texts are copied, shared and saved, and where the browser cannot, there is another
// way.
func leaves(v *tab) {
	v.shows(`<h1>Leave</h1><pre id="text" hidden>a
&lt;b&gt; é</pre><div class="row"><button id="copy" data-copy="text">copy</button><button id="share" data-share="text" data-name="drop.txt">share</button><button id="message" data-share="text">message</button><button id="save" data-save="text" data-name="drop.txt">save</button></div>`, ``)
	v.do(`window.got = [];
		const set = (o, name, value) => Object.defineProperty(o, name, { value, configurable: true, writable: true });
		set(window, "set", set);
		set(navigator, "clipboard", { writeText: async (text) => { got.push("copied " + text); } });
		set(navigator, "canShare", ({ files, text }) => files ? files.length === 1 : !!text);
		set(navigator, "share", async ({ files, text }) => { got.push(text ? "sent " + text : "shared " + files[0].name + " " + await files[0].text()); });
		URL.createObjectURL = (blob) => { blob.text().then((text) => got.push("saved " + text)); return "blob:nothing"; };
		HTMLAnchorElement.prototype.click = function () { got.push(this.download + " " + this.protocol); }`)
	check := func(what, button, want string) {
		v.Helper()
		v.touch(button)
		if got := value[string](v, `new Promise((go) => setTimeout(go, 150)).then(() => JSON.stringify([got.splice(0), byId("say").textContent.trim()]))`); got != want {
			v.Errorf("%s: %s, want %s", what, got, want)
		}
	}
	check("copied", "#copy", `[["copied a\n<b> é"],"Copied"]`)
	check("shared", "#share", `[["shared drop.txt a\n<b> é"],"Copied"]`)
	check("sent", "#message", `[["sent a\n<b> é"],"Copied"]`)
	check("saved", "#save", `[["drop.txt blob:","saved a\n<b> é"],"Saved as drop.txt"]`)
	v.do(`set(navigator, "share", async () => { throw new DOMException("no", "AbortError"); })`)
	check("not shared after all", "#share", `[[],"Saved as drop.txt"]`)
	v.do(`set(navigator, "share", async () => { throw new DOMException("no", "NotAllowedError"); })`)
	check("sharing refused", "#share", `[["drop.txt blob:","saved a\n<b> é"],"Saved as drop.txt"]`)
	v.do(`set(navigator, "canShare", undefined)`)
	check("no share sheet", "#share", `[["drop.txt blob:","saved a\n<b> é"],"Saved as drop.txt"]`)
	check("no share sheet for a message", "#message", `[["copied a\n<b> é"],"Copied"]`)
	v.do(`set(navigator, "clipboard", undefined); document.execCommand = (what) => { got.push(what + " " + getSelection()); return true; }`)
	check("copied the old way", "#copy", `[["copy a\n<b> é"],"Copied"]`)
	v.is("hidden as before", `byId("text").hidden`, `true`)
	v.do(`document.execCommand = () => false`)
	check("not copied", "#copy", `[[],"The text is marked: copy it from there."]`)
	v.is("marked", `[byId("text").hidden, getSelection().toString()]`, `[false,"a\n<b> é"]`)
	v.shows(`<h1>Leave</h1>`, ``)
	v.quiet()
}

// hostile: markup that should never have come this far does nothing.
func hostile(v *tab) {
	v.shows(hostileMarkup, `turn: true, focus: "what"`)
	v.do(`byId("what").click(); byId("a").click(); await new Promise((go) => setTimeout(go, 500))`)
	v.touch("#b")
	v.touch("#c")
	v.settled()
	v.is("hurt", `window.hurt`, `undefined`)
	v.is("still there", `[location.protocol, main.querySelectorAll("script, iframe, meta, style, link, base, object").length, getComputedStyle(byId("what")).display, getComputedStyle(byId("styled")).display]`, `["file:",0,"block","block"]`)
	v.is("its button still works", sent, `[["c","",{}]]`)
	for _, r := range v.away() {
		v.Errorf("asked for %s", r)
	}
}

const hostileMarkup = `<h1 id="what" onclick="window.hurt = 1" onfocus="window.hurt = 2">Hostile</h1><script>window.hurt = 3</script><img src="x:" onerror="window.hurt = 4"><img src="https://elsewhere.invalid/x.png">
		<svg onload="window.hurt = 5"><script>window.hurt = 6</script></svg><iframe srcdoc="<script>parent.hurt = 7</script>"></iframe><iframe src="https://elsewhere.invalid/"></iframe>
		<meta http-equiv="refresh" content="0;url=https://elsewhere.invalid/"><style>h1 { display: none }</style><p id="styled" style="display: none">styled</p>
		<a id="a" href="javascript:window.hurt = 8">a</a><form id="f" action="https://elsewhere.invalid/"><input name="x"><button id="b">b</button></form>
		<button id="c" onclick="window.hurt = 9" data-do="c">c</button><object data="https://elsewhere.invalid/"></object><link rel="stylesheet" href="https://elsewhere.invalid/x.css">
		<base href="https://elsewhere.invalid/"><details ontoggle="window.hurt = 10" open><summary>d</summary></details><audio src="https://elsewhere.invalid/x" autoplay></audio>`

// hurt: what the looking is worth: without the policy the same markup does harm.
func hurt(v *tab) {
	v.shows(hostileMarkup, `turn: true, focus: "what"`)
	v.until("the harm", `window.hurt > 0`)
}
