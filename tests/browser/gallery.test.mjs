// The gallery of a design is sifted by state, printing and kind of holder, with scripts and without.
// What should be left is taken from the captions and the holders' own pages, not from the classes that the
// filter uses.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { join, posix } from "node:path";
import { after, before, test } from "node:test";
import { launch, listen } from "./browser.mjs";
import { filesOf, serve } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";
const faults = [];
let browser;
let site;
let path;

before(async () => {
  [browser, site] = [await launch(), await serve(folder)];
  path = await richestGallery();
});
after(async () => {
  await browser?.close();
  await site?.stop();
});

/** The design whose gallery has the most answers to choose from. */
async function richestGallery() {
  let richest = { answers: 0 };
  for (const file of await filesOf(folder)) {
    if (!/^design\/[^/]+\/index\.html$/.test(file)) continue;
    const answers = (await readFile(join(folder, file), "utf8")).split('type="radio"').length;
    if (answers > richest.answers) richest = { answers, path: posix.dirname(file) + "/" };
  }
  assert.ok(richest.answers > 9, "no design has a gallery worth sifting");
  return richest.path;
}

async function open(withScripts, { width = 1280, fragment = "" } = {}) {
  const page = await listen(browser, site.address, faults);
  await page.setJavaScriptEnabled(withScripts);
  await page.setViewport({ width, height: 900 });
  await page.goto(site.address + path + fragment, { waitUntil: "load" });
  return page;
}

/** Every sheet of the gallery as a reader sees it: whether it is there, its states, its caption. */
const sheets = (page) =>
  page.$$eval("#gallery > li", (entries) =>
    entries.map((entry) => ({
      seen: entry.checkVisibility(),
      caption: entry.querySelector("figcaption").textContent,
      states: [...entry.querySelectorAll("figcaption .numeral")].map((numeral) => numeral.textContent.trim()),
      holder: entry.querySelector('figcaption a[href*="/holder/"]')?.getAttribute("href") ?? null,
    })),
  );

const answersTo = (page, question) =>
  page.$$eval(`.sift input[name="${question}"]`, (inputs) =>
    inputs.filter(({ value }) => value !== "").map(({ id, value, parentElement }) => ({ id, value, text: parentElement.textContent.trim() })),
  );

const choose = (page, id) => page.click(`.sift label:has(#${id})`);
const kinds = new Map();

/** What a holder's own page says it is. */
async function kindOf(holder) {
  if (!kinds.has(holder)) {
    const html = await readFile(join(folder, posix.join(path, holder), "index.html"), "utf8");
    kinds.set(holder, html.match(/<header class="head"><div class="hang"><p>([^<]*)/)[1]);
  }
  return kinds.get(holder);
}

for (const withScripts of [false, true]) {
  const how = withScripts ? "with scripts" : "without scripts";

  test(`each answer leaves the sheets it is true of, ${how}`, async () => {
    const page = await open(withScripts);
    const all = await sheets(page);
    assert.ok(all.length > 5 && all.every(({ seen }) => seen), "not every sheet is there to begin with");

    for (const { id, text } of await answersTo(page, "state")) {
      await choose(page, id);
      for (const { seen, states, caption } of await sheets(page)) {
        if (states.length < 2) assert.equal(seen, states[0] === text, `state ${text}: ${caption}`);
      }
    }
    await choose(page, "sall");
    for (const { id, text } of await answersTo(page, "printing")) {
      await choose(page, id);
      const left = await sheets(page);
      for (const { seen, caption } of left) if (seen) assert.ok(caption.includes(text), `${text}: ${caption}`);
      for (const { seen, caption } of left) if (caption.includes(`. ${text}`)) assert.ok(seen, `${text}: ${caption}`);
    }
    await choose(page, "pall");
    for (const { id, text } of await answersTo(page, "kind")) {
      await choose(page, id);
      const [here, away] = [new Set(), new Set()];
      for (const { seen, holder } of await sheets(page)) {
        if (holder) (seen ? here : away).add(await kindOf(holder));
      }
      assert.equal(here.size, 1, `${text}: ${[...here]}`);
      assert.ok(!away.has([...here][0]), `${text} leaves out a ${[...here][0]}`);
    }
    await page.close();
  });

  test(`answers add up and are taken back, ${how}`, async () => {
    const page = await open(withScripts, { width: 390 });
    const seen = async () => (await sheets(page)).filter((sheet) => sheet.seen);
    const all = (await seen()).length;
    const [{ id: state, text }] = await answersTo(page, "state");
    const printings = await answersTo(page, "printing");
    await choose(page, state);
    const ofState = (await seen()).length;
    assert.ok(ofState > 0 && ofState < all);
    let sum = 0;
    for (const printing of printings) {
      await choose(page, printing.id);
      for (const { caption, states } of await seen()) {
        assert.ok(states.includes(text) && caption.includes(printing.text), caption);
        sum += 1;
      }
    }
    assert.ok(sum > 0 && sum <= ofState, `${sum} of ${ofState}`);
    await page.click('.sift button[type="reset"]');
    assert.equal((await seen()).length, all);

    // And by keyboard: the arrow moves from "all" to the first answer.
    await page.focus("#sall");
    await page.keyboard.press("ArrowRight");
    assert.equal((await seen()).length, ofState);
    await page.close();
  });
}

test("with scripts the choice is said aloud and kept in the address", async () => {
  const page = await open(true);
  const seen = async () => (await sheets(page)).filter((sheet) => sheet.seen).length;
  const all = await seen();
  const [{ id: state }] = await answersTo(page, "state");
  await choose(page, state);
  const left = await seen();
  const said = () => page.$eval(".sift output", (output) => output.textContent);
  assert.equal(await said(), `${left} of ${all} shown.`);
  assert.equal(new URL(page.url()).hash, `#only=${state}`);

  // Sent to a colleague, the address shows the same; an answer that is not there does no harm.
  const colleague = await open(true, { fragment: `#only=${state},p999,"><b>` });
  assert.equal((await sheets(colleague)).filter((sheet) => sheet.seen).length, left);
  await colleague.click('.sift button[type="reset"]');
  await colleague.waitForFunction(() => location.hash === "");
  assert.equal(await colleague.$eval(".sift output", (output) => output.textContent), "");
});

test("nothing went wrong in the browser meanwhile", () => {
  assert.deepEqual(faults, []);
});
