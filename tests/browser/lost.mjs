// Nothing is lost: two windows and an editor on one file, a program that is killed, a folder that
// cannot be written.
//
// Against: the file on the disk, read by the test itself, and the command line, which must still
// read it.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { chmodSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { fill, go, next, open, press, step, text, unfold } from "./aid/window.mjs";

/** Opens DEMO-1's measures. */
async function measure(page, clinic) {
  await open(page, clinic.origin, "DEMO-1");
  await go(page, "measure/hips");
}

/** Types into a box and leaves it, which keeps it; waits until that is said. */
async function keep(page, name, value) {
  const id = `#f-${name.replaceAll(".", "-")}`;
  await page.locator(id).fill(value);
  const [got] = await Promise.all([page.waitForResponse((own) => own.request().method() === "POST"), page.locator(id).blur()]);
  return got;
}

export default {
  "a lost file is brought back from a card, and is no fitting": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const counts = (file) => [...file.matchAll(/number = (\d+), (?:stock = \d+, )?(?:planned|cells) = (\d+)/g)].map((own) => `${own[1]}=${own[2]}`).slice(-10);
    const before = clinic.text("DEMO-1.toml");
    await clinic.answer("print", "DEMO-1.toml", "--out", "papers");
    rmSync(clinic.path("DEMO-1.toml"));
    const page = await bench.window(clinic);
    const form = 'form[action="/clients/lost"]';
    const bring = async (fields) => {
      await page.goto(`${clinic.origin}/`);
      await unfold(page);
      for (const [name, value] of Object.entries(fields)) {
        const box = page.locator(`${form} [name="${name}"]`);
        if (name === "pdf") await box.selectOption({ label: value });
        else await box.fill(value);
      }
      await press(page, `${form} button`);
    };
    const [card] = readdirSync(clinic.path("papers")).filter((name) => name.endsWith("setup-card.pdf"));
    const there = () => existsSync(clinic.path("K-9.toml"));
    for (const wrong of [{ code: "K-9", text: "SW1/ROW-SIX/1" }, { code: "no code", pdf: `papers/${card}` }, { code: "K-9" }]) {
      await bring(wrong);
      assert.ok(await page.locator("[role=alert]").count(), JSON.stringify(wrong));
      assert.ok(!there(), JSON.stringify(wrong));
      // What was typed stands there still, beside why it was refused.
      assert.ok(await page.locator(`${form} [role=alert]`).isVisible(), JSON.stringify(wrong));
      for (const name of ["text", "code"]) assert.equal(await page.inputValue(`${form} [name="${name}"]`), wrong[name] ?? "");
    }
    await bring({ code: "K-9", pdf: `papers/${card}` });
    // What came back is said, and where it goes on.
    assert.match(await text(page), new RegExp(counts(before).map((own) => own.split("=")[1]).join(", ")));
    await press(page, "main a.button");
    assert.equal(step(page), "measure", await text(page));
    const made = clinic.text("K-9.toml");
    assert.deepEqual(counts(made), counts(before));
    assert.doesNotMatch(made.replace(/^#.*$/gm, ""), /passed|fitting check/);
    // What is there is never written over.
    await bring({ code: "K-9", pdf: `papers/${card}` });
    assert.ok(await page.locator("[role=alert]").count());
    assert.equal(clinic.text("K-9.toml"), made);
    // The rest is asked as of a new client.
    await open(page, clinic.origin, "K-9");
    assert.equal(await page.inputValue("#f-measures-hip_width"), "");
    await keep(page, "measures.hip_width", "395");
    assert.match(clinic.text("K-9.toml"), /hip_width = 395/);
  },

  "the second of two windows is told and shown both": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const one = await bench.window(clinic);
    await measure(one, clinic);
    const two = await one.context().newPage();
    await two.goto(one.url());
    await keep(one, "measures.hip_width", "401");
    assert.match(clinic.text("DEMO-1.toml"), /hip_width = 401/);
    await fill(two, { "measures.hip_width": "407" });
    await next(two);
    const said = await text(two);
    assert.match(said, /401/);
    assert.equal(await two.inputValue("#f-measures-hip_width"), "407");
    assert.match(clinic.text("DEMO-1.toml"), /hip_width = 401/);
    // Neither another answer nor the next page writes it by the way.
    await keep(two, "measures.trochanter_width", "371");
    await next(two);
    assert.match(clinic.text("DEMO-1.toml"), /trochanter_width = 371/);
    assert.match(clinic.text("DEMO-1.toml"), /hip_width = 401/);
    assert.equal(await two.inputValue("#f-measures-hip_width"), "407");
    await Promise.all([two.waitForNavigation(), two.locator("button[name=mine]").click()]);
    assert.match(clinic.text("DEMO-1.toml"), /hip_width = 407/);
    // What stands there may be kept.
    await keep(one, "measures.hip_width", "403");
    await Promise.all([one.waitForNavigation(), one.locator("button[name=theirs]").click()]);
    assert.match(clinic.text("DEMO-1.toml"), /hip_width = 407/);
    assert.equal(await one.inputValue("#f-measures-hip_width"), "407");
  },

  "what an editor changes meanwhile stays": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const page = await bench.window(clinic);
    await measure(page, clinic);
    const edited = clinic.text("DEMO-1.toml").replace("trochanter_width = 370", "trochanter_width = 377 # by hand");
    clinic.write("DEMO-1.toml", edited);
    await keep(page, "measures.hip_width", "399");
    assert.equal(clinic.text("DEMO-1.toml"), edited.replace("hip_width = 395", "hip_width = 399"));
    // A box that was not touched brings back nothing.
    await next(page);
    assert.match(clinic.text("DEMO-1.toml"), /trochanter_width = 377 # by hand/);
  },

  "a box that is left and a button that follows at once lose nothing": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const page = await bench.window(clinic);
    await measure(page, clinic);
    for (let mm = 500; mm < 512; mm += 1) {
      await go(page, "measure/hips");
      await fill(page, { "measures.trochanter_width": `${mm - 100}`, "measures.hip_width": `${mm / 10} cm` });
      await next(page);
      assert.match(page.url(), /measure\/legs$/, await text(page));
      assert.match(clinic.text("DEMO-1.toml"), new RegExp(`hip_width = ${mm}\\b`));
      assert.match(clinic.text("DEMO-1.toml"), new RegExp(`trochanter_width = ${mm - 100}\\b`));
    }
  },

  "what was answered is there after the program was killed": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const page = await bench.window(clinic);
    await measure(page, clinic);
    await keep(page, "measures.hip_width", "403");
    await clinic.stop("SIGKILL");
    await clinic.answer("check", "DEMO-1.toml");
    assert.match(clinic.text("DEMO-1.toml"), /hip_width = 403/);
    await clinic.serve();
    const again = await bench.window(clinic);
    await open(again, clinic.origin, "DEMO-1");
    await go(again, "measure/hips");
    assert.equal(await again.inputValue("#f-measures-hip_width"), "403");
    assert.deepEqual(readdirSync(clinic.folder), ["DEMO-1.toml"]);
  },

  "a folder that cannot be written is said, and nothing is half-written": async (bench) => {
    if (process.getuid?.() === 0) return bench.leaveOut("whoever is root writes in every folder");
    const clinic = await bench.clinic("DEMO-1");
    const page = await bench.window(clinic);
    await measure(page, clinic);
    const before = clinic.text("DEMO-1.toml");
    chmodSync(clinic.folder, 0o555);
    try {
      await fill(page, { "measures.hip_width": "399" });
      await next(page);
      assert.ok(await page.locator("[role=alert]").count(), await text(page));
      assert.equal(clinic.text("DEMO-1.toml"), before);
    } finally { chmodSync(clinic.folder, 0o755); }
  },

  "a full disk is said, and nothing is half-written": async (bench) => {
    const disk = mkdtempSync(path.join(os.tmpdir(), "disk-"));
    try {
      execFileSync("mount", ["-t", "tmpfs", "-o", "size=64k", "tmpfs", disk], { stdio: "ignore" });
    } catch {
      rmSync(disk, { recursive: true, force: true });
      return bench.leaveOut("no disk can be made here; only root may");
    }
    try {
      const clinic = bench.folder(disk);
      clinic.demo("DEMO-1");
      await clinic.serve();
      const page = await bench.window(clinic);
      await measure(page, clinic);
      const before = clinic.text("DEMO-1.toml");
      try { clinic.write("full", "x".repeat(64 * 1024)); } catch { /* now it is full */ }
      // Under the box as it is left, and again by the button.
      await keep(page, "measures.hip_width", "399");
      await page.locator("#f-measures-hip_width-about[aria-live] .error").waitFor();
      await fill(page, { "measures.hip_width": "398" });
      await page.locator("main form.stack .buttons button").click();
      await page.locator("[role=alert]").first().waitFor();
      assert.equal(clinic.text("DEMO-1.toml"), before);
      rmSync(clinic.path("full"));
      await measure(page, clinic);
      await keep(page, "measures.hip_width", "399");
      assert.match(clinic.text("DEMO-1.toml"), /hip_width = 399/);
      await clinic.stop();
    } finally {
      execFileSync("umount", ["-l", disk]);
      rmSync(disk, { recursive: true, force: true });
    }
  },
};
