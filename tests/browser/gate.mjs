// Who is let in, and what never leaves: plain HTTP requests without a browser, as another program or
// a page of another site would send them.
//
// Against: the Fetch and HTML Standards (Origin, SameSite, HttpOnly), RFC 9110 (status of a wrong
// authority: 421) and the rule that a name which only begins like a loopback address is another's.
import assert from "node:assert/strict";
import { open, settled } from "./aid/window.mjs";

/** Lets itself in, and gives the cookie. */
async function cookie(clinic) {
  const { pathname, search } = new URL(clinic.address);
  const got = await clinic.ask("GET", pathname + search);
  assert.equal(got.status, 303);
  assert.equal(got.headers.location, "/");
  const line = got.headers["set-cookie"][0];
  for (const part of ["HttpOnly", "SameSite=Strict", "Path=/"]) assert.match(line, new RegExp(part));
  return line.split(";")[0];
}

const form = { "content-type": "application/x-www-form-urlencoded" };

export default {
  "the key opens once, and nothing without it": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    assert.equal((await clinic.ask("GET", "/")).status, 401);
    assert.equal((await clinic.ask("GET", "/?key=0123456789abcdef0123456789abcdef")).status, 401);
    const own = await cookie(clinic);
    const { search } = new URL(clinic.address);
    assert.equal((await clinic.ask("GET", `/${search}`)).status, 401);
    assert.equal((await clinic.ask("GET", "/", { cookie: own })).status, 200);
    const half = own.slice(0, -1);
    for (const wrong of [half, `${own}0`, own.replace(/=.*/, "="), "a=b"]) {
      assert.equal((await clinic.ask("GET", "/", { cookie: wrong })).status, 401, wrong);
    }
    // Nothing of a refused answer tells who is here.
    assert.doesNotMatch((await clinic.ask("GET", "/")).body, /DEMO/);
  },

  "the page has an icon of its own, and the browser complains of nothing on the first screen": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const own = await cookie(clinic);
    // Where a browser looks if no page names one, as beside a paper.
    const { status, headers, body } = await clinic.ask("GET", "/favicon.ico", { cookie: own });
    assert.deepEqual([status, headers["content-type"]], [200, "image/svg+xml"]);
    // One picture of our own shapes, which fetches nothing and runs nothing.
    assert.match(body, /^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
    assert.doesNotMatch(body, /href|url\(|style|script|<image|<use/);
    assert.equal((await clinic.ask("GET", "/favicon.ico")).status, 401);

    const other = await bench.clinic("DEMO-1");
    const context = await bench.browser.newContext();
    bench.contexts.push(context);
    const page = await context.newPage();
    const said = [];
    page.on("console", (one) => { if (one.type() === "error" || one.type() === "warning") said.push(one.text()); });
    page.on("pageerror", (error) => said.push(`${error}`));
    page.on("response", (got) => { if (got.status() >= 400) said.push(`${got.status()} ${got.url()}`); });
    await page.goto(other.address, { waitUntil: "load" });
    // A browser without a window asks for no icon by itself.
    const size = await page.evaluate(async () => {
      const icon = new Image();
      icon.src = document.querySelector("link[rel=icon]").href;
      await icon.decode();
      return icon.naturalWidth;
    });
    assert.ok(size > 0);
    assert.deepEqual(said, []);
  },

  "another name for this machine is refused": async (bench) => {
    const clinic = await bench.clinic();
    const own = await cookie(clinic);
    const { port } = new URL(clinic.address);
    const names = [
      `127.0.0.1.example.org:${port}`, `localhost.example.org:${port}`, `example.org:${port}`, `127.0.0.1:1`,
      "127.0.0.1", `0.0.0.0:${port}`, `2130706433:${port}`, `127.1:${port}`, `[::ffff:127.0.0.1]:${port}`, "",
    ];
    for (const host of names) {
      const got = await clinic.ask("GET", "/", { host, cookie: own });
      assert.ok([400, 421].includes(got.status), `${host}: ${got.status}`);
      // One sentence for everybody who is not let in, of which nothing is the folder's.
      assert.match(got.headers["content-type"] ?? "", /^text\/plain|^$/, host);
      assert.doesNotMatch(got.body, /DEMO|\.toml|clinic/i, host);
    }
    for (const host of [`localhost:${port}`, `127.0.0.1:${port}`]) {
      assert.equal((await clinic.ask("GET", "/", { host, cookie: own })).status, 200, host);
    }
  },

  "changes come from our own page": async (bench) => {
    const clinic = await bench.clinic();
    const own = await cookie(clinic);
    const { port } = new URL(clinic.address);
    const post = (origin, more = {}) =>
      clinic.ask("POST", "/clients/new", { ...form, cookie: own, ...(origin === undefined ? {} : { origin }), ...more }, "code=Q-1&unit=mm");
    const foreign = [undefined, "null", "", "http://example.org", `https://127.0.0.1:${port}`, `http://127.0.0.1.example.org:${port}`, "http://127.0.0.1:1", `http://localhost:${port}`];
    for (const origin of foreign) assert.equal((await post(origin)).status, 403, String(origin));
    assert.throws(() => clinic.text("Q-1.toml"));
    // Without the cookie not even our own page.
    assert.equal((await post(clinic.origin, { cookie: "a=b" })).status, 401);
    assert.throws(() => clinic.text("Q-1.toml"));
    assert.equal((await post(clinic.origin)).status, 303);
    assert.match(clinic.text("Q-1.toml"), /client = "Q-1"/);
  },

  "other methods, addresses outside and large bodies are refused": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const own = await cookie(clinic);
    const ours = { cookie: own, origin: clinic.origin };
    for (const method of ["PUT", "DELETE", "PATCH", "OPTIONS", "TRACE"]) {
      const { status } = await clinic.ask(method, "/", ours);
      assert.ok([403, 405].includes(status), `${method}: ${status}`);
    }
    const outside = [
      "/own/../Cargo.toml", "/own/%2e%2e%2fDEMO-1.toml", "/own/..%5cDEMO-1.toml", "/DEMO-1.toml", "/c/DEMO-1/measure",
      "/c/DEMO-1.toml/measure", "/c/../../etc/passwd", "/c/%2e%2e%2f%2e%2e%2fetc%2fpasswd/measure", "//etc/passwd",
      "/layout/..%2fDEMO-1.toml", "/layout/%2fetc%2fpasswd", "/own/%00", "/c//measure", "/c/%20/measure",
    ];
    for (const where of outside) {
      const got = await clinic.ask("GET", where, { cookie: own });
      assert.ok(got.status >= 300 && got.status < 500, `${where}: ${got.status}`);
      assert.doesNotMatch(got.body, /root:|format = 1|hip_width/, where);
    }
    const large = await clinic.ask("POST", "/clients/new", { ...ours, ...form }, `code=${"A".repeat(70_000)}`).catch((error) => ({ status: error.code }));
    assert.ok([413, "ECONNRESET", "EPIPE"].includes(large.status), `large: ${large.status}`);
    assert.equal((await clinic.ask("GET", "/", { cookie: own })).status, 200);
  },

  "each answer has the headers that keep others out": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const own = await cookie(clinic);
    const list = await clinic.ask("GET", "/", { cookie: own });
    const client = list.body.match(/href="(\/c\/[^/"]+)\//)[1];
    const ways = ["/", `${client}/measure`, `${client}/plan`, `${client}/papers`, `${client}/papers/0.svg`, `${client}/papers/0.pdf`, "/own/page.css", "/own/page.js", "/own/htmx.js", "/nothing"];
    for (const where of ways) {
      const { headers } = await clinic.ask("GET", where, { cookie: own });
      const policy = headers["content-security-policy"];
      assert.match(policy, /default-src 'none'/, where);
      assert.doesNotMatch(policy, /script-src[^;]*(unsafe|\*|http)/, where);
      if (!where.includes(".svg") && !where.includes(".pdf")) {
        for (const part of ["frame-ancestors 'none'", "base-uri 'none'", "form-action 'self'"]) assert.ok(policy.includes(part), `${where}: ${policy}`);
        assert.doesNotMatch(policy, /unsafe/, where);
      }
      assert.equal(headers["x-content-type-options"], "nosniff", where);
      assert.equal(headers["cross-origin-resource-policy"], "same-origin", where);
      // What is of a client is kept by no browser.
      if (!where.startsWith("/own/")) assert.equal(headers["cache-control"], "no-store", where);
    }
  },

  "no code in an address, a title or the program's words, and nothing leaves the machine": async (bench) => {
    const clinic = await bench.clinic("DEMO-1");
    const page = await bench.window(clinic);
    const asked = [];
    page.context().on("request", (own) => asked.push(own.url()));
    await open(page, clinic.origin, "DEMO-1");
    const base = new URL(page.url()).href.replace(/\/[^/]*$/, "");
    for (const step of ["measure", "posture", "skin", "function", "chair", "goals", "cushion", "plan", "fill", "checks", "moves", "carers", "sign-off", "papers", "review"]) {
      await page.goto(`${base}/${step}`);
      assert.doesNotMatch(await page.title(), /DEMO/i, step);
      if (step === "plan") await settled(page);
    }
    assert.doesNotMatch(page.url(), /key=/);
    assert.ok(asked.length > 20);
    for (const own of asked) {
      assert.equal(new URL(own).origin, clinic.origin);
      assert.doesNotMatch(own, /DEMO/i);
    }
    assert.doesNotMatch(clinic.output, /DEMO/i);
    // Nothing of a client stays in the browser, and the pass only as long as the window.
    const kept = await page.evaluate(() => JSON.stringify([{ ...localStorage }, { ...sessionStorage }]));
    assert.doesNotMatch(kept, /DEMO|hip_width|395/i);
    const cookies = await page.context().cookies();
    assert.deepEqual(cookies.map((own) => [own.httpOnly, own.sameSite, own.expires]), [[true, "Strict", -1]]);
  },
};
