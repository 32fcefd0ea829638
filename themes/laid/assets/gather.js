// Photographs of a gallery are chosen by ticking them, two to four, and compared on the page for that.
"use strict";

(() => {
  const MOST = 4; // Sheets at once, as on the page that compares.
  const gallery = document.querySelector("ol.plates[data-compare]");
  const [tickOf, lineOf] = ["gather_tick", "gather_line"].map((id) => document.getElementById(id));
  if (!gallery || !tickOf || !lineOf) return;
  const line = lineOf.content.firstElementChild.cloneNode(true);
  const [link, none, told] = ["a", "button", ".told"].map((name) => line.querySelector(name));
  line.hidden = true;
  gallery.after(line);
  const ticks = [];

  for (const item of gallery.querySelectorAll(":scope > li[data-key]")) {
    const label = tickOf.content.firstElementChild.cloneNode(true);
    const input = label.querySelector("input");
    const name = label.querySelector(".unseen");
    name.textContent = name.textContent.replace("{number}", item.querySelector("figcaption .handle").textContent);
    input.value = item.dataset.key;
    item.querySelector("figcaption").append(label);
    ticks.push(input);
  }

  const show = () => {
    const chosen = ticks.filter((input) => input.checked);
    const isEnough = chosen.length > 1;
    line.hidden = chosen.length === 0;
    link.hidden = !isEnough;
    link.textContent = told.dataset.go.replace("{n}", chosen.length);
    link.href = `${gallery.dataset.compare}#of=${chosen.map((input) => input.value).join(",")}`;
    told.textContent = isEnough ? (chosen.length === MOST ? told.dataset.full : "") : told.dataset.one;
    for (const input of ticks) input.disabled = chosen.length === MOST && !input.checked;
  };

  gallery.addEventListener("change", show);
  none.addEventListener("click", () => {
    for (const input of ticks) input.checked = false;
    show();
    ticks[0].focus({ preventScroll: true });
  });
  // A browser that goes back to the page keeps the ticks.
  addEventListener("pageshow", show);
  show();
})();
