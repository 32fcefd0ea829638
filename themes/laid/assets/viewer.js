// Looking closer: a picture that is enlarged and moved in its place, from tiles.
//
// A picture's tiles are static files at addresses of the IIIF Image API 3.0, level 0. A layer is a
// picture in its own pixels, edges at whole numbers; a plane projective map (nine numbers, row by
// row) lays it on the frame that the view looks at, so that photographs of one design can lie on each
// other (`compare.js`). Nothing is fetched but pictures, so it works from a disk.
"use strict";

(() => {
  const STEP = 1.5; // How much closer one press of a key or button goes.
  const CLOSEST = 4; // Screen pixels a picture's pixel is never drawn larger than.
  const NEAR = 1.25; // How much a tile may be drawn larger than it is before finer ones are asked for.
  const SHIFT = 0.15; // How much of the pane an arrow moves.

  // Maps of the plane.

  const times = (a, b) => Array.from({ length: 9 }, (_, at) => [0, 1, 2].reduce((sum, k) => sum + a[at - (at % 3) + k] * b[3 * k + (at % 3)], 0));
  const inverse = ([a, b, c, d, e, f, g, h, i]) => [e * i - f * h, c * h - b * i, b * f - c * e, f * g - d * i, a * i - c * g, c * d - a * f, d * h - e * g, b * g - a * h, a * e - b * d];
  const apply = ([a, b, c, d, e, f, g, h, i], x, y) => [(a * x + b * y + c) / (g * x + h * y + i), (d * x + e * y + f) / (g * x + h * y + i)];
  const scaled = (by, x = 0, y = 0) => [by, 0, x, 0, by, y, 0, 0, 1];
  const css = ([a, b, c, d, e, f, g, h, i]) => `matrix3d(${[a, d, 0, g, b, e, 0, h, 0, 0, 1, 0, c, f, 0, i]})`;

  /** How many times larger a map draws what lies at a place. */
  const magnification = (map, x, y) => {
    const [[x0, y0], [x1, y1], [x2, y2]] = [apply(map, x, y), apply(map, x + 1, y), apply(map, x, y + 1)];
    return Math.sqrt(Math.abs((x1 - x0) * (y2 - y0) - (y1 - y0) * (x2 - x0)));
  };

  /** The address of a tile, and the part of the picture it shows, in its pixels. */
  const tile = ({ tiles, width, height }, factor, column, row) => {
    const span = tiles.side * factor;
    const [left, top] = [column * span, row * span];
    const [wide, high] = [Math.min(span, width - left), Math.min(span, height - top)];
    const isWhole = wide === width && high === height;
    const region = isWhole ? "full" : `${left},${top},${wide},${high}`;
    const size = isWhole && factor === 1 ? "max" : `${Math.ceil(wide / factor)},${Math.ceil(high / factor)}`;
    return { address: `${tiles.address}/${region}/${size}/0/default.jpg`, left, top, wide, high };
  };

  /** The smallest file of a picture that is at least so wide; else its largest. */
  const file = (picture, atLeast) => (picture.sizes.find(([width]) => width >= atLeast) ?? picture.sizes.at(-1))[1];

  const element = (name, className) => Object.assign(document.createElement(name), { className });

  /** A picture in its own pixels: the whole of it below, tiles above where they are wanted. */
  class Layer {
    constructor(picture, onto) {
      Object.assign(this, { picture, onto, tiles: new Map() });
      this.element = element("div", "layer");
      this.place(this.element, 0, 0, picture.width, picture.height);
      const under = this.image(file(picture, picture.tiles ? 900 : Infinity), 0, 0, picture.width, picture.height);
      under.alt = picture.alt;
      this.element.append(under);
      this.under = under;
    }

    place({ style }, left, top, width, height) {
      Object.assign(style, { left: `${left}px`, top: `${top}px`, width: `${width}px`, height: `${height}px` });
    }

    image(address, left, top, width, height) {
      const image = Object.assign(new Image(), { draggable: false, alt: "", src: address });
      this.place(image, left, top, width, height);
      return image;
    }

    /** Draws it on a pane of a size, under the map from the frame to the pane. */
    draw(look, width, height) {
      const map = times(look, this.onto);
      this.element.style.transform = css(map);
      if (this.picture.tiles) this.fill(map, width, height);
    }

    fill(map, width, height) {
      const { picture } = this;
      const back = inverse(map);
      const corners = [[0, 0], [width, 0], [0, height], [width, height]].map(([x, y]) => apply(back, x, y));
      const within = (at, least, most) => Math.min(Math.max(at, least), most);
      const [left, right, top, bottom] = [0, 1].flatMap((axis) => {
        const most = axis === 0 ? picture.width : picture.height;
        const along = corners.map((corner) => corner[axis]);
        return [within(Math.min(...along), 0, most), within(Math.max(...along), 0, most)];
      });
      const drawn = magnification(map, (left + right) / 2, (top + bottom) / 2) * devicePixelRatio;
      const allowed = NEAR / drawn;
      const factor = picture.tiles.factors.filter((one) => one <= allowed).at(-1) ?? picture.tiles.factors[0];
      const span = picture.tiles.side * factor;
      const wanted = new Set();
      const isFiner = this.under.complete && picture.width / factor > this.under.naturalWidth;
      for (let row = Math.floor(top / span); isFiner && row * span < bottom; row += 1) {
        for (let column = Math.floor(left / span); column * span < right; column += 1) {
          const key = `${factor}/${column}/${row}`;
          wanted.add(key);
          if (!this.tiles.has(key)) this.fetch(key, factor, tile(picture, factor, column, row));
        }
      }
      this.factor = isFiner ? factor : 0;
      this.wanted = wanted;
      this.tidy();
    }

    fetch(key, factor, { address, left, top, wide, high }) {
      const image = this.image(address, left, top, wide, high);
      image.style.zIndex = 1000 - factor;
      image.addEventListener("load", () => this.tidy());
      image.addEventListener("error", () => image.remove()); // What lies below stays in sight.
      this.tiles.set(key, image);
      this.element.append(image);
    }

    /** Takes away the tiles that are not wanted, once all that are wanted are there. */
    tidy() {
      if (![...this.wanted].every((key) => this.tiles.get(key).complete)) return;
      for (const [key, image] of this.tiles) {
        if (this.wanted.has(key)) continue;
        image.remove();
        this.tiles.delete(key);
      }
    }
  }

  /** Where several panes look: the middle, in pixels of the frame, and screen pixels a frame's pixel. */
  class View {
    constructor(frame) {
      Object.assign(this, { frame, panes: new Set(), told: () => {} });
      this.whole();
    }

    /** The scale at which all of the frame is in sight. */
    least() {
      const fits = [...this.panes].map((pane) => Math.min(pane.width / this.frame.width, pane.height / this.frame.height));
      return Math.min(...fits.filter((fit) => fit > 0), CLOSEST);
    }

    get isWhole() {
      return this.closeness <= 1.001;
    }

    whole() {
      Object.assign(this, { x: this.frame.width / 2, y: this.frame.height / 2, closeness: 1 });
      this.change();
    }

    get scale() {
      return this.least() * this.closeness;
    }

    /** Goes closer by a factor; the place at (x, y) of the frame stays where it is. */
    zoom(by, x = this.x, y = this.y) {
      const before = this.closeness;
      const most = Math.max((this.frame.finest ?? 1) * CLOSEST / this.least(), 1);
      this.closeness = Math.min(Math.max(before * by, 1), most);
      const share = 1 - before / this.closeness;
      this.move((x - this.x) * share, (y - this.y) * share);
    }

    /** Goes to a part of the frame, once a pane has a size to show it in. */
    show(part) {
      this.wanted = part;
      this.move(0, 0);
    }

    /** Moves by pixels of the frame, its middle never out of the frame. */
    move(x, y) {
      const { width, height } = this.frame;
      const [opening] = this.panes;
      if (this.wanted && opening?.width > 0) {
        const [left, top, wide, high] = this.wanted;
        this.wanted = null;
        this.zoom(Math.min(opening.width / wide, opening.height / high) / this.scale);
        return this.move(left + wide / 2 - this.x, top + high / 2 - this.y);
      }
      const reach = (at, length, seen) => {
        const half = Math.min(seen / this.scale / 2, length / 2);
        return Math.min(Math.max(at, half), length - half);
      };
      const [first] = this.panes;
      this.x = reach(this.x + x, width, first?.width ?? 0);
      this.y = reach(this.y + y, height, first?.height ?? 0);
      this.change();
    }

    change() {
      if (this.isDue) return;
      this.isDue = true;
      requestAnimationFrame(() => {
        this.isDue = false;
        for (const pane of this.panes) pane.draw();
        // Before a pane has a size there is no scale to tell of.
        if ([...this.panes].some((pane) => pane.width > 0)) this.told();
      });
    }

    /** Does what a button or key asks; false where it asks for nothing. */
    do(what) {
      const [pane] = this.panes;
      const shift = (x, y) => this.move((x * SHIFT * pane.width) / this.scale, (y * SHIFT * pane.height) / this.scale);
      const ways = {
        closer: () => this.zoom(STEP),
        further: () => this.zoom(1 / STEP),
        whole: () => this.whole(),
        left: () => shift(-1, 0),
        right: () => shift(1, 0),
        up: () => shift(0, -1),
        down: () => shift(0, 1),
      };
      ways[what]?.();
      return what in ways;
    }
  }

  const KEYS = { "+": "closer", "=": "closer", "-": "further", _: "further", 0: "whole", ArrowLeft: "left", ArrowRight: "right", ArrowUp: "up", ArrowDown: "down" };

  /** An opening through which a view is seen: films upon each other, each with one layer. */
  class Pane {
    constructor(view, label) {
      Object.assign(this, { view, films: [], width: 0, height: 0, fingers: new Map() });
      this.element = element("div", "pane");
      this.element.tabIndex = 0;
      this.element.setAttribute("role", "group");
      this.element.setAttribute("aria-label", label);
      this.element.style.aspectRatio = `${view.frame.width} / ${view.frame.height}`;
      this.seen = new ResizeObserver(([{ contentRect }]) => {
        [this.width, this.height] = [contentRect.width, contentRect.height];
        view.move(0, 0);
      });
      this.seen.observe(this.element);
      view.panes.add(this);
      this.listen();
    }

    /** Lays a picture, or whatever else is drawn as one, on top of the others. */
    lay(layer) {
      const film = element("div", "film");
      film.append(layer.element);
      this.element.append(film);
      this.films.push({ element: film, layer });
      layer.under?.addEventListener("load", () => this.view.change());
      this.view.change();
      return film;
    }

    /** The map from the frame to the pane. */
    get look() {
      const { x, y, scale } = this.view;
      return scaled(scale, this.width / 2 - x * scale, this.height / 2 - y * scale);
    }

    draw() {
      if (!this.width) return;
      this.element.classList.toggle("closer", !this.view.isWhole);
      for (const { layer } of this.films) layer.draw(this.look, this.width, this.height);
    }

    close() {
      this.seen.disconnect();
      this.view.panes.delete(this);
      this.element.remove();
    }

    /** A place of the screen, in pixels of the frame. */
    at({ clientX, clientY }) {
      const { left, top } = this.element.getBoundingClientRect();
      return apply(inverse(this.look), clientX - left, clientY - top);
    }

    listen() {
      const { element: pane, view, fingers } = this;
      const isEntered = () => pane.contains(document.activeElement);
      pane.addEventListener("keydown", (event) => {
        if (event.target !== pane || event.ctrlKey || event.metaKey || event.altKey) return;
        if (KEYS[event.key] && view.do(KEYS[event.key])) event.preventDefault();
      });
      // The wheel scrolls the page until the pane has been entered, and again where all is in sight.
      pane.addEventListener("wheel", (event) => {
        if (!event.ctrlKey && (!isEntered() || (view.isWhole && event.deltaY > 0))) return;
        event.preventDefault();
        const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 30 : 1;
        view.zoom(Math.exp(Math.min(Math.max(-event.deltaY * lines, -240), 240) / 400), ...this.at(event));
      }, { passive: false });
      pane.addEventListener("pointerdown", (event) => {
        if (event.button !== 0 || event.target.closest(".handle-of-edge")) return;
        pane.focus({ preventScroll: true });
        fingers.set(event.pointerId, event);
        pane.setPointerCapture(event.pointerId);
      });
      pane.addEventListener("pointermove", (event) => {
        const before = fingers.get(event.pointerId);
        if (!before) return;
        const other = [...fingers.values()].find((finger) => finger.pointerId !== event.pointerId);
        fingers.set(event.pointerId, event);
        const [from, to] = [this.at(before), this.at(event)];
        if (!other) {
          view.move(from[0] - to[0], from[1] - to[1]);
          return;
        }
        const apart = (finger) => Math.max(Math.hypot(finger.clientX - other.clientX, finger.clientY - other.clientY), 1);
        view.zoom(apart(event) / apart(before), ...this.at(other));
      });
      for (const end of ["pointerup", "pointercancel"]) pane.addEventListener(end, (event) => fingers.delete(event.pointerId));
    }
  }

  /** The buttons of a view, its bar of millimetres, and what it says of itself. */
  const controls = (view) => {
    const bar = document.getElementById("viewer_controls").content.firstElementChild.cloneNode(true);
    const language = document.documentElement.lang;
    const times = new Intl.NumberFormat(language, { maximumFractionDigits: 1 });
    const length = new Intl.NumberFormat(language, { maximumFractionDigits: 2 });
    const [said, scale] = [bar.querySelector("output"), bar.querySelector(".scale")];
    let waiting;
    view.told = () => {
      const { mm } = view.frame;
      scale.hidden = !mm;
      if (mm) {
        const most = (140 * mm) / view.scale;
        const power = 10 ** Math.floor(Math.log10(most));
        const step = [5, 2, 1].find((one) => one * power <= most) * power;
        scale.querySelector(".rule").style.inlineSize = `${(step / mm) * view.scale}px`;
        scale.querySelector(".length").textContent = `${length.format(step)} mm`;
      }
      clearTimeout(waiting);
      const words = view.isWhole ? said.dataset.whole : said.dataset.closer;
      const sentence = words.replace("{times}", times.format(view.closeness));
      // Said once the hand rests, so that a screen reader is not talked over.
      waiting = setTimeout(() => said.textContent === sentence || (said.textContent = sentence), 400);
    };
    bar.addEventListener("click", (event) => {
      const what = event.target.closest("button")?.dataset.do;
      if (what) view.do(what);
    });
    return bar;
  };

  // A plate that is opened in its place.

  const open = (figure, picture, part = null) => {
    if (figure.classList.contains("viewing")) return;
    const ground = figure.querySelector(".ground");
    const [still] = ground.children;
    const look = figure.querySelector(".look");
    const view = new View({ ...picture });
    const pane = new Pane(view, picture.alt);
    const bar = controls(view);
    const close = () => {
      pane.close();
      bar.remove();
      figure.classList.remove("viewing");
      still.hidden = look.hidden = false;
      look.querySelector("button").focus();
    };
    pane.lay(new Layer(picture, scaled(1)));
    bar.querySelector("[data-do=close]").addEventListener("click", close);
    figure.addEventListener("keydown", (event) => event.key === "Escape" && pane.element.isConnected && close());
    still.hidden = look.hidden = true;
    figure.classList.add("viewing");
    ground.append(pane.element);
    ground.after(bar);
    if (part) view.show(part);
    document.dispatchEvent(new CustomEvent("looking", { detail: { view, pane, picture, bar } }));
    pane.element.focus({ preventScroll: true });
    pane.element.scrollIntoView({ block: "nearest" });
  };

  globalThis.keyblockViewer = { Layer, Pane, View, controls, tile, file, times, inverse, apply, scaled, element, open };

  for (const figure of document.querySelectorAll("figure.plate[data-closer]")) {
    const picture = JSON.parse(figure.dataset.closer);
    const link = figure.querySelector(".ground > a");
    picture.alt = figure.querySelector("img").alt;
    const look = document.getElementById("viewer_look").content.firstElementChild.cloneNode(true);
    figure.querySelector("figcaption").before(look);
    look.querySelector("button").addEventListener("click", () => open(figure, picture));
    // A link to the picture's own file opens it here; one to a page leads there.
    const isOwn = picture.sizes.some(([, address]) => address === link?.getAttribute("href"));
    if (isOwn) {
      link.addEventListener("click", (event) => {
        if (event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
        event.preventDefault();
        open(figure, picture);
      });
    }
  }
})();
