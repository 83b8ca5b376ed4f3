// Hostile words, typed and in files: they are text everywhere, and files outside of the folder are
// neither read nor written.
//
// Against: the browser itself. What runs would call `window.caught`, which every page has; the page's
// policy would be broken aloud in the console, which fails a test too.
import assert from "node:assert/strict";
import { existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { fill, go, open, settled, text } from "./aid/window.mjs";
import { demoText } from "./aid/program.mjs";

const WORDS = [
  "<script>caught()</script>", "<img src=x onerror=caught()>", "</svg><script>caught()</script>", "\"><svg onload=caught()>",
  "'-caught()-'", "javascript:caught()", "&lt;b&gt; & \"quotes\" \\ {{7*7}} ${7*7}",
];

async function watched(bench, clinic) {
  const page = await bench.window(clinic);
  const caught = [];
  await page.exposeFunction("caught", () => caught.push(page.url()));
  page.on("dialog", (own) => { caught.push(own.message()); own.dismiss(); });
  return { page, caught };
}

const STEPS = ["measure/hips", "posture/level", "posture/balance", "skin", "function", "chair", "goals", "cushion", "plan", "fill", "checks", "moves", "carers", "sign-off", "papers", "review"];

async function allScreens(page) {
  for (const own of STEPS) {
    await go(page, own);
    await settled(page);
    assert.equal(await page.locator("main script, main [onerror], main [onload], main a[href^='javascript:']").count(), 0, own);
  }
}

export default {
  "hostile words in every box are text": async (bench) => {
    const clinic = await bench.clinic("DEMO-2");
    const { page, caught } = await watched(bench, clinic);
    await open(page, clinic.origin, "DEMO-2");
    for (const [at, own] of ["measure/hips", "measure/legs", "measure/weight", "posture/balance", "skin", "function", "chair", "carers"].entries()) {
      await go(page, own);
      for (const summary of await page.$$("main details:not([open]) > summary")) await summary.click();
      const boxes = await page.$$eval("main form.stack input[type=text], main form.stack input[type=tel], main form.stack textarea", (all) => all.map((one) => one.name));
      for (const [box, name] of boxes.entries()) await page.locator(`main form.stack [name="${name}"]`).fill(WORDS[(at + box) % WORDS.length]);
      await Promise.all([page.waitForNavigation(), page.locator("main form.stack .buttons button").click()]);
    }
    await page.goto(`${clinic.origin}/?find=${encodeURIComponent(WORDS[3])}`);
    assert.equal(await page.inputValue("#find"), WORDS[3]);
    for (const code of WORDS) {
      await page.goto(`${clinic.origin}/`);
      await page.$eval("#code", (own) => own.removeAttribute("maxlength"));
      await fill(page, { code });
      await Promise.all([page.waitForNavigation(), page.locator('form[action="/clients/new"] button').click()]);
    }
    await open(page, clinic.origin, "DEMO-2");
    await allScreens(page);
    assert.deepEqual(caught, []);
  },

  "hostile words in a file are text": async (bench) => {
    const clinic = bench.folder();
    const hostile = (text) => text
      .replace(/(taken_by|because|meanwhile|who|hours|by) = "[^"]*"/g, (_, key) => `${key} = ${JSON.stringify(WORDS[key.length % WORDS.length])}`)
      .replace(/notes = \[[^\]]*\]/, `notes = ${JSON.stringify(WORDS)}`);
    clinic.write("H-1.toml", hostile(demoText("DEMO-2")).replace("DEMO-2", "H-1"));
    clinic.write("H-2.toml", `client = "${WORDS[0].replaceAll('"', "")}"\n<script>caught()</script>\n`);
    clinic.write("<img src=x onerror=caught()>.toml", hostile(demoText("DEMO-1")).replace("DEMO-1", "H-3"));
    clinic.write("layout.toml", `format = 1\nkind = "layout"\nname = "<script>caught()</script>"\n`);
    await clinic.serve();
    const { page, caught } = await watched(bench, clinic);
    await page.goto(`${clinic.origin}/`);
    for (const own of await page.$$eval("main a[href^='/layout/'], .clients a", (all) => all.map((one) => one.href))) await page.goto(own);
    await open(page, clinic.origin, "H-1");
    await allScreens(page);
    assert.deepEqual(caught, []);
  },

  "files outside of the folder are neither read nor written": async (bench) => {
    const clinic = bench.folder();
    const outside = mkdtempSync(path.join(os.tmpdir(), "outside-"));
    try {
      const secret = demoText("DEMO-1").replace("DEMO-1", "S-1");
      writeFileSync(path.join(outside, "secret.toml"), secret);
      symlinkSync(path.join(outside, "secret.toml"), clinic.path("S-1.toml"));
      writeFileSync(path.join(path.dirname(clinic.folder), `x-${path.basename(clinic.folder)}.toml`), "format = 1\nkind = \"layout\"\n");
      const elsewhere = `../x-${path.basename(clinic.folder)}.toml`;
      clinic.write("L-1.toml", demoText("DEMO-2").replace("DEMO-2", "L-1").replace(/\[\[record\]\][\s\S]*/, "").replace('layout = "row-six"', `layout = "${elsewhere}"`));
      await clinic.serve();
      const { page } = await watched(bench, clinic);
      await page.goto(`${clinic.origin}/`);
      const listed = await text(page);
      assert.doesNotMatch(listed, /seating clinic|60 kg/);
      const link = page.locator(".clients h2 a", { hasText: "S-1" });
      if (await link.count()) {
        await Promise.all([page.waitForNavigation(), link.click()]);
        assert.ok(await page.locator("[role=alert], .heavy").count(), `a link out of the folder was followed: ${await text(page)}`);
        assert.doesNotMatch(await page.content(), /value="395"/);
      }
      await open(page, clinic.origin, "L-1");
      await go(page, "plan");
      await settled(page);
      assert.ok(await page.locator("[role=alert]").count(), await text(page));
      assert.match(await text(page, "[role=alert]"), /L-1|layout|folder/i);
      assert.equal(readFileSync(path.join(outside, "secret.toml"), "utf8"), secret);
    } finally {
      rmSync(outside, { recursive: true, force: true });
      const beside = path.join(path.dirname(clinic.folder), `x-${path.basename(clinic.folder)}.toml`);
      if (existsSync(beside)) rmSync(beside);
    }
  },
};
