// The pictures of the compiled demonstration catalogue as image services (IIIF Image API 3.0), asked by
// two clients that are not ours: the viewer library openseadragon (npm), which reads `info.json` and
// derives every address from it, and the parser @iiif/parser (npm), which reads the addresses.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { join } from "node:path";
import { after, before, test } from "node:test";
import {
  createImageServiceRequest,
  getImageServiceLevel,
  imageServiceRequestToString,
  imageServiceSupportsRequest,
  isImageService,
  parseImageServiceRequest,
} from "@iiif/parser/image-3";
import { launch, listen } from "./browser.mjs";
import { filesOf, serve } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";
const library = createRequire(import.meta.url).resolve("openseadragon/build/openseadragon/openseadragon.min.js");
let browser;
let site;
let services;

before(async () => {
  [browser, site] = [await launch(), await serve(folder)];
  const files = await filesOf(folder);
  services = new Map();
  for (const file of files.filter((f) => /^picture\/.+\/info\.json$/.test(f))) {
    const service = file.slice(0, -"/info.json".length);
    const info = JSON.parse(await readFile(join(folder, file), "utf8"));
    // At a former address only `info.json` stands, which names the present one.
    if (!info.id.endsWith(`/${service}`)) {
      assert.ok(files.some((f) => f.endsWith("/info.json") && info.id.endsWith(`/${f.slice(0, -"/info.json".length)}`)), file);
      continue;
    }
    const images = files.filter((f) => f.startsWith(`${service}/`) && f !== file);
    services.set(service, { info, images: images.map((f) => f.slice(service.length + 1)) });
  }
});
after(async () => {
  await browser?.close();
  await site?.stop();
});

/** The opening page with the library added to it, which the site itself would not allow. */
async function bench(faults) {
  const page = await listen(browser, new URL("/", site.address).href, faults);
  await page.setViewport({ width: 1400, height: 1000 });
  await page.setBypassCSP(true);
  await page.goto(site.address);
  await page.addScriptTag({ path: library });
  return page;
}

/** The addresses of all tiles by the library's reckoning, relative to the service. */
function tilesOf(page, infos) {
  return page.evaluate((infos) => {
    const addresses = (info) => {
      const read = OpenSeadragon.IIIFTileSource.prototype.configure({ ...info }, `${info.id}/info.json`);
      const source = new OpenSeadragon.IIIFTileSource(read);
      const found = new Set();
      for (let level = source.minLevel; level <= source.maxLevel; level += 1) {
        const { x, y } = source.getNumTiles(level);
        for (let column = 0; column < x; column += 1) {
          for (let row = 0; row < y; row += 1) found.add(source.getTileUrl(level, column, row));
        }
      }
      return [...found].map((address) => address.slice(info.id.length + 1));
    };
    return infos.map(addresses);
  }, infos);
}

test("another program finds every tile of every picture, and no file stands where none looks", async () => {
  const faults = [];
  assert.ok(services.size > 100, `only ${services.size} services`);
  const page = await bench(faults);
  const all = [...services];
  const asked = await tilesOf(page, all.map(([, { info }]) => info));
  let several = 0;
  all.forEach(([service, { info, images }], place) => {
    const there = new Set(images);
    several += Number(images.length > 1);
    for (const path of asked[place]) {
      if (!there.delete(path)) faults.push(`${service}: ${path} is asked for and missing`);
    }
    // What is left are whole pictures: those that `sizes` lists, and the largest.
    const wholes = (info.sizes ?? []).map(({ width, height }) => `full/${width},${height}/0/default.jpg`);
    for (const path of [...wholes, "full/max/0/default.jpg"]) {
      if (!images.includes(path)) faults.push(`${service}: ${path} is promised and missing`);
      there.delete(path);
    }
    for (const path of there) faults.push(`${service}: nobody asks for ${path}`);
  });
  await page.close();
  assert.ok(several > 50, `only ${several} pictures have more than one file`);
  assert.deepEqual(faults, []);
});

test("a viewer that is not ours opens the largest pictures and gets every tile it asks for", async () => {
  const faults = [];
  const largest = [...services].sort(([, a], [, b]) => b.images.length - a.images.length).slice(0, 3);
  for (const [service, { info }] of largest) {
    const page = await bench(faults);
    let answered = 0;
    page.on("response", (response) => {
      answered += Number(response.ok() && response.url().endsWith("/default.jpg"));
    });
    const opened = await page.evaluate(async (info) => {
      const place = document.createElement("div");
      place.style.cssText = "position: fixed; inset: 0; background: white";
      document.body.append(place);
      const viewer = OpenSeadragon({ element: place, tileSources: info, showNavigationControl: false, drawer: "canvas" });
      await new Promise((done, failed) => {
        viewer.addOnceHandler("open", done);
        viewer.addOnceHandler("open-failed", () => failed(new Error("it does not open")));
      });
      const item = viewer.world.getItemAt(0);
      const whole = () =>
        new Promise((done) => {
          if (item.getFullyLoaded()) done();
          else item.addOnceHandler("fully-loaded-change", done);
        });
      await whole();
      viewer.viewport.zoomTo(viewer.viewport.imageToViewportZoom(1), null, true);
      await new Promise((done) => setTimeout(done, 500));
      await whole();
      const size = item.getContentSize();
      viewer.destroy();
      return { width: size.x, height: size.y };
    }, { ...info, id: `${site.address}${service}` });
    assert.deepEqual(opened, { width: info.width, height: info.height });
    assert.ok(answered >= 4, `${service}: only ${answered} files were asked for`);
    await page.close();
  }
  assert.deepEqual(faults, []);
});

test("a parser that is not ours knows every service, and every address in its canonical form", () => {
  const faults = [];
  let read = 0;
  for (const [service, { info, images }] of services) {
    const fault = (what) => faults.push(`${service}: ${what}`);
    if (!isImageService(info) || getImageServiceLevel(info) !== 0) fault("no image service of level 0");
    for (const path of images) {
      const request = parseImageServiceRequest(`${info.id}/${path}`);
      const again = imageServiceRequestToString(request, info);
      if (again !== `${info.id}/${path}`) fault(`${path} is read as ${again}`);
      read += 1;
    }
    // What it asks for when it wants the picture whole.
    const whole = createImageServiceRequest(info);
    const address = imageServiceRequestToString(whole, info).slice(info.id.length + 1);
    if (!images.includes(address)) fault(`${address} is asked for and missing`);
    const [answers, why] = imageServiceSupportsRequest(info, whole);
    if (!answers) fault(why);
  }
  assert.ok(read > 800, `only ${read} addresses`);
  assert.deepEqual(faults, []);
});
