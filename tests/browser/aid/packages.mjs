// Where the packages of package.json are: tests/run installs them into target/test-browser; another
// place is named by BROWSER_PACKAGES.
import { createRequire } from "node:module";
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../../..");
const place = process.env.BROWSER_PACKAGES ?? path.join(root, "target/test-browser");
const from = createRequire(path.join(place, "package.json"));

export const logs = path.join(root, "target/test-logs");
export const demos = path.join(root, "crates/cli/demo");
export const { chromium } = from("playwright-core");
/** The text of axe-core, to be run within a page. */
export const axe = readFileSync(from.resolve("axe-core/axe.min.js"), "utf8");

/** The browser of this machine. */
export function browserHere() {
  for (const own of ["/usr/bin/chromium", "/usr/bin/chromium-headless-shell"]) if (existsSync(own)) return own;
  throw new Error("no Chromium is installed");
}
