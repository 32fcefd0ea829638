// Every page of the compiled demonstration catalogue is valid HTML, as html-validate judges it.
//
// Its preset `standard` holds what the standard demands (WHATWG HTML). Rules on style are not among them.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { test } from "node:test";
import { HtmlValidate } from "html-validate";
import { filesOf } from "./site.mjs";

const folder = process.env.SITE ?? "demo-site/web";

test("every page is valid HTML", async () => {
  const validator = new HtmlValidate({ root: true, extends: ["html-validate:standard"] });
  const pages = (await filesOf(folder)).filter((file) => file.endsWith(".html"));
  assert.ok(pages.length > 200, `only ${pages.length} pages`);
  const faults = [];
  for (const page of pages) {
    const report = await validator.validateString(await readFile(join(folder, page), "utf8"), page);
    for (const { messages } of report.results) {
      for (const { ruleId, message, line, column } of messages) {
        faults.push(`${page}:${line}:${column} ${ruleId}: ${message}`);
      }
    }
  }
  assert.equal(faults.length, 0, `${faults.length} faults\n${faults.slice(0, 60).join("\n")}`);
});

test("the validator finds a fault", async () => {
  const validator = new HtmlValidate({ root: true, extends: ["html-validate:standard"] });
  const page = '<!doctype html><html lang="en"><head><title>A</title></head><body><p><div></div></p></body></html>';
  const report = await validator.validateString(page);
  assert.equal(report.valid, false);
});
