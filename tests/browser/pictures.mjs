// The pictures of the page that README shows, made anew by hand:
//   node tests/browser/pictures.mjs target/debug/seatwright
// They show the demo clients' files on the day of all tests. No test compares them.
import path from "node:path";
import { fileURLToPath } from "node:url";
import { browserHere, chromium } from "./aid/packages.mjs";
import { Clinic } from "./aid/program.mjs";
import { fill, go, open, press, settled } from "./aid/window.mjs";

const gallery = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../../out/gallery");
const WIDTH = 1024;

/** By name of the picture: its height, and what leads there from the list of clients. */
const PICTURES = {
  clients: [560, async () => {}],
  measure: [900, async (page, origin) => { await open(page, origin, "DEMO-1"); await go(page, "measure/legs"); }],
  plan: [1100, async (page, origin) => { await open(page, origin, "DEMO-1"); await go(page, "plan"); }],
  // With the first compartment filled.
  fill: [1100, async (page, origin) => {
    await open(page, origin, "DEMO-1");
    await go(page, "fill");
    await fill(page, { first: "yes", second: "yes", by: "OT" });
    await press(page, "main form .buttons button");
  }],
};

const clinic = new Clinic(path.resolve(process.argv[2]));
clinic.demo("DEMO-1", "DEMO-2", "DEMO-3");
await clinic.serve();
const browser = await chromium.launch({ executablePath: browserHere(), args: ["--no-sandbox", "--disable-gpu"] });
const page = await browser.newPage();
await page.goto(clinic.address);
for (const [name, [height, lead]] of Object.entries(PICTURES)) {
  await page.setViewportSize({ width: WIDTH, height });
  await page.goto(`${clinic.origin}/`);
  await lead(page, clinic.origin);
  await settled(page);
  await page.evaluate(() => document.fonts.ready);
  await page.evaluate(() => { document.activeElement?.blur(); window.scrollTo(0, 0); });
  await page.screenshot({ path: path.join(gallery, `page-${name}.png`) });
  console.log(`page-${name}.png`);
}
await browser.close();
await clinic.end();
