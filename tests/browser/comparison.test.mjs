// The comparison of impressions: the page shows of the chosen sheets what the catalogue records of them;
// every mode works by keyboard; differences are found where the record places them; a photograph that cannot
// be aligned is shown beside the others; and the page works without scripts.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { after, before, test } from "node:test";
import { launch, listen } from "./browser.mjs";
import { filesOf, serve } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";
const catalogue = process.env.CATALOGUE ?? "demo-site";
const require = createRequire(import.meta.url);
const CHOSEN = "design/7/comparison/";
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

async function open(path, { scripts = true, still = false, width = 1280, height = 1100 } = {}) {
  const page = await listen(browser, site.address, faults);
  await page.setJavaScriptEnabled(scripts);
  await page.emulateMediaFeatures([{ name: "prefers-reduced-motion", value: still ? "reduce" : "no-preference" }]);
  await page.setViewport({ width, height });
  await page.goto(site.address + path, { waitUntil: "load" });
  return page;
}

const dataOf = (page) => page.$eval("#compare_data", (data) => JSON.parse(data.textContent));
const hash = (page) => page.evaluate(() => location.hash);
const rest = (ms) => new Promise((go) => setTimeout(go, ms));

/** The rows of the table in sight: the question, what each sheet in sight shows, and the verdict. */
const rowsOf = (page) =>
  page.$$eval("table.points tbody tr", (rows) =>
    rows.filter((row) => !row.hidden).map((row) => [...row.cells].filter((cell) => !cell.hidden).map((cell) => cell.textContent.trim())),
  );

/** Chooses a mode by keyboard. */
async function look(page, mode) {
  await page.focus("input[name=mode]:checked");
  for (let i = 0; i < 5; i += 1) {
    if ((await page.$eval("input[name=mode]:checked", (input) => input.value)) === mode) return;
    await page.keyboard.press("ArrowRight");
  }
  assert.equal(await page.$eval("input[name=mode]:checked", (input) => input.value), mode);
}

test("the page comes to the verdicts of the catalogue, row by row", async () => {
  const recorded = (await filesOf(folder)).filter((file) => /^design\/[^/]+\/comparison\/\d+\/index\.html$/.test(file));
  assert.ok(recorded.length >= 5, `only ${recorded.length} recorded comparisons`);
  let compared = 0;
  for (const file of recorded) {
    const page = await open(file.replace("index.html", ""), { scripts: false });
    const said = await rowsOf(page);
    const heads = await page.$$eval("table.points thead th", (all) => all.map((th) => th.textContent.trim()));
    const sentence = await page.$eval("#observations + .matter", (text) => text.textContent.trim());
    await page.close();
    const keys = heads.slice(1, -1);
    // Sheets of two designs cannot be chosen on the page of one.
    if (keys.some((key) => !key.startsWith(`${file.split("/")[1]}.`))) continue;
    const ours = await open(`${file.replace(/\d+\/index\.html$/, "")}#of=${keys.join(",")}`);
    const columns = await ours.$$eval("table.points thead th", (all) => all.filter((th) => !th.hidden).map((th) => th.textContent.trim()));
    // Our columns stand in the order of the record, its in the order of the comparison.
    const found = (await rowsOf(ours)).map((row) => heads.map((head) => row[columns.indexOf(head)]));
    assert.deepEqual(found, said, file);
    assert.equal(await ours.$eval(".chosen-verdict", (text) => text.textContent), sentence);
    compared += said.length;
    await ours.close();
  }
  assert.ok(compared > 40, `only ${compared} rows`);
});

test("sheets are chosen by keyboard, four at most, and kept in the address", async () => {
  const page = await open(CHOSEN);
  const all = (await dataOf(page)).sheets.length;
  assert.equal((await rowsOf(page))[0].length, all + 1, "the table does not begin with every sheet");
  for (let at = 0; at < 4; at += 1) {
    await page.focus(`.chooser li:nth-of-type(${at + 1}) input`);
    await page.keyboard.press("Space");
  }
  const keys = (await dataOf(page)).sheets.slice(0, 4).map((sheet) => sheet.key);
  assert.equal(await hash(page), `#of=${keys.join(",")}`);
  assert.equal((await rowsOf(page))[0].length, 6);
  assert.equal(await page.$$eval(".chooser input:disabled", (inputs) => inputs.length), all - 4);
  assert.notEqual(await page.$eval(".chooser output", (output) => output.textContent), "");

  const colleague = await open(`${CHOSEN}${await hash(page)}`);
  assert.deepEqual(await rowsOf(colleague), await rowsOf(page));
  await colleague.close();
  await page.evaluate(() => document.querySelector(".skip").click());
  assert.equal(await hash(page), "#page_sheet");
  assert.equal((await rowsOf(page))[0].length, 6, "a link within the page takes the choice away");
  await page.click(".chooser button[type=reset]");
  await page.waitForFunction(() => location.hash === "");
  assert.equal((await rowsOf(page))[0].length, all + 1);
  await page.close();
});

test("photographs are ticked, and compared once two are", async () => {
  const page = await open(CHOSEN);
  const seen = (name) => page.$eval(name, (element) => element.checkVisibility());
  assert.ok(!(await seen(".toolbar")), "there are tools before anything is chosen");
  const { pictures, wide } = await page.$$eval(".chooser img", (all) => ({ pictures: all.length, wide: all.every((image) => image.getBoundingClientRect().width > 40) }));
  assert.ok(pictures > 10 && wide, `${pictures} photographs to choose from`);
  for (const at of [1, 3]) await page.click(`.chooser li:nth-of-type(${at}) img`);
  assert.equal(await page.$eval(".chooser .go", (button) => button.textContent), "Compare 2");
  await page.click(".chooser .go");
  assert.ok(!(await seen(".chooser")) && (await seen(".toolbar")));
  assert.equal(await page.$$eval(".abreast .pane", (all) => all.length), 2);
  await page.click(".choose");
  assert.ok(await seen(".chooser"));
  assert.equal(await page.$eval(".choose", (button) => button.getAttribute("aria-expanded")), "true");
  await page.close();
});

test("a comparison fits its window, with its tools in one row that stays", async () => {
  for (const [width, height] of [[1280, 900], [1920, 1080]]) {
    for (const mode of ["side", "edge", "blink", "overlay", "difference"]) {
      const page = await open(`${CHOSEN}#of=7.3,7.5&mode=${mode}`, { width, height });
      await rest(200);
      const { bottom, rows, high } = await page.evaluate(() => {
        const rect = (e) => e.getBoundingClientRect();
        const shown = [...document.querySelectorAll(".abreast > li")].filter((item) => item.checkVisibility());
        const tools = [...document.querySelectorAll(".toolbar :is(label, button, summary)")].filter((e) => e.checkVisibility());
        return { bottom: Math.max(...shown.map((item) => rect(item).bottom)), rows: Math.max(...tools.map((e) => rect(e).bottom)) - Math.min(...tools.map((e) => rect(e).top)), high: rect(document.querySelector(".pane")).height };
      });
      assert.ok(bottom <= height, `${mode} at ${width}: reaches ${bottom} of ${height}`);
      assert.ok(high > 0.6 * height, `${mode} at ${width}: the pane is ${high} high`);
      assert.ok(rows < 48, `${mode} at ${width}: the tools take ${rows}`);
      await page.evaluate(() => scrollTo(0, document.body.scrollHeight / 2));
      const top = await page.$eval(".toolbar", (bar) => bar.getBoundingClientRect().top);
      assert.ok(Math.abs(top) < 1, `${mode} at ${width}: the tools are at ${top}`);
      await page.close();
    }
  }
  // On a phone two photographs share one window.
  const phone = await open(`${CHOSEN}#of=7.3,7.5`, { width: 390, height: 844 });
  await rest(200);
  const { tall, all } = await phone.evaluate(() => {
    const items = [...document.querySelectorAll(".abreast > li")].filter((item) => item.checkVisibility());
    const [first, last] = [items[0], items.at(-1)].map((e) => e.getBoundingClientRect());
    return { tall: document.querySelector(".toolbar").offsetHeight, all: last.bottom - first.top };
  });
  assert.ok(tall + all <= 844 + 12, `${tall} of tools and ${all} of photographs`);
  await phone.close();
});

test("the legend of differences is folded behind a question", async () => {
  const page = await open(`${CHOSEN}#of=7.3,7.5&mode=difference`);
  assert.ok(!(await page.$eval(".how .sign-how", (text) => text.checkVisibility())));
  await page.focus(".how summary");
  await page.keyboard.press("Enter");
  assert.ok(await page.$eval(".how .sign-how", (text) => text.checkVisibility()));
  await look(page, "edge");
  assert.ok(!(await page.$eval(".how .sign-how", (text) => text.checkVisibility())), "the legend of differences stands at the divider");
  await page.close();
});

test("side by side, one view moves all", async () => {
  const page = await open(`${CHOSEN}#of=7.1,7.3,7.5`);
  await page.waitForFunction(() => document.querySelectorAll(".abreast .pane .layer").length === 3);
  const places = () =>
    page.evaluate(async () => {
      for (let i = 0; i < 3; i += 1) await new Promise((go) => requestAnimationFrame(go));
      // Where the middle of the reference picture lies in each pane, and how large.
      return [...document.querySelectorAll(".abreast .pane")].map((pane) => {
        const { width, left } = pane.querySelector(".layer").getBoundingClientRect();
        return { width, left: left - pane.getBoundingClientRect().left };
      });
    });
  const before = await places();
  await page.focus(".abreast li:nth-child(1) .pane");
  await page.keyboard.press("+");
  await page.keyboard.press("+");
  await page.keyboard.press("ArrowRight");
  const after = await places();
  after.forEach(({ width }, at) => assert.ok(Math.abs(width / before[at].width - 2.25) < 0.05, `pane ${at + 1}: ${width / before[at].width}`));
  await page.close();
});

test("the edge moves by keyboard and by hand", async () => {
  const page = await open(`${CHOSEN}#of=7.3,7.5`);
  await look(page, "edge");
  assert.equal(await hash(page), "#of=7.3,7.5&mode=edge");
  const edge = () => page.$eval(".stage .film:nth-of-type(2)", (film) => Number(/([\d.]+)%\)/.exec(film.style.clipPath)[1]));
  assert.equal(await edge(), 50);
  await page.focus(".of-edge input");
  for (let i = 0; i < 5; i += 1) await page.keyboard.press("ArrowLeft");
  assert.equal(await edge(), 45);
  await page.keyboard.press("End");
  assert.equal(await edge(), 100);
  await page.keyboard.press("Home");
  const handle = await (await page.$(".handle-of-edge")).boundingBox();
  const pane = await (await page.$(".stage .pane")).boundingBox();
  await page.mouse.move(handle.x + handle.width / 2, handle.y + 100);
  await page.mouse.down();
  await page.mouse.move(pane.x + pane.width / 4, handle.y + 100, { steps: 3 });
  await page.mouse.up();
  assert.ok(Math.abs((await edge()) - 25) <= 1, `the edge is at ${await edge()}`);
  await page.close();
});

/** When each of the two pictures came into sight, ms, over some time. */
const turns = (page, ms) =>
  page.evaluate(async (wait) => {
    const film = document.querySelector(".stage .film");
    const at = [];
    new MutationObserver(() => at.push(performance.now())).observe(film, { attributeFilter: ["style"] });
    await new Promise((go) => setTimeout(go, wait));
    return at;
  }, ms);

test("in turn, at most three a second, and stopped by a button", async () => {
  const page = await open(`${CHOSEN}#of=7.3,7.5`);
  await look(page, "blink");
  for (const pace of ["slow", "quick"]) {
    await page.click(`.pace label:has([value=${pace}])`);
    const times = await turns(page, 3500);
    assert.ok(times.length >= 2, `${pace}: ${times.length} turns`);
    // WCAG 2.2, 2.3.1: nothing flashes more than three times in a second. A timer that came late
    // may be followed by one in time: three turns together are measured.
    for (let i = 2; i < times.length; i += 1) assert.ok(times[i] - times[i - 2] >= 2 * 334 - 20, `${pace}: ${times[i] - times[i - 2]} ms for two turns`);
  }
  await page.focus(".run");
  await page.keyboard.press("Enter");
  assert.deepEqual(await turns(page, 1500), []);
  const now = () => page.$eval(".now", (text) => text.textContent);
  const first = await now();
  await page.focus(".step");
  await page.keyboard.press("Enter");
  assert.notEqual(await now(), first);
  assert.equal(await page.$eval(".now", (text) => text.getAttribute("aria-live")), "polite");
  await page.close();

  // With reduced motion asked for, nothing moves by itself, and the reader steps by hand.
  const quiet = await open(`${CHOSEN}#of=7.3,7.5&mode=blink`, { still: true });
  assert.deepEqual(await turns(quiet, 1500), []);
  assert.ok(await quiet.$eval(".run", (button) => button.hidden));
  assert.ok(await quiet.$eval(".is-still", (text) => text.checkVisibility()));
  await quiet.click(".step");
  assert.equal(await quiet.$eval(".now", (text) => text.textContent), "7.5");
  await quiet.close();
});

test("overlay, by keyboard", async () => {
  const page = await open(`${CHOSEN}#of=7.3,7.5`);
  await look(page, "overlay");
  const opacity = () => page.$eval(".stage .film:nth-of-type(2)", (film) => Number(getComputedStyle(film).opacity));
  assert.equal(await opacity(), 0.5);
  await page.focus(".of-overlay input");
  await page.keyboard.press("Home");
  assert.equal(await opacity(), 0);
  for (let i = 0; i < 20; i += 1) await page.keyboard.press("ArrowRight");
  assert.ok(Math.abs((await opacity()) - 0.2) < 0.001);
  await page.close();
});

/** The box of a point of design 7, in shares of the reference picture, as its record has it. */
async function boxOf(point) {
  const record = await readFile(`${catalogue}/records/designs/7/design.toml`, "utf8");
  const [, box] = new RegExp(`key = "${point}"[^[]*box = \\[([^\\]]*)\\]`).exec(record);
  return box.split(",").map((number) => Number(number) / 100);
}

/** How far from middle grey what is drawn lies, on average, in boxes of the frame. */
const greyIn = (page, boxes) =>
  page.$eval(".stage canvas", (canvas, all) => {
    const { width: wide, height: high } = canvas;
    const { data } = canvas.getContext("2d").getImageData(0, 0, wide, high);
    return all.map(([left, top, width, height]) => {
      let [sum, pixels] = [0, 0];
      for (let y = Math.round(top * high); y < (top + height) * high; y += 1) {
        for (let x = Math.round(left * wide); x < (left + width) * wide; x += 1) {
          sum += Math.abs(data[4 * (y * wide + x)] - 128);
          pixels += 1;
        }
      }
      return sum / pixels;
    });
  }, boxes);

test("differences are drawn where the record says it differs, and nothing where nothing does", async () => {
  // The buoy goes between states ii (7.3) and iii (7.5).
  const page = await open(`${CHOSEN}#of=7.3,7.5`);
  await look(page, "difference");
  await page.waitForSelector(".stage canvas", { timeout: 30000 });
  assert.match(await page.$eval(".of-difference output", (output) => output.textContent), /\d.*printed image/);
  assert.match(await page.$eval(".how .sign", (text) => text.textContent), /7\.5.*7\.3/);
  const buoy = await boxOf("buoy");
  const [, , width, height] = buoy;
  // Places of the printed image with nothing recorded to differ: the lower right, the rock, the sea.
  const elsewhere = [[0.42, 0.6], [0.5, 0.66], [0.7, 0.64], [0.66, 0.5], [0.74, 0.52], [0.42, 0.7]].map((place) => [...place, width, height]);
  const [there, ...others] = await greyIn(page, [buoy, ...elsewhere]);
  const most = Math.max(...others);
  assert.ok(there > 3 * most, `the buoy stands out by ${there}, elsewhere up to ${most}`);

  // A photograph compared with itself, and with itself printed paler, differs nowhere.
  const { same, paler } = await page.evaluate(async () => {
    const { sheets, frame } = JSON.parse(document.getElementById("compare_data").textContent);
    const sheet = sheets.find(({ key }) => key === "7.3");
    const { share } = await keyblockDifference.draw(sheet, sheet, frame);
    const [wide, high] = [300, 200];
    const tones = Float32Array.from({ length: wide * high }, (_, at) => 40 + 150 * Number((at % 23) + Math.floor(at / wide) * 3 > 40));
    const seen = new Uint8Array(wide * high).fill(1);
    const pale = { tones: tones.map((tone) => 255 - (255 - tone) * 0.6), seen };
    const found = await keyblockDifference.difference({ tones, seen }, pale, wide, high);
    return { same: share, paler: found.filter((by) => Math.abs(by) > 0.5).length };
  });
  assert.equal(same, 0);
  assert.equal(paler, 0);
  await page.close();
});

test("opened from a disk, where pixels may not be read, it says so, and all else works", async () => {
  const page = await browser.newPage();
  await page.goto(`${pathToFileURL(resolve(folder, CHOSEN, "index.html"))}#of=7.3,7.5&mode=difference`);
  const said = () => page.$eval(".of-difference output", (output) => output.textContent);
  const { words } = await dataOf(page);
  await page.waitForFunction((text) => document.querySelector(".of-difference output").textContent === text, {}, words["compare-unreadable"]);
  assert.notEqual(await said(), "");
  await look(page, "edge");
  assert.equal(await page.$$eval(".stage .film", (films) => films.length), 2);
  await page.close();
});

test("another photograph of a sheet can be shown, and is laid on none that it cannot be laid on", async () => {
  const page = await open(CHOSEN);
  const { sheets } = await dataOf(page);
  const sheet = sheets.find(({ onto, others }) => onto && others?.some((other) => other.name === "verso"));
  const other = sheets.find((one) => one.onto && !one.others);
  await page.close();
  const beside = await open(`${CHOSEN}#of=${[sheet.key, other.key].join(",")}`);
  const select = ".abreast li:not([hidden]) .others select";
  assert.equal(await beside.$eval(select, (list) => list.selectedOptions[0].textContent), sheet.shows);
  const place = sheet.others.findIndex(({ name }) => name === "verso") + 1;
  await beside.select(select, String(place));
  assert.ok((await hash(beside)).includes(`view=${sheet.key}/verso`));
  assert.equal(await beside.$$eval("input[name=mode]:disabled", (all) => all.length), 4);
  assert.ok((await beside.$eval(".not-laid", (text) => text.textContent)).includes(sheet.others[place - 1].why));
  const labels = await beside.$$eval(".abreast .pane", (panes) => panes.map((pane) => pane.getAttribute("aria-label")));
  assert.ok(labels.some((label) => label.includes(sheet.others[place - 1].shows)), labels.join("; "));
  // The address gives it to a colleague.
  const colleague = await open(`${CHOSEN}${await hash(beside)}`);
  assert.equal(await colleague.$eval(select, (list) => list.value), String(place));
  await colleague.close();
  await beside.select(select, "0");
  assert.ok(!(await hash(beside)).includes("view="));
  assert.equal(await beside.$$eval("input[name=mode]:disabled", (all) => all.length), 0);
  await beside.close();
});

test("sheets with one mark are compared across designs", async () => {
  const marked = (await filesOf(folder)).filter((file) => /^mark\/[^/]+\/comparison\/index\.html$/.test(file));
  assert.ok(marked.length > 0, "no mark leads to a comparison of its sheets");
  const page = await open(marked[0].replace("index.html", ""));
  const { sheets } = await dataOf(page);
  await page.close();
  const two = await open(`${marked[0].replace("index.html", "")}#of=${sheets[0].key},${sheets[1].key}`);
  assert.equal(await two.$$eval(".abreast .pane", (panes) => panes.length), 2);
  assert.ok((await rowsOf(two)).length > 0, "nothing is compared");
  await two.close();
});

test("with more than two chosen, the ways for two ask which two", async () => {
  const page = await open(`${CHOSEN}#of=7.1,7.3,7.5&mode=overlay&two=7.3,7.5`);
  const two = () => page.$$eval("fieldset.first input:checked, fieldset.second input:checked", (all) => all.map((input) => input.parentElement.textContent));
  assert.deepEqual(await two(), ["7.3", "7.5"]);
  await page.focus("fieldset.first input:checked");
  await page.keyboard.press("ArrowLeft");
  assert.deepEqual(await two(), ["7.1", "7.5"]);
  assert.equal(await hash(page), "#of=7.1,7.3,7.5&mode=overlay&two=7.1,7.5");
  assert.equal(await page.evaluate(() => document.activeElement.name), "first");
  await page.close();
});

test("a photograph that could not be laid on the others says why and stands beside them", async () => {
  const page = await open(CHOSEN);
  const { sheets } = await dataOf(page);
  const refused = sheets.find((sheet) => sheet.picture && !sheet.onto);
  assert.ok(refused?.why, "no photograph of design 7 was refused");
  const other = sheets.find((sheet) => sheet.onto);
  await page.close();
  const beside = await open(`${CHOSEN}#of=${refused.key},${other.key}&mode=difference`);
  const said = await beside.$eval(".not-laid", (text) => text.textContent);
  assert.ok(said.includes(refused.key) && said.includes(refused.why), said);
  assert.equal(await beside.$eval("input[name=mode]:checked", (input) => input.value), "side");
  assert.equal(await beside.$$eval("input[name=mode]:disabled", (all) => all.length), 4);
  assert.equal(await beside.$$eval(".abreast .pane .layer", (all) => all.length), 2);
  await beside.close();

  const bare = sheets.find((sheet) => !sheet.picture);
  const without = await open(`${CHOSEN}#of=${bare.key},${other.key}`);
  const missing = await without.$eval(".not-laid", (text) => text.textContent);
  assert.equal(missing.trim(), `There is no photograph of ${bare.key}.`);
  await without.close();
});

test("without scripts there are pictures and the table", async () => {
  const page = await open(CHOSEN, { scripts: false });
  assert.equal(await page.$(".comparing"), null);
  const shown = await page.$$eval(".abreast img", (images) => images.filter((image) => image.checkVisibility()).length);
  const heads = await page.$$eval("table.points thead th", (all) => all.filter((th) => th.checkVisibility()).length);
  assert.ok(shown > 10, `${shown} pictures`);
  assert.ok(heads > 15, `${heads} columns`);
  assert.ok((await page.$$("#comparisons + .matter a")).length >= 2, "the comparisons of the record are not shown");
  await page.goto(`${site.address}${CHOSEN}1/`, { waitUntil: "load" });
  assert.equal(await page.$$eval(".abreast img", (images) => images.filter((image) => image.checkVisibility()).length), 3);
  assert.ok((await rowsOf(page)).length > 5);
  await page.close();
});

test("a recorded comparison takes a way of looking from its address", async () => {
  const page = await open(`${CHOSEN}1/#mode=edge`);
  assert.equal(await page.$eval("input[name=mode]:checked", (input) => input.value), "edge");
  assert.equal(await page.$$eval(".stage .film", (films) => films.length), 2);
  await page.close();
});

test("every way of looking can be read by everybody", async () => {
  const axe = await readFile(require.resolve("axe-core/axe.min.js"), "utf8");
  const page = await listen(browser, site.address, faults);
  await page.setBypassCSP(true);
  const found = [];
  for (const [width, scheme] of [[390, "dark"], [1280, "light"]]) {
    await page.setViewport({ width, height: 900 });
    await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }, { name: "prefers-reduced-motion", value: "no-preference" }]);
    for (const mode of ["side", "edge", "blink", "overlay", "difference"]) {
      await page.goto("about:blank");
      await page.goto(`${site.address}${CHOSEN}#of=7.1,7.3,7.5&mode=${mode}`, { waitUntil: "load" });
      await rest(300);
      await page.evaluate(axe);
      const { violations } = await page.evaluate(() => axe.run(document, { runOnly: { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } }));
      for (const { id, nodes } of violations) found.push(`${mode} at ${width}: ${id}: ${nodes[0].html.slice(0, 160)}`);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      if (wide > width) found.push(`${mode} at ${width}: ${wide} px wide`);
    }
  }
  assert.deepEqual(found, []);
  await page.close();
});

test("nothing went wrong in the browser meanwhile", () => {
  assert.deepEqual(faults, []);
});
