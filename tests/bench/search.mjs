// How long a search takes: `node tests/bench/search.mjs WEB`. Each query is typed into an index that was just opened, so
// everything it needs is loaded, over HTTP from this machine. Printed are the times until the first entry can be shown,
// from the opening of the index on and from the typing on, the files and bytes loaded, and the entries found.

import { createServer } from "node:http";
import { readFile } from "node:fs/promises";
import { join } from "node:path";

const [web] = process.argv.slice(2);
const source = await readFile(new URL("../../themes/laid/assets/find.js", import.meta.url), "utf8");
const { narrow, open } = await import(`data:text/javascript,${encodeURIComponent(source)}`);

const server = createServer(async (request, response) => {
  try {
    response.end(await readFile(join(web, "search", new URL(request.url, "http://x").pathname)));
  } catch {
    response.writeHead(404).end();
  }
});
await new Promise((ready) => server.listen(0, "127.0.0.1", ready));
const base = `http://127.0.0.1:${server.address().port}/`;

const QUERIES = ["IV 7.5", "7 ii", "paper", "the press", "bridge snow", "museum of b", "1962", "p", "window mount covered", "no such word", "woodcut 1931 left edge"];
const RUNS = 9;
const middle = (values) => values.sort((a, b) => a - b)[values.length >> 1];
let worst = 0;
for (const query of QUERIES) {
  const [fromOpening, fromTyping, narrowing] = [[], [], []];
  let files;
  let bytes;
  let count;
  for (let run = 0; run < RUNS; run += 1) {
    [files, bytes] = [0, 0];
    let largest = 0;
    const load = async (path) => {
      const answer = await fetch(base + path);
      const text = await answer.text();
      files += 1;
      bytes += text.length;
      largest = Math.max(largest, text.length);
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
    count = results.places.length;
    const before = performance.now();
    if (run === 0) narrow(await finder.columns(), results.places, {});
    if (run === 0) narrowing.push(performance.now() - before);
  }
  worst = Math.max(worst, middle(fromOpening));
  console.log(
    `"${query}": ${middle(fromOpening).toFixed(0)} ms with opening, ${middle(fromTyping).toFixed(0)} ms from typing on; ${files} files, ${(bytes / 1000).toFixed(0)} kB; ${count} found; narrowing with its files ${narrowing[0].toFixed(0)} ms`,
  );
}
console.log(`the slowest first result, the opening of the index included: ${worst.toFixed(0)} ms`);
server.close();
server.closeAllConnections();
