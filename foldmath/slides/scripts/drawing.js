// Drawing on the slide with mouse, pen or finger: gone on the next slide, or with one key.

const ink = find("ink");
const pen = { on: false, line: null, points: [] };

function drawOrNot() {
  pen.on = !pen.on;
  find("draw").setAttribute("aria-pressed", String(pen.on));
  document.body.classList.toggle("inking", pen.on);
  announce(pen.on ? words.drawing : "");
}

function wipe() {
  ink.replaceChildren();
}

// Places are shares of the slide, in thousandths, so that a drawing stays where it is when the window changes.
function inkPlace(event) {
  const box = ink.getBoundingClientRect();
  const share = (value, start, length) => ((1000 * (value - start)) / length).toFixed(1);
  return `${share(event.clientX, box.left, box.width)} ${share(event.clientY, box.top, box.height)}`;
}

function inkDown(event) {
  if (!pen.on || event.button) return;
  event.preventDefault();
  pen.points = [inkPlace(event)];
  pen.line = document.createElementNS(ink.namespaceURI, "path");
  ink.append(pen.line);
  ink.setPointerCapture(event.pointerId);
  inkMove(event);
}

function inkMove(event) {
  if (!pen.line) return;
  pen.points.push(inkPlace(event));
  pen.line.setAttribute("d", `M${pen.points.join("L")}`);
}

function inkUp() {
  pen.line = null;
}

function listenToPen() {
  ink.setAttribute("viewBox", "0 0 1000 1000");
  ink.setAttribute("preserveAspectRatio", "none");
  ink.addEventListener("pointerdown", inkDown);
  ink.addEventListener("pointermove", inkMove);
  for (const end of ["pointerup", "pointercancel"]) ink.addEventListener(end, inkUp);
  let drawnOn = now.scene;
  moved.push(() => {
    if (drawnOn !== now.scene) wipe();
    drawnOn = now.scene;
  });
}
