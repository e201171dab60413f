// The list of steps: sentences typed, changed in place, moved and taken out; and the buttons of other acts.

const find = (id) => document.getElementById(id);
let page = null;
let cutsOf = "";

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

// A button of another act: one way, or the chosen one of several; one that cannot be pressed says why.
function otherAct(event) {
  const button = event.target.closest("button[data-act]");
  if (!button) return;
  if (button.getAttribute("aria-disabled") === "true") {
    button.parentElement.classList.toggle("asked");
    return;
  }
  const ways = button.parentElement.querySelector("select");
  const name = button.dataset.act;
  page.act({ do: "add", text: ways ? ways.value : button.dataset.step }).then(() => {
    document.querySelector(`[data-act="${name}"]`)?.focus();
  });
}

// The cuts are looked for when somebody asks for them, since each is tried on the paper.
async function fillCuts(event) {
  const ways = event.target.closest?.("#ways-cut");
  if (!ways || cutsOf === document.body.dataset.ready) return;
  cutsOf = document.body.dataset.ready;
  const chosen = ways.value;
  const { cuts } = await page.ask("cuts");
  ways.replaceChildren(...cuts.map((sentence) => new Option(sentence, sentence, false, sentence === chosen)));
}

export function listenToList(surroundings) {
  page = surroundings;
  find("steps").addEventListener("click", pressed);
  find("add").addEventListener("submit", added);
  find("acts").addEventListener("click", otherAct);
  for (const kind of ["focusin", "pointerenter"]) find("acts").addEventListener(kind, fillCuts, true);
  find("slip").addEventListener("click", (event) => {
    const button = event.target.closest("[data-instead]");
    if (button) page.act({ do: "add", text: button.dataset.instead, typed: true });
  });
  find("new-step").addEventListener("input", () => showSlip({ do: "add" }, ""));
}
