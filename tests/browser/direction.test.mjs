// A catalogue in which every text is in Hebrew (tests/all/unbroken.rs) is compiled. On every page, such a
// text stands in an element that isolates its direction, or alone in a block that is set in its own.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { listen } from "./browser.mjs";
import { publish } from "./planted.mjs";

let planted;

before(async () => {
  planted = await publish("hebrew");
});
after(async () => {
  await planted?.stop();
});

/** In the page: the texts in Hebrew that nothing isolates, and the number of those that are isolated. */
function look() {
  const hebrew = /[\u0590-\u05ff]/;
  const bare = [];
  let isolated = 0;
  const nodes = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (nodes.nextNode()) {
    const node = nodes.currentNode;
    const around = node.parentElement;
    // Drawings place each text by itself; a long text of Markdown is made of blocks, each in its own direction.
    if (!hebrew.test(node.data) || around.closest("script, style, svg, .prose")) continue;
    let element = around;
    while (element && getComputedStyle(element).unicodeBidi === "normal") element = element.parentElement;
    const alone = element?.textContent.trim() === node.data.trim();
    const bidi = element ? getComputedStyle(element).unicodeBidi : "normal";
    if (bidi === "isolate" && element.matches("bdi, bdi *")) isolated += 1;
    else if (alone && ["isolate", "plaintext"].includes(bidi)) isolated += 1;
    else bare.push(`${around.tagName}.${around.className} in ${around.parentElement.tagName}.${around.parentElement.className}: ${element?.textContent.trim().slice(0, 60)}`);
  }
  return { bare, isolated };
}

/** In the page: opens and chooses what can be, the first answer of each question, so that scripts write what
 *  they have to say. */
function use() {
  for (const choice of document.querySelectorAll("summary, input[type=checkbox]:not([name=value])")) choice.click();
  for (const question of document.querySelectorAll(".questions > li")) question.querySelector("input[name=value]")?.click();
}

test("texts from right to left reorder nothing around them, before the page is used and after", async () => {
  const faults = [];
  const kinds = new Set();
  let [isolated, used] = [0, 0];
  const page = await listen(planted.browser, planted.address, faults);
  for (const path of planted.pages) {
    await page.goto(planted.address + path, { waitUntil: "load" });
    const before = await page.evaluate(look);
    await page.evaluate(use);
    const after = await page.evaluate(look);
    isolated += before.isolated;
    used += after.isolated;
    if (before.isolated + after.isolated > 0) kinds.add(path.split("/").filter((part) => !/\d/.test(part))[0] ?? "");
    for (const bare of new Set([...before.bare, ...after.bare])) faults.push(`/${path}: ${bare}`);
  }
  for (const kind of ["", "design", "impression", "holder", "person", "lit", "literature", "census"]) {
    assert.ok(kinds.has(kind), `no such text on a page of the kind "${kind}"; there are: ${[...kinds].join(", ")}`);
  }
  assert.ok(isolated > 700, `only ${isolated} texts`);
  assert.ok(used > isolated, `${isolated} texts, and ${used} after the pages were used`);
  assert.equal(faults.length, 0, `${faults.length} faults\n${faults.slice(0, 40).join("\n")}`);
});
