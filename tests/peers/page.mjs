// Times of the page, measured through the browser: node tests/peers/page.mjs PROGRAM.
//
// Of a release build, by hand. A touch is a click on plus or minus; its time ends when the new central
// numbers stand on the page, seen by the page itself, and again when their ranges do. What is aimed at
// stands beside each figure; the status is 1 where one is missed.
import path from "node:path";
import { browserHere, chromium } from "../browser/aid/packages.mjs";
import { Clinic } from "../browser/aid/program.mjs";
import { go, open, settled } from "../browser/aid/window.mjs";

const TOUCHES = Number(process.env.TOUCHES ?? 100);
const WINDOWS = 20;
/** Milliseconds from one touch of a window in use to its next, and how many there are. */
const PACE = 3000;
const PACED = 6;
const CODES = ["DEMO-1", "DEMO-2", "DEMO-3"];

const share = (of, part) => of.toSorted((a, b) => a - b)[Math.min(of.length - 1, Math.ceil(of.length * part) - 1)];
const median = (of) => share(of, 0.5);

let missed = false;
function tell(what, figure, aim) {
  const kept = figure <= aim;
  missed ||= !kept;
  console.log(`${what}: ${figure.toFixed(0)} ms, aimed at ${aim}${kept ? "" : ", MISSED"}`);
}

/** Milliseconds from a click to the numbers, and to their ranges. */
const touched = (page, button) => page.evaluate((id) => new Promise((done, fail) => {
  const verdict = document.getElementById("verdict");
  const times = {};
  const late = setTimeout(() => fail(new Error(`no numbers after ${id}`)), 30_000);
  const began = performance.now();
  // What stands there already is of the counts before; it stays until the answer comes, as for anybody.
  const came = (changes, what) => changes.some((change) => [...change.addedNodes].some((own) =>
    own.isConnected && own.nodeType === Node.ELEMENT_NODE && (own.matches(what) || own.querySelector(what))));
  const watch = new MutationObserver((changes) => {
    const now = performance.now() - began;
    if (came(changes, "[data-value=under-left]")) times.central ??= now;
    if (!came(changes, ".range")) return;
    watch.disconnect();
    clearTimeout(late);
    done({ ...times, spread: now });
  });
  watch.observe(verdict, { childList: true, subtree: true });
  document.getElementById(id).click();
}), button);

/** Milliseconds from the beginning of a page to the first that is seen of it, which may come after it is loaded. */
const firstPaint = (page) => page.evaluate(() => new Promise((done) => {
  new PerformanceObserver((list) => {
    const own = list.getEntriesByName("first-contentful-paint")[0];
    if (own) done(own.startTime);
  }).observe({ type: "paint", buffered: true });
}));

const places = async (page) => page.$$eval(".stepper .step[name=more]", (all) => all.map((own) => own.value));

async function planOf(context, clinic, code) {
  const page = await context.newPage();
  await open(page, clinic.origin, code);
  await go(page, "plan");
  await settled(page);
  return page;
}

async function one(context, clinic) {
  const page = await planOf(context, clinic, "DEMO-1");
  const numbers = await places(page);
  const times = [];
  for (let at = 0; at < TOUCHES; at += 1) {
    // Up, and down in another order: counts that were seen before cost nothing, and hardly any are.
    const down = at >= TOUCHES / 2;
    const number = numbers[(down ? at + 3 : at) % numbers.length];
    const way = down ? "fewer" : "more";
    times.push(await touched(page, `${way}-${number}`));
    await settled(page);
  }
  const central = times.map((own) => own.central);
  tell(`numbers after a touch, median of ${TOUCHES}`, median(central), 150);
  tell("numbers after a touch, 95 of 100", share(central, 0.95), 150);
  tell("ranges after a touch, 95 of 100", share(times.map((own) => own.spread), 0.95), 1000);
  for (const where of ["clients", "measure", "goals", "cushion", "plan", "checks", "papers", "review"]) {
    const paints = [];
    for (let at = 0; at < 3; at += 1) {
      await (where === "clients" ? page.goto(`${clinic.origin}/`) : go(page, where));
      paints.push(await firstPaint(page));
      if (where === "clients") await open(page, clinic.origin, "DEMO-1");
    }
    tell(`first paint of ${where}, longest of ${paints.length}`, Math.max(...paints), 300);
  }
  await page.close();
}

/** All windows touched at once, at the place of each; counts that nobody saw before. */
async function together(pages, placeOf, way, what) {
  const all = await Promise.all(pages.map(async (page, at) => {
    const numbers = await places(page);
    return touched(page, `${way}-${numbers[placeOf(at) % numbers.length]}`);
  }));
  for (const page of pages) await settled(page);
  tell(`numbers in ${WINDOWS} windows that are touched at once, ${what}, median`, median(all.map((own) => own.central)), 400);
  console.log(`  the last: ${share(all.map((own) => own.central), 1).toFixed(0)} ms; their ranges, median: ${median(all.map((own) => own.spread)).toFixed(0)} ms`);
}

/** All windows in use beside each other, each touched at a moment of its own in every PACE. */
async function inUse(pages) {
  const began = performance.now();
  const until = (time) => new Promise((done) => setTimeout(done, Math.max(0, began + time - performance.now())));
  const all = await Promise.all(pages.map(async (page, at) => {
    const numbers = await places(page);
    const times = [];
    for (let round = 0; round < PACED; round += 1) {
      await until(PACE * (round + at / WINDOWS));
      times.push((await touched(page, `more-${numbers[(at + round) % numbers.length]}`)).central);
    }
    return times;
  }));
  for (const page of pages) await settled(page);
  const times = all.flat();
  tell(`numbers in ${WINDOWS} windows in use, each touched every ${PACE / 1000} s, median of ${times.length}`, median(times), 400);
  console.log(`  95 of 100: ${share(times, 0.95).toFixed(0)} ms; the longest: ${share(times, 1).toFixed(0)} ms`);
}

async function many(context, clinic) {
  const pages = [];
  for (let at = 0; at < WINDOWS; at += 1) pages.push(await planOf(context, clinic, CODES[at % CODES.length]));
  await inUse(pages);
  for (let round = 0; round < 3; round += 1) await together(pages, () => 3 - round, "more", "alike for each client");
  // Of one client, each window at a place of its own.
  for (let round = 0; round < 3; round += 1) {
    await together(pages, (at) => Math.floor(at / CODES.length) + round, "fewer", "each at another place");
  }
}

const [program] = process.argv.slice(2);
if (!program) throw new Error("name the program: node tests/peers/page.mjs target/release/seatwright");
const browser = await chromium.launch({ executablePath: browserHere(), args: ["--no-sandbox", "--disable-gpu"] });
const clinic = new Clinic(path.resolve(program));
clinic.demo(...CODES);
await clinic.serve();
// The key of the address lets one browser in, with all its windows.
const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
await (await context.newPage()).goto(clinic.address);
try {
  await one(context, clinic);
  await many(context, clinic);
} finally {
  await browser.close();
  await clinic.end();
}
process.exit(missed ? 1 : 0);
