// Places: a part of a picture as a content state (IIIF Content State API 1.0). A page opens the place that its address
// names after `iiif-content=`, in any form of the standard, if it is on one of its own pictures; and the viewer copies the
// place in sight, as a link to this page or as the state that other viewers take. Nothing is fetched.
"use strict";

(() => {
  const { inverse, apply, open } = globalThis.keyblockViewer;

  const encode = (text) => btoa(encodeURIComponent(text)).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
  const decode = (text) => decodeURIComponent(atob(text.replaceAll("-", "+").replaceAll("_", "/")));

  /** The part of a picture that a fragment names: left, top, width, height in its pixels; null for the whole. */
  const region = (fragment, { width, height }) => {
    const found = /^xywh=(?:(pixel|percent):)?([\d.]+),([\d.]+),([\d.]+),([\d.]+)$/.exec(fragment ?? "");
    if (!found) return null;
    const scale = found[1] === "percent" ? [width / 100, height / 100] : [1, 1];
    const part = found.slice(2).map((number, at) => Number(number) * scale[at % 2]);
    return part.every(Number.isFinite) && part[2] > 0 && part[3] > 0 ? part : null;
  };

  /** What a content state leads to: the address of a canvas or manifest, and a fragment. */
  const target = (state) => {
    const read = /^https?:/.test(state) ? { id: state } : JSON.parse(decode(state));
    const [first] = [read.target ?? read].flat();
    const source = first.source ?? first;
    const [id, fragment] = (source.id ?? source).split("#");
    const [selector] = [first.selector ?? []].flat();
    return { id, fragment: selector?.value ?? fragment };
  };

  const figures = [...document.querySelectorAll("figure[data-closer]")];
  const leading = figures.find((figure) => figure.classList.contains("plate"));

  /** Opens the place that the address names; the leading plate's viewer shows the page's other pictures too. */
  const restore = () => {
    const state = new URLSearchParams(location.search).get("iiif-content");
    if (!state || !leading) return;
    try {
      const { id, fragment } = target(state);
      const pictures = figures.map((figure) => ({ ...JSON.parse(figure.dataset.closer), alt: figure.querySelector("img").alt }));
      const picture = pictures.find(({ canvas }) => canvas === id) ?? pictures.find(({ manifest }) => manifest === id);
      if (picture) open(leading, picture, region(fragment, picture));
    } catch {
      // A state that cannot be read leaves the page as it is.
    }
  };

  /** The part of the picture that is in sight, in whole pixels. */
  const inSight = ({ pane, picture }) => {
    const back = inverse(pane.look);
    const [start, end] = [apply(back, 0, 0), apply(back, pane.width, pane.height)];
    const within = (at, most) => Math.round(Math.min(Math.max(at, 0), most));
    const [left, top] = [within(start[0], picture.width), within(start[1], picture.height)];
    return [left, top, within(end[0], picture.width) - left, within(end[1], picture.height) - top];
  };

  const stateOf = (look) => {
    const { view, picture } = look;
    const id = view.isWhole ? picture.canvas : `${picture.canvas}#xywh=${inSight(look)}`;
    return JSON.stringify({ id, type: "Canvas", partOf: [{ id: picture.manifest, type: "Manifest" }] });
  };

  const linkTo = (state) => {
    const link = new URL(document.querySelector("link[rel=canonical]").href);
    link.search = `?iiif-content=${encode(state)}`;
    return link.href;
  };

  document.addEventListener("looking", ({ detail: look }) => {
    const texts = { link: () => linkTo(stateOf(look)), state: () => stateOf(look) };
    for (const button of look.bar.querySelectorAll("[data-copies]")) {
      button.hidden = !navigator.clipboard;
      const label = button.textContent;
      button.addEventListener("click", async () => {
        await navigator.clipboard.writeText(texts[button.dataset.copies]());
        button.textContent = button.dataset.done;
        setTimeout(() => { button.textContent = label; }, 2000);
      });
    }
  });

  restore();
})();
