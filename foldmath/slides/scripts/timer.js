// A count-down in large figures; its end is kept, so that a reload does not lose it.

const clock = { end: Number(kept(localStorage, named("end"))) || 0 };

function startClock(minutes) {
  setClock(Date.now() + minutes * 60000);
}

function setClock(end) {
  clock.end = end;
  keep(localStorage, named("end"), end ? String(end) : null);
  showClock();
  changed();
}

function showClock() {
  const left = Math.max(0, Math.ceil((clock.end - Date.now()) / 1000));
  const face = find("clock");
  face.hidden = !clock.end;
  face.classList.toggle("over", left === 0);
  face.textContent = left ? `${Math.floor(left / 60)}:${String(left % 60).padStart(2, "0")}` : words.over;
}

function listenToClock() {
  for (const button of find("countdown").querySelectorAll("[data-minutes]")) {
    button.addEventListener("click", () => closeAnd(() => act("clock", Number(button.dataset.minutes))));
  }
  find("own").addEventListener("click", () => {
    const own = find("own-minutes");
    if (own.reportValidity()) closeAnd(() => act("clock", own.valueAsNumber));
  });
  find("stop").addEventListener("click", () => closeAnd(() => act("clock", 0)));
  setInterval(showClock, 250);
  showClock();
}

function closeAnd(then) {
  find("countdown").close();
  then();
}
