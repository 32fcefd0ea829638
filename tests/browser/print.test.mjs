// Every kind of page is printed to PDF. Laid out as wide as the paper's text, nothing is wider, no line stands on
// another, and the pages are about as many as the text needs; the title runs at the head of each.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, listen } from "./browser.mjs";
import { kindsOf, pagesOf, serve } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";
const MM = 96 / 25.4;
// A4 without the margins of print.css.
const [WIDE, HIGH] = [Math.floor((210 - 32) * MM), Math.floor((297 - 40) * MM)];
const faults = [];
let browser;
let site;
let kinds;

before(async () => {
  [browser, site] = [await launch(), await serve(folder)];
  const pages = (await pagesOf(folder)).filter((file) => file.endsWith("index.html"));
  kinds = kindsOf(pages.map((file) => file.slice(0, -"index.html".length)));
});
after(async () => {
  await browser?.close();
  await site?.stop();
});

/** What is wider than the page, and the lines of text that stand on each other. */
function judge(wide) {
  const isSeen = (element) => element.checkVisibility({ visibilityProperty: true }) && !element.closest(".unseen, svg, template");
  const name = (element) => `${element.tagName.toLowerCase()}.${element.className} "${element.textContent.trim().slice(0, 40)}"`;
  const lines = [];
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const { currentNode: node } = walk;
    if (!node.data.trim() || !isSeen(node.parentElement)) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const { left, right, top, bottom } of range.getClientRects()) {
      // A line box is higher than its letters: only what takes a third of the height is an overlap.
      if (right - left > 1) lines.push({ element: node.parentElement, left, right, top, bottom });
    }
  }
  const outside = lines.filter(({ left, right }) => left < -1 || right > wide + 1).map(({ element }) => name(element));
  lines.sort((a, b) => a.top - b.top);
  const over = [];
  lines.forEach((one, at) => {
    for (let next = at + 1; next < lines.length && lines[next].top < one.bottom; next += 1) {
      const other = lines[next];
      const across = Math.min(one.right, other.right) - Math.max(one.left, other.left);
      const down = Math.min(one.bottom, other.bottom) - other.top;
      const least = Math.min(one.bottom - one.top, other.bottom - other.top);
      if (across > 2 && down > 0.4 * least) over.push(`${name(one.element)} and ${name(other.element)}`);
    }
  });
  const root = document.documentElement;
  return { scrolled: root.scrollWidth, height: root.scrollHeight, outside, over, running: getComputedStyle(root).getPropertyValue("--running-title") };
}

test("every kind of page is printed whole, with its title at the head of each page", async () => {
  assert.ok(kinds.size >= 20, `only ${kinds.size} kinds of page`);
  const page = await listen(browser, site.address, faults);
  await page.emulateMediaType("print");
  await page.setViewport({ width: WIDE, height: HIGH });
  const found = [];
  const look = async (path) => {
    const said = await page.evaluate(judge, WIDE);
    if (said.scrolled > WIDE) found.push(`/${path}: ${said.scrolled} px wide of ${WIDE}`);
    for (const fault of said.outside.slice(0, 3)) found.push(`/${path}: cut off: ${fault}`);
    for (const fault of said.over.slice(0, 3)) found.push(`/${path}: on each other: ${fault}`);
    const title = await page.title();
    if (JSON.parse(said.running || '""') !== title) found.push(`/${path}: the running title is ${said.running}`);
    const pdf = Buffer.from(await page.pdf({ preferCSSPageSize: true })).toString("latin1");
    const sheets = pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    const needed = said.height / HIGH;
    if (sheets < needed * 0.7 || sheets > needed * 1.6 + 1) found.push(`/${path}: ${sheets} sheets of paper for ${needed.toFixed(1)}`);
  };
  for (const path of kinds.values()) {
    await page.goto(site.address + path, { waitUntil: "load" });
    await look(path);
  }
  // The key with its form filled in, and a comparison with sheets chosen.
  for (const path of ["design/7/key/#see=beam=present,crack=none|edge:probable", "design/7/comparison/#of=7.1,7.3"]) {
    await page.goto("about:blank");
    await page.goto(site.address + path, { waitUntil: "load" });
    await look(path);
  }
  assert.deepEqual(found, []);
  await page.close();
});

test("nothing went wrong in the browser meanwhile", () => {
  assert.deepEqual(faults, []);
});
