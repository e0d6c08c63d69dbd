package page_test

import "strings"

// sinkTimer: it starts by a touch anywhere on it, tells low, best and high, goes on whatever
// happens to the page, and is not lost by a second touch.
func sinkTimer(v *tab) {
	v.settled()
	v.do(`window.got = []; window.ahead = 0;
		const day = Date.now.bind(Date);
		Date.now = () => day() + ahead * 1000;
		const set = (o, name, value) => Object.defineProperty(o, name, { value, configurable: true, writable: true });
		set(navigator, "vibrate", (pattern) => got.push("shakes " + pattern));
		set(navigator, "wakeLock", { request: async () => { const lock = new EventTarget(); got.push("lit"); lock.release = async () => { got.push("dark"); lock.dispatchEvent(new Event("release")); }; return lock; } });
		window.rung = [];
		set(window, "AudioContext", class { currentTime = 100; resume() { window.woken = true; } });
		set(window, "OscillatorNode", class { constructor(_, { frequency }) { this.frequency = frequency; } connect() {} stop() {} start(at) { rung.push([this.frequency, Math.round(10 * (at - 100)) / 10]); } })`)
	page := `<h1>Timer</h1><button id="sink" class="timer" data-seconds="65" data-low="45" data-high="85"></button><div class="row"><button id="touched" data-timer="touched" data-do="touched">Touched bottom</button></div><p>More</p>`
	v.shows(page, ``)
	digits := `main.querySelector(".clock").textContent`
	v.touch("#touched")
	v.settled()
	v.is("touched before it runs", sent+`.at(-1)`, `["touched","",{}]`)
	v.touch("#sink")
	v.touch("#sink") // a wet thumb
	v.is("runs", `[timer.stopped, got.join(), main.querySelector(".goal").textContent]`, `[null,"lit","of 65 seconds (45 to 85)"]`)
	v.is("the touch wakes the loudspeaker", `[woken, rung]`, `[true,[]]`)
	at := func(seconds, what, want string) {
		v.Helper()
		v.do(`ahead = ` + seconds + `; await new Promise((go) => setTimeout(go, 300))`)
		v.is(what, `[`+digits+`.slice(0, -1), byId("say").textContent, got.slice(1), byId("sink").className]`, want)
	}
	at("30", "early", `["3","",[],"timer"]`)
	at("46", "low", `["4","45 seconds: the earliest",["shakes 250"],"timer in"]`)
	v.shows(page+`<p>A catch</p>`, `title: "Elsewhere"`)
	v.is("it runs on under a patch", `[timer.stopped, main.querySelectorAll("p").length]`, `[null,2]`)
	v.is("not stopped", `byId("go-on").getClientRects().length`, `0`)
	at("66", "best", `["6","65 seconds: retrieve now",["shakes 250","shakes 150,80,150,80,600"],"timer in"]`)
	v.touch("#sink")
	v.is("stopped", `[`+digits+`.slice(0, -1), elapsed() > 66, got.at(-1), byId("go-on").getClientRects().length]`, `["6",true,"dark",1]`)
	v.shows(page+`<p>Two catches</p><p>!</p>`, ``)
	v.touch("#go-on")
	v.is("goes on", `[timer.stopped, got.at(-1), byId("go-on").getClientRects().length, document.activeElement.id]`, `[null,"lit",0,"sink"]`)
	at("86", "high", `["8","85 seconds: the latest",["shakes 250","shakes 150,80,150,80,600","dark","lit","shakes 300,150,300,150,300"],"timer"]`)
	v.is("what rang", `rung`, `[[660,0],[880,0],[1175,0.3],[1568,0.7],[440,0],[440,0.3],[440,0.7]]`)
	v.touch("#touched")
	v.settled()
	v.is("touched bottom", `[Math.abs(`+sent+`.at(-1)[1] - 88) < 9, timer.stopped !== null, document.activeElement.id]`, `[true,true,"touched"]`)
	v.do(`ahead += 3`)
	v.touch("#sink")
	v.is("from 0", `[`+digits+`, timer.stopped, byId("go-on").getClientRects().length]`, `["0",null,0]`)
	v.do(`ahead += 1000; await new Promise((go) => setTimeout(go, 300))`)
	v.is("forgotten", `[timer.stopped !== null, got.at(-1)]`, `[true,"dark"]`)
	v.touch("#sink")
	v.shows(strings.ReplaceAll(page, "65", "70"), ``)
	v.is("another goal", `[timer, main.querySelector(".clock").textContent, main.querySelector(".goal").textContent, byId("sink").className]`, `[null,"0","of 70 seconds (45 to 85)","timer"]`)
	v.shows(strings.NewReplacer("65", "5", "45", "5", "85", "5").Replace(page), ``)
	v.touch("#sink")
	v.do(`rung.length = 0; ahead += 6; await new Promise((go) => setTimeout(go, 300))`)
	v.is("one time, told once", `[main.querySelector(".goal").textContent, byId("say").textContent, rung.map((r) => r[0])]`, `["of 5 seconds","5 seconds: retrieve now",[880,1175,1568]]`)
	v.shows(`<h1>Elsewhere</h1>`, `turn: true`)
	v.is("gone with its screen", `[timer, got.at(-1)]`, `[null,"dark"]`)
	v.shows(`<h1>Elsewhere</h1>`, `awake: true`)
	v.until("kept awake", `got.at(-1) === "lit"`)
	v.shows(`<h1>Elsewhere</h1>`, `awake: false`)
	v.until("not any more", `got.at(-1) === "dark"`)
	v.quiet()
}
