// A catalogue in which every text holds 300 signs without a break (tests/all/unbroken.rs) is compiled, and
// every page of it opens at the width of a phone without sideways scrolling, as do pages on a desk.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { listen } from "./browser.mjs";
import { publish } from "./planted.mjs";

let planted;

before(async () => {
  planted = await publish("unbroken");
});
after(async () => {
  await planted?.stop();
});

test("unbroken text stands on every kind of page", async () => {
  const kinds = new Set();
  for (const page of planted.pages) {
    const text = await readFile(join(planted.folder, page, "index.html"), "utf8");
    if (/\w{300}/.test(text)) kinds.add(page.split("/").filter((part) => !/\d/.test(part)).join("/"));
  }
  assert.ok(kinds.size >= 20, `only ${kinds.size} kinds of page: ${[...kinds].join(", ")}`);
});

for (const [width, isMobile] of [[390, true], [1280, false]]) {
  test(`unbroken text widens no page at ${width} px`, async () => {
    const faults = [];
    const waiting = [...planted.pages];
    const walk = async () => {
      const page = await listen(planted.browser, planted.address, faults);
      await page.setViewport({ width, height: 844, isMobile, hasTouch: isMobile });
      for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
        await page.goto(planted.address + path, { waitUntil: "load" });
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
    assert.ok(planted.pages.length > 100, `only ${planted.pages.length} pages`);
    assert.equal(faults.length, 0, `${faults.length} faults\n${faults.slice(0, 40).join("\n")}`);
  });
}
