// A picture that arrives late moves nothing: its place is as large before it is there as after.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, listen } from "./browser.mjs";
import { kindsOf, pagesOf, serve } from "./site.mjs";

const FOLDER = process.env.SITE ?? "demo-site/web";
let browser;
let site;
let paths;

before(async () => {
  const pages = (await pagesOf(FOLDER)).map((file) => file.slice(0, -"index.html".length));
  // Design 7 has every kind of picture on one page.
  paths = new Set([...kindsOf(pages).values(), "design/7/", "impression/7.5/"]);
  [browser, site] = await Promise.all([launch(), serve(FOLDER)]);
});
after(async () => {
  await browser?.close();
  await site?.stop();
});

/** The tops of all parts of the page that do not stand in the window. */
const tops = (page) =>
  page.evaluate(() =>
    [...document.querySelectorAll("main :is(h1, h2, h3, tr, li, p, figure, img)")].map((element) => [
      `${element.localName}.${element.className} ${element.textContent.trim().slice(0, 30)}`,
      Math.round(element.getBoundingClientRect().top),
    ]),
  );

for (const width of [390, 1280]) {
  test(`late pictures move nothing at ${width} px`, async () => {
    const faults = [];
    const page = await listen(browser, site.address, faults);
    await page.setViewport({ width, height: 900 });
    await page.setRequestInterception(true);
    let held = [];
    page.on("request", (request) => (request.resourceType() === "image" && held ? held.push(request) : request.continue()));
    let pictures = 0;
    for (const path of paths) {
      held = [];
      await page.goto(site.address + path, { waitUntil: "domcontentloaded" });
      await page.evaluate("document.fonts.ready.then(() => null)");
      const without = await tops(page);
      const waiting = held;
      held = null;
      for (const request of waiting) request.continue();
      pictures += await page.evaluate(async () => {
        const images = [...document.querySelectorAll("main img")];
        for (const image of images) image.loading = "eager";
        await Promise.all(images.map((image) => image.decode().catch(() => null)));
        return images.length;
      });
      const moved = (await tops(page)).findIndex(([, top], at) => Math.abs(top - without[at][1]) > 1);
      if (moved >= 0) faults.push(`/${path}: ${JSON.stringify(without.slice(Math.max(0, moved - 2), moved + 1))}`);
    }
    await page.close();
    assert.ok(pictures > 500, `only ${pictures} pictures`);
    assert.equal(faults.join("\n"), "");
  });
}
