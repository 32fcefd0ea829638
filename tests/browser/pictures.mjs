// Takes the ten pictures in docs/pictures/ from the compiled demonstration: node tests/browser/pictures.mjs

import { mkdir } from "node:fs/promises";
import { launch, listen } from "./browser.mjs";
import { serve } from "./site.mjs";

const FOLDER = process.env.SITE ?? "demo-site/web";
const TO = "docs/pictures";
const [DESK, PHONE] = [{ width: 1280, height: 900 }, { width: 390, height: 844, deviceScaleFactor: 2 }];

/** Name, address, window, scheme, and what is done before the picture is taken. */
const PICTURES = [
  ["opening", "", DESK, "light"],
  ["prints", "designs/", DESK, "light"],
  ["design", "design/7/", DESK, "light"],
  ["states", "design/7/", DESK, "light", (page) => to(page, "table.points caption")],
  ["key", "design/7/key/#see=beam=present,stamp=estate", DESK, "light", (page) => to(page, "form.examine")],
  ["comparison", "design/7/comparison/1/", DESK, "dark"],
  ["census", "census/", DESK, "light"],
  ["provenance", "provenance/", DESK, "light"],
  ["sheet-on-a-phone", "impression/7.5/", PHONE, "light"],
  ["design-on-a-phone", "design/17/", PHONE, "dark"],
];

const to = (page, selector) => page.evaluate((of) => document.querySelector(of).scrollIntoView(), selector);

const faults = [];
const [browser, site] = [await launch(), await serve(FOLDER)];
await mkdir(TO, { recursive: true });
for (const [name, path, window, scheme, before] of PICTURES) {
  const page = await listen(browser, site.address, faults);
  await page.setViewport(window);
  await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
  await page.goto(site.address + path, { waitUntil: "networkidle0" });
  await before?.(page);
  // Pictures that come into view are requested only then.
  await page.waitForNetworkIdle();
  await page.screenshot({ path: `${TO}/${name}.webp`, type: "webp", quality: 78 });
  await page.close();
}
await browser.close();
await site.stop();
if (faults.length > 0) throw new Error(faults.join("\n"));
