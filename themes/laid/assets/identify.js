// The arithmetic of identification: what a sheet can be, given what is seen on it.
//
// It computes what docs/definitions.md defines ("Likelihood" to "Next points"), on the table that stands in the page
// as data, and is held against `keyblock identify --json`. Its functions are pure; key.js shows what they find.
//
// Answers are kept in the address, to be sent to a colleague:
//   #see=ANSWER,ANSWER…
//   ANSWER  = POINT=VALUE|VALUE…   one of these        POINT!=VALUE|VALUE…   none of these
//             POINT=not-visible    POINT=not-applicable
//             followed by :probable or :possible where it is not certain
//   VALUE   = a word of the point, a count ("other" or any count not recorded), a measured number
"use strict";

(() => {
  const ROUNDING = 1e-6; // Absorbs the rounding of decimal fractions.
  const MOST_STEPS = 100000;
  const SMALL = 1e-150;
  const RATES = { certain: 0.01, probable: 0.1, possible: 0.3 };
  const UNSEEN = ["not-visible", "not-applicable"];
  const EVIDENCE = ["matrix", "wear", "blocks", "paper", "inking", "mark"].map((kind) => `evidence-${kind}`);
  const GRADES = ["level", "behind", "far-behind", "very-far-behind"];

  const sum = (numbers) => numbers.reduce((total, n) => total + n, 0);

  /** The 12 significant digits to which weights and bits are compared. */
  const rounded = (number) => Number(number.toPrecision(12));
  const greaterFirst = (a, b) => rounded(b) - rounded(a);

  /** An answer on its point's scale: a number, a list of places; null where it gives no information. */
  const seenAt = (point, answer) => {
    if (answer.unseen) return null;
    if (!point.values) return Number.isFinite(answer.number) ? answer.number : null;
    const places = point.values.map((_, place) => place).filter((place) => answer.places.includes(place) !== answer.not);
    return answer.places.length > 0 && places.length > 0 ? places : null;
  };

  /** The chance that the observation errs, or that the sheet departs from what is recorded. */
  const errorAt = (point, certainty) => 1 - (1 - RATES[certainty]) * (1 - point.straying);

  /** How likely `seen` is where `allowed` is recorded (null: not known). */
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
    if (others === 0) return right;
    const capped = Math.min(error, others / all);
    return (1 - capped) * right + (capped * (seen.length - agreeing)) / others;
  };

  /** Whether an answer is likelier, or less likely, for a candidate than where nothing is recorded of it. */
  const weighs = (point, answer, candidate) => {
    const seen = seenAt(point, answer);
    if (seen === null) return false;
    const error = errorAt(point, answer.certainty);
    const [known, unknown] = [allowedBy(point, candidate), null].map((allowed) => likelihood(point, seen, allowed, error));
    return rounded(known) !== rounded(unknown);
  };

  const isAgainst = (point, seen, allowed) => {
    if (allowed === null) return false;
    if (!point.values) return Math.abs(seen - allowed) > 2 * point.tolerance + ROUNDING;
    return !seen.some((place) => allowed.includes(place));
  };

  const allowedBy = (point, candidate) => point.classes[point.of[candidate]];

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

  /** The information that an answer at a point is expected to give, in bits. */
  const expectedBits = (point, weights) => {
    const shares = point.classes.map(() => 0);
    point.of.forEach((kind, candidate) => (shares[kind] += weights[candidate]));
    const answers = imagined(point);
    const error = errorAt(point, "certain");
    const chances = point.classes.map((allowed) => {
      const raw = answers.map((seen) => likelihood(point, seen, allowed, error));
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

  /** The products of the likelihoods, as shares of their sum; 0 for the excluded. */
  const weightsOf = (candidates, observed) => {
    let weights = candidates.map(({ excludedBy }) => (excludedBy.length > 0 ? 0 : 1));
    for (const { likely } of observed) {
      weights = weights.map((weight, candidate) => weight * likely[candidate]);
      const greatest = Math.max(0, ...weights);
      if (greatest > 0 && greatest < SMALL) weights = weights.map((weight) => weight * 2 ** 512);
    }
    const total = sum(weights);
    return weights.map((weight) => (total > 0 ? weight / total : 0));
  };

  /**
   * What answers make of a table. Out, in the table's order: `candidates`, each with its `weight`, and the points
   * `excludedBy`, `against` and `inFavour`; `states` and `printings`, each with `weight` and `excluded`; `next`, the
   * points not asked, the most informative first; where all are excluded `nearest`, the candidates that the fewest
   * points exclude, and whether these points lie on different matrices (`mixed`). `observed` holds the answers that
   * give information. An answer is { point, places, not, certainty }, for a measure { point, number, certainty },
   * where nothing can be seen { point, unseen, certainty }; points and candidates are places in the table.
   */
  const weigh = (table, answers) => {
    const candidates = table.candidates.map(() => ({ excludedBy: [], against: [], inFavour: [] }));
    const asked = new Set();
    const observed = [];
    for (const answer of [...answers].sort((a, b) => a.point - b.point)) {
      const point = table.points[answer.point];
      asked.add(answer.point);
      const seen = seenAt(point, answer);
      if (seen === null) continue;
      const error = errorAt(point, answer.certainty);
      const excludes = point.decides && answer.certainty === "certain";
      const against = point.classes.map((allowed) => isAgainst(point, seen, allowed));
      const likely = point.classes.map((allowed) => likelihood(point, seen, allowed, error));
      point.of.forEach((kind, candidate) => {
        const its = candidates[candidate];
        if (against[kind]) its.against.push(answer.point);
        else if (point.classes[kind] !== null && against.includes(true)) its.inFavour.push(answer.point);
        if (against[kind] && excludes) its.excludedBy.push(answer.point);
      });
      observed.push({ ...answer, likely: point.of.map((kind) => likely[kind]) });
    }
    const weights = weightsOf(candidates, observed);
    weights.forEach((weight, candidate) => (candidates[candidate].weight = weight));
    const isLeft = (candidate) => candidates[candidate].excludedBy.length === 0;
    const anyLeft = candidates.some((_, candidate) => isLeft(candidate));
    const fewest = Math.min(...candidates.map(({ excludedBy }) => excludedBy.length));
    const nearest = anyLeft ? [] : candidates.flatMap(({ excludedBy }, candidate) => (excludedBy.length === fewest ? [candidate] : []));
    const matrices = new Set(nearest.flatMap((candidate) => candidates[candidate].excludedBy.map((point) => table.points[point].matrix)));
    matrices.delete(undefined);
    const open = anyLeft ? table.points.flatMap((point, at) => (asked.has(at) ? [] : [{ point: at, bits: expectedBits(point, weights) }])) : [];
    const row = ({ candidates: of }) => ({ weight: Math.max(...of.map((candidate) => weights[candidate])), excluded: !of.some(isLeft) });
    return {
      candidates,
      states: table.states.map(row),
      printings: table.printings.map(row),
      next: open.sort((a, b) => greaterFirst(a.bits, b.bits)),
      nearest,
      mixed: matrices.size > 1,
      observed,
    };
  };

  /** Places in a list of weights, by falling weight, then in order. */
  const byWeight = (weights) => weights.map((_, at) => at).sort((a, b) => greaterFirst(weights[a], weights[b]));

  const gradeOf = (ratio) => [3, 20, 150].filter((limit) => rounded(ratio) > limit).length;

  /** The lowest grade that the points against a row allow. */
  const lowestGrade = (points) => Math.max(0, ...points.map((point) => (point.decides ? 3 : point.evidence === "evidence-mark" ? 1 : 2)));

  /**
   * The evidence as it is put to people: `states` and `printings`, by falling weight, each { at, best, level, fit, excludedBy,
   * against, inFavour }, `level` being the candidates that weigh as much as its best where not all do; `best`, the candidate of most weight, or null; `alike`, how many weigh as much; `unrecorded`, where one candidate is left, the
   * points seen at which nothing is recorded of it; `distinguished`, whether the answers distinguish any states and any
   * printings; `overturning`, the points that could overturn the best. Points
   * stand with the strongest kind of evidence first.
   */
  const evidence = (table, result) => {
    const { candidates, observed } = result;
    const weights = candidates.map(({ weight }) => weight);
    const order = byWeight(weights);
    const isLeft = (candidate) => candidates[candidate].excludedBy.length === 0;
    const best = order.find(isLeft) ?? null;
    const tellsNothing = candidates.every(({ against, inFavour }) => against.length + inFavour.length === 0);
    const strongestFirst = (points) => [...points].sort((a, b) => EVIDENCE.indexOf(table.points[a].evidence) - EVIDENCE.indexOf(table.points[b].evidence) || a - b);

    const ratio = (ofState, one, other) => {
      const counted = observed.filter(({ point }) => {
        const column = table.points[point];
        return (column.of_matrix || !ofState) && allowedBy(column, one) !== null && allowedBy(column, other) !== null;
      });
      return counted.length === 0 ? null : counted.reduce((product, { likely }) => product * (likely[one] / likely[other]), 1);
    };

    const fit = (ofState, of, leader) => {
      if (!of.some(isLeft)) {
        const byMatrix = (candidate) => candidates[candidate].excludedBy.some((point) => table.points[point].of_matrix);
        return !ofState || of.every(byMatrix) ? "excluded" : "no-printing";
      }
      if (tellsNothing) return "nothing-told";
      const compared = ratio(ofState, best, leader);
      if (compared === null) return "nothing-to-compare";
      const against = candidates[leader].against.map((point) => table.points[point]).filter((point) => point.of_matrix || !ofState);
      return GRADES[Math.min(gradeOf(compared), lowestGrade(against))];
    };

    const row = (ofState) => ({ candidates: of, shown }, at) => {
      const ranked = order.filter((candidate) => of.includes(candidate));
      const fewest = Math.min(...ranked.map((candidate) => candidates[candidate].excludedBy.length));
      const leader = ranked.find((candidate) => candidates[candidate].excludedBy.length === fewest);
      const counts = (point) => table.points[point].of_matrix || !ofState;
      const against = strongestFirst(candidates[leader].against.filter(counts).filter((point) => of.every((candidate) => candidates[candidate].against.includes(point))));
      const excluding = new Set(of.flatMap((candidate) => candidates[candidate].excludedBy));
      const level = of.filter((candidate) => rounded(weights[candidate]) === rounded(weights[leader]));
      return {
        at,
        best: leader,
        level: of.length > 1 && level.length === of.length ? [] : level,
        fit: fit(ofState, of, leader),
        excludedBy: against.filter((point) => excluding.has(point)),
        against: against.filter((point) => !excluding.has(point)),
        inFavour: strongestFirst(candidates[leader].inFavour.filter(counts).filter((point) => ofState || shown.includes(point))),
      };
    };

    const rows = (axis, ofState) => {
      const all = table[axis].map(row(ofState));
      const level = all.filter(({ fit }) => fit === "level");
      if (level.length === 1) level[0].fit = "best";
      return byWeight(result[axis].map(({ weight }) => weight)).map((at) => all[at]);
    };

    const left = candidates.flatMap((_, candidate) => (isLeft(candidate) ? [candidate] : []));
    const unrecorded = left.length === 1 ? observed.map(({ point }) => point).filter((point) => allowedBy(table.points[point], left[0]) === null) : [];

    const uncertain = observed.filter(({ certainty }) => certainty !== "certain").map(({ point }) => point);
    const couldBeAgainst = (at) => {
      const point = table.points[at];
      const allowed = allowedBy(point, best);
      return allowed !== null && (!point.values || allowed.length < point.values.length);
    };
    const points = best === null ? [] : [...uncertain, ...result.next.map(({ point }) => point)].filter(couldBeAgainst);
    const overturning = points.map((point) => ({ point, wouldExclude: table.points[point].decides, uncertain: uncertain.includes(point) }));
    overturning.sort((a, b) => b.wouldExclude - a.wouldExclude);

    const states = rows("states", true);
    const printings = rows("printings", false);
    const distinguishes = (axis, all) => table[axis].length > 1 && !all.every(({ fit }) => fit.startsWith("nothing-"));
    const distinguished = { states: distinguishes("states", states), printings: distinguishes("printings", printings) };
    const alike = best === null ? 0 : left.filter((candidate) => rounded(weights[candidate]) === rounded(weights[best])).length;
    return { states, printings, best, alike, unrecorded, overturning, distinguished };
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
    if (UNSEEN.includes(said)) return not ? null : { point: at, unseen: said, certainty };
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
      const said = answer.unseen ?? (point.values ? answer.places.map((place) => point.values[place]).join("|") : String(answer.number));
      const sure = answer.certainty === "certain" ? "" : `:${answer.certainty}`;
      return `${point.key}${answer.not ? "!=" : "="}${said}${sure}`;
    });
    return words.length === 0 ? "" : `#see=${words.join(",")}`;
  };

  globalThis.keyblock = { weigh, weighs, evidence, read, write };
})();
