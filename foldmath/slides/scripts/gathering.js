// A standing sheet that is gathered into a booklet: between the moments that the model gave, it goes straight on.

const PARTS = 4; // Stand to box, box to cross, cross to leaves, leaves to booklet.

function readGathering(picture) {
  const walls = [...picture.querySelectorAll(".wall")].map((element) => ({
    element,
    paper: element.querySelector(".paper"),
    cut: element.querySelector(".cut"),
    on: element.querySelector(".on"),
    frame: numbers(element.dataset.frame),
    cuts: [...element.dataset.cuts].map((mark) => mark === "1"),
  }));
  const moments = picture.dataset.moments.split(";").map((moment) => {
    const [order, corners] = moment.split("|");
    const flat = numbers(corners).map((value) => value / 100);
    let at = 0;
    return {
      order: numbers(order),
      walls: walls.map(({ cuts }) => cuts.map(() => [flat[at++], flat[at++]])),
    };
  });
  const { page, parts } = picture.dataset;
  return { walls, moments, page: numbers(page), parts: numbers(parts), stack: picture.querySelector(".walls") };
}

function between(some, others, share) {
  return some.map(([x, y], i) => [x + share * (others[i][0] - x), y + share * (others[i][1] - y)]);
}

function lineTo(points) {
  return points.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).join("L");
}

// Puts what is on the printed side of a wall where that side stands, if it is seen.
function placeOn(wall, corners, [width, height]) {
  const [left, right, above] = wall.frame.map((index) => corners[index]);
  const across = [right[0] - left[0], right[1] - left[1]];
  const down = [left[0] - above[0], left[1] - above[1]];
  const seen = across[0] * down[1] - across[1] * down[0];
  wall.element.classList.toggle("printed", seen > 0);
  wall.element.classList.toggle("back", seen <= 0);
  wall.on.classList.toggle("waiting", seen <= 0);
  const scaled = [...across.map((value) => value / width), ...down.map((value) => value / height), ...above];
  wall.on.setAttribute("transform", `matrix(${scaled.map((value) => value.toFixed(4)).join(" ")})`);
}

function showGathering(picture, time) {
  picture.gathering ??= readGathering(picture);
  const { walls, moments, parts, page, stack } = picture.gathering;
  const part = Math.min(PARTS - 1, Math.floor(time));
  const place = parts.slice(0, part).reduce((sum, count) => sum + count, 0) + (time - part) * parts[part];
  const first = Math.min(moments.length - 2, Math.floor(place));
  const share = place - first;
  walls.forEach((wall, index) => {
    const corners = between(moments[first].walls[index], moments[first + 1].walls[index], share);
    wall.paper.setAttribute("d", `M${lineTo(corners)}Z`);
    const cuts = corners.map((corner, i) => [corner, corners[(i + 1) % corners.length]]).filter((_, i) => wall.cuts[i]);
    wall.cut.setAttribute("d", cuts.map((ends) => `M${lineTo(ends)}`).join(""));
    placeOn(wall, corners, page);
  });
  const { order } = moments[share < 0.5 ? first : first + 1];
  stack.replaceChildren(...order.map((index) => walls[index].element));
  for (const arrows of picture.querySelectorAll("[data-part]")) {
    arrows.classList.toggle("waiting", Number(arrows.dataset.part) !== time);
  }
}
