// A layout while it is written in an editor: the page follows its file, and asks for nothing while
// nothing happens.
//
// Against: the requests that the browser makes, and on Linux what the system says of the program's
// watches.
import assert from "node:assert/strict";
import { readFileSync, readdirSync, readlinkSync, renameSync } from "node:fs";
import path from "node:path";
import { demos } from "./aid/packages.mjs";
import { choose, go, open, press, text } from "./aid/window.mjs";

const ROW = readFileSync(path.join(demos, "../../../layouts/row-six.toml"), "utf8");
const FIRST = 'numbers = { left = 1, right = 2 }';

const wait = (ms) => new Promise((done) => setTimeout(done, ms));

/** A clinic whose layout is looked at. */
async function looked(bench) {
  const clinic = bench.folder();
  clinic.write("mine.toml", ROW.replace('name = "row-six"', 'name = "mine"'));
  await clinic.serve();
  const page = await bench.window(clinic);
  await Promise.all([page.waitForNavigation(), page.locator("a[href^='/layout/']").first().click()]);
  assert.match(await text(page, "#drawn"), /\b1\b/);
  return { clinic, page };
}

/** Waits until the drawing says something; how long that took. */
async function shows(page, what) {
  const begin = Date.now();
  await page.waitForFunction((own) => document.querySelector("#drawn").textContent.includes(own), what, { timeout: 20_000, polling: 20 });
  return Date.now() - begin;
}

/** A layout with a seam that crosses another and ends at nothing. */
const CROSSING = ROW.replace('name = "row-six"', 'name = "crossing"')
  .replace("[points]", '[points]\nlow = ["30%", "20%"]')
  .replace("[seams]", '[seams]\nslash = { through = ["low", "front"] }');

export default {
  "a layout of the folder is taken on the page, and the command line understands it": async (bench) => {
    const clinic = bench.folder();
    clinic.demo("DEMO-1");
    clinic.write("mine.toml", ROW.replace('name = "row-six"', 'name = "mine"'));
    clinic.write("crossing.toml", CROSSING);
    await clinic.serve();
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-1");
    await go(page, "cushion");
    // What cannot be drawn is not offered, and says why with its line.
    assert.equal(await page.locator('input[name="choice"][value$=" crossing.toml"]').count(), 0);
    assert.match(await text(page, "fieldset:has(> legend:text-is('crossing.toml'))"), /slash = /);
    await choose(page, "choice", "440x400 mine.toml");
    await press(page, "main form.stack > .buttons button");
    assert.match(clinic.text("DEMO-1.toml"), /layout = "mine\.toml"/);
    await clinic.answer("check", "DEMO-1.toml");
    // A layout that is spoilt later leaves a way to another one.
    clinic.write("mine.toml", CROSSING);
    await go(page, "cushion");
    await choose(page, "choice", "440x400 row-six");
    await press(page, "main form.stack > .buttons button");
    assert.match(clinic.text("DEMO-1.toml"), /layout = "row-six"/);
  },

  "what is refused is drawn with a ring for each remark, within a window": async (bench) => {
    const clinic = bench.folder();
    clinic.write("crossing.toml", CROSSING);
    await clinic.serve();
    const page = await bench.window(clinic);
    await Promise.all([page.waitForNavigation(), page.locator("a[href^='/layout/']").first().click()]);
    const remarks = await page.locator("#drawn ol.remarks > li").count();
    assert.ok(remarks > 0);
    const numbers = (await page.locator("#drawn .drawing svg text").allTextContents()).filter((own) => /^\d+$/.test(own));
    assert.deepEqual(numbers.sort(), Array.from({ length: remarks }, (_, at) => `${at + 1}`));
    const box = await page.locator("#drawn .drawing svg").boundingBox();
    assert.ok(box.y + box.height <= 800, `${box.y + box.height}`);
    assert.match(await text(page, "#drawn h2"), /crossing\.toml/);
    await Promise.all([page.waitForNavigation(), page.locator('main a[href="/"]').click()]);
  },

  "what is saved is there within a second, and nothing is asked meanwhile": async (bench) => {
    const { clinic, page } = await looked(bench);
    const asked = [];
    await wait(500);
    page.on("request", (own) => asked.push(own.url()));
    await wait(4000);
    assert.deepEqual(asked, []);
    const own = clinic.text("mine.toml");
    assert.ok(own.includes(FIRST));
    const times = [];
    for (const number of [71, 72, 73]) {
      const next = own.replace(FIRST, `numbers = { left = ${number}, right = 2 }`);
      // Editors write into the file, or put another in its place.
      if (number === 72) {
        clinic.write("mine.toml~", next);
        renameSync(clinic.path("mine.toml~"), clinic.path("mine.toml"));
      } else clinic.write("mine.toml", next);
      times.push(await shows(page, `${number}`));
    }
    // Once of three: other tests share the machine.
    assert.ok(Math.min(...times) < 1000, `${times} ms`);
    // What is wrong is said beside the drawing, which comes back when it is right again.
    clinic.write("mine.toml", own.replace(FIRST, "numbers = { left = 1, right = 1 }"));
    await page.locator("#drawn .remarks li").first().waitFor({ timeout: 20_000 });
    clinic.write("mine.toml", own.replace(FIRST, "numbers = { left = 74, right = 2 }"));
    await shows(page, "74");
  },

  "a page that is left ends the watch": async (bench) => {
    if (process.platform !== "linux") return bench.leaveOut("only Linux says what a program watches");
    const { clinic, page } = await looked(bench);
    const folder = `/proc/${clinic.child.pid}/fd`;
    const watches = () => readdirSync(folder).filter((fd) => {
      try { return readlinkSync(path.join(folder, fd)).includes("inotify"); } catch { return false; }
    }).length;
    const until = async (count) => { for (let at = 0; at < 200 && watches() !== count; at += 1) await wait(50); return watches(); };
    assert.equal(await until(1), 1);
    const two = await page.context().newPage();
    await two.goto(page.url());
    assert.equal(await until(2), 2);
    await two.close();
    assert.equal(await until(1), 1);
    await page.goto(`${clinic.origin}/`);
    assert.equal(await until(0), 0);
  },

  "a program that was stopped is asked only at times": async (bench) => {
    const { clinic, page } = await looked(bench);
    const asked = [];
    page.on("requestfailed", (own) => asked.push(own.url()));
    await clinic.stop();
    await wait(1500);
    // It asks at times, not again and again.
    assert.ok(asked.length <= 2, `${asked.length}`);
    bench.errors.length = 0;
  },
};
