package app.sumpbook.ui

import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import java.io.File
import java.net.InetAddress
import java.net.ServerSocket
import java.nio.file.Files

/** A shop of the invented fleet with its hub on this machine, made by the command as anybody makes one. */
class HubYard : AutoCloseable {
    private val root = Files.createTempDirectory("sumpbook").toFile()
    private val command = System.getProperty("sumpbook.command")
    private val examples = File(System.getProperty("sumpbook.root"), "core/shop/examples")
    private val shop = File(root, "shop").path
    private val address = "127.0.0.1:" + ServerSocket(0, 1, InetAddress.getLoopbackAddress()).use { it.localPort }
    private var hub: Process? = null

    init {
        says("init", "--name", "Tern Hollow Water", "--zone", "America/Denver")
        says("register", File(examples, "fleet.jsonl").path)
    }

    /** Runs a verb at the shop; what it wrote. */
    fun says(vararg words: String): String {
        val process = ProcessBuilder(command, *words, "--shop", shop).redirectErrorStream(true).start()
        val said = process.inputStream.bufferedReader().readText()
        assertEquals(said, 0, process.waitFor())
        return said.trim()
    }

    /** Gives lines of JSON to the shop's own hand. */
    fun register(vararg lines: String) {
        val file = File(root, "lines").apply { writeText(lines.joinToString("\n")) }
        says("register", file.path)
    }

    /** Begins the hub and waits until it answers. */
    fun begin() {
        val process = ProcessBuilder(command, "serve", "--address", address, "--close-by-hand", "--shop", shop)
            .redirectError(File(root, "hub.log")).start()
        hub = process
        val line = process.inputStream.bufferedReader().readLine().orEmpty()
        assertTrue(line, "The hub answers" in line)
    }

    /** Ends the hub. */
    fun end() {
        hub?.destroyForcibly()?.waitFor()
        hub = null
    }

    /** The code on the shop's screen. */
    fun code(): String = says("code", "--hub", address, "--json").substringAfter("\"code\":\"").substringBefore('"')

    /** An invitation as a file: the phone records at once. */
    fun invitation(): ByteArray = File(root, "invitation").also { says("invite", it.path) }.readBytes()

    /** Somebody at the shop lets a phone in. */
    fun accept(key: String) {
        says("accept", key, "--by", "Ilse Marrow")
    }

    /** The shop takes in a phone's file: its answer for the way back. */
    fun takeIn(handed: ByteArray, acceptKey: String): ByteArray {
        val file = File(root, "handed").apply { writeBytes(handed) }
        val answer = File(root, "answer")
        says("take-in", file.path, "--answer", answer.path, "--accept", acceptKey)
        return answer.readBytes()
    }

    /** A file of examples. */
    fun example(name: String): String = File(examples, "$name.jsonl").path

    /** The photos the shop holds. */
    fun photos(): List<File> = File(shop, "photos").listFiles().orEmpty().filter { it.isFile && it.length() > 0 }

    /** A folder that goes with the yard. */
    fun folder(name: String): File = File(root, name)

    override fun close() {
        end()
        root.deleteRecursively()
    }
}

/** Waits until something holds; fails after two minutes: a busy machine is slow and not wrong. */
fun until(what: String, holds: () -> Boolean) {
    val over = System.nanoTime() + 120_000_000_000
    while (!holds()) {
        check(System.nanoTime() < over) { "waited in vain until $what" }
        Thread.sleep(20)
    }
}
