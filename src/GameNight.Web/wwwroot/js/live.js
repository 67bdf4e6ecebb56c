// Clocks of the night itself. The server says when each ends and what time it has; the browser writes the digits, so that a
// lost connection stops no clock. What has rung rings until it is tapped, after one touch of the page has allowed sound.
let audio = null;
let lock = null;
let offset = 0;
let saidNow = null;
let lastRing = 0;
let hasBegun = false;

export function begin() {
  if (hasBegun) { return; }
  hasBegun = true;
  addEventListener("pointerdown", allow);
  addEventListener("keydown", allow);
  document.addEventListener("visibilitychange", keepAwake);
  setInterval(tick, 250);
  tick();
}

function allow() {
  audio ??= new AudioContext();
  audio.resume();
  keepAwake();
}

async function keepAwake() {
  if (document.visibilityState !== "visible" || !document.querySelector("[data-live]")) { return; }
  try {
    if (!lock || lock.released) { lock = await navigator.wakeLock.request("screen"); }
    hintDark(false);
  } catch { hintDark(true); }
}

function hintDark(isDark) {
  const hint = document.querySelector(".darkhint");
  if (hint) { hint.hidden = !isDark; }
}

function tick() {
  const live = document.querySelector("[data-live]");
  if (!live) { lock?.release(); lock = null; return; }
  if (live.dataset.now !== saidNow) {
    saidNow = live.dataset.now;
    offset = Date.parse(saidNow) - Date.now();
  }
  const now = Date.now() + offset;
  let rings = false;
  for (const row of live.querySelectorAll("[data-ends]")) {
    const left = Math.round((Date.parse(row.dataset.ends) - now) / 1000);
    row.querySelector(".digits").textContent = (left < 0 ? "+" : "") + digits(Math.abs(left));
    row.classList.toggle("rung", left <= 0);
    rings ||= left <= 0;
  }
  if (rings && audio?.state === "running" && Date.now() - lastRing > 4000) { lastRing = Date.now(); ring(); }
}

function digits(seconds) {
  const two = value => String(value).padStart(2, "0");
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  return h > 0 ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`;
}

function ring() {
  for (const [start, pitch] of [[0, 880], [0.28, 1175], [0.56, 880]]) {
    const at = audio.currentTime + start;
    const tone = new OscillatorNode(audio, { frequency: pitch, type: "triangle" });
    const loudness = new GainNode(audio, { gain: 0 });
    loudness.gain.setValueAtTime(0.0001, at);
    loudness.gain.exponentialRampToValueAtTime(0.4, at + 0.02);
    loudness.gain.exponentialRampToValueAtTime(0.0001, at + 0.25);
    tone.connect(loudness).connect(audio.destination);
    tone.start(at);
    tone.stop(at + 0.26);
  }
}
