// What is seen before a fold is done: given polygons reflected at a given line, and the crease. Nothing else.

const SVG = "http://www.w3.org/2000/svg";
const FAR = 1000; // Past every picture, in mm.

function make(name, attributes, ...children) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...children);
  return element;
}

// The matrix of the reflection at the line through a point with a unit normal.
function mirror([x, y, a, b]) {
  const far = 2 * (a * x + b * y);
  return `matrix(${1 - 2 * a * a} ${-2 * a * b} ${-2 * a * b} ${1 - 2 * b * b} ${far * a} ${far * b})`;
}

// The side of the line to which its normal points, as far as any picture goes.
function side([x, y, a, b]) {
  const ends = [[x - b * FAR, y + a * FAR], [x + b * FAR, y - a * FAR]];
  const beyond = ends.map(([u, v]) => [u + a * FAR, v + b * FAR]).reverse();
  return [...ends, ...beyond].map((point) => point.join(",")).join(" ");
}

// The line that carries one point onto another.
export function freeLine([x, y], [toX, toY]) {
  const far = Math.hypot(x - toX, y - toY);
  return [(x + toX) / 2, (y + toY) / 2, (x - toX) / far, (y - toY) / far];
}

// Show the crease of the fold to come, and the moving paper, folded at another line while it is not snapped.
export function preview(picture, crease, line, behind) {
  const place = picture.querySelector("#preview");
  picture.querySelector("#moving-side polygon").setAttribute("points", side(line));
  const covers = place.dataset.covers;
  const [x, y, a, b] = crease;
  const left = make("g", { "clip-path": "url(#moving-side)" }, make("path", { class: "leaves", d: covers }));
  const flap = make("g", { transform: mirror(line) },
    make("g", { "clip-path": "url(#moving-side)" }, make("path", { class: behind ? "flap-behind" : "flap-over", d: covers })));
  const ends = `M${x - b * FAR} ${y + a * FAR}L${x + b * FAR} ${y - a * FAR}`;
  const fold = make("g", { "clip-path": "url(#on-paper)" }, make("path", { class: "crease-to-come", d: ends }));
  place.replaceChildren(left, flap, fold);
}

export function clear(picture) {
  picture?.querySelector("#preview")?.replaceChildren();
}

// Lay something to take on every edge and corner: a button with a name, as large as a finger.
export function drawGrips(picture, held) {
  const grips = held.map(({ name, grip, along }, index) => {
    const place = { class: `grip ${along.length ? "edge-grip" : "corner-grip"}`, role: "button", tabindex: 0, "aria-label": name, "data-held": index };
    if (along.length) {
      const [[x, y], [endX, endY]] = along;
      const d = `M${x} ${y}L${endX} ${endY}`;
      return make("g", place, make("path", { class: "reach", d }), make("path", { class: "mark", d }));
    }
    return make("g", place, make("circle", { class: "reach", cx: grip[0], cy: grip[1], r: 3 }), make("circle", { class: "mark", cx: grip[0], cy: grip[1], r: 1.5 }));
  });
  picture.querySelector("#grips").replaceChildren(...grips);
}
