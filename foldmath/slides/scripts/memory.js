// What a reload keeps: the place in the address, and the rest under the lesson's code and this run of it.
// Other local files may share the store, so every key is named by both.

const code = document.body.dataset.code;

function readPlace() {
  const place = /^#scene-(\d+)(?:-(\d+))?$/.exec(location.hash);
  return place ? [Number(place[1]) - 1, Number(place[2] ?? 0)] : [0, 0];
}

function rememberPlace() {
  const place = `#scene-${now.scene + 1}${now.reveal ? `-${now.reveal}` : ""}`;
  if (location.hash !== place) history.replaceState(null, "", place);
}

function kept(store, key) {
  try {
    return store.getItem(key);
  } catch {
    return null; // A browser may refuse storage to local files.
  }
}

function keep(store, key, value) {
  try {
    if (value === null) store.removeItem(key);
    else store.setItem(key, value);
  } catch {
    // Without storage everything works until a reload.
  }
}

// A run is one window of the class, from when it is opened until it is closed.
function runOfWindow() {
  const known = kept(sessionStorage, `run ${code}`);
  const run = known ?? Math.random().toString(36).slice(2, 10);
  keep(sessionStorage, `run ${code}`, run);
  return run;
}

const asked = /^#notes-(\w+)$/.exec(location.hash);
const isNotes = asked !== null;
const run = isNotes ? asked[1] : runOfWindow();
const named = (what) => `${what} ${code} ${run}`;
