// The identification key in the browser. For random answers on every design of the demonstration its script
// computes what `keyblock identify --json` computes, to a billionth; and the page shows the result, keeps the
// answers in its address, and works without scripts.

import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { cp, mkdir, mkdtemp, readFile, rm } from "node:fs/promises";
import { createRequire } from "node:module";
import { availableParallelism, tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { after, before, test } from "node:test";
import { launch, listen } from "./browser.mjs";
import { pagesOf, serve } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";
const catalogue = process.env.CATALOGUE ?? "demo-site";
const keyblock = resolve(process.env.KEYBLOCK ?? "target/release/keyblock");
const SETS = 200;
const CLOSE = 1e-9;
const run = promisify(execFile);
const require = createRequire(import.meta.url);
let browser;
let site;
let designs;

before(async () => {
  [browser, site] = [await launch(), await serve(folder)];
  // Without the pages at former addresses, which lead on.
  const pages = (await pagesOf(folder)).map((f) => /^design\/([^/]+)\/key\/index\.html$/.exec(f)?.[1]);
  designs = pages.filter(Boolean);
});
after(async () => {
  await browser?.close();
  await site?.stop();
});

/** Pseudo-random numbers, the same at every run (mulberry32). */
function dice(seed) {
  let state = seed;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return { next, below: (n) => Math.floor(next() * n) };
}

/** Random answers to a table's points: several values, none of some, every certainty, measures. */
function answersTo(table, die) {
  const open = table.points.map((_, at) => at);
  const wanted = 1 + die.below(Math.min(open.length, 6));
  const answers = [];
  while (answers.length < wanted) {
    const [at] = open.splice(die.below(open.length), 1);
    const point = table.points[at];
    const certainty = ["certain", "certain", "probable", "possible"][die.below(4)];
    if (!point.values) {
      const [low, high] = point.span ?? [100, 300];
      // Now and then beyond what any candidate shows; told to a tenth, as rules are read.
      const number = Math.round((low - 5 + die.next() * (high - low + 10)) * 10) / 10;
      answers.push({ key: point.key, sign: "=", values: [String(number)], certainty });
      continue;
    }
    const sign = die.below(4) === 0 ? "!=" : "=";
    const most = sign === "!=" ? point.values.length - 1 : point.values.length;
    const pool = [...point.values];
    const values = [];
    const several = die.below(2) === 0 ? 1 : 1 + die.below(most);
    while (values.length < several) values.push(...pool.splice(die.below(pool.length), 1));
    answers.push({ key: point.key, sign, values, certainty });
  }
  return answers;
}

const sure = ({ certainty }) => (certainty === "certain" ? "" : `:${certainty}`);
const forAddress = (answers) => `#see=${answers.map((a) => `${a.key}${a.sign}${a.values.join("|")}${sure(a)}`).join(",")}`;
const forCommand = (answers) => answers.flatMap((a) => ["--see", `${a.key}${a.sign}${a.values.join(",")}${sure(a)}`]);

/** The records of one design alone, without pictures: what they refer to has no part in a key, and to
 *  read the literature for each of some thousand runs would take most of the time. */
async function recordsOf(design, to) {
  const own = join("records", "designs", design);
  await mkdir(join(to, own), { recursive: true });
  await cp(join(catalogue, "catalogue.toml"), join(to, "catalogue.toml"));
  await cp(join(catalogue, own), join(to, own), { recursive: true, filter: (path) => !/[\\/]pictures([\\/]|$)/.test(path) });
}

/** The differences between the results of the command and of the page for the same answers. */
function differences(table, said, ours) {
  const found = [];
  const name = ({ state, printing }) => `${state ?? "-"}/${printing ?? "-"}`;
  const places = new Map(table.candidates.map((candidate, at) => [name(candidate), at]));
  const keys = (points) => points.map((at) => table.points[at].key).join();
  const near = (what, mine, theirs) => {
    if (!(Math.abs(mine - theirs) <= CLOSE)) found.push(`${what}: ${mine} for ${theirs}`);
  };
  const falls = (what, weights) => {
    if (weights.some((weight, at) => at > 0 && weight > weights[at - 1] + CLOSE)) found.push(`${what} do not fall`);
  };
  if (said.candidates.length !== ours.candidates.length) found.push("other candidates");
  falls("weights of candidates", said.candidates.map(({ weight }) => weight));
  for (const candidate of said.candidates) {
    const mine = ours.candidates[places.get(name(candidate))];
    if (!mine) return [`no candidate ${name(candidate)}`];
    near(name(candidate), mine.weight, candidate.weight);
    if (mine.excludedBy.length > 0 !== candidate.excluded) found.push(`${name(candidate)}: excluded or not`);
    for (const [what, mine_, theirs] of [["excluded by", mine.excludedBy, candidate.excluded_by], ["against", mine.against, candidate.against], ["for", mine.inFavour, candidate.for]]) {
      if (keys(mine_) !== theirs.join()) found.push(`${name(candidate)}: ${what} ${keys(mine_)} for ${theirs}`);
    }
  }
  for (const [axis, key] of [["states", "state"], ["printings", "printing"]]) {
    if (said[axis].length !== ours[axis].length) found.push(`other ${axis}`);
    falls(`weights of ${axis}`, said[axis].map(({ weight }) => weight));
    for (const row of said[axis]) {
      const mine = ours[axis][table[axis].findIndex((one) => one.key === row[key])];
      if (!mine) return [`no ${key} ${row[key]}`];
      near(row[key], mine.weight, row.weight);
      if (mine.excluded !== row.excluded) found.push(`${row[key]}: excluded or not`);
    }
  }
  if (said.next.length !== ours.next.length) found.push(`${ours.next.length} next points for ${said.next.length}`);
  said.next.forEach(({ point, bits }, at) => {
    const mine = ours.next.find((next) => table.points[next.point].key === point);
    if (!mine) return found.push(`no next point ${point}`);
    near(point, mine.bits, bits);
    // The same order, save where the last digits of equal numbers decide it.
    const there = ours.next[at];
    if (there && table.points[there.point].key !== point && Math.abs(there.bits - bits) > 1e-11) found.push(`${point} is not in place ${at + 1}`);
  });
  return found;
}

const FITS = { best: "fits best", level: "level with the best", excluded: "excluded", "no-printing": "not in a recorded printing that fits", "nothing-to-compare": "nothing recorded to compare", "nothing-told": "not distinguished" };

/** The differences between the states as the command prints them for people and as the page ranks them. */
function differencesInWords(table, printed, evidence) {
  if (!evidence.distinguished.states) return printed.includes("does not distinguish the states") || table.states.length < 2 ? [] : ["the states are distinguished"];
  const part = printed.slice(printed.indexOf("\nState\n"), printed.indexOf("\n\n", printed.indexOf("\nState\n") + 1));
  const theirs = part.split("\n").filter((line) => /^ {2}\S/.test(line)).map((line) => line.trim().replace(/^.* (\S+): /, "$1: "));
  const ours = evidence.states.map(({ at, fit }) => `${table.states[at].key ?? "design"}: ${FITS[fit] ?? fit.replaceAll("-", " ")}`);
  return theirs.join("|") === ours.join("|") ? [] : [`${ours.join("|")} for ${theirs.join("|")}`];
}

test("the page and the command make the same of the same answers", async () => {
  assert.ok(designs.length >= 20, `only ${designs.length} designs have a key`);
  const scratch = await mkdtemp(join(tmpdir(), "keyblock-key-"));
  const faults = [];
  let compared = 0;
  let excluded = 0;
  try {
    const page = await listen(browser, site.address, faults);
    const jobs = [];
    for (const [at, design] of designs.entries()) {
      await page.goto(`${site.address}design/${design}/key/`, { waitUntil: "load" });
      const table = await page.evaluate(() => JSON.parse(document.getElementById("key_data").textContent));
      const die = dice(20261125 + at);
      const sets = Array.from({ length: SETS }, () => answersTo(table, die));
      const results = await page.evaluate(
        (table, fragments) => {
          const findings = (answers) => {
            const weighed = globalThis.keyblock.weigh(table, answers);
            return { weighed, evidence: globalThis.keyblock.evidence(table, weighed) };
          };
          return fragments.map((fragment) => {
            const { answers, unknown } = globalThis.keyblock.read(table, fragment);
            return { unknown, back: globalThis.keyblock.write(table, answers), ...findings(answers) };
          });
        },
        table,
        sets.map(forAddress),
      );
      const records = join(scratch, design);
      await recordsOf(design, records);
      sets.forEach((answers, set) => jobs.push({ design, records, table, answers, set, ...results[set] }));
    }
    const work = async () => {
      for (let job = jobs.pop(); job !== undefined; job = jobs.pop()) {
        const { design, records, table, answers, unknown, back, weighed, evidence, set } = job;
        const said = await run(keyblock, ["identify", design, "--in", records, ...forCommand(answers), "--json"], { maxBuffer: 1 << 24 });
        const where = `${design} ${forAddress(answers)}`;
        if (unknown.length > 0) faults.push(`${where}: not understood: ${unknown}`);
        if (back !== forAddress(answers)) faults.push(`${where}: written as ${back}`);
        for (const fault of differences(table, JSON.parse(said.stdout), weighed)) faults.push(`${where}: ${fault}`);
        if (set % 20 === 0) {
          const printed = await run(keyblock, ["identify", design, "--in", records, ...forCommand(answers)], { maxBuffer: 1 << 24 });
          for (const fault of differencesInWords(table, printed.stdout, evidence)) faults.push(`${where}: ${fault}`);
        }
        compared += 1;
        excluded += weighed.nearest.length > 0 ? 1 : 0;
      }
    };
    await Promise.all(Array.from({ length: Math.min(availableParallelism(), 4) }, work));
  } finally {
    await rm(scratch, { recursive: true, force: true });
  }
  assert.equal(faults.length, 0, `${faults.length} faults\n${faults.slice(0, 30).join("\n")}`);
  assert.equal(compared, designs.length * SETS);
  assert.ok(excluded > 50, `only ${excluded} sets of answers excluded everything`);
});

/** The key of design 7 at a fragment, loaded anew. */
async function open(faults, fragment = "") {
  const page = await listen(browser, site.address, faults);
  await page.goto(`${site.address}design/7/key/${fragment}`, { waitUntil: "load" });
  return page;
}

/** Clicks what may lie below the line that stays in sight: scrolled to the middle of the window first. */
async function press(page, selector) {
  await page.$eval(selector, (element) => element.scrollIntoView({ block: "center" }));
  await page.click(selector);
}

const texts = (page, selector) => page.$$eval(selector, (found) => found.map((e) => e.textContent.replace(/\s+/g, " ").trim()));

test("answers are restored from the address, with what they exclude and why", async () => {
  const faults = [];
  const page = await open(faults, "#see=beam=present,crack=none|edge:probable,image-height=245.5");
  const state = await page.evaluate(() => ({
    beam: [...document.querySelectorAll("#see-beam input:checked")].map((i) => i.value),
    crack: [...document.querySelectorAll("#see-crack input:checked")].map((i) => i.value),
    sure: document.querySelector("#see-crack select").value,
    height: document.querySelector("#see-image-height input").value,
    buoy: [...document.querySelectorAll("#see-buoy input:checked")].map((i) => i.name),
  }));
  assert.deepEqual(state, { beam: ["present"], crack: ["none", "edge"], sure: "probable", height: "245.5", buoy: [] });
  const states = await texts(page, ".of-states > li");
  assert.match(states[0], /^ii\/v level with the best ?for, matrix Does a pale beam run from the lantern to the left edge\? present; recorded: present/);
  const [excluded] = states.filter((line) => line.startsWith("i/v excluded"));
  assert.match(excluded ?? "", /excludes, matrix Does a pale beam run from the lantern to the left edge\? present; recorded: absent/);
  assert.ok(states.some((line) => /^v\/v excluded.*245\.5 mm; recorded: 232 mm/.test(line)), states.join("\n"));
  const printings = await texts(page, ".of-printings > li");
  assert.match(printings[0], /^Printed by the artist with ii\/v/);
  assert.ok((await texts(page, ".result")).every((text) => !/%|\bbits?\b/.test(text)), "no percentage and no bits are shown");
  assert.match((await texts(page, ".change"))[0], /What would change this .*anything else excludes it/);
  assert.match((await texts(page, ".always"))[0], /It may be none of these/);
  assert.match((await texts(page, ".status"))[0], /^2 of 6 possibilities remain\. Look next: /);
  assert.equal((await page.$$(".look-here:not([hidden])")).length, 1);

  // The address may change under the page.
  await page.evaluate(() => (location.hash = "#see=gulls!=5,nonsense=1"));
  await page.waitForFunction(() => document.querySelector("#see-gulls input[name=not]").checked);
  assert.deepEqual(await texts(page, ".not-understood"), ["Part of this page’s address was not understood and is ignored: nonsense=1"]);
  assert.deepEqual(faults, []);
  await page.close();
});

test("nothing is ticked beforehand, and what cannot be seen is an answer like the others", async () => {
  const faults = [];
  const page = await open(faults);
  assert.equal(await page.$$eval("form.examine input:checked", (all) => all.length), 0);
  const styles = await page.$eval("#see-buoy", (question) => {
    const labels = [...question.querySelectorAll(".answers label")];
    const shown = labels.map((label) => [getComputedStyle(label).color, getComputedStyle(label.querySelector("input")).appearance, label.querySelector("input").type].join());
    return { shown: new Set(shown).size, last: labels.at(-1).querySelector("input").name };
  });
  assert.deepEqual(styles, { shown: 1, last: "unseen" });
  assert.deepEqual(faults, []);
  await page.close();
});

test("the question to look at next stands first, and questions move only when the reader asks", async () => {
  const faults = [];
  const page = await open(faults);
  const first = () => page.$eval(".questions > li", (question) => question.id);
  const next = () => page.$eval(".look-here:not([hidden])", (text) => text.closest("li").id);
  assert.equal(await first(), await next());
  const before = await page.$$eval(".questions > li", (all) => all.map(({ id }) => id));
  await press(page, `#${before[0]} .answers input`);
  const order = await page.$$eval(".questions > li", (all) => all.map(({ id }) => id));
  assert.deepEqual(order, before, "a question moved while it was answered");
  const wanted = await next();
  assert.notEqual(wanted, before[0]);
  await press(page, ".result .way");
  assert.equal(await first(), wanted);
  assert.equal(await page.evaluate(() => document.activeElement.closest(".questions > li").id), wanted);
  // An address with answers begins with what to look at next as well.
  const again = await open(faults, await page.evaluate(() => location.hash));
  assert.equal(await again.$eval(".questions > li", (question) => question.id), wanted);
  assert.deepEqual(faults, []);
  await Promise.all([page.close(), again.close()]);
});

test("answers are given by keyboard, kept in the address, and taken back", async () => {
  const faults = [];
  const page = await open(faults);
  await page.focus("#see-buoy input[value=present]");
  await page.keyboard.press("Space");
  assert.equal(await page.evaluate(() => location.hash), "#see=buoy=present");
  await page.select("#see-buoy select", "possible");
  assert.equal(await page.evaluate(() => location.hash), "#see=buoy=present:possible");
  assert.equal((await page.$$(".of-states > .out")).length, 0, "only what is certain excludes");
  await page.select("#see-buoy select", "certain");
  assert.equal((await page.$$(".of-states > .out")).length, 3);
  await press(page, ".result .way");
  assert.ok(await page.evaluate(() => document.activeElement.closest(".questions > li")?.querySelector(".look-here:not([hidden])") !== null));
  await press(page, "#see-buoy input[name=unseen]");
  assert.equal(await page.evaluate(() => location.hash), "#see=buoy=not-visible");
  assert.equal((await page.$$("#see-buoy input[value=present]:checked")).length, 0);
  await press(page, "#see-buoy input[name=unseen]");
  assert.equal(await page.evaluate(() => location.hash), "");
  await press(page, "#see-gulls input[value='3']");
  await page.click("button[type=reset]");
  assert.equal(await page.evaluate(() => location.hash), "");
  assert.equal((await page.$$(".of-states > .out")).length, 0);
  assert.deepEqual(faults, []);
  await page.close();
});

test("where all is excluded the nearest are shown, and matrices in different states are thought of", async () => {
  const faults = [];
  const page = await open(faults, "#see=beam=absent,buoy=absent");
  assert.match((await texts(page, ".status"))[0], /^No recorded state and printing fits all your answers\./);
  assert.equal((await texts(page, ".nearest-names > li")).length, 5);
  assert.match((await texts(page, ".mixed:not([hidden])"))[0], /may be in different states/);
  assert.equal((await page.$$(".next:not([hidden])")).length, 0);
  assert.deepEqual(faults, []);
  await page.close();
});

test("without script there is a key for paper, and no control that does nothing", async () => {
  const page = await browser.newPage();
  await page.setJavaScriptEnabled(false);
  await page.goto(`${site.address}design/7/key/`, { waitUntil: "load" });
  const text = await page.$eval("main", (main) => main.innerText);
  assert.match(text, /consistent with state ii\/v/);
  assert.match(text, /does not authenticate/);
  assert.equal((await page.$$("main :is(form, input, button, select)")).length, 0);
  const numbers = await texts(page, ".couplets .onward .goal a");
  const couplets = await page.$$eval(".couplets > li", (found) => found.map((li) => li.id));
  assert.ok(numbers.length > 0 && numbers.every((n) => couplets.includes(`couplet-${n}`)));
  await page.close();
});

test("the key works from a disk", async () => {
  const page = await browser.newPage();
  await page.goto(`${pathToFileURL(resolve(folder, "design/7/key/index.html"))}#see=gulls=5`, { waitUntil: "load" });
  assert.match((await texts(page, ".status"))[0], /^4 of 6 possibilities remain\./);
  await page.close();
});

test("a key with answers can be read by everybody, and does not scroll sideways", async () => {
  const axe = await readFile(require.resolve("axe-core/axe.min.js"), "utf8");
  const faults = [];
  const page = await listen(browser, site.address, faults);
  await page.setBypassCSP(true);
  for (const [width, scheme] of [[390, "light"], [390, "dark"], [1280, "light"], [1280, "dark"]]) {
    await page.setViewport({ width, height: 800 });
    await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
    for (const path of ["key/#see=gulls=5,crack=to-the-mast:probable", "key/#see=beam=absent,buoy=absent,nonsense=1", "key/sheet/"]) {
      await page.goto("about:blank");
      await page.goto(`${site.address}design/7/${path}`, { waitUntil: "load" });
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      if (wide > 0) faults.push(`${path} at ${width}: ${wide} px too wide`);
      await page.evaluate(axe);
      const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
      const { violations } = await page.evaluate((tags) => axe.run(document, { runOnly: { type: "tag", values: tags } }), tags);
      for (const { id, nodes } of violations) faults.push(`${path} at ${width} ${scheme}: ${id}: ${nodes.slice(0, 2).map((n) => n.html.slice(0, 160)).join(" … ")}`);
    }
  }
  assert.equal(faults.length, 0, faults.join("\n"));
  await page.close();
});
