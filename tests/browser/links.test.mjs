// Every internal link of the compiled demonstration catalogue resolves, fragments included; nothing
// is loaded from elsewhere; no page holds inline script or style.

import assert from "node:assert/strict";
import { posix } from "node:path";
import { test } from "node:test";
import { filesOf, readPage } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";

test("every internal link resolves, and nothing comes from elsewhere", async () => {
  const files = await filesOf(folder);
  const there = new Set(files);
  const pages = files.filter((f) => f.endsWith(".html"));
  assert.ok(pages.length > 200, `only ${pages.length} pages`);
  const read = new Map();
  for (const page of pages) read.set(page, await readPage(folder, page));
  const faults = [];
  let checked = 0;
  // A host serves 404.html at any address, so its links begin with the path of the catalogue.
  const canonical = read.get("index.html").links.find(({ value, element }) => element === "link" && /^https:/.test(value));
  const base = new URL(canonical.value).pathname.replace(/\/*$/, "/");
  for (const [page, { links: written, doubled }] of read) {
    const links = page !== "404.html" ? written : written.map(({ value, element }) => ({ element, value: value.startsWith(base) ? value.slice(base.length) || "./" : value }));
    for (const id of doubled) faults.push(`${page}: the id ${id} stands twice`);
    for (const { value, element } of links) {
      if (value.startsWith("inline:")) {
        faults.push(`${page}: <${element}> carries ${value.slice(7)}`);
        continue;
      }
      if (/^[a-z][a-z0-9+.-]*:/i.test(value)) {
        const outward = element === "a" || (element === "link" && /^https:/.test(value));
        if (!outward || !/^(https?|mailto):/i.test(value)) faults.push(`${page}: <${element}> loads ${value}`);
        continue;
      }
      checked += 1;
      if (value.startsWith("/")) {
        faults.push(`${page}: ${value} is not relative`);
        continue;
      }
      const [rest, fragment] = value.split("#");
      // A query names a place of a picture, which manifests.test.mjs opens.
      const [path] = rest.split("?");
      let target = path === "" ? page : posix.normalize(posix.join(posix.dirname(page), decodeURIComponent(path)));
      if (target === "." || target.endsWith("/")) target = posix.join(target, "index.html");
      if (!there.has(target)) {
        faults.push(`${page}: ${value} leads to nothing`);
      } else if (fragment?.startsWith("see=") && target.endsWith("/key/index.html")) {
        // Answers for the key, which key.test.mjs reads.
      } else if (fragment?.startsWith("of=") && target.endsWith("/comparison/index.html")) {
        // Sheets for a comparison, which comparison.test.mjs reads.
      } else if (fragment && target.endsWith(".html") && !read.get(target).anchors.has(decodeURIComponent(fragment))) {
        faults.push(`${page}: ${value} has no such place on its page`);
      }
    }
  }
  assert.ok(checked > 1000, `only ${checked} links`);
  assert.equal(faults.length, 0, `${faults.length} faults\n${faults.slice(0, 40).join("\n")}`);
});
