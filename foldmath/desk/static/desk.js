// What every page of the desk shares: asking the desk, and saying aloud what happened.

const token = document.querySelector('meta[name="token"]').content;
const spoken = document.querySelector("#spoken");

// What is said where nobody answers, since the desk was closed.
export const away = spoken.dataset.away;

// Say something to those who listen; the same words twice are said twice.
export function speak(words) {
  spoken.textContent = "";
  requestAnimationFrame(() => { spoken.textContent = words; });
}

// Ask the desk for JSON. What it refuses comes back as `{ refused: [{ message, hint }], status }`.
export async function ask(address, values = null) {
  const options = { headers: { Accept: "application/json" } };
  if (values !== null) {
    options.method = "POST";
    options.headers["Content-Type"] = "application/json";
    options.headers["X-Foldmath-Token"] = token;
    options.body = JSON.stringify(values);
  }
  const answer = await fetch(address, options).catch(() => null);
  if (answer === null) return { refused: [{ message: away, hint: "" }], status: 0 };
  const told = answer.headers.get("Content-Type") === "application/json" ? await answer.json() : { refused: [{ message: await answer.text(), hint: "" }] };
  return { ...told, status: answer.status };
}

// Enter in a field presses the button of its own part of a form that has several, not the first one of all.
document.addEventListener("keydown", (event) => {
  const part = event.target.closest("[data-enter]");
  if (event.key !== "Enter" || event.isComposing || !part || !event.target.matches("input:not([type=file])")) return;
  event.preventDefault();
  part.querySelector("button")?.click();
});

// Text that was typed and not sent has the browser ask before it is lost, by a link or by another form.
const isUnsent = (field) => field.matches("textarea, input:not([type])") && field.value !== field.defaultValue;
let sent = null;
document.addEventListener("submit", (event) => { sent = event.target; });
window.addEventListener("beforeunload", (event) => {
  const others = [...document.forms].filter((form) => form.method === "post" && form !== sent);
  sent = null;
  if (others.some((form) => [...form.elements].some(isUnsent))) event.preventDefault();
});
