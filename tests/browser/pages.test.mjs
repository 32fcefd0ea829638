// Every page of the compiled demonstration catalogue opens at the width of a phone without a
// console message and without sideways scrolling; every kind of page passes the rules of WCAG 2.2
// level AA that axe-core (npm) can judge, on a phone and a desk, light and dark.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { launch, listen } from "./browser.mjs";
import { filesOf, kindsOf, leadsOn, pagesOf, serve } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";
const require = createRequire(import.meta.url);
const WCAG = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
let browser;
let site;
let pages;

before(async () => {
  [browser, site] = [await launch(), await serve(folder)];
  pages = (await pagesOf(folder)).filter((f) => f.endsWith("index.html")).map((f) => f.slice(0, -"index.html".length));
});
after(async () => {
  await browser?.close();
  await site?.stop();
});

const oneOfEachKind = () => kindsOf(pages);

test("every address that leads on arrives at its page, without a script", async () => {
  const files = (await filesOf(folder)).filter((file) => file.endsWith("index.html"));
  const leading = [];
  for (const file of files) if (await leadsOn(folder, file)) leading.push(file.slice(0, -"index.html".length));
  const expected = { "impression/7.23/": "impression/7.6/", "holder/vieux-mole/": "holder/port-ravel/", "design/12-small/census/": "design/12a/census/", "impression/12-small.2/": "impression/12a.2/" };
  const page = await browser.newPage();
  await page.setJavaScriptEnabled(false);
  for (const path of leading) {
    await page.goto(site.address + path, { waitUntil: "load" }).catch(() => null);
    for (let waited = 0; page.url().endsWith(path) && waited < 50; waited += 1) {
      await new Promise((done) => setTimeout(done, 100));
    }
    const at = page.url().slice(site.address.length);
    assert.ok(pages.includes(at), `/${path} leads to /${at}`);
    if (expected[path]) assert.equal(at, expected[path]);
    delete expected[path];
  }
  assert.deepEqual(expected, {}, "these do not lead on");
  await page.close();
});

test("an old address of a state leads to the state, and a split record offers its sheets", async () => {
  const page = await browser.newPage();
  await page.goto(`${site.address}design/12-small/?from=list#state-etched`, { waitUntil: "load" }).catch(() => null);
  await page.waitForFunction(() => location.pathname.endsWith("/design/12a/"));
  await page.waitForFunction(() => document.querySelector(":target"));
  const at = await page.evaluate(() => ({ part: location.search + location.hash, within: document.querySelector(":target").parentElement.id }));
  assert.deepEqual(at, { part: "?from=list#state-etched", within: "state-only" });
  await page.goto(`${site.address}impression/12a.4/`, { waitUntil: "load" });
  const choices = await page.$$eval("#choices ~ .entries a[href]:not([tabindex])", (links) => links.map((link) => link.getAttribute("href")));
  assert.deepEqual(choices, ["../../impression/12a.1/", "../../impression/12a.2/"]);
  assert.equal(page.url(), `${site.address}impression/12a.4/`);
  await page.close();
});

test("every page opens on a phone, quietly and without sideways scrolling", async () => {
  const faults = [];
  const waiting = [...pages];
  const walk = async () => {
    const page = await listen(browser, site.address, faults);
    await page.setViewport({ width: 390, height: 844, isMobile: true, hasTouch: true });
    for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
      await page.goto(site.address + path, { waitUntil: "load" });
      const wide = await page.evaluate(() => {
        const root = document.documentElement;
        if (root.scrollWidth <= root.clientWidth) return null;
        const out = [...document.body.querySelectorAll("*")].find((e) => e.getBoundingClientRect().right > root.clientWidth + 1);
        return `${root.scrollWidth} px wide at ${out?.tagName}.${out?.className}`;
      });
      if (wide) faults.push(`/${path}: ${wide}`);
    }
    await page.close();
  };
  await Promise.all([walk(), walk(), walk()]);
  assert.ok(pages.length > 200, `only ${pages.length} pages`);
  assert.equal(faults.length, 0, `${faults.length} faults\n${faults.slice(0, 30).join("\n")}`);
});

test("every kind of page can be read by everybody", async () => {
  const axe = await readFile(require.resolve("axe-core/axe.min.js"), "utf8");
  const faults = [];
  const kinds = oneOfEachKind();
  assert.ok(kinds.size >= 20, `only ${kinds.size} kinds of page`);
  const page = await listen(browser, site.address, faults);
  await page.setBypassCSP(true);
  for (const [width, scheme] of [[390, "light"], [1280, "dark"], [1280, "light"]]) {
    await page.setViewport({ width, height: 900 });
    await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
    for (const path of kinds.values()) {
      await page.goto(site.address + path, { waitUntil: "load" });
      await page.evaluate(axe);
      const { violations } = await page.evaluate((tags) => axe.run(document, { runOnly: { type: "tag", values: tags } }), WCAG);
      for (const { id, nodes } of violations) {
        faults.push(`/${path} at ${width} ${scheme}: ${id}: ${nodes.slice(0, 2).map((n) => n.html.slice(0, 160)).join(" … ")}`);
      }
    }
  }
  assert.equal(faults.length, 0, `${faults.length} faults\n${faults.slice(0, 30).join("\n")}`);
});

test("every kind of page has a title, a language, a canonical address and one main heading", async () => {
  const faults = [];
  const page = await listen(browser, site.address, faults);
  for (const path of oneOfEachKind().values()) {
    await page.goto(site.address + path, { waitUntil: "load" });
    const told = await page.evaluate(() => ({
      title: document.title,
      lang: document.documentElement.lang,
      canonical: document.querySelector("link[rel=canonical]")?.href ?? "",
      headings: document.querySelectorAll("h1").length,
    }));
    if (!told.title || !told.lang || !told.canonical.startsWith("https://") || told.headings !== 1) {
      faults.push(`/${path}: ${JSON.stringify(told)}`);
    }
  }
  assert.equal(faults.length, 0, faults.join("\n"));
});
