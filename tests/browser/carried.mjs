// What is begun beside the chair is carried to its end: where checks come in parts, where hands find
// right what the program would change, where moves load an injury, where other moves were made.
//
// Against: the same answers given to the command line, and the file on the disk.
import assert from "node:assert/strict";
import { CHILD } from "./aid/child.mjs";
import { choose, fill, go, open, press, settled, step, text } from "./aid/window.mjs";

const CHECKED = "main form.stack .buttons button";
const skin = (answer) => Object.fromEntries(["left-seat-bone", "right-seat-bone", "coccyx"].map((site) => [`skin.${site}`, answer]));

/** A client's window, whose cushion is filled as planned. */
async function filled(bench, code, text) {
  const clinic = bench.folder();
  if (text) clinic.write(`${code}.toml`, text);
  else clinic.demo(code);
  if (text) await clinic.answer("plan", `${code}.toml`, "--record", "--by", "OT");
  await clinic.answer("record", `${code}.toml`, "filled", "--as-planned", "--by", "OT");
  await clinic.serve();
  const page = await bench.window(clinic);
  await open(page, clinic.origin, code);
  return { clinic, page, name: `${code}.toml` };
}

/** What was expected under each seat bone, in whole millimetres. */
async function expected(clinic, name) {
  const [, left, right] = clinic.text(name).match(/expected = \{ left_mm = ([\d.]+), right_mm = ([\d.]+)/);
  return { left: Math.round(left), right: Math.round(right) };
}

/** Finds a bone too near, so that moves follow. */
async function tooNear(page) {
  await go(page, "checks");
  await fill(page, { "felt.left": "15", "felt.right": "28", by: "OT" });
  await press(page, CHECKED);
  assert.ok(await page.locator("main ol li").count(), await text(page));
}

export default {
  "a client goes on where the work stands: at the checks once the cushion is filled, at the moves once they are proposed": async (bench) => {
    const clinic = bench.folder();
    clinic.write("N-2.toml", CHILD);
    const work = (...words) => clinic.answer(...words, "--record", "--by", "OT");
    await work("plan", "N-2.toml");
    await clinic.serve();
    const page = await bench.window(clinic);
    const opens = async (wanted) => {
      await open(page, clinic.origin, "N-2");
      assert.equal(step(page), wanted, clinic.text("N-2.toml"));
    };
    await opens("plan");
    await clinic.answer("record", "N-2.toml", "filled", "--as-planned", "--by", "OT");
    await opens("checks");
    // Other goals: a plan that is not carried out yet.
    const text = clinic.text("N-2.toml");
    clinic.write("N-2.toml", text.replace(/\n\[\[record\]\]/, '\n[[goal]]\nwant = "lower front"\nside = "left"\nby_mm = 8\n\n[[record]]'));
    await work("plan", "N-2.toml", "--nearest-safe");
    await opens("moves");
  },

  "held fingers are tried again, then the cause is looked for, and no cell is moved": async (bench) => {
    const { page } = await filled(bench, "DEMO-3");
    await go(page, "checks");
    await fill(page, { "top.left": "pinched", "felt.left": "30", "felt.right": "30", by: "OT" });
    await press(page, CHECKED);
    const said = await text(page);
    const at = ["check on top again", "before the cause is found", "A pad, a towel or a sling"].map((part) => said.indexOf(part));
    assert.ok(at.every((own) => own >= 0) && at[0] < at[1] && at[1] < at[2], said);
    assert.equal(await page.locator("main .buttons a[href$='/moves']").count(), 0, said);
  },
  "a fitting is signed whose skin was looked at half an hour after the rest": async (bench) => {
    const { clinic, page, name } = await filled(bench, "N-2", CHILD.replace("healing", "healed"));
    const under = await expected(clinic, name);
    await go(page, "checks");
    await fill(page, { "felt.left": `${under.left}`, "felt.right": `${under.right / 10} cm`, "top.left": "safe", "top.right": "safe", by: "OT" });
    await press(page, CHECKED);
    await go(page, "checks");
    // What was found is there, and nothing of it is asked again.
    assert.match(await text(page), new RegExp(`${under.right} mm`));
    await fill(page, { ...skin("clear"), by: "OT" });
    await press(page, CHECKED);
    assert.equal(await page.locator("main .buttons a[href$='/checks']").count(), 0, await text(page));
    await go(page, "sign-off");
    // A refusal keeps what was ticked.
    await fill(page, { still: "yes", reach: "yes", because: "sits well", by: "OT" });
    await choose(page, "passed", "yes");
    await press(page, CHECKED);
    assert.ok(await page.locator("[role=alert]").count(), await text(page));
    for (const own of ["[name=still]", "[name=reach]", "[name=passed][value=yes]"]) assert.ok(await page.isChecked(own), own);
    assert.equal(await page.inputValue("[name=because]"), "sits well");
    await fill(page, { transfer: "yes" });
    await press(page, CHECKED);
    assert.equal(step(page), "papers", await text(page));
    assert.match(clinic.text(name), /what = "checked"[\s\S]*passed = true/);
  },

  "a mark that was seen stands until the skin is looked at again": async (bench) => {
    const { clinic, page, name } = await filled(bench, "DEMO-2");
    const under = await expected(clinic, name);
    await go(page, "checks");
    await fill(page, { "skin.coccyx": "stays", by: "OT" });
    await press(page, CHECKED);
    await go(page, "checks");
    const rest = { "top.left": "safe", "top.right": "safe", ...skin("clear") };
    delete rest["skin.coccyx"];
    await fill(page, { ...rest, "felt.left": `${under.left}`, "felt.right": `${under.right}`, by: "OT" });
    await press(page, CHECKED);
    await go(page, "sign-off");
    await fill(page, { still: "yes", transfer: "yes", reach: "yes", by: "OT" });
    await choose(page, "passed", "yes");
    await press(page, CHECKED);
    assert.equal(step(page), "sign-off", await text(page));
  },

  "a length that was felt is typed in any unit, and what is no length is said": async (bench) => {
    const { clinic, page, name } = await filled(bench, "DEMO-2");
    const before = clinic.text(name);
    await go(page, "checks");
    await fill(page, { "felt.left": "thirty", by: "OT" });
    await press(page, CHECKED);
    assert.doesNotMatch(await text(page, "main [role=alert]"), /thirtymm|`/);
    assert.equal(clinic.text(name), before);
    await fill(page, { "felt.left": "1 1/4 in", "felt.right": "3,1 cm", by: "OT" });
    await press(page, CHECKED);
    const other = bench.folder();
    other.write(name, before);
    await other.command("adjust", name, "--under", "left=1.25in", "--under", "right=31mm", "--record", "--by", "OT");
    assert.equal(clinic.text(name), other.text(name));
  },

  "moves that load an injury are taken by name, as by the command line": async (bench) => {
    const { clinic, page, name } = await filled(bench, "N-2", CHILD);
    const before = clinic.text(name);
    await go(page, "checks");
    const found = { "felt.left": "30", "felt.right": "16", "top.left": "safe", "top.right": "safe", ...skin("clear") };
    await fill(page, { ...found, by: "OT" });
    await press(page, CHECKED);
    // It is asked first, and what hands found stays in its boxes.
    assert.equal(clinic.text(name), before);
    assert.equal(await page.inputValue("[name='felt.right']"), "16");
    await press(page, "[name='nearest-safe'][value=take]");
    const other = bench.folder();
    other.write(name, before);
    await other.answer("adjust", name, "--under", "left=30mm", "--under", "right=16mm", "--top", "left=safe", "--top", "right=safe",
      "--skin", "left-seat-bone=clear", "--skin", "right-seat-bone=clear", "--skin", "coccyx=clear", "--nearest-safe", "--record", "--by", "OT");
    assert.equal(clinic.text(name), other.text(name));
    await press(page, "main .buttons a[href$='/moves']");
    assert.ok(await page.locator("form[action$='/done']").count(), await text(page));
  },

  "the nearest safe plan is taken by name, counts of one's own are not": async (bench) => {
    const clinic = bench.folder();
    // Relief that no counts bring to an injury.
    const written = CHILD.replace("percent = 10", "percent = 45");
    clinic.write("N-2.toml", written);
    await clinic.serve();
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "N-2");
    await go(page, "plan");
    await settled(page);
    await fill(page, { by: "OT" });
    await press(page, "#take > .button");
    assert.equal(clinic.text("N-2.toml"), written);
    await press(page, "[name='nearest-safe']");
    assert.equal(step(page), "fill", await text(page));
    const other = bench.folder();
    other.write("N-2.toml", written);
    await other.answer("plan", "N-2.toml", "--nearest-safe", "--record", "--by", "OT");
    assert.equal(clinic.text("N-2.toml"), other.text("N-2.toml"));
    // Other counts that fall short are refused, whatever is sent.
    await go(page, "plan");
    await settled(page);
    await page.locator(".step[name=more]").first().click();
    await settled(page);
    await fill(page, { by: "OT" });
    await press(page, "#take > .button");
    assert.equal(step(page), "plan", await text(page));
    assert.equal(await page.locator("[name='nearest-safe']").count(), 0);
  },

  "other moves than those that were proposed are moves, and nothing is put back": async (bench) => {
    const { clinic, page, name } = await filled(bench, "DEMO-3");
    await tooNear(page);
    await go(page, "moves");
    await page.locator("summary", { hasText: /./ }).last().click();
    const now = clinic.text(name).match(/what = "filled"[\s\S]*?counts = \[\{ number = 1, cells = (\d+) \}, \{ number = 2, cells = (\d+)/);
    await fill(page, { "counted.1": `${Number(now[1]) + 9}`, "counted.2": now[2], by: "OT" });
    await press(page, "form[action$='/counted'] button");
    assert.match(clinic.text(name), /what = "moved"[\s\S]*$/);
    assert.doesNotMatch(clinic.text(name), /what = "recount"/);
    const { out } = await clinic.command("history", name);
    assert.doesNotMatch(out, /Put .* back/i);
  },

  "cells that hands find right stay, and the proposal is withdrawn with its reason": async (bench) => {
    const { clinic, page, name } = await filled(bench, "DEMO-3");
    await tooNear(page);
    const entries = clinic.text(name).match(/^\[\[record\]\]/gm).length;
    await go(page, "moves");
    await page.locator("details:has(form[action$='/leave']) > summary").click();
    await fill(page, { because: "felt wrong the first time" });
    await press(page, "form[action$='/leave'] button");
    const other = clinic.text(name);
    assert.match(other, new RegExp(`what = "withdrawn"[\\s\\S]*entry = ${entries}\\b`));
    await go(page, "moves");
    assert.equal(await page.locator("form[action$='/done']").count(), 0, await text(page));
  },

  "what no cells can mend leads to where it is mended": async (bench) => {
    const clinic = bench.folder();
    clinic.write("N-2.toml", CHILD.replace('base = "solid"', 'base = "sling"\nsling_sag = 20')
      .replace('is = "fixed"', 'is = "flexible"').replace("accommodate", "correct"));
    await clinic.serve();
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "N-2");
    await go(page, "plan");
    await settled(page);
    assert.doesNotMatch(await text(page), /base =/);
    const ways = await page.$$eval("#verdict a", (all) => all.map((own) => own.pathname.split("/").at(-1)));
    assert.deepEqual(ways, ["chair", "goals", "cushion"], await text(page));
  },
};
