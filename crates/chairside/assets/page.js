// What the page does beside htmx: goals are ordered by dragging, blanks that a goal does not ask
// are put aside, touches that follow each other quickly send the counts as they are then, and what
// is written elsewhere is shown anew.

/** Goals: what is dropped before another comes before it. */
function orderByDragging() {
  const list = document.querySelector("ol.goals");
  if (!list) return;
  let dragged = null;
  list.addEventListener("dragstart", (event) => {
    dragged = event.target.closest("[data-at]");
    event.dataTransfer.effectAllowed = "move";
  });
  list.addEventListener("dragover", (event) => event.preventDefault());
  list.addEventListener("drop", (event) => {
    event.preventDefault();
    const target = event.target.closest("[data-at]");
    if (!dragged || !target || dragged === target) return;
    const form = dragged.querySelector("form");
    const to = document.createElement("input");
    to.type = "hidden";
    to.name = "to";
    to.value = target.dataset.at;
    form.append(to);
    form.submit();
  });
}

/** Which blanks a goal asks for; all are shown where scripts are off. */
const ASKS = {
  "off-load": ["site", "percent"],
  "pre-ischial shelf": ["height_mm"],
  "lower front": ["side", "by_mm"],
  "medial support": ["height_mm"],
  "lateral support": ["height_mm"],
};

function showWhatIsAsked() {
  const form = document.querySelector("[data-needs=goal]");
  if (!form) return;
  const show = () => {
    const chosen = form.querySelector("[data-question=want] input:checked");
    const asked = ASKS[chosen ? chosen.value : ""] ?? [];
    for (const own of form.querySelectorAll(".needs")) {
      const key = own.dataset.question;
      own.hidden = !(key === "want" || key === "because" || asked.includes(key));
    }
  };
  form.addEventListener("change", show);
  show();
}

/** Plus and minus count at once, so that quick touches add up whatever was answered so far. */
function countAtOnce() {
  const form = document.querySelector("#counts");
  if (!form) return;
  // What is said of these is not of the counts that stand there: an answer that is overtaken says nothing.
  const touched = new Set();
  // Each touch has a number, by the time, so that those of a page that is loaded again are greater: one
  // that arrives after a later one is not asked about.
  let touch = Number(form.dataset.touches);
  form.addEventListener("htmx:configRequest", (event) => {
    const button = event.target.closest("button.step");
    if (!button) return;
    const stepper = button.closest(".stepper");
    const cells = stepper.querySelector("input[type=hidden]");
    const next = Math.max(0, Number(cells.value) + (button.name === "more" ? 1 : -1));
    cells.value = String(next);
    stepper.querySelector(".count").textContent = cells.value;
    touched.add(button.value);
    event.detail.parameters[cells.name] = cells.value;
    event.detail.parameters.touched = [...touched].join();
    touch = Math.max(touch + 1, Date.now());
    event.detail.parameters.touch = String(touch);
    delete event.detail.parameters[button.name];
    drawCount(button.value, cells.value);
    // Counts that were chosen wait for no plan.
    document.querySelector("#awaited")?.replaceChildren();
    const taken = document.querySelector(`#counts-to-take input[name="${cells.name}"]`);
    if (taken) taken.value = cells.value;
  });
  form.addEventListener("htmx:afterRequest", (event) => {
    if (event.target.closest("button.step") && event.detail.xhr.status === 200) touched.clear();
  });
}

/** Writes a count into the drawing, in the middle of where it stood. */
function drawCount(number, cells) {
  const [, count] = document.querySelectorAll(`#cushion svg [data-compartment="${number}"] text`);
  if (!count) return;
  if (count.hasAttribute("textLength")) {
    count.setAttribute("x", Number(count.getAttribute("x")) + Number(count.getAttribute("textLength")) / 2);
    count.setAttribute("text-anchor", "middle");
    count.removeAttribute("textLength");
  }
  count.textContent = cells;
}

/** After a swap the button that was touched keeps the focus. */
function keepFocus() {
  let touched = null;
  document.body.addEventListener("htmx:beforeRequest", (event) => {
    touched = event.target.id || null;
  });
  document.body.addEventListener("htmx:oobAfterSwap", () => {
    const own = touched && document.getElementById(touched);
    if (own && own !== document.activeElement && own.matches("button.step")) own.focus({ preventScroll: true });
  });
}

/** What is written elsewhere is shown anew when it is saved: one question waits for that at a time. */
async function follow() {
  const own = document.querySelector("[data-follow]");
  if (!own) return;
  for (let seen = own.dataset.seen; ;) {
    try {
      // Else a browser lets a second window wait for the answer to the first.
      const answer = await fetch(`${own.dataset.follow}?seen=${seen}`, { cache: "no-store" });
      if (answer.status === 200) {
        seen = await answer.text();
        htmx.trigger(own, "saved");
      }
      // Nothing was saved for a while.
      if (answer.status === 200 || answer.status === 204) continue;
    } catch { /* The program was stopped, or the page was left. */ }
    await new Promise((done) => setTimeout(done, 5000));
  }
}

orderByDragging();
follow();
showWhatIsAsked();
countAtOnce();
keepFocus();
document.getElementById("summary")?.focus();
