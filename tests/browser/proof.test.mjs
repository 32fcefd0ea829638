// A proof follows its records: the open page shows what was written and keeps its place. While a record is
// broken, the last good page stays, with the findings beside it, as text and nothing else.

import assert from "node:assert/strict";
import { mkdir, rm } from "node:fs/promises";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { launch, listen } from "./browser.mjs";
import { startProof, until } from "./proof.mjs";

const DESIGN = "records/designs/14/design.toml";
const SHEET = "records/designs/14/impressions/1.toml";
const NOTE = "records/designs/14/design.md";
let browser;
let proof;
let page;
const faults = [];

before(async () => {
  [browser, proof] = [await launch(), await startProof()];
  page = await listen(browser, proof.address, faults);
  await page.setViewport({ width: 1280, height: 700 });
});
after(async () => {
  await browser?.close();
  await proof?.stop();
});

/** The result of `question` on the page; null while the page is being loaded again. */
const look = (question) => page.evaluate(question).catch(() => null);
// Wait until it is loaded whole: without its style sheets a page has another height.
const pageSays = (text) => until(`the page to say "${text}"`, () => look(`document.readyState === "complete" && document.querySelector("main").innerText.includes(${JSON.stringify(text)})`));
const told = () => look(() => {
  const aside = document.querySelector(".proof_findings");
  if (!aside) return null;
  return { hidden: aside.hidden, open: aside.querySelector("details")?.open ?? false, text: aside.innerText };
});
const findingsShown = () => until("findings on the page", async () => {
  const shown = await told();
  return shown && !shown.hidden ? shown : null;
});
/** Waits for a page without findings whose script is there: one still loading would not follow a proof that ends. */
const findingsGone = () => until("the findings to go", async () => (await told())?.hidden);

/** Waits until the page is not being loaded again: one that is when its proof ends shows an error of the browser for good. */
const pageRests = () => until("the page to rest", async () => {
  const loaded = await look("performance.timeOrigin");
  await new Promise((resume) => setTimeout(resume, 1000));
  return loaded !== null && (await look("performance.timeOrigin")) === loaded;
});

async function edit(path, from, to) {
  const text = await proof.read(path);
  assert.ok(text.includes(from), `${path} has no ${from}`);
  await proof.write(path, text.replace(from, to));
}

/** The same edit, undone once `during` has ended or failed. */
async function edited(path, from, to, during) {
  const text = await proof.read(path);
  await edit(path, from, to);
  try {
    await during();
  } finally {
    await proof.write(path, text);
  }
}

test("an edited record shows on the open page, which keeps its place", async () => {
  await page.goto(`${proof.address}design/14/`, { waitUntil: "load" });
  await pageSays("The design was begun in the winter of 1927.");
  // A page that is scrolled while it is being loaded again loses its place.
  await until("the page to stay where it was scrolled to", async () => {
    const there = await look("scrollTo(0, document.body.scrollHeight / 2), scrollY");
    await new Promise((resume) => setTimeout(resume, 300));
    return there > 200 && (await look("scrollY")) === there;
  });
  const scrolled = await page.evaluate("scrollY");
  assert.ok(scrolled > 200, `the page is too short to scroll: ${scrolled} px`);

  // Nothing above the place of reading changes its height, so not a pixel may move.
  await edit(NOTE, "winter of 1927", "winter of 1926");
  await pageSays("The design was begun in the winter of 1926.");
  await until("the place to be found again", () => look(`Math.abs(scrollY - ${scrolled}) < 1`));
});

test("saves that come faster than the page is loaded lose no place", async () => {
  const scrolled = await page.evaluate("scrollY");
  const text = await proof.read(NOTE);
  for (const year of [1921, 1922, 1923, 1924, 1925]) {
    await proof.write(NOTE, text.replace("1926", year));
    await new Promise((resume) => setTimeout(resume, 150));
  }
  await pageSays("The design was begun in the winter of 1925.");
  await until("the place to be found again", () => look(`Math.abs(scrollY - ${scrolled}) < 1`));
  // A text that was not there before shows that the last save has arrived.
  await proof.write(NOTE, text);
  await pageSays("The design was begun in the winter of 1926.");
  await until("the place to be found again", () => look(`Math.abs(scrollY - ${scrolled}) < 1`));
});

test("lines added above the place of reading do not push it away", async () => {
  const top = (id) => look(`document.getElementById("${id}")?.getBoundingClientRect().top`);
  await page.evaluate(() => scrollTo(0, scrollY + document.getElementById("literature").getBoundingClientRect().top + 8));
  const before = await top("literature");
  assert.ok(Math.abs(before) < 60, `not at the literature: ${before}`);
  await edit(DESIGN, "[[states]]", '[[points]]\nkey = "gull"\nask = "Is there a gull?"\nkind = "presence"\nrests_on = "matrix"\n\n[[states]]');
  await pageSays("Is there a gull?");
  const isAbove = await look(`(() => {
    const above = document.createRange();
    above.setStart(document.querySelector("main"), 0);
    above.setEndBefore(document.getElementById("literature"));
    return above.toString().includes("Is there a gull?");
  })()`);
  assert.ok(isAbove, "the new lines do not stand above the place");
  await until("the same line at the same height", async () => Math.abs((await top("literature")) - before) < 2);
});

test("a broken record keeps the last good page and tells what is wrong beside it", async () => {
  await edited(DESIGN, 'date = "1927"', 'date = "winter 1927"', async () => {
    const shown = await findingsShown();
    assert.ok(shown.open, "what is wrong is put away");
    assert.match(shown.text, /^1 error; the last good page stays/);
    assert.match(shown.text, /winter 1927/);
    assert.match(shown.text, /records\/designs\/14\/design\.toml:2:15/);
    assert.ok(await look(`document.querySelector("main").innerText.includes("winter of 1926")`), "the last good page is gone");

    const terminal = proof.terminal();
    assert.match(terminal, /  Code     date-syntax/);
    assert.match(terminal, /records\/designs\/14\/design\.toml:2:15/);
    assert.match(terminal, /errors 1, doubts 0, hints 0; the last good proof stays/);

    // It is the same on a page opened anew, and on another page.
    await page.goto(proof.address, { waitUntil: "load" });
    assert.match((await findingsShown()).text, /^1 error; the last good page stays/);
    await page.goto(`${proof.address}design/14/`, { waitUntil: "load" });
    await findingsShown();
  });
  await findingsGone();
});

test("a doubt is counted on a page that follows all the same, and opened when asked for", async () => {
  await edited(SHEET, "lamps = { is = 2", "lamps = { is = 3", async () => {
    const shown = await findingsShown();
    assert.match(shown.text, /^1 doubt/);
    assert.ok(!shown.open);
    await page.click(".proof_findings summary");
    assert.match((await told()).text, /records\/designs\/14\/impressions\/1\.toml:\d+:\d+/);
    // What was opened stays open on the next page.
    await edit(NOTE, "winter of 1926", "spring of 1926");
    await pageSays("spring of 1926");
    await until("the list to be open again", async () => (await told())?.open);
    await page.click(".proof_findings summary");
  });
  await findingsGone();
});

test("findings of the open page come first, and each leads to the page of its record", async () => {
  await page.goto(`${proof.address}impression/14.1/`, { waitUntil: "load" });
  await edited(DESIGN, 'date = "1927"', 'date = "winter 1927"', async () => {
    await edited(SHEET, "lamps = { is = 2", "lamps = { is = 99", async () => {
      const listed = () => look(() => {
        const items = [...document.querySelectorAll(".proof_findings .list > li")];
        return items.map((item) => ({ place: item.querySelector(".place").textContent, to: item.querySelector(".place a")?.getAttribute("href") ?? null }));
      });
      const found = await until("both findings", async () => {
        const all = await listed();
        return all?.some(({ place }) => place.startsWith("records/designs/14/design.toml")) && all;
      });
      const [design] = found.filter(({ place }) => place.startsWith("records/designs/14/design.toml"));
      assert.equal(design.to, "/design/14/");
      await page.goto(proof.address + design.to.slice(1), { waitUntil: "load" });
      const [first] = await until("the findings", async () => ((await listed()) ?? []).length > 0 && listed());
      assert.equal(first.to, "/design/14/");
    });
  });
  await findingsGone();
});

test("many findings of one code are told in short", async () => {
  await page.goto(`${proof.address}design/14/`, { waitUntil: "load" });
  const files = Array.from({ length: 12 }, (_, n) => `records/list-${n + 1}.csv`);
  for (const file of files) await proof.write(file, "a\n");
  await until("twelve hints", async () => (await told())?.text.startsWith("12 hints"));
  if (!(await told()).open) await page.click(".proof_findings summary");
  await until("the list", async () => (await told())?.open);
  const places = await look(`[...document.querySelectorAll(".proof_findings .place")].map((place) => place.innerText)`);
  assert.deepEqual(places, [1, 2, 3].map((n) => `records/list-${n}.csv:1:1`));
  assert.match((await told()).text, /9 more of the code file-unexpected: /);
  await page.click(".proof_findings summary");
  for (const file of files) await rm(join(proof.folder, file));
  await findingsGone();
});

test("markup in a finding is shown, never run", async () => {
  const hostile = `<img src=x onerror='document.title=1'><script>document.title=2</script>`;
  const title = await page.title();
  await edited(DESIGN, 'number = "14"', `number = "14"\n"${hostile}" = 1`, async () => {
    const shown = await findingsShown();
    assert.ok(shown.text.includes(hostile), shown.text);
    assert.equal(await look(`document.querySelectorAll(".proof_findings img, .proof_findings script").length`), 0);
    assert.equal(await page.title(), title);
  });
  await findingsGone();
});

test("a broken template keeps the last good page, and is told in the same place", async () => {
  const template = "themes/laid/pages/text.html";
  await mkdir(join(proof.folder, "themes/laid/pages"), { recursive: true });
  await proof.write(template, "<p>\n{% if %}\n");
  const shown = await findingsShown();
  assert.match(shown.text, /^the pages cannot be made; the last good page stays/);
  assert.match(shown.text, /pages\/text\.html:2/);
  await rm(join(proof.folder, template));
  await findingsGone();
});

test("a page whose record is taken away comes back with it", async () => {
  const text = await proof.read(NOTE);
  await page.goto(`${proof.address}page/reading/`, { waitUntil: "load" }).catch(() => null);
  assert.match(await look("document.body.innerText"), /There is no such page in this proof/);
  await proof.write("records/pages/reading.md", `# On reading\n\n${text}`);
  await until("the page of the new record", () => look(`document.querySelector("h1")?.innerText === "On reading"`));
});

test("a proof that is stopped and started again is followed", async () => {
  await page.goto(`${proof.address}design/14/`, { waitUntil: "load" });
  await pageSays("spring of 1926");
  await findingsGone();
  await pageRests();
  await proof.kill();
  await edit(NOTE, "spring of 1926", "autumn of 1926");
  await proof.startAgain();
  await pageSays("autumn of 1926");
  await findingsGone();
});

test("a proof that begins with a broken record says so, and shows the pages once it is mended", async () => {
  await pageRests();
  await proof.kill();
  const text = await proof.read(DESIGN);
  await edit(DESIGN, 'date = "1927"', 'date = "winter 1927"');
  await proof.startAgain();
  const fresh = await browser.newPage();
  await fresh.goto(`${proof.address}design/14/`, { waitUntil: "load" });
  await until("the findings", () => fresh.evaluate(`/^1 error\\s/.test(document.querySelector(".proof_findings").innerText)`));
  assert.match(await fresh.evaluate("document.body.innerText"), /^No proof can be pulled yet\./);
  // The page that was open all the while keeps what it had. It asks again once it is looked at.
  await page.bringToFront();
  assert.match((await findingsShown()).text, /^1 error; the last good page stays/);
  await pageSays("autumn of 1926");
  await proof.write(DESIGN, text);
  await findingsGone();
  await fresh.bringToFront();
  await until("the page", () => fresh.evaluate(`document.querySelector("h1")?.innerText === "The Last Ferry"`).catch(() => null));
  await fresh.close();
});

test("nothing went wrong in the browser meanwhile", () => {
  // The page that was not there, and the proof that was stopped, were meant to be.
  const meant = /There is no such|page\/reading\/|status of 404|net::ERR_(CONNECTION_\w+|EMPTY_RESPONSE|SOCKET_NOT_CONNECTED)/;
  const unmeant = faults.filter((fault) => !meant.test(fault));
  assert.deepEqual(unmeant, []);
});
