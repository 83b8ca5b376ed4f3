// What somebody meets who makes a client for the first time: nothing that was begun is lost, nothing
// is said in the words of a file, and each page leads on.
//
// Against: the file on the disk, and what was typed by the test itself.
import assert from "node:assert/strict";
import { CHILD } from "./aid/child.mjs";
import { begin, choose, fill, go, next, open, press, settled, step, text } from "./aid/window.mjs";

/** A new client, measured and weighed, without goals or a cushion. */
async function measured(bench) {
  const clinic = await bench.folder().serve();
  const page = await bench.window(clinic);
  await begin(page, clinic.origin, "N-1");
  await fill(page, { "measures.taken_on": "2026-03-01", "measures.taken_by": "OT", "measures.hip_width": "380" });
  await next(page);
  await fill(page, { "measures.thigh_depth.left": "460", "measures.thigh_depth.right": "460" });
  await next(page);
  await fill(page, { "weight.kg": "60", "weight.weighed_on": "2026-03-01" });
  await next(page);
  return { clinic, page };
}

/** Sends the form that a box is in by the enter key. */
const enter = (page, name) => Promise.all([page.waitForNavigation(), page.locator(`[name="${name}"]`).first().press("Enter")]);

const GOAL = 'form[data-needs=goal] button';
const goals = (page) => page.locator("ol.goals li.goal").count();

export default {
  "a page that nobody answered yet is no page of faults": async (bench) => {
    const clinic = await bench.folder().serve();
    const page = await bench.window(clinic);
    await begin(page, clinic.origin, "N-1");
    for (const own of ["measure/hips", "measure/legs", "measure/weight", "cushion", "plan"]) {
      await go(page, own);
      // Keys of a file stand between these signs.
      assert.doesNotMatch(await text(page, "body"), /`/, own);
      assert.equal(await page.locator(".error").count(), 0, own);
    }
    // What is missing is named as its page names it, and leads there.
    const links = page.locator("main .box.heavy li a");
    assert.ok(await links.count() > 3);
    const [names, to] = [await links.allInnerTexts(), await links.evaluateAll((all) => all.map((own) => own.pathname.split("/").slice(3).join("/")))];
    assert.equal(names.length, to.length);
    for (const wanted of ["measure/hips", "measure/legs", "measure/weight", "cushion"]) assert.ok(to.includes(wanted), `${to}`);
    await Promise.all([page.waitForNavigation(), links.first().click()]);
    assert.equal(step(page), to[0]);
  },

  "a file that only an editor mends says so, with its line": async (bench) => {
    const clinic = bench.folder();
    clinic.demo("DEMO-1");
    const right = clinic.text("DEMO-1.toml");
    clinic.write("DEMO-1.toml", right.replace(/^hip_width = /m, "hip_widht = "));
    await clinic.serve();
    const page = await bench.window(clinic);
    assert.match(await text(page, ".clients li .stamp"), /cannot be read/i);
    await open(page, clinic.origin, "DEMO-1");
    for (const own of ["measure/hips", "skin", "goals", "cushion", "plan", "review"]) {
      await go(page, own);
      const said = await text(page, "main [role=alert]");
      for (const wanted of ["DEMO-1.toml", "hip_widht = "]) assert.ok(said.includes(wanted), `${own}: ${said}`);
    }
    // No screen leads to itself for what it asks.
    await go(page, "cushion");
    const links = await page.locator("main a").evaluateAll((all) => all.map((own) => own.pathname));
    assert.ok(!links.includes(new URL(page.url()).pathname), `${links}`);
    clinic.write("DEMO-1.toml", right);
    await go(page, "plan");
    assert.equal(await page.locator("main [role=alert]").count(), 0);
  },

  "numbers are typed in the units of the file until somebody chooses": async (bench) => {
    const clinic = bench.folder();
    await clinic.serve();
    let page = await bench.window(clinic);
    await begin(page, clinic.origin, "N-2", "in");
    await fill(page, { "measures.hip_width": "15 1/2" });
    await next(page);
    await clinic.stop();
    await clinic.serve();
    page = await bench.window(clinic);
    await open(page, clinic.origin, "N-2");
    await go(page, "measure/hips");
    assert.equal(await page.inputValue('[name="measures.hip_width"]'), "15.5");
    assert.equal(await page.locator(".units [aria-pressed=true]").first().innerText(), "in");
    await press(page, '.units button[value="mm"]');
    assert.equal(await page.inputValue('[name="measures.hip_width"]'), "15.5 in");
  },

  "a reason that papers cannot show stays in its box": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-1");
    await go(page, "plan");
    const because = "\u05d0\u05d1";
    await fill(page, { because });
    await page.locator("#by-take").fill("OT");
    await press(page, "#take button.button");
    assert.equal(await page.inputValue("#because"), because);
    assert.doesNotMatch(await text(page, "[role=alert]"), /shorten/i);
  },

  "beside a goal that is refused nothing says that none is": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-1");
    await go(page, "goals");
    await settled(page);
    assert.ok((await text(page, "#look")).length > 0);
    await choose(page, "goal.4.want", "off-load");
    await fill(page, { "goal.4.site": "right-seat-bone", "goal.4.percent": "400" });
    await press(page, GOAL);
    await settled(page);
    assert.ok(await page.locator("#add-goal .error").count() > 0);
    assert.equal(await text(page, "#look"), "");
  },

  "what an answer makes needed is said in the page's words, until it is there": async (bench) => {
    const { clinic, page } = await measured(bench);
    const about = (key) => page.locator(`#f-${key.replaceAll(".", "-")}-about`);
    // An answer is kept as soon as it is given.
    const kept = async (key, value) => {
      const answer = page.waitForResponse(/keep$/);
      if (await page.locator(`input[name="${key}"][type=radio]`).count()) await choose(page, key, value);
      else {
        await fill(page, { [key]: value });
        await page.locator("h1").click();
      }
      await (await answer).finished();
      await page.locator(".htmx-request").first().waitFor({ state: "detached" });
    };
    const plain = async () => assert.doesNotMatch(await text(page, "body"), /`/);
    const needed = /Needed for a plan/;
    // Of two sides the one that is there is not needed any more, and is said to be kept until the other is.
    await go(page, "measure/legs");
    await kept("measures.lower_leg_length.left", "402");
    await kept("measures.lower_leg_length.right", "404");
    for (const side of ["left", "right"]) assert.match(await about(`measures.lower_leg_length.${side}`).innerText(), /Kept/);
    await kept("measures.lower_leg_length.right", "");
    assert.doesNotMatch(await about("measures.lower_leg_length.left").innerText(), needed);
    // A side makes the rest of an obliquity needed, which is said there and then.
    await go(page, "posture/level");
    assert.doesNotMatch(await text(page), needed);
    await kept("posture.obliquity.lower", "right");
    assert.match(await about("posture.obliquity.by").innerText(), needed);
    await plain();
    await kept("posture.obliquity.by", "12");
    await kept("posture.obliquity.at", "seat bones");
    await kept("posture.obliquity.is", "partly");
    assert.doesNotMatch(await about("posture.obliquity.by").innerText(), needed);
    assert.match(await about("posture.obliquity.is").innerText(), /“Reducible by” needs an answer too/);
    await plain();
    await kept("posture.obliquity.reducible", "5");
    assert.equal(await page.locator(".error").count(), 0, await text(page));
    // What goes with another answer only is kept with it only, and stays in its box.
    await kept("posture.obliquity.is", "fixed");
    assert.match(await about("posture.obliquity.reducible").innerText(), /goes only with “Flexibility”: Partly/);
    assert.doesNotMatch(clinic.text("N-1.toml"), /reducible = 5/);
    await kept("posture.obliquity.is", "partly");
    assert.equal(await page.locator(".error").count(), 0, await text(page));
    assert.match(clinic.text("N-1.toml"), /reducible = 5/);
    // So it is in a file that somebody wrote so.
    clinic.write("N-1.toml", clinic.text("N-1.toml").replace(/is = "partly"/, 'is = "fixed"'));
    await go(page, "posture/level");
    assert.match(await about("posture.obliquity.reducible").innerText(), /goes only with “Flexibility”: Partly/);
    await plain();
    await kept("posture.obliquity.is", "partly");
    assert.equal(await page.locator(".error").count(), 0, await text(page));
    // What is left out is named before a plan, and leads there.
    await go(page, "posture/tilt");
    await kept("posture.tilt.direction", "posterior");
    await go(page, "skin");
    await page.locator("summary", { hasText: "Add one" }).click();
    await kept("skin.injury.1.site", "coccyx");
    await go(page, "cushion");
    await plain();
    const links = page.locator("main .box.heavy li");
    assert.equal(await links.count(), await links.locator("a").count(), await text(page));
    await Promise.all([page.waitForNavigation(), page.locator("a", { hasText: "Pelvic tilt: Flexibility" }).click()]);
    assert.equal(step(page), "posture/tilt");
    assert.match(await about("posture.tilt.is").innerText(), needed);
  },

  "goals are there before a cushion is chosen, and one that is begun goes along": async (bench) => {
    const { clinic, page } = await measured(bench);
    await go(page, "goals");
    await choose(page, "goal.1.want", "near stock");
    await press(page, GOAL);
    await settled(page);
    assert.equal(await goals(page), 1, await text(page));
    // What of a goal is asked is asked at once, though the file lacks other answers.
    const before = clinic.text("N-1.toml");
    await choose(page, "goal.2.want", "off-load");
    await press(page, GOAL);
    assert.ok(await page.locator("form[data-needs=goal] .error").count(), await text(page));
    assert.equal(clinic.text("N-1.toml"), before);
    await choose(page, "goal.2.site", "coccyx");
    await fill(page, { "goal.2.percent": "10" });
    const onward = "main > .buttons button";
    await press(page, onward);
    assert.equal(step(page), "cushion", await text(page));
    assert.match(clinic.text("N-1.toml"), /site = "coccyx"\npercent = 10/);
    // With nothing begun it only leads on.
    await go(page, "goals");
    assert.equal(await goals(page), 2);
    await press(page, onward);
    assert.equal(step(page), "cushion");
  },

  "sides that do not go together are asked about at once": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const lost = '[[posture.limb_loss]]\nside = "right"\nlevel = "above knee"\n\n[skin]';
    clinic.write("DEMO-1.toml", clinic.text("DEMO-1.toml").replace("[skin]", lost));
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-1");
    await go(page, "goals");
    await settled(page);
    assert.match(await text(page), /the right leg is lost\. A front is lowered for the leg that is there/);
    assert.doesNotMatch(await text(page), /No goal is refused/);
  },

  "a narrow screen keeps the clearance in view, and says where it is not safe": async (bench) => {
    const clinic = await bench.clinic("DEMO-2");
    const page = await bench.window(clinic);
    await page.setViewportSize({ width: 390, height: 844 });
    await open(page, clinic.origin, "DEMO-2");
    await go(page, "plan");
    await settled(page);
    const short = page.locator("#in-short");
    assert.match(await short.innerText(), /Client's left \d+ mm\s+Client's right \d+ mm$/);
    // As the whole verdict says it, whichever that is: also where the client tips, and nothing is left to say.
    const said = [];
    for (const which of ["fewer-1", "fewer-2"]) {
      for (let own = 0; own < 30; own += 1) await page.locator(`#${which}`).click();
      await settled(page);
      assert.ok(await short.isVisible());
      said.push(/Not safe/.test(await short.innerText()));
      assert.equal(said.at(-1), /Not safe/.test(await text(page, "#verdict")), await text(page, "#verdict"));
    }
    assert.ok(said.includes(true));
  },

  "a day that somebody else wrote meanwhile signs nothing before it is said which stands": async (bench) => {
    const clinic = await bench.clinic("DEMO-2");
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-2");
    await go(page, "sign-off");
    clinic.write("DEMO-2.toml", clinic.text("DEMO-2.toml").replace(/next_review = \S+/, "next_review = 2026-09-09"));
    const before = clinic.text("DEMO-2.toml");
    await page.locator("[name=next_review]").evaluate((own) => { own.removeAttribute("hx-post"); own.value = "2026-10-10"; });
    await page.locator("label", { has: page.locator("[name=passed][value=no]") }).click();
    await fill(page, { by: "OT" });
    await press(page, "main .buttons button");
    assert.match(await text(page), /Somebody wrote “2026-09-09” here meanwhile/);
    assert.equal(clinic.text("DEMO-2.toml"), before);
    await Promise.all([page.waitForNavigation(), page.locator("button[name=mine]").click()]);
    assert.equal(clinic.text("DEMO-2.toml"), before.replace("2026-09-09", "2026-10-10"));
  },

  "the review shows what was found last beside what is asked now": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-1");
    const skin = async () => {
      await go(page, "review");
      for (const what of [/^Weight/, /^Skin/]) await page.locator("summary", { hasText: what }).click();
      return text(page);
    };
    assert.match(await skin(), /Last entry, 10 February 2026: 60 kg/);
    const form = page.locator("details[open] form", { has: page.locator('[name="skin.coccyx"]') });
    await form.locator("label", { has: page.locator('[name="skin.coccyx"][value=fades]') }).click();
    await form.locator("[name=by]").fill("OT");
    await Promise.all([page.waitForNavigation(), form.locator("button").click()]);
    assert.match(await skin(), /Last entry, 10 March 2026: [^.]*coccyx[^.]*a mark that fades/i);
  },

  "goals of a file that lacks measures are there as they are written": async (bench) => {
    const clinic = await bench.folder().serve();
    const page = await bench.window(clinic);
    await begin(page, clinic.origin, "N-1");
    await go(page, "goals");
    await choose(page, "goal.1.want", "equal firmness");
    await press(page, GOAL);
    assert.equal(await goals(page), 1, await text(page));
    assert.match(clinic.text("N-1.toml"), /want = "equal firmness"/);
  },

  "the enter key takes nothing away, and a second entry follows the first": async (bench) => {
    const { clinic, page } = await measured(bench);
    await go(page, "skin");
    const add = async (at, site) => {
      await page.locator("details.entry > summary").last().click();
      await choose(page, `skin.injury.${at}.site`, site);
      await choose(page, `skin.injury.${at}.is`, "healed");
      await fill(page, { [`skin.injury.${at}.seen_on`]: "2026-03-01" });
      await choose(page, `skin.injury.${at}.category`, "1");
    };
    await add(1, "coccyx");
    await press(page, "[name=more]");
    assert.equal(step(page), "skin/skin", await text(page));
    await add(2, "left-thigh");
    await press(page, "[name=more]");
    const sites = () => [...clinic.text("N-1.toml").matchAll(/^site = "(.*)"/gm)].map((own) => own[1]);
    assert.deepEqual(sites(), ["coccyx", "left-thigh"]);
    await enter(page, "skin.injury.1.seen_on");
    assert.equal(step(page), "function", await text(page));
    assert.deepEqual(sites(), ["coccyx", "left-thigh"]);
  },

  "a fill that is left halfway goes on where it was, and a count can be taken back": async (bench) => {
    const clinic = bench.folder();
    clinic.demo("DEMO-2");
    await clinic.serve();
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-2");
    const at = async () => Number(await page.inputValue("main form [name=number]"));
    const count = async () => { await fill(page, { first: "yes", second: "yes" }); await press(page, "main .buttons button"); };
    await go(page, "fill");
    const order = [await at()];
    await fill(page, { by: "OT" });
    for (let own = 0; own < 3; own += 1) { await count(); order.push(await at()); }
    assert.equal(new Set(order).size, 4, `${order}`);
    await go(page, "measure/hips");
    await go(page, "fill");
    assert.equal(await at(), order[3]);
    // Twice as many are in it, which is seen one compartment later.
    await press(page, "form.panes [name=again]");
    assert.equal(await at(), order[2]);
    await fill(page, { other: "47", first: "yes", second: "yes" });
    await press(page, "main .buttons button");
    while (await page.locator("[name=first]").count()) await count();
    await fill(page, { by: "OT" });
    await press(page, "[name=record]");
    assert.match(clinic.text("DEMO-2.toml"), new RegExp(`what = "filled"[\\s\\S]*number = ${order[2]}, cells = 47`));
    // What is recorded is no fill that goes on: the cushion is full, and is filled anew only where somebody says so.
    await go(page, "fill");
    assert.match(await text(page), /The cushion is full/);
    assert.ok(!(await page.locator("[name=first]").isVisible()));
    await page.locator("summary", { hasText: "fill it anew" }).click();
    assert.equal(await at(), order[0]);
    // Of a fill that goes on one compartment is counted again, and no other count is lost.
    await fill(page, { by: "OT" });
    for (let own = 0; own < 3; own += 1) await count();
    await press(page, `#so-far [name=again][value="${order[0]}"]`);
    assert.equal(await at(), order[0]);
    await count();
    assert.equal(await at(), order[3]);
  },

  "a fill that is left halfway goes on after the program was killed": async (bench) => {
    const clinic = await bench.clinic("DEMO-2");
    let page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-2");
    await go(page, "fill");
    const before = clinic.text("DEMO-2.toml");
    const at = async () => Number(await page.inputValue("main form [name=number]"));
    const planned = async () => Number(await page.inputValue("main form [name=planned]"));
    const count = async (more = {}) => { await fill(page, { first: "yes", second: "yes", ...more }); await press(page, "main .buttons button"); };
    const first = [await at(), await planned()];
    // Nobody signs the first: nothing is kept, and what was ticked stays.
    await count();
    assert.equal(clinic.text("DEMO-2.toml"), before);
    assert.ok(await page.locator("[name=first]").isChecked());
    await count({ by: "OT north" });
    const second = [await at(), 47];
    await count({ other: "47" });
    const third = await at();
    assert.equal(new Set([first[0], second[0], third]).size, 3);

    await clinic.stop("SIGKILL");
    await clinic.serve();
    page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-2");
    await go(page, "fill");
    assert.equal(await at(), third);
    const told = await text(page, "#so-far");
    for (const [number, cells] of [first, second]) assert.match(told, new RegExp(`\\b${number} ${cells} cells\\b`));
    assert.match(told, /OT north/);
    assert.match(told, / 2 of \d+ compartments/);
    // By the record nothing was put in yet, and the command line says what is going on.
    assert.doesNotMatch(clinic.text("DEMO-2.toml"), /what = "filled"/);
    const notes = (await clinic.answer("history", "DEMO-2.toml")).warnings.map((own) => [own.id, own.counted]);
    assert.deepEqual(notes.find(([id]) => id === "fill-begun"), ["fill-begun", 2]);

    while (await page.locator("[name=first]").count()) await count();
    assert.equal(await page.inputValue("main [name=by]"), "OT north");
    await press(page, "[name=record]");
    const after = clinic.text("DEMO-2.toml");
    assert.match(after, new RegExp(`what = "filled"[\\s\\S]*number = ${second[0]}, cells = 47`));
    assert.doesNotMatch(after, /\[filling\]/);
    assert.ok(after.startsWith(before), "recording left more in the file than its entry");

    // Given up, nothing is left of it.
    await go(page, "fill");
    await page.locator("summary", { hasText: "fill it anew" }).click();
    await count({ by: "OT north" });
    assert.match(clinic.text("DEMO-2.toml"), /\[filling\]/);
    await page.locator("main details", { has: page.locator("[name=give-up]") }).locator("summary").click();
    await press(page, "[name=give-up]");
    assert.equal(clinic.text("DEMO-2.toml"), after);
  },

  "what was checked once and never recorded as filled is recorded as planned by one button": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-1");
    await go(page, "checks");
    // It says what is believed, as the command line does, and not that nobody knows.
    const { out } = await clinic.command("history", "DEMO-1.toml");
    const believed = out.match(/Nobody recorded what was put in: [^.]*\./)?.[0];
    assert.ok(believed, out);
    assert.ok((await text(page)).includes(believed), await text(page));
    await fill(page, { by: "OT" });
    await press(page, "[name=as-planned]");
    assert.equal(step(page), "checks", await text(page));
    assert.ok(await page.locator("[name='under.left']").count(), await text(page));
    const other = bench.folder();
    other.demo("DEMO-1");
    await other.answer("record", "DEMO-1.toml", "filled", "--as-planned", "--by", "OT");
    assert.equal(clinic.text("DEMO-1.toml"), other.text("DEMO-1.toml"));
    // Of a plan that nobody checked it is not offered: it is filled first.
    clinic.demo("DEMO-3");
    await open(page, clinic.origin, "DEMO-3");
    await go(page, "checks");
    assert.equal(await page.locator("[name=as-planned]").count(), 0);
  },

  "a cushion that cannot bear the client leads back to the cushions": async (bench) => {
    const clinic = bench.folder();
    // Rated for less, and taken all the same.
    clinic.write("N-2.toml", CHILD.replace("kg = 20", "kg = 150"));
    await clinic.serve();
    const page = await bench.window(clinic);
    await page.goto(`${clinic.origin}/`);
    const address = await page.locator(".clients h2 a").first().evaluate((own) => own.pathname.split("/")[2]);
    await page.goto(`${clinic.origin}/c/${address}/plan`);
    await page.locator("#verdict [role=alert]").waitFor();
    await fill(page, { by: "OT" });
    await press(page, "#take button");
    assert.ok(await page.locator("[role=alert]").count(), await text(page));
    await press(page, "main .buttons a[href$='/cushion']");
    assert.equal(step(page), "cushion", await text(page));
    assert.ok(await page.locator("[name=choice]").count(), await text(page));
  },

  "where hands are asked to feel more, the checks lead on, safe or not": async (bench) => {
    const clinic = await bench.clinic("DEMO-2");
    const { compartments } = await clinic.answer("plan", "DEMO-2.toml", "--record", "--by", "OT");
    // Far fewer under the seat bones than planned, so that too little is expected.
    const filled = compartments.map((own) => `${own.number}=${own.number <= 2 ? Math.round(own.planned / 2) : own.planned}`);
    await clinic.answer("record", "DEMO-2.toml", "filled", ...filled, "--by", "OT");
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-2");
    await go(page, "checks");
    // Felt once alone.
    await fill(page, { "felt.left": "22", by: "OT" });
    await press(page, "main form.stack .buttons button");
    assert.match(await text(page), /feel under the left seat bone a second time/);
    const ways = await page.$$eval("main .buttons a", (all) => all.map((own) => own.pathname.split("/").at(-1)));
    assert.deepEqual(ways, ["checks", "plan", "cushion"], await text(page));
  },

  "where no move is safe, other ways lead on than the same check again": async (bench) => {
    const clinic = bench.folder();
    clinic.write("N-2.toml", CHILD);
    await clinic.answer("plan", "N-2.toml", "--record", "--by", "OT");
    await clinic.answer("record", "N-2.toml", "filled", "--as-planned", "--by", "OT");
    await clinic.serve();
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "N-2");
    await go(page, "checks");
    const clear = Object.fromEntries(["left-seat-bone", "right-seat-bone", "coccyx"].map((site) => [`skin.${site}`, "clear"]));
    await fill(page, { "felt.left": "30", "felt.right": "16", "top.left": "safe", "top.right": "safe", ...clear, by: "OT" });
    await press(page, "main form.stack .buttons button");
    // All moves would give the injury more; they are not taken.
    await press(page, "[name='nearest-safe'][value=leave]");
    const ways = await page.$$eval("main .buttons a", (all) => all.map((own) => own.pathname.split("/").at(-1)));
    // The first leads on, and stands out: the same check again would find the same.
    const looks = await page.$$eval("main .buttons a", (all) => all.map((own) => own.className));
    assert.deepEqual(looks.map((own) => own === "button"), [true, false, false, false]);
    assert.deepEqual(ways, ["plan", "cushion", "moves", "checks"], await text(page));
    await go(page, "moves");
    const there = await page.$$eval("main > .buttons a", (all) => all.map((own) => own.pathname.split("/").at(-1)));
    assert.deepEqual(there, ["plan", "cushion", "checks"], await text(page));
  },

  "what follows from a check that fails names the moves": async (bench) => {
    const clinic = await bench.folder();
    clinic.demo("DEMO-3");
    await clinic.answer("record", "DEMO-3.toml", "filled", "--as-planned", "--by", "OT");
    await clinic.serve();
    const page = await bench.window(clinic);
    await open(page, clinic.origin, "DEMO-3");
    await go(page, "checks");
    await fill(page, { "felt.left": "15", "felt.right": "28", by: "OT" });
    await press(page, "main form.stack .buttons button");
    const moves = await page.locator("main ol li").count();
    assert.ok(moves, await text(page));
    await go(page, "moves");
    const [, said] = (await text(page)).match(/Move 1 of (\d+)/) ?? [];
    assert.equal(Number(said), moves);
    // What they do takes longer, and comes after the move.
    await settled(page);
    assert.match(await text(page), /Expected change from what is in the cushion/);
  },
};
