// References in the browser. For every number, state, printing, sheet, accession number, number of an earlier catalogue,
// title and name of the demonstration, written in several ways, the script of the page gives the readings that
// `keyblock resolve` gives; and the page shows them, saves them, and works by keyboard.

import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { cp, mkdtemp, readFile, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { after, before, test } from "node:test";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { launch, listen } from "./browser.mjs";
import { serve } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";
const catalogue = process.env.CATALOGUE ?? "demo-site";
const keyblock = resolve(process.env.KEYBLOCK ?? "target/release/keyblock");
const run = promisify(execFile);
const faults = [];
let browser;
let site;
let scratch;

before(async () => {
  [browser, site, scratch] = [await launch(), await serve(folder), await mkdtemp(join(tmpdir(), "references-"))];
});
after(async () => {
  await browser?.close();
  await site?.stop();
  if (scratch) await rm(scratch, { recursive: true });
});

const json = async (path) => JSON.parse(await readFile(join(folder, "resolve", path), "utf8"));

/** The script of the page, which Node.js takes for a module only in a package of modules. */
async function script() {
  for (const file of ["find.js", "references.js"]) await cp(join(folder, "assets", file), join(scratch, file));
  await writeFile(join(scratch, "package.json"), '{"type":"module"}');
  return import(pathToFileURL(join(scratch, "references.js")));
}

/** The words of the script, as the page has them. */
async function wordsOfPage() {
  const html = await readFile(join(folder, "resolve/index.html"), "utf8");
  return JSON.parse(/<script type="application\/json" id="resolve_data">(.*?)<\/script>/s.exec(html)[1]);
}

/** References to everything that the index has, as people write them, and some that lead nowhere. */
async function references(index) {
  const all = [];
  const { siglum } = index;
  for (const { key, number, titles, former = [], states = [], printings = [], impressions = [] } of index.designs) {
    all.push(number, `${siglum} ${number}`, `${siglum}${number}`, `no. ${number}`, `design:${key}`, `${index.address}/design/${key}/`, `${siglum} ${number} (edition 1)`);
    all.push(...titles, ...former, ...titles.map((title) => title.toUpperCase()), ...titles.map((title) => title.split(/[ ,]/)[0]));
    for (const { key: state, numeral } of states) {
      all.push(`${number} ${state}`, state, `design/${key}/#state-${state}`);
      if (!numeral) continue;
      all.push(`${siglum} ${number} ${numeral}`, `${number} ${numeral.toUpperCase()}`, `${siglum} ${number} ${numeral}/${states.length}`, `${number}, state ${numeral} of ix`, `${titles[0]}, ${numeral}`, `${number} ${numeral} (edition 1)`);
    }
    for (const { key: printing, name } of printings) all.push(`${number} ${printing}`, `${siglum} ${number} ${name}`, `${index.address}/design/${key}/#printing-${printing}`);
    for (const [first, last] of impressions) for (let n = first; n <= last + 1; n += 1) all.push(`${number}.${n}`, `${siglum} ${number}/${n}`, `impression:${key}.${n}`);
  }
  for (const { key, short, title, author, numbers = [] } of index.literature) {
    all.push(short, title, `lit:${key}`, `lit/${key}/`);
    for (const { number, part, row } of numbers) {
      const cited = [number, part].filter(Boolean).join(" ");
      all.push(`${short} ${cited}`, `${author} ${cited}`, `${title}, no. ${cited}`, cited, `${index.address}/lit/${key}/#${row}`, `${short} ${number}, state ${part}`, `${short} ${cited} zz`);
    }
  }
  for (const { key, names, former = [], town, isil } of index.holders) all.push(...names, ...former, `holder:${key}`, `${names[0]}, ${town}`, isil ?? "");
  for (const list of ["people", "exhibitions", "marks", "documents", "series"]) for (const { key, names } of index[list]) all.push(...names, key, names[0].split(" ")[0]);
  const holders = new Map(index.holders.map((holder) => [holder.key, holder]));
  for (const file of await readdir(join(folder, "resolve/accessions"))) {
    const { numbers } = await json(`accessions/${file}`);
    for (const [key, sheets] of Object.entries(numbers)) {
      all.push(key, key.replaceAll(".", " "), `inv. ${key}`);
      for (const [, holder] of sheets) {
        const { names: [name], town } = holders.get(holder) ?? { names: ["Nobody"] };
        all.push(`${name} ${key}`, `${name}, ${town}, inv. no. ${key}`, `${key} (${name})`, `${name.split(" ")[0]} ${key}`, `${name.split(" ").map((word) => word.slice(0, 4)).join(". ")}. ${key}`);
      }
    }
  }
  all.push("", "…", "nothing of the kind", "the", siglum, `${siglum} 9999`, "99999999999999999999", "state", "edition 2", "constructor", "__proto__", "7 constructor");
  return [...new Set(all)];
}

test("the script reads every reference as the command does", async () => {
  const { open, reason } = await script();
  const names = await open(json);
  const words = await wordsOfPage();
  const asked = await references(names.index);
  assert.ok(asked.length > 2500, `only ${asked.length} references`);
  const list = join(scratch, "list.csv");
  await writeFile(list, `reference\r\n${asked.map((one) => `"${one.replaceAll('"', '""')}"\r\n`).join("")}`);
  const { stdout } = await run(keyblock, ["resolve", "--in", catalogue, "--list", list, "--json"], { maxBuffer: 1 << 28 });
  const { results } = JSON.parse(stdout);
  assert.equal(results.length, asked.length);
  let read = 0;
  for (const { asked: one, readings } of results) {
    const own = (await names.resolve(one)).map((reading) => ({ ...reading, why: reason(words, reading.why) }));
    assert.deepEqual(own, readings, one);
    read += readings.length > 0 ? 1 : 0;
  }
  assert.ok(read > 2000, `only ${read} references have a reading`);
});

test("the script reads former keys and the numerals of earlier editions", async () => {
  const { open } = await script();
  const { folding } = await json("index.json");
  const words = { number: [], state: [], accession: [], edition: ["edition"], only_state: "only state" };
  const addresses = { design: "design/{design}/", state: "design/{design}/#state-{state}", impression: "impression/{impression}/" };
  const states = [{ key: "before-lamps", numeral: "i" }, { key: "lamps", numeral: "ii", was: ["lit"], formerly: [{ edition: "1", numeral: "i" }] }];
  const index = { tag: "1", siglum: "TP", address: "https://prints.example.org", addresses, words, folding, literature: [], holders: [], people: [], exhibitions: [], marks: [], documents: [], series: [], accessions: [] };
  const names = await open(async () => ({ ...index, designs: [{ key: "14", number: "14", titles: [], was: ["mill"], formerly: [{ edition: "1", number: "12" }], states, impressions: [[1, 1]] }] }));
  // The same as `a_former_key_leads_to_the_record_that_had_it` and its neighbour in src/study/resolve/former.rs.
  for (const [text, ...expected] of [
    ["mill", "certain TP 14 former-key"],
    ["design:mill", "certain TP 14 former-key"],
    ["impression:mill.1", "certain TP 14.1 former-key"],
    ["14 lit", "certain TP 14 ii/ii former-key"],
    ["https://prints.example.org/design/mill/#state-lit", "certain TP 14 ii/ii former-key"],
    ["TP 12 i (edition 1)", "certain TP 14 ii/ii edition"],
    ["TP 12 (edition 1)", "certain TP 14 edition"],
    ["TP 12", "possible TP 14 edition"],
    ["TP 14 (edition 1)"],
    ["TP 14 i", "probable TP 14 i/ii number", "possible TP 14 ii/ii edition"],
    ["TP 14 ii", "certain TP 14 ii/ii number"],
  ]) {
    const found = await names.resolve(text);
    assert.deepEqual(found.map(({ certainty, label, why }) => `${certainty} ${label} ${why.word}`), expected, text);
  }
});

async function openPage(path, { withScripts = true, width = 1280 } = {}) {
  const page = await listen(browser, site.address, faults);
  await page.setJavaScriptEnabled(withScripts);
  await page.setViewport({ width, height: 900 });
  await page.goto(site.address + path, { waitUntil: "load" });
  return page;
}

const answered = (page) => page.waitForSelector('#resolved[aria-busy="false"]', { timeout: 30000 });

const shown = (page) =>
  page.$$eval("table.resolved tbody", (bodies) =>
    bodies.map((body) => ({
      asked: body.querySelector("th").textContent,
      readings: [...body.querySelectorAll("tr")].filter((row) => row.querySelector("a")).map((row) => [...row.querySelectorAll("td")].map(({ textContent }) => textContent)),
      links: [...body.querySelectorAll("a")].map(({ href }) => href),
    })),
  );

/** The text of the file that a link saves. */
async function download(page, link) {
  const session = await page.createCDPSession();
  await session.send("Browser.setDownloadBehavior", { behavior: "allow", downloadPath: scratch });
  await page.click(link);
  const path = join(scratch, await page.$eval(link, (a) => a.download));
  for (let waited = 0; waited < 100; waited += 1) {
    const text = await readFile(path, "utf8").catch(() => null);
    if (text) return text;
    await new Promise((done) => setTimeout(done, 100));
  }
  throw new Error("nothing was saved");
}

test("the page shows what pasted lines mean, and saves it as a table", async () => {
  const page = await openPage("resolve/");
  await page.focus("#resolve_asked");
  await page.type("#resolve_asked", "OP 7 iii\nDreyloft 9\n\nnothing at all");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await answered(page);
  const [state, earlier, nothing, ...others] = await shown(page);
  assert.deepEqual(others, []);
  assert.equal(state.asked, "OP 7 iii");
  assert.equal(state.readings[0][0], "certain");
  assert.match(state.readings[0][1], /^OP 7 iii\/vhttps:\/\/perelaz\.example\.org\/prints\/design\/7\/#state-/);
  assert.ok(state.links[0].startsWith(`${site.address}design/7/#state-`), state.links[0]);
  assert.deepEqual(earlier.links, [`${site.address}design/7/`, `${site.address}lit/dreyloft-1936/#9`]);
  assert.deepEqual(nothing.readings, []);
  assert.match(await page.$eval("#resolved [role=status]", ({ textContent }) => textContent), /2 of 3/);
  const saved = await download(page, "a.save");
  const list = join(scratch, "three.csv");
  await writeFile(list, "reference\r\nOP 7 iii\r\nDreyloft 9\r\nnothing at all\r\n");
  const { stdout } = await run(keyblock, ["resolve", "--in", catalogue, "--list", list]);
  assert.equal(saved, `\ufeff${stdout}`, "the table is the one that the command writes");
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), true);
  await page.close();
});

test("references may stand in the address of the page, and the page fits a phone", async () => {
  const page = await openPage("resolve/?asked=Kelder+1987%2F0413&asked=W+4", { width: 390 });
  await answered(page);
  const [sheet, number] = await shown(page);
  assert.ok(sheet.links[0].startsWith(`${site.address}impression/7.5/`), sheet.links[0]);
  assert.equal(number.links[0], `${site.address}design/7/`);
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), true);
  await page.close();
});

test("without scripts the page says what to do", async () => {
  const page = await openPage("resolve/", { withScripts: false });
  assert.match(await page.$eval("noscript", ({ textContent }) => textContent), /needs a script/);
  await page.close();
});

test("a number of an earlier catalogue is found in the page as it is cited, and leads to its row", async () => {
  const page = await openPage("concordance/");
  const found = await page.$$eval("table.concordance a", (all) => all.filter(({ textContent }) => textContent === "Dreyloft 9").map(({ href }) => href));
  assert.deepEqual([...new Set(found)], [`${site.address}lit/dreyloft-1936/#9`]);
  assert.equal(found.length, 2, "once from our numbers, once from theirs");
  await page.goto(`${site.address}lit/dreyloft-1936/#9`, { waitUntil: "load" });
  assert.match(await page.$eval(":target", ({ textContent }) => textContent), /Dreyloft 9.*Gant Light/s);
  await page.close();
});

test("nothing went wrong on any page", () => {
  assert.deepEqual(faults, []);
});
