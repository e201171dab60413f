// Paper that moves in a picture: it turns about a line, spins about a point, or is cut along a line.
// Marks are paths of straight lines, in mm; nothing here knows what they mean, or of slides.

const EYE = 240; // How far above the table the viewer's eye is, in mm of the picture.

function numbers(text) {
  return text.trim().split(/[\s,]+/).map(Number);
}

// Reads a path of straight lines into its corners, a letter with each: M begins, L goes on, Z closes.
// In the text H and V go level and upright, and small letters count on from the corner before.
function readPath(text) {
  let [x, y, begun] = [0, 0, [0, 0]];
  return [...text.matchAll(/([MLHVZ])([^MLHVZ]*)/gi)].map(([, letter, rest]) => {
    const command = letter.toUpperCase();
    const values = (rest.match(/-?[\d.]+/g) ?? []).map(Number);
    const [left, above] = letter === command ? [0, 0] : [x, y];
    if (command === "Z") [x, y] = begun;
    else if (command !== "V") x = left + values[0];
    if (command !== "H" && command !== "Z") y = above + values.at(-1);
    if (command === "M") begun = [x, y];
    return [command === "M" || command === "Z" ? command : "L", x, y];
  });
}

function writePath(path, carry) {
  let text = "";
  for (const [letter, x, y] of path) {
    if (letter === "Z") {
      text += "Z";
    } else {
      const [u, v] = carry(x, y);
      text += `${letter}${u.toFixed(2)} ${v.toFixed(2)}`;
    }
  }
  return text;
}

// Gives how a point is seen while paper turns about the line through `pivot` with unit `normal`.
function turnedPoint(x, y, { pivot, normal, over, centre }, angle) {
  const distance = (x - pivot[0]) * normal[0] + (y - pivot[1]) * normal[1];
  const slide = distance * (Math.cos(angle) - 1);
  const height = distance * Math.sin(angle) * (over ? 1 : -1);
  const nearer = EYE / (EYE - height);
  return [
    centre[0] + (x + slide * normal[0] - centre[0]) * nearer,
    centre[1] + (y + slide * normal[1] - centre[1]) * nearer,
  ];
}

function readFlap(element) {
  const outline = readPath(element.querySelector(".face .paper").getAttribute("d"));
  const marks = [...element.querySelectorAll("path")].map((path) => ({
    path,
    below: Number(path.dataset.below ?? 0),
    points: path.dataset.below ? outline : readPath(path.getAttribute("d")),
  }));
  return { element, marks, moves: element.dataset.moves === "1", order: numbers(element.dataset.order) };
}

function readStage(element) {
  const { kind, pivot, normal, over, degrees, start, end } = element.dataset;
  return {
    element,
    kind,
    pivot: pivot && numbers(pivot),
    normal: normal && numbers(normal),
    over: over === "1",
    degrees: Number(degrees),
    ends: start && [numbers(start), numbers(end)],
    centre: numbers(element.ownerSVGElement.dataset.centre),
    stack: element.querySelector(".flaps"),
    flaps: [...element.querySelectorAll(".flap")].map(readFlap),
    painted: "",
  };
}

// Puts the flaps in painting order: what moves over is in front, what moves behind is at the back.
function paintInOrder(stage, half) {
  if (stage.painted === half) return;
  stage.painted = half;
  const rank = (flap) => (flap.moves === stage.over ? 1 : 0);
  const sorted = [...stage.flaps].sort((a, b) => rank(a) - rank(b) || a.order[half] - b.order[half]);
  stage.stack.replaceChildren(...sorted.map((flap) => flap.element));
}

function turnStage(stage, share) {
  const half = share > 0.5 ? 1 : 0;
  stage.element.dataset.half = String(half);
  paintInOrder(stage, half);
  for (const flap of stage.flaps) {
    if (!flap.moves) continue;
    for (const { path, below, points } of flap.marks) {
      const side = path.parentElement.classList;
      if (side.contains(half ? "first" : "last")) continue;
      const carry = (x, y) => turnedPoint(x, y, stage, share * Math.PI).map((value) => value + below);
      path.setAttribute("d", writePath(points, carry));
    }
  }
}

function cutStage(stage, share) {
  const [[x, y], [endX, endY]] = stage.ends;
  const [dx, dy] = [(endX - x) * share, (endY - y) * share];
  stage.element.querySelector(":scope > .cut").setAttribute("d", `M${x} ${y}L${(x + dx).toFixed(2)} ${(y + dy).toFixed(2)}`);
  stage.element.querySelector(".scissors").setAttribute("transform", `translate(${dx.toFixed(2)} ${dy.toFixed(2)})`);
}

function spinStage(stage, share) {
  stage.stack.setAttribute("transform", `rotate(${(stage.degrees * share).toFixed(3)} ${stage.pivot.join(" ")})`);
}

const STAGES = { turn: turnStage, cut: cutStage, spin: spinStage };

// Shows a picture in motion at a time: 0 is before its first stage, 1 after it and before the second.
function showMovement(picture, time) {
  picture.stages ??= [...picture.querySelectorAll(".stage")].map(readStage);
  const last = picture.stages.length;
  const current = Math.min(last - 1, Math.floor(time));
  picture.dataset.half = time > last / 2 ? "1" : "0";
  picture.stages.forEach((stage, index) => {
    stage.element.classList.toggle("waiting", index !== current);
    if (index === current) STAGES[stage.kind](stage, time - index);
  });
}
