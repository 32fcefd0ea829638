// Resolves references ("OP 14 iii", "First List 9", an accession number, a title) to what they mean, with the names in
// resolve/index.json. No document, no page: resolve.js shows what is found here. The command `keyblock resolve` gives the
// same readings; src/study/resolve/ is laid out alike. docs/definitions.md, "References", says what is read and how.

import { bare, comparing, lastNotAfter } from "./find.js";

const CERTAINTIES = ["certain", "probable", "possible"];
const [CERTAIN, PROBABLE, POSSIBLE] = [0, 1, 2];
// What is meant, in the order of readings that are equally good.
const MEANT = ["design", "state", "printing", "impression", "holder", "person", "mark", "exhibition", "document", "series", "work", "row"];
// How a reference was understood, the closest first.
const RANKS = ["address", "cited-number", "holder-accession", "earlier", "number", "former-numeral", "name", "former-name", "accession", "earlier-alone", "state-key", "not-there", "beginning"];
const rankOf = (name) => RANKS.indexOf(name);
const LAST_EXPLICIT = rankOf("earlier");
const MOST_BEGINNINGS = 20;
const KINDS = ["design", "impression", "holder", "person", "lit", "exhibition", "mark", "document", "series", "page", "picture"];

const FIGURES = /^\p{N}+$/u;
const PLAIN_FIGURE = /^[1-9][0-9]*$/;
const LETTERS = /^\p{Alphabetic}/u;
const ANY_LETTER = /\p{Alphabetic}/u;

const SIGNS = [[1000, "m"], [900, "cm"], [500, "d"], [400, "cd"], [100, "c"], [90, "xc"], [50, "l"], [40, "xl"], [10, "x"], [9, "ix"], [5, "v"], [4, "iv"], [1, "i"]];

/** A number in lower-case roman numerals; in figures where they cannot write it. */
export function roman(number) {
  if (number < 1 || number > 3999) return String(number);
  let text = "";
  for (const [worth, sign] of SIGNS) {
    while (number >= worth) {
      text += sign;
      number -= worth;
    }
  }
  return text;
}

/** The number that roman numerals write; null for anything else. */
export function fromRoman(text) {
  if (!/^[ivxlcdm]{1,15}$/.test(text)) return null;
  let sum = 0;
  let rest = text;
  for (const [worth, sign] of SIGNS) {
    while (rest.startsWith(sign)) {
      sum += worth;
      rest = rest.slice(sign.length);
    }
  }
  return rest === "" && roman(sum) === text ? sum : null;
}

const figureOf = (part) => (PLAIN_FIGURE.test(part) && Number(part) <= 4294967295 ? Number(part) : null);

/** An address made of a template and keys. */
const expand = (template, keys) => template.replace(/\{(\w+)\}/g, (_, name) => encodeURIComponent(keys[name]));

/** Opens the names that `load` reads: a function from a path below `resolve/` to its JSON. It gets the tag of the index
 *  too, which changes with every compile that changes anything. */
export async function open(load) {
  const index = await load("index.json", "");
  const { numberParts, keyOfParts } = comparing(index.folding);
  const nameKey = (text) => numberParts(text).join(".");
  const { words } = index;
  const siglum = numberParts(index.siglum);
  const home = numberParts(index.address);
  const { designs } = index;

  // The names by key.
  const numbers = new Map();
  const formerNumbers = new Map();
  const keys = new Map();
  const records = new Map();
  const names = new Map();
  const works = new Map();
  const rows = [];
  const loneRows = new Map();
  const stateKeys = new Map();
  const add = (map, key, value) => {
    if (!map.has(key)) map.set(key, []);
    map.get(key).push(value);
  };
  const addNames = (all, meant, rank, why) => {
    for (const name of all ?? []) if (nameKey(name) !== "") add(names, nameKey(name), { meant, rank: rankOf(rank), why: { word: why } });
  };
  const addRecord = (kind, { key, was }, meant) => {
    add(records, `${kind}:${nameKey(key)}`, { meant, why: { word: "key" } });
    for (const former of was ?? []) add(records, `${kind}:${nameKey(former)}`, { meant, why: { word: "former-key" } });
  };
  designs.forEach((design, at) => {
    design.states ??= [];
    design.printings ??= [];
    design.standing = design.states.filter(({ numeral }) => numeral !== undefined).length;
    for (const state of design.states) state.place = state.numeral === undefined ? null : fromRoman(state.numeral);
    add(numbers, nameKey(design.number), at);
    for (const { edition, number } of design.formerly ?? []) add(formerNumbers, nameKey(number), { design: at, edition });
    add(keys, nameKey(design.key), { design: at, isFormer: false });
    for (const former of design.was ?? []) add(keys, nameKey(former), { design: at, isFormer: true });
    addNames(design.titles, ["design", at], "name", "title");
    addNames(design.former, ["design", at], "former-name", "former-title");
    addNames(design.ids, ["design", at], "name", "elsewhere");
    design.states.forEach(({ key }, state) => add(stateKeys, nameKey(key), [at, state]));
  });
  const placeOf = new Map(designs.map(({ key }, at) => [key, at]));
  for (const [kind, list] of [["holder", index.holders], ["person", index.people], ["mark", index.marks], ["exhibition", index.exhibitions], ["document", index.documents], ["series", index.series]]) {
    list.forEach((record, at) => {
      addNames(record.names, [kind, at], "name", "name");
      addNames(record.former, [kind, at], "former-name", "former-name");
      if (record.isil) addNames([record.isil], [kind, at], "name", "isil");
      addNames(record.ids, [kind, at], "name", "elsewhere");
      addRecord(kind, record, [kind, at]);
    });
  }
  const holderWords = index.holders.map(({ key, names: own, former, town, isil }) =>
    [...own, ...(former ?? []), town, isil, key].filter((text) => text !== undefined).flatMap(numberParts),
  );
  index.literature.forEach((work, at) => {
    work.numbers ??= [];
    addNames([work.short, work.title], ["work", at], "name", "name");
    addRecord("lit", work, ["work", at]);
    for (const name of [work.short, work.title, work.title.split(":")[0], work.key, work.author]) {
      const key = name === undefined ? "" : nameKey(name);
      if (key !== "" && !works.get(key)?.includes(at)) add(works, key, at);
    }
    const own = new Map();
    work.numbers.forEach((number, row) => {
      number.cited = [number.number, number.part].filter((part) => part !== undefined).join(" ");
      const key = nameKey(number.cited);
      if (number.number !== undefined && ANY_LETTER.test(number.number)) add(loneRows, key, [at, row]);
      own.set(key, row);
    });
    rows.push(own);
  });

  const loaded = new Map();
  const part = (path) => {
    if (!loaded.has(path)) {
      const promise = load(path, index.tag).then((file) => {
        if (file.tag !== index.tag) throw new Error("the catalogue was published anew");
        return file;
      });
      promise.catch(() => loaded.delete(path));
      loaded.set(path, promise);
    }
    return loaded.get(path);
  };
  const accessionsOf = async (parts) => {
    if (index.accessions.length === 0 || parts.length === 0) return [];
    const key = keyOfParts(parts);
    const { numbers: all } = await part(`accessions/${lastNotAfter(index.accessions, key)}.json`);
    return Object.hasOwn(all, key) ? all[key] : [];
  };

  const reading = (meant, rank, why, certainty = CERTAIN, record = null) => ({ meant, rank: typeof rank === "string" ? rankOf(rank) : rank, why, certainty, record });
  const has = (design, number) => (designs[design].impressions ?? []).some(([first, last]) => first <= number && number <= last);

  /** The reading of the record whose page is that of the sheet. */
  const onItsPage = (one) => {
    const [kind, design, number] = one.meant;
    const page = kind === "impression" ? designs[design].joined?.[number] : undefined;
    return page === undefined ? one : { ...one, meant: ["impression", design, page], record: number };
  };

  /** The kind of record and the parts of the key in a link or an address of the catalogue. */
  const linkOf = (text, parts) => {
    const [, kind, rest] = /^([^:/]*)[:/](.*)$/su.exec(text) ?? [];
    if (KINDS.includes(kind) && rest !== "") return [kind, numberParts(rest)];
    for (const way of [home, home.slice(1)]) {
      if (way.length === 0 || parts.length < way.length + 2 || !way.every((one, at) => parts[at] === one)) continue;
      const left = parts.slice(way.length);
      return KINDS.includes(left[0]) ? [left[0], left.slice(1)] : null;
    }
    return null;
  };

  /** A reference cut into its parts. */
  const read = (asked) => {
    const text = asked.trim();
    let all = numberParts(text);
    const link = linkOf(text, all);
    let edition = null;
    if (all.length > 2 && words.edition.includes(all.at(-2)) && FIGURES.test(all.at(-1))) {
      edition = all.at(-1);
      all = all.slice(0, -2);
    }
    const { parts, namesCatalogue } = bare(all, siglum, words.number);
    return { all, number: parts, namesCatalogue, edition, link };
  };

  /** A state or printing by its key or name. */
  const byKey = (at, rest) => {
    const design = designs[at];
    const isNamed = rest[0] === "printing" || words.state.includes(rest[0]);
    const sought = [rest, isNamed ? rest.slice(1) : rest].map((parts) => parts.join("."));
    const isIt = (text) => text !== undefined && sought.includes(nameKey(text));
    const find = (test, why) => {
      const state = design.states.findIndex(test);
      if (state >= 0) return [["state", at, state], { word: why }];
      const printing = design.printings.findIndex(test);
      return printing >= 0 ? [["printing", at, printing], { word: why }] : null;
    };
    const named = design.printings.findIndex(({ name }) => isIt(name));
    return (
      find(({ key }) => isIt(key), "key") ??
      (named >= 0 ? [["printing", at, named], { word: "name" }] : null) ??
      find(({ was }) => (was ?? []).some(isIt), "former-key")
    );
  };

  /** The states with a numeral: the present one, and those that had it in an earlier edition. */
  const statesWith = (at, place, total, edition) => {
    const design = designs[at];
    const found = [];
    design.states.forEach((state, place_) => {
      const meant = ["state", at, place_];
      const formerly = (state.formerly ?? []).filter(({ numeral }) => fromRoman(numeral) === place);
      if (edition !== null) {
        if (formerly.some((former) => former.edition === edition)) found.push([meant, { word: "edition", edition }]);
      } else if (state.place === place) {
        found.push([meant, { word: total !== null && total !== design.standing ? "other-total" : "number" }]);
      } else if (formerly.length > 0) found.push([meant, { word: "edition", edition: formerly[0].edition }]);
    });
    if (edition !== null && found.length === 0) {
      // The state that has the numeral now, unless it is known to have had another in that edition.
      const present = design.states.findIndex((state) => state.place === place && !(state.formerly ?? []).some((former) => former.edition === edition));
      if (present >= 0) found.push([["state", at, present], { word: "edition", edition }]);
    }
    return found;
  };

  /** The parts of a design that are meant by what stands after its number, key or title. */
  const partsOf = (at, isAfterNumber, rest, edition) => {
    if (rest.length === 0) return [[["design", at], { word: "number" }]];
    const keyed = byKey(at, rest);
    if (keyed) return [keyed];
    if (isAfterNumber && rest.length === 1) {
      const number = figureOf(rest[0]);
      if (number !== null && has(at, number)) return [[["impression", at, number], { word: "number" }]];
    }
    const isState = words.state.includes(rest[0]);
    const numerals = rest.filter((one) => !words.state.includes(one));
    const place = (one) => fromRoman(one) ?? (isState ? figureOf(one) : null);
    if (numerals.length < 1 || numerals.length > 2) return [];
    const numeral = place(numerals[0]);
    if (numeral === null) return [];
    let total = null;
    if (numerals.length === 2) {
      total = fromRoman(numerals[1]) ?? figureOf(numerals[1]);
      if (total === null) return [];
    }
    return statesWith(at, numeral, total, edition);
  };

  const joined = (parts, end) => parts.slice(0, end).join(".");

  const readParts = (asked, at, isAfterNumber, rest, why, rank, readings) => {
    const found = partsOf(at, isAfterNumber, rest, asked.edition);
    const wasRenumbered = asked.edition === null && found.length > 1;
    for (const [meant, ofPart] of found) {
      const isFormer = asked.edition === null && ofPart.word === "edition";
      const certainty = ofPart.word === "other-total" || isFormer ? POSSIBLE : wasRenumbered ? PROBABLE : CERTAIN;
      readings.push(onItsPage(reading(meant, isFormer ? "former-numeral" : rank, ofPart.word === "number" ? why : ofPart, certainty)));
    }
  };

  const whyOfKey = ({ isFormer }) => ({ word: isFormer ? "former-key" : "key" });

  /** A link to a record, or an address of its page or of a place on it. */
  const ofLink = ([kind, parts], readings) => {
    if (kind === "design") {
      for (let end = parts.length; end > 0; end -= 1) {
        const found = keys.get(joined(parts, end));
        if (!found) continue;
        for (const keyed of found) {
          let rest = parts.slice(end);
          if (["state", "printing"].includes(rest[0])) rest = rest.slice(1);
          const [meant, ofPart] = partsOf(keyed.design, false, rest, null)[0] ?? [["design", keyed.design], { word: "key" }];
          readings.push(reading(meant, "address", ofPart.word === "former-key" ? ofPart : whyOfKey(keyed)));
        }
        return;
      }
    } else if (kind === "impression") {
      const number = Number(parts.at(-1));
      for (const keyed of keys.get(parts.slice(0, -1).join(".")) ?? []) {
        if (/^[0-9]+$/.test(parts.at(-1)) && has(keyed.design, number)) {
          readings.push(onItsPage(reading(["impression", keyed.design, number], "address", whyOfKey(keyed))));
        }
      }
    } else {
      for (let end = 1; end <= parts.length; end += 1) {
        for (const { meant, why } of records.get(`${kind}:${joined(parts, end)}`) ?? []) {
          if (end === parts.length) readings.push(reading(meant, "address", why));
          else if (meant[0] === "work") {
            const row = rows[meant[1]].get(parts.slice(end).join("."));
            if (row !== undefined) readings.push(reading(["row", meant[1], row], "address", why));
          }
        }
      }
    }
  };

  /** A number or key of the catalogue, with what follows it. */
  const ours = (asked, readings) => {
    const rank = rankOf(asked.namesCatalogue ? "cited-number" : "number");
    for (let end = 1; end <= asked.number.length; end += 1) {
      const key = joined(asked.number, end);
      const rest = asked.number.slice(end);
      // A design that had another number in the edition that is cited is not meant by its present one.
      const hadOther = (at) => (designs[at].formerly ?? []).some(({ edition }) => edition === asked.edition);
      for (const design of (numbers.get(key) ?? []).filter((at) => !hadOther(at))) readParts(asked, design, true, rest, { word: "number" }, rank, readings);
      for (const { design, edition } of formerNumbers.get(key) ?? []) {
        if (asked.edition !== null && asked.edition !== edition) continue;
        const found = [];
        readParts(asked, design, true, rest, { word: "edition", edition }, rank, found);
        if (asked.edition === null) for (const one of found) Object.assign(one, { rank: rankOf("former-numeral"), certainty: POSSIBLE });
        readings.push(...found);
      }
      for (const keyed of (keys.get(key) ?? []).filter(({ design }) => !hadOther(design))) readParts(asked, keyed.design, true, rest, whyOfKey(keyed), rank, readings);
    }
  };

  /** The number of a work, as it stands there or with another numeral or without the total. */
  const rowOf = (work, parts) => {
    let number = parts;
    while (number.length > 1 && words.number.includes(number[0])) number = number.slice(1);
    const find = (one) => rows[work].get(one.join("."));
    const itself = find(number);
    if (itself !== undefined) return itself;
    const plain = number.filter((one) => !words.state.includes(one));
    const otherNumeral = () => {
      if (plain.length === 0) return undefined;
      const last = plain.at(-1);
      const place = fromRoman(last);
      const other = place !== null ? String(place) : /^[0-9]+$/.test(last) && Number(last) <= 4294967295 ? roman(Number(last)) : null;
      return other === null ? undefined : find([...plain.slice(0, -1), other]);
    };
    const hasTotal = plain.length > 1 && fromRoman(plain.at(-2)) !== null;
    return find(plain) ?? (plain.length < number.length ? otherNumeral() : undefined) ?? (hasTotal ? find(plain.slice(0, -1)) : undefined);
  };

  /** Ours for a number of an earlier catalogue, and the number itself where it stands in the list of that. */
  const ofRow = (work, row, rank, readings) => {
    const { short, numbers: all } = index.literature[work];
    const number = all[row];
    const own = rank === "earlier" ? CERTAIN : PROBABLE;
    for (const { design, state, printing, relation } of number.ours) {
      const at = placeOf.get(design);
      const meant =
        state !== undefined
          ? ["state", at, designs[at].states.findIndex(({ key }) => key === state)]
          : printing !== undefined
            ? ["printing", at, designs[at].printings.findIndex(({ key }) => key === printing)]
            : ["design", at];
      const certainty = relation === "error" ? POSSIBLE : relation === "covers-ours" ? (number.ours.length === 1 ? PROBABLE : POSSIBLE) : CERTAIN;
      readings.push(reading(meant, rank, { word: "earlier", work: short, number: number.cited, relation, part: meant[0] }, Math.max(own, certainty)));
    }
    readings.push(reading(["row", work, row], rank, { word: "row" }, own));
  };

  /** A number of an earlier catalogue, behind the name of that catalogue or alone. */
  const earlier = (asked, readings) => {
    for (let end = asked.all.length - 1; end > 0; end -= 1) {
      const before = readings.length;
      for (const work of works.get(joined(asked.all, end)) ?? []) {
        const row = rowOf(work, asked.all.slice(end));
        if (row !== undefined) ofRow(work, row, "earlier", readings);
      }
      if (readings.length > before) return;
    }
    for (const [work, row] of loneRows.get(asked.number.join(".")) ?? []) ofRow(work, row, "earlier-alone", readings);
  };

  const withoutAccessionWords = (parts) => {
    let left = parts;
    while (left.length > 1 && (words.accession.includes(left[0]) || words.number.includes(left[0]))) left = left.slice(1);
    return left;
  };

  const isTelling = (one) => [...one].length > 1 && LETTERS.test(one);

  /** The holders of whose names `parts` are words (certain) or beginnings of words (probable), by key. */
  const fittingHolders = (parts) => {
    const fits = new Map();
    if (!parts.some(isTelling)) return fits;
    holderWords.forEach((own, at) => {
      let fit = CERTAIN;
      for (const one of parts) {
        if (own.includes(one)) continue;
        if (!isTelling(one) || !own.some((word) => word.startsWith(one))) return;
        fit = PROBABLE;
      }
      fits.set(index.holders[at].key, fit);
    });
    return fits;
  };

  const nameOfHolder = new Map(index.holders.map(({ key, names: [name] }) => [key, name]));

  const sheet = ([impression, holder, ...kinds], rank, certainty, readings) => {
    const dot = impression.lastIndexOf(".");
    const design = placeOf.get(impression.slice(0, dot));
    const word = kinds.includes("elsewhere") ? "elsewhere" : kinds.includes("former") ? "former-accession" : kinds.includes("bare") ? "bare-accession" : "accession";
    const meant = ["impression", design, Number(impression.slice(dot + 1))];
    const why = { word, holder: holder === null ? undefined : nameOfHolder.get(holder) };
    readings.push(onItsPage(reading(meant, rank, why, Math.max(certainty, kinds.includes("bare") ? PROBABLE : CERTAIN))));
  };

  /** An accession number, alone or with its holder before or behind it. */
  const accession = async (asked, readings) => {
    for (const one of await accessionsOf(withoutAccessionWords(asked.all))) sheet(one, "accession", CERTAIN, readings);
    for (let at = 1; at < asked.all.length; at += 1) {
      const [before, behind] = [asked.all.slice(0, at), asked.all.slice(at)];
      for (const [holder, number] of [[before, behind], [behind, before]]) {
        const fits = fittingHolders(holder);
        if (fits.size === 0) continue;
        for (const one of await accessionsOf(withoutAccessionWords(number))) {
          if (one[1] !== null && fits.has(one[1])) sheet(one, "holder-accession", fits.get(one[1]), readings);
        }
      }
    }
  };

  /** A title or name; a title with a state or printing behind it; the key of a state. */
  const named = (asked, readings) => {
    for (let end = 1; end <= asked.all.length; end += 1) {
      for (const { meant, rank, why } of names.get(joined(asked.all, end)) ?? []) {
        if (meant[0] === "design") readParts(asked, meant[1], false, asked.all.slice(end), why, rank, readings);
        else if (end === asked.all.length) readings.push(reading(meant, rank, why));
      }
    }
    for (const [design, state] of stateKeys.get(asked.all.join(".")) ?? []) {
      readings.push(reading(["state", design, state], "state-key", { word: "key" }, PROBABLE));
    }
  };

  /** A number of ours or of an earlier catalogue with something behind it that is not recorded. */
  const notThere = (asked, readings) => {
    for (let end = asked.number.length - 1; end > 0; end -= 1) {
      const rest = asked.number.slice(end);
      const isNumeral = fromRoman(rest[0]) !== null || words.state.includes(rest[0]);
      const found = numbers.get(joined(asked.number, end));
      if (!found || !(asked.namesCatalogue || isNumeral)) continue;
      for (const design of found) readings.push(reading(["design", design], "not-there", { word: "not-there", text: rest.join(" ") }, POSSIBLE));
      return;
    }
    for (let end = asked.all.length - 1; end > 0; end -= 1) {
      const number = asked.all.slice(end);
      for (const work of works.get(joined(asked.all, end)) ?? []) {
        for (let upTo = number.length - 1; upTo > 0; upTo -= 1) {
          const row = rowOf(work, number.slice(0, upTo));
          if (row === undefined) continue;
          const { short, numbers: all } = index.literature[work];
          const why = { word: "earlier-not-there", work: short, number: all[row].cited, text: number.slice(upTo).join(" ") };
          for (const { design } of all[row].ours) readings.push(reading(["design", placeOf.get(design)], "not-there", why, POSSIBLE));
          readings.push(reading(["row", work, row], "not-there", { word: "row" }, POSSIBLE));
          break;
        }
      }
      if (readings.length > 0) return;
    }
  };

  /** The titles and names that begin so and go on with a further word. */
  const beginning = (asked, readings) => {
    const sought = `${asked.all.join(".")}.`;
    const found = new Map();
    for (const [name, all] of names) {
      if (name.startsWith(sought)) for (const { meant } of all) found.set(meant.join(" "), meant);
    }
    if (found.size > MOST_BEGINNINGS) return;
    for (const meant of found.values()) readings.push(reading(meant, "beginning", { word: "beginning" }, found.size === 1 ? PROBABLE : POSSIBLE));
  };

  const byMeant = (a, b) => MEANT.indexOf(a.meant[0]) - MEANT.indexOf(b.meant[0]) || a.meant[1] - b.meant[1] || (a.meant[2] ?? 0) - (b.meant[2] ?? 0);

  /** Each thing once. */
  const eachOnce = (readings) =>
    readings
      .sort((a, b) => byMeant(a, b) || a.rank - b.rank || a.certainty - b.certainty)
      .filter((one, at, all) => at === 0 || byMeant(all[at - 1], one) !== 0);

  /** The readings beside each other, the likeliest first. */
  const settle = (all) => {
    const found = eachOnce(all.filter(({ meant }) => meant[0] !== "row"));
    const last = eachOnce(all.filter(({ meant }) => meant[0] === "row"));
    const closest = Math.min(...found.map(({ rank }) => rank));
    const isOne = found.filter(({ rank }) => rank === closest).length === 1;
    if (found.length > 1) {
      for (const one of found) {
        const most = one.rank !== closest || !isOne ? POSSIBLE : closest <= LAST_EXPLICIT ? CERTAIN : PROBABLE;
        one.certainty = Math.max(one.certainty, most);
      }
    }
    found.sort((a, b) => a.certainty - b.certainty || a.rank - b.rank || byMeant(a, b));
    last.sort((a, b) => a.certainty - b.certainty || byMeant(a, b));
    return [...found, ...last];
  };

  /** What a reading leads to. */
  const targetOf = ([kind, at, place]) => {
    const address = (name, keys_) => `${index.address}/${expand(index.addresses[name], keys_)}`;
    const target = (name, key, where, label, more = {}) => ({ kind: name, key, state: null, printing: null, address: where, label, ...more });
    if (["holder", "person", "mark", "exhibition", "document", "series"].includes(kind)) {
      const { key, names: [first], town } = index[{ holder: "holders", person: "people", mark: "marks", exhibition: "exhibitions", document: "documents", series: "series" }[kind]][at];
      const name = first ?? "";
      return target(kind, key, address(kind, { [kind]: key }), town !== undefined && !name.includes(town) ? `${name}, ${town}` : name);
    }
    if (kind === "work" || kind === "row") {
      const { key, short, numbers: all } = index.literature[at];
      if (kind === "work") return target("literature", key, address("literature", { literature: key }), short);
      return target("literature", key, address("row", { literature: key, row: all[place].row }), `${short}, ${all[place].cited}`);
    }
    const design = designs[at];
    const { key } = design;
    const cited = `${index.siglum} ${design.number}`;
    if (kind === "design") return target("design", key, address("design", { design: key }), design.titles.length > 0 ? `${cited}, ${design.titles[0]}` : cited);
    if (kind === "impression") return target("impression", `${key}.${place}`, address("impression", { impression: `${key}.${place}` }), `${cited}.${place}`);
    if (kind === "printing") {
      const printing = design.printings[place];
      return target("design", key, address("printing", { design: key, printing: printing.key }), `${cited} (${printing.name ?? printing.key})`, { printing: printing.key });
    }
    const state = design.states[place];
    const numeral = state.place === null ? ` (${state.key})` : design.standing === 1 ? `, ${words.only_state}` : ` ${roman(state.place)}/${roman(design.standing)}`;
    return target("design", key, address("state", { design: key, state: state.key }), `${cited}${numeral}`, { state: state.key });
  };

  /** What has become of what is meant: of the part or sheet itself, else of its design; nothing where it simply stands. */
  const standsOf = ([kind, at, place]) => {
    if (index.stands === undefined) return undefined;
    if (kind === "holder") return index.stands[`holder:${index.holders[at].key}`];
    if (!["design", "state", "printing", "impression"].includes(kind)) return undefined;
    const { key, states, printings } = designs[at];
    const own = { state: () => `state:${key}/${states[place].key}`, printing: () => `printing:${key}/${printings[place].key}`, impression: () => `impression:${key}.${place}` }[kind];
    return (own && index.stands[own()]) ?? index.stands[`design:${key}`];
  };

  /** The short name of a record: "OP 15", "OP 15.2", "Harbour Museum". */
  const shortName = (record) => {
    const [kind, key] = record.split(":");
    const cited = (design) => placeOf.has(design) && `${index.siglum} ${designs[placeOf.get(design)].number}`;
    if (kind === "design") return cited(key) || key;
    if (kind === "holder") return nameOfHolder.get(key) ?? key;
    const dot = key.lastIndexOf(".");
    const design = kind === "impression" && cited(key.slice(0, dot));
    return design ? design + key.slice(dot) : key;
  };

  /** The readings of a reference, the likeliest first. `why` has the end of the id of its word, and its arguments. */
  const resolve = async (text) => {
    const asked = read(text);
    const readings = [];
    if (asked.link) ofLink(asked.link, readings);
    if (readings.length === 0 && asked.all.length > 0) {
      ours(asked, readings);
      earlier(asked, readings);
      await accession(asked, readings);
      named(asked, readings);
    }
    if (readings.length === 0 && asked.all.length > 0) {
      notThere(asked, readings);
      beginning(asked, readings);
    }
    return settle(readings).map(({ meant, certainty, why, record }) => {
      const stands = standsOf(meant);
      const see = stands?.see ?? [];
      return {
        ...targetOf(meant),
        certainty: CERTAINTIES[certainty],
        why: {
          ...why,
          record: record === null ? undefined : `${designs[meant[1]].number}.${record}`,
          stands: stands?.how,
          records: see.length > 0 ? see.map(shortName).join(", ") : undefined,
        },
        standing: stands?.how ?? null,
        see: see.map((one) => `${index.address}/${one.replace(":", "/")}/`),
      };
    });
  };

  return { index, resolve };
}

/** Why a reference is read so, in words: `words.why` by word, `words.relation` by relation and part ("covers-ours state"). */
export function reason(words, why) {
  const fill = (text) => text.replace(/\{(\w+)\}/g, (_, name) => why[name]);
  let told = fill(words.why[why.word]);
  if (why.relation !== undefined) told += ` (${words.relation[`${why.relation} ${why.part}`]})`;
  if (why.holder !== undefined) told += `, ${why.holder}`;
  if (why.record !== undefined) told += `; ${fill(words.why.joined)}`;
  if (why.stands !== undefined) told += `; ${words.stands[why.stands]}`;
  if (why.records !== undefined) told += `, ${fill(words.see)}`;
  return told;
}
