// The job by keyboard alone, and with scripts off.
//
// Against: WCAG 2.2, 2.1.1 (all by keyboard) and 2.1.2 (no trap); HTML forms as every browser has
// sent them since before scripts.
import assert from "node:assert/strict";
import { go, open, press, settled, step, text } from "./aid/window.mjs";

/** Goes on with the tab key until a control has the focus. */
async function reach(page, selector) {
  for (let at = 0; at < 150; at += 1) {
    await page.keyboard.press("Tab");
    if (await page.evaluate((own) => document.activeElement?.matches(own), selector)) return;
  }
  assert.fail(`the tab key does not reach ${selector}`);
}

async function enter(page, selector, key = "Enter") {
  await reach(page, selector);
  await Promise.all([page.waitForNavigation({ waitUntil: "load" }), page.keyboard.press(key)]);
}

const order = (file) => [...file.matchAll(/want = "([^"]*)"/g)].map((own) => own[1]);

export default {
  "a client is begun, measured and planned by keyboard alone": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const page = await bench.window(clinic);
    await page.keyboard.press("Tab");
    assert.ok(await page.evaluate(() => document.activeElement.matches(".skip")), "the first stop does not skip the head");
    await reach(page, "#code");
    await page.keyboard.type("K-1");
    await Promise.all([page.waitForNavigation(), page.keyboard.press("Enter")]);
    assert.equal(step(page), "measure");
    await reach(page, "#f-measures-hip_width");
    await page.keyboard.type("16 1/2 in");
    await enter(page, "main form.stack .buttons button");
    assert.equal(step(page), "measure/legs");
    assert.match(clinic.text("K-1.toml"), /hip_width = 419/);

    await open(page, clinic.origin, "DEMO-1");
    await go(page, "goals");
    const before = order(clinic.text("DEMO-1.toml"));
    await enter(page, 'ol.goals button[name="to"][value="1"]');
    const [one, two, three] = before;
    assert.deepEqual(order(clinic.text("DEMO-1.toml")), [two, one, three]);

    await go(page, "plan/made");
    await settled(page);
    const count = () => page.locator("#more-2").evaluate((own) => own.closest(".stepper").querySelector(".count").textContent);
    const shown = Number(await count());
    await reach(page, "#more-2");
    await page.keyboard.press("Space");
    assert.equal(Number(await count()), shown + 1);
    await page.waitForFunction(() => document.querySelector("#verdict .range"));
    await settled(page);
    // The touched button still has the focus, though it was drawn anew.
    assert.equal(await page.evaluate(() => document.activeElement.id), "more-2");
    await reach(page, "#fewer-2");
    await page.keyboard.press("Space");
    await settled(page);
    assert.equal(Number(await count()), shown);
    await reach(page, "#take input[name=by]");
    await page.keyboard.type("OT");
    await enter(page, "#take button");
    assert.equal(step(page), "fill", await text(page));
  },

  "with scripts off the forms still work": async (bench) => {
    const clinic = await bench.clinic("DEMO-2");
    const page = await bench.window(clinic, { javaScriptEnabled: false });
    await page.locator("#code").fill("N-1");
    await press(page, 'form[action="/clients/new"] button');
    await page.locator("[name='measures.hip_width']").last().fill("39,5 cm");
    await press(page, "main form.stack .buttons button");
    assert.equal(step(page), "measure/legs");
    assert.match(clinic.text("N-1.toml"), /hip_width = 395/);
    await open(page, clinic.origin, "DEMO-2");
    await go(page, "plan/made");
    const shown = Number(await page.locator('.stepper .count').first().textContent());
    await press(page, "#more-1");
    assert.equal(Number(await page.locator('.stepper .count').first().textContent()), shown + 1);
    await page.locator("#take input[name=by]").fill("OT");
    await press(page, "#take button");
    assert.equal(step(page), "fill");
    assert.match(clinic.text("DEMO-2.toml"), new RegExp(`number = 1, stock = \\d+, planned = ${shown + 1} `));
  },
};
