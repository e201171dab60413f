// The list of steps: sentences typed, changed in place, moved and taken out; and the buttons of other acts.

const find = (id) => document.getElementById(id);
let page = null;

// Say beside the field or line that asked for an act why it was not done.
export function showSlip(wish, html) {
  const editor = document.querySelector("#steps .editor");
  const place = wish.do === "change" && editor ? editor.querySelector(".slip") : find("slip");
  place.innerHTML = html;
  if (html) (editor?.querySelector("input") ?? (wish.typed ? find("new-step") : null))?.setAttribute("aria-invalid", "true");
  else find("new-step").removeAttribute("aria-invalid");
}

function focusSentence(at) {
  const lines = document.querySelectorAll("#steps .sentence");
  (lines[Math.min(at, lines.length - 1)] ?? find("new-step")).focus();
}

// Change a line in place: its sentence becomes a field.
function edit(button) {
  const line = button.closest("li");
  const form = document.createElement("form");
  form.className = "editor";
  form.innerHTML = '<input class="grow" list="sayable" autocomplete="off"/><span class="row"><button></button><button type="button" class="quiet"></button></span><div class="slip" role="alert"></div>';
  const [field, save, leave] = [form.querySelector("input"), ...form.querySelectorAll("button")];
  const at = Number(button.dataset.at);
  field.maxLength = find("new-step").maxLength;
  field.value = button.dataset.written;
  field.setAttribute("aria-label", page.said(page.words.change, { number: at + 1 }));
  [save.textContent, leave.textContent] = [page.words.save, page.words.leave];
  const close = () => {
    form.replaceWith(button);
    button.focus();
  };
  leave.addEventListener("click", close);
  form.addEventListener("keydown", (event) => event.key === "Escape" && close());
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    if (await page.act({ do: "change", at, text: field.value })) focusSentence(at);
  });
  line.querySelector(".sentence").replaceWith(form);
  field.focus();
  field.select();
}

async function pressed(event) {
  const button = event.target.closest("button[data-do]");
  if (!button || button.disabled) return;
  const { at, to, text } = button.dataset;
  if (button.dataset.do === "change" && text === undefined) return edit(button);
  const wish = { do: button.dataset.do, at: Number(at) };
  if (to !== undefined) wish.to = Number(to);
  if (text !== undefined) wish.text = text;
  if (await page.act(wish)) focusSentence(wish.to ?? wish.at);
}

async function added(event) {
  event.preventDefault();
  const field = find("new-step");
  if (await page.act({ do: "add", text: field.value, typed: true })) field.value = "";
  field.focus();
}

// A button of another act does it, or shows the ways to do it; one that cannot be pressed says why.
async function otherAct(event) {
  const button = event.target.closest("button[data-act]");
  if (!button) return;
  if (button.getAttribute("aria-disabled") === "true") return button.parentElement.classList.toggle("asked");
  if (button.hasAttribute("aria-expanded")) return showWays(button);
  await page.act({ do: "add", text: button.dataset.step });
  document.querySelector(`[data-act="${button.dataset.act}"]`)?.focus();
}

// Show the ways of one act, or fold them away; those of another are folded away.
async function showWays(button) {
  const shows = button.getAttribute("aria-expanded") === "false";
  for (const other of find("acts").querySelectorAll("[aria-expanded]")) {
    other.setAttribute("aria-expanded", shows && other === button);
    find(other.getAttribute("aria-controls")).hidden = !(shows && other === button);
  }
  if (!shows) return;
  const ways = find(button.getAttribute("aria-controls"));
  if (button.dataset.act === "cut" && !ways.dataset.whole) await fillCuts(ways);
  ways.scrollIntoView({ block: "nearest" });
  ways.querySelector("button").focus();
}

// The cuts are looked for when somebody first asks for them, since each is tried on the paper as it lies.
async function fillCuts(ways) {
  const { cuts } = await page.ask("cuts");
  if (!cuts?.length) return;
  const pattern = ways.querySelector("button");
  ways.replaceChildren(...cuts.map((sentence) => {
    const way = pattern.cloneNode();
    way.dataset.step = way.textContent = sentence;
    return way;
  }));
  ways.dataset.whole = "true";
}

// Among ways the arrow keys go on and back, and Esc folds them away.
function amongWays(event) {
  const ways = event.target.closest(".ways");
  if (!ways) return;
  const by = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 }[event.key];
  const all = [...ways.children];
  if (by) all[(all.indexOf(event.target) + by + all.length) % all.length].focus();
  else if (event.key === "Escape") {
    const button = document.querySelector(`[aria-controls="${ways.id}"]`);
    button.focus();
    button.click();
  } else return;
  event.preventDefault();
}

export function listenToList(surroundings) {
  page = surroundings;
  find("steps").addEventListener("click", pressed);
  find("add").addEventListener("submit", added);
  find("acts").addEventListener("click", otherAct);
  find("acts").addEventListener("keydown", amongWays);
  find("slip").addEventListener("click", (event) => {
    const button = event.target.closest("[data-instead]");
    if (button) page.act({ do: "add", text: button.dataset.instead, typed: true });
  });
  find("new-step").addEventListener("input", () => showSlip({ do: "add" }, ""));
}
