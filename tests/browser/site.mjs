// A compiled site: its files, its links, and a server for it on the loopback address.
//
// The site is served below a path (`/some/where/`), because a catalogue may live under any.

import { readFile, readdir, stat } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, relative, sep } from "node:path";
import { parse } from "parse5";

export const BASE = "/some/where/";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
  ".jpg": "image/jpeg",
  ".png": "image/png",
  ".xml": "application/xml",
  ".atom": "application/atom+xml",
};

/** Every file below `folder`, by its path there with `/`. */
export async function filesOf(folder) {
  const found = [];
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    if (entry.isFile()) {
      found.push(relative(folder, join(entry.parentPath ?? entry.path, entry.name)).split(sep).join("/"));
    }
  }
  return found.sort();
}

/** Whether a page leads to another at once: that of a record whose sheet has the page of another. */
export async function leadsOn(folder, path) {
  return (await readFile(join(folder, path), "utf8")).includes('<meta http-equiv="refresh"');
}

/** Every page below `folder` that stays where it is, by its file. */
export async function pagesOf(folder) {
  const files = (await filesOf(folder)).filter((file) => file.endsWith(".html"));
  const leading = await Promise.all(files.map((file) => leadsOn(folder, file)));
  return files.filter((_, at) => !leading[at]);
}

/** One of some addresses for each kind of page: the folders' names with keys left out. */
export function kindsOf(pages) {
  const kinds = new Map();
  for (const page of pages) {
    const parts = page.split("/").filter(Boolean);
    const kind = parts.map((part, i) => (i % 2 === 1 && !(parts[i] === "census") ? "*" : part)).join("/");
    if (!kinds.has(kind)) kinds.set(kind, page);
  }
  return kinds;
}

/** Serves `folder` at BASE; gives the address of its opening page and a way to stop. */
export async function serve(folder) {
  const server = createServer(async (request, response) => {
    const path = decodeURIComponent(new URL(request.url, "http://x").pathname);
    let file = path.startsWith(BASE) ? join(folder, path.slice(BASE.length)) : null;
    try {
      if (file && (await stat(file)).isDirectory()) {
        if (!path.endsWith("/")) {
          response.writeHead(301, { location: `${path}/` }).end();
          return;
        }
        file = join(file, "index.html");
      }
      const bytes = await readFile(file);
      response.writeHead(200, { "content-type": TYPES[extname(file)] ?? "application/octet-stream" });
      response.end(bytes);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise((ready) => server.listen(0, "127.0.0.1", ready));
  return {
    address: `http://127.0.0.1:${server.address().port}${BASE}`,
    stop: () => new Promise((stopped) => server.close(stopped)),
  };
}

/** What a page links to, and the anchors it has. */
export async function readPage(folder, path) {
  const links = [];
  const anchors = new Set();
  const doubled = [];
  const visit = (node) => {
    for (const { name, value } of node.attrs ?? []) {
      if (name === "id") {
        if (anchors.has(value)) doubled.push(value);
        anchors.add(value);
      }
      if (name === "href" || name === "src" || name === "action") links.push({ value, element: node.nodeName });
      if (name === "srcset") {
        for (const part of value.split(",")) links.push({ value: part.trim().split(/\s+/)[0], element: node.nodeName });
      }
      if (name === "aria-labelledby" || name === "aria-describedby" || name === "for") {
        for (const id of value.split(/\s+/)) links.push({ value: `#${id}`, element: node.nodeName });
      }
      if (name.startsWith("on") || name === "style") links.push({ value: `inline:${name}`, element: node.nodeName });
    }
    for (const child of node.childNodes ?? []) visit(child);
    if (node.content) visit(node.content);
  };
  visit(parse(await readFile(join(folder, path), "utf8")));
  return { links, anchors, doubled };
}
