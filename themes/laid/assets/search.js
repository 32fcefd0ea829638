// The field in the head of every page, the search page and the page for an address that leads to nothing. find.js
// looks things up; the index is loaded when somebody searches and not before.

import { narrow, open } from "./find.js";

const ABREAST = 8;
const STEP = 20;
const WAIT_MS = 60;

const fill = (text, given) => text.replace(/\{(\w+)\}/g, (_, name) => given[name]);

/** An element with a class, texts and elements in it. */
function element(name, kind, ...content) {
  const made = document.createElement(name);
  if (kind) made.className = kind;
  made.append(...content.filter((part) => part !== null));
  return made;
}

/** Opens the index below an address. */
const opened = (base) =>
  open(async (path, tag) => {
    const address = new URL(path, base);
    if (tag) address.search = tag;
    const answer = await fetch(address, { cache: tag ? "default" : "no-cache" });
    if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
    return answer.json();
  });

for (const form of document.querySelectorAll("form.seek")) begin(form);

function begin(form) {
  const field = form.elements.q;
  const base = new URL(form.getAttribute("action"), location.href);
  const root = new URL("../", base);
  let index;
  const ready = () => {
    index ??= opened(base);
    index.catch(() => (index = undefined));
    return index;
  };

  /** The words found in an entry, each part with what it is. */
  const toldOf = (finder, results, at, title) => {
    const { words } = finder.index;
    const parts = finder.found(results, at);
    const names = ["in-number", "in-name", "in-name", "in-record", "in-text"];
    const groups = new Map();
    for (const { place, written } of parts) {
      if (place <= 2 && written === title) continue;
      const name = names[place];
      groups.set(name, [...(groups.get(name) ?? []), written]);
    }
    return [...groups].map(([name, all]) => ({ text: words[name], all }));
  };

  const foundIn = (told) =>
    told.flatMap(({ text, all }, at) => [
      at > 0 ? "; " : "",
      `${text}: `,
      ...all.flatMap((one, place) => [place > 0 ? ", " : "", element("mark", "", element("bdi", "", one))]),
    ]);

  /** The address of an entry; of one that was found by its text, with the word, so that browsers show where. */
  const hrefOf = (finder, results, at, { href }) => {
    const address = new URL(href, root).href;
    const text = finder.found(results, at).find(({ place }) => place === 4);
    if (!text) return address;
    return `${address}${address.includes("#") ? "" : "#"}:~:text=${encodeURIComponent(text.written).replaceAll("-", "%2D")}`;
  };

  const nameOf = (record) => {
    const title = element("bdi", "", record.title);
    if (record.language) title.lang = record.language;
    return title;
  };

  const say = form.classList.contains("whole") ? page : head;
  say();

  /** The field in the head: the first results below it, one of which the arrow keys choose. */
  function head() {
    const list = form.querySelector("[role=listbox]");
    const status = form.querySelector("[role=status]");
    let options = [];
    let chosen = -1;
    let asked = 0;

    const close = () => {
      list.hidden = true;
      field.setAttribute("aria-expanded", "false");
      choose(-1);
    };
    const choose = (at) => {
      options[chosen]?.element.setAttribute("aria-selected", "false");
      chosen = at;
      const option = options[chosen]?.element;
      if (option) {
        option.setAttribute("aria-selected", "true");
        option.scrollIntoView({ block: "nearest" });
        field.setAttribute("aria-activedescendant", option.id);
      } else field.removeAttribute("aria-activedescendant");
    };

    const show = async () => {
      const query = field.value;
      const mine = (asked += 1);
      if (query.trim() === "") {
        status.textContent = "";
        options = [];
        return close();
      }
      try {
        const finder = await ready();
        const results = await finder.find(query);
        await offer(finder, results, mine, query);
        if (results.complete && mine === asked) await offer(finder, await results.complete(), mine, query);
      } catch {
        if (mine === asked) status.textContent = form.dataset.failed;
      }
    };

    /** Offers the first results of a query, and the page of all. */
    const offer = async (finder, results, mine, query) => {
      const first = [...results.places.slice(0, ABREAST)];
      const records = await Promise.all(first.map(async (at) => ({ at, record: await finder.record(at) })));
      if (mine !== asked) return;
      const { words } = finder.index;
      options = records.map(({ at, record }, place) => {
        const told = toldOf(finder, results, at, record.title);
        const made = element(
          "li",
          "",
          element("span", "handle", record.number),
          element(
            "span",
            "what",
            element("span", "name", nameOf(record)),
            element("span", "quiet", words[`kind-${record.kind}`], record.about ? ": " : "", record.about ? element("bdi", "", record.about) : null),
            told.length > 0 ? element("span", "told", ...foundIn(told)) : null,
          ),
          record.picture ? Object.assign(element("img", ""), { src: new URL(record.picture, root).href, alt: "", decoding: "async" }) : null,
        );
        made.id = `${list.id}_${place}`;
        made.setAttribute("role", "option");
        made.setAttribute("aria-selected", "false");
        return { element: made, href: hrefOf(finder, results, at, record) };
      });
      if (!results.complete && results.places.length > options.length) {
        const made = element("li", "all", fill(words.all, { n: results.places.length }));
        made.id = `${list.id}_all`;
        made.setAttribute("role", "option");
        made.setAttribute("aria-selected", "false");
        options.push({ element: made, href: `${base}?q=${encodeURIComponent(query)}` });
      }
      list.replaceChildren(...options.map((option) => option.element));
      chosen = -1;
      field.removeAttribute("aria-activedescendant");
      list.hidden = options.length === 0;
      field.setAttribute("aria-expanded", String(!list.hidden));
      // How many there are is known when all is read.
      if (!results.complete) status.textContent = sentence(words, results, results.places.length);
    };

    let timer;
    field.addEventListener("input", () => {
      clearTimeout(timer);
      timer = setTimeout(show, WAIT_MS);
    });
    field.addEventListener("focus", () => {
      ready().catch(() => {});
      if (options.length > 0 && list.hidden && field.value.trim() !== "") show();
    });
    field.addEventListener("keydown", (event) => {
      if (event.isComposing) return;
      if (event.key === "ArrowDown" || event.key === "ArrowUp") {
        if (list.hidden || options.length === 0) return;
        event.preventDefault();
        const step = event.key === "ArrowDown" ? 1 : -1;
        const next = chosen + step;
        choose(next >= options.length || next < -1 ? (step > 0 ? -1 : options.length - 1) : next);
      } else if (event.key === "Escape") {
        if (!list.hidden) {
          event.preventDefault();
          close();
        }
      } else if (event.key === "Enter" && chosen >= 0) {
        event.preventDefault();
        location.assign(options[chosen].href);
      }
    });
    list.addEventListener("mousedown", (event) => event.preventDefault());
    list.addEventListener("click", (event) => {
      const option = options.find((one) => one.element.contains(event.target));
      if (option) location.assign(option.href);
    });
    form.addEventListener("focusout", (event) => {
      if (!form.contains(event.relatedTarget)) close();
    });
    if (field.value.trim() !== "" && document.activeElement === field) show();
  }

  /** How many were found, in a sentence. */
  function sentence(words, results, count, narrowed) {
    if (results.places.length === 0) return words.nothing;
    if (narrowed && count < results.places.length) return fill(words.count, { n: count, of: results.places.length });
    return fill(results.isCut ? words.first : results.some ? words.some : words.found, { n: count });
  }

  /** The search page: every result, and what they are narrowed by. */
  function page() {
    const part = document.getElementById("results");
    const list = part.querySelector("ol");
    const status = part.querySelector("[role=status]");
    const more = part.querySelector("button.more");
    const narrowing = part.querySelector("form.narrow");
    let asked = 0;
    let shown = 0;
    let state;
    let choices = {};

    const keep = (query) => {
      if (form.dataset.folders !== undefined) return;
      const kept = new URLSearchParams();
      if (query.trim() !== "") kept.set("q", query);
      for (const [by, key] of Object.entries(choices)) kept.set(by, key);
      const text = kept.toString();
      history.replaceState(null, "", text === "" ? location.pathname : `?${text}`);
    };

    const entry = async (at) => {
      const { finder, results } = state;
      const record = await finder.record(at);
      const told = toldOf(finder, results, at, record.title);
      const href = hrefOf(finder, results, at, record);
      const link = element("a", "", nameOf(record));
      link.href = href;
      const image = record.picture ? Object.assign(element("img", ""), { src: new URL(record.picture, root).href, alt: "", loading: "lazy", decoding: "async" }) : null;
      const about = [finder.index.words[`kind-${record.kind}`], record.about].filter(Boolean);
      return element(
        "li",
        "",
        element("p", record.number.length > 7 ? "entry-number long" : "entry-number", record.number),
        element(
          "div",
          "entry",
          element("p", "entry-title", link),
          element("p", "small quiet", about[0], about[1] ? ": " : "", about[1] ? element("bdi", "", about[1]) : null),
          told.length > 0 ? element("p", "small told", ...foundIn(told)) : null,
        ),
        image ? element("div", "thumb", element("div", "ground", image)) : null,
      );
    };

    const extend = async (mine) => {
      const next = [...state.left.slice(shown, shown + STEP)];
      const made = await Promise.all(next.map(entry));
      if (mine !== asked) return null;
      shown += made.length;
      list.append(...made);
      more.hidden = shown >= state.left.length;
      return made[0] ?? null;
    };

    const refresh = async (mine) => {
      const { finder, results } = state;
      shown = 0;
      const before = [...list.children];
      const isNarrowed = Object.keys(choices).length > 0;
      state.left = isNarrowed && state.columns ? narrow(state.columns, results.places, choices).places : results.places;
      await extend(mine);
      if (mine !== asked) return;
      for (const old of before) old.remove();
      list.hidden = state.left.length === 0;
      part.hidden = false;
      // How many there are is known when all is read.
      if (!results.complete) status.textContent = sentence(finder.index.words, results, state.left.length, isNarrowed);
    };

    /** Writes the values of each select, with the number of results that have it. */
    const offer = () => {
      const { finder, results, columns } = state;
      const { words } = finder.index;
      const { counts } = narrow(columns, results.places, choices);
      let any = false;
      columns.forEach(({ by, values }, column) => {
        const select = narrowing.elements[by];
        if (!select) return;
        const options = [new Option(words.any, "")];
        values.forEach(([key, label], value) => {
          const isChosen = choices[by] === key;
          if (counts[column][value] > 0 || isChosen) {
            options.push(new Option(`${label} (${counts[column][value]})`, key, false, isChosen));
          }
        });
        select.replaceChildren(...options);
        // One value that everything found has narrows nothing.
        const all = counts[column].length > 0 && options.length === 2 && !choices[by] && Math.max(...counts[column]) >= results.places.length;
        select.closest("p").hidden = options.length < 2 || all;
        any ||= !select.closest("p").hidden;
      });
      narrowing.hidden = !any;
    };

    const busy = (is) => part.setAttribute("aria-busy", String(is));

    const search = async () => {
      const query = field.value;
      const mine = (asked += 1);
      busy(true);
      keep(query);
      if (query.trim() === "") {
        part.hidden = true;
        status.textContent = "";
        busy(false);
        return;
      }
      try {
        const finder = await ready();
        let results = await finder.find(query);
        if (mine !== asked) return;
        const needsColumns = Object.keys(choices).length > 0;
        if (results.complete && needsColumns) results = await results.complete();
        state = { finder, results, left: results.places, columns: needsColumns ? await finder.columns() : state?.columns };
        if (mine !== asked) return;
        await refresh(mine);
        if (mine !== asked) return;
        if (results.complete) {
          state.results = await results.complete();
          if (mine !== asked) return;
          await refresh(mine);
          if (mine !== asked) return;
        }
        state.columns ??= await finder.columns();
        if (mine !== asked) return;
        offer();
        busy(false);
      } catch {
        if (mine !== asked) return;
        busy(false);
        part.hidden = false;
        list.replaceChildren();
        [more.hidden, narrowing.hidden] = [true, true];
        status.textContent = form.dataset.failed;
      }
    };

    let timer;
    field.addEventListener("input", () => {
      busy(true);
      clearTimeout(timer);
      timer = setTimeout(search, WAIT_MS);
    });
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      clearTimeout(timer);
      search();
    });
    narrowing.addEventListener("change", async () => {
      choices = {};
      for (const select of narrowing.querySelectorAll("select")) if (select.value !== "") choices[select.name] = select.value;
      const mine = (asked += 1);
      busy(true);
      keep(field.value);
      await refresh(mine);
      if (mine !== asked) return;
      offer();
      busy(false);
    });
    narrowing.addEventListener("submit", (event) => event.preventDefault());
    narrowing.addEventListener("reset", () => setTimeout(() => narrowing.dispatchEvent(new Event("change"))));
    more.addEventListener("click", async () => {
      const first = await extend(asked);
      first?.querySelector("a")?.focus();
    });
    // The arrow keys lead from the field into the results and back.
    const walk = (event) => {
      if (!["ArrowDown", "ArrowUp"].includes(event.key) || event.isComposing) return;
      const links = [...list.querySelectorAll("a")];
      const at = links.indexOf(document.activeElement);
      const next = event.key === "ArrowDown" ? at + 1 : at - 1;
      if (at < 0 && event.key === "ArrowUp") return;
      const to = next < 0 ? field : links[next];
      if (!to) return;
      event.preventDefault();
      to.focus();
    };
    field.addEventListener("keydown", walk);
    list.addEventListener("keydown", walk);

    const given = new URLSearchParams(location.search);
    if (form.dataset.folders !== undefined) field.value = wordsOfAddress();
    else {
      if (given.has("q")) field.value = given.get("q");
      for (const select of narrowing.querySelectorAll("select")) if (given.get(select.name)) choices[select.name] = given.get(select.name);
    }
    if (field.value.trim() !== "") search();
  }

  /** The words of the address that led to nothing: without the catalogue's own path, the kind of record and the
   *  ending of a file. */
  function wordsOfAddress() {
    let path = location.pathname;
    try {
      path = decodeURIComponent(path);
    } catch {
      // A broken address is searched for as it is.
    }
    const own = decodeURIComponent(root.pathname);
    if (path.startsWith(own)) path = path.slice(own.length);
    const folders = form.dataset.folders.split(" ");
    const parts = path.split("/").filter((one) => one !== "" && !/^(index|404)\.html?$/.test(one));
    if (parts.length > 1 && folders.includes(parts[0])) parts.shift();
    return parts.join(" ").replace(/\.html?$/, "").replace(/[-_+]+/g, " ").trim();
  }
}
