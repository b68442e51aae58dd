// A sync server of the same documents, as its own packages make one. Says its port, and at the end its own CPU time.
import { Repo } from "@automerge/automerge-repo"
import { WebSocketServerAdapter } from "@automerge/automerge-repo-network-websocket"
import { NodeFSStorageAdapter } from "@automerge/automerge-repo-storage-nodefs"
import { WebSocketServer } from "ws"

const sockets = new WebSocketServer({ host: "127.0.0.1", port: 0 })
new Repo({
  network: [new WebSocketServerAdapter(sockets)],
  storage: new NodeFSStorageAdapter(process.argv[2]),
  sharePolicy: async () => false,
})
sockets.on("listening", () => console.log(sockets.address().port))
process.stdin.on("data", () => console.log(process.cpuUsage().user + process.cpuUsage().system))
process.stdin.on("end", () => process.exit(0))
