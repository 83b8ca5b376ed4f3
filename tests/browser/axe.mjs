// Usable by everyone: each screen and each state of it, at three sizes.
//
// Against: axe-core (WCAG 2.0, 2.1 and 2.2, A and AA, and its best practices); WCAG 2.2 itself for
// what axe-core does not measure: 1.4.10 (no scrolling sideways at 320 px), 2.5.8 (targets; 44 px as
// 2.5.5 has it, where it is no link within words), 2.4.7 (where the focus is, can be seen).
import assert from "node:assert/strict";
import { axe } from "./aid/packages.mjs";
import { choose, fill, go, open, press, settled } from "./aid/window.mjs";

const SIZES = [{ width: 390, height: 844 }, { width: 768, height: 1024 }, { width: 1280, height: 800 }];
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
const NARROW = { width: 320, height: 640 };
/** The least size of a target, px. */
const TARGET = 44;

async function findings(page) {
  await page.evaluate((text) => { if (!window.axe) (0, eval)(text); }, axe);
  const { violations } = await page.evaluate((values) => window.axe.run(document, { runOnly: { type: "tag", values }, resultTypes: ["violations"] }), RULES);
  return violations.flatMap((own) => own.nodes.map((node) => `${own.id}: ${node.target.join(" ")} ${(node.failureSummary ?? "").split("\n")[1] ?? ""}`.trim()));
}

/** How far the page, or a part of it that is no scroller, is wider than the window. */
const overflow = (page) => page.evaluate(() => {
  const over = document.documentElement.scrollWidth - document.documentElement.clientWidth;
  if (over <= 0) return [];
  const wide = [...document.querySelectorAll("body *")].filter((own) => own.getBoundingClientRect().right > innerWidth + 1);
  return [`${over} px too wide: ${wide.slice(-3).map((own) => `${own.tagName}.${own.getAttribute("class") ?? ""}#${own.id}`).join(", ")}`];
});

/** Targets that are too small, but for links within a sentence. */
const small = (page) => page.evaluate((least) => {
  const shown = (own) => own.checkVisibility({ visibilityProperty: true, opacityProperty: false });
  const box = (own) => {
    // A label is a second target of its box, and as large as it.
    const label = own.matches("input[type=radio], input[type=checkbox]") ? own.closest("label") : null;
    return (label ?? own).getBoundingClientRect();
  };
  const within = (own) => own.matches("a") && getComputedStyle(own).display === "inline" && own.closest("p, li, dd") && own.closest("p, li, dd").textContent.trim() !== own.textContent.trim();
  return [...document.querySelectorAll("a[href], button, input:not([type=hidden]), textarea, select, summary")]
    // What the enter key presses is no target for anybody.
    .filter((own) => shown(own) && !within(own) && !own.matches(".skip, [aria-hidden=true][tabindex='-1']"))
    .map((own) => [own, box(own)])
    .filter(([, at]) => at.width > 0 && (at.height < least - 0.5 || at.width < least - 0.5))
    .map(([own, at]) => `${own.tagName.toLowerCase()} ${own.getAttribute("name") ?? own.textContent.trim().slice(0, 30)}: ${at.width.toFixed(0)}x${at.height.toFixed(0)}`);
}, TARGET);

/** Controls that look the same with the focus as without. */
const unseen = (page) => page.evaluate(() => {
  const look = (own) => {
    const near = [own, own.closest("label"), own.nextElementSibling].filter(Boolean);
    return near.map((at) => { const s = getComputedStyle(at); return [s.outlineStyle, s.outlineWidth, s.outlineColor, s.boxShadow, s.borderColor, s.backgroundColor].join(); }).join();
  };
  const all = [...document.querySelectorAll("a[href], button, input:not([type=hidden]), textarea, summary")].filter((own) => own.checkVisibility());
  document.activeElement?.blur();
  return all.filter((own) => {
    const before = look(own);
    own.focus({ focusVisible: true });
    const after = look(own);
    own.blur();
    return before === after;
  }).map((own) => `${own.tagName.toLowerCase()} ${own.getAttribute("name") ?? own.textContent.trim().slice(0, 30)}: focus is not seen`);
});

/** Looks at a state of a page at all sizes; what is found is kept, so that one run tells all. */
async function look(page, found, state) {
  const all = new Set();
  for (const size of SIZES) {
    await page.setViewportSize(size);
    for (const own of await findings(page)) all.add(own);
    for (const own of await overflow(page)) all.add(`${size.width}: ${own}`);
  }
  for (const own of await small(page)) all.add(own);
  for (const own of await unseen(page)) all.add(own);
  await page.setViewportSize(NARROW);
  for (const own of await overflow(page)) all.add(`${NARROW.width}: ${own}`);
  await page.setViewportSize(SIZES[2]);
  for (const own of all) found.push(`${state}: ${own}`);
}

const openAll = (page) => page.evaluate(() => { for (const own of document.querySelectorAll("details")) own.open = true; });

const told = (found) => assert.deepEqual(found, [], `\n${found.join("\n")}`);

export default {
  "a page with faults is found out": async (bench) => {
    const clinic = await bench.clinic();
    const page = await bench.window(clinic, { bypassCSP: true });
    const found = [];
    await look(page, found, "right");
    assert.deepEqual(found, []);
    await page.evaluate(() => {
      document.querySelector("label[for=code]").remove();
      const wide = document.createElement("p");
      wide.style.width = "1400px";
      wide.textContent = "wide";
      const little = document.createElement("button");
      little.style.cssText = "all: unset; width: 10px; height: 10px; outline: none !important";
      little.textContent = "x";
      document.querySelector("main").append(wide, little);
    });
    await look(page, found, "wrong");
    for (const fault of [/label/, /320 px|px too wide/, /button x: 10x10/, /button x: focus is not seen/]) {
      assert.ok(found.some((own) => fault.test(own)), `${fault} is not in ${found.join("\n")}`);
    }
  },

  "the clients, a new one and what is asked": async (bench) => {
    const clinic = await bench.clinic();
    const page = await bench.window(clinic, { bypassCSP: true });
    const found = [];
    await look(page, found, "no clients");
    await press(page, 'form[action="/clients/demo"] button');
    await look(page, found, "clients");
    await fill(page, { code: "T 1 / not a code" });
    await press(page, 'form[action="/clients/new"] button');
    await look(page, found, "a code refused");
    await page.goto(`${clinic.origin}/c/nothing-here/measure`);
    await look(page, found, "nothing there");
    await open(page, clinic.origin, "DEMO-1");
    for (const step of ["measure/hips", "measure/legs", "measure/weight", "posture/level", "posture/tilt", "posture/hips-and-knees", "posture/balance", "skin", "function", "chair", "carers"]) {
      await go(page, step);
      await openAll(page);
      await look(page, found, step);
    }
    await go(page, "measure/hips");
    await fill(page, { "measures.hip_width": "4000", "measures.seat_bone_spacing": "abc" });
    await press(page, "main form.stack .buttons button");
    await look(page, found, "measure, with errors");
    told(found);
  },

  "goals, cushion and plan": async (bench) => {
    const clinic = await bench.clinic("DEMO-2");
    const page = await bench.window(clinic, { bypassCSP: true });
    const found = [];
    await open(page, clinic.origin, "DEMO-2");
    await go(page, "goals");
    await settled(page);
    await openAll(page);
    await look(page, found, "goals");
    await go(page, "cushion");
    await openAll(page);
    await look(page, found, "cushion");
    await go(page, "plan");
    await settled(page);
    await openAll(page);
    await settled(page);
    await page.waitForFunction(() => document.querySelector(".cuts figure"));
    await look(page, found, "plan");
    // With so few cells the client sits on the base.
    await page.evaluate(() => { for (const own of document.querySelectorAll("#counts-to-take input")) own.value = "14"; });
    await fill(page, { by: "OT" });
    await press(page, "#take button");
    assert.ok(await page.locator('[role="alert"]').count(), "counts that are not safe were taken");
    assert.doesNotMatch(clinic.text("DEMO-2.toml"), /planned = 14 /);
    await settled(page);
    await look(page, found, "plan refused");
    told(found);
  },

  "fill, checks, moves, sign-off, papers and review": async (bench) => {
    const clinic = await bench.clinic("DEMO-2");
    const page = await bench.window(clinic, { bypassCSP: true });
    const found = [];
    await open(page, clinic.origin, "DEMO-2");
    await go(page, "checks");
    await look(page, found, "checks before a fill");
    await go(page, "fill");
    await look(page, found, "fill");
    await press(page, "main .buttons button");
    await look(page, found, "fill, not counted twice");
    await fill(page, { first: "yes", second: "yes", by: "OT" });
    await press(page, "main .buttons button");
    await openAll(page);
    await look(page, found, "fill, goes on");
    await go(page, "checks");
    await look(page, found, "checks while it is filled");
    await clinic.answer("record", "DEMO-2.toml", "filled", "--as-planned", "--by", "OT");
    await go(page, "checks");
    await openAll(page);
    await look(page, found, "checks");
    await fill(page, { by: "OT", "felt.left": "a" });
    await press(page, "main .buttons button");
    await look(page, found, "checks, with an error");
    await go(page, "checks");
    await fill(page, { by: "OT", "under.left": "felt", "felt.left": "30", "under.right": "felt", "felt.right": "52", "top.left": "safe", "top.right": "safe" });
    await press(page, "main .buttons button");
    await look(page, found, "what follows");
    await go(page, "moves");
    await openAll(page);
    await look(page, found, "moves");
    for (const step of ["sign-off", "papers", "review"]) {
      await go(page, step);
      await settled(page);
      await openAll(page);
      await look(page, found, step);
    }
    await go(page, "sign-off");
    await press(page, "main .buttons button");
    await look(page, found, "sign-off refused");
    await go(page, "checks");
    await choose(page, "under.left", "bone-felt");
    await fill(page, { by: "OT" });
    await press(page, "main .buttons button");
    assert.ok(await page.locator(".stop").count(), "a bone that is felt stops nothing");
    await look(page, found, "stop");
    told(found);
  },
};
