// Where the lesson is: which slide shows, how much of it is revealed, and how far its paper has moved.

const MOTION = 2; // The reveal of a step at which its paper moves.
const COUNT = 3; // The reveal at which the sheet is opened and counted.
const STAGE_MS = 1500;
const STILLS = [0.3, 0.7, 1]; // Where paper is shown of each stage to those who asked for less motion.
const STILL_MS = 500;

const find = (id) => document.getElementById(id);
const words = JSON.parse(find("words").textContent);
const room = find("room");
const scenes = [...room.querySelectorAll(".scene")];
const calm = window.matchMedia("(prefers-reduced-motion: reduce)");
const now = { scene: 0, reveal: 0, time: 0, playing: 0, speed: 1 };
const moved = []; // What is to be done whenever the place or the time has changed.

const here = () => scenes[now.scene];
const lastOf = (scene) => Number(scene.dataset.last);
const gathered = () => here().querySelector(".gather");
const stagesOf = scenes.map((scene) => (scene.querySelector(".gather") ? PARTS : scene.querySelectorAll(".stage").length));
const stagesHere = () => stagesOf[now.scene];

function movesAt(reveal) {
  const picture = gathered();
  if (picture) return Math.min(PARTS, Math.max(0, reveal - Number(picture.dataset.first)));
  return reveal >= MOTION ? Math.max(stagesHere(), 1) : 0;
}

function said(text, values) {
  return text.replace(/\{(\w+)\}/g, (_, name) => values[name]);
}

// Reads words aloud as they are meant: a fraction is "1/8".
function spoken(node) {
  if (node.nodeType === Node.TEXT_NODE) return node.data;
  if (node.localName === "mfrac") return [...node.children].map(spoken).join("/");
  if (node.localName === "mn") return `${node.textContent} `;
  return [...node.childNodes].map(spoken).join("");
}

function announce(text) {
  find("live").textContent = text.replace(/\s+/g, " ").replace(/ \//g, "/").trim();
}

function announceReveal() {
  const told = [...here().querySelectorAll(`[data-from="${now.reveal}"]`)];
  const shown = told.filter((element) => !element.closest("svg")).map(spoken);
  const picture = now.reveal === MOTION && here().querySelector(".after");
  announce([...shown, ...(picture ? [picture.getAttribute("aria-label")] : [])].join(". "));
}

// Shows one picture of a step: the paper before, in motion, after, or opened.
function showStep() {
  const last = stagesHere();
  const opened = here().querySelector(".opened") && now.reveal >= COUNT ? "opened" : "after";
  const ended = last ? now.time >= last : now.reveal >= MOTION;
  const shown = ended ? opened : now.time > 0 && last ? "motion" : "before";
  for (const name of ["before", "motion", "after", "opened"]) {
    here().querySelector(`.${name}`)?.classList.toggle("waiting", name !== shown);
  }
  if (shown === "motion") showMovement(here().querySelector(".motion"), now.time);
}

function showStanding() {
  const picture = gathered();
  const stands = now.reveal >= Number(picture.dataset.first) && now.time < PARTS;
  picture.classList.toggle("waiting", !stands);
  for (const still of here().querySelectorAll(".standing")) still.classList.toggle("hushed", stands);
  if (stands) showGathering(picture, now.time);
}

function setTime(time) {
  now.time = time;
  if (gathered()) showStanding();
  else if (here().querySelector(".before")) showStep();
  find("motion").value = String(stagesHere() ? Math.round((1000 * time) / stagesHere()) : 0);
}

// A picture that is shaded bit by bit tells those who hear it as much as those who see it know.
function showHeard(scene, reveal) {
  for (const picture of scene.querySelectorAll("[data-heard-0]")) {
    picture.setAttribute("aria-label", picture.getAttribute(`data-heard-${reveal}`));
  }
}

function showReveals(scene = here(), reveal = now.reveal) {
  for (const element of scene.querySelectorAll("[data-from], [data-until]")) {
    const { from = 0, until = Infinity } = element.dataset;
    element.classList.toggle("waiting", reveal < Number(from) || reveal >= Number(until));
  }
  for (const question of scene.querySelectorAll(".question")) {
    const answer = question.nextElementSibling;
    question.classList.toggle("done", reveal >= Number(answer?.dataset.from ?? Infinity));
  }
  showHeard(scene, reveal);
}

// Makes letters as large as leaves room for everything that is still to be revealed, so that nothing jumps;
// where that cannot be, questions give way to their answers, and then the picture to the words.
const SIZES = [1, 0.94, 0.88, 0.82];
const WAYS = ["", "tight", "tight slim"];

const lettered = () => [...document.fonts].every((face) => face.status === "loaded");

function fit() {
  const scene = here();
  const frame = `${innerWidth} ${innerHeight} ${devicePixelRatio} ${lettered()}`;
  if (scene.fittedTo === frame) return showReveals();
  scene.fittedTo = frame;
  const board = scene.querySelector(".board");
  const fits = () => scene.scrollHeight <= scene.clientHeight && scene.scrollWidth <= scene.clientWidth;
  showReveals(scene, lastOf(scene));
  for (const [way, size] of WAYS.flatMap((each) => SIZES.map((share) => [each, share]))) {
    board.classList.toggle("tight", way.includes("tight"));
    board.classList.toggle("slim", way.includes("slim"));
    board.style.setProperty("--size", size);
    if (fits()) break;
  }
  showReveals();
}

function showBar() {
  find("scrub").classList.toggle("still", !stagesHere());
  find("place").textContent = said(words.place, { at: now.scene + 1, all: scenes.length });
  for (const button of find("slide-list").querySelectorAll("[data-scene]")) {
    const current = Number(button.dataset.scene) === now.scene + 1;
    if (current) button.setAttribute("aria-current", "step");
    else button.removeAttribute("aria-current");
  }
}

function changed() {
  for (const act of moved) act();
}

function goTo(scene, reveal) {
  stopPlaying();
  const before = now.scene;
  now.scene = Math.min(scenes.length - 1, Math.max(0, scene));
  now.reveal = Math.min(lastOf(here()), Math.max(0, reveal));
  scenes.forEach((each, index) => each.classList.toggle("here", index === now.scene));
  scenes.forEach((each, index) => each.classList.toggle("coming", index === now.scene + 1));
  if (before !== now.scene) room.scrollTop = here().scrollTop = 0;
  fit();
  setTime(movesAt(now.reveal));
  showBar();
  changed();
  if (before !== now.scene && !document.body.classList.contains("notes")) {
    here().querySelector("h1, h2").focus({ preventScroll: true });
  }
}

function stopPlaying() {
  cancelAnimationFrame(now.playing);
  clearTimeout(now.playing);
  now.playing = 0;
}

function eased(share) {
  return (1 - Math.cos(Math.PI * share)) / 2;
}

function play(end) {
  const start = now.time;
  const begun = performance.now();
  const frame = (moment) => {
    const share = Math.min(1, (Math.max(0, moment - begun) * now.speed) / (STAGE_MS * (end - start)));
    const stage = start + (end - start) * share;
    setTime(share < 1 ? Math.floor(stage) + eased(stage % 1) : end);
    now.playing = share < 1 ? requestAnimationFrame(frame) : 0;
    changed();
  };
  now.playing = requestAnimationFrame(frame);
}

// Shows a movement in stills, for those who asked for less motion.
function stepThrough(end) {
  const stage = Math.floor(now.time);
  const next = STILLS.map((share) => stage + share).find((time) => time > now.time + 0.01) ?? end;
  setTime(Math.min(end, next));
  changed();
  now.playing = now.time < end ? setTimeout(() => stepThrough(end), STILL_MS / now.speed) : 0;
}

function next() {
  const playing = now.playing && !calm.matches;
  if (now.playing) {
    stopPlaying();
    setTime(movesAt(now.reveal));
    changed();
  }
  if (playing) return;
  if (now.reveal < lastOf(here())) revealOne();
  else if (now.scene < scenes.length - 1) goTo(now.scene + 1, 0);
}

function revealOne() {
  now.reveal += 1;
  showReveals();
  const end = movesAt(now.reveal);
  if (!stagesHere() || now.time >= end) setTime(end);
  else if (calm.matches) stepThrough(end);
  else play(end);
  changed();
  announceReveal();
}

function back() {
  if (now.reveal > 0) goTo(now.scene, now.reveal - 1);
  else if (now.scene > 0) goTo(now.scene - 1, lastOf(scenes[now.scene - 1]));
}

// Moves the paper by hand; its end is also the reveal, and a booklet's parts are one each.
function scrubTo(time) {
  stopPlaying();
  const before = now.reveal;
  if (gathered()) now.reveal = Number(gathered().dataset.first) + Math.min(PARTS, Math.floor(time));
  else if (time >= stagesHere() && now.reveal === MOTION - 1) now.reveal = MOTION;
  showReveals();
  setTime(time);
  changed();
  if (now.reveal > before) announceReveal();
}
