// The program under test: its page served for a folder, and its commands.
import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync, copyFileSync } from "node:fs";
import http from "node:http";
import os from "node:os";
import path from "node:path";
import { demos } from "./packages.mjs";

/** The day of all tests. */
export const DAY = "2026-03-10";
/** The demo clients' files, by code. */
const DEMOS = { "DEMO-1": "client", "DEMO-2": "child", "DEMO-3": "wide" };

export const demoText = (code) => readFileSync(path.join(demos, `${DEMOS[code]}.toml`), "utf8");

/** What a command of the program says: its status, what it printed, and the same read as JSON. */
export function command(program, folder, ...words) {
  return new Promise((done, fail) => {
    const child = spawn(program, ["--date", DAY, "--json", ...words], { cwd: folder });
    let out = "";
    let told = "";
    child.stdout.on("data", (data) => (out += data));
    child.stderr.on("data", (data) => (told += data));
    child.on("error", fail);
    child.on("close", (status) => {
      let json;
      try { json = JSON.parse(out); } catch { json = undefined; }
      done({ status, out, told, json });
    });
  });
}

/** The same, which must end with status 0. */
export async function answer(program, folder, ...words) {
  const said = await command(program, folder, ...words);
  if (said.status !== 0) throw new Error(`${words.join(" ")}: status ${said.status}\n${said.out}${said.told}`);
  return said.json;
}

/** A folder of clients whose page is served. */
export class Clinic {
  constructor(program, folder, isOwn) {
    this.program = program;
    this.folder = folder ?? mkdtempSync(path.join(os.tmpdir(), "clinic-"));
    this.isOwn = isOwn ?? folder === undefined;
    this.output = "";
  }

  path(name) { return path.join(this.folder, name); }
  text(name) { return readFileSync(this.path(name), "utf8"); }
  write(name, text) { writeFileSync(this.path(name), text); }
  demo(...codes) { for (const code of codes) copyFileSync(path.join(demos, `${DEMOS[code]}.toml`), this.path(`${code}.toml`)); }
  command(...words) { return command(this.program, this.folder, ...words); }
  answer(...words) { return answer(this.program, this.folder, ...words); }

  /** Serves the page; the address has the key. */
  async serve() {
    this.output = "";
    const words = ["chairside", this.folder, "--no-open", "--date", DAY];
    this.child = spawn(this.program, words, { env: { ...process.env, RUST_BACKTRACE: "1" } });
    this.ended = new Promise((done) => this.child.on("exit", done));
    this.address = await new Promise((done, fail) => {
      const read = (data) => {
        this.output += data;
        const found = this.output.match(/http:\S+/);
        if (found) done(found[0]);
      };
      this.child.stdout.on("data", read);
      this.child.stderr.on("data", read);
      this.child.on("exit", (status) => fail(new Error(`ended with ${status}: ${this.output}`)));
    });
    this.origin = new URL(this.address).origin;
    return this;
  }

  async stop(signal = "SIGTERM") {
    if (this.child) { this.child.kill(signal); await this.ended; this.child = undefined; }
  }

  async end() {
    await this.stop();
    if (this.isOwn) rmSync(this.folder, { recursive: true, force: true });
  }

  /** Asks over plain HTTP, with the headers as given: no browser mends them. */
  ask(method, where, headers = {}, body) {
    const { port } = new URL(this.address);
    return new Promise((done, fail) => {
      const asked = http.request({ host: "127.0.0.1", port, method, path: where, headers, setHost: !("host" in headers) }, (got) => {
        const parts = [];
        got.on("data", (part) => parts.push(part));
        got.on("end", () => done({ status: got.statusCode, headers: got.headers, body: Buffer.concat(parts).toString() }));
        got.on("error", fail);
      });
      asked.on("error", fail);
      asked.end(body);
    });
  }
}
