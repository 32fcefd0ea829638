// A proof of a copy of the example catalogue, and its records to edit.

import { spawn } from "node:child_process";
import { cp, mkdtemp, readFile, rename, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, dirname, join } from "node:path";

const PROGRAM = process.env.KEYBLOCK ?? join(process.env.CARGO_TARGET_DIR ?? "target", "release/keyblock");

/**
 * Starts `keyblock proof` on a copy of the example catalogue. Gives its address, what the terminal
 * shows (`terminal()`), ways to read and write its files, and ways to stop.
 */
export async function startProof() {
  const folder = await mkdtemp(join(tmpdir(), "keyblock-proof-"));
  await cp("tests/example-catalogue", folder, { recursive: true });
  let said = "";
  let process_;
  const run = async (port) => {
    process_ = spawn(PROGRAM, ["proof", folder, "--port", String(port)], { stdio: ["ignore", "pipe", "pipe"] });
    let gone = false;
    process_.on("error", () => (gone = true));
    process_.on("exit", () => (gone = true));
    for (const stream of [process_.stdout, process_.stderr]) stream.on("data", (text) => (said += text));
    const from = said.length;
    return await until("the proof's address", () => {
      if (gone) throw new Error(`the proof ended: ${said}`);
      const address = said.slice(from).match(/http:\/\/127\.0\.0\.1:(\d+)\//);
      return address && /pulled in|no proof can be pulled yet/.test(said.slice(from)) ? address : null;
    });
  };
  const kill = async () => {
    if (process_.exitCode !== null || process_.signalCode !== null) return;
    const ended = new Promise((resolve) => process_.on("exit", resolve));
    process_.kill("SIGKILL");
    await ended;
  };
  const [address, port] = await run(0);
  return {
    address,
    folder,
    terminal: () => said,
    read: (path) => readFile(join(folder, path), "utf8"),
    // Written in one step, as editors save: a file read between truncating and writing has another text.
    write: async (path, text) => {
      const file = join(folder, path);
      const next = join(dirname(file), `.${basename(file)}.next`);
      await writeFile(next, text);
      await rename(next, file);
    },
    kill,
    startAgain: () => run(port),
    stop: async () => {
      await kill();
      await rm(folder, { recursive: true });
    },
  };
}

/** Asks `look` until it has an answer; fails after half a minute. */
export async function until(what, look) {
  const end = Date.now() + 30_000;
  for (;;) {
    const answer = await look();
    if (answer) return answer;
    if (Date.now() > end) throw new Error(`waited in vain for ${what}`);
    await new Promise((resume) => setTimeout(resume, 20));
  }
}
