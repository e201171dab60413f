// The pages as they will print. What is wished for shows in place, so nothing typed or chosen beside it is lost.
import { ask, away, speak } from "./desk.js";

const LOOKING_MS = 1500;
const WISHES = ["document", "paper", "large"];
const lesson = `/lesson/${encodeURIComponent(document.querySelector("header h1").dataset.name)}`;
const form = document.querySelector("#printing");
const find = (selector) => document.querySelector(selector);
// Wishes may follow faster than pages are drawn: only the last one shows.
let last = 0;

// The address of the pages as they are wished for now.
function address() {
  const chosen = new FormData(form);
  const wishes = WISHES.filter((name) => chosen.has(name)).map((name) => [name, chosen.get(name)]);
  return `${lesson}/print?${new URLSearchParams(wishes)}`;
}

async function show() {
  const mine = ++last;
  const wished = address();
  find("#redrawing").hidden = false;
  find("#pages").classList.add("stale");
  speak(find("#redrawing").textContent);
  const answer = await fetch(wished).catch(() => null);
  if (answer === null) {
    find("#redrawing").textContent = away;
    return speak(away);
  }
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  if (mine !== last) return;
  const pages = page.querySelector("#pages");
  const links = page.querySelectorAll(".documents a");
  const known = document.querySelectorAll(".documents a");
  // A lesson that has no pages any more says so itself, and one with other documents lists them.
  if (!pages || links.length !== known.length) return location.assign(wished);
  find("#pages").replaceWith(document.adoptNode(pages));
  known.forEach((link, at) => lead(link, links[at]));
  history.replaceState(null, "", wished);
  speak(find("#pages h2").textContent);
}

// A link of the list leads to the pages as they are wished for now; the list itself keeps what is checked.
function lead(link, fresh) {
  link.setAttribute("href", fresh.getAttribute("href"));
  if (fresh.hasAttribute("aria-current")) link.setAttribute("aria-current", "true");
  else link.removeAttribute("aria-current");
}

form.addEventListener("change", (event) => { if (WISHES.includes(event.target.name)) show(); });

form.addEventListener("click", async (event) => {
  const link = event.target.closest(".documents a");
  if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  form.elements.document.value = new URL(link.href).searchParams.get("document");
  await show();
  const { top } = find("#pages").getBoundingClientRect();
  if (top < 0 || top > innerHeight / 2) find("#pages").scrollIntoView();
});

// What was made is told first to who listens.
find(".made")?.focus();

async function look() {
  const now = await ask(`${lesson}/digest`).catch(() => ({}));
  if (now.digest && now.digest !== find("#pages").dataset.digest) await show();
}

let looking = false;
setInterval(async () => {
  if (document.hidden || looking) return;
  looking = true;
  await look();
  looking = false;
}, LOOKING_MS);
