// What hands do on a page: the controls are found by their names in the form, which are the keys of
// the client's file, so that tests do not hang on words.
import assert from "node:assert/strict";

/** With what a page's controls are worked, by its context: "keyboard" or "touch"; a mouse where nothing is said. */
const hands = new WeakMap();

/** From now on the controls of a page are worked so. */
export const workWith = (page, own) => hands.set(page.context(), own);

/** Works a control; `where` is what is touched of it, its label say. */
async function work(page, control, where = control, key = "Enter") {
  const own = hands.get(page.context());
  if (own === "touch") return where.tap();
  if (own !== "keyboard") return where.click();
  // What the tab key does not come to, no keyboard works.
  assert.ok(await control.evaluate((it) => it.tabIndex >= 0 && !it.disabled), `no keyboard comes to ${control}`);
  await control.focus();
  return page.keyboard.press(key);
}

/** Opens all that is folded on a page. */
export async function unfold(page) {
  const closed = page.locator("main details:not([open]) > summary");
  for (let left = await closed.count(); left; left -= 1) await work(page, closed.first());
}

/** Fills boxes and ticks answers, by name: { "measures.hip_width": "395", "child": "true" }. */
export async function fill(page, answers) {
  for (const [name, value] of Object.entries(answers)) {
    const control = page.locator(`main [name="${name}"]:not([type=hidden])`);
    const kind = await control.first().evaluate((own) => own.type);
    if (kind === "radio") await choose(page, name, value);
    else if (kind === "checkbox") {
      const own = page.locator(`[name="${name}"][type=checkbox]`);
      if (!(await own.isChecked())) await work(page, own, page.locator("label", { has: own }).first(), "Space");
    }
    else await control.first().fill(value);
  }
}

/** Ticks one answer of a question; its label is touched, as a finger does. */
export async function choose(page, name, value) {
  const own = page.locator(`input[name="${name}"][value="${value}"]`);
  if (!(await own.count())) assert.fail(`no answer ${value} to ${name}: ${await text(page)}`);
  const details = page.locator("details:not([open])", { has: own });
  if (await details.count()) await work(page, details.first().locator("> summary"));
  // What is said under the answer before may come just now and move this one.
  await page.locator(".htmx-request").first().waitFor({ state: "detached" });
  await work(page, own.first(), page.locator("label", { has: own }).first(), "Space");
  assert.ok(await own.isChecked(), `${name} is not ${value}`);
}

/** Presses a button and waits for the page that follows. */
export async function press(page, selector) {
  const [got] = await Promise.all([
    page.waitForNavigation({ waitUntil: "load" }),
    work(page, page.locator(selector).first()),
  ]);
  return got;
}

/** Sends the form of questions that is shown. */
export const next = (page, ...within) => press(page, `${within[0] ?? "main form.stack"} .buttons button`);

export const text = async (page, selector = "main") => (await page.locator(selector).first().innerText()).replace(/\s+/g, " ").trim();

/** Where in the work the page is: `measure/legs`. */
export const step = (page) => new URL(page.url()).pathname.split("/").slice(3).join("/");

/** The address of a client's step from any page of the client. */
export const to = (page, where) => new URL(page.url()).pathname.split("/").slice(0, 3).join("/") + "/" + where;

export const go = (page, where) => page.goto(new URL(to(page, where), page.url()).href, { waitUntil: "load" });

/** Begins a client from the list of clients. */
export async function begin(page, origin, code, unit = "mm") {
  await page.goto(`${origin}/`);
  await fill(page, { code, unit });
  await press(page, 'form[action="/clients/new"] button');
}

/** Opens a client of the list. */
export async function open(page, origin, code) {
  await page.goto(`${origin}/`);
  await Promise.all([page.waitForNavigation(), page.locator(".clients h2 a", { hasText: code }).click()]);
}

/** Waits until nothing is worked out any more. */
export async function settled(page) {
  await page.waitForLoadState("load");
  await page.waitForFunction(
    () => !document.querySelector(".htmx-request, .htmx-swapping, .htmx-settling, .htmx-added, [hx-trigger^=load]"),
    undefined,
    { timeout: 40_000 },
  );
}
