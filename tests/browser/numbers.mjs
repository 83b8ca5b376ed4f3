// The numbers on the plan's screen.
//
// Against: the command line's own answers for the same file and counts (`predict --json`,
// `plan --json`). The page says whole millimetres, so a number may be off by half of one; beside
// that, an answer of a page that follows touches begins its search elsewhere and may differ by the
// rounding of a search, for which a tenth is let.
import assert from "node:assert/strict";
import { fill, go, open, press, settled, step, text } from "./aid/window.mjs";

/** mm */
const ROUNDED = 0.6;

/** The numbers of a cell of the table: the central one, and its range. */
const numbers = async (page, value) => ((await text(page, `#verdict [data-value="${value}"]`)).match(/\d+(\.\d+)?/g) ?? []).map(Number);

const counts = (page) => page.$$eval("#counts .stepper", (all) => Object.fromEntries(all.map((own) => {
  const box = own.querySelector("input[type=hidden]");
  return [box.name.slice(6), [own.querySelector(".count").textContent, box.value]];
})));

const cells = (of) => Object.entries(of).map(([number, [shown]]) => `${number}=${shown}`);

/** Compares what is shown with the command line's answer for the counts that are shown. */
async function agree(page, clinic, file) {
  const shown = await counts(page);
  for (const [number, [seen, sent]] of Object.entries(shown)) assert.equal(seen, sent, `count ${number}`);
  const taken = await page.$$eval("#counts-to-take input", (all) => all.map((own) => `${own.name.slice(6)}=${own.value}`));
  assert.deepEqual(taken, cells(shown), "other counts would be taken than are shown");
  const own = await clinic.answer("predict", file, "--cells", ...cells(shown));
  for (const side of ["left", "right"]) {
    const seen = await numbers(page, `under-${side}`);
    const wanted = [own.clearance_mm, own.clearance_low_mm, own.clearance_high_mm].map((all) => all[side]);
    assert.equal(seen.length, 3, `${side}: ${seen}`);
    for (const [at, number] of wanted.entries()) assert.ok(Math.abs(seen[at] - number) <= ROUNDED, `${side}: ${seen} for ${wanted}`);
  }
  const words = (await text(page, "#verdict table")).toLowerCase();
  assert.ok(words.includes(own.lower_side === "level" ? "level" : `${own.lower_side} lower`) || words.includes(own.lower_side), `${own.lower_side}: ${words}`);
  return own;
}

/** The rows of a table of sites, by site: kPa before and after, and the change as it is said. */
const sites = (page, table) => page.$$eval(`${table} tr[data-site]`, (all) => all.map((own) => {
  const [after, before] = [...own.querySelectorAll("td")].map((cell) => cell.textContent);
  const change = own.querySelector("[data-value=change]").textContent;
  return { id: own.dataset.site, after: parseFloat(after), before: parseFloat(before), change };
}));

/** Compares the sites that are shown with those of a report. */
function same(shown, wanted) {
  assert.deepEqual(shown.map((own) => own.id), wanted.map((own) => own.id));
  for (const [at, { id, surface_kpa: [before, after], rise }] of wanted.entries()) {
    const own = shown[at];
    // Pressures are shown with one decimal, changes in whole percents; a tenth as above.
    for (const [seen, number] of [[own.before, before], [own.after, after]]) assert.ok(Math.abs(seen - number) <= 0.06, `${id}: ${seen} for ${number}`);
    const said = own.change === "the same" ? 0 : parseFloat(own.change) * (own.change.endsWith("less") ? -1 : 1);
    assert.ok(Math.abs(said - 100 * rise) <= ROUNDED, `${id}: ${own.change} for ${rise}`);
  }
}

export default {
  "a weight that is typed in pounds is shown in pounds, and none is shown in another unit than its own": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-1");
    const weight = () => page.locator("main [name='weight.kg']");
    const unit = () => page.locator(".box-line", { has: page.locator("[name='weight.kg']") }).locator(".unit").innerText();
    const choose = async (word) => {
      await go(page, "measure");
      while (!(await weight().count())) await press(page, "main form.stack .buttons button");
      const where = step(page);
      if ((await page.locator(`[name=weights][value=${word}]`).getAttribute("aria-pressed")) === "false") await press(page, `[name=weights][value=${word}]`);
      await go(page, where);
      return [await weight().inputValue(), await unit()];
    };
    const kg = clinic.text("DEMO-1.toml").match(/^kg = (\S+)/m)[1];
    assert.deepEqual(await choose("kg"), [kg, "kg"]);
    // What the file has in kilograms is never called pounds.
    assert.deepEqual(await choose("lb"), [`${kg} kg`, "lb"]);
    await weight().fill("151.5");
    await press(page, "main form.stack .buttons button");
    assert.match(clinic.text("DEMO-1.toml"), /^lb = 151\.5/m);
    assert.deepEqual(await choose("lb"), ["151.5", "lb"]);
    // 151.5 lb of 0.45359237 kg.
    assert.match(await text(page, ".identity"), /151\.5 lb \(68\.7 kg\)/);
    assert.deepEqual(await choose("kg"), ["151.5 lb", "kg"]);
    assert.match(await text(page, ".identity"), /151\.5 lb \(68\.7 kg\)/);
    // Weighed later, in the record.
    await go(page, "review");
    await page.locator("details.entry", { has: page.locator("[name=weight]") }).locator("summary").click();
    await fill(page, { weight: "148.3 lb" });
    await page.fill("#by-weighed", "OT");
    await press(page, "form[action$='weighed'] button");
    assert.match(await text(page, ".history li:first-child"), /148\.3 lb/);
    assert.match(await text(page, ".identity"), /148\.3 lb/);
  },

  "every named site is there before and after, and only what matters is open": async (bench) => {
    const clinic = await bench.clinic("DEMO-1", "DEMO-3");
    const page = await bench.window(clinic);
    for (const code of ["DEMO-1", "DEMO-3"]) {
      await open(page, clinic.origin, code);
      await go(page, "plan/made");
      await settled(page);
      const { costs } = await clinic.answer("plan", `${code}.toml`);
      // Both seat bones, both trochanters, both thighs and the coccyx.
      assert.equal(costs.sites.length, 7, code);
      same(await sites(page, "#all-sites"), costs.sites);
      same(await sites(page, "#verdict > table"), [...costs.careful_sites, ...costs.risen_sites]);
      assert.equal(await page.locator("#all-sites[open]").count(), 0, code);
      await page.locator("#all-sites > summary").click();
      assert.ok(await page.locator("#all-sites tr[data-site=right-thigh]").isVisible());
    }
  },

  "of counts of one's own the sites are those of the command line": async (bench) => {
    const clinic = await bench.clinic("DEMO-2");
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-2");
    await go(page, "plan");
    await settled(page);
    await page.locator("#more-1").click();
    await page.locator("#all-sites").waitFor({ state: "attached", timeout: 30_000 });
    await settled(page);
    const own = await agree(page, clinic, "DEMO-2.toml");
    // A prediction is told from what is in the cushion, and these counts from the stock fill.
    assert.equal(own.costs.from, "present-counts");
    const shown = await sites(page, "#all-sites");
    assert.deepEqual(shown.map((site) => site.id), own.costs.sites.map((site) => site.id));
    for (const [at, { id, surface_kpa: [, after] }] of own.costs.sites.entries()) assert.ok(Math.abs(shown[at].after - after) <= 0.06, `${id}: ${shown[at].after} for ${after}`);
  },

  "what is worked out is what the command line works out": async (bench) => {
    const clinic = await bench.clinic("DEMO-2");
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-2");
    await go(page, "plan/made");
    await settled(page);
    const plan = await clinic.answer("plan", "DEMO-2.toml");
    const shown = Object.fromEntries(Object.entries(await counts(page)).map(([number, [seen]]) => [number, Number(seen)]));
    assert.deepEqual(shown, Object.fromEntries(plan.compartments.map((own) => [own.number, own.planned])));
    await agree(page, clinic, "DEMO-2.toml");
    const goals = await page.$$eval("#verdict .sayings li", (all) => all.map((own) => own.className === "yes"));
    assert.deepEqual(goals, plan.goals.map((own) => own.met));
  },

  "after touches the cushion says what a page of these counts says": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-1");
    await go(page, "plan");
    await settled(page);
    // So quickly that answers are overtaken, and on compartments beside each other.
    for (const own of ["more-1", "fewer-3", "more-1", "more-2"]) await page.locator(`#${own}`).evaluate((button) => button.click());
    await settled(page);
    const said = (cushion) => ({
      all: cushion.querySelector("#all-cells").textContent,
      drawn: [...cushion.querySelectorAll("svg text")].map((own) => own.textContent),
      steppers: [...cushion.querySelectorAll(".stepper")].map((own) => [
        own.textContent.replace(/\s+/g, " "),
        own.querySelector("input").value,
        cushion.querySelector(`#${own.getAttribute("aria-labelledby")}`).textContent,
      ]),
    });
    const [here, anew] = await page.evaluate(async (read) => {
      const of = new Function(`return ${read}`)();
      const form = document.getElementById("counts");
      const answer = await fetch(form.action, { method: "POST", body: new URLSearchParams(new FormData(form)) });
      const whole = new DOMParser().parseFromString(await answer.text(), "text/html");
      return [document, whole].map((own) => of(own.getElementById("cushion")));
    }, said.toString());
    assert.deepEqual(here, anew);
  },

  "quick touches end with the numbers of the last counts": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    // Nobody has felt anything yet.
    clinic.write("DEMO-1.toml", clinic.text("DEMO-1.toml").replace(/\[\[record\]\]\nwhat = "adjustment"[\s\S]*/, ""));
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-1");
    await go(page, "plan");
    await settled(page);
    await agree(page, clinic, "DEMO-1.toml");
    const before = await counts(page);
    // All within one turn of the page: none waits for an answer.
    await page.evaluate(() => {
      for (const name of ["more-2", "more-2", "more-2", "fewer-1", "more-2", "fewer-5"]) document.getElementById(name).click();
    });
    await page.waitForFunction(() => document.querySelector("#verdict .range"), undefined, { timeout: 30_000 });
    await settled(page);
    const after = await counts(page);
    const change = (number) => Number(after[number][0]) - Number(before[number][0]);
    assert.deepEqual([1, 2, 3, 5].map(change), [-1, 4, 0, -1]);
    await agree(page, clinic, "DEMO-1.toml");
  },

  "after checks the numbers are those of the body that hands found": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-1");
    await go(page, "plan");
    await settled(page);
    await agree(page, clinic, "DEMO-1.toml");
  },

  "an answer to counts that are gone is dropped": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-1");
    await go(page, "plan");
    await settled(page);
    const statuses = await page.evaluate(async () => {
      const form = new URLSearchParams(new FormData(document.getElementById("counts")));
      const where = document.getElementById("counts").getAttribute("action");
      const headers = { "HX-Request": "true" };
      const touch = (more) => { const body = new URLSearchParams(form); body.set("more", more); return fetch(where, { method: "POST", body, headers }); };
      const spread = new URL(where.replace("touch", "spread"), location.href);
      for (const [name, value] of form) if (name !== "entries") spread.searchParams.append(name, value);
      // The spread takes its time; counts that are touched meanwhile take its place.
      const slow = fetch(spread, { headers });
      await new Promise((done) => setTimeout(done, 60));
      const quick = await touch("1");
      return [(await slow).status, quick.status];
    });
    assert.deepEqual(statuses, [204, 200]);
  },
};
