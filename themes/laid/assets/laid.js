// Everything on the pages can be read without this script. It counts the plates that answer to a choice, keeps the
// choice in the address, so that it can be sent to a colleague, copies citations, and leads to the neighbouring pages by
// the keyboard.
"use strict";

const copy = document.getElementById("page_copy");
if (copy && navigator.clipboard) {
  for (const quotable of document.querySelectorAll(".quotable")) {
    const button = copy.content.firstElementChild.cloneNode(true);
    const label = button.textContent;
    const text = quotable.textContent;
    button.addEventListener("click", async () => {
      await navigator.clipboard.writeText(text);
      button.textContent = button.dataset.done;
      setTimeout(() => { button.textContent = label; }, 2000);
    });
    if (quotable.matches("p")) quotable.append(" ", button);
    else quotable.after(" ", button);
  }
}

for (const form of document.querySelectorAll("form.sift")) {
  const list = document.getElementById(form.dataset.sifts);
  const said = form.querySelector("output");
  if (!list || !said) continue;
  const all = [...list.children];
  const chosen = () => [...form.querySelectorAll("input:checked")].filter((input) => input.value !== "");

  const count = () => {
    const classes = chosen().map((input) => input.id);
    const shown = all.filter((entry) => classes.every((name) => entry.classList.contains(name)));
    const words = shown.length === 0 ? said.dataset.none : said.dataset.some;
    said.textContent = classes.length === 0 ? "" : words.replace("{shown}", shown.length).replace("{all}", all.length);
    return classes;
  };

  const keep = () => {
    const classes = count();
    const here = location.pathname + location.search;
    history.replaceState(null, "", classes.length === 0 ? here : `${here}#only=${classes.join(",")}`);
  };

  const restore = () => {
    if (!location.hash.startsWith("#only=")) return count();
    for (const input of form.querySelectorAll("input")) input.checked = input.defaultChecked;
    for (const name of location.hash.slice("#only=".length).split(",")) {
      const input = document.getElementById(name);
      if (input && form.contains(input)) input.checked = true;
    }
    return count();
  };

  form.addEventListener("change", keep);
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("reset", () => setTimeout(keep));
  window.addEventListener("hashchange", restore);
  restore();
}

// The search is loaded when its field is used: by the pointer, the keyboard, or the key "/" from anywhere.
{
  const field = document.querySelector("form.seek input");
  const address = document.currentScript.src.replace(/laid\.js(?=$|\?)/, "search.js");
  if (field) {
    field.addEventListener("focus", () => import(address), { once: true });
    document.addEventListener("keydown", (event) => {
      const isTyping = event.target.closest("input, textarea, select, [contenteditable]");
      if (event.key !== "/" || event.ctrlKey || event.altKey || event.metaKey || isTyping) return;
      event.preventDefault();
      field.focus();
      field.select();
    });
  }
}

// The keys ← and → lead to the page before and after this one. They are left to whatever uses them itself (fields, choices,
// panes that scroll, the viewer), to the browser together with another key, and to a page that scrolls sideways.
{
  const isRightToLeft = document.documentElement.dir === "rtl";
  const taking = "input, textarea, select, summary, [contenteditable], [role], .scroll, .pane, [tabindex]:not(main)";
  document.addEventListener("keydown", (event) => {
    if (!["ArrowLeft", "ArrowRight"].includes(event.key) || event.defaultPrevented) return;
    if (event.ctrlKey || event.altKey || event.metaKey || event.shiftKey || event.target.closest(taking)) return;
    if (document.documentElement.scrollWidth > document.documentElement.clientWidth) return;
    const isBack = (event.key === "ArrowLeft") !== isRightToLeft;
    document.querySelector(`.neighbours a[rel="${isBack ? "prev" : "next"}"]`)?.click();
  });
}
