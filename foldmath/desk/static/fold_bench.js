// The sheet under the hand: edges and corners that can be taken, by pointer or by keys, and the fold to come.

import { speak } from "./desk.js";
import { clear, drawGrips, freeLine, preview } from "./fold_preview.js";

const SNAPS_PX = 14;
const CORNER_PX = 12;
const FINGER_PX = 26;
const LETS_GO_PX = 60; // Farther than this from every line, letting go puts the paper back.
const [HELD, X, Y, PIVOT_X, PIVOT_Y, NORMAL_X, NORMAL_Y, PLAIN, OVER, BEHIND] = Array(10).keys();

const find = (id) => document.getElementById(id);
const bench = find("bench");
let hands = { held: [], folds: [] };
let page = null;
const hand = { held: -1, fold: null, start: null, keys: false, shift: false, fingers: new Set(), pointer: null };

const isBehind = () => hand.shift || hand.fingers.size > 1 || find("behind").getAttribute("aria-pressed") === "true";
const sentence = (fold) => fold[isBehind() ? BEHIND : OVER];
const picture = () => bench.querySelector("svg");
const foldsOf = (held) => hands.folds.filter((fold) => fold[HELD] === held);

// Put what can be done now into the hands.
export function layReady(given, surroundings) {
  hands = given;
  page = surroundings;
  drawGrips(picture(), hands.held);
  hand.held = -1;
  show(null);
}

// The picture keeps its proportions in a place of others, so the browser is asked how it lies on the screen.
const scale = () => picture().getScreenCTM().a;

function placeOf(event) {
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(picture().getScreenCTM().inverse());
  return [x, y];
}

const distance = ([x, y], [toX, toY]) => Math.hypot(x - toX, y - toY);

// The point of an edge that is nearest to a place.
function nearestOn([[x, y], [endX, endY]], [px, py]) {
  const [dx, dy] = [endX - x, endY - y];
  const share = Math.min(1, Math.max(0, ((px - x) * dx + (py - y) * dy) / (dx * dx + dy * dy)));
  return [x + share * dx, y + share * dy];
}

// What is nearest to a place: a corner that is close, or else an edge.
function nearestHeld(place, reach) {
  let best = { index: -1, far: Infinity };
  hands.held.forEach(({ grip, along }, index) => {
    const far = along.length ? distance(nearestOn(along, place), place) + reach : distance(grip, place);
    if ((along.length || far <= reach) && far < best.far) best = { index, far };
  });
  return best.index;
}

// Where the hand has carried its grip: an edge only goes across itself.
function carried(place) {
  const { grip, along } = hands.held[hand.held];
  const moved = [grip[0] + place[0] - hand.start[0], grip[1] + place[1] - hand.start[1]];
  if (!along.length) return moved;
  const upright = along[0][0] === along[1][0];
  return upright ? [moved[0], grip[1]] : [grip[0], moved[1]];
}

// The fold whose landing is nearest; plainer ones pull harder.
function nearestFold(place) {
  let best = null;
  for (const fold of foldsOf(hand.held)) {
    const far = distance([fold[X], fold[Y]], place) * scale();
    const pull = far * (0.5 + fold[PLAIN] / 8);
    if (!best || pull < best.pull) best = { fold, far, pull };
  }
  return best && best.far <= LETS_GO_PX ? best : null;
}

function tell(words) {
  find("coming").textContent = words || "\u00a0";
}

function show(fold, line = null) {
  hand.fold = fold;
  bench.classList.toggle("holding", hand.held >= 0);
  if (!fold) {
    clear(picture());
    tell(hand.held >= 0 && page ? page.words.nowhere : "");
    return;
  }
  const crease = [fold[PIVOT_X], fold[PIVOT_Y], fold[NORMAL_X], fold[NORMAL_Y]];
  preview(picture(), crease, line ?? crease, isBehind());
  tell(sentence(fold));
}

function take(held, place, keys) {
  Object.assign(hand, { held, start: place, keys });
  show(null);
}

// Let go of the paper; it lies as it lay.
function putBack() {
  if (hand.held < 0) return;
  Object.assign(hand, { held: -1, pointer: null, keys: false });
  hand.fingers.clear();
  show(null);
  speak(page.words.back);
}

async function letGo() {
  const { fold, keys, held } = hand;
  if (!fold) return putBack();
  const text = sentence(fold);
  Object.assign(hand, { held: -1, pointer: null, keys: false });
  hand.fingers.clear();
  bench.classList.remove("holding");
  tell("");
  const done = await page.act({ do: "add", text });
  if (!done) clear(picture());
  if (keys) bench.querySelectorAll(".grip")[held]?.focus();
}

function down(event) {
  if (event.pointerType === "touch") hand.fingers.add(event.pointerId);
  if (hand.pointer !== null) return again();
  if (event.button || !hands.held.length || !document.body.dataset.ready) return;
  event.preventDefault();
  const place = placeOf(event);
  const reach = (event.pointerType === "touch" ? FINGER_PX : CORNER_PX) / scale();
  const held = nearestHeld(place, reach);
  if (held < 0) return;
  hand.pointer = event.pointerId;
  bench.setPointerCapture(event.pointerId);
  take(held, place, false);
}

function move(event) {
  hand.shift = event.shiftKey;
  if (event.pointerId !== hand.pointer) return;
  hand.last = placeOf(event);
  again();
}

// Show the fold to come once more: the hand has moved, or over has become behind.
function again() {
  if (hand.held < 0) return;
  if (hand.keys) return show(hand.fold);
  if (!hand.last) return;
  const { grip } = hands.held[hand.held];
  const place = carried(hand.last);
  if (distance(place, grip) * scale() < SNAPS_PX / 2) return show(null);
  const found = nearestFold(place);
  if (!found) return show(null);
  bench.classList.toggle("snapped", found.far <= SNAPS_PX);
  show(found.fold, found.far <= SNAPS_PX ? null : freeLine(grip, place));
}

function up(event) {
  if (event.pointerId === hand.pointer) {
    hand.last = null;
    return letGo();
  }
  hand.fingers.delete(event.pointerId);
  return again();
}

// By keys alone: Enter takes, arrows go through where it can go, the plainest first, Enter folds, Esc puts back.
const ONWARD = ["ArrowRight", "ArrowDown"];
const BACK = ["ArrowLeft", "ArrowUp"];

function keyed(event) {
  const grip = event.target.closest?.(".grip");
  hand.shift = event.shiftKey;
  if (event.key === "Escape") return putBack();
  if (!grip) return undefined;
  if (event.key === "Enter" || event.key === " ") {
    event.preventDefault();
    if (hand.held < 0) return takeByKey(Number(grip.dataset.held));
    return letGo();
  }
  if (hand.held >= 0 && [...ONWARD, ...BACK].includes(event.key)) {
    event.preventDefault();
    goOn(ONWARD.includes(event.key) ? 1 : -1);
  }
  return undefined;
}

function takeByKey(held) {
  if (!document.body.dataset.ready) return;
  take(held, null, true);
  speak(page.said(page.words.taken, { held: hands.held[held].name }));
}

function goOn(way) {
  const folds = foldsOf(hand.held);
  if (!folds.length) return;
  const at = folds.indexOf(hand.fold);
  const next = at < 0 ? (way > 0 ? 0 : folds.length - 1) : (at + way + folds.length) % folds.length;
  show(folds[next]);
  speak(sentence(folds[next]));
}

function shifted(event) {
  if (event.key !== "Shift") return;
  hand.shift = event.type === "keydown";
  again();
}

bench.addEventListener("pointerdown", down);
bench.addEventListener("pointermove", move);
bench.addEventListener("pointerup", up);
bench.addEventListener("pointercancel", putBack);
bench.addEventListener("keydown", keyed);
bench.addEventListener("focusout", (event) => {
  if (hand.keys && event.relatedTarget && !bench.contains(event.relatedTarget)) putBack();
});
document.addEventListener("keydown", (event) => event.key === "Escape" && putBack());
for (const kind of ["keydown", "keyup"]) document.addEventListener(kind, shifted);
find("behind").addEventListener("click", (event) => {
  const pressed = event.currentTarget.getAttribute("aria-pressed") === "true";
  event.currentTarget.setAttribute("aria-pressed", String(!pressed));
});
