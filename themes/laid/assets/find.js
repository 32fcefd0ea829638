// Finds entries in the search index, which the compile made (`search/`). No document, no page: search.js shows what
// is found here. docs/definitions.md, "Search", says what is found and in which order.

// The signs of a bitmap, by value.
const SIGNS = "!#$()*+,-./:;=?@";
// The classes of a term, by place: number, whole name, word of the name, fact, text.
const [NUMBER, NAME, TEXT] = [0, 1, 4];
const LONGEST_WORD = 40;
const NONE = 255;

const MARK = /^\p{M}$/u;
const UNSEEN = /^\p{Default_Ignorable_Code_Point}$/u;
const DROPS_MARKS = /^[\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}]$/u;
const RUNS = /[\p{L}\p{N}\p{M}\p{Default_Ignorable_Code_Point}]+/gu;
const FIGURE = /^\p{N}$/u;
const UNSPACED = /^[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Thai}\p{Script=Lao}\p{Script=Khmer}\p{Script=Myanmar}\u30fc]$/u;

/** The functions that compare texts by a table of folding: `{ target: letters }`. */
export function comparing(table) {
  const folded = new Map();
  for (const [target, letters] of Object.entries(table)) {
    for (const letter of letters) folded.set(letter, target);
  }

  /** A normalised text in the letters by which texts are compared. */
  const fold = (text) => {
    let out = "";
    let takesMarks = false;
    for (const letter of text) {
      if (UNSEEN.test(letter) || (takesMarks && MARK.test(letter))) continue;
      out += folded.get(letter) ?? letter;
      takesMarks = DROPS_MARKS.test(letter);
    }
    return out;
  };

  const shortened = (word) => [...word].slice(0, LONGEST_WORD).join("");

  /** A run cut wherever `test` changes. */
  const parts = (run, test) => {
    const found = [];
    let kind;
    for (const letter of run) {
      const unchanged = MARK.test(letter) || UNSEEN.test(letter) || kind === test.test(letter);
      if (!unchanged && kind !== undefined) found.push("");
      if (found.length === 0) found.push("");
      if (!unchanged) kind = test.test(letter);
      found[found.length - 1] += letter;
    }
    return found;
  };

  /** The words of a text as the index has them: folded; of what they are a part, where they are pairs; and whether
   *  they are the last letter of several. */
  const words = (text) => {
    const found = [];
    for (const [run] of text.normalize("NFKC").matchAll(RUNS)) {
      for (const part of parts(run, UNSPACED)) {
        if (UNSPACED.test([...part][0])) {
          const letters = [...fold(part)];
          letters.forEach((letter, at) => {
            found.push({ folded: letter + (letters[at + 1] ?? ""), of: part, isLast: at > 0 && at === letters.length - 1 });
          });
        } else if (fold(part) !== "") {
          found.push({ folded: shortened(fold(part)), isLast: false });
        }
      }
    }
    return found;
  };

  /** The parts of a number, folded: its runs of letters and its runs of figures. */
  const numberParts = (text) => {
    const found = [...text.normalize("NFKC").matchAll(RUNS)].flatMap(([run]) => parts(run, FIGURE).map(fold));
    return found.filter((part) => part !== "");
  };

  /** The key of a number that consists of these parts. */
  const keyOfParts = (all) => shortened(all.join("."));

  /** The key of a number; empty for a text without letters and figures. */
  const numberKey = (text) => keyOfParts(numberParts(text));

  return { fold, words, numberParts, keyOfParts, numberKey };
}

/** A query without the siglum or a word like "no." before a number, all as the parts of numbers; and whether the
 *  siglum stood there. */
export function bare(parts, siglum, before) {
  let left = parts;
  let namesCatalogue = false;
  for (;;) {
    if (siglum.length > 0 && left.length > siglum.length && siglum.every((part, at) => left[at] === part)) {
      left = left.slice(siglum.length);
      namesCatalogue = true;
    } else if (left.length > 1 && before.includes(left[0])) left = left.slice(1);
    else return { parts: left, namesCatalogue };
  }
}

/** The places of a set, ascending. */
export function placesOf(set) {
  if (!set) return [];
  if (typeof set[1] === "string") {
    const [first, signs] = set;
    const places = [];
    for (let at = 0; at < signs.length; at += 1) {
      const value = SIGNS.indexOf(signs[at]);
      for (let bit = 0; bit < 4; bit += 1) if (value & (8 >> bit)) places.push(first + 4 * at + bit);
    }
    return places;
  }
  const places = [];
  let last = 0;
  for (const number of set) {
    if (number >= 0) places.push((last += number));
    else for (let more = number; more < 0; more += 1) places.push((last += 1));
  }
  return places;
}

/** The last of some starts that does not come after what is sought. */
export function lastNotAfter(starts, sought) {
  let [low, high] = [0, starts.length];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (starts[middle] <= sought) low = middle;
    else high = middle;
  }
  return low;
}

/** The index that `load` reads file by file: a function from a path below the index to its JSON. `load` gets the
 *  tag of the index too, which changes with every compile that changes anything. */
export async function open(load) {
  const index = await load("index.json", "");
  const { fold, words, numberKey } = comparing(index.folding);
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

  /** The terms that are `sought` or begin with it. */
  const termsOf = async (sought) => {
    if (index.terms.length === 0) return [];
    const { terms } = await part(`terms/${lastNotAfter(index.terms, sought)}.json`);
    const found = [];
    for (const [term, value] of Object.entries(terms)) {
      if (!term.startsWith(sought)) continue;
      const isCut = term.endsWith("*");
      if (isCut && term !== `${sought}*`) continue;
      found.push({ term, value, isWhole: term === sought, isCut, atBreak: term[sought.length] === "." });
    }
    return found;
  };

  /** How closely a term fits in one of its classes; 0 is the closest. */
  const grade = ({ isWhole, atBreak }, place) => {
    if (place <= NAME) return 3 * place + (isWhole ? 0 : atBreak ? 1 : 2);
    return 6 + 2 * (place - 2) + (isWhole ? 0 : 1);
  };

  /** Where the rest of a term stands that does not fit into its shard: the first of some files, and how many. */
  const restOf = ({ value }) => (Array.isArray(value.at(-1)) ? undefined : value.at(-1)?.more);

  const setsOf = (found) => {
    if (!found.sets) {
      const sets = restOf(found) ? found.value.slice(1, -1) : found.value.slice(1);
      found.sets = sets.map(placesOf);
    }
    return found.sets;
  };

  /** Adds the rest of a term to its sets: what follows in the class that was cut, and the classes after it. */
  const addRest = async (found) => {
    const [first, count] = restOf(found);
    const files = await Promise.all(Array.from({ length: count }, (_, at) => part(`more/${first + at}.json`)));
    const sets = [...setsOf(found)];
    for (const { sets: rest } of files) {
      for (const [place, set] of rest) sets[place] = [...(sets[place] ?? []), ...placesOf(set)];
    }
    found.sets = Array.from(sets, (places) => places ?? []);
  };

  /** For every entry the closest grade among some terms. */
  const grades = (terms, furthest) => {
    const closest = new Uint8Array(index.count).fill(NONE);
    for (const term of terms) {
      setsOf(term).forEach((places, place) => {
        if (place > furthest) return;
        const here = grade(term, place);
        for (const at of places) if (closest[at] > here) closest[at] = here;
      });
    }
    return closest;
  };

  const siglum = index.siglum.split(".").filter((part) => part !== "");
  const before = (index.words["number-words"] ?? "").split(/[\s,|]+/).map(numberKey);

  /** What a query asks for: the keys of numbers and names that it may be, and its words. */
  const read = (query) => {
    const key = numberKey(query);
    if (key === "") return { keys: [], words: [] };
    const tokens = key.split(".");
    const { parts: left } = bare(tokens, siglum, before);
    const keys = [...new Set([key, left.join(".")])];
    let rest = words(query).filter(({ isLast }) => !isLast);
    // The siglum belongs to the number after it, and is no word of any entry.
    for (let dropped = tokens.length - left.length; dropped > 0 && rest.length > 1; dropped -= 1) {
      if (rest[0].folded !== tokens[tokens.length - left.length - dropped]) break;
      rest = rest.slice(1);
    }
    const isOpen = !/[\s\p{P}]$/u.test(query);
    return { keys, words: rest.map((word, at) => ({ ...word, isOpen: isOpen && at === rest.length - 1 })) };
  };

  /** The terms of a word: those that begin with it while it is typed, or where nothing is exactly it. */
  const termsOfWord = async ({ folded, isOpen }) => {
    const terms = await termsOf(folded);
    const whole = terms.filter(({ isWhole }) => isWhole);
    return isOpen || whole.length === 0 ? terms : whole;
  };

  /** Finds the entries for a query: `places`, the best first; `some` where no entry has all of its words; `isCut`
   *  where a short beginning stands for more entries than were looked at. A word that very many entries have is at first
   *  read in part, which gives the first entries: then `complete` gives what is found when the rest is read. */
  const find = async (query) => {
    const asked = read(query);
    const [ofKeys, ofWords] = await Promise.all([
      Promise.all(asked.keys.map(termsOf)),
      Promise.all(asked.words.map(termsOfWord)),
    ]);
    const partial = [...ofKeys, ...ofWords].flat().filter(restOf);
    const complete = async () => {
      await Promise.all(partial.map(addRest));
      return ranked(asked, ofKeys, ofWords);
    };
    const first = ranked(asked, ofKeys, ofWords);
    if (partial.length === 0) return first;
    // Before the rest is read, nothing says that no entry has every word.
    return first.places.length === 0 || first.some ? complete() : { ...first, complete };
  };

  /** The entries in order of how well they fit. */
  const ranked = (asked, ofKeys, ofWords) => {
    const keys = ofKeys.map((terms) => grades(terms, NAME));
    const each = ofWords.map((terms) => grades(terms, TEXT));
    const scored = [];
    const add = (score, at) => scored.push(score * 0x4000000 + at);
    const score = (at, least) => {
      let [furthest, sum, missing] = [0, 0, 0];
      for (const closest of each) {
        if (closest[at] === NONE) missing += 1;
        else {
          furthest = Math.max(furthest, closest[at]);
          sum += closest[at];
        }
      }
      if (missing > least || missing === each.length) return null;
      return (missing * 16 + furthest) * 1024 + sum;
    };
    for (let at = 0; at < index.count; at += 1) {
      let best = score(at, 0);
      for (const closest of keys) {
        if (closest[at] !== NONE && (best === null || closest[at] * 1024 < best)) best = closest[at] * 1024 + 0;
      }
      if (best !== null) add(best, at);
    }
    const some = scored.length === 0 && each.length > 1;
    if (some) {
      for (let at = 0; at < index.count; at += 1) {
        const best = score(at, each.length - 1);
        if (best !== null) add(best, at);
      }
    }
    const places = Float64Array.from(scored).sort();
    const isCut = [...ofKeys, ...ofWords].some((terms) => terms.some(({ isCut: cut }) => cut));
    return {
      places: Uint32Array.from(places, (value) => value % 0x4000000),
      some: some && places.length > 0,
      isCut,
      asked,
      ofKeys,
      ofWords,
    };
  };

  const has = (places, at) => {
    let [low, high] = [0, places.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (places[middle] < at) low = middle + 1;
      else high = middle;
    }
    return places[low] === at;
  };

  /** The closest terms that an entry has among some, with the place of the class. */
  const matched = (terms, at, furthest) => {
    const found = [];
    for (const term of terms) {
      const place = setsOf(term).findIndex((places, place) => place <= furthest && has(places, at));
      if (place >= 0) found.push({ place, grade: grade(term, place), written: term.isCut ? null : term.value[0] || term.term });
    }
    return found.sort((a, b) => a.grade - b.grade || (a.written ?? "").length - (b.written ?? "").length);
  };

  /** The words by which an entry was found: `[{ place, written }]`, each once. Pairs of letters are told as what the
   *  reader typed. */
  const found = ({ asked, ofKeys, ofWords }, at) => {
    const keys = ofKeys.flatMap((terms) => matched(terms, at, NAME)).sort((a, b) => a.grade - b.grade);
    const told = [];
    const tell = (place, written) => {
      if (written !== null && !told.some((one) => one.written === written)) told.push({ place, written });
    };
    if (keys.length > 0) tell(keys[0].place, keys[0].written);
    else {
      ofWords.forEach((terms, word) => {
        const [best] = matched(terms, at, TEXT);
        if (best) tell(best.place, asked.words[word].of ?? best.written);
      });
    }
    return told;
  };

  /** An entry as it is shown. */
  const record = async (at) => {
    const file = lastNotAfter(index.records, at);
    const { records } = await part(`records/${file}.json`);
    const [kind, number, title, about, href, picture, language] = records[at - index.records[file]];
    return { kind, number: number || "", title: title || "", about: about || "", href: href || "", picture: picture || null, language: language || null };
  };

  /** What readers narrow by: for each, its values and for every entry the number of its combination. */
  const columns = async () => {
    const { columns: all } = await part("narrow.json");
    const kinds = index.kinds.map(([word]) => [word, index.words[`kind-${word}`] ?? word]);
    const ofKind = new Uint16Array(index.count);
    index.kinds.forEach(([, first], kind) => ofKind.fill(kind + 1, first));
    const read = await Promise.all(
      all.map(async ({ by, values, combinations, parts: starts }) => {
        const files = await Promise.all(starts.map((_, at) => part(`narrow/${by}-${at}.json`)));
        const of = new Uint16Array(index.count);
        let at = 0;
        for (const { numbers } of files) {
          for (const number of numbers) {
            if (number >= 0) of[at++] = number;
            else of.fill(of[at - 1], at, (at -= number));
          }
        }
        return { by, values, combinations: [[], ...combinations], of };
      }),
    );
    return [{ by: "kind", values: kinds, combinations: [[], ...kinds.map((_, at) => [at])], of: ofKind }, ...read];
  };

  return { index, fold, words, numberKey, find, found, record, columns };
}

/** The places that have every choice (`{ by: key }`), and for each column how many of those that have the other
 *  choices have each value. */
export function narrow(columns, places, choices) {
  const chosen = columns.map(({ by, values }) => values.findIndex(([key]) => key === choices[by]));
  const fits = columns.map(({ combinations }, column) => combinations.map((values) => chosen[column] < 0 || values.includes(chosen[column])));
  const counts = columns.map(({ values }) => new Uint32Array(values.length));
  const left = [];
  for (const at of places) {
    let missed = -1;
    let several = false;
    for (let column = 0; column < columns.length; column += 1) {
      if (fits[column][columns[column].of[at]]) continue;
      several = missed >= 0;
      if (several) break;
      missed = column;
    }
    if (several) continue;
    if (missed < 0) left.push(at);
    for (let column = 0; column < columns.length; column += 1) {
      if (missed >= 0 && missed !== column) continue;
      for (const value of columns[column].combinations[columns[column].of[at]]) counts[column][value] += 1;
    }
  }
  return { places: left, counts };
}
