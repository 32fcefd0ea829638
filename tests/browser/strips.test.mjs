// Strips: one point of a design, cut from every photograph that lies on the reference picture. Seen on
// the page of the design and on those of its points, with scripts and without: the details are there,
// alike high, captioned, and on a phone a row scrolls in its own frame.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { launch, listen } from "./browser.mjs";
import { filesOf, serve } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";
const faults = [];
let browser;
let site;
/** The design with the most details, and the pages of its points that have some. */
let design = { details: 0 };
let points = [];

before(async () => {
  [browser, site] = [await launch(), await serve(folder)];
  const files = await filesOf(folder);
  const detailsIn = async (file) => (await readFile(join(folder, file), "utf8")).split('alt="Detail of').length - 1;
  for (const file of files) {
    if (!/^design\/[^/]+\/index\.html$/.test(file)) continue;
    const details = await detailsIn(file);
    if (details > design.details) design = { details, path: file.slice(0, -"index.html".length) };
  }
  for (const file of files) {
    if (file.startsWith(`${design.path}point/`) && (await detailsIn(file)) > 1) points.push(file.slice(0, -"index.html".length));
  }
});
after(async () => {
  await browser?.close();
  await site?.stop();
});

async function open(path, { width, scripts = true }) {
  const page = await listen(browser, site.address, faults);
  await page.setJavaScriptEnabled(scripts);
  await page.setViewport({ width, height: 900 });
  await page.goto(site.address + path, { waitUntil: "load" });
  return page;
}

/** Every strip of the page, after scrolling through it so that its pictures are loaded. */
async function strips(page) {
  for (const strip of await page.$$(".strip")) await strip.scrollIntoView();
  for (const picture of await page.$$(".strip img")) {
    await picture.scrollIntoView();
    await picture.evaluate((image) => image.decode());
  }
  return page.$$eval(".strip", (lists) =>
    lists.map((list) => ({
      heights: [...list.querySelectorAll("img")].map((image) => image.getBoundingClientRect().height),
      sharp: [...list.querySelectorAll("img")].every((image) => image.naturalWidth > 20),
      captions: [...list.querySelectorAll("li")].map((item) => item.querySelector("p").textContent.trim()),
      frame: { room: list.parentElement.clientWidth, need: list.parentElement.scrollWidth },
      label: list.parentElement.getAttribute("aria-label"),
      reached: list.parentElement.tabIndex,
    })),
  );
}

function judge(found, path) {
  assert.ok(found.length > 0, `${path} has no strip`);
  for (const { heights, sharp, captions, label, reached } of found) {
    assert.ok(heights.length > 0 && heights[0] > 30, `${path}: ${label}: ${heights}`);
    assert.ok(heights.every((height) => Math.abs(height - heights[0]) < 0.6), `${path}: ${label}: ${heights}`);
    assert.ok(sharp, `${path}: ${label}: a detail did not come`);
    assert.ok(captions.every((caption) => /^\S+\.\d+/.test(caption)), `${path}: ${captions}`);
    assert.ok(label && reached === 0, `${path}: a strip must be reached by keyboard and say what it is`);
  }
}

test("the page of the design shows its points in strips, in the order of states", async () => {
  assert.ok(design.details > 20, `the richest design shows ${design.details} details`);
  for (const scripts of [true, false]) {
    const page = await open(design.path, { width: 1280, scripts });
    if (scripts) judge(await strips(page), design.path);
    const numerals = await page.$$eval(".strip", (lists) =>
      lists.map((list) => [...list.querySelectorAll("li")].map((item) => item.querySelector("p .numeral")?.textContent.trim()).filter(Boolean)),
    );
    const roman = ["i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x"];
    for (const row of numerals) {
      const places = row.map((numeral) => roman.indexOf(numeral));
      assert.deepEqual(places, places.toSorted((a, b) => a - b), row.join(" "));
    }
    await page.close();
  }
});

test("three points at most stand on the page of the design, and each other has its own", async () => {
  const page = await open(design.path, { width: 1280 });
  const asked = await page.$$eval("[aria-labelledby=strips] h3 a", (links) => links.map((link) => new URL(link.href).pathname));
  assert.equal(asked.length, 3);
  assert.ok(points.length > 3, `${points.length} points have details`);
  for (const path of asked) assert.ok(points.some((point) => path.endsWith(point)), path);
  await page.close();
});

test("the page of a point shows its details larger, state by state", async () => {
  assert.ok(points.length > 2, `${points.length} points have details`);
  const page = await open(points[0], { width: 1280 });
  const found = await strips(page);
  judge(found, points[0]);
  const ofDesign = await open(design.path, { width: 1280 });
  const small = await strips(ofDesign);
  const height = (strip) => strip.heights[0];
  assert.ok(Math.max(...found.map(height)) > Math.min(...small.map(height)));
  await Promise.all([page.close(), ofDesign.close()]);
});

test("on a phone a row scrolls in its own frame and the page does not", async () => {
  const page = await open(design.path, { width: 390 });
  const found = await strips(page);
  judge(found, design.path);
  assert.ok(found.some(({ frame }) => frame.need > frame.room), "no row is wider than a phone");
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  assert.equal(sideways, 0);
  await page.close();
});

test("nothing is said against these pages in the console", () => {
  assert.deepEqual(faults, []);
});
