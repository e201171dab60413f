// The grid of a class: each cell is marked as it is left, Enter goes down, Tab goes on.
import { ask } from "./desk.js";

const grid = document.querySelector("#grid");
const why = document.querySelector("#why");
const signs = { RIGHT: "✓", ANOTHER_FORM: "≈", WRONG: "✗", UNREAD: "?", NOT_DONE: "" };
const named = { RIGHT: grid.dataset.right, ANOTHER_FORM: grid.dataset.form, WRONG: grid.dataset.wrong, UNREAD: grid.dataset.open, NOT_DONE: "" };
const cells = [...grid.querySelectorAll("input[data-row]")];
// Answers may come back in another order than they were asked in: only the last one that was left is told aloud.
let left;

async function mark(cell) {
  const answer = cell.value;
  const told = await ask(`${grid.dataset.lesson}/mark/cell`, { level: cell.dataset.level, seed: cell.dataset.seed, column: cell.dataset.column, answer });
  // Meanwhile something else may have been typed there.
  if (cell.value !== answer) return;
  const verdict = told.verdict ?? "UNREAD";
  const says = told.says ?? told.refused?.[0]?.message ?? "";
  cell.dataset.verdict = verdict;
  cell.nextElementSibling.textContent = signs[verdict];
  cell.nextElementSibling.title = says;
  if (cell === left) why.textContent = answer.trim() ? [`${cell.getAttribute("aria-label")}: ${named[verdict]}`, says].filter(Boolean).join(". ") : "";
}

grid.addEventListener("change", (event) => { if (event.target.dataset.row) mark((left = event.target)); });

grid.addEventListener("focusin", (event) => {
  const says = event.target.dataset?.verdict && event.target.nextElementSibling.title;
  if (says) why.textContent = says;
});

grid.addEventListener("keydown", (event) => {
  const cell = event.target;
  if (event.key !== "Enter" || !cell.dataset.row) return;
  event.preventDefault();
  const column = cells.filter((other) => other.dataset.column === cell.dataset.column);
  const below = column[column.indexOf(cell) + (event.shiftKey ? -1 : 1)];
  // At the foot of a column, the head of the next one.
  const heads = cells.filter((other) => other.dataset.row === cells[0].dataset.row);
  (below ?? heads[heads.findIndex((head) => head.dataset.column === cell.dataset.column) + 1] ?? grid.querySelector("button")).focus();
});

// What was typed before is marked as it stands there; what was made of it is told first.
(async () => {
  for (const cell of cells.filter((one) => one.value.trim())) await mark(cell);
})();
(document.querySelector(".made") ?? cells[0])?.focus();
