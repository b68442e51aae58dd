package app.sumpbook.ui

import java.io.File
import java.net.InetSocketAddress
import java.net.ServerSocket
import java.net.Socket
import java.util.concurrent.TimeUnit

/** The shop's hub over TLS, on this machine, for as long as it is open. */
class Hub(private val yard: Yard, val port: Int = ServerSocket(0).use { it.localPort }) : AutoCloseable {

    /** Where it answers. */
    val address = "127.0.0.1:$port"
    private val said = File(yard.root, "hub.log")
    private val process: Process =
        ProcessBuilder(yard.command, "serve", "--shop", yard.shop, "--address", "127.0.0.1:$port", "--close-by-hand")
            .redirectErrorStream(true).redirectOutput(said).start()

    init {
        val until = System.nanoTime() + TimeUnit.SECONDS.toNanos(30)
        while (!answers()) {
            check(process.isAlive && System.nanoTime() < until) { said.readText() }
            Thread.sleep(50)
        }
    }

    private fun answers() = runCatching { Socket().use { it.connect(InetSocketAddress("127.0.0.1", port), 500) } }.isSuccess

    /** A code for one phone, as text. */
    fun code(vararg more: String): String =
        Regex(""""code":"([A-Z2-7]+)"""").find(yard.says("code", "--hub", address, "--json", *more))!!.groupValues[1]

    override fun close() {
        process.destroy()
        process.waitFor(10, TimeUnit.SECONDS)
    }
}
