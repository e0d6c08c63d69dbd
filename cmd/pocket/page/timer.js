// The sink timer. Time is told by the clock of the day, which goes on while the phone sleeps,
// from the touch that started it, never by ticks.
"use strict";

// What is told when so many seconds have passed: the attribute that has them, tones, how the
// phone shakes, and words.
const marks = [
  { at: "data-low", tones: [660], shakes: [250], says: "the earliest" },
  { at: "data-seconds", tones: [880, 1175, 1568], shakes: [150, 80, 150, 80, 600], says: "retrieve now" },
  { at: "data-high", tones: [440, 440, 440], shakes: [300, 150, 300, 150, 300], says: "the latest" },
];
let timer = null; // the one that was started: {button, start, stopped, passed, ticks}
let speaker = null, lamp = null;

const goalOf = (b) => marks.map((m) => attr(b, m.at)).join();
const elapsed = () => ((timer.stopped ?? Date.now()) - timer.start) / 1000;

// fillTimer puts on the timer of a screen what it shows. One that was started goes on, but
// not to another goal.
function fillTimer(screen) {
  const b = screen.querySelector(".timer");
  if (timer && (!b || goalOf(b) !== goalOf(timer.button))) {
    stopTimer();
    timer = null;
  }
  if (!b) return;
  b.after(element("button", "Stopped by mistake: go on", { id: "go-on", type: "button" }));
  if (timer) return b.replaceWith(timer.button.cloneNode(true));
  const [low, best, high] = marks.map((m) => attr(b, m.at));
  b.append(element("span", "0", { class: "clock" }),
    element("span", "of " + best + " seconds" + (low === high ? "" : " (" + low + " to " + high + ")"), { class: "goal" }),
    element("progress", "", { max: high, value: 0, "aria-hidden": true }),
    element("span", "Touch to start", { class: "hint" }));
}

function touchTimer(b) {
  if (timer?.stopped !== null) {
    timer = { button: b, start: Date.now(), passed: [] };
    runTimer();
  } else if (elapsed() > 1.5) stopTimer(); // a wet thumb may touch twice
}

function runTimer() {
  timer.stopped = null;
  timer.ticks = setInterval(tick, 100);
  beep([]); // only a touch may wake the loudspeaker
  tick();
  keepLight();
  timer.button.focus();
}

function stopTimer() {
  timer.stopped = Date.now();
  clearInterval(timer.ticks);
  tick();
  keepLight();
}

function touchedBottom() {
  if (timer?.stopped === null) stopTimer();
  return timer ? elapsed().toFixed(0) : "";
}

function tick() {
  const now = elapsed(), b = timer.button, runs = timer.stopped === null;
  b.querySelector(".clock").textContent = Math.floor(now);
  b.querySelector("progress").value = now;
  b.querySelector(".hint").textContent = runs ? "Touch to stop" : "Stopped. Touch to start from 0";
  for (const m of marks) {
    if (!runs || timer.passed.includes(m) || now < attr(b, m.at)) continue;
    timer.passed.push(m);
    if (m !== marks[1] && attr(b, m.at) === attr(b, "data-seconds")) continue; // told by the one in the middle
    beep(m.tones);
    navigator.vibrate?.(m.shakes);
    tell(attr(b, m.at) + " seconds: " + m.says);
  }
  b.classList.toggle("in", timer.passed.includes(marks[0]) && !timer.passed.includes(marks[2]));
  b.classList.toggle("stopped", !runs);
  if (runs && now > 900) stopTimer(); // forgotten
}

function beep(tones) {
  speaker ??= new AudioContext();
  speaker.resume();
  tones.forEach((frequency, i) => {
    const tone = new OscillatorNode(speaker, { type: "square", frequency }), at = speaker.currentTime + i / 3;
    tone.connect(speaker.destination);
    tone.start(at);
    tone.stop(at + 0.3);
  });
}

// keepLight keeps the screen on while the timer runs or the program asks for it; a page that
// is hidden loses the light by itself.
function keepLight() {
  if (document.visibilityState === "visible" && (shown.awake || timer?.stopped === null)) {
    lamp ??= navigator.wakeLock?.request("screen").catch(() => {}); // the battery is low, or it may not
  } else {
    lamp?.then((lit) => lit?.release());
    lamp = null;
  }
}

document.addEventListener("visibilitychange", keepLight);
