// The look of the compiled demonstration catalogue: its face, the opening page, the head of every page, the walls.

import assert from "node:assert/strict";
import { readFile, stat } from "node:fs/promises";
import { after, before, test } from "node:test";
import { launch, listen } from "./browser.mjs";
import { filesOf, serve } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";
let browser;
let site;

before(async () => { [browser, site] = [await launch(), await serve(folder)]; });
after(async () => { await browser?.close(); await site?.stop(); });

/** The fonts that a page asks for, with their bytes, and what went wrong. */
async function fontsOf(path) {
  const faults = [];
  const page = await listen(browser, site.address, faults);
  const asked = [];
  page.on("request", (request) => {
    if (request.resourceType() === "font") asked.push(request.url().replace(site.address, ""));
  });
  await page.goto(site.address + path, { waitUntil: "networkidle0" });
  await page.evaluate(() => document.fonts.ready);
  const set = await page.evaluate(() => [...document.fonts].filter((face) => face.status === "loaded").map((face) => face.family.replaceAll('"', "")));
  await page.close();
  const sizes = await Promise.all(asked.map(async (file) => (await stat(`${folder}/${file}`)).size));
  return { asked: asked.sort(), bytes: sizes.reduce((sum, size) => sum + size, 0), faults, set };
}

test("pages are set in the theme's own files, about 50 kB of them, from the site alone", async () => {
  const census = await fontsOf("census/");
  assert.deepEqual(census.faults, []);
  assert.deepEqual(census.asked, ["assets/type/text-italic-latin.woff2", "assets/type/text-roman-latin.woff2"]);
  assert.ok(census.set.includes("Keyblock Text"), census.set.join());
  assert.ok(census.bytes < 52_000, `${census.bytes} bytes`);
  const design = await fontsOf("design/7/");
  assert.deepEqual(design.faults, []);
  assert.ok(design.asked.includes("assets/type/text-roman-cyrillic.woff2") || design.asked.includes("assets/type/text-italic-cyrillic.woff2"));
  assert.ok(design.asked.includes("assets/type/figures.woff2"));
  assert.ok(design.bytes < 90_000, `${design.bytes} bytes`);
  const licence = await readFile(`${folder}/assets/type/OFL.txt`, "utf8");
  assert.match(licence, /SIL OPEN FONT LICENSE/i);
});

test("nothing jumps when the face comes late", async () => {
  for (const [path, width] of [["design/7/", 1280], ["census/", 390], ["", 1280]]) {
    const page = await browser.newPage();
    await page.setViewport({ width, height: 844 });
    await page.setRequestInterception(true);
    page.on("request", async (request) => {
      if (request.resourceType() === "font") await new Promise((done) => setTimeout(done, 400));
      await request.continue();
    });
    await page.evaluateOnNewDocument(() => {
      window.shifted = 0;
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) window.shifted += entry.value;
      }).observe({ type: "layout-shift", buffered: true });
    });
    await page.goto(site.address + path, { waitUntil: "networkidle0" });
    await page.evaluate(() => document.fonts.ready.then(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 50)))));
    const shifted = await page.evaluate(() => window.shifted);
    assert.ok(shifted < 0.05, `${path} at ${width}: ${shifted}`);
    await page.close();
  }
});

test("a page is as long in a face that waits as in the text face", async () => {
  const page = await browser.newPage();
  await page.setViewport({ width: 1280, height: 900 });
  for (const path of ["cautions/", "design/7/census/"]) {
    await page.goto(site.address + path, { waitUntil: "networkidle0" });
    const high = await page.evaluate(async () => {
      await document.fonts.ready;
      const high = (family) => {
        document.documentElement.style.setProperty("--latin", family);
        return document.querySelector("main").getBoundingClientRect().height;
      };
      return { set: high('"Keyblock Text"'), waiting: high('"Keyblock Wait", Georgia, "Times New Roman", serif') };
    });
    assert.ok(Math.abs(high.waiting / high.set - 1) < 0.06, `${path}: ${JSON.stringify(high)}`);
  }
  await page.close();
});

test("the opening page shows one plate whole with its caption in the first view, and the fold crops nothing", async () => {
  for (const [width, height] of [[1280, 900], [390, 844], [1920, 1080], [768, 1024]]) {
    const page = await browser.newPage();
    await page.setViewport({ width, height });
    await page.goto(site.address, { waitUntil: "networkidle0" });
    const seen = await page.evaluate(() => {
      const box = (element) => { const { top, bottom, left, right } = element.getBoundingClientRect(); return { top, bottom, left, right }; };
      const image = document.querySelector(".frontispiece img");
      return {
        image: box(image),
        shown: image.complete && image.naturalWidth > 0,
        ratio: image.getBoundingClientRect().width / image.getBoundingClientRect().height / (image.getAttribute("width") / image.getAttribute("height")),
        caption: box(document.querySelector(".frontispiece figcaption")),
        all: [...document.images].map(box),
        sideways: document.documentElement.scrollWidth > innerWidth,
      };
    });
    const at = `${width} × ${height}: ${JSON.stringify({ image: seen.image, caption: seen.caption })}`;
    for (const box of [seen.image, seen.caption]) {
      assert.ok(box.top >= 0 && box.left >= 0 && box.right <= width && box.bottom <= height, at);
    }
    assert.ok(seen.shown && Math.abs(seen.ratio - 1) < 0.02, at);
    assert.ok(seen.image.bottom - seen.image.top > height * 0.3, `the plate is large: ${at}`);
    for (const box of seen.all) assert.ok(box.bottom <= height || box.top >= height, `the fold crops a picture at ${box.top}, ${width} × ${height}`);
    assert.ok(!seen.sideways);
    await page.close();
  }
});

test("a print is found by its picture in two clicks, and three ways lead in", async () => {
  const page = await browser.newPage();
  await page.goto(site.address, { waitUntil: "load" });
  const ways = await page.$$eval(".ways-in a", (links) => links.map((link) => link.getAttribute("href")));
  assert.deepEqual(ways, ["./designs/", "./identify/", "./census/"]);
  const prints = await page.$$eval(".prints a", (links) => links.map((link) => link.getAttribute("href")));
  assert.ok(prints.length > 20);
  await Promise.all([page.waitForNavigation(), page.click(".running nav a[href$='designs/']")]);
  await Promise.all([page.waitForNavigation(), page.click(".prints a[href$='design/7/'] img")]);
  assert.equal(page.url(), `${site.address}design/7/`);
  await page.close();
});

test("designs are a wall, and a list at an address of its own, without a script", async () => {
  const page = await browser.newPage();
  await page.setJavaScriptEnabled(false);
  await page.goto(`${site.address}designs/`, { waitUntil: "load" });
  assert.ok(await page.$("ol.prints") && !(await page.$("ol.entries")));
  assert.equal(await page.$eval(".views [aria-current]", (link) => link.textContent), "Pictures");
  const images = await page.$$eval("ol.prints img", (all) => all.map((image) => ({ lazy: image.loading, sized: image.hasAttribute("width") && image.hasAttribute("height") })));
  assert.ok(images.length > 20 && images.every((image) => image.lazy === "lazy" && image.sized));
  await Promise.all([page.waitForNavigation(), page.click(".views a:not([aria-current])")]);
  assert.equal(page.url(), `${site.address}designs/list/`);
  assert.ok(await page.$("ol.entries") && await page.$("#by-date"));
  assert.equal(await page.$eval(".views [aria-current]", (link) => link.textContent), "List");
  await page.close();
});

test("the walls of an index and of a holder stand side by side without sideways scrolling", async () => {
  const holder = (await filesOf(folder)).find((file) => /^holder\/kelder-museum\/index/.test(file));
  for (const path of ["designs/", "identify/", "series/", "subjects/", holder.replace("index.html", "")]) {
    for (const width of [390, 1280]) {
      const page = await browser.newPage();
      await page.setViewport({ width, height: 844 });
      await page.goto(site.address + path, { waitUntil: "load" });
      const wall = await page.evaluate(() => {
        const boxes = [...document.querySelector("ol.prints").children].map((item) => item.querySelector(".hung").getBoundingClientRect());
        const first = boxes.filter((box) => box.top === boxes[0].top);
        return { abreast: first.length, of: boxes.length, sideways: document.documentElement.scrollWidth > innerWidth };
      });
      assert.ok(wall.abreast >= Math.min(2, wall.of), `${path} at ${width}: ${wall.abreast} abreast`);
      assert.ok(!wall.sideways, `${path} at ${width} scrolls sideways`);
      await page.close();
    }
  }
});

test("the head stays one line at 1280 px and marks the section of every page", async () => {
  const page = await browser.newPage();
  await page.setViewport({ width: 1280, height: 900 });
  const sections = { "": null, "designs/": "Prints", "design/7/": "Prints", "impression/7.1/": "Prints", "design/7/key/": "Identify", "census/": "Census", "design/7/census/": "Census", "holders/": "Collections", "holder/kelder-museum/": "Collections", "chronology/": "About", "cautions/": "About" };
  for (const [path, expected] of Object.entries(sections)) {
    await page.goto(site.address + path, { waitUntil: "load" });
    const head = await page.evaluate(() => {
      const items = [...document.querySelectorAll(".running nav > ul > li")];
      const marked = items.filter((item) => item.querySelector("a[aria-current]")).map((item) => item.textContent.trim());
      const middles = items.map((item) => { const box = item.getBoundingClientRect(); return (box.top + box.bottom) / 2; });
      return { marked, spread: Math.max(...middles) - Math.min(...middles) };
    });
    assert.deepEqual(head.marked, expected ? [expected] : [], path);
    assert.ok(head.spread < 12, `the head of /${path} runs over ${head.spread} px`);
  }
  await page.close();
});

test("neighbours lead on by link and by key, and no field loses its arrows", async () => {
  const page = await browser.newPage();
  await page.goto(`${site.address}design/7/`, { waitUntil: "networkidle0" });
  const links = await page.evaluate(() => ["prev", "next"].map((rel) => [
    document.querySelector(`link[rel="${rel}"]`).href,
    document.querySelector(`.neighbours a[rel="${rel}"]`).href,
  ]));
  for (const [head, shown] of links) assert.equal(head, shown);
  assert.deepEqual(links.map(([head]) => head), ["design/6/", "design/8/"].map((path) => site.address + path));
  await page.focus("#page_seek");
  await page.keyboard.type("ab");
  await page.keyboard.press("ArrowLeft");
  await page.keyboard.press("ArrowRight");
  assert.equal(page.url(), `${site.address}design/7/`);
  await page.evaluate(() => document.activeElement.blur());
  await Promise.all([page.waitForNavigation(), page.keyboard.press("ArrowRight")]);
  assert.equal(page.url(), `${site.address}design/8/`);
  await Promise.all([page.waitForNavigation(), page.keyboard.press("ArrowLeft")]);
  assert.equal(page.url(), `${site.address}design/7/`);
  await page.goto(`${site.address}impression/7.1/`, { waitUntil: "networkidle0" });
  assert.equal(await page.$(".neighbours a[rel='prev']"), null);
  await Promise.all([page.waitForNavigation(), page.keyboard.press("ArrowRight")]);
  assert.equal(page.url(), `${site.address}impression/7.2/`);
  await page.close();
});

test("thumbnails are cut to the print, and a photograph with a ground of its own gets no second", async () => {
  const page = await browser.newPage();
  await page.goto(`${site.address}design/7/`, { waitUntil: "load" });
  const leading = await page.$eval("figure.plate .ground", (ground) => ({ alone: ground.classList.contains("alone"), padding: getComputedStyle(ground).paddingTop }));
  assert.deepEqual(leading, { alone: true, padding: "0px" });
  const cut = await page.$$eval("ol.plates img", (images) => images.filter((image) => image.getAttribute("src").endsWith("-small.jpg")).length);
  assert.ok(cut > 5, `${cut} are cut`);
  await page.close();
});
