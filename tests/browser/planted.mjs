// A catalogue with a text planted in every place that records declare (tests/all/unbroken.rs), compiled and
// served, with a browser to open its pages.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { launch } from "./browser.mjs";
import { pagesOf, serve } from "./site.mjs";

/** Compiles the catalogue `name`. Gives its folder, the paths of its pages without `index.html`, the browser, the
 *  server's address, and a way to stop both. */
export async function publish(name) {
  const catalogue = join(process.env.KEYBLOCK_MADE ?? "target/made", name);
  assert.ok(existsSync(catalogue), `${catalogue} is missing: KEYBLOCK_MADE=$PWD/target/made cargo test unbroken`);
  execFileSync(process.env.KEYBLOCK ?? "target/release/keyblock", ["compile", catalogue], { stdio: "ignore" });
  const folder = join(catalogue, "web");
  const files = await pagesOf(folder);
  const pages = files.filter((f) => f.endsWith("index.html")).map((f) => f.slice(0, -"index.html".length));
  const [browser, site] = [await launch(), await serve(folder)];
  const stop = async () => {
    await browser.close();
    await site.stop();
  };
  return { folder, pages, browser, address: site.address, stop };
}
