// The identification key: what a sheet can be, given what is seen on it.
//
// The arithmetic is the catalogue's own (docs/definitions.md, "Likelihood"), on the table that stands in the page
// as data; nothing is fetched, so the page works from a disk. Its three functions are pure and are
// what `keyblock identify --json` is held against.
//
// Answers are kept in the address, to be sent to a colleague:
//   #see=ANSWER,ANSWER…
//   ANSWER  = POINT=VALUE|VALUE…   one of these        POINT!=VALUE|VALUE…   none of these
//             followed by :probable or :possible where it is not certain
//   VALUE   = a word of the point, a count ("other" or any count not recorded), a measured number
"use strict";

(() => {
  const ROUNDING = 1e-6; // Absorbs the rounding of decimal fractions.
  const ALIKE = 1e-12; // Numbers that differ by less keep the order of the record.
  const MOST_STEPS = 100000;
  const RATES = { certain: 0.01, probable: 0.1, possible: 0.3 };

  /** An answer on its point's scale: a number, a set of places; null where it tells nothing. */
  const seenAt = (point, answer) => {
    if (!point.values) return Number.isFinite(answer.number) ? answer.number : null;
    const places = point.values.map((_, place) => place).filter((place) => answer.places.includes(place) !== answer.not);
    return answer.places.length > 0 && places.length > 0 ? places : null;
  };

  /** How likely `seen` is where `allowed` is shown (null: not known) and answers err at a rate. */
  const likelihood = (point, seen, allowed, error) => {
    if (!point.values) {
      if (!point.span) return 1;
      const [low, high] = point.span;
      const uniform = 1 / (high - low);
      if (allowed === null) return uniform;
      const deviation = point.tolerance / 2;
      const away = (Math.min(Math.max(seen, low), high) - allowed) / deviation;
      const normal = Math.exp(-0.5 * away * away) / (deviation * Math.sqrt(2 * Math.PI));
      return (1 - error) * normal + error * uniform;
    }
    const all = point.values.length;
    if (allowed === null) return seen.length / all;
    const agreeing = seen.filter((place) => allowed.includes(place)).length;
    const right = agreeing / allowed.length;
    const others = all - allowed.length;
    return others === 0 ? right : (1 - error) * right + (error * (seen.length - agreeing)) / others;
  };

  const rulesOut = (point, seen, allowed) => {
    if (allowed === null) return false;
    if (!point.values) return Math.abs(seen - allowed) > point.tolerance + ROUNDING;
    return !seen.some((place) => allowed.includes(place));
  };

  /** The answers that are imagined when the next point is chosen. */
  const imagined = (point) => {
    if (point.values) return point.values.map((_, place) => [place]);
    if (!point.span) return [];
    const [low, high] = point.span;
    let step = point.tolerance / 2;
    let steps = Math.floor((high - low) / step + 1e-9);
    if (steps > MOST_STEPS) [step, steps] = [(high - low) / MOST_STEPS, MOST_STEPS];
    return Array.from({ length: steps + 1 }, (_, i) => low + i * step);
  };

  const sum = (numbers) => numbers.reduce((total, n) => total + n, 0);

  /** What an answer at a point is expected to tell, in bits. */
  const expectedBits = (point, probabilities) => {
    const shares = point.classes.map(() => 0);
    point.of.forEach((kind, candidate) => (shares[kind] += probabilities[candidate]));
    const answers = imagined(point);
    const chances = point.classes.map((allowed) => {
      const raw = answers.map((seen) => likelihood(point, seen, allowed, RATES.certain));
      const total = sum(raw);
      return total > 0 ? raw.map((chance) => chance / total) : raw;
    });
    let bits = 0;
    answers.forEach((_, at) => {
      const overall = sum(shares.map((share, kind) => share * chances[kind][at]));
      shares.forEach((share, kind) => {
        const together = share * chances[kind][at];
        if (together > 0) bits += together * Math.log2(chances[kind][at] / overall);
      });
    });
    return Math.max(bits, 0);
  };

  const greaterFirst = (a, b) => Math.round(b / ALIKE) - Math.round(a / ALIKE);

  /**
   * What answers make of the candidates of a table: `candidates` in its order, each with its
   * `probability` and the points `against` it; `next`, the points not answered, the most telling
   * first; where all are excluded `nearest`, those with the fewest reasons, and whether these lie in
   * different matrices (`mixed`). An answer is { point, places, not, certainty }, for a measure
   * { point, number, certainty }; points and candidates are places in the table.
   */
  const weigh = (table, answers) => {
    const weights = table.candidates.map((candidate) => candidate.prior);
    const against = weights.map(() => []);
    const answered = new Set();
    for (const answer of [...answers].sort((a, b) => a.point - b.point)) {
      const point = table.points[answer.point];
      const seen = seenAt(point, answer);
      if (seen === null) continue;
      answered.add(answer.point);
      const certain = answer.certainty === "certain";
      const kinds = point.classes.map((allowed) => ({
        likely: likelihood(point, seen, allowed, RATES[answer.certainty]),
        out: certain && rulesOut(point, seen, allowed),
      }));
      point.of.forEach((kind, candidate) => {
        weights[candidate] *= kinds[kind].likely;
        if (kinds[kind].out) against[candidate].push(answer.point);
      });
    }
    const left = weights.map((_, candidate) => against[candidate].length === 0);
    const total = sum(weights.filter((_, candidate) => left[candidate]));
    const probabilities = weights.map((weight, candidate) => (left[candidate] && total > 0 ? weight / total : 0));
    const anyLeft = left.includes(true);
    const fewest = Math.min(...against.map((reasons) => reasons.length));
    const nearest = anyLeft ? [] : against.flatMap((reasons, candidate) => (reasons.length === fewest ? [candidate] : []));
    const matrices = new Set(nearest.flatMap((candidate) => against[candidate].map((point) => table.points[point].matrix)));
    matrices.delete(undefined);
    const open = anyLeft ? table.points.flatMap((point, at) => (answered.has(at) ? [] : [{ point: at, bits: expectedBits(point, probabilities) }])) : [];
    return {
      candidates: probabilities.map((probability, candidate) => ({ probability, against: against[candidate] })),
      next: open.sort((a, b) => greaterFirst(a.bits, b.bits)),
      nearest,
      mixed: matrices.size > 1,
    };
  };

  /** The answers that an address holds, and the words in it that this key does not understand. */
  const read = (table, fragment) => {
    const answers = [];
    const unknown = [];
    const text = fragment.replace(/^#/, "");
    if (!text.startsWith("see=")) return { answers, unknown };
    for (const coded of text.slice("see=".length).split(",").filter(Boolean)) {
      let word = coded;
      try {
        word = decodeURIComponent(coded);
      } catch {
        // Not encoded as addresses are: it is taken as it stands.
      }
      const parts = /^([^=!]+)(!?=)([^:]+)(?::(certain|probable|possible))?$/.exec(word);
      const at = parts ? table.points.findIndex((point) => point.key === parts[1]) : -1;
      const answer = at < 0 ? null : answered(table.points[at], at, parts);
      if (answer === null || answers.some((other) => other.point === at)) unknown.push(word);
      else answers.push(answer);
    }
    return { answers, unknown };
  };

  const answered = (point, at, [, , sign, said, sure]) => {
    const not = sign === "!=";
    const certainty = sure ?? "certain";
    if (!point.values) {
      const number = Number(said);
      return not || !Number.isFinite(number) ? null : { point: at, number, certainty };
    }
    const other = point.values.indexOf("other");
    const place = (value) => {
      const found = point.values.indexOf(value);
      return found < 0 && point.counts && /^\d+$/.test(value) ? other : found;
    };
    const places = said.split("|").map(place);
    return places.includes(-1) ? null : { point: at, places, not, certainty };
  };

  /** The answers as an address holds them; nothing where none is given. */
  const write = (table, answers) => {
    const words = answers.map((answer) => {
      const point = table.points[answer.point];
      const said = point.values ? answer.places.map((place) => point.values[place]).join("|") : String(answer.number);
      const sure = answer.certainty === "certain" ? "" : `:${answer.certainty}`;
      return `${point.key}${answer.not ? "!=" : "="}${said}${sure}`;
    });
    return words.length === 0 ? "" : `#see=${words.join(",")}`;
  };

  globalThis.keyblock = { weigh, read, write };

  // The page.

  const source = document.getElementById("key_data");
  const template = document.getElementById("key_form");
  if (!source || !template) return;
  const table = JSON.parse(source.textContent);
  const { words } = table;
  const language = document.documentElement.lang;
  const percent = new Intl.NumberFormat(language, { style: "percent" });
  const figure = new Intl.NumberFormat(language, { maximumFractionDigits: 2 });
  const fill = (text, given) => text.replace(/\{(\w+)\}/g, (_, name) => given[name]);

  template.before(template.content);
  document.body.classList.add("keyed");
  const form = document.querySelector("form.examine");
  const find = (name) => form.querySelector(name);
  const rows = [...form.querySelectorAll(".candidates > li")];
  const questions = [...form.querySelectorAll(".questions > li")];
  const askOf = (at) => questions[at].querySelector(".ask").textContent;
  const ticks = (question) => [...question.querySelectorAll("input[name=value]")];
  const control = (question, name) => question.querySelector(`[name=${name}]`);

  const joined = (said) => (said.length < 2 ? said.join("") : `${said.slice(0, -1).join(", ")} ${words.or} ${said.at(-1)}`);
  const inWords = (at, places) => joined(places.map((place) => ticks(questions[at])[place].parentElement.textContent.trim()));
  const numberInWords = (at, number) => `${figure.format(number)} ${questions[at].querySelector(".unit").textContent}`;

  /** What the form says was seen. */
  const answers = () =>
    questions.flatMap((question, point) => {
      const certainty = control(question, "certainty").value;
      const number = control(question, "number");
      if (number) return number.value === "" ? [] : [{ point, number: number.valueAsNumber, certainty }];
      const places = ticks(question).flatMap((tick, place) => (tick.checked ? [place] : []));
      return places.length === 0 ? [] : [{ point, places, not: control(question, "not").checked, certainty }];
    });

  const told = (answer) => {
    if (answer.number !== undefined) return numberInWords(answer.point, answer.number);
    const values = inWords(answer.point, answer.places);
    return answer.not ? fill(words["key-not-these"], { values }) : values;
  };

  const allowedInWords = (point, candidate) => {
    const column = table.points[point];
    const allowed = column.classes[column.of[candidate]];
    return column.values ? inWords(point, allowed) : numberInWords(point, allowed);
  };

  /** A share as people say it: the nearest simple fraction. */
  const inShares = (share) => table.shares.reduce((best, one) => (Math.abs(one[0] - share) < Math.abs(best[0] - share) ? one : best))[1];

  const element = (name, text) => Object.assign(document.createElement(name), { textContent: text });

  const reasons = (candidate, against, given) =>
    against.map((point) =>
      element("li", fill(words["key-reason"], { ask: askOf(point), shown: allowedInWords(point, candidate), seen: told(given.find((a) => a.point === point)) })),
    );

  /** Says what the answers leave, what excluded the rest, and where to look next. */
  const say = () => {
    const given = answers();
    const result = weigh(table, given);
    const all = rows.length;
    const order = result.candidates.map((_, candidate) => candidate).sort((a, b) => greaterFirst(result.candidates[a].probability, result.candidates[b].probability));
    const left = order.filter((candidate) => result.candidates[candidate].against.length === 0);
    const first = left.length > 0 ? left : result.nearest;
    const rest = order.filter((candidate) => !first.includes(candidate));
    for (const candidate of order) {
      const { probability, against } = result.candidates[candidate];
      const row = rows[candidate];
      const small = probability < 0.005 ? `< ${percent.format(0.01)}` : percent.format(probability);
      const alone = left.length === 1 ? words["key-share-only"] : `${inShares(probability)}, ${small}`;
      row.querySelector(".share").textContent = against.length > 0 ? "" : alone;
      row.querySelector(".reasons").replaceChildren(...reasons(candidate, against, given));
    }
    find(".left").replaceChildren(...first.map((candidate) => rows[candidate]));
    find(".excluded").replaceChildren(...rest.map((candidate) => rows[candidate]));
    find(".if-excluded").hidden = rest.length === 0;
    find(".if-left").hidden = left.length === 0;
    find(".if-nearest").hidden = left.length > 0;
    find(".mixed").hidden = !result.mixed;
    form.classList.toggle("answered", given.length > 0);
    find(".was-seen").replaceChildren(...given.map((answer) => element("li", `${askOf(answer.point)} ${told(answer)}${answer.certainty === "certain" ? "" : ` (${sureInWords(answer)})`}`)));
    const count = left.length === 0 ? "none" : left.length === all ? "all" : left.length === 1 ? "one" : "some";
    sayNext(result, fill(words[`key-left-${count}`], { left: left.length, all }));
    return given;
  };

  const sureInWords = (answer) => control(questions[answer.point], "certainty").selectedOptions[0].textContent;

  const sayNext = ({ next, candidates }, count) => {
    const doubt = sum(candidates.map(({ probability: p }) => (p > 0 ? -p * Math.log2(p) : 0)));
    const best = next.length > 0 && next[0].bits > 0.001 ? next[0] : null;
    const status = find(".status");
    const way = find(".way");
    const sentence = best ? `${count} ${words["key-next"]} ${askOf(best.point)}` : count;
    if (status.textContent !== sentence) status.textContent = sentence;
    find(".bar").textContent = sentence;
    find(".next").hidden = candidates.every(({ probability }) => probability === 0);
    find(".next-none").hidden = best !== null;
    find(".next-some").hidden = best === null;
    if (best) {
      way.textContent = askOf(best.point);
      way.dataset.point = best.point;
      find(".worth").textContent = fill(words["key-next-worth"], { percent: percent.format(best.bits / doubt), bits: figure.format(best.bits), doubt: figure.format(doubt) });
    }
    questions.forEach((question, at) => (question.querySelector(".look-here").hidden = at !== best?.point));
  };

  /** A question that is answered offers how; one that is not stands at "cannot be seen". */
  const settle = (question) => {
    const number = control(question, "number");
    const seen = number ? number.value !== "" : ticks(question).some((tick) => tick.checked);
    control(question, "unseen").checked = !seen;
    question.querySelector(".manner").hidden = !seen;
    question.classList.toggle("answered", seen);
    if (!seen) {
      control(question, "certainty").value = "certain";
      if (!number) control(question, "not").checked = false;
    }
  };

  const clear = (question) => {
    for (const tick of ticks(question)) tick.checked = false;
    const number = control(question, "number");
    if (number) number.value = "";
    settle(question);
  };

  const keep = () => {
    const given = say();
    history.replaceState(null, "", location.pathname + location.search + write(table, given));
  };

  const restore = () => {
    const { answers: given, unknown } = read(table, location.hash);
    questions.forEach(clear);
    for (const answer of given) {
      const question = questions[answer.point];
      control(question, "certainty").value = answer.certainty;
      if (answer.number !== undefined) control(question, "number").value = answer.number;
      else {
        control(question, "not").checked = answer.not;
        for (const place of answer.places) ticks(question)[place].checked = true;
      }
      settle(question);
    }
    const fault = find(".not-understood");
    fault.hidden = unknown.length === 0;
    fault.textContent = fill(words["key-not-understood"], { what: unknown.join(", ") });
    say();
  };

  form.addEventListener("input", (event) => {
    const question = event.target.closest(".questions > li");
    if (!question) return;
    if (event.target.name === "unseen") clear(question);
    else settle(question);
    keep();
  });
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("reset", (event) => {
    event.preventDefault();
    questions.forEach(clear);
    keep();
  });
  find(".way").addEventListener("click", (event) => {
    const question = questions[Number(event.currentTarget.dataset.point)];
    question.scrollIntoView({ block: "center" });
    question.querySelector("input").focus({ preventScroll: true });
  });
  window.addEventListener("hashchange", () => {
    if (location.hash === "" || location.hash.startsWith("#see=")) restore();
  });
  restore();
})();
