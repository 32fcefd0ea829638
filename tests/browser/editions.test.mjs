// From one edition of the demonstration catalogue to the next. A copy is issued as edition 3; states, sheets, holders,
// keys, numbers and pictures change; edition 4 is issued. Then every address of edition 3 still answers, pages, feed and
// concordance tell what changed, citations of both editions are understood, and nothing goes without a reason.

import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { cp, mkdtemp, readFile, readdir, rename, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { launch, listen } from "./browser.mjs";
import { until } from "./proof.mjs";
import { filesOf, serve } from "./site.mjs";

const PROGRAM = process.env.KEYBLOCK ?? join(process.env.CARGO_TARGET_DIR ?? "target", "release/keyblock");
const ADDRESS = "https://perelaz.example.org/prints/";
/** One small photograph, which stands for all of them, so that a compile takes seconds. */
const PHOTOGRAPH = "demo-site/records/designs/7/pictures/6-red-seal.jpg";
const LEADS_ON = '<meta http-equiv="refresh"';

const faults = [];
let folder;
let web;
let browser;
let site;
let page;
/** What edition 3 published: its files, the addresses of its site map, and the places in its pages. */
let third;

before(async () => {
  folder = await mkdtemp(join(tmpdir(), "keyblock-editions-"));
  web = join(folder, "web");
  for (const part of ["catalogue.toml", "register.toml", "records"]) {
    await cp(join("demo-site", part), join(folder, part), { recursive: true });
  }
  const photograph = await readFile(PHOTOGRAPH);
  const records = await filesOf(join(folder, "records"));
  const pictures = records.filter((file) => file.endsWith(".jpg"));
  assert.ok(pictures.length > 100, `${pictures.length} pictures`);
  for (const file of pictures) await writeFile(join(folder, "records", file), photograph);
  browser = await launch();
});

after(async () => {
  await browser?.close();
  await site?.stop();
  if (folder) await rm(folder, { recursive: true });
});

/** Runs the program; gives its exit code and what it wrote. */
async function run(...words) {
  const child = spawn(PROGRAM, words, { stdio: ["ignore", "pipe", "pipe"] });
  let out = "";
  let said = "";
  child.stdout.on("data", (text) => (out += text));
  child.stderr.on("data", (text) => (said += text));
  const code = await new Promise((resolve, reject) => {
    child.on("error", reject);
    child.on("close", resolve);
  });
  return { code, out, said };
}

async function done(...words) {
  const ran = await run(...words);
  assert.equal(ran.code, 0, `keyblock ${words.join(" ")}: ${ran.said}`);
  return ran;
}

/** Replaces a passage of a file that stands there once. */
async function edit(path, passage, by) {
  const file = join(folder, path);
  const text = await readFile(file, "utf8");
  assert.equal(text.split(passage).length, 2, `${passage} in ${path}`);
  await writeFile(file, text.replace(passage, () => by));
}

const published = (path) => readFile(join(web, path), "utf8");

/** The text of a page or of a part of one, as a reader sees it, without the space between its elements. */
const plain = (html) =>
  html
    .replace(/<[^>]*>/g, "")
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, "&")
    .replace(/\s+/g, " ")
    .trim();

/** The text of what stands at the place `id` of a page: the element, up to its end. */
function at(html, id) {
  const [, tag] = new RegExp(`<(\\w+)[^>]* id="${id}"`).exec(html) ?? [];
  assert.ok(tag, `no place ${id}`);
  const from = html.search(new RegExp(`<${tag}[^>]* id="${id}"`));
  return plain(html.slice(from, html.indexOf(`</${tag}>`, from)));
}

/** The places of a page that citations name: parts of a design, conditions of a mark, numbers of an earlier catalogue. */
function places(file, html) {
  const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
  if (/^lit\/[^/]+\/index\.html$/.test(file)) return ids.filter((id) => /\d/.test(id));
  return ids.filter((id) => /^(state|printing|variant|matrix|point|condition)-/.test(id));
}

/** The page, as its path, at which a reader of `path` arrives. */
async function arrival(path) {
  const html = await published(`${path}index.html`);
  if (!html.includes(LEADS_ON)) return { path, html };
  const [, to] = /<link rel="canonical" href="([^"]+)">/.exec(html);
  assert.ok(to.startsWith(ADDRESS), `${path} leads to ${to}`);
  const there = to.slice(ADDRESS.length);
  const arrived = await published(`${there}index.html`);
  assert.ok(!arrived.includes(LEADS_ON), `${path} leads to ${there}, which leads on`);
  return { path: there, html: arrived };
}

/** Each file of a folder with a digest of its bytes. */
async function digests(of) {
  const lines = [];
  for (const file of await filesOf(of)) {
    lines.push(`${file} ${createHash("sha256").update(await readFile(join(of, file))).digest("hex")}`);
  }
  return lines;
}

/** Opens an address of the site; gives the path with fragment at which the reader arrives, and what is there. */
async function visit(path, expected = path) {
  await page.goto(site.address + path, { waitUntil: "load" });
  await until(`${expected} from ${path}`, () => page.url() === site.address + expected);
  await page.waitForFunction(() => document.readyState === "complete");
  return page.evaluate(() => ({
    heading: document.querySelector("h1").textContent,
    standing: document.querySelector(".standing")?.textContent ?? "",
    text: document.querySelector("main").textContent,
    target: document.querySelector(":target")?.id ?? "",
  }));
}

test("edition 3 is issued, with the register of the demonstration", async () => {
  await edit("catalogue.toml", 'edition = "2"', 'edition = "3"');
  await edit("catalogue.toml", 'dated = "2026-10-15"', 'dated = "2027-03-01"');
  await edit("records/designs/16/impressions/6.toml", "the upper corners creased", "the upper corners flattened");
  const { said, out } = await done("issue", folder);
  assert.match(said + out, /edition 3 is issued/);
  const files = await filesOf(web);
  const sitemap = await published("sitemap.xml");
  const addresses = [...sitemap.matchAll(/<loc>([^<]+)<\/loc>/g)].map(([, loc]) => loc);
  assert.ok(addresses.length > 400 && addresses.every((loc) => loc.startsWith(ADDRESS)), `${addresses.length}`);
  const paths = addresses.map((loc) => loc.slice(ADDRESS.length));
  const cited = new Map();
  for (const path of paths) cited.set(path, places(`${path}index.html`, await published(`${path}index.html`)));
  assert.ok(cited.get("design/24/").includes("state-bolt") && cited.get("design/22/").includes("state-boat-gone"));
  third = { files, paths, cited };
});

test("records change, and edition 4 is issued", async () => {
  const designs = "records/designs";
  // A state is found between two others.
  await edit(
    `${designs}/22/design.toml`,
    '[[states]]\nkey = "boat-gone"',
    '[[states]]\nkey = "boat-alone"\ndate = "1936"\nby = "perelaz"\nsummary = "The oars cut from the key block."\n' +
      'shows = { boat = "present", split = "edge" }\n\n[[states]]\nkey = "boat-gone"',
  );
  // Two records were one sheet.
  await edit(`${designs}/17/impressions/10.toml`, "maybe_same_as", "same_as");
  // A design is withdrawn in favour of another.
  await edit(
    `${designs}/19/design.toml`,
    'number = "19"\ndate',
    'number = "19"\nstanding = "withdrawn"\nwhy = "The blocks were cut by a pupil."\nsee = ["design:15"]\ndate',
  );
  // Two records were one museum; another museum is taken over, and one of its sheets has moved already.
  await rm(join(folder, "records/holders/ferrisport.toml"));
  await edit("records/holders/holmsted.toml", "name =", 'was = ["ferrisport"]\nname =');
  const takeover = 'successor = { holder = "corvallen", date = "2026-06-01" }\n';
  await edit("records/holders/saint-ronan.toml", "name =", `${takeover}name =`);
  await edit(
    `${designs}/16/impressions/3.toml`,
    'holder = "saint-ronan"\naccession = "80.2"',
    'holder = "corvallen"\naccession = "2026.80"\n' +
      'former_accessions = [{ holder = "saint-ronan", number = "80.2", until = "2026" }]',
  );
  // The owner of a sheet withdraws the consent to publish it.
  await edit(`${designs}/13/impressions/4.toml`, "status =", "publish = false\nstatus =");
  // A number changes; the keys of a design and of a state; the name of a picture.
  await edit(`${designs}/27/design.toml`, 'number = "27"\ndate', 'number = "31"\ndate');
  await edit(`${designs}/26/design.toml`, 'number = "26"\ndate', 'number = "26a"\ndate');
  await done("rename", "design", "24", "thunderhead", "--in", folder);
  await done("rename", "state", "2/rifts", "broken-smoke", "--in", folder);
  await done("rename", "picture", "16.3/recto", "front", "--in", folder);
  await edit("catalogue.toml", 'edition = "3"', 'edition = "4"');
  await edit("catalogue.toml", 'dated = "2027-03-01"', 'dated = "2028-05-02"');
  const { said, out } = await done("issue", folder);
  assert.match(said + out, /edition 4 is issued/);
  site = await serve(web);
  page = await listen(browser, site.address, faults);
});

test("every file and every place of edition 3 is where it was, or where its address leads", async () => {
  const now = new Set(await filesOf(web));
  // Sizes of pictures are named by their content; the index of the search belongs to its script.
  const isLoose = (file) => /^picture\/[^/]+$/.test(file) || /^search\/.+\.json$/.test(file);
  // Tiles of a picture that has another address: `info.json` says where they are.
  const isMovedTile = (file) => /^picture\/(24\.\d+|16\.3)\/recto\/.+\/default\.jpg$/.test(file);
  // What is not published any more has a page, and no files.
  const isWithheld = (file) => /^(impression|picture)\/13\.4\//.test(file) && file !== "impression/13.4/index.html";
  const gone = third.files.filter((file) => !now.has(file));
  assert.ok(gone.some(isMovedTile), "no picture has moved");
  assert.deepEqual(gone.filter((file) => !isLoose(file) && !isMovedTile(file) && !isWithheld(file)), []);
  assert.match(await published("design/19/lido.xml"), /impression\/19\.2\/.*Withdrawn\. The blocks were cut by a pupil\./s);
  for (const [picture, is] of [
    ["24.2/recto", "thunderhead.2/recto"],
    ["16.3/recto", "16.3/front"],
  ]) {
    const { id } = JSON.parse(await published(`picture/${picture}/info.json`));
    assert.equal(id, `${ADDRESS}picture/${is}`);
    assert.ok(now.has(`picture/${is}/info.json`));
  }

  const lost = [];
  let checked = 0;
  for (const [path, cited] of third.cited) {
    const { html, path: there } = await arrival(path);
    for (const id of cited) {
      checked += 1;
      if (!html.includes(` id="${id}"`)) lost.push(`${path}#${id} is not at ${there}`);
    }
  }
  assert.ok(checked > 400, `${checked} places`);
  assert.deepEqual(lost, []);
});

test("in a browser each changed address of edition 3 leads to its record, and keeps the place", async () => {
  const moved = new Map([
    ["holder/ferrisport/", "holder/holmsted/"],
    ["impression/17.11/", "impression/17.10/"],
  ]);
  for (const path of third.paths) {
    const [, kind, rest] = /^(design|impression)\/24([/.].*)$/.exec(path) ?? [];
    if (kind) moved.set(path, `${kind}/thunderhead${rest}`);
  }
  assert.ok(moved.size > 12, `${moved.size} pages moved`);
  // Nothing else of edition 3 leads on that did not before.
  for (const path of third.paths) {
    if (!moved.has(path)) assert.equal((await arrival(path)).path, path);
  }
  for (const [from, to] of moved) {
    const { heading, text } = await visit(from, to);
    if (/^(design|impression)\/thunderhead/.test(to)) assert.match(text, /Thunderhead/, from);
    if (to.startsWith("holder/")) assert.equal(heading, "Holmsted Museum of Art");
  }
  // Servers that read the list of former addresses lead to the same pages.
  const { redirects } = JSON.parse(await published("redirects/redirects.json"));
  for (const [from, to] of moved) {
    const rule = redirects.find((one) => (one.folder ? from.startsWith(one.from) : from === one.from));
    assert.equal(rule && rule.to + from.slice(rule.from.length), to, from);
  }
  for (const [path, fragment] of [
    ["design/24/", "state-bolt"],
    ["design/24/", "printing-own"],
    ["design/24/", "matrix-cloud"],
    ["design/24/", "point-bolt"],
  ]) {
    const { target } = await visit(`${path}#${fragment}`, `design/thunderhead/#${fragment}`);
    assert.equal(target, fragment);
  }
  // The key of a state alone, now and in edition 1 together with that of its design.
  for (const [from, to] of [
    ["design/2/#state-rifts", "design/2/#state-rifts"],
    ["design/12-small/#state-etched", "design/12a/#state-etched"],
  ]) {
    const { target } = await visit(from, to);
    assert.equal(target, from.split("#")[1]);
  }
});

test("in a browser pages that stay say what has become of their record", async () => {
  const withdrawn = await visit("design/19/");
  assert.match(withdrawn.heading, /The Fog Bell/);
  assert.match(withdrawn.standing, /Withdrawn\. The blocks were cut by a pupil\. See 15, Dredger in Fog/);
  const sheet = await visit("impression/19.2/");
  assert.match(sheet.text, /[Ww]ithdrawn/);
  const withheld = await visit("impression/13.4/");
  assert.equal(withheld.heading, "No longer published");
  assert.match(withheld.text, /last published in edition 3, 1 March 2027/);
  const secret = /Brackwater|1949\.3|Foxing|9\/30/i.exec(await page.content());
  assert.equal(secret, null);
  const taken = await visit("holder/saint-ronan/");
  assert.match(taken.standing, /Corvallen Institute of Art/);
  const successor = await visit("holder/corvallen/");
  for (const number of ["16.3", "23.5", "3.6", "9.9"]) assert.ok(successor.text.includes(number), number);
  const state = await visit("design/22/#state-boat-gone");
  assert.equal(state.target, "state-boat-gone");
  const said = await page.$eval("#state-boat-gone", ({ textContent }) => textContent.replace(/\s+/g, " "));
  assert.match(said, /^iii .*Formerly ii \(edition 1, edition 2 and edition 3\)/);
  assert.ok(!/Formerly/.test(await page.$eval("#state-boat", ({ textContent }) => textContent)));
  const { text } = await visit("design/27/");
  assert.match(text, /Earlier number\s*27 \(edition 1, edition 2 and edition 3\)/);
  const joined = await visit("impression/17.10/");
  assert.ok(joined.text.includes("17.11"));
  const moved = await visit("impression/16.3/");
  assert.match(moved.text, /80\.2/);

  // A sample of the others, each at the address that it had.
  const others = third.paths.filter((path, place) => place % 30 === 0 && !/(^|\/)24[/.]|17\.11|ferrisport/.test(path));
  assert.ok(others.length > 12, `${others.length}`);
  for (const path of others) assert.ok((await visit(path)).heading.length > 0, path);
});

test("pages of changes and the feed carry each change", async () => {
  const changes = [
    ["design-22", /New: state ii\/iii\. Numerals: ii\/ii is now iii\/iii/],
    ["design-17", /17\.11: the same impression as 17\.10/],
    ["design-19", /Withdrawn/],
    ["design-16", /16\.3.*Gallery of the Bay.*Corvallen Institute of Art|16\.3.*Corvallen Institute of Art/],
    ["design-27", /Number 31, formerly 27/],
    ["design-26", /Number 26a, formerly 26/],
    ["design-thunderhead", /The identifier of the entry was 24/],
    ["design-2", /rifts/],
  ];
  const latest = await published("changes/index.html");
  const fourth = await published("edition/4/index.html");
  for (const [id, words] of changes) {
    assert.match(at(latest, `latest-${id}`), words);
    assert.match(at(fourth, `edition-${id}`), words);
  }
  for (const [html, name] of [[latest, "latest"], [fourth, "edition"]]) {
    assert.match(at(html, `${name}-holder-corvallen`), /16\.3/);
    assert.match(plain(html), /ferrisport now leads to Holmsted Museum of Art/);
    assert.match(plain(html), /Gallery of the Bay: now part of Corvallen Institute of Art/);
  }

  // Edition 3 tells what it changed itself, and what its numbers and numerals are now.
  const before = await published("edition/3/index.html");
  assert.match(plain(before), /1 March 2027/);
  assert.ok(!before.includes('id="edition-design-27"'));
  assert.match(at(before, "edition-design-16"), /^The Salt Pans ?16\.6: revised: the sheet\.$/);
  for (const row of [/22 ii\/ii ?22 iii\/iii/, /27 ?31, The Swept Channel/, /26 ?26a, /]) assert.match(plain(before), row);

  const feed = await published("changes/feed.atom");
  const entries = feed.split("<entry>").slice(1);
  const entry = (id) => entries.find((one) => one.includes(`<id>${ADDRESS}edition/${id}</id>`)) ?? assert.fail(`no entry ${id}`);
  assert.match(entry("4/"), /<title>Edition 4, 2 May 2028<\/title>/);
  assert.match(entry("3/"), /<title>Edition 3, 1 March 2027<\/title>/);
  for (const [id, words] of changes) assert.match(plain(entry(`4/#edition-${id}`)), words);
  assert.match(plain(entry("4/#edition-holder-corvallen")), /Corvallen Institute of Art.*Now recorded here: 16\.3/);
  assert.match(plain(entry("4/#edition-record-holder-ferrisport")), /ferrisport now leads to Holmsted Museum of Art/);

  const concordance = await published("concordance/index.html");
  const own = plain(concordance.slice(concordance.indexOf('id="own-editions"')));
  for (const row of [/22 iii\/iii ?22 ii ?22 ii ?22 ii ?22 iii/, /31, The Swept Channel ?27 ?27 ?27 ?31/, /12 bis ?12a ?12a ?12a/]) {
    assert.match(own, row);
  }
});

/** What citations of editions 1 to 4 mean in edition 4: the address, and how certain that is. */
const CITED = [
  ["OP 27", "design/27/", "certain"],
  ["OP 31", "design/27/", "certain"],
  ["OP 26 (edition 3)", "design/26/", "certain"],
  ["OP 26a", "design/26/", "certain"],
  ["OP 12 bis (edition 1)", "design/12a/", "certain"],
  ["OP 24", "design/thunderhead/", "certain"],
  ["OP 24 ii", "design/thunderhead/#state-bolt", "certain"],
  ["24.2", "impression/thunderhead.2/", "certain"],
  ["design:24", "design/thunderhead/", "certain"],
  [`${ADDRESS}design/24/#state-bolt`, "design/thunderhead/#state-bolt", "certain"],
  [`${ADDRESS}impression/24.2/`, "impression/thunderhead.2/", "certain"],
  [`${ADDRESS}design/2/#state-rifts`, "design/2/#state-broken-smoke", "certain"],
  ["holder:ferrisport", "holder/holmsted/", "certain"],
  [`${ADDRESS}holder/ferrisport/`, "holder/holmsted/", "certain"],
  ["OP 22 ii (edition 3)", "design/22/#state-boat-gone", "certain"],
  ["OP 22 ii (edition 4)", "design/22/#state-boat-alone", "certain"],
  ["OP 22 iii", "design/22/#state-boat-gone", "certain"],
  ["OP 22 ii", "design/22/#state-boat-alone", "probable"],
  ["17.11", "impression/17.10/", "certain"],
  ["Gallery of the Bay 80.2", "impression/16.3/", "certain"],
  ["Corvallen 2026.80", "impression/16.3/", "certain"],
];

test("citations of both editions are understood on the command line", async () => {
  const { out } = await done("resolve", "--json", "--in", folder, ...CITED.map(([asked]) => asked));
  const { results } = JSON.parse(out);
  const wrong = [];
  for (const [place, [asked, path, certainty]] of CITED.entries()) {
    assert.equal(results[place].asked, asked);
    const [first] = results[place].readings;
    if (first?.address !== ADDRESS + path || first.certainty !== certainty) {
      wrong.push(`${asked}: ${JSON.stringify(results[place].readings)}`);
    }
  }
  assert.deepEqual(wrong, []);
  // What was withdrawn or taken over is found, and said to be.
  const { out: fates } = await done("resolve", "--json", "--in", folder, "OP 19", "19.2", "holder:saint-ronan");
  const fate = JSON.parse(fates).results.map(({ readings: [{ standing, see, why }] }) => ({ standing, see, why }));
  const dredger = [`${ADDRESS}design/15/`];
  assert.deepEqual(fate.map(({ standing, see }) => [standing, see]), [
    ["withdrawn", dredger],
    ["withdrawn", dredger],
    ["taken-over", [`${ADDRESS}holder/corvallen/`]],
  ]);
  assert.match(fate[0].why, /withdrawn, see OP 15$/);
  const text = (await done("resolve", "--in", folder, "OP 19")).out;
  assert.match(text, /; withdrawn, see OP 15/);
  // A numeral that was another state's in an earlier edition is that one too, with less certainty.
  const both = results.find(({ asked }) => asked === "OP 22 ii").readings.map(({ state }) => state);
  assert.deepEqual(both, ["boat-alone", "boat-gone"]);
});

/** The queries whose first result in the search is not the record at `href`, of that kind. */
async function unfound(queries) {
  const wrong = [];
  await page.goto(`${site.address}search/`, { waitUntil: "load" });
  for (const [query, kind, href] of queries) {
    await page.$eval("#seek", (field) => (field.value = ""));
    await page.type("#seek", query);
    await page.waitForSelector('#results[aria-busy="false"]', { timeout: 10_000 });
    const found = await page.$$eval("#results ol > li", (entries) =>
      entries.slice(0, 3).map((one) => ({ kind: one.querySelector(".quiet").textContent, href: one.querySelector("a").href })),
    );
    const [first] = found;
    if (!first?.kind.startsWith(kind) || !first.href.startsWith(site.address + href)) {
      wrong.push(`${query}: not ${kind} ${href} but ${JSON.stringify(found)}`);
    }
  }
  return wrong;
}

test("the search in the browser finds numbers, numerals and keys of both editions", async () => {
  const wrong = await unfound([
    ["OP 31", "Design", "design/27/"],
    ["OP 26a", "Design", "design/26/"],
    ["OP 24", "Design", "design/thunderhead/"],
    ["thunderhead", "Design", "design/thunderhead/"],
    ["24.2", "Impression", "impression/thunderhead.2/"],
    ["ferrisport", "Holder", "holder/holmsted/"],
    ["Saint-Ronan 80.2", "Impression", "impression/16.3/"],
    ["OP 22 iii", "State", "design/22/#state-boat-gone"],
  ]);
  assert.deepEqual(wrong, []);
});

test("the search in the browser finds a design by the number that an earlier edition gave it", async () => {
  const wrong = await unfound([
    ["OP 27", "Design", "design/27/"],
    ["OP 26", "Design", "design/26/"],
    ["OP 12 bis", "Design", "design/12a/"],
  ]);
  assert.deepEqual(wrong, []);
});

test("nothing goes without a reason: the record is named, and the site and the register stand", async () => {
  const before = await digests(web);
  const register = await readFile(join(folder, "register.toml"));
  await edit("catalogue.toml", 'edition = "4"', 'edition = "5"');
  await edit("catalogue.toml", 'dated = "2028-05-02"', 'dated = "2029-01-15"');
  const kept = join(folder, "kept");
  for (const [path, record] of [
    ["records/designs/13/impressions/5.toml", "impression 13.5"],
    ["records/designs/25", "design 25"],
    ["records/holders/stara-prystan.toml", "holder “stara-prystan”"],
  ]) {
    await rename(join(folder, path), kept);
    for (const command of ["compile", "issue"]) {
      const { code, said, out } = await run(command, folder);
      assert.equal(code, 1, `${command} without ${path}: ${said}`);
      const finding = (said + out).split("\n\n").find((one) => one.includes("address-vanished"));
      assert.ok(finding, `${command} without ${path}: ${said}`);
      assert.ok(finding.includes(record), finding);
      assert.match(finding, new RegExp(`restore ${path.replaceAll(".", "\\.")}`));
      assert.match(finding, /“standing = "withdrawn"”|“was = /);
    }
    await rename(kept, join(folder, path));
  }
  assert.deepEqual(await digests(web), before);
  assert.ok(register.equals(await readFile(join(folder, "register.toml"))));
  assert.deepEqual((await readdir(folder)).sort(), [".keyblock", "catalogue.toml", "records", "register.toml", "web"]);
});

test("nothing went wrong in the browser meanwhile", () => {
  assert.deepEqual(faults, []);
});
