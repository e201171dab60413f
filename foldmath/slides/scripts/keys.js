// Listening: keys, a presenter's remote, taps, swipes, the slider and the buttons.

const SPEEDS = [0.5, 1, 2];
const FAR = 8; // A pointer that goes farther, in pixels, drags; else it taps.
const SWIPE = 60; // And one that goes this far across, off the paper, swipes.

const FIXED_KEYS = {
  ArrowRight: "next", ArrowDown: "next", PageDown: "next", " ": "next", Enter: "next",
  ArrowLeft: "back", ArrowUp: "back", PageUp: "back", Backspace: "back",
};

// What each button does, by its name; its key is the first letter of its own word.
const TOOLS = {
  list: () => {
    openDialog("slide-list");
    find("slide-list").querySelector("[aria-current]").focus();
  },
  notes: openNotes,
  minutes: () => openDialog("countdown"),
  draw: drawOrNot,
  wipe: () => act("wipe"),
  hide: () => act("hide"),
  speed: () => act("speed"),
  enlarge: fillScreen,
};
const letters = new Map(Object.keys(TOOLS).map((name) => [find(name).dataset.key, name]));
const jump = { digits: "" };

function nextSpeed() {
  now.speed = SPEEDS[(SPEEDS.indexOf(now.speed) + 1) % SPEEDS.length];
  keep(localStorage, named("speed"), String(now.speed));
  changed();
}

// Written only where it changed: while paper moves this is asked for every frame, and words are laid out anew.
function showSpeed() {
  const [word, face] = [words.speeds[SPEEDS.indexOf(now.speed)], find("speed").querySelector("span")];
  if (face.textContent !== word) face.textContent = word;
}

function openDialog(id) {
  find(id).showModal();
}

function fillScreen() {
  if (document.fullscreenElement) document.exitFullscreen();
  else document.documentElement.requestFullscreen?.().catch(() => {});
}

function cover(on) {
  find("cover").hidden = !on;
  if (on) find("cover").focus();
  else here().querySelector("h1, h2").focus({ preventScroll: true });
  changed();
}

// Whether a key belongs to what has the focus; a remote's keys never do.
function ownKeys(target, key) {
  if (target.id === "motion") return /^(Arrow|Home|End)/.test(key);
  return target.localName === "button" && (key === " " || key === "Enter");
}

// Figures gather to a number, which Enter goes to and Escape forgets.
function onFigure(key) {
  if (/^\d$/.test(key)) jump.digits = (jump.digits + key).slice(-3);
  else if (key === "Enter" && jump.digits) act("goTo", Number(jump.digits) - 1, 0);
  const taken = /^\d$/.test(key) || (key === "Enter" && jump.digits !== "") || (key === "Escape" && jump.digits !== "");
  if (!/^\d$/.test(key)) jump.digits = "";
  find("jump").hidden = !jump.digits;
  find("jump").textContent = jump.digits && said(words.jump, { number: jump.digits });
  return taken;
}

function onKey(event) {
  const { key, target } = event;
  if (event.ctrlKey || event.altKey || event.metaKey) return;
  const open = document.querySelector("dialog[open]");
  const remote = key === "PageUp" || key === "PageDown";
  if (open && !remote) return;
  if (!find("cover").hidden && !isNotes) {
    event.preventDefault();
    if (!event.repeat) cover(false);
    return;
  }
  if (!remote && ownKeys(target, key)) return;
  if (onFigure(key)) {
    event.preventDefault();
    return;
  }
  if (onPlain(key, event.repeat)) {
    event.preventDefault();
    open?.close();
  }
}

// Does what a key says, once however long it is held down; gives whether it says anything.
function onPlain(key, repeated) {
  const tool = key.length === 1 ? letters.get(key.toLocaleLowerCase()) : undefined;
  const edges = { Home: [0, 0], End: [scenes.length - 1, lastOf(scenes.at(-1))] };
  if (!Object.hasOwn(FIXED_KEYS, key) && !edges[key] && !tool) return false;
  if (repeated) return true;
  if (tool) TOOLS[tool]();
  else if (edges[key]) act("goTo", ...edges[key]);
  else act(FIXED_KEYS[key]);
  return true;
}

const drag = { x: 0, y: 0, time: 0, paper: false, down: false, moved: false };

function onPointerDown(event) {
  Object.assign(drag, { x: event.clientX, y: event.clientY, time: now.time, moved: false, down: true });
  drag.paper = Boolean(event.target.closest(".lying, .gather")) && stagesHere() > 0;
}

function onPointerMove(event) {
  const far = event.clientX - drag.x;
  if (!drag.down || !(event.buttons & 1) || (!drag.moved && Math.abs(far) < FAR)) return;
  drag.moved = true;
  if (!drag.paper) return;
  const share = Math.abs(far) / (event.currentTarget.clientWidth * 0.4);
  const wanted = drag.time >= stagesHere() ? drag.time - share : drag.time + share;
  act("scrub", Math.min(stagesHere(), Math.max(0, wanted)));
}

function onTap(event) {
  const { moved: dragged, paper } = drag;
  const far = event.clientX - drag.x;
  drag.down = drag.moved = drag.paper = false;
  if (String(getSelection())) return;
  if (dragged) {
    if (!paper && Math.abs(far) > SWIPE) act(far < 0 ? "next" : "back");
    return;
  }
  const box = event.currentTarget.getBoundingClientRect();
  act(event.clientX - box.left < box.width / 4 ? "back" : "next");
}

// A finger's drag ends without a click, but a swipe must count.
function onTouchEnd(event) {
  if (event.pointerType !== "mouse" && drag.moved) onTap(event);
}

function listen() {
  document.addEventListener("keydown", onKey);
  room.addEventListener("pointerdown", onPointerDown);
  room.addEventListener("pointermove", onPointerMove);
  room.addEventListener("pointerup", onTouchEnd);
  room.addEventListener("click", (event) => pen.on || onTap(event));
  window.addEventListener("resize", fit);
  window.addEventListener("beforeprint", () => scenes.forEach((scene) => showHeard(scene, lastOf(scene))));
  window.addEventListener("afterprint", () => showReveals());
  find("motion").addEventListener("input", (event) => act("scrub", (event.target.value / 1000) * stagesHere()));
  find("back").addEventListener("click", () => act("back"));
  find("next").addEventListener("click", () => act("next"));
  for (const [name, does] of Object.entries(TOOLS)) find(name).addEventListener("click", does);
  find("cover").addEventListener("click", () => cover(false));
  for (const button of document.querySelectorAll("[data-close]")) {
    button.addEventListener("click", () => button.closest("dialog").close());
  }
  find("slide-list").addEventListener("click", (event) => {
    const chosen = event.target.closest("[data-scene]");
    if (!chosen) return;
    find("slide-list").close();
    act("goTo", Number(chosen.dataset.scene) - 1, 0);
  });
  moved.push(showSpeed);
}
