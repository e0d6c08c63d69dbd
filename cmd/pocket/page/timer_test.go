package page_test

// sinkTimer: it starts by a touch anywhere on it, tells low, best and high, goes on whatever
// happens to the page, and is not lost by a second touch.
func sinkTimer(v *tab) {
	v.settled()
	v.do(`window.got = []; window.ahead = 0; window.asleep = 0;
		const now = performance.now.bind(performance), day = Date.now.bind(Date);
		performance.now = () => now() + ahead * 1000;
		Date.now = () => day() + (ahead + asleep) * 1000;
		const set = (o, name, value) => Object.defineProperty(o, name, { value, configurable: true, writable: true });
		set(navigator, "vibrate", (pattern) => got.push("shakes " + pattern));
		set(navigator, "wakeLock", { request: async () => { const lock = new EventTarget(); got.push("lit"); lock.release = async () => { got.push("dark"); lock.dispatchEvent(new Event("release")); }; return lock; } });
		window.ringing = [];
		set(window, "AudioContext", class { currentTime = 100; destination = {}; resume() {} createOscillator() {
			const tone = { frequency: {}, connect() {}, start: (at) => tone.at = at - 100, stop() {}, disconnect: () => ringing.splice(ringing.indexOf(tone), 1) };
			ringing.push(tone); return tone; } })`)
	page := `<h1>Timer</h1><button id="sink" class="timer" data-seconds="65" data-low="45" data-high="85"></button><div class="row"><button id="touched" data-timer="touched" data-do="touched">Touched bottom</button></div><p>More</p>`
	v.shows(page, ``)
	digits := `main.querySelector(".clock").textContent`
	v.touch("#touched")
	v.settled()
	v.is("touched before it runs", sent+`.at(-1)`, `["touched","",{}]`)
	v.touch("#sink")
	v.touch("#sink") // a wet thumb
	v.is("runs", `[clock.stopped, got.join(), main.querySelector(".goal").textContent]`, `[null,"lit","of 65 seconds (45 to 85)"]`)
	v.is("the ringing to come", `ringing.map((t) => [Math.round(t.at * 10) / 10, t.frequency.value])`,
		`[[45,660],[65,880],[65.2,1175],[65.5,1568],[85,440],[85.4,440],[85.9,440]]`)
	at := func(seconds, what, want string) {
		v.Helper()
		v.do(`ahead = ` + seconds + `; await new Promise((go) => setTimeout(go, 300))`)
		v.is(what, `[`+digits+`.slice(0, -1), byId("say").textContent, got.slice(1), byId("sink").className]`, want)
	}
	at("30", "early", `["3","",[],"timer"]`)
	at("46", "low", `["4","45 seconds: the earliest",["shakes 250"],"timer in"]`)
	v.shows(page+`<p>A catch</p>`, `title: "Elsewhere"`)
	v.is("it runs on under a patch", `[clock.stopped, main.querySelectorAll("p").length]`, `[null,2]`)
	at("66", "best", `["6","65 seconds: retrieve now",["shakes 250","shakes 150,80,150,80,600"],"timer in"]`)
	v.touch("#sink")
	v.is("stopped", `[`+digits+`.slice(0, -1), clock.stopped > 66000, got.at(-1), ringing.length, byId("go-on").textContent]`, `["6",true,"dark",0,"Go on, as if it had not been stopped"]`)
	v.shows(page+`<p>Two catches</p><p>!</p>`, ``)
	v.touch("#go-on")
	v.is("goes on", `[clock.stopped, got.at(-1), !!byId("go-on"), document.activeElement.id, ringing.length]`, `[null,"lit",false,"sink",3]`)
	at("86", "high", `["8","85 seconds: the latest",["shakes 250","shakes 150,80,150,80,600","dark","lit","shakes 300,150,300,150,300"],"timer"]`)
	v.do(`asleep = 20; document.dispatchEvent(new Event("visibilitychange"))`)
	v.is("the phone was asleep", digits+`.slice(0, -1)`, `"10"`)
	v.touch("#touched")
	v.settled()
	v.is("touched bottom", `[Math.abs(`+sent+`.at(-1)[1] - 108) < 9, clock.stopped !== null, document.activeElement.id]`, `[true,true,"touched"]`)
	v.do(`ahead += 3`)
	v.touch("#sink")
	v.is("from 0", `[`+digits+`, clock.stopped, !!byId("go-on")]`, `["0",null,false]`)
	v.do(`ahead += 1000; await new Promise((go) => setTimeout(go, 300))`)
	v.is("forgotten", `[clock.stopped !== null, got.at(-1)]`, `[true,"dark"]`)
	v.touch("#sink")
	v.shows(`<h1>Elsewhere</h1>`, `turn: true`)
	v.is("gone with its screen", `[clock, got.at(-1), ringing.length]`, `[null,"dark",0]`)
	v.shows(`<h1>Elsewhere</h1>`, `awake: true`)
	v.until("kept awake", `got.at(-1) === "lit"`)
	v.shows(`<h1>Elsewhere</h1>`, `awake: false`)
	v.until("not any more", `got.at(-1) === "dark"`)
	v.quiet()
}
