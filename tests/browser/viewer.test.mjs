// Enlarging a plate: by key, button, wheel and touch; tiles of the needed level, at the addresses of the
// standard; and keyboard and scrolling still work on the page.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { gzipSync } from "node:zlib";
import { launch, listen } from "./browser.mjs";
import { serve } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";
const require = createRequire(import.meta.url);
const SHEET = "impression/7.5/";
const faults = [];
let browser;
let site;

before(async () => {
  [browser, site] = [await launch(), await serve(folder)];
});
after(async () => {
  await browser?.close();
  await site?.stop();
});

async function open({ width = 1280, height = 900, touch = false } = {}) {
  const page = await listen(browser, site.address, faults);
  await page.setViewport({ width, height, isMobile: touch, hasTouch: touch });
  await page.goto(site.address + SHEET, { waitUntil: "load" });
  return page;
}

const enter = async (page) => {
  await page.click(".look button");
  await page.waitForSelector(".pane .layer img");
  await settle(page);
};

/** Waits until the view has been drawn and its tiles have come. */
const settle = (page) =>
  page.evaluate(async () => {
    for (let i = 0; i < 3; i += 1) await new Promise((go) => requestAnimationFrame(go));
    await Promise.all([...document.querySelectorAll(".layer img")].map((image) => image.decode().catch(() => {})));
  });

/** How large the picture is drawn, where its left upper corner lies, and the levels of its tiles. */
const seen = (page) =>
  page.$eval(".pane .layer", (layer) => {
    const { width, left, top } = layer.getBoundingClientRect();
    const levels = [...layer.querySelectorAll("img")].flatMap((image) => {
      const parts = /\/(?:\d+,\d+,(\d+),\d+|full)\/(\d+),\d+\/0\/default\.jpg$/.exec(image.getAttribute("src"));
      return parts ? [Math.round(Number(parts[1] ?? layer.offsetWidth) / Number(parts[2]))] : [];
    });
    return { width, left, top, levels };
  });

test("tiles are asked for at the addresses of the IIIF Image API 3.0, level 0", async () => {
  // tests/checks/iiif_tiles.csv: by the formula of the Implementation Notes, and as an independent
  // viewer library asks for them.
  const lines = (await readFile("tests/checks/iiif_tiles.csv", "utf8")).split("\n").slice(2).filter(Boolean);
  const rows = lines.map((line) => line.match(/("[^"]*"|[^,]*)(,|$)/g).map((cell) => cell.replace(/,$/, "").replace(/^"|"$/g, "")));
  const tiles = rows.filter((row) => row[8] === "tile");
  assert.ok(tiles.length > 100, `only ${tiles.length} tiles`);
  const page = await open();
  const asked = await page.evaluate(
    (all) => all.map(([image, side, factor, column, row]) => {
      const [width, height] = image.split("x").map(Number);
      const picture = { width, height, tiles: { address: "", side: Number(side) } };
      return keyblockViewer.tile(picture, Number(factor), Number(column), Number(row)).address.slice(1);
    }),
    tiles,
  );
  assert.deepEqual(asked, tiles.map((row) => row[7]));
  await page.close();
});

test("keys go closer, deeper tiles come, and 0 shows the whole again", async () => {
  const page = await open();
  await enter(page);
  assert.equal(await page.evaluate(() => document.activeElement.className), "pane");
  const whole = await seen(page);
  for (let i = 0; i < 3; i += 1) await page.keyboard.press("+");
  await settle(page);
  await page.waitForFunction((before) => document.querySelector(".pane .layer").getBoundingClientRect().width > 3 * before, {}, whole.width);
  await settle(page);
  const closer = await seen(page);
  assert.ok(Math.abs(closer.width / whole.width - 1.5 ** 3) < 0.01, `${closer.width / whole.width} times as large`);
  assert.ok(closer.levels.length > 0, "no tile came");
  const deepest = (levels) => Math.min(...levels, Infinity);
  assert.ok(deepest(closer.levels) < deepest(whole.levels), `tiles reduced ${closer.levels} after ${whole.levels}`);

  await page.keyboard.press("ArrowRight");
  await settle(page);
  const moved = await seen(page);
  assert.ok(moved.left < closer.left - 50 && Math.abs(moved.top - closer.top) < 1, "the arrow did not move it");
  await page.waitForFunction(() => /\d/.test(document.querySelector(".looks output").textContent));
  await page.keyboard.press("-");
  await page.keyboard.press("0");
  await page.waitForFunction(() => document.querySelector(".looks output").textContent === document.querySelector(".looks output").dataset.whole);
  assert.ok(Math.abs((await seen(page)).width - whole.width) < 1);

  // No keyboard trap: Tab leads out, and the closing key leads back.
  await page.keyboard.press("Tab");
  assert.equal(await page.evaluate(() => document.activeElement.dataset.do), "closer");
  await page.keyboard.press("Escape");
  assert.equal(await page.$(".pane"), null);
  assert.ok(await page.evaluate(() => document.activeElement.closest(".look") !== null));
  await page.close();
});

test("every movement has a button", async () => {
  const page = await open();
  await enter(page);
  const press = async (what) => {
    await page.click(`.looks [data-do=${what}]`);
    await settle(page);
    return seen(page);
  };
  const whole = await seen(page);
  const closer = await press("closer");
  assert.ok(closer.width > 1.4 * whole.width);
  const closest = await press("closer");
  for (const [what, x, y] of [["left", 1, 0], ["right", -1, 0], ["up", 0, 1], ["down", 0, -1]]) {
    const before = await seen(page);
    const after = await press(what);
    assert.equal(Math.sign(Math.round(after.left - before.left)), x, what);
    assert.equal(Math.sign(Math.round(after.top - before.top)), y, what);
  }
  assert.ok((await press("further")).width < closest.width);
  assert.ok(Math.abs((await press("whole")).width - whole.width) < 1);
  for (const { width, height } of await page.$$eval(".looks button", (all) => all.map((b) => b.getBoundingClientRect().toJSON()))) {
    assert.ok(width >= 24 && height >= 24, `a button of ${width} by ${height} px (WCAG 2.2, 2.5.8)`);
  }
  await page.click(".looks [data-do=close]");
  assert.equal(await page.$(".pane"), null);
  await page.close();
});

test("the wheel is the page's until the picture is entered, and the picture can be dragged", async () => {
  const page = await open();
  await enter(page);
  const whole = await seen(page);
  await page.evaluate(() => document.activeElement.blur());
  const box = await (await page.$(".pane")).boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  const before = await page.evaluate(() => scrollY);
  await page.mouse.wheel({ deltaY: 120 });
  await page.waitForFunction((y) => scrollY > y, {}, before);
  assert.ok(Math.abs((await seen(page)).width - whole.width) < 1, "the wheel enlarged what was only passed over");

  await page.focus(".pane");
  const at = await page.evaluate(() => scrollY);
  const place = await (await page.$(".pane")).boundingBox();
  await page.mouse.move(place.x + place.width / 2, Math.max(place.y, 0) + 200);
  await page.mouse.wheel({ deltaY: -240 });
  await page.mouse.wheel({ deltaY: -240 });
  await settle(page);
  const closer = await seen(page);
  assert.ok(closer.width > 1.5 * whole.width);
  assert.equal(await page.evaluate(() => scrollY), at);

  await page.mouse.down();
  await page.mouse.move(place.x + place.width / 2 - 80, Math.max(place.y, 0) + 170, { steps: 4 });
  await page.mouse.up();
  await settle(page);
  const dragged = await seen(page);
  assert.ok(Math.abs(closer.left - dragged.left - 80) < 2 && Math.abs(closer.top - dragged.top - 30) < 2, "it did not follow the hand");
  await page.close();
});

test("two fingers go closer", async () => {
  const page = await open({ width: 390, height: 844, touch: true });
  await page.tap(".look button");
  await page.waitForSelector(".pane .layer img");
  await settle(page);
  const whole = await seen(page);
  const box = await (await page.$(".pane")).boundingBox();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const touch = await page.createCDPSession();
  const at = (apart) => [{ x: x - apart, y, id: 0 }, { x: x + apart, y, id: 1 }];
  await touch.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: at(20) });
  for (const apart of [30, 40, 50, 60]) await touch.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: at(apart) });
  await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  await settle(page);
  const times = (await seen(page)).width / whole.width;
  assert.ok(Math.abs(times - 3) < 0.2, `fingers three times as far apart made it ${times} times as large`);
  await page.close();
});

test("the bar of millimetres is as long as it says", async () => {
  const page = await open();
  await enter(page);
  for (let i = 0; i < 2; i += 1) await page.keyboard.press("+");
  await settle(page);
  const told = await page.evaluate(() => ({
    bar: document.querySelector(".scale .rule").getBoundingClientRect().width,
    says: document.querySelector(".scale .length").textContent,
    drawn: document.querySelector(".pane .layer").getBoundingClientRect().width,
  }));
  // The sheet of the record is 436 mm wide (records/designs/7/impressions/5.toml), and the photograph
  // shows a little more than the sheet all around.
  const across = (parseFloat(told.says) / told.bar) * told.drawn;
  assert.ok(across > 436 && across < 1.2 * 436, `the photograph would be ${across} mm wide`);
  await page.close();
});

test("the opened plate can be read by everybody, and without scripts it is a link to the file", async () => {
  const axe = await readFile(require.resolve("axe-core/axe.min.js"), "utf8");
  const page = await listen(browser, site.address, faults);
  await page.setBypassCSP(true);
  for (const [width, scheme] of [[390, "light"], [1280, "dark"]]) {
    await page.setViewport({ width, height: 900 });
    await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
    await page.goto(site.address + SHEET, { waitUntil: "load" });
    await enter(page);
    await page.keyboard.press("+");
    await page.evaluate(axe);
    const { violations } = await page.evaluate(() => axe.run(document, { runOnly: { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } }));
    assert.deepEqual(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 160)}`), []);
  }
  await page.setJavaScriptEnabled(false);
  await page.goto(site.address + SHEET, { waitUntil: "load" });
  assert.equal(await page.$(".look"), null);
  const file = await page.$eval("figure.plate .ground > a", (link) => link.href);
  assert.match(file, /\.jpg$/);
  assert.equal((await fetch(file)).status, 200);
  await page.close();
});

test("what looks closer and compares stays under 20 kB as it travels", async () => {
  const names = ["viewer.js", "viewer.css", "compare.js", "compare.css", "difference.js"];
  const sizes = await Promise.all(names.map(async (name) => gzipSync(await readFile(`${folder}/assets/${name}`)).length));
  const all = sizes.reduce((sum, size) => sum + size, 0);
  assert.ok(all > 5_000 && all < 20_000, `${all} bytes`);
});

test("nothing went wrong in the browser meanwhile", () => {
  assert.deepEqual(faults, []);
});
