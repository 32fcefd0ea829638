// The catalogue of 1,200 designs of which little is recorded (tests/all/sparse/), compiled: its overviews stand in columns
// on a desk and in one column on a phone, and none is wider than the screen or longer than a reader would scroll.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { listen } from "./browser.mjs";
import { publish } from "./planted.mjs";

let sparse;

before(async () => { sparse = await publish("sparse"); });
after(async () => { await sparse?.stop(); });

/** What `look` sees on a page at a width. */
async function at(path, width, look) {
  const faults = [];
  const page = await listen(sparse.browser, sparse.address, faults);
  await page.setViewport({ width, height: 844 });
  await page.goto(sparse.address + path, { waitUntil: "load" });
  const seen = await page.evaluate(look);
  await page.close();
  assert.deepEqual(faults, []);
  return seen;
}

/** The overviews with the selector of their entries. */
const columns = {
  "designs/": "ol.named > li",
  "designs/list/": "ol.entries > li",
  "techniques/": "ol.named > li",
  "titles/": "ul.index:has(> li:nth-child(13)) > li",
  "chronology/": "dd:has(> p:nth-child(9)) > p",
};

for (const [path, entries] of Object.entries(columns)) {
  test(`/${path} stands in columns on a desk, in one on a phone`, async () => {
    const lefts = (selector) => `(() => {
      const first = document.querySelector(${JSON.stringify(selector)}).parentElement;
      return new Set([...first.children].map((e) => Math.round(e.getBoundingClientRect().left))).size;
    })()`;
    assert.ok((await at(path, 1280, lefts(entries))) > 1);
    assert.equal(await at(path, 390, lefts(entries)), 1);
  });
}

test("no page of a kind is wider than a phone", async () => {
  const paths = [...Object.keys(columns), "", "census/", "design/40/census/", "design/1/census/", "design/40/", "design/2/", "impression/1.1/", "holder/kelderhaven/", "holders/", "concordance/", "people/", "identify/"];
  for (const path of paths) {
    const over = await at(path, 390, "document.documentElement.scrollWidth - document.documentElement.clientWidth");
    assert.ok(over <= 0, `/${path} is ${over} px too wide`);
  }
});
