// The identification key as a form: the points to be answered in any order, and beside them what the answers make of
// the sheet. identify.js holds the arithmetic and the answers in the address.
"use strict";

(() => {
  const source = document.getElementById("key_data");
  const template = document.getElementById("key_form");
  if (!source || !template) return;
  const table = JSON.parse(source.textContent);
  const { words } = table;
  const { weigh, weighs, evidence, read, write } = globalThis.keyblock;
  const language = document.documentElement.lang;
  const figure = new Intl.NumberFormat(language, { maximumFractionDigits: 2 });
  const fill = (text, given) => text.replace(/\{(\w+)\}/g, (_, name) => given[name]);

  template.before(template.content);
  document.body.classList.add("keyed");
  const form = document.querySelector("form.examine");
  const find = (name) => form.querySelector(name);
  const rowsOf = (name) => [...form.querySelectorAll(`.${name} > li`)];
  const rows = { states: rowsOf("of-states"), printings: rowsOf("of-printings") };
  const questions = [...form.querySelectorAll(".questions > li")];
  const askOf = (at) => questions[at].querySelector(".ask").textContent;
  const ways = [...form.querySelectorAll(".way")];
  let nextPoint; // The point to look at next.

  /** Puts the question to look at next first; the others follow in the order of the record. */
  const arrange = () => {
    if (nextPoint === undefined) return;
    form.querySelector(".questions").replaceChildren(questions[nextPoint], ...questions.filter((_, at) => at !== nextPoint));
  };

  const ticks = (question) => [...question.querySelectorAll("input[name=value]")];
  const control = (question, name) => question.querySelector(`[name=${name}]`);

  // Where a value has a comma of its own, each is divided by the word, as pages do.
  const joined = (said) => {
    const comma = said.some((one) => one.includes(",")) ? ` ${words.or} ` : ", ";
    return said.length < 2 ? said.join("") : `${said.slice(0, -1).join(comma)} ${words.or} ${said.at(-1)}`;
  };
  const inWords = (at, places) => joined(places.map((place) => ticks(questions[at])[place].parentElement.textContent.trim()));
  const numberInWords = (at, number) => `${figure.format(number)} ${questions[at].querySelector(".unit").textContent}`;

  /** What the form says was seen. */
  const answers = () =>
    questions.flatMap((question, point) => {
      const certainty = control(question, "certainty").value;
      if (control(question, "unseen").checked) return [{ point, unseen: "not-visible", certainty: "certain" }];
      const number = control(question, "number");
      if (number) return number.value === "" ? [] : [{ point, number: number.valueAsNumber, certainty }];
      const places = ticks(question).flatMap((tick, place) => (tick.checked ? [place] : []));
      return places.length === 0 ? [] : [{ point, places, not: control(question, "not").checked, certainty }];
    });

  const told = (answer) => {
    if (answer.unseen) return words[`value-${answer.unseen}`];
    if (answer.number !== undefined) return numberInWords(answer.point, answer.number);
    const values = inWords(answer.point, answer.places);
    return answer.not ? fill(words["key-not-these"], { values }) : values;
  };

  const toldWithCertainty = (answer) => (answer.certainty === "certain" ? told(answer) : `${told(answer)} (${sureInWords(answer)})`);

  const recordedOf = (point, candidate) => {
    const column = table.points[point];
    const allowed = column.classes[column.of[candidate]];
    return column.values ? inWords(point, allowed) : numberInWords(point, allowed);
  };

  const element = (name, text, kind) => Object.assign(document.createElement(name), { textContent: text, className: kind ?? "" });

  /** A sentence with what is filled in isolated for direction. */
  const isolated = (text, given) => {
    const fragment = document.createDocumentFragment();
    for (const part of text.split(/(\{\w+\})/)) {
      const name = /^\{(\w+)\}$/.exec(part)?.[1];
      fragment.append(name ? element("bdi", given[name]) : part);
    }
    return fragment;
  };

  const item = (name, ...parts) => {
    const made = element("li", "", name);
    made.append(...parts);
    return made;
  };

  /** One point for or against: "for, matrix: Is there a moon? present; recorded: present". */
  const line = (bearing, point, candidate, given) => {
    const answer = given.find((one) => one.point === point);
    const weightless = bearing !== "excludes" && !weighs(table.points[point], answer, candidate) ? `, ${words["evidence-no-weight"]}` : "";
    const kind = element("span", `${words[`bearing-${bearing}`]}, ${words[table.points[point].evidence]}${weightless}`, "bearing");
    const said = { ask: askOf(point), seen: toldWithCertainty(answer), recorded: recordedOf(point, candidate) };
    return item(bearing, kind, " ", isolated(words["evidence-seen-and-recorded"], said));
  };

  const nameOf = (candidate) => {
    const named = ["states", "printings"].map((axis) => {
      const at = table[axis].findIndex(({ key, candidates }) => key !== null && candidates.includes(candidate));
      return at < 0 ? "" : rows[axis][at].querySelector(".name").textContent.trim();
    });
    return named.filter(Boolean).join(", ");
  };

  /** The states that fit a printing best: "with i/v or iii/v". */
  const withStates = ({ level, fit }) => {
    const states = level.flatMap((candidate) => table.states.flatMap(({ key, candidates }, at) => (key !== null && candidates.includes(candidate) ? [at] : [])));
    if (states.length === 0 || table.states.length < 2 || fit === "excluded") return "";
    return fill(words["key-with-states"], { states: joined(states.map((at) => rows.states[at].querySelector(".name").textContent.trim())) });
  };

  /** Shows the states or the printings, the best first, each with its evidence. */
  const sayAxis = (axis, order, isDistinguished, result, given) => {
    find(`.${axis}-alike`).hidden = isDistinguished || given.length === 0 || order.length < 2;
    const list = find(`.of-${axis}`);
    list.replaceChildren(...order.map(({ at }) => rows[axis][at]));
    for (const one of order) {
      const { at, best, fit, excludedBy, against, inFavour } = one;
      const row = rows[axis][at];
      row.classList.toggle("out", fit === "excluded" || fit === "no-printing");
      const shown = row.querySelector(".fit");
      shown.textContent = isDistinguished ? words[`fit-${fit}`] : "";
      shown.title = fill(words["key-weight"], { weight: figure.format(result[axis][at].weight) });
      row.querySelector(".with").textContent = axis === "printings" ? withStates(one) : "";
      row.querySelector(".reasons").replaceChildren(
        ...excludedBy.map((point) => line("excludes", point, best, given)),
        ...inFavour.map((point) => line("for", point, best, given)),
        ...against.map((point) => line("against", point, best, given)),
      );
    }
  };

  /** Says what could overturn the best. */
  const sayChange = ({ best, alike, overturning, distinguished }) => {
    const part = find(".change");
    part.hidden = overturning.length === 0 || !(distinguished.states || distinguished.printings);
    if (part.hidden) return;
    find(".change-best").textContent = nameOf(best) + (alike > 1 ? fill(words["evidence-first-of-alike"], { n: alike }) : "");
    const lines = overturning.map(({ point, wouldExclude, uncertain }) => {
      const said = isolated(words[wouldExclude ? "evidence-would-exclude" : "evidence-would-weigh"], { ask: askOf(point), recorded: recordedOf(point, best) });
      return item("", said, uncertain ? ` (${words["evidence-look-again"]})` : "");
    });
    find(".change-lines").replaceChildren(...lines);
  };

  /** Says what the answers make of the sheet: the evidence, where to look next, and what would change it. */
  const say = () => {
    const given = answers();
    const result = weigh(table, given);
    const found = evidence(table, result);
    const all = table.candidates.length;
    const left = result.candidates.filter(({ excludedBy }) => excludedBy.length === 0).length;
    sayAxis("states", found.states, found.distinguished.states, result, given);
    sayAxis("printings", found.printings, found.distinguished.printings, result, given);
    sayChange(found);
    find(".nearest").hidden = result.nearest.length === 0;
    find(".nearest-names").replaceChildren(...result.nearest.map((candidate) => element("li", nameOf(candidate))));
    find(".mixed").hidden = !result.mixed;
    const unrecorded = find(".unrecorded");
    unrecorded.hidden = found.unrecorded.length === 0;
    if (!unrecorded.hidden) unrecorded.replaceChildren(isolated(words["evidence-unrecorded"], { candidate: nameOf(found.best), points: found.unrecorded.map(askOf).join(" ") }));
    form.classList.toggle("answered", given.length > 0);
    find(".was-seen").replaceChildren(...given.map((answer) => item("", element("bdi", askOf(answer.point)), " ", element("bdi", toldWithCertainty(answer)))));
    const count = left === 0 ? "none" : left === all ? "all" : left === 1 ? "one" : "some";
    sayNext(result, fill(words[`key-left-${count}`], { left, all }));
    return given;
  };

  const sureInWords = (answer) => control(questions[answer.point], "certainty").selectedOptions[0].textContent;

  const sayNext = ({ next, nearest }, count) => {
    const best = next.length > 0 && next[0].bits >= 0.01 ? next[0] : null;
    const status = find(".status");
    const sentence = best ? `${count} ${words["key-next"]} ${askOf(best.point)}` : count;
    if (status.textContent !== sentence) status.textContent = sentence;
    find(".left").textContent = best ? `${count} ${words["key-next"]}` : count;
    find(".next").hidden = nearest.length > 0;
    find(".next-none").hidden = best !== null;
    for (const some of form.querySelectorAll(".next-some")) some.hidden = best === null;
    for (const way of best ? ways : []) {
      way.textContent = askOf(best.point);
      way.dataset.point = best.point;
      way.title = fill(words["key-next-worth"], { bits: figure.format(best.bits) });
    }
    nextPoint = best?.point;
    questions.forEach((question, at) => (question.querySelector(".look-here").hidden = at !== best?.point));
  };

  /** A question that is answered by what was seen offers how sure that is. */
  const settle = (question) => {
    const number = control(question, "number");
    const seen = number ? number.value !== "" : ticks(question).some((tick) => tick.checked);
    if (seen) control(question, "unseen").checked = false;
    question.querySelector(".manner").hidden = !seen;
    question.classList.toggle("answered", seen || control(question, "unseen").checked);
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

  const begin = (question) => {
    control(question, "unseen").checked = false;
    clear(question);
  };

  const keep = () => {
    const given = say();
    history.replaceState(null, "", location.pathname + location.search + write(table, given));
  };

  const restore = () => {
    const { answers: given, unknown } = read(table, location.hash);
    questions.forEach(begin);
    for (const answer of given) {
      const question = questions[answer.point];
      control(question, "certainty").value = answer.certainty;
      if (answer.unseen) control(question, "unseen").checked = true;
      else if (answer.number !== undefined) control(question, "number").value = answer.number;
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
    arrange();
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
    questions.forEach(begin);
    keep();
    arrange();
  });
  // The questions keep their places while they are answered, and move when the reader asks for the next.
  for (const way of ways) way.addEventListener("click", () => {
    const question = questions[nextPoint];
    arrange();
    question.scrollIntoView({ block: "nearest" });
    question.querySelector("input").focus({ preventScroll: true });
  });
  window.addEventListener("hashchange", () => {
    if (location.hash === "" || location.hash.startsWith("#see=")) restore();
  });
  restore();
})();
