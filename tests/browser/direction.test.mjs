// A catalogue in which every text is in Hebrew (tests/all/unbroken.rs) is compiled. On every page, such a
// text stands in an element that isolates its direction, or alone in a block that is set in its own.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { launch, listen } from "./browser.mjs";
import { filesOf, serve } from "./site.mjs";

const catalogue = join(process.env.KEYBLOCK_MADE ?? "target/made", "hebrew");
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

test("texts from right to left reorder nothing around them", async () => {
  const faults = [];
  let isolated = 0;
  const page = await listen(browser, site.address, faults);
  for (const path of pages) {
    await page.goto(site.address + path, { waitUntil: "load" });
    const told = await page.evaluate(() => {
      const hebrew = /[\u0590-\u05ff]/;
      const bare = [];
      let isolated = 0;
      const nodes = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      while (nodes.nextNode()) {
        const node = nodes.currentNode;
        const around = node.parentElement;
        if (!hebrew.test(node.data) || around.closest("script, style, svg, .prose")) continue;
        // A reference, and a line of a list of works, is one text, set in the direction of its first letter.
        // A button of the key holds a whole sentence.
        if (around.closest(".works, button, label") || location.pathname.includes("/lit/")) continue;
        let element = around;
        while (element && getComputedStyle(element).unicodeBidi === "normal") element = element.parentElement;
        const alone = element?.textContent.trim() === node.data.trim();
        const bidi = element ? getComputedStyle(element).unicodeBidi : "normal";
        if (bidi === "isolate" && element.matches("bdi, bdi *")) isolated += 1;
        else if (alone && ["isolate", "plaintext"].includes(bidi)) isolated += 1;
        else bare.push(`${around.tagName}.${around.className} in ${around.parentElement.tagName}.${around.parentElement.className}: ${element?.textContent.trim().slice(0, 60)}`);
      }
      return { bare, isolated };
    });
    isolated += told.isolated;
    for (const bare of told.bare) faults.push(`/${path}: ${bare}`);
  }
  assert.ok(isolated > 500, `only ${isolated} texts`);
  assert.equal(faults.length, 0, `${faults.length} faults\n${faults.slice(0, 40).join("\n")}`);
});
