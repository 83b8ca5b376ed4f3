// Runs the tests of the page in a browser: node tests/browser/run.mjs PROGRAM [SUBJECT...]
//
// A subject is a file here whose default export has tests by their names; a test is a function of a
// Bench, and fails when it throws. Two run at a time. The last line is `browser: N passed, N failed`,
// with those left out counted beside it. A picture of each page of a failed test is put into target/test-logs.
import { mkdirSync } from "node:fs";
import path from "node:path";
import { browserHere, chromium, logs } from "./aid/packages.mjs";
import { Clinic } from "./aid/program.mjs";

/** Longest first, so that the last ones are short. */
const SUBJECTS = ["journey", "axe", "numbers", "newcomer", "carried", "layout", "hostile", "lost", "keyboard", "gate"];
/** A journey makes all its moves, and may share the machine. */
const LONGEST = 300_000;
const AT_A_TIME = 2;

/** Why a test is left out. */
class LeftOut extends Error {}

/** What a test works with, all of it put away afterwards. */
class Bench {
  constructor(program, browser) { Object.assign(this, { program, browser, clinics: [], contexts: [], errors: [] }); }

  leaveOut(why) { throw new LeftOut(why); }

  /** A folder of its own, not served yet. */
  folder(place) {
    const own = new Clinic(this.program, place);
    this.clinics.push(own);
    return own;
  }

  /** A folder with demo clients, served. */
  async clinic(...codes) {
    const own = this.folder();
    own.demo(...codes);
    return own.serve();
  }

  /** A window that was let in. What the browser complains about is kept. */
  async window(clinic, options = {}) {
    const context = await this.browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
    this.contexts.push(context);
    context.setDefaultTimeout(30_000);
    const page = await context.newPage();
    this.listen(page);
    await page.goto(clinic.address);
    return page;
  }

  listen(page) {
    page.on("pageerror", (error) => this.errors.push(`${page.url()}: ${error}`));
    page.on("console", (said) => {
      // A refusal in words has a status, of which the browser tells; htmx tells when it drops a
      // question that newer counts took the place of.
      if (said.type() === "error" && !/status of 4\d\d|^htmx:(sendAbort|afterRequest),/.test(said.text())) this.errors.push(`${page.url()}: ${said.text()}`);
    });
  }

  /** What the browser complained about so far: a broken rule of the page's policy is among it. */
  noComplaints() { if (this.errors.length) throw new Error(`the browser says: ${this.errors.join("\n")}`); }

  async end(picture) {
    const pages = this.contexts.flatMap((own) => own.pages());
    if (picture) for (const [at, page] of pages.entries()) await page.screenshot({ path: `${picture}-${at}.png`, fullPage: true }).catch(() => {});
    for (const own of this.contexts) await own.close().catch(() => {});
    for (const own of this.clinics) await own.end().catch(() => {});
  }
}

const timeout = () => new Promise((_, fail) => setTimeout(() => fail(new Error(`takes more than ${LONGEST / 1000} s`)), LONGEST).unref());

async function once(bench, { subject, name, run }) {
  const begin = Date.now();
  const seconds = () => `(${((Date.now() - begin) / 1000).toFixed(1)} s)`;
  try {
    await Promise.race([run(bench), timeout()]);
    bench.noComplaints();
    await bench.end();
    console.log(`passed ${subject}: ${name} ${seconds()}`);
    return "passed";
  } catch (error) {
    if (error instanceof LeftOut) {
      await bench.end();
      console.log(`left out ${subject}: ${name}: ${error.message}`);
      return "left out";
    }
    await bench.end(path.join(logs, `browser-${subject}-${name.replace(/\W+/g, "-")}`));
    console.log(`FAILED ${subject}: ${name} ${seconds()}\n${error.stack ?? error}`);
    return "failed";
  }
}

async function main([given, ...wanted]) {
  if (!given) throw new Error("name the program: node tests/browser/run.mjs target/debug/seatwright");
  const program = path.resolve(given);
  mkdirSync(logs, { recursive: true });
  const waiting = [];
  for (const subject of SUBJECTS) {
    const only = wanted.map((own) => own.split(":"));
    const own = only.filter((name) => name[0] === subject);
    if (wanted.length && !own.length) continue;
    const tests = (await import(`./${subject}.mjs`)).default;
    for (const [name, run] of Object.entries(tests)) {
      if (!wanted.length || own.some((part) => !part[1] || name.includes(part[1]))) waiting.push({ subject, name, run });
    }
  }
  const browser = await chromium.launch({
    executablePath: browserHere(),
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
  });
  const results = [];
  const work = async () => {
    for (let own = waiting.shift(); own; own = waiting.shift()) results.push(await once(new Bench(program, browser), own));
  };
  await Promise.all(Array.from({ length: AT_A_TIME }, work));
  await browser.close();
  const count = (word) => results.filter((own) => own === word).length;
  if (count("left out")) console.log(`left out: ${count("left out")}`);
  console.log(`browser: ${count("passed")} passed, ${count("failed")} failed`);
  process.exit(results.length && !count("failed") ? 0 : 1);
}

await main(process.argv.slice(2));
