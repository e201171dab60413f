// The paper moves on the bench as it does on the slides; who asked for less motion sees it lie at once.

const MOTION_MS = 650;
const calm = window.matchMedia("(prefers-reduced-motion: reduce)");

const eased = (share) => (1 - Math.cos(Math.PI * share)) / 2;

// Show how the paper moves, and come back when it lies.
export function showMoving(bench, html) {
  if (calm.matches || document.hidden) return Promise.resolve();
  bench.innerHTML = html;
  const picture = bench.firstElementChild;
  const stages = picture.querySelectorAll(".stage").length;
  const length = MOTION_MS * Math.min(stages, 3);
  return new Promise((done) => {
    const begun = performance.now();
    const frame = (moment) => {
      const share = Math.min(1, Math.max(0, moment - begun) / length);
      const time = share * stages;
      showMovement(picture, share < 1 ? Math.floor(time) + eased(time % 1) : stages);
      if (share < 1) requestAnimationFrame(frame);
      else done();
    };
    requestAnimationFrame(frame);
  });
}
