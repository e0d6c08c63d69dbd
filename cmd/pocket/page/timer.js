// The sink timer. Time is counted from the touch that started it, never from ticks.
"use strict";

const tones = { low: [[660, 0, 0.3]], best: [[880, 0, 0.2], [1175, 0.25, 0.2], [1568, 0.5, 0.6]], high: [[440, 0, 0.3], [440, 0.45, 0.3], [440, 0.9, 0.3]] };
const shakes = { low: [250], best: [150, 80, 150, 80, 600], high: [300, 150, 300, 150, 300] };
const says = { low: "the earliest", best: "retrieve now", high: "the latest" };
const marks = [["low", "data-low"], ["best", "data-seconds"], ["high", "data-high"]];
let clock = null; // {button, start, day, stopped, passed, sounding}
let speaker = null, lamp = null;

const goalOf = (b) => [attr(b, "data-low"), attr(b, "data-seconds"), attr(b, "data-high")].join(" ");
const elapsed = () => (clock.stopped ?? performance.now() - clock.start) / 1000;

function fillTimer(b) {
  const [low, best, high] = goalOf(b).split(" ");
  b.replaceChildren(element("span", "0", { class: "clock" }),
    element("span", "of " + best + " seconds" + (low && high ? " (" + low + " to " + high + ")" : ""), { class: "goal" }),
    element("progress", "", { max: high || best, value: 0, "aria-hidden": true }),
    element("span", "Touch to start", { class: "hint" }));
}

function touchTimer(b) {
  if (clock?.button === b && clock.stopped === null) {
    if (elapsed() > 1.5) stopTimer(); // a wet thumb may touch twice
    return;
  }
  endTimer();
  clock = { button: b, start: performance.now(), day: Date.now(), stopped: null, passed: {}, sounding: [] };
  runTimer();
}

function runTimer() {
  byId("go-on")?.remove();
  clock.stopped = null;
  clock.ticks = setInterval(tick, 100);
  clock.button.querySelector(".hint").textContent = "Touch to stop";
  keepLight();
  tick();
  sound();
}

const goOn = () => { if (clock) { runTimer(); clock.button.focus(); } };

function stopTimer() {
  clock.stopped = performance.now() - clock.start;
  clearInterval(clock.ticks);
  hush();
  clock.button.querySelector(".hint").textContent = "Stopped. Touch to start from 0";
  clock.button.after(element("button", "Go on, as if it had not been stopped", { id: "go-on", "data-own": "", "data-go-on": "" }));
  keepLight();
}

function endTimer() {
  if (!clock) return;
  clearInterval(clock.ticks);
  hush();
  byId("go-on")?.remove();
  clock.button.classList.remove("in");
  clock = null;
  keepLight();
}

function touchedBottom() {
  if (!clock) return "";
  if (clock.stopped === null) stopTimer();
  return elapsed().toFixed(0);
}

function tick() {
  const now = elapsed(), b = clock.button;
  b.querySelector(".clock").textContent = Math.floor(now);
  b.querySelector("progress").value = now;
  for (const [mark, data] of marks) {
    if (clock.passed[mark] || !attr(b, data) || now < Number(attr(b, data))) continue;
    clock.passed[mark] = true;
    navigator.vibrate?.(shakes[mark]);
    tell(attr(b, data) + " seconds: " + says[mark]);
  }
  b.classList.toggle("in", !!clock.passed.low && !clock.passed.high);
  if (now > 900) stopTimer(); // forgotten
}

// sound puts the tones still to come on the clock of the loudspeaker, which also runs while
// the page is hidden.
function sound() {
  hush();
  speaker ??= window.AudioContext && new AudioContext();
  if (!speaker) return;
  speaker.resume();
  for (const [mark, data] of marks) {
    const ahead = Number(attr(clock.button, data)) - elapsed();
    if (ahead < 0) continue;
    for (const [pitch, after, long] of tones[mark]) {
      const tone = speaker.createOscillator();
      tone.type = "square";
      tone.frequency.value = pitch;
      tone.connect(speaker.destination);
      tone.start(speaker.currentTime + ahead + after);
      tone.stop(speaker.currentTime + ahead + after + long);
      clock.sounding.push(tone);
    }
  }
}

function hush() {
  for (const tone of clock.sounding.splice(0)) tone.disconnect();
}

// keepLight keeps the screen on while the timer runs or the program asks for it.
async function keepLight() {
  const wanted = () => document.visibilityState === "visible" && (shown.awake || clock?.stopped === null);
  try {
    if (wanted() && !lamp) {
      lamp = navigator.wakeLock?.request("screen");
      const lit = await lamp;
      lit?.addEventListener("release", () => lamp = null);
      if (!wanted()) lit?.release();
    } else if (!wanted() && lamp) (await lamp)?.release();
  } catch {
    lamp = null; // the battery is low, or it may not
  }
}

document.addEventListener("visibilitychange", () => {
  keepLight();
  if (document.visibilityState !== "visible" || clock?.stopped !== null) return;
  const slept = Date.now() - clock.day - (performance.now() - clock.start);
  if (slept > 1500) clock.start -= slept; // the phone was asleep, and its fine clock with it
  sound();
  tick();
});
