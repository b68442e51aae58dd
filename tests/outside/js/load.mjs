// Opens a saved book and says what stands in it, as JSON: its heads and, for each entry, its bytes.
// Usage: node load.mjs FILE (the document in hexadecimal)
import { readFileSync } from "node:fs";
import * as Automerge from "@automerge/automerge";

const saved = Buffer.from(readFileSync(process.argv[2], "utf8").trim(), "hex");
const book = Automerge.load(new Uint8Array(saved));
const entries = {};
for (const id of Object.keys(book)) {
  entries[id] = Buffer.from(book[id]).toString("hex");
}
const changes = Automerge.getAllChanges(book).map((change) => Automerge.decodeChange(change).hash);
console.log(JSON.stringify({ heads: Automerge.getHeads(book).sort(), changes: changes.sort(), entries }));
