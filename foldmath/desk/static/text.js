// A slip's button goes to its line in the text.
const text = document.getElementById("text");

document.addEventListener("click", (event) => {
  const line = Number(event.target.closest("[data-line]")?.dataset.line);
  if (!line) return;
  const lines = text.value.split("\n");
  const start = lines.slice(0, line - 1).join("\n").length + (line > 1 ? 1 : 0);
  text.focus();
  text.setSelectionRange(start, start + (lines[line - 1] ?? "").length);
  text.scrollTop = (text.scrollHeight / lines.length) * Math.max(0, line - 4);
});
