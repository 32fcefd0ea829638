// A headless Chromium, quiet and without a network of its own.

import { existsSync } from "node:fs";
import puppeteer from "puppeteer-core";

const PLACES = [process.env.CHROMIUM, "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

export function launch() {
  const executablePath = PLACES.find((place) => place && existsSync(place));
  if (!executablePath) throw new Error("no Chromium was found; set CHROMIUM to its path");
  return puppeteer.launch({
    executablePath,
    headless: true,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--disable-dev-shm-usage",
    ],
  });
}

/** Opens a page that reports what goes wrong on it into `faults`. */
export async function listen(browser, origin, faults) {
  const page = await browser.newPage();
  const at = () => page.url().replace(origin, "/");
  page.on("console", (message) => {
    if (["error", "warn"].includes(message.type())) faults.push(`${at()}: console says ${message.text()}`);
  });
  page.on("pageerror", (error) => faults.push(`${at()}: ${error.message}`));
  page.on("requestfailed", (request) => {
    const why = request.failure()?.errorText;
    if (why !== "net::ERR_ABORTED") faults.push(`${at()}: ${request.url()} failed: ${why}`);
  });
  page.on("request", (request) => {
    if (!request.url().startsWith(origin) && !request.url().startsWith("data:")) {
      faults.push(`${at()}: asks for ${request.url()}`);
    }
  });
  page.on("response", (response) => {
    if (response.status() >= 400) faults.push(`${at()}: ${response.url()} answers ${response.status()}`);
  });
  return page;
}
