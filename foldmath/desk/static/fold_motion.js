// The paper moves on the bench as it does on the slides; who asked for less motion sees it lie at once.

const MOTION_MS = 650;
const MOST_STAGES = 3; // Of a fan: the others pass in the time of these.
const calm = window.matchMedia("(prefers-reduced-motion: reduce)");

const eased = (share) => (1 - Math.cos(Math.PI * share)) / 2;

// What moves in a picture, in how many parts and how long: a sheet that is gathered, or folds one by one.
function movementOf(picture) {
  if (picture.classList.contains("gather")) return { parts: PARTS, length: MOTION_MS * PARTS, show: showGathering };
  const parts = picture.querySelectorAll(".stage").length;
  return { parts, length: MOTION_MS * Math.min(parts, MOST_STAGES), show: showMovement };
}

// Show how the paper moves, and come back when it lies.
export function showMoving(bench, html) {
  if (calm.matches || document.hidden) return Promise.resolve();
  bench.innerHTML = html;
  const picture = bench.firstElementChild;
  picture.classList.remove("waiting");
  picture.classList.add("bench-picture");
  const { parts, length, show } = movementOf(picture);
  return new Promise((done) => {
    const begun = performance.now();
    const frame = (moment) => {
      const share = Math.min(1, Math.max(0, moment - begun) / length);
      const time = share * parts;
      show(picture, share < 1 ? Math.floor(time) + eased(time % 1) : parts);
      if (share < 1) requestAnimationFrame(frame);
      else done();
    };
    requestAnimationFrame(frame);
  });
}
