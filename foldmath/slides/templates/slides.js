"use strict";
// The slides at the front of the room. Nothing goes on by itself: each key or tap shows one thing more.
// The first part turns paper about a crease; the second shows and hides; the third listens.

// ---- Paper that turns about a crease ------------------------------------------------------------------

const STAGE_MS = 1500;
const EYE = 240; // How far above the table the viewer's eye is, in mm of the picture.
const STOPS_SHORT = 1.3; // How far an old crease stops before its ends, in mm.

function numbers(text) {
  return text.trim().split(/[\s,]+/).map(Number);
}

function pairs(text) {
  const flat = numbers(text);
  return Array.from({ length: flat.length / 2 }, (_, i) => [flat[2 * i], flat[2 * i + 1]]);
}

function written(points) {
  return points.map(([x, y]) => `${x.toFixed(2)},${y.toFixed(2)}`).join(" ");
}

// Turns a point about the line through `pivot` with unit `normal`, and gives it as the eye sees it.
function seen([x, y], { pivot, normal, over, centre }, angle) {
  const distance = (x - pivot[0]) * normal[0] + (y - pivot[1]) * normal[1];
  const slide = distance * (Math.cos(angle) - 1);
  const height = distance * Math.sin(angle) * (over ? 1 : -1);
  const nearer = EYE / (EYE - height);
  return [
    centre[0] + (x + slide * normal[0] - centre[0]) * nearer,
    centre[1] + (y + slide * normal[1] - centre[1]) * nearer,
  ];
}

// Reads a stage once: its turning line, and each flap with its elements.
function readStage(element) {
  const box = element.ownerSVGElement.viewBox.baseVal;
  const stage = {
    element,
    stack: element.querySelector("g"),
    pivot: numbers(element.dataset.pivot),
    normal: numbers(element.dataset.normal),
    over: element.dataset.over === "1",
    centre: [box.width / 2, box.height / 2],
    painted: "",
  };
  stage.flaps = [...stage.stack.children].map((flap) => ({
    element: flap,
    paper: flap.querySelector(".paper"),
    edge: flap.querySelector(".edge"),
    old: flap.querySelector(".old"),
    star: flap.querySelector(".star"),
    moves: flap.dataset.moves === "1",
    order: numbers(flap.dataset.order),
    firm: [...flap.dataset.firm].map((mark) => mark === "1"),
    start: pairs(flap.dataset.start),
  }));
  return stage;
}

// Puts the flaps in painting order: what moves over is in front, what moves behind is at the back.
function paintInOrder(stage, half) {
  const key = stage.over ? half : half + 2;
  if (stage.painted === key) return;
  stage.painted = key;
  const rank = (flap) => (flap.moves === stage.over ? 1 : 0);
  const sorted = [...stage.flaps].sort((a, b) => rank(a) - rank(b) || a.order[half] - b.order[half]);
  stage.stack.replaceChildren(...sorted.map((flap) => flap.element));
}

function edgePath(points, firm, wanted, short) {
  let path = "";
  points.forEach(([x, y], i) => {
    if (firm[i] !== wanted) return;
    const [endX, endY] = points[(i + 1) % points.length];
    const share = short / (Math.hypot(endX - x, endY - y) || 1);
    if (share > 0.3) return;
    const [dx, dy] = [(endX - x) * share, (endY - y) * share];
    path += `M${(x + dx).toFixed(2)} ${(y + dy).toFixed(2)}L${(endX - dx).toFixed(2)} ${(endY - dy).toFixed(2)}`;
  });
  return path;
}

function drawFlap(flap, stage, share) {
  const angle = flap.moves ? share * Math.PI : 0;
  const half = share > 0.5 ? 1 : 0;
  const points = flap.start.map((point) => seen(point, stage, angle));
  const { start, end, printed } = flap.element.dataset;
  flap.paper.setAttribute("points", share === 1 ? end : share && flap.moves ? written(points) : start);
  flap.element.setAttribute("class", printed[half] === "1" ? "flap printed" : "flap back");
  flap.edge.setAttribute("d", edgePath(points, flap.firm, true, 0));
  flap.old.setAttribute("d", edgePath(points, flap.firm, false, STOPS_SHORT));
  if (flap.star) {
    const shown = flap.star.dataset.seen[half] === "1";
    const turned = pairs(flap.star.dataset.start).map((point) => seen(point, stage, angle));
    flap.star.setAttribute("points", shown ? written(turned) : "");
  }
}

// Shows the paper at a moment of its movement: 0 is before, 1 after the first fold, 2 after the second.
function showMovement(picture, time) {
  if (!picture.stages) {
    picture.stages = [...picture.querySelectorAll(".stage")].map(readStage);
  }
  const last = picture.stages.length;
  const resting = time <= 0 ? "start" : time >= last ? "end" : "";
  for (const rest of picture.querySelectorAll(".rest")) {
    rest.classList.toggle("waiting", rest.dataset.at !== resting);
  }
  picture.stages.forEach((stage, index) => {
    const share = Math.min(1, Math.max(0, time - index));
    const under = !resting && index === Math.min(last - 1, Math.floor(time));
    stage.element.classList.toggle("waiting", !under);
    if (under || (share === 1 && stage.share !== 1)) {
      paintInOrder(stage, share > 0.5 ? 1 : 0);
      for (const flap of stage.flaps) drawFlap(flap, stage, share);
    }
    stage.share = share;
  });
  picture.setAttribute("aria-label", resting === "end" ? picture.dataset.after : picture.dataset.before);
}

// ---- What is shown -------------------------------------------------------------------------------------

const MOTION = 2; // The reveal of a step at which its paper moves.
const SIZES = [5.8, 5.5, 5.2, 5]; // Of letters, in hundredths of the screen's shorter side; never less.

const find = (id) => document.getElementById(id);
const room = find("room");
const scenes = [...room.children];
const calm = window.matchMedia("(prefers-reduced-motion: reduce)");
const now = { scene: 0, reveal: 0, time: 0, playing: 0 };

const here = () => scenes[now.scene];
const lastOf = (scene) => Number(scene.dataset.last);
const moving = () => here().querySelector(".lying");
const stagesHere = () => moving()?.querySelectorAll(".stage").length ?? 0;
const answering = () => now.reveal >= (moving() ? MOTION + 1 : MOTION);
const movesAt = (reveal) => (moving() && reveal >= MOTION ? Math.max(stagesHere(), 1) : 0);

// Reads words aloud as they are meant: a fraction is "1/8".
function spoken(node) {
  if (node.nodeType === Node.TEXT_NODE) return node.data;
  if (node.localName === "mfrac") return [...node.children].map(spoken).join("/");
  if (node.localName === "mn") return `${node.textContent} `;
  return [...node.childNodes].map(spoken).join("");
}

function announce(words) {
  find("live").textContent = words.replace(/\s+/g, " ").replace(/ \//g, "/").trim();
}

function announceReveal() {
  const told = [...here().querySelectorAll(`[data-from="${now.reveal}"]`)];
  const words = told.filter((element) => !element.closest("svg")).map(spoken);
  const picture = now.reveal === MOTION && moving() ? [moving().dataset.after] : [];
  announce([...words, ...picture].join(". "));
}

function setTime(time) {
  now.time = time;
  if (moving()) showMovement(moving(), time);
  find("motion").value = String(stagesHere() ? Math.round((1000 * time) / stagesHere()) : 0);
}

function showReveals() {
  for (const element of here().querySelectorAll("[data-from], [data-until]")) {
    const { from = 0, until = Infinity } = element.dataset;
    element.classList.toggle("waiting", now.reveal < Number(from) || now.reveal >= Number(until));
  }
  here().classList.toggle("answering", answering());
  for (const picture of here().querySelectorAll(".opened")) {
    picture.setAttribute("aria-label", now.reveal >= MOTION ? picture.dataset.after : picture.dataset.before);
  }
}

// Makes letters as large as leaves room for everything, and fractions in panels as large as letters.
// Whatever is still to be revealed has its room already, so that nothing jumps.
function fit() {
  const scene = here();
  const ways = ["", "tight", "tight slim"].flatMap((way) => SIZES.map((size) => [way, size]));
  for (const [way, size] of ways) {
    scene.classList.toggle("tight", way.includes("tight"));
    scene.classList.toggle("slim", way.includes("slim"));
    scene.classList.add("answering");
    scene.style.setProperty("--em", size);
    if (scene.scrollHeight <= scene.clientHeight + 1 && scene.scrollWidth <= scene.clientWidth + 1) break;
  }
  scene.classList.toggle("answering", answering());
  const letter = parseFloat(getComputedStyle(scene).fontSize);
  const least = (SIZES.at(-1) / 100) * Math.min(innerWidth, innerHeight);
  for (const picture of scene.querySelectorAll(".opened")) {
    const scale = picture.getScreenCTM()?.a || 1;
    for (const figure of picture.querySelectorAll(".figure")) fitFigure(figure, least / scale, (1.3 * letter) / scale);
  }
}

// Leaves out a number that its panel has no room for at a size that the back row can read.
function fitFigure(figure, least, wished) {
  const most = Number(figure.dataset.most);
  figure.classList.toggle("small", most < least);
  const size = Math.min(most, wished) / 10;
  figure.setAttribute("transform", `translate(${figure.dataset.at}) scale(${size.toFixed(3)})`);
}

function showBar() {
  find("scrub").classList.toggle("still", !stagesHere());
  find("place").textContent = `${now.scene + 1} of ${scenes.length}`;
  for (const button of find("list").querySelectorAll("[data-scene]")) {
    const current = Number(button.dataset.scene) === now.scene + 1;
    if (current) button.setAttribute("aria-current", "step");
    else button.removeAttribute("aria-current");
  }
}

function rememberPlace() {
  const place = `#scene-${now.scene + 1}${now.reveal ? `-${now.reveal}` : ""}`;
  if (location.hash !== place) history.replaceState(null, "", place);
}

function goTo(scene, reveal) {
  stopPlaying();
  const changed = scene !== now.scene;
  now.scene = Math.min(scenes.length - 1, Math.max(0, scene));
  now.reveal = Math.min(lastOf(here()), Math.max(0, reveal));
  scenes.forEach((each, index) => each.classList.toggle("here", index === now.scene));
  showReveals();
  setTime(movesAt(now.reveal));
  showBar();
  fit();
  rememberPlace();
  if (changed) here().querySelector("h1, h2").focus({ preventScroll: true });
}

// ---- Going on ------------------------------------------------------------------------------------------

function stopPlaying() {
  cancelAnimationFrame(now.playing);
  now.playing = 0;
}

function play() {
  const [start, end] = [now.time, stagesHere()];
  const begun = performance.now();
  const frame = (moment) => {
    const share = Math.min(1, Math.max(0, moment - begun) / (STAGE_MS * (end - start)));
    const stage = start + (end - start) * share;
    setTime(Math.floor(stage) + eased(stage % 1));
    now.playing = share < 1 ? requestAnimationFrame(frame) : 0;
  };
  now.playing = requestAnimationFrame(frame);
}

function eased(share) {
  return (1 - Math.cos(Math.PI * share)) / 2;
}

function next() {
  if (now.playing) {
    stopPlaying();
    setTime(stagesHere());
  } else if (now.reveal < lastOf(here())) {
    revealOne();
  } else if (now.scene < scenes.length - 1) {
    goTo(now.scene + 1, 0);
  }
}

function revealOne() {
  const plays = now.reveal + 1 === MOTION && stagesHere() && now.time < stagesHere() && !calm.matches;
  now.reveal += 1;
  showReveals();
  if (plays) play();
  else setTime(movesAt(now.reveal));
  rememberPlace();
  announceReveal();
}

function back() {
  if (now.reveal > 0) goTo(now.scene, now.reveal - 1);
  else if (now.scene > 0) goTo(now.scene - 1, lastOf(scenes[now.scene - 1]));
}

// Moves the paper by hand; its end is also the reveal.
function scrubTo(time) {
  stopPlaying();
  setTime(time);
  if (time >= stagesHere() && now.reveal === MOTION - 1) {
    now.reveal = MOTION;
    showReveals();
    rememberPlace();
    announceReveal();
  }
}

function readPlace() {
  const place = /^#scene-(\d+)(?:-(\d+))?$/.exec(location.hash);
  return place ? [Number(place[1]) - 1, Number(place[2] ?? 0)] : [0, 0];
}

// ---- The teacher's tools ---------------------------------------------------------------------------------

const clock = { begun: 0, ticking: 0 };

function toggleTimer() {
  const on = !clock.ticking;
  clearInterval(clock.ticking);
  clock.begun = Date.now();
  clock.ticking = on ? setInterval(showTimer, 500) : 0;
  find("timer").setAttribute("aria-pressed", String(on));
  showTimer();
}

function showTimer() {
  const seconds = Math.floor((Date.now() - clock.begun) / 1000);
  const face = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
  find("timer").querySelector("span").textContent = clock.ticking ? face : "Timer";
}

function toggleNotes() {
  const on = document.body.classList.toggle("presenting");
  find("notes").setAttribute("aria-pressed", String(on));
  fit();
}

function blankScreen() {
  find("cover").hidden = false;
  find("cover").focus();
}

function unblankScreen() {
  find("cover").hidden = true;
  here().querySelector("h1, h2").focus({ preventScroll: true });
}

function toggleFullScreen() {
  if (document.fullscreenElement) document.exitFullscreen();
  else document.documentElement.requestFullscreen?.().catch(() => {});
}

function openList() {
  find("list").showModal();
}

// ---- Listening -------------------------------------------------------------------------------------------

const KEYS = {
  ArrowRight: next, ArrowDown: next, PageDown: next, " ": next, Enter: next,
  ArrowLeft: back, ArrowUp: back, PageUp: back, Backspace: back,
  Home: () => goTo(0, 0),
  End: () => goTo(scenes.length - 1, lastOf(scenes.at(-1))),
  b: blankScreen, ".": blankScreen, f: toggleFullScreen, l: openList, p: toggleNotes, t: toggleTimer,
};

function ownKeys(target, key) {
  if (target.id === "motion") return /^(Arrow|Home|End|Page)/.test(key);
  return target.localName === "button" && (key === " " || key === "Enter");
}

function onKey(event) {
  if (find("list").open || event.ctrlKey || event.altKey || event.metaKey) return;
  if (!find("cover").hidden) {
    event.preventDefault();
    if (!event.repeat) unblankScreen();
    return;
  }
  const act = KEYS[event.key.length === 1 ? event.key.toLowerCase() : event.key];
  if (!act || ownKeys(event.target, event.key)) return;
  event.preventDefault();
  act();
}

const FAR = 8; // A pointer that goes farther, in pixels, drags; else it taps.
const drag = { x: 0, time: 0, going: false, moved: false };

function onPointerDown(event) {
  Object.assign(drag, { x: event.clientX, time: now.time, moved: false });
  drag.going = Boolean(event.target.closest(".lying")) && stagesHere() > 0;
}

function onPointerMove(event) {
  const far = event.clientX - drag.x;
  if (!drag.going || !(event.buttons & 1) || (!drag.moved && Math.abs(far) < FAR)) return;
  drag.moved = true;
  const share = Math.abs(far) / (moving().clientWidth * 0.6);
  const wanted = drag.time >= stagesHere() ? drag.time - share : drag.time + share;
  scrubTo(Math.min(stagesHere(), Math.max(0, wanted)));
}

function onTap(event) {
  const dragged = drag.moved;
  drag.going = drag.moved = false;
  if (dragged || event.target.closest(".strip") || String(getSelection())) return;
  if (event.clientX < innerWidth / 4) back();
  else next();
}

function listen() {
  document.addEventListener("keydown", onKey);
  room.addEventListener("pointerdown", onPointerDown);
  room.addEventListener("pointermove", onPointerMove);
  room.addEventListener("click", onTap);
  window.addEventListener("resize", fit);
  window.addEventListener("hashchange", () => goTo(...readPlace()));
  find("motion").addEventListener("input", (event) => scrubTo((event.target.value / 1000) * stagesHere()));
  const acts = { back, next, steps: openList, notes: toggleNotes, timer: toggleTimer, blank: blankScreen };
  for (const [id, act] of Object.entries(acts)) find(id).addEventListener("click", act);
  find("full").addEventListener("click", toggleFullScreen);
  find("cover").addEventListener("click", unblankScreen);
  find("list-close").addEventListener("click", () => find("list").close());
  find("list").addEventListener("click", (event) => {
    const chosen = event.target.closest("[data-scene]");
    if (!chosen) return;
    find("list").close();
    goTo(Number(chosen.dataset.scene) - 1, 0);
  });
}

room.classList.add("ready");
listen();
goTo(...readPlace());
