// Follows the records: asks what the newest reading says, loads the page again when it is behind,
// and shows findings at the foot of the page. Only a proof has this script; no published page does.
"use strict";
(() => {
  const own = document.currentScript;
  const place = `proof-place:${location.pathname}`;
  let strip = null;

  const kept = sessionStorage.getItem(place);
  if (kept !== null) {
    sessionStorage.removeItem(place);
    addEventListener("load", () => scrollTo({ top: Number(kept), behavior: "instant" }));
  }

  function line(text, kind) {
    const p = document.createElement("p");
    p.textContent = text;
    if (kind) p.className = kind;
    return p;
  }

  function show(told) {
    const open = strip?.querySelector("details")?.open ?? !told.pages;
    strip?.remove();
    strip = null;
    if (told.findings.length === 0 && !told.fault) return;
    strip = document.createElement("aside");
    strip.className = "proof-strip";
    strip.setAttribute("aria-live", "polite");
    const details = document.createElement("details");
    details.open = open;
    const summary = document.createElement("summary");
    const count = (word) => told.findings.filter((f) => f.severity === word).length;
    const parts = ["error", "doubt", "hint"].filter(count).map((w) => `${count(w)} ${w}${count(w) === 1 ? "" : "s"}`);
    summary.textContent = (told.pages ? "" : "The last good proof stays: ") + (told.fault ?? parts.join(", "));
    details.append(summary);
    for (const finding of told.findings) {
      details.append(line(`${finding.severity}: ${finding.message}`, finding.severity));
      details.append(line(finding.place + (finding.help ? ` — ${finding.help}` : ""), "place"));
    }
    strip.append(details);
    document.body.append(strip);
  }

  async function follow(pageNumber) {
    let number = pageNumber - 1;
    for (;;) {
      try {
        const answer = await fetch(`/.proof/after/${number}`);
        if (!answer.ok) throw new Error(answer.status);
        const told = await answer.json();
        if (told.pages && told.number > pageNumber) {
          sessionStorage.setItem(place, String(scrollY));
          location.reload();
          return;
        }
        number = told.number;
        show(told);
      } catch {
        // The proof was stopped, or is being started again.
        await new Promise((resume) => setTimeout(resume, 1000));
      }
    }
  }

  follow(Number(own.dataset.number));
})();
