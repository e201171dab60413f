// The pages as they will print: chosen wishes show at once, and a lesson that was changed elsewhere is drawn again.
import { ask, speak } from "./desk.js";

const LOOKING_MS = 1500;
const lesson = document.querySelector("header h1").dataset.name;

for (const form of document.querySelectorAll("#wishes")) {
  form.addEventListener("change", () => form.requestSubmit());
}

// What was made is told first to who listens.
document.querySelector(".made")?.focus();

async function look() {
  const pages = document.querySelector("#pages");
  const now = await ask(`/lesson/${encodeURIComponent(lesson)}/digest`).catch(() => ({}));
  if (!now.digest || now.digest === pages.dataset.digest) return;
  const waiting = document.querySelector("#redrawing");
  waiting.hidden = false;
  pages.classList.add("stale");
  speak(waiting.textContent);
  const answer = await fetch(location.href);
  const fresh = new DOMParser().parseFromString(await answer.text(), "text/html").querySelector("#pages");
  if (fresh) pages.replaceWith(document.adoptNode(fresh));
  else location.reload();
}

let looking = false;
setInterval(async () => {
  if (document.hidden || looking) return;
  looking = true;
  await look();
  looking = false;
}, LOOKING_MS);
