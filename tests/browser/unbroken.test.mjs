// A catalogue in which every text holds 300 signs without a break (tests/all/unbroken.rs) is compiled, and
// every page of it opens at the width of a phone without sideways scrolling, as do pages on a desk.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { launch, listen } from "./browser.mjs";
import { filesOf, serve } from "./site.mjs";

const catalogue = join(process.env.KEYBLOCK_MADE ?? "target/made", "unbroken");
const program = process.env.KEYBLOCK ?? "target/release/keyblock";
const folder = join(catalogue, "web");
let browser;
let site;
let pages;

before(async () => {
  assert.ok(existsSync(catalogue), `${catalogue} is missing: KEYBLOCK_MADE=$PWD/target/made cargo test unbroken`);
  execFileSync(program, ["compile", catalogue], { stdio: "ignore" });
  [browser, site] = [await launch(), await serve(folder)];
  pages = (await filesOf(folder)).filter((f) => f.endsWith("index.html")).map((f) => f.slice(0, -"index.html".length));
});
after(async () => {
  await browser?.close();
  await site?.stop();
});

test("unbroken text stands on every kind of page", async () => {
  const kinds = new Set();
  for (const page of pages) {
    const text = await readFile(join(folder, page, "index.html"), "utf8");
    if (/\w{300}/.test(text)) kinds.add(page.split("/").filter((part) => !/\d/.test(part)).join("/"));
  }
  assert.ok(kinds.size >= 20, `only ${kinds.size} kinds of page: ${[...kinds].join(", ")}`);
});

for (const [width, isMobile] of [[390, true], [1280, false]]) {
  test(`unbroken text widens no page at ${width} px`, async () => {
    const faults = [];
    const waiting = [...pages];
    const walk = async () => {
      const page = await listen(browser, site.address, faults);
      await page.setViewport({ width, height: 844, isMobile, hasTouch: isMobile });
      for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
        await page.goto(site.address + path, { waitUntil: "load" });
        const wide = await page.evaluate(() => {
          const root = document.documentElement;
          const room = root.clientWidth;
          // What is wider than the page and lies in no frame that scrolls is cut off or scrolls the page.
          const scrolls = (e) => e && (["auto", "scroll", "hidden"].includes(getComputedStyle(e).overflowX) || scrolls(e.parentElement));
          const out = [...document.body.querySelectorAll("*")].find((e) => {
            const box = e.getBoundingClientRect();
            return box.width > 1 && box.right > room + 1 && !scrolls(e.parentElement) && getComputedStyle(e).position !== "absolute";
          });
          if (root.scrollWidth <= room && !out) return null;
          return `${root.scrollWidth} px wide at ${out?.tagName}.${out?.className} in ${out?.parentElement?.tagName}.${out?.parentElement?.className}`;
        });
        if (wide) faults.push(`/${path}: ${wide}`);
      }
      await page.close();
    };
    await Promise.all([walk(), walk()]);
    assert.ok(pages.length > 100, `only ${pages.length} pages`);
    assert.equal(faults.length, 0, `${faults.length} faults\n${faults.slice(0, 40).join("\n")}`);
  });
}
