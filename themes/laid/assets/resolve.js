// The page of references: readers paste some, one a line, and get what each means, with its permanent address.
// references.js reads them; the names are loaded when they are needed and not before.

import { open, reason } from "./references.js";

const form = document.getElementById("resolve");
const part = document.getElementById("resolved");
const table = part.querySelector("table");
const status = part.querySelector("[role=status]");
const copy = part.querySelector("button.copy-all");
const save = part.querySelector("a.save");
const words = JSON.parse(document.getElementById("resolve_data").textContent);
const HEADINGS = ["reference", "reading_certainty", "reading_address", "reading_label", "reading_kind", "reading_key", "reading_state", "reading_printing", "reading_why", "other_readings"];

let names;
/** The names of the catalogue, loaded once; after a failure anew. */
const ready = () => {
  names ??= open(async (path, tag) => {
    const address = new URL(path, location.href);
    if (tag) address.search = tag;
    const answer = await fetch(address, { cache: tag ? "default" : "no-cache" });
    if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
    return answer.json();
  });
  names.catch(() => (names = undefined));
  return names;
};

function element(name, kind, ...content) {
  const made = document.createElement(name);
  if (kind) made.className = kind;
  made.append(...content);
  return made;
}

/** An address that may break behind its slashes. */
const breakable = (address) => address.split(/(?<=\/)(?!\/)/).flatMap((part, at) => (at > 0 ? [document.createElement("wbr"), part] : [part]));

/** The rows of one reference: one for each reading. */
function rowsOf(asked, readings) {
  const body = document.createElement("tbody");
  const head = element("th", "", element("bdi", "", asked));
  head.scope = "rowgroup";
  head.rowSpan = Math.max(1, readings.length);
  if (readings.length === 0) {
    const cell = element("td", "nothing", words.found.nothing);
    cell.colSpan = 3;
    body.append(element("tr", "", head, cell));
  }
  readings.forEach(({ address, label, certainty, why }, at) => {
    const link = element("a", "", element("bdi", "", label));
    link.href = here(address);
    const row = element("tr", "", element("td", "", words.certainty[certainty]), element("td", "", link, element("span", "address", ...breakable(address))), element("td", "", reason(words, why)));
    if (at === 0) row.prepend(head);
    body.append(row);
  });
  return body;
}

let home = "";
/** The address in this copy of the catalogue, which may stand anywhere. */
const here = (address) => (address.startsWith(`${home}/`) ? new URL(`../${address.slice(home.length + 1)}`, location.href).href : address);

/** A cell as it is written in a table (RFC 4180); never a formula. */
const cell = (text) => {
  const harmless = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
};

const line = (cells) => `${cells.map(cell).join(",")}\r\n`;

function csv(results) {
  const lines = results.map(({ asked, readings: [first, ...others] }) =>
    line([
      asked,
      ...(first ? [first.certainty, first.address, first.label, first.kind, first.key, first.state ?? "", first.printing ?? "", reason(words, first.why)] : Array(8).fill("")),
      others.map(({ address }) => address).join(" "),
    ]),
  );
  return line(HEADINGS) + lines.join("");
}

const fill = (text, given) => text.replace(/\{(\w+)\}/g, (_, name) => given[name]);

let asking = 0;
async function resolve() {
  const mine = (asking += 1);
  const asked = form.elements.asked.value.split("\n").map((text) => text.trim()).filter((text) => text !== "");
  part.setAttribute("aria-busy", "true");
  for (const old of table.tBodies.length > 0 ? [...table.tBodies] : []) old.remove();
  let results;
  try {
    const { index, resolve: readingsOf } = await ready();
    home = index.address;
    results = [];
    for (const one of asked) results.push({ asked: one, readings: await readingsOf(one) });
  } catch {
    if (mine !== asking) return;
    part.hidden = false;
    status.textContent = form.dataset.failed;
    part.setAttribute("aria-busy", "false");
    return;
  }
  if (mine !== asking) return;
  for (const { asked: one, readings } of results) table.append(rowsOf(one, readings));
  const known = results.filter(({ readings }) => readings.length > 0);
  status.textContent = fill(words.found.found, { n: known.length, of: results.length });
  if (save.href.startsWith("blob:")) URL.revokeObjectURL(save.href);
  save.download = "references.csv";
  save.href = URL.createObjectURL(new Blob(["\ufeff", csv(results)], { type: "text/csv;charset=utf-8" }));
  const label = (copy.dataset.label ??= copy.textContent);
  copy.textContent = label;
  copy.hidden = !navigator.clipboard || known.length === 0;
  copy.onclick = async () => {
    await navigator.clipboard.writeText(results.map(({ readings: [first] }) => first?.address ?? "").join("\n"));
    copy.textContent = copy.dataset.done;
  };
  part.hidden = false;
  part.setAttribute("aria-busy", "false");
}

form.addEventListener("submit", (event) => {
  event.preventDefault();
  resolve();
});

// The references may stand in the address: "resolve/?asked=OP+7+iii".
const given = new URLSearchParams(location.search).getAll("asked");
if (given.length > 0) {
  form.elements.asked.value = given.join("\n");
  resolve();
}
