// The manifests, collections and content states of the compiled demonstration catalogue, read by clients that are not
// ours: the parser @iiif/parser and the helpers @iiif/helpers (npm); and the content states opened in the browser: what a
// link of a point's page and the viewer's own copies lead to.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { encodeContentState, normaliseContentState, parseContentState, validateContentState } from "@iiif/helpers/content-state";
import { Traverse } from "@iiif/parser";
import { presentation3StrictUpgrade } from "@iiif/parser/strict";
import { launch, listen } from "./browser.mjs";
import { filesOf, serve } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";
const SHEET = "impression/7.5/";
const POINT = "design/7/point/crack/";
const faults = [];
let browser;
let site;
let resources;

before(async () => {
  [browser, site] = [await launch(), await serve(folder)];
  const files = (await filesOf(folder)).filter((file) => /\/(manifest|collection)\.json$/.test(file));
  resources = await Promise.all(files.map(async (file) => [file, JSON.parse(await readFile(join(folder, file), "utf8"))]));
});
after(async () => {
  await browser?.close();
  await site?.stop();
});

test("a parser that is not ours reads every resource without a warning, and finds every canvas and annotation", () => {
  let [canvases, comments, words] = [0, 0, 0];
  for (const [file, resource] of resources) {
    const state = { warnings: [] };
    const read = presentation3StrictUpgrade(structuredClone(resource), state);
    assert.deepEqual(state.warnings, [], file);
    assert.equal(read.id, resource.id);
    const found = { canvas: [], annotation: [] };
    const traverse = new Traverse({
      canvas: [(canvas) => found.canvas.push(canvas.id)],
      annotation: [(annotation) => found.annotation.push(annotation.motivation)],
    });
    traverse.traverseUnknown(structuredClone(resource));
    if (resource.type === "Manifest") assert.deepEqual(found.canvas, resource.items.map(({ id }) => id), file);
    canvases += found.canvas.length;
    const ofKind = (kind) => found.annotation.flat().filter((motivation) => motivation === kind).length;
    comments += ofKind("commenting");
    words += ofKind("supplementing");
  }
  assert.ok(resources.length > 100 && canvases > 100 && comments > 300, `${resources.length} resources, ${canvases} canvases, ${comments} points`);
  // The eight documents of the demonstration have transcriptions, and four of them translations.
  assert.equal(words, 12);
});

/** The value of `iiif-content` in an address. */
const stateIn = (address) => new URL(address, "https://x.example").searchParams.get("iiif-content");

const canvasOf = (manifest, id) => {
  const [, resource] = resources.find(([, { id }]) => id === manifest);
  return resource.items.find((canvas) => canvas.id === id);
};

test("every place on the page of a point is a content state that helpers of others read, within its canvas", async () => {
  const text = await readFile(join(folder, POINT, "index.html"), "utf8");
  const links = [...text.matchAll(/href="([^"]*\?iiif-content=[^"]*)"/g)].map(([, href]) => href);
  assert.ok(links.length >= 3, `only ${links.length} places`);
  for (const link of links) {
    const state = parseContentState(stateIn(link));
    const [valid, why] = validateContentState(state);
    assert.ok(valid, why?.reason);
    assert.equal(encodeContentState(JSON.stringify(state)), stateIn(link));
    const [target] = normaliseContentState(state).target;
    const [x, y, width, height] = /#xywh=([\d,]+)$/.exec(state.id)[1].split(",").map(Number);
    const canvas = canvasOf(state.partOf[0].id, state.id.split("#")[0]);
    assert.ok(canvas, `${state.id} is on no canvas`);
    assert.ok(width > 0 && height > 0 && x + width <= canvas.width && y + height <= canvas.height, state.id);
    assert.ok(target, link);
  }
});

/** Waits until a pane shows something, and says which part of its picture: left, top, width, height in its pixels. */
const shown = async (page) => {
  await page.waitForSelector(".pane .layer img");
  await page.evaluate(async () => {
    for (let i = 0; i < 4; i += 1) await new Promise((go) => requestAnimationFrame(go));
  });
  return page.evaluate(() => {
    const pane = document.querySelector(".pane").getBoundingClientRect();
    const layer = document.querySelector(".pane .layer");
    const drawn = layer.getBoundingClientRect();
    const scale = drawn.width / layer.offsetWidth;
    return [(pane.left - drawn.left) / scale, (pane.top - drawn.top) / scale, pane.width / scale, pane.height / scale];
  });
};

const isWithin = ([x, y, width, height], [left, top, wide, high]) =>
  x >= left - 2 && y >= top - 2 && x + width <= left + wide + 2 && y + height <= top + high + 2;

test("a link from a point's page opens the sheet's picture at that place", async () => {
  const page = await listen(browser, site.address, faults);
  await page.setViewport({ width: 1280, height: 900 });
  await page.goto(site.address + POINT);
  const href = await page.$$eval("a[href*='iiif-content']", (links) => links.find((link) => link.href.includes("/7.5/")).href);
  await page.goto(href);
  const seen = await shown(page);
  const wanted = /#xywh=([\d,]+)$/.exec(parseContentState(stateIn(href)).id)[1].split(",").map(Number);
  assert.ok(isWithin(wanted, seen), `${wanted} is not within ${seen}`);
  assert.ok(seen[2] * seen[3] < 16 * wanted[2] * wanted[3] || seen[2] < 1.1 * wanted[2] || seen[3] < 1.1 * wanted[3], `${seen} is much more than ${wanted}`);
  await page.close();
});

test("every form of a content state opens its place, and what cannot be read leaves the page as it is", async () => {
  const manifest = resources.find(([file]) => file === `${SHEET}manifest.json`)[1];
  const [canvas, other] = manifest.items;
  const partOf = [{ id: manifest.id, type: "Manifest" }];
  const place = { id: `${canvas.id}#xywh=400,300,200,150`, type: "Canvas", partOf };
  const selector = { type: "FragmentSelector", value: "xywh=pixel:400,300,200,150" };
  const forms = {
    target: place,
    annotation: { type: "Annotation", motivation: ["contentState"], target: place },
    list: { type: "Annotation", motivation: "contentState", target: [place] },
    resource: { type: "SpecificResource", source: { id: canvas.id, type: "Canvas", partOf }, selector },
  };
  const open = async (state) => {
    const page = await listen(browser, site.address, faults);
    await page.setViewport({ width: 1280, height: 900 });
    await page.goto(`${site.address}${SHEET}?iiif-content=${encodeURIComponent(state)}`);
    return page;
  };
  for (const [name, form] of Object.entries(forms)) {
    const page = await open(encodeContentState(JSON.stringify(form)));
    const seen = await shown(page);
    assert.ok(isWithin([400, 300, 200, 150], seen) && seen[2] < canvas.width / 2, `${name}: ${seen}`);
    await page.close();
  }
  // A manifest's address opens the leading picture; another picture of the page opens in the same viewer.
  const whole = await open(manifest.id);
  assert.ok((await shown(whole))[2] > 0.9 * canvas.width);
  await whole.close();
  const second = await open(encodeContentState(JSON.stringify({ id: other.id, type: "Canvas", partOf })));
  await shown(second);
  assert.equal(await second.$eval(".pane .layer", (layer) => layer.offsetWidth), other.width);
  await second.close();
  for (const broken of ["%", "bm8ganNvbg", encodeContentState('{"id":"https://elsewhere.example/canvas","type":"Canvas"}'), encodeContentState("null")]) {
    const page = await open(broken);
    await page.evaluate(() => new Promise((go) => requestAnimationFrame(() => requestAnimationFrame(go))));
    assert.equal(await page.$(".pane"), null, broken);
    await page.close();
  }
});

test("the viewer copies the place in sight as a link and as a state, and the link leads back to it", async () => {
  const page = await listen(browser, site.address, faults);
  await page.setViewport({ width: 1280, height: 900 });
  await page.evaluateOnNewDocument(() => {
    Object.defineProperty(navigator, "clipboard", { value: { writeText: async (text) => { window.copied = text; } } });
  });
  await page.goto(site.address + SHEET);
  await page.click(".look button");
  await shown(page);
  const copy = async (what) => {
    await page.click(`[data-copies=${what}]`);
    return page.evaluate(() => window.copied);
  };
  const whole = JSON.parse(await copy("state"));
  const manifest = resources.find(([file]) => file === `${SHEET}manifest.json`)[1];
  assert.deepEqual(whole, { id: manifest.items[0].id, type: "Canvas", partOf: [{ id: manifest.id, type: "Manifest" }] });
  for (let i = 0; i < 4; i += 1) await page.click(".looks [data-do=closer]");
  await page.click(".looks [data-do=right]");
  const before = await shown(page);
  const link = new URL(await copy("link"));
  assert.ok(link.href.startsWith(manifest.homepage[0].id), link.href);
  const [valid] = validateContentState(parseContentState(link.searchParams.get("iiif-content")));
  assert.ok(valid);
  await page.goto(site.address + SHEET + link.search);
  const again = await shown(page);
  assert.ok(again.every((number, at) => Math.abs(number - before[at]) <= 2 + before[2] / 100), `${before} became ${again}`);
  await page.close();
});

test("nothing went wrong in the browser meanwhile", () => {
  assert.deepEqual(faults, []);
});
