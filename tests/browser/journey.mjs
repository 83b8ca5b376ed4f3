// The whole job: each demo client made anew from a blank page, through a failed check and two rounds
// of moves, to signed-off papers; one with a mouse, one by touch on a narrow screen, one by keyboard.
//
// Against: the command line's own work. The same answers are given to `new`, `set`, `plan`, `record`
// and `adjust`, and the two files must have the same text.
import assert from "node:assert/strict";
import { mkdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { command, demoText } from "./aid/program.mjs";
import { begin, choose, fill, go, next, press, settled, step, text, unfold, workWith } from "./aid/window.mjs";
import { read } from "./aid/answers.mjs";

const BY = "OT";

/** What is felt under the left and right seat bones before all is as expected, mm. */
const ROUNDS = { "DEMO-1": [[15], [20]], "DEMO-2": [[15, 20], [20, 25]], "DEMO-3": [[15], [20]] };

/** A value as a command takes it: several lines are a list. */
const asWord = (value) => (value.includes("\n") ? `[${value.split("\n").map((line) => JSON.stringify(line)).join(", ")}]` : value);

/** The pages of questions, in the order of the work; goals and cushion come between. */
const PAGES = [
  "measure/hips", "measure/legs", "measure/weight", "posture/level", "posture/tilt", "posture/hips-and-knees",
  "posture/balance", "skin/skin", "function/moving", "chair/chair",
];

/** Answers that are typed otherwise than the file has them, which must come to the same. */
const TYPED = { "measures.hip_width": (mm) => `${Number(mm) / 10} cm`, "chair.inside_depth": (mm) => `${Number(mm) / 10}cm` };

/** Answers the questions that a page has, and goes on. */
async function answerPage(page, answers, given) {
  const names = await page.$$eval("main form.stack [name]:not([type=hidden]):not(button)", (all) => [...new Set(all.map((own) => own.name))]);
  const here = {};
  for (const name of names) {
    const value = answers[name];
    if (value === undefined) continue;
    here[name] = TYPED[name]?.(value) ?? value;
  }
  // A page is given as a whole: a command writes nothing of a table that lacks something.
  given.push(...(Object.keys(here).length ? [Object.keys(here).map((name) => `${name}=${asWord(answers[name])}`)] : []));
  await unfold(page);
  await fill(page, here);
  await next(page);
}

/** Room for one entry of a list after the other. */
async function answerLists(page, answers, given) {
  const here = step(page);
  for (let left = true; left;) {
    const before = given.length;
    await answerPage(page, answers, given);
    assert.equal(await page.locator("#summary").count(), 0, `${here}: ${await page.locator("#summary").allInnerTexts()}`);
    for (const own of given.slice(before).flat()) delete answers[own.slice(0, own.indexOf("="))];
    await go(page, here);
    const names = await page.$$eval("main form.stack [name]:not([type=hidden]):not(button)", (all) => all.map((own) => own.name));
    left = names.some((own) => answers[own] !== undefined);
  }
  await next(page);
}

async function goals(page, demo, given) {
  for (const [at, goal] of demo.goals.entries()) {
    const key = (own) => `goal.${at + 1}.${own}`;
    await choose(page, key("want"), goal.want);
    const { want, ...rest } = goal;
    await fill(page, Object.fromEntries(Object.entries(rest).map(([own, value]) => [key(own), value])));
    await press(page, 'form[data-needs=goal] button');
    given.push([`${key("want")}=${want}`, ...Object.entries(rest).map(([own, value]) => `${key(own)}=${value}`)]);
  }
}

/** The checks of a round on the page. */
async function check(page, found) {
  await go(page, "checks");
  for (const side of ["left", "right"]) {
    await fill(page, { [`under.${side}`]: "felt", [`felt.${side}`]: String(found.under[side]), [`top.${side}`]: found.top });
  }
  if (found.lower) {
    await choose(page, "lower", found.lower.side);
    if (found.lower.by) await fill(page, { "lower-by": String(found.lower.by), "lower-at": "seat-bones" });
  }
  for (const site of ["left-seat-bone", "right-seat-bone", "coccyx"]) await choose(page, `skin.${site}`, "clear");
  await fill(page, { by: BY });
  await press(page, "main form.stack .buttons button");
}

/** The same for the command line, in the order in which the page has them. */
function words(found) {
  const all = [];
  for (const side of ["left", "right"]) all.push("--top", `${side}=${found.top}`);
  for (const side of ["left", "right"]) all.push("--under", `${side}=${found.under[side]}mm`);
  if (found.lower) all.push("--lower", found.lower.side === "level" ? "level" : `${found.lower.side}=${found.lower.by}mm`);
  for (const site of ["left-seat-bone", "right-seat-bone", "coccyx"]) all.push("--skin", `${site}=clear`);
  return all;
}

/** The last expectation that a file has. */
function expected(file) {
  const all = [...file.matchAll(/expected = \{ left_mm = ([\d.]+), right_mm = ([\d.]+), lower = "(\w+)", lower_mm = ([\d.]+)/g)];
  const [, left, right, side, by] = all.at(-1);
  const lower = side === "level" ? { side } : { side, by: Math.round(Number(by)) };
  return { top: "safe", under: { left: Math.round(left), right: Math.round(right) }, lower };
}

async function refusesTakeHome(page) {
  await go(page, "papers");
  await settled(page);
  const files = await page.$$eval(".papers a[href], .papers img", (all) => all.length);
  assert.ok(files > 0);
  let refused = 0;
  const base = page.url();
  for (let at = 0; at < 80; at += 1) {
    for (const ending of ["pdf", "svg"]) {
      const got = await page.request.get(`${base}/${at}.${ending}`);
      const name = got.headers()["content-disposition"] ?? "";
      assert.doesNotMatch(name, /take-home/);
      if (got.status() === 403) refused += 1;
    }
    if (refused && at > 60) break;
  }
  return refused;
}

/** Makes all moves that are proposed, one by one; says how many. */
async function moveAll(page, other, name) {
  const form = 'form[action$="moves/done"]';
  await go(page, "moves");
  let moves = 0;
  for (; await page.locator(form).count(); moves += 1) {
    assert.ok(moves < 30, "moves without end");
    await fill(page, { by: BY });
    const own = await page.$eval(form, (one) => `${one.from.value}-${one.to.value}=${one.cells.value}`);
    await press(page, `${form} .buttons button`);
    await other.answer("record", name, "moved", own, "--by", BY);
  }
  return moves;
}

/** Makes a demo client anew, worked with a mouse, by touch or by keyboard alone. */
async function madeAnew(bench, code, as, hands, options = {}) {
  const demo = read(demoText(code));
  const clinic = await bench.folder().serve();
  const page = await bench.window(clinic, options);
  workWith(page, hands);
  const name = `${as}.toml`;
  const answers = { ...demo.answers };
  const given = [];
  await begin(page, clinic.origin, as);
  for (const own of PAGES) {
    await go(page, own);
    await answerLists(page, answers, given);
  }
  await go(page, "goals");
  await goals(page, demo, given);
  await go(page, "cushion");
  await choose(page, "choice", `${demo.cushion.size} ${demo.cushion.layout}`);
  await fill(page, { "cushion.spare_cells": demo.cushion.spare_cells });
  await press(page, "main form.stack .buttons button");
  given.push([`cushion.layout=${demo.cushion.layout}`, `cushion.size=${demo.cushion.size}`, `cushion.spare_cells=${demo.cushion.spare_cells}`]);

  // The same answers by commands.
  const other = bench.folder();
  const set = async (own) => other.answer("set", name, ...[own].flat());
  await other.answer("new", "client", name);
  await set(`client=${as}`);
  for (const own of given) await set(own);

  assert.equal(step(page), "plan");
  await settled(page);
  await fill(page, { by: BY });
  await press(page, "#take button");
  assert.equal(step(page), "fill", await text(page));
  await other.answer("plan", name, "--record", "--by", BY);
  same(clinic, other, name, "the plan");

  while (await page.locator("[name=first]").count()) {
    await fill(page, { first: "yes", second: "yes" });
    await press(page, "main .buttons button");
  }
  await fill(page, { by: BY });
  await press(page, "main .buttons button");
  assert.equal(step(page), "checks", await text(page));
  await other.answer("record", name, "filled", "--as-planned", "--by", BY);
  same(clinic, other, name, "the fill");
  assert.ok(await refusesTakeHome(page), "nothing is held back before the sign-off");

  // A check that fails, then one that is nearer, then as expected; what still moves cells then is
  // checked once more.
  const aim = expected(clinic.text(name));
  const rounds = ROUNDS[code].map(([left, right]) => ({ top: "safe", under: { left, right: right ?? aim.under.right } }));
  let last;
  for (let round = 0, moves = 1; round <= rounds.length || moves; round += 1) {
    assert.ok(round < 6, "checks as expected move cells again and again");
    last = rounds[round] ?? expected(clinic.text(name));
    await check(page, last);
    const told = await other.answer("adjust", name, ...words(last), "--record", "--by", BY);
    same(clinic, other, name, `the checks of round ${round + 1}`);
    moves = await moveAll(page, other, name);
    assert.equal(moves, told.moves.length, "not all that is proposed can be made, one after the other");
    assert.ok(moves || round, "too little under a seat bone moved nothing");
    same(clinic, other, name, `the moves of round ${round + 1}`);
  }
  await go(page, "carers/carers");
  const carers = [];
  await answerLists(page, answers, carers);
  for (const own of carers) await set(own);
  same(clinic, other, name, "the carers");
  return { clinic, other, page, name, last, answers };
}

function same(clinic, other, name, after) {
  const [own, wanted] = [clinic, other].map((at) => at.text(name).split("\n"));
  const only = (one, two) => one.filter((line) => !two.includes(line)).slice(0, 12).join("\n");
  assert.ok(own.join("\n") === wanted.join("\n"), `after ${after} the files differ; the page has\n${only(own, wanted)}\nand the command\n${only(wanted, own)}`);
}

async function signed({ clinic, other, page, name, last }) {
  await go(page, "sign-off");
  assert.ok(await page.locator("[name=still]").count(), await text(page));
  await fill(page, { still: "yes", transfer: "yes", reach: "yes", passed: "yes", by: BY });
  await press(page, "main .buttons button");
  assert.equal(step(page), "papers", await text(page));
  await other.answer("record", name, "checked", ...words(last), "--transfer", "--reach", "--passed", "--by", BY);
  same(clinic, other, name, "the sign-off");
  await settled(page);
  const pdfs = await page.$$eval(".papers a[href$='.pdf']:not([download])", (all) => all.map((own) => own.href));
  const names = [];
  for (const own of pdfs) {
    const got = await page.request.get(own);
    assert.equal(got.status(), 200);
    assert.equal((await got.body()).subarray(0, 5).toString(), "%PDF-");
    names.push(got.headers()["content-disposition"]);
  }
  assert.ok(names.some((own) => /take-home/.test(own)), "no take-home sheet after the sign-off");
}

/** A phone or a small tablet. */
const TOUCHED = { hasTouch: true, isMobile: true, viewport: { width: 390, height: 844 } };

export default {
  "DEMO-1's client anew": async (bench) => signed(await madeAnew(bench, "DEMO-1", "T-1", "mouse")),
  "DEMO-3's client anew, by keyboard alone": async (bench) => signed(await madeAnew(bench, "DEMO-3", "T-3", "keyboard")),
  "DEMO-2's client anew, by touch alone": async (bench) => signed(await madeAnew(bench, "DEMO-2", "T-2", "touch", TOUCHED)),
};
