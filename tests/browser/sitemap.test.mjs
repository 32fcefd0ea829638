// The site map of the compiled demonstration catalogue, read by the library sitemap (npm), which throws at whatever the
// protocol does not allow; each address is a page of the site.

import assert from "node:assert/strict";
import { createReadStream } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { ErrorLevel, XMLToSitemapItemStream } from "sitemap";
import { filesOf } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";

test("the site map lists pages that are there, each once", async () => {
  const reading = createReadStream(join(folder, "sitemap.xml")).pipe(new XMLToSitemapItemStream({ level: ErrorLevel.THROW }));
  const listed = [];
  for await (const item of reading) listed.push(item);
  const files = new Set(await filesOf(folder));
  const base = listed[0].url;
  assert.ok(listed.length > 300);
  assert.equal(new Set(listed.map((item) => item.url)).size, listed.length);
  for (const { url, lastmod } of listed) {
    assert.ok(url.startsWith(base), url);
    assert.ok(files.has(`${url.slice(base.length)}index.html`), url);
    assert.ok(lastmod.startsWith("2026-10-15"), lastmod);
  }
});
