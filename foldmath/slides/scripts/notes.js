// Two windows of one lesson: the class's, which knows where the lesson is, and the teacher's, which shows what
// to ask and answer and sends every act to the other. Both load this file; nothing goes over a network.

const channel = new BroadcastChannel(named("slides"));
const visited = JSON.parse(kept(localStorage, named("used")) ?? "{}"); // Seconds spent on each slide.

// What the buttons and keys of both windows do; the teacher's window has them done in the class's.
const ACTS = {
  next,
  back,
  goTo,
  scrub: scrubTo,
  wipe,
  hide: () => cover(find("cover").hidden),
  clock: (minutes) => (minutes ? startClock(minutes) : setClock(0)),
  speed: nextSpeed,
};

function act(name, ...values) {
  if (isNotes) channel.postMessage({ act: name, values });
  else ACTS[name](...values);
}

let toldAt = 0;
const OFTEN_MS = 60; // While paper moves the teacher's small picture need not have every frame.

function tellNotes() {
  if (now.playing && performance.now() - toldAt < OFTEN_MS) return;
  toldAt = performance.now();
  const { scene, reveal, time, speed } = now;
  channel.postMessage({ at: { scene, reveal, time, speed }, end: clock.end, visited, hidden: !find("cover").hidden });
}

// The class's window: counts how long each slide shows, and answers the teacher's.
function serveNotes() {
  moved.push(tellNotes);
  channel.addEventListener("message", ({ data }) => {
    if (data.hello) tellNotes();
    if (Object.hasOwn(ACTS, data.act ?? "")) ACTS[data.act](...data.values);
  });
  setInterval(() => {
    visited[now.scene] = (visited[now.scene] ?? 0) + 1;
    keep(localStorage, named("used"), JSON.stringify(visited));
    tellNotes();
  }, 1000);
  tellNotes();
}

// The teacher's window: shows where the class is.
function followClass() {
  document.body.classList.add("notes");
  find("desk").hidden = false;
  for (const id of ["notes", "draw", "enlarge"]) find(id).hidden = true;
  let heard = false;
  setTimeout(() => heard || showMessage(said(words.lone, { button: find("notes").textContent.trim() })), 3000);
  channel.addEventListener("message", ({ data }) => {
    if (!data.at) return;
    // A busy computer may have the class's window answer after it was missed.
    if (!heard) find("message").close();
    heard = true;
    follow(data);
  });
  channel.postMessage({ hello: true });
}

function follow({ at, end, visited: used, hidden }) {
  now.speed = at.speed;
  clock.end = end;
  document.body.classList.toggle("hidden-class", hidden);
  if (at.scene !== now.scene || at.reveal !== now.reveal) goTo(at.scene, at.reveal);
  if (at.time !== now.time) setTime(at.time);
  showClock();
  showStrip(used);
}

const minutesOf = (seconds) => Math.round(seconds / 30) / 2;

function showStrip(used) {
  const strips = [...document.querySelectorAll(".strip")];
  strips.forEach((strip, index) => strip.classList.toggle("here", index === now.scene));
  const planned = strips.map((strip) => Number(strip.dataset.minutes));
  const sum = (values) => values.reduce((total, value) => total + value, 0);
  const one = said(words.minutes, { used: minutesOf(used[now.scene] ?? 0), planned: planned[now.scene] });
  const all = said(words.all, { used: minutesOf(sum(Object.values(used))), planned: sum(planned) });
  find("used").textContent = `${one} · ${all}`;
}

function openNotes() {
  const address = `${location.href.split("#")[0]}#notes-${run}`;
  const opened = window.open(address, named("notes"), "popup,width=1100,height=760");
  if (!opened) showMessage(said(words.blocked, { button: find("notes").textContent.trim() }));
}

function showMessage(text) {
  find("message").querySelector("p").textContent = text;
  if (!find("message").open) find("message").showModal();
}
