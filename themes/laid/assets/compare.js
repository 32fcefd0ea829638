// Impressions compared: two to four photographs side by side or laid on each other, looked at
// together. The reader's choice stands in the address, to be sent to a colleague:
//   #of=7.1,7.5&mode=blink&two=7.1,7.5
//   of    the sheets (where the page lets them be chosen)
//   mode  side, edge, blink, overlay, difference
//   two   the two of them that the modes for two show, where more are chosen
//   view  which photograph is shown of a sheet, where that is not its recto: 7.1/verso
"use strict";

(() => {
  const { Layer, Pane, View, apply, controls, element, scaled } = keyblockViewer;
  const MOST = 4; // Sheets at once.
  const PACES = { quick: 400, slow: 1000 }; // How long a picture is shown, ms: never under 334, three a second.
  const still = matchMedia("(prefers-reduced-motion: reduce)");

  const source = document.getElementById("compare_data");
  const template = document.getElementById("compare_form");
  if (!source || !template) return;
  const { sheets, rows = [], words, counts = [], ...data } = JSON.parse(source.textContent);
  const language = document.documentElement.lang;
  const percent = new Intl.NumberFormat(language, { style: "percent", maximumFractionDigits: 1 });
  const fill = (text, given) => text.replace(/\{(\w+)\}/g, (_, name) => given[name]);

  template.before(template.content);
  const form = document.querySelector(".comparing");
  const find = (name) => form.querySelector(name);
  const toolbar = find(".toolbar");
  const opener = find(".choose");
  const [how, sign, signHow] = [".how", ".sign", ".sign-how"].map(find);
  // What is set once stands beside the title, so that the row that stays has room.
  const aside = element("div", "settings screen-only");
  const grounds = document.querySelector("form.grounds");
  const room = grounds.parentElement;
  aside.append(grounds, how);
  room.remove();
  document.querySelector(".head").append(aside);
  const list = document.querySelector(".abreast");
  const items = [...list.children];
  // A sheet shows one of its photographs: `picture`, where it lies (`onto`) or why it lies nowhere (`why`).
  sheets.forEach((sheet, at) => {
    const image = items[at].querySelector("img");
    if (sheet.picture) sheet.picture.alt = image.alt;
    const { name, shows, picture, onto, why, others = [] } = sheet;
    for (const other of others) other.picture.alt = `${sheet.number}, ${other.shows}`;
    sheet.photographs = [{ name, shows, picture, onto, why }, ...others];
    sheet.shown = 0;
    if (others.length === 0) return;
    const select = document.createElement("select");
    select.append(...sheet.photographs.map((photograph, place) => new Option(photograph.shows, place)));
    const label = element("label", "others small screen-only");
    label.append(Object.assign(element("span", "unseen"), { textContent: fill(words["compare-photograph-of"], { number: sheet.number }) }), select);
    items[at].querySelector(".others").replaceWith(label);
    select.addEventListener("change", () => {
      pick(sheet, Number(select.value));
      show();
      keep();
    });
    sheet.select = select;
  });

  /** Shows another photograph of a sheet. */
  const pick = (sheet, place) => {
    const { picture, onto, why } = sheet.photographs[place];
    Object.assign(sheet, { shown: place, picture, onto, why });
    if (sheet.select) sheet.select.value = place;
  };
  const chooser = find(".chooser");
  const ticks = chooser ? [...chooser.querySelectorAll("input")] : [];
  // The photographs of the page stand in the form too, to be ticked; their names are the form's.
  ticks.forEach((tick, at) => {
    const image = items[at].querySelector("img")?.cloneNode();
    if (image) Object.assign(image, { alt: "", loading: "lazy", sizes: "9rem" });
    tick.nextElementSibling.append(image ?? tick.nextElementSibling.dataset.bare);
  });
  const modes = [...form.querySelectorAll("input[name=mode]")];

  let chosen = chooser ? [] : sheets.map((_, at) => at);
  let two = [];
  let view;
  let frame;
  let panes = [];
  let bar;
  let timer;
  let shown = 0; // Which of the two is in sight.

  const mode = () => modes.find((input) => input.checked).value;
  const laid = () => chosen.filter((at) => sheets[at].onto);

  // The address.

  const keep = () => {
    const keys = (places) => places.map((at) => sheets[at].key).join(",");
    const parts = [];
    if (chooser && chosen.length > 0) parts.push(`of=${keys(chosen)}`);
    if (chosen.length > 1 && mode() !== "side") parts.push(`mode=${mode()}`);
    if (mode() !== "side" && two.length > 1 && laid().length > 2) parts.push(`two=${keys(two)}`);
    const others = chosen.map((at) => sheets[at]).filter((sheet) => sheet.shown > 0);
    if (others.length > 0) parts.push(`view=${others.map(({ key, photographs, shown: place }) => `${key}/${photographs[place].name}`).join(",")}`);
    history.replaceState(null, "", location.pathname + location.search + (parts.length > 0 ? `#${parts.join("&")}` : ""));
  };

  const read = () => {
    const said = new URLSearchParams(location.hash.slice(1));
    const places = (name) => {
      const found = (said.get(name) ?? "").split(",").map((key) => sheets.findIndex((sheet) => sheet.key === key));
      return [...new Set(found)].filter((at) => at >= 0);
    };
    if (chooser) chosen = places("of").slice(0, MOST).sort((a, b) => a - b);
    for (const input of modes) input.checked = input.value === (said.get("mode") ?? "side");
    if (!modes.some((input) => input.checked)) modes[0].checked = true;
    two = places("two");
    const views = (said.get("view") ?? "").split(",");
    for (const sheet of sheets) pick(sheet, Math.max(0, sheet.photographs.findIndex(({ name }) => views.includes(`${sheet.key}/${name}`))));
    for (const [at, tick] of ticks.entries()) tick.checked = chosen.includes(at);
  };

  // The table.

  const ORDER = ["verdict-differ", "verdict-cannot-be-told", "verdict-agree"];
  const ROUNDING = 1e-6; // Absorbs the rounding of decimal fractions.

  /** What a row says of sheets: the id of its word; null where nothing is recorded on any. */
  const verdict = (row, columns) => {
    const seen = columns.map((at) => row.seen[at]);
    if (seen.every((values) => values === null)) return null;
    const agrees = (a, b) => {
      if (Array.isArray(a)) return a.every((length, at) => Math.abs(length - b[at]) <= Math.max(row.tolerance, row.share * Math.max(length, b[at])) + ROUNDING);
      return typeof a === "number" && row.tolerance ? Math.abs(a - b) <= row.tolerance + ROUNDING : a === b;
    };
    const known = seen.filter((values) => values?.length > 0);
    const differs = known.some((one, at) => known.slice(at + 1).some((other) => !one.some((a) => other.some((b) => agrees(a, b)))));
    const isWhole = known.length === seen.length;
    if (row.fact && !isWhole) return "verdict-cannot-be-told";
    if (differs) return "verdict-differ";
    return isWhole && known.every((values) => values.length === 1) ? "verdict-agree" : "verdict-cannot-be-told";
  };

  /** How far the measurements of a row lie apart: " (3 × 1 mm)"; nothing where they are the same, or of another row. */
  const apart = (row, columns, word) => {
    if (row.unit === undefined || word === "verdict-cannot-be-told") return "";
    const known = columns.map((at) => row.seen[at][0]);
    const spans = known[0].map((_, at) => {
      const lengths = known.map((one) => one[at]);
      return Math.round((Math.max(...lengths) - Math.min(...lengths)) * 100) / 100;
    });
    return spans.every((span) => span === 0) ? "" : ` (${spans.join(" × ")}${row.unit && ` ${row.unit}`})`;
  };

  const table = document.querySelector(".chosen-points");
  const body = table?.tBodies[0];
  const lines = body ? [...body.rows] : [];

  const tabulate = () => {
    if (!table) return;
    const isChosen = chosen.length > 1;
    for (const line of [table.tHead.rows[0], ...lines]) {
      const cells = [...line.cells].slice(1);
      cells.forEach((cell, at) => (cell.hidden = at === sheets.length ? !isChosen : isChosen && !chosen.includes(at)));
    }
    const said = lines.map((line, at) => ({ line, row: rows[at], fact: rows[at].fact, word: isChosen ? verdict(rows[at], chosen) : undefined }));
    for (const { line, row, word } of said) {
      line.hidden = word === null;
      line.classList.toggle("differs", word === "verdict-differ");
      const wedge = word === "verdict-differ" ? [Object.assign(element("span", "wedge"), { ariaHidden: "true" })] : [];
      line.cells[sheets.length + 1].replaceChildren(...wedge, word ? words[word] + apart(row, chosen, word) : "");
    }
    const place = ({ fact, word }) => (fact ? -1 : ORDER.indexOf(word));
    body.append(...(isChosen ? [...said].sort((a, b) => place(a) - place(b)) : said).map(({ line }) => line));
    const asked = said.filter(({ fact, word }) => !fact && word);
    const differing = asked.filter(({ word }) => word === "verdict-differ").length;
    const sentence = document.querySelector(".chosen-verdict");
    sentence.hidden = !isChosen;
    sentence.textContent = asked.length === 0 ? words["nothing-observed"] : fill(counts[differing], { all: asked.length });
    const unseen = document.querySelector(".chosen-unseen");
    const asks = said.filter(({ fact, word }) => !fact && word === null).map(({ line }) => line.querySelector(".ask").textContent);
    unseen.hidden = !isChosen || asks.length === 0;
    unseen.querySelector("span").textContent = asks.join(" ");
  };

  // The pictures.

  /** Where a photograph lies on the frame: as it was aligned; else life-size, or as large as fits. */
  const onto = ({ onto: map, picture }) => {
    if (map) return map;
    const fits = Math.min(frame.width / picture.width, frame.height / picture.height);
    const by = picture.mm && frame.mm ? picture.mm / frame.mm : fits;
    return scaled(by, (frame.width - picture.width * by) / 2, (frame.height - picture.height * by) / 2);
  };

  const lay = (pane, at) => pane.lay(new Layer(sheets[at].picture, onto(sheets[at])));

  const open = (into, label) => {
    const pane = new Pane(view, label);
    into.append(pane.element);
    panes.push(pane);
    return pane;
  };

  const label = (places) => places.map((at) => sheets[at].picture.alt).join("; ");

  const clear = () => {
    clearInterval(timer);
    timer = undefined;
    for (const pane of panes) pane.close();
    panes = [];
    for (const item of items) item.querySelector(".ground").classList.remove("paned");
    for (const tools of [...form.querySelectorAll(".tools > *"), sign, signHow]) tools.hidden = true;
  };

  /** The frame that the chosen share: what they lie on; where none does, the first of them. */
  const setFrame = () => {
    const shownSheets = chosen.map((at) => sheets[at]).filter((sheet) => sheet.picture);
    if (shownSheets.length === 0) return false;
    const [{ picture }] = shownSheets;
    const isLaid = shownSheets.some((sheet) => sheet.onto);
    const base = (isLaid && data.frame) || { width: picture.width, height: picture.height, mm: picture.mm };
    frame = base;
    const finest = Math.max(...shownSheets.map((sheet) => {
      const [middleX, middleY] = [sheet.picture.width / 2, sheet.picture.height / 2];
      const [[x0, y0], [x1, y1]] = [apply(onto(sheet), middleX, middleY), apply(onto(sheet), middleX + 1, middleY)];
      return 1 / Math.hypot(x1 - x0, y1 - y0);
    }));
    const isToScale = shownSheets.every((sheet) => sheet.onto || sheet.picture.mm);
    const wanted = { ...base, finest: Math.max(finest, 1), mm: isToScale ? base.mm : undefined };
    if (JSON.stringify(view?.frame) !== JSON.stringify(wanted)) {
      view = new View(wanted);
      bar?.remove();
      aside.querySelector(".scale")?.remove();
      bar = controls(view);
      toolbar.append(bar);
      aside.prepend(bar.querySelector(".scale"));
    }
    return true;
  };

  const tools = (name) => {
    const found = find(`.tools > .${name}`);
    found.hidden = false;
    return found;
  };

  const names = () => ({ first: sheets[two[0]].number, second: sheets[two[1]].number });

  const ways = {
    side: () => {
      for (const at of chosen) {
        if (!sheets[at].picture) continue;
        const ground = items[at].querySelector(".ground");
        ground.classList.add("paned");
        lay(open(ground, label([at])), at);
      }
    },

    edge: (pane) => {
      lay(pane, two[0]);
      const film = lay(pane, two[1]);
      const box = tools("of-edge");
      const range = box.querySelector("input");
      const handle = element("div", "handle-of-edge");
      box.querySelector("label > span").textContent = fill(words["compare-edge-between"], names());
      pane.element.append(handle);
      const set = () => {
        film.style.clipPath = `inset(0 0 0 ${range.value}%)`;
        handle.style.insetInlineStart = `${range.value}%`;
      };
      range.oninput = set;
      handle.addEventListener("pointerdown", (event) => {
        event.preventDefault();
        handle.setPointerCapture(event.pointerId);
        handle.onpointermove = ({ clientX }) => {
          const { left, width } = pane.element.getBoundingClientRect();
          range.value = ((clientX - left) / width) * 100;
          set();
        };
      });
      for (const end of ["pointerup", "pointercancel"]) handle.addEventListener(end, () => (handle.onpointermove = null));
      set();
    },

    blink: (pane) => {
      const films = two.map((at) => lay(pane, at));
      const box = tools("of-blink");
      const [run, step] = [box.querySelector(".run"), box.querySelector(".step")];
      const show = (one) => {
        shown = one;
        films.forEach((film, at) => (film.style.visibility = at === one ? "visible" : "hidden"));
        box.querySelector(".now").textContent = fill(words["compare-now"], { number: sheets[two[one]].number });
      };
      const pace = () => PACES[box.querySelector("input:checked").value];
      const stop = () => {
        clearInterval(timer);
        timer = undefined;
        tell();
      };
      const go = () => {
        clearInterval(timer);
        timer = setInterval(() => show(1 - shown), pace());
        tell();
      };
      // What changes by itself is not read aloud; a step of the reader's own is.
      const tell = () => {
        box.querySelector(".now").setAttribute("aria-live", timer ? "off" : "polite");
        run.textContent = timer ? run.dataset.stop : run.dataset.go;
        run.hidden = box.querySelector(".pace").hidden = still.matches;
        box.querySelector(".is-still").hidden = !still.matches;
      };
      run.onclick = () => (timer ? stop() : go());
      step.onclick = () => {
        stop();
        show(1 - shown);
      };
      box.querySelector(".pace").onchange = () => timer && go();
      still.onchange = () => mode() === "blink" && stop();
      show(0);
      if (still.matches) stop();
      else go();
    },

    overlay: (pane) => {
      lay(pane, two[0]);
      const film = lay(pane, two[1]);
      const box = tools("of-overlay");
      const range = box.querySelector("input");
      box.querySelector("label > span").textContent = fill(words["compare-opacity-of"], names());
      range.oninput = () => (film.style.opacity = range.value / 100);
      range.oninput();
    },

    difference: async (pane) => {
      const box = tools("of-difference");
      const said = box.querySelector("output");
      sign.textContent = fill(words["compare-difference-of"], names());
      sign.hidden = signHow.hidden = false;
      said.textContent = said.dataset.working;
      const [first, second] = two.map((at) => sheets[at]);
      try {
        const { canvas, share } = await keyblockDifference.draw(first, second, frame);
        if (!panes.includes(pane)) return; // Meanwhile the reader looks at something else.
        const layer = element("div", "layer");
        Object.assign(layer.style, { width: `${frame.width}px`, height: `${frame.height}px` });
        Object.assign(canvas.style, { width: "100%", height: "100%" });
        layer.append(canvas);
        pane.lay({ element: layer, draw: ([a, , x, , b, y]) => (layer.style.transform = `matrix(${a}, 0, 0, ${b}, ${x}, ${y})`) });
        const ofWhat = frame.image ? "compare-difference-share-of-image" : "compare-difference-share";
        said.textContent = fill(words[ofWhat], { percent: percent.format(share) });
      } catch (error) {
        // A browser that opens the page from a disk does not let pixels be read.
        const isForbidden = error.name === "SecurityError";
        if (panes.includes(pane)) said.textContent = isForbidden ? words["compare-unreadable"] : "";
        if (!isForbidden) throw error;
      }
    },
  };

  /** Which two are looked at, where more than two could be. */
  const askTwo = () => {
    const able = laid();
    if (two.length !== 2 || two.some((at) => !able.includes(at))) two = able.slice(0, 2);
    ["first", "second"].forEach((name, place) => {
      const field = find(`fieldset.${name}`);
      field.hidden = able.length < 3 || mode() === "side";
      const focused = field.contains(document.activeElement);
      const answers = able.map((at) => {
        const input = Object.assign(document.createElement("input"), { type: "radio", name, value: at, checked: two[place] === at });
        const answer = element("label", "");
        answer.append(input, sheets[at].number);
        return answer;
      });
      field.querySelector(".answers").replaceChildren(...answers);
      if (focused) field.querySelector("input:checked").focus();
    });
  };

  // The panes take what the window leaves below the head and the tools, so that all is in sight at once.

  const narrow = matchMedia("(max-width: 46em)");

  const fit = () => {
    if (panes.length === 0) return;
    const isSide = mode() === "side";
    const high = (part) => Math.ceil(part?.getBoundingClientRect().height ?? 0);
    const captions = items.filter((item) => !item.hidden).map((item) => high(item.querySelector("figcaption")) + high(item.querySelector(".others")));
    const tallest = Math.max(0, ...captions) + 16;
    const above = panes[0].element.getBoundingClientRect().top + scrollY;
    // On a phone they stand below each other, each with its caption, and share the window without its head.
    const stacked = isSide && narrow.matches ? panes.length : 1;
    const left = stacked > 1 ? innerHeight - toolbar.offsetHeight : innerHeight - above;
    const room = left / stacked - tallest;
    document.body.style.setProperty("--room", `${Math.round(Math.max(room, (0.5 * innerHeight) / stacked))}px`);
  };

  const setChoosing = (isOpen) => {
    chooser.hidden = !isOpen;
    opener.setAttribute("aria-expanded", isOpen);
  };

  const show = () => {
    clear();
    const isChosen = chosen.length > 1;
    const able = laid();
    toolbar.hidden = how.hidden = !isChosen;
    if (opener && isChosen) opener.querySelector("span").textContent = chosen.map((at) => sheets[at].number).join(", ");
    if (chooser) {
      // Until two are chosen there is nothing but the choice; the page's own row is for readers without scripts.
      if (!isChosen) setChoosing(true);
      list.hidden = !isChosen;
      list.classList.remove("row");
    }
    for (const [at, item] of items.entries()) item.hidden = isChosen && !chosen.includes(at);
    // Two that lie on each other, or nothing but side by side.
    for (const input of modes) input.disabled = input.value !== "side" && able.length < 2;
    if (able.length < 2) modes[0].checked = true;
    askTwo();
    const notLaid = isChosen ? chosen.filter((at) => sheets[at].picture && !sheets[at].onto) : [];
    const unseen = isChosen ? chosen.filter((at) => !sheets[at].picture) : [];
    const told = [
      ...unseen.map((at) => fill(words["compare-no-picture"], { number: sheets[at].number })),
      ...notLaid.map((at) => fill(words["compare-not-laid"], { number: sheets[at].number, why: sheets[at].why })),
    ];
    if (able.length < 2 && chosen.length - unseen.length > 1) told.push(words["compare-side-only"]);
    find(".not-laid").replaceChildren(...told.map((text) => Object.assign(document.createElement("span"), { textContent: `${text} ` })));
    find(".not-laid").hidden = told.length === 0;
    const isReady = isChosen && setFrame();
    if (bar) bar.hidden = !isReady;
    const isSide = mode() === "side";
    find(".stage").hidden = isSide || !isReady;
    list.classList.toggle("captions", isReady && !isSide);
    for (const at of isReady && !isSide ? chosen : []) items[at].hidden = !two.includes(at);
    if (isReady) ways[mode()](isSide ? undefined : open(find(".stage"), label(two)));
    fit();
    if (chooser) {
      for (const [at, tick] of ticks.entries()) tick.disabled = chosen.length === MOST && !chosen.includes(at);
      const ids = { 0: "choose", 1: "choose-one-more", [MOST]: "four-chosen" };
      chooser.querySelector("output").textContent = words[`compare-${ids[chosen.length]}`] ?? "";
      const go = chooser.querySelector(".go");
      go.hidden = !isChosen;
      go.textContent = go.dataset.go.replace("{n}", chosen.length);
    }
  };

  const begin = () => {
    read();
    tabulate();
    show();
  };

  chooser?.addEventListener("change", () => {
    chosen = ticks.flatMap((tick, at) => (tick.checked ? [at] : []));
    tabulate();
    show();
    keep();
  });
  chooser?.addEventListener("reset", () => setTimeout(() => {
    chosen = [];
    tabulate();
    show();
    keep();
  }));
  find(".ways").addEventListener("change", ({ target }) => {
    if (target.name === "first" || target.name === "second") {
      const place = target.name === "first" ? 0 : 1;
      const at = Number(target.value);
      // The same twice is no comparison: then they change places.
      if (two[1 - place] === at) two.reverse();
      else two[place] = at;
    }
    show();
    keep();
  });
  for (const one of form.querySelectorAll("form")) one.addEventListener("submit", (event) => event.preventDefault());
  // A link to a part of the page takes nothing away.
  window.addEventListener("hashchange", () => /^$|[#&](of|mode|two|view)=/.test(location.hash) && begin());
  addEventListener("resize", fit);
  opener?.addEventListener("click", () => {
    setChoosing(chooser.hidden);
    fit();
    if (!chooser.hidden) chooser.scrollIntoView({ block: "nearest" });
  });
  chooser?.querySelector(".go").addEventListener("click", () => {
    setChoosing(false);
    fit();
    toolbar.scrollIntoView({ block: "nearest" });
    modes.find((input) => input.checked).focus({ preventScroll: true });
  });
  // Who comes with sheets chosen comes for the pictures.
  const isSent = new URLSearchParams(location.hash.slice(1)).get("of")?.includes(",");
  if (chooser && isSent) setChoosing(false);
  globalThis.keyblockCompare = { verdict, view: () => view };
  begin();
})();
