// Phones that bring a day each: documents with as many changes, each a document of its own. An acknowledgement is
// the server's word that it has the document's heads; whether they are on the disk it does not say.
import * as Automerge from "@automerge/automerge"
import { Repo } from "@automerge/automerge-repo"
import { WebSocketClientAdapter } from "@automerge/automerge-repo-network-websocket"
import { readFileSync } from "node:fs"

const [, , port, file, phones, entries, hands] = process.argv
const bytes = readFileSync(file)

// As written: 36 bytes of an id, a big-endian length, so many bytes.
let at = 0
const documents = Array.from({ length: Number(phones) }, () => {
  let document = Automerge.init()
  for (let n = 0; n < Number(entries); n++) {
    const id = bytes.toString("latin1", at, at + 36)
    const end = at + 40 + bytes.readUInt32BE(at + 36)
    const value = new Uint8Array(bytes.subarray(at + 40, end))
    document = Automerge.change(document, { time: 0 }, book => { book[id] = value })
    at = end
  }
  return Automerge.save(document)
})

async function phone() {
  const way = new WebSocketClientAdapter(`ws://127.0.0.1:${port}`)
  const repo = new Repo({ network: [way] })
  await repo.networkSubsystem.whenReady()
  return { repo, way }
}

async function bring({ repo }, document) {
  const begun = performance.now()
  const handle = repo.import(document)
  const heads = handle.heads().join()
  await new Promise(resolve => handle.on("remote-heads", said => said.heads.join() === heads && resolve()))
  return performance.now() - begun
}

// The handshake is not what is measured.
const all = []
for (const _ of documents) all.push(await phone())
const begun = performance.now()
const each = []
let next = 0
await Promise.all(Array.from({ length: Number(hands) }, async () => {
  while (next < documents.length) {
    const index = next++
    each.push(await bring(all[index], documents[index]))
  }
}))
const seconds = (performance.now() - begun) / 1000
each.sort((a, b) => a - b)
console.log([seconds, each[Math.floor(each.length / 2)], each[Math.floor(each.length * 0.99)]].join(" "))
process.exit(0)
