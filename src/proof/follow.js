// Follows the records: requests the status of the newest reading, reloads the page when it is out of
// date, and shows findings at the foot of the page. Only a proof has this script, no published page.
"use strict";
(() => {
  const own = document.currentScript;
  const pageNumber = Number(own.dataset.number);
  const placeKey = `proof-place:${location.pathname}`;
  const openKey = "proof-open";

  // Whether an element moves with the page, which one that sticks to the window does not.
  function scrollsAlong(element) {
    for (let around = element; around && around !== document.body; around = around.parentElement) {
      if (["sticky", "fixed"].includes(getComputedStyle(around).position)) return false;
    }
    return true;
  }

  // The scroll position is stored relative to the nearest element above with an id, so that lines
  // added higher up do not shift it; relative to the top where there is no such element.
  function keepPlace() {
    const named = [...document.querySelectorAll("main [id]")].findLast(
      (named) => named.getClientRects().length > 0 && named.getBoundingClientRect().top <= 0 && scrollsAlong(named),
    );
    const above = named && { id: named.id, top: named.getBoundingClientRect().top };
    sessionStorage.setItem(placeKey, JSON.stringify({ ...above, scrolled: scrollY }));
    history.scrollRestoration = "manual";
  }

  function findPlace() {
    const kept = sessionStorage.getItem(placeKey);
    if (kept === null) return;
    sessionStorage.removeItem(placeKey);
    const { id, top, scrolled } = JSON.parse(kept);
    const named = id === undefined ? null : document.getElementById(id);
    const to = named ? scrollY + named.getBoundingClientRect().top - top : scrolled;
    scrollTo({ top: to, behavior: "instant" });
    // Later, because the browser may still scroll by itself after loading.
    setTimeout(() => (history.scrollRestoration = "auto"), 500);
  }

  const shown = document.createElement("aside");
  shown.className = "proof_findings";
  shown.lang = "en";
  shown.setAttribute("aria-live", "polite");
  shown.setAttribute("aria-label", "What was found in the records");
  shown.hidden = true;

  // Always as text, so that text of a record never becomes markup.
  function element(name, className, text) {
    const made = document.createElement(name);
    made.className = className;
    if (text !== undefined) made.textContent = text;
    return made;
  }

  function others({ code, count, faults, more_faults }) {
    const found = faults.map(([fault, times]) => `${fault} (${times})`);
    if (more_faults > 0) found.push(`and ${more_faults} ${more_faults === 1 ? "other" : "others"}`);
    return `${count} more of the code ${code}: ${found.join(", ")}`;
  }

  function entry({ severity, place, page, message, help, others: further }) {
    const item = element("li", severity);
    item.append(element("p", "severity", severity));
    const matter = element("div", "matter");
    matter.append(element("p", "message", message));
    if (help) matter.append(element("p", "help", help));
    if (place) {
      const line = element("p", "place", page ? undefined : place);
      if (page) line.append(Object.assign(element("a", "", place), { href: page }));
      matter.append(line);
    }
    if (further) matter.append(element("p", "others", others(further)));
    item.append(matter);
    return item;
  }

  function inWords(told) {
    const counted = told.counts
      .filter(([, count]) => count > 0)
      .map(([word, count]) => `${count} ${word}${count === 1 ? "" : "s"}`);
    if (told.fault) counted.unshift("the pages cannot be made");
    if (told.here > 0 && told.findings.some(({ here }) => !here)) counted.push(`${told.here} of this page`);
    const stays = told.good !== told.number && pageNumber > 0;
    return counted.join(", ") + (stays ? "; the last good page stays" : "");
  }

  function show(told) {
    // Those of this page come first, the others below a rule.
    const entries = told.findings.map(entry);
    const elsewhere = told.findings.findIndex(({ here }) => !here);
    if (elsewhere > 0) entries[elsewhere].classList.add("elsewhere");
    if (told.fault) entries.unshift(entry({ severity: "error", message: told.fault }));
    shown.hidden = entries.length === 0;
    if (shown.hidden) return shown.replaceChildren();
    const details = document.createElement("details");
    details.open = told.good !== told.number || sessionStorage.getItem(openKey) === "yes";
    const list = element("ol", "list");
    list.append(...entries);
    const summary = document.createElement("summary");
    summary.append(element("span", "counts", inWords(told)));
    summary.addEventListener("click", () => sessionStorage.setItem(openKey, details.open ? "no" : "yes"));
    list.addEventListener("click", (event) => {
      // A link to a part of this page shows the part, above the list.
      if (event.target.closest("a")) sessionStorage.setItem(openKey, "yes");
    });
    details.append(summary, list);
    shown.replaceChildren(details);
  }

  const untilSeen = () =>
    new Promise((seen) => document.addEventListener("visibilitychange", seen, { once: true }));

  async function follow() {
    let number = 0;
    let lost = false;
    for (;;) {
      // A browser opens few connections to one host, so a hidden page holds none.
      while (document.hidden) await untilSeen();
      const hidden = new AbortController();
      const letGo = () => document.hidden && hidden.abort();
      document.addEventListener("visibilitychange", letGo);
      try {
        const answer = await fetch(`/.proof/after/${number}${location.pathname}`, { signal: hidden.signal });
        if (!answer.ok) throw new Error(answer.status);
        const told = await answer.json();
        // A proof that was restarted counts its readings from 1 again.
        if (told.good > 0 && (lost || told.good !== pageNumber)) {
          keepPlace();
          location.reload();
          return;
        }
        number = told.number;
        show(told);
      } catch {
        if (hidden.signal.aborted) continue;
        lost = true;
        number = 0;
        await new Promise((resume) => setTimeout(resume, 1000));
      } finally {
        document.removeEventListener("visibilitychange", letGo);
      }
    }
  }

  document.body.append(shown);
  // A reload before the position is restored would store the wrong position. Lines have another height
  // until the text face is there, which a page does not wait for.
  addEventListener("load", async () => {
    await document.fonts.ready;
    findPlace();
    follow();
  });
})();
