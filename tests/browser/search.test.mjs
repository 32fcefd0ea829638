// The search in the browser: from the field in the head of any page and on its own page. Its script folds as the
// index does; results come as one types, by keyboard too; they are narrowed with true counts; without scripts a form
// and the indexes lead on; and the page for an address that leads to nothing searches for its words.

import assert from "node:assert/strict";
import { readFile, readdir, stat } from "node:fs/promises";
import { createServer } from "node:http";
import { createRequire } from "node:module";
import { extname, join } from "node:path";
import { after, before, test } from "node:test";
import { launch, listen } from "./browser.mjs";
import { serve } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";
const assets = new URL("../../themes/laid/assets/", import.meta.url);
const check = new URL("../checks/search_folding.json", import.meta.url);
const require = createRequire(import.meta.url);
const faults = [];
let browser;
let site;
let finding;

/** The index of the compiled site, read from the disk. */
const index = async (path) => JSON.parse(await readFile(join(folder, "search", path), "utf8"));

before(async () => {
  [browser, site] = [await launch(), await serve(folder)];
  const source = await readFile(new URL("find.js", assets), "utf8");
  finding = await import(`data:text/javascript,${encodeURIComponent(source)}`);
});
after(async () => {
  await browser?.close();
  await site?.stop();
});

async function open(path, { withScripts = true, width = 1280, scheme = "light" } = {}) {
  const page = await listen(browser, site.address, faults);
  await page.setJavaScriptEnabled(withScripts);
  await page.setViewport({ width, height: 900 });
  await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
  await page.goto(site.address + path, { waitUntil: "load" });
  return page;
}

/** The results on the search page once a query is answered. */
async function results(page, query) {
  await page.$eval("#seek", (field) => (field.value = ""));
  await page.type("#seek", query);
  await settled(page);
  return shown(page);
}

/** Once the query, or the choice, is answered. */
const settled = (page) => page.waitForSelector('#results[aria-busy="false"]', { timeout: 30000 });

const shown = (page) =>
  page.$$eval("#results ol > li", (entries) =>
    entries.map((entry) => ({
      number: entry.querySelector(".entry-number").textContent,
      title: entry.querySelector(".entry-title").textContent,
      kind: entry.querySelector(".quiet").textContent,
      told: entry.querySelector(".told")?.textContent ?? "",
      href: entry.querySelector("a").href,
      picture: entry.querySelector("img")?.src ?? null,
    })),
  );

const status = (page) => page.$eval("#results [role=status]", (said) => said.textContent);

test("the script folds and cuts words as the index does", async () => {
  const { folding } = await index("index.json");
  const { fold, words, numberKey } = finding.comparing(folding);
  const { cases } = JSON.parse(await readFile(check, "utf8"));
  assert.equal(cases.length, 30);
  for (const { query, text, match, folded_text: folded } of cases) {
    assert.equal(fold(text.normalize("NFKC")), folded);
    const there = words(text).map((word) => word.folded);
    assert.equal(words(query).every((word) => there.includes(word.folded)), match, `${query} in ${text}`);
  }
  // Every letter of the index's own table, and the terms of the index themselves, which are folded already.
  for (const [target, letters] of Object.entries(folding)) {
    for (const letter of letters) assert.equal(fold(letter), target, letter);
  }
  for (const file of await readdir(join(folder, "search/terms"))) {
    const { terms } = await index(`terms/${file}`);
    for (const [term, [written]] of Object.entries(terms)) {
      if (term.endsWith("*")) continue;
      assert.equal(fold(term), term);
      if (!written) continue;
      const forms = [numberKey(written), numberKey(written).replaceAll(".", ""), ...words(written).map(({ folded }) => folded)];
      assert.ok(forms.includes(term), `${written}: ${forms} and not ${term}`);
    }
  }
});

test("every file of the index is small, and one word needs one shard", async () => {
  const { terms: starts, tag, words } = await index("index.json");
  for (const part of ["terms", "records", "narrow"]) {
    for (const file of await readdir(join(folder, "search", part))) {
      const { size } = await stat(join(folder, "search", part, file));
      assert.ok(size < 30000, `${part}/${file}: ${size}`);
    }
  }
  assert.ok(starts.length > 1 && /^\d+$/.test(tag) && words["kind-design"] === "Design");
  const loaded = [];
  const finder = await finding.open((path) => {
    loaded.push(path);
    return index(path);
  });
  for (const query of ["harbour", "perelaz", "1927", "木版"]) {
    loaded.length = 0;
    await finder.find(query);
    assert.ok(loaded.filter((path) => path.startsWith("terms/")).length <= 1, `${query}: ${loaded}`);
  }
});

test("a word that most entries have gives its first results from one file, and the others from its parts", async () => {
  const { folding } = await index("index.json");
  const files = {
    "index.json": { tag: "1", count: 9, kinds: [["design", 0]], siglum: "", folding, terms: [""], records: [0], words: {} },
    "terms/0.json": { tag: "1", terms: { moon: [0, 0, 0, [7]], paper: [0, 0, 0, [1], [0, 2], { more: [3, 2] }] } },
    "more/3.json": { tag: "1", sets: [[3, [4, -1]]] },
    "more/4.json": { tag: "1", sets: [[3, [6]], [4, [7, 1]]] },
  };
  const loaded = [];
  const finder = await finding.open(async (path) => {
    loaded.push(path);
    return structuredClone(files[path]);
  });
  const first = await finder.find("paper ");
  assert.deepEqual([...first.places], [1, 0, 2]);
  assert.deepEqual(loaded, ["index.json", "terms/0.json"]);
  const all = await first.complete();
  assert.deepEqual([...all.places], [1, 0, 2, 4, 5, 6, 7, 8]);
  assert.equal(all.complete, undefined);
  assert.deepEqual(finder.found(all, 8), [{ place: 4, written: "paper" }]);
  // Of two words the first results may stand in the parts alone.
  const both = await finder.find("paper moon ");
  assert.deepEqual([...both.places], [7]);
  assert.ok(!both.some && both.complete === undefined);
});

test("a number is found however it is written, before what only mentions it", async () => {
  const page = await open("search/");
  for (const [query, kind, href] of [
    ["OP 7", "Design", "design/7/"],
    ["no. 7", "Design", "design/7/"],
    ["7.5", "Impression", "impression/7.5/"],
    ["op7.5", "Impression", "impression/7.5/"],
    ["OP 7 iii", "State", "design/7/#state-"],
    ["W 4", "Design", "design/7/"],
    ["Dreyloft 9", "Design", "design/7/"],
    ["Ambry 1969 W 4", "Design", "design/7/"],
  ]) {
    const [first] = await results(page, query);
    assert.ok(first, `nothing for ${query}`);
    assert.ok(first.kind.startsWith(kind) && first.href.replace(site.address, "").startsWith(href), `${query}: ${JSON.stringify(first)}`);
  }
  await page.close();
});

test("an accession number is found with its punctuation and without", async () => {
  const page = await open("search/");
  const finder = await finding.open(index);
  let checked = 0;
  for (const file of await readdir(join(folder, "search/terms"))) {
    for (const [term, [written, numbers]] of Object.entries((await index(`terms/${file}`)).terms)) {
      if (!written || term.includes(".") || !numbers || !/^\d+\.\d+$/.test(written) || checked >= 3) continue;
      const [at] = finding.placesOf(numbers);
      const { href } = await finder.record(at);
      for (const query of [written, term, written.replace(".", "/"), written.replace(".", " ")]) {
        const found = await results(page, query);
        assert.ok(found.slice(0, 3).some((one) => one.href.startsWith(site.address + href)), `${query}: ${JSON.stringify(found[0])}`);
      }
      checked += 1;
    }
  }
  assert.equal(checked, 3);
  await page.close();
});

test("titles are found in every script, and words of texts with the words that were found", async () => {
  const page = await open("search/");
  const finder = await finding.open(index);
  // Each title of the first designs, as written, in capitals and without its accents.
  let checked = 0;
  for (let at = 0; at < 12; at += 1) {
    const { title, href } = await finder.record(at);
    for (const query of [title, title.toUpperCase(), finder.fold(title.normalize("NFKC"))]) {
      const [first] = await results(page, query.replace(/^\[|\]$/g, ""));
      assert.equal(first?.href, site.address + href, query);
      checked += 1;
    }
  }
  assert.equal(checked, 36);
  const found = await results(page, "crack tower");
  assert.ok(found.length > 0);
  for (const { told } of found) assert.match(told, /crack/i);
  await page.close();
});

test("results come while a word is typed, each with kind, number, picture and the words found", async () => {
  const page = await open("search/");
  const [first] = await results(page, "OP 7.");
  assert.equal(first.number, "7");
  const sheets = await results(page, "perelaz foundation 7");
  assert.ok(sheets.some(({ kind, number, picture }) => kind.startsWith("Impression") && /^7\.\d+$/.test(number) && picture));
  assert.match(await status(page), /^Found: \d+$/);
  assert.deepEqual(await results(page, "zzzzqqq"), []);
  assert.equal(await status(page), "Nothing was found.");
  const some = await results(page, "perelaz zzzzqqq");
  assert.ok(some.length > 0);
  assert.match(await status(page), /^No record has all of these words\. Records with some of them: \d+$/);
  await page.close();
});

test("results are narrowed, and every count is the number of results that the choice leaves", async () => {
  const page = await open("search/?q=perelaz");
  await settled(page);
  await page.waitForSelector("form.narrow:not([hidden])");
  const all = Number(/\d+/.exec(await status(page))[0]);
  const offered = await page.$$eval("form.narrow select", (selects) =>
    selects.filter((select) => select.checkVisibility()).map(({ name, options }) => ({ name, values: [...options].slice(1).map(({ value, text }) => [value, Number(/\((\d+)\)$/.exec(text)[1])]) })),
  );
  assert.ok(offered.length >= 5, JSON.stringify(offered.map(({ name }) => name)));
  const kinds = offered.find(({ name }) => name === "kind").values;
  assert.equal(kinds.reduce((sum, [, count]) => sum + count, 0), all);
  for (const { name, values } of offered) {
    const [value, count] = values[0];
    await page.select(`form.narrow select[name=${name}]`, value);
    await settled(page);
    const left = new URL(page.url()).searchParams.get(name);
    assert.equal(left, value);
    assert.equal(await status(page), count === all ? `Found: ${all}` : `${count} of ${all}`, `${name} ${value}`);
    await page.select(`form.narrow select[name=${name}]`, "");
    await settled(page);
  }
  // Two choices at once; and the address gives the same to a colleague.
  await page.select("form.narrow select[name=kind]", "impression");
  await settled(page);
  const holder = await page.$eval("form.narrow select[name=holder]", ({ options }) => options[1].value);
  await page.select("form.narrow select[name=holder]", holder);
  await settled(page);
  const said = await status(page);
  const numbers = (await shown(page)).map(({ number }) => number);
  assert.ok(numbers.length > 0 && numbers.every((number) => /\.\d+$/.test(number)));
  const colleague = await open(`search/${new URL(page.url()).search}`);
  await settled(colleague);
  assert.equal(await status(colleague), said);
  assert.deepEqual((await shown(colleague)).map(({ number }) => number), numbers);
  await colleague.close();
  await page.close();
});

test("the search page is used by keyboard alone, and says what it found", async () => {
  const page = await open("search/");
  assert.equal(await page.$eval("#results [role=status]", (said) => said.getAttribute("role")), "status");
  await page.keyboard.press("/");
  assert.equal(await page.evaluate(() => document.activeElement.id), "seek");
  await page.keyboard.type("perelaz");
  await settled(page);
  const links = (await shown(page)).map(({ href }) => href);
  const focused = () => page.evaluate(() => document.activeElement.href ?? document.activeElement.id);
  await page.keyboard.press("ArrowDown");
  assert.equal(await focused(), links[0]);
  await page.keyboard.press("ArrowDown");
  assert.equal(await focused(), links[1]);
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("ArrowUp");
  assert.equal(await focused(), "seek");
  // "Show more" goes on at the first of the new results.
  const before = links.length;
  await page.focus("button.more");
  await page.keyboard.press("Enter");
  await page.waitForFunction((count) => document.querySelectorAll("#results ol > li").length > count, {}, before);
  assert.equal(await focused(), (await shown(page))[before].href);
  await page.close();
});

test("the field in the head of a page offers results, and loads nothing before it is used", async () => {
  const page = await open("design/7/");
  const asked = [];
  page.on("request", (request) => asked.push(request.url()));
  await page.evaluate(() => document.body.click());
  assert.deepEqual(asked, []);
  await page.keyboard.press("/");
  assert.equal(await page.evaluate(() => document.activeElement.id), "page_seek");
  await page.keyboard.type("OP 14");
  const answered = (text) => page.waitForFunction((text) => document.querySelector("#page_seek_results [role=option]")?.textContent.startsWith(text), {}, text);
  await answered("14");
  const field = () =>
    page.$eval("#page_seek", (input) => ({
      role: input.getAttribute("role"),
      expanded: input.getAttribute("aria-expanded"),
      active: document.getElementById(input.getAttribute("aria-activedescendant"))?.textContent ?? null,
      label: input.labels[0].textContent,
    }));
  assert.deepEqual(await field(), { role: "combobox", expanded: "true", active: null, label: "Search" });
  assert.match(await page.$eval("form.seek [role=status]", (said) => said.textContent), /^Found: \d+$/);
  const options = await page.$$eval("#page_seek_results [role=option]", (all) => all.map(({ textContent }) => textContent));
  assert.ok(options[0].startsWith("14") && options[0].includes("Design: "), options[0]);
  await page.keyboard.press("ArrowDown");
  assert.equal((await field()).active, options[0]);
  await page.keyboard.press("ArrowUp");
  assert.equal((await field()).active, null);
  await page.keyboard.press("Escape");
  assert.equal((await field()).expanded, "false");
  await page.keyboard.type(".");
  await page.waitForFunction(() => document.querySelector("#page_seek").getAttribute("aria-expanded") === "true");
  await answered("14");
  await page.keyboard.press("ArrowDown");
  await Promise.all([page.waitForNavigation(), page.keyboard.press("Enter")]);
  assert.match(page.url().replace(site.address, ""), /^design\/14\/$/);
  // The last option, and Enter without a choice, lead to the search page.
  await page.type("#page_seek", "perelaz");
  await page.waitForSelector("#page_seek_results .all");
  await Promise.all([page.waitForNavigation(), page.keyboard.press("Enter")]);
  assert.equal(page.url(), `${site.address}search/?q=perelaz`);
  await settled(page);
  assert.ok((await shown(page)).length > 0);
  // A slash typed into a field is a slash.
  await page.focus("#seek");
  await page.keyboard.type("/");
  assert.match(await page.$eval("#seek", ({ value }) => value), /\/$/);
  await page.close();
});

test("without scripts the form leads to the indexes", async () => {
  const page = await open("design/7/", { withScripts: false });
  await page.type("#page_seek", "ferry");
  await Promise.all([page.waitForNavigation(), page.keyboard.press("Enter")]);
  assert.equal(page.url(), `${site.address}search/?q=ferry`);
  const links = await page.$$eval("#indexes ~ .matter a", (all) => all.map(({ href }) => href));
  for (const overview of ["designs", "titles", "holders", "people", "marks", "literature", "concordance"]) {
    assert.ok(links.includes(`${site.address}${overview}/`), overview);
  }
  assert.match(await page.$eval("#indexes ~ .matter", ({ textContent }) => textContent), /needs a script/);
  assert.equal(await page.$eval("#results", (part) => part.checkVisibility()), false);
  await page.close();
});

/** The site at the path of its own address, with `404.html` for what is not there, as static hosts serve it. */
async function hosted() {
  const opening = await readFile(join(folder, "index.html"), "utf8");
  const base = new URL(/rel="canonical" href="([^"]+)"/.exec(opening)[1]).pathname.replace(/\/*$/, "/");
  const types = { ".html": "text/html", ".css": "text/css", ".js": "text/javascript", ".json": "application/json", ".svg": "image/svg+xml", ".jpg": "image/jpeg" };
  const server = createServer(async (request, response) => {
    const path = decodeURIComponent(new URL(request.url, "http://x").pathname);
    let file = join(folder, path.startsWith(base) ? path.slice(base.length) : "absent");
    if (path.endsWith("/")) file = join(file, "index.html");
    try {
      const bytes = await readFile(file);
      response.writeHead(200, { "content-type": `${types[extname(file)]}; charset=utf-8` }).end(bytes);
    } catch {
      response.writeHead(404, { "content-type": "text/html; charset=utf-8" }).end(await readFile(join(folder, "404.html")));
    }
  });
  await new Promise((ready) => server.listen(0, "127.0.0.1", ready));
  return { address: `http://127.0.0.1:${server.address().port}${base}`, stop: () => new Promise((stopped) => server.close(stopped)) };
}

test("a page that is not there searches for what was asked", async () => {
  const host = await hosted();
  const wrong = [];
  try {
    for (const [path, words, href] of [
      ["impression/7.5.html", "7.5", "impression/7.5/"],
      ["w-4", "w 4", "design/7/"],
      ["holder/kelder_museum/", "kelder museum", "holder/kelder-museum/"],
    ]) {
      const page = await browser.newPage();
      page.on("pageerror", (error) => wrong.push(`${path}: ${error.message}`));
      page.on("response", (response) => {
        if (response.status() >= 400 && !response.url().endsWith(path)) wrong.push(`${path}: ${response.url()}`);
      });
      await page.goto(host.address + path, { waitUntil: "load" });
      await settled(page);
      assert.equal(await page.$eval("#seek", ({ value }) => value), words);
      const found = await shown(page);
      assert.ok(found.slice(0, 3).some((one) => one.href.startsWith(host.address + href)), `${path}: ${JSON.stringify(found.slice(0, 3))}`);
      assert.equal(page.url(), host.address + path, "the address that was asked stays");
      assert.match(await page.$eval("h1", ({ textContent }) => textContent), /no page/);
      await page.close();
    }
  } finally {
    await host.stop();
  }
  assert.deepEqual(wrong, []);
});

test("results can be read by everybody, in the head and on the page", async () => {
  const axe = await readFile(require.resolve("axe-core/axe.min.js"), "utf8");
  const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
  const found = [];
  const host = await hosted();
  for (const [width, scheme] of [[390, "light"], [1280, "dark"], [1280, "light"]]) {
    for (const path of ["search/?q=perelaz", "holders/", "impression/7.999/"]) {
      const isMissing = path.startsWith("impression");
      const page = isMissing ? await browser.newPage() : await listen(browser, site.address, faults);
      await page.setBypassCSP(true);
      await page.setViewport({ width, height: 900 });
      await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
      await page.goto((isMissing ? host.address : site.address) + path, { waitUntil: "load" });
      if (path.startsWith("search") || isMissing) {
        await settled(page);
        await page.waitForSelector("form.narrow:not([hidden])");
      } else {
        await page.type("#page_seek", "perelaz");
        await page.waitForSelector("#page_seek_results [role=option]");
        await page.keyboard.press("ArrowDown");
      }
      const wide = await page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);
      if (wide) found.push(`${path} at ${width}: scrolls sideways`);
      await page.evaluate(axe);
      const { violations } = await page.evaluate((tags) => axe.run(document, { runOnly: { type: "tag", values: tags } }), tags);
      for (const { id, nodes } of violations) found.push(`${path} at ${width} ${scheme}: ${id}: ${nodes.slice(0, 2).map((n) => n.html.slice(0, 160)).join(" … ")}`);
      await page.close();
    }
  }
  await host.stop();
  assert.deepEqual(found, []);
});

test("nothing went wrong in the browser meanwhile", () => {
  assert.deepEqual(faults, []);
});
