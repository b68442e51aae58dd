// The thing under test: the invented fleet with its month lived, as `sumpbook demo` opens it. The console,
// the phones' folders and the command line are all real.

import { execFile, spawn } from "node:child_process";
import { once } from "node:events";
import { createServer } from "node:net";
import { resolve } from "node:path";
import { promisify } from "node:util";

const run = promisify(execFile);

/** The program, built before; `SUMPBOOK` names another. */
export const program = resolve(process.env.SUMPBOOK ?? "../../target/debug/sumpbook");

/** The moment on which the demo opens: phones of the fleet are told the same. */
export const NOW = "2026-11-09T17:00:00-07:00";

const freePort = async () => {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address();
  server.close();
  await once(server, "close");
  return port;
};

/** Starts a demo; answers when it can be opened. */
export const begin = async () => {
  const address = `127.0.0.1:${await freePort()}`;
  const child = spawn(program, ["demo", "--address", address], { stdio: ["ignore", "pipe", "pipe"] });
  let said = "";
  const open = new Promise((done, failed) => {
    const hear = (bytes) => {
      said += bytes;
      if (said.includes("Ctrl-C ends it")) done();
    };
    child.stdout.on("data", hear);
    child.stderr.on("data", hear);
    child.once("error", failed);
    child.once("exit", (code) => failed(new Error(`the demo ended with ${code}: ${said}`)));
  });
  await open;
  const found = (pattern) => said.match(pattern)?.[1] ?? "";
  const demo = {
    address,
    url: `https://${address}`,
    name: found(/name: (.+?)   password/),
    password: found(/password: (\S+)/),
    folder: found(/in (\S+tern-hollow-water-\S+)/),
    said: () => said,
    /** Runs the program with a phone's folder; gives what it printed. */
    phone: (folder, ...words) => demo.told("phone", folder, ...words),
    told: async (...words) => (await run(program, words)).stdout,
    /** Records lines of JSON on a phone. */
    record: async (folder, lines, at = NOW) => {
      const going = run(program, ["phone", folder, "record", "--now", at]);
      going.child.stdin.end(lines.map((line) => `${JSON.stringify(line)}\n`).join(""));
      return (await going).stdout.trim().split("\n");
    },
    /** Ends it as Ctrl-C does; gives what it said last. */
    end: async () => {
      const gone = once(child, "exit");
      child.kill("SIGINT");
      const [code] = await gone;
      return { code, said };
    },
  };
  return demo;
};
