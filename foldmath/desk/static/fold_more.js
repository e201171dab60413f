// All that one step shows, asked for when somebody wants it: the last step, or the one that is chosen.

const find = (id) => document.getElementById(id);
let page = null;
let shownOf = "";

// Offer every step that is done; the last one is chosen until another is.
export function offerSteps(digest) {
  const choice = find("more-step");
  const done = [...document.querySelectorAll("#steps li:not(.refused, .waits) .sentence")];
  const kept = choice.selectedIndex < choice.length - 1 ? choice.selectedIndex : -1;
  choice.replaceChildren(...done.map((line, index) => new Option(`${index + 1}. ${line.dataset.written}`, index + 1)));
  choice.selectedIndex = kept >= 0 && kept < done.length ? kept : done.length - 1;
  find("more").hidden = !done.length;
  tell(digest);
}

async function tell(digest) {
  const wanted = `${digest} ${find("more-step").value}`;
  if (!find("more").open || !find("more-step").value || wanted === shownOf) return;
  shownOf = wanted;
  const { told, refused } = await page.ask(`step/${find("more-step").value}`);
  if (wanted === shownOf) find("more-told").innerHTML = refused ? "" : told;
}

export function listenToMore(surroundings) {
  page = surroundings;
  find("more").addEventListener("toggle", () => tell(page.digest()));
  find("more-step").addEventListener("change", () => tell(page.digest()));
}
