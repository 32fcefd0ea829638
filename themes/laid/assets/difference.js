// What differs between two photographs that lie on each other.
//
// Tones are set against their surroundings before they are compared (local mean and deviation), so
// that structure shows, lines cut or taken away, and not how rich the ink was or the light of the
// photograph. Photographs never lie on each other to the pixel: a tone counts as different only where
// it lies outside what the other shows at that place or beside it.
"use strict";

(() => {
  const { apply, file, inverse, scaled, times } = keyblockViewer;
  const WIDE = 1000; // The width in px at which pictures are compared.
  const AROUND = 20; // How far the surroundings of a pixel reach, px.
  const PLAIN = 0.2; // The share of the picture's deviation below which a surrounding is plain paper.
  const NOISE = 2; // What a photograph's noise adds, of 255.
  const GAIN = 64; // How much grey a difference of one deviation gives.
  const MARKED = 0.5; // From how many deviations on a place counts as different.
  const ROWS = 128; // How many rows are worked before the page may answer.

  const rest = () => new Promise((go) => setTimeout(go));

  /** The sums of `values` from the first pixel to each, one row and column wider. */
  const summed = (values, width, height) => {
    const sums = new Float64Array((width + 1) * (height + 1));
    for (let y = 0; y < height; y += 1) {
      let row = 0;
      for (let x = 0; x < width; x += 1) {
        row += values(y * width + x);
        sums[(y + 1) * (width + 1) + x + 1] = sums[y * (width + 1) + x + 1] + row;
      }
    }
    return sums;
  };

  /** Tones against the mean and the deviation of what surrounds them. */
  const levelled = async ({ tones, seen }, width, height) => {
    const counts = summed((at) => seen[at], width, height);
    await rest();
    const first = summed((at) => (seen[at] ? tones[at] : 0), width, height);
    await rest();
    const second = summed((at) => (seen[at] ? tones[at] * tones[at] : 0), width, height);
    await rest();
    const [n, mean, square] = [counts, first, second].map((sums) => sums.at(-1));
    const overall = n > 0 ? Math.sqrt(Math.max(square / n - (mean / n) ** 2, 0)) : 0;
    const floor = PLAIN * overall + NOISE;
    const out = new Float32Array(width * height);
    for (let y = 0; y < height; y += 1) {
      const [top, bottom] = [Math.max(y - AROUND, 0) * (width + 1), Math.min(y + AROUND + 1, height) * (width + 1)];
      for (let x = 0; x < width; x += 1) {
        const [left, right] = [Math.max(x - AROUND, 0), Math.min(x + AROUND + 1, width)];
        const at = y * width + x;
        if (!seen[at]) continue;
        const within = (sums) => sums[bottom + right] - sums[bottom + left] - sums[top + right] + sums[top + left];
        const count = within(counts);
        const middle = within(first) / count;
        const deviation = Math.sqrt(Math.max(within(second) / count - middle * middle, 0));
        out[at] = (tones[at] - middle) / (deviation + floor);
      }
      if (y % ROWS === 0) await rest();
    }
    return out;
  };

  /** How far a tone lies outside what `other` shows at a place and beside it. */
  const outside = (tone, other, seen, x, y, width, height) => {
    let [least, most] = [Infinity, -Infinity];
    for (let j = Math.max(y - 1, 0); j <= Math.min(y + 1, height - 1); j += 1) {
      for (let i = Math.max(x - 1, 0); i <= Math.min(x + 1, width - 1); i += 1) {
        const at = j * width + i;
        if (!seen[at]) continue;
        if (other[at] < least) least = other[at];
        if (other[at] > most) most = other[at];
      }
    }
    return tone < least ? tone - least : tone > most ? tone - most : 0;
  };

  /**
   * What differs, pixel by pixel, in deviations: below 0 the second is darker, above 0 the first is;
   * NaN where one of them shows nothing. A photograph is { tones, seen }, tones 0 to 255.
   */
  const difference = async (first, second, width, height) => {
    const [a, b] = [await levelled(first, width, height), await levelled(second, width, height)];
    const out = new Float32Array(width * height);
    for (let y = 0; y < height; y += 1) {
      for (let x = 0; x < width; x += 1) {
        const at = y * width + x;
        if (!first.seen[at] || !second.seen[at]) {
          out[at] = NaN;
          continue;
        }
        const there = outside(b[at], a, first.seen, x, y, width, height);
        const back = -outside(a[at], b, second.seen, x, y, width, height);
        // Both ways round, or it is a line that lies beside itself.
        out[at] = there * back <= 0 ? 0 : Math.abs(there) < Math.abs(back) ? there : back;
      }
      if (y % ROWS === 0) await rest();
    }
    return out;
  };

  /** The tones of a picture laid on a frame of a size; fails where its pixels may not be read. */
  const laid = async (picture, onto, frame, width, height) => {
    const image = new Image();
    image.src = file(picture, 900);
    await image.decode();
    const back = inverse(times(scaled(width / frame.width), onto));
    // As many pixels as will be looked at: more would be picked from, not averaged.
    const [[x0, y0], [x1, y1]] = [apply(back, width / 2, height / 2), apply(back, width / 2 + 1, height / 2)];
    const wide = Math.max(1, Math.min(image.naturalWidth, Math.round(picture.width / Math.hypot(x1 - x0, y1 - y0))));
    const high = Math.max(1, Math.round((wide * picture.height) / picture.width));
    const canvas = Object.assign(document.createElement("canvas"), { width: wide, height: high });
    const context = canvas.getContext("2d", { willReadFrequently: true });
    context.imageSmoothingQuality = "high";
    context.drawImage(image, 0, 0, wide, high);
    const { data } = context.getImageData(0, 0, wide, high);
    const grey = new Float32Array(wide * high);
    for (let at = 0; at < grey.length; at += 1) grey[at] = 0.2126 * data[4 * at] + 0.7152 * data[4 * at + 1] + 0.0722 * data[4 * at + 2];
    const [tones, seen] = [new Float32Array(width * height), new Uint8Array(width * height)];
    const [a, b, c, d, e, f, g, h, i] = times(scaled(wide / picture.width), back);
    for (let y = 0; y < height; y += 1) {
      for (let x = 0; x < width; x += 1) {
        const depth = g * (x + 0.5) + h * (y + 0.5) + i;
        const u = (a * (x + 0.5) + b * (y + 0.5) + c) / depth - 0.5;
        const v = (d * (x + 0.5) + e * (y + 0.5) + f) / depth - 0.5;
        if (!(u >= -0.5 && v >= -0.5 && u <= wide - 0.5 && v <= high - 0.5)) continue;
        const left = Math.min(Math.max(Math.floor(u), 0), wide - 1);
        const top = Math.min(Math.max(Math.floor(v), 0), high - 1);
        const right = Math.min(left + 1, wide - 1);
        const below = Math.min(top + 1, high - 1) * wide;
        const above = top * wide;
        const p = Math.min(Math.max(u - left, 0), 1);
        const q = Math.min(Math.max(v - top, 0), 1);
        const at = y * width + x;
        tones[at] = (grey[above + left] * (1 - p) + grey[above + right] * p) * (1 - q) + (grey[below + left] * (1 - p) + grey[below + right] * p) * q;
        seen[at] = 1;
      }
      if (y % ROWS === 0) await rest();
    }
    return { tones, seen };
  };

  /**
   * Draws what differs between two sheets on a canvas; gives the share of places that do, within the
   * printed image where the frame says where it is: edges of paper and what lies around it are no print.
   */
  const draw = async (first, second, frame) => {
    const width = Math.min(WIDE, frame.width);
    const height = Math.max(1, Math.round((width * frame.height) / frame.width));
    const on = (sheet) => laid(sheet.picture, sheet.onto, frame, width, height);
    const found = await difference(await on(first), await on(second), width, height);
    const canvas = Object.assign(document.createElement("canvas"), { width, height });
    const context = canvas.getContext("2d");
    const image = context.createImageData(width, height);
    let [seen, marked] = [0, 0];
    const [left, top, wide, high] = frame.image ?? [0, 0, 100, 100];
    const within = (at, from, reach, side) => at >= (from / 100) * side && at < ((from + reach) / 100) * side;
    const { data } = image; // It rounds, and keeps what it is given between 0 and 255.
    for (let at = 0; at < found.length; at += 1) {
      if (Number.isNaN(found[at])) continue;
      if (within(at % width, left, wide, width) && within(Math.floor(at / width), top, high, height)) {
        seen += 1;
        if (Math.abs(found[at]) > MARKED) marked += 1;
      }
      data[4 * at] = data[4 * at + 1] = data[4 * at + 2] = 128 + GAIN * found[at];
      data[4 * at + 3] = 255;
    }
    context.putImageData(image, 0, 0);
    return { canvas, share: seen > 0 ? marked / seen : 0 };
  };

  globalThis.keyblockDifference = { difference, draw };
})();
