// How long a search takes: `node tests/bench/search.mjs WEB`. Each query is typed into an index that was just opened, so
// everything it needs is loaded, over HTTP from this machine, without a cache. Printed are the times until the first entry
// can be shown, from the opening of the index on and from the typing on, the files and bytes loaded for it, the entries found, and
// the time until all are known:
// in Node.js and, where tests/browser is installed, in headless Chromium.

import { createServer } from "node:http";
import { readFile } from "node:fs/promises";
import { join } from "node:path";

const [web] = process.argv.slice(2);
const script = await readFile(new URL("../../themes/laid/assets/find.js", import.meta.url));

/** What is served beside the index: an empty page and the script under test. */
const OWN = {
  "/": ["text/html; charset=utf-8", "<!doctype html><title>Search</title>"],
  "/find.js": ["text/javascript; charset=utf-8", script],
};
const server = createServer(async (request, response) => {
  const path = new URL(request.url, "http://x").pathname;
  try {
    const [type, bytes] = OWN[path] ?? ["application/json", await readFile(join(web, "search", path))];
    response.writeHead(200, { "content-type": type, "cache-control": "no-store" }).end(bytes);
  } catch {
    response.writeHead(404).end();
  }
});
await new Promise((ready) => server.listen(0, "127.0.0.1", ready));
const base = `http://127.0.0.1:${server.address().port}/`;

const QUERIES = ["IV 7.5", "7 ii", "paper", "the press", "bridge snow", "museum of b", "1962", "p", "window mount covered", "no such word", "woodcut 1931 left edge"];

/** Measures one query; runs in Node.js and in the page, so it uses nothing from outside. */
async function measure(base, from, query) {
  const { narrow, open } = await import(from);
  const RUNS = 9;
  const middle = (values) => values.sort((a, b) => a - b)[values.length >> 1];
  const [fromOpening, fromTyping, fromAll] = [[], [], []];
  const last = {};
  for (let run = 0; run < RUNS; run += 1) {
    [last.files, last.bytes] = [0, 0];
    const load = async (path) => {
      const answer = await fetch(base + path);
      const text = await answer.text();
      last.files += 1;
      last.bytes += text.length;
      return JSON.parse(text);
    };
    const begun = performance.now();
    const finder = await open(load);
    const opened = performance.now();
    const results = await finder.find(query);
    if (results.places.length > 0) await finder.record(results.places[0]);
    const ended = performance.now();
    fromOpening.push(ended - begun);
    fromTyping.push(ended - opened);
    [last.firstFiles, last.firstBytes] = [last.files, last.bytes];
    const all = results.complete ? await results.complete() : results;
    fromAll.push(performance.now() - begun);
    last.count = all.places.length;
    if (run === 0) {
      const before = performance.now();
      narrow(await finder.columns(), all.places, {});
      last.narrowing = performance.now() - before;
    }
  }
  return { ...last, opening: middle(fromOpening), typing: middle(fromTyping), whole: middle(fromAll) };
}

async function measureAll(where, measureOne) {
  console.log(`${where}:`);
  let worst = 0;
  for (const query of QUERIES) {
    const { opening, typing, whole, firstFiles, firstBytes, count, narrowing } = await measureOne(query);
    worst = Math.max(worst, opening);
    console.log(
      `"${query}": ${opening.toFixed(0)} ms with opening, ${typing.toFixed(0)} ms from typing on; ${firstFiles} files, ${(firstBytes / 1000).toFixed(0)} kB; ${count} found, all after ${whole.toFixed(0)} ms; narrowing with its files ${narrowing.toFixed(0)} ms`,
    );
  }
  console.log(`the slowest first result, the opening of the index included: ${worst.toFixed(0)} ms`);
}

const inNode = `data:text/javascript,${encodeURIComponent(script.toString())}`;
await measureAll("in Node.js", (query) => measure(base, inNode, query));

const browser = await import("../browser/browser.mjs").then(
  ({ launch }) => launch(),
  () => null,
);
if (browser) {
  const page = await browser.newPage();
  await page.goto(base);
  const inPage = (query) => page.evaluate(measure, base, `${base}find.js`, query);
  await measureAll(`in ${await browser.version()}`, inPage);
  await browser.close();
} else {
  console.log("headless Chromium was not run: `npm ci` in tests/browser installs what it needs");
}
server.close();
server.closeAllConnections();
