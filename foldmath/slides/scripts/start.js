// Begins: everything is read once, and the window finds out whether it is the class's or the teacher's.

document.body.classList.add("ready");
now.speed = SPEEDS.find((speed) => String(speed) === kept(localStorage, named("speed"))) ?? 1;
for (const scene of scenes) showReveals(scene, 0);
listen();
listenToClock();
listenToPen();
// Until its own letters are unpacked, a page is fitted to others.
Promise.allSettled([...document.fonts].map((face) => face.load())).then(fit);
if (isNotes) {
  followClass();
  goTo(0, 0);
} else {
  moved.push(rememberPlace);
  window.addEventListener("hashchange", () => goTo(...readPlace()));
  goTo(...readPlace());
  serveNotes();
}
