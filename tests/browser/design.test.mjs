// The page of a design: the order of its parts, its contents beside the text or folded, the weight of every such page,
// and the gallery whose photographs are ticked to be compared.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { launch, listen } from "./browser.mjs";
import { pagesOf, serve } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";
const HEAVIEST = 150_000; // Bytes of HTML, before compression.
const ORDER = ["entry", "commentary", "states", "strips", "printings", "impressions", "gallery", "census", "comparisons", "order", "points", "pictures", "related", "literature", "exhibitions", "mentioned", "as-data"];
const faults = [];
let browser;
let site;
let designs;

before(async () => {
  [browser, site] = [await launch(), await serve(folder)];
  designs = (await pagesOf(folder)).filter((file) => /^design\/[^/]+\/index\.html$/.test(file));
});
after(async () => {
  await browser?.close();
  await site?.stop();
});

async function open(path, { width = 1280, scripts = true } = {}) {
  const page = await listen(browser, site.address, faults);
  await page.setJavaScriptEnabled(scripts);
  await page.setViewport({ width, height: 900 });
  await page.goto(site.address + path, { waitUntil: "load" });
  return page;
}

test("every design's page is lighter than 150 kB and has its parts in order", async () => {
  assert.ok(designs.length >= 25, `only ${designs.length} designs`);
  const shown = new Set();
  for (const file of designs) {
    const html = await readFile(join(folder, file), "utf8");
    const bytes = Buffer.byteLength(html);
    assert.ok(bytes < HEAVIEST, `${file} has ${bytes} bytes`);
    const places = ORDER.map((id) => html.indexOf(` id="${id}"`)).filter((at) => at >= 0);
    assert.deepEqual(places, places.toSorted((a, b) => a - b), file);
    for (const id of ORDER) if (html.includes(` id="${id}"`)) shown.add(id);
    const plate = html.indexOf('<figure class="plate"');
    assert.ok(plate < html.indexOf(' id="entry"'), `${file}: the plate does not come first`);
  }
  // The demonstration has no drawings besides its plates.
  assert.deepEqual(ORDER.filter((id) => !shown.has(id)), ["pictures"], "no design has these parts");
});

test("the contents stand beside the text on a wide screen and are folded on a phone, without a script", async () => {
  for (const [width, isBeside] of [[1280, true], [1920, true], [390, false], [1024, false]]) {
    const page = await open("design/7/", { width, scripts: false });
    const seen = await page.evaluate(() => {
      const [beside, folded] = [".beside", ".folded"].map((name) => document.querySelector(name).checkVisibility());
      return { beside, folded, open: document.querySelector(".folded").open };
    });
    assert.deepEqual(seen, { beside: isBeside, folded: !isBeside, open: false }, `at ${width}`);
    if (isBeside) {
      const { box, others } = await page.evaluate(() => {
        const rect = (e) => e.getBoundingClientRect();
        const box = rect(document.querySelector(".beside > div"));
        const parts = [...document.querySelectorAll(".sheet > :not(.beside, .folded), .part > *")].filter((e) => e.checkVisibility());
        return { box: box.toJSON(), others: Math.max(...parts.map((e) => rect(e).right)) };
      });
      assert.ok(others <= box.left, `at ${width} the text reaches ${others}, the contents begin at ${box.left}`);
    }
    // Each leads to a part that is there, and every part of the sheet is named.
    const { ways, parts } = await page.evaluate(() => ({
      ways: [...document.querySelectorAll(".folded a")].map((a) => a.getAttribute("href").slice(1)),
      parts: [...document.querySelectorAll(".sheet > .part > h2.side")].map((h) => h.id),
    }));
    assert.deepEqual(ways, parts);
    await page.close();
  }
});

test("the contents stay in sight while the page is read", async () => {
  const page = await open("design/7/");
  await page.evaluate(() => document.getElementById("literature").scrollIntoView());
  const { top, bottom } = await page.$eval(".beside > div", (div) => div.getBoundingClientRect().toJSON());
  assert.ok(top >= 0 && bottom <= 900, `${top} to ${bottom}`);
  await page.close();
});

test("photographs of the gallery are ticked and compared, four at most", async () => {
  const page = await open("design/7/");
  const line = () => page.$eval(".gathered", (p) => ({ seen: p.checkVisibility(), link: p.querySelector("a").hidden ? null : p.querySelector("a").textContent, told: p.querySelector(".told").textContent }));
  assert.equal((await line()).seen, false);
  const ticks = await page.$$("#gallery input[type=checkbox]");
  assert.ok(ticks.length > 10);
  await ticks[0].focus();
  await page.keyboard.press("Space");
  assert.deepEqual(await line(), { seen: true, link: null, told: "Choose one more." });
  await ticks[2].click();
  assert.deepEqual(await line(), { seen: true, link: "Compare 2", told: "" });
  await ticks[3].click();
  await ticks[4].click();
  assert.equal((await line()).link, "Compare 4");
  assert.equal(await page.$$eval("#gallery input:disabled", (all) => all.length), ticks.length - 4);
  const keys = await page.$$eval("#gallery input:checked", (all) => all.map((input) => input.value));
  await page.click(".gathered a");
  await page.waitForFunction(() => location.pathname.endsWith("/comparison/"));
  assert.equal(new URL(page.url()).hash, `#of=${keys.join(",")}`);
  await page.waitForFunction(() => document.querySelectorAll(".abreast .pane .layer").length === 4);
  await page.close();
});

test("without a script no photograph offers a tick", async () => {
  const page = await open("design/7/", { scripts: false });
  assert.equal(await page.$(".gather"), null);
  assert.equal(await page.$(".gathered"), null);
  await page.close();
});

test("nothing went wrong in the browser meanwhile", () => {
  assert.deepEqual(faults, []);
});
