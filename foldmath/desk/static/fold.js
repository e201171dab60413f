// The folding page: what an act changes is drawn anew, and the sheet is made ready for the next hand.

import { ask, speak } from "./desk.js";
import { layReady } from "./fold_bench.js";
import { listenToList, showSlip } from "./fold_list.js";
import { listenToMore, offerSteps } from "./fold_more.js";
import { showMoving } from "./fold_motion.js";

const find = (id) => document.getElementById(id);
const words = JSON.parse(find("words").textContent);
const lesson = document.querySelector("header h1");
const address = `/lesson/${encodeURIComponent(lesson.dataset.name)}/fold`;
const LOOKS_EVERY_MS = 2500;
const now = { digest: lesson.dataset.digest, laid: null, busy: false };

// The paper can be taken where what the hands hold is the lesson as it is drawn, and no act is on its way.
function tellReady() {
  document.body.dataset.ready = now.busy || now.laid !== now.digest ? "" : now.digest;
}

function said(text, values) {
  return text.replace(/\{(\w+)\}/g, (_, name) => values[name]);
}

// Draw everything that an act may have changed. The motion comes first, where there is one.
async function redraw(told) {
  now.digest = told.digest;
  tellReady();
  find("steps").innerHTML = told.steps;
  find("shown").innerHTML = told.shown;
  find("none").hidden = Boolean(find("steps").children.length);
  for (const name of ["undo", "redo"]) {
    if (told[name]) find(name).removeAttribute("aria-disabled");
    else find(name).setAttribute("aria-disabled", "true");
  }
  lesson.dataset.digest = told.digest;
  offerSteps(told.digest);
  const hands = ask(`${address}/hands`);
  if (told.moving) await showMoving(find("bench"), told.moving);
  find("bench").innerHTML = told.lying;
  useHands(await hands);
}

// Put what can be done with the paper as it lies into the hands.
function useHands(hands) {
  if (hands.refused || hands.digest !== now.digest) return;
  find("acts").innerHTML = hands.acts;
  find("sayable").replaceChildren(...hands.sayable.map((sentence) => new Option(sentence)));
  layReady(hands, { act, words, said });
  now.laid = now.digest;
  tellReady();
}

// Do one act; it is saved before it is shown. Whether it was done is told.
async function act(wish, spoken = "") {
  if (now.busy) return false;
  now.busy = true;
  tellReady();
  try {
    const told = await ask(`${address}/act`, { ...wish, digest: now.digest });
    if (told.status === 409) return await offerAgain(wish, told);
    if (told.refused) {
      showSlip(wish, told.told ?? told.refused.map((each) => `${each.message} ${each.hint}`).join(" "));
      return false;
    }
    showSlip(wish, "");
    find("outside").replaceChildren();
    await redraw(told);
    speak([spoken, told.spoken].filter(Boolean).join(" "));
    return true;
  } finally {
    now.busy = false;
    tellReady();
  }
}

// The file was changed elsewhere: it is shown as it is now, and the act is offered again.
async function offerAgain(wish, told) {
  await drawAnew();
  const why = document.createElement("p");
  why.textContent = told.refused.map((each) => each.message).join(" ");
  find("outside").replaceChildren(why);
  if (wish.text) {
    const again = document.createElement("button");
    again.type = "button";
    again.textContent = said(words.again, { step: wish.text });
    again.addEventListener("click", () => act({ do: "add", text: wish.text }));
    find("outside").append(again);
  }
  return false;
}

// Look whether the file was changed elsewhere. An act that begins meanwhile draws what it finds itself.
async function look() {
  const seen = now.digest;
  const crossed = () => now.busy || now.digest !== seen;
  if (now.busy || document.hidden) return;
  const { digest } = await ask(`${address}/digest`);
  if (digest && digest !== now.digest && !crossed()) await drawAnew(crossed);
}

// Draw the lesson as it is in its file now, unless something else has drawn it.
async function drawAnew(crossed = () => false) {
  const told = await ask(`${address}/paper`);
  if (crossed()) return;
  if (told.refused) return location.reload();
  await redraw(told);
  speak(told.spoken);
}

listenToList({ act, words, said, ask: (what) => ask(`${address}/${what}`) });
listenToMore({ ask: (what) => ask(`${address}/${what}`), digest: () => now.digest });
offerSteps(now.digest);
for (const [name, spoken] of [["undo", words.undone], ["redo", words.redone]]) {
  find(name).addEventListener("click", () => find(name).hasAttribute("aria-disabled") || act({ do: name }, spoken));
}
document.addEventListener("visibilitychange", () => look());
setInterval(look, LOOKS_EVERY_MS);
useHands(await ask(`${address}/hands`));
