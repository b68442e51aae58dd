package app.sumpbook.ui

import java.io.File
import java.time.ZoneOffset
import java.time.ZonedDateTime
import kotlin.io.path.createTempDirectory
import kotlin.test.assertEquals

/** A shop of the invented fleet on this machine, made by the command as anybody makes one; a [demo]'s may tell other times. */
class Yard(demo: Boolean = false) : AutoCloseable {
    val root: File = createTempDirectory("sumpbook").toFile()
    val command: String = System.getProperty("sumpbook.command")
    private val project: String = System.getProperty("sumpbook.root")
    val shop: String = File(root, "shop").path

    init {
        says("init", "--name", "Tern Hollow Water", "--zone", noon(), *(if (demo) arrayOf("--demo") else emptyArray()))
        says("register", example("fleet"))
    }

    fun example(name: String): String = File(project, "core/shop/examples/$name.jsonl").path

    /** Runs a verb at the shop; what it wrote. */
    fun says(vararg words: String): String {
        val (exit, said) = run(command, *words, "--shop", shop)
        assertEquals(0, exit, said)
        return said
    }

    /** The same with something typed at it; what it wrote. */
    fun saysTo(typed: String, vararg words: String): String {
        val process = ProcessBuilder(command, *words, "--shop", shop).redirectErrorStream(true).start()
        process.outputStream.use { it.write(typed.toByteArray()) }
        val said = process.inputStream.bufferedReader().readText()
        assertEquals(0, process.waitFor(), said)
        return said
    }

    /** Registers one line. */
    fun register(line: String) {
        says("register", File(root, "line.jsonl").apply { writeText(line + "\n") }.path)
    }

    /** An invitation, as a file. */
    fun invitation(): ByteArray = File(root, "invitation").also { says("invite", it.path) }.readBytes()

    /** Somebody at the shop has compared the keys: the phone is let in, once it has asked. */
    fun accepts(key: String) {
        val until = System.nanoTime() + 60_000_000_000
        while (true) {
            val (exit, said) = run(command, "accept", key, "--by", "Ilse Marrow", "--shop", shop)
            if (exit == 0) return
            check(System.nanoTime() < until) { said }
            Thread.sleep(300)
        }
    }

    override fun close() {
        root.deleteRecursively()
    }
}

/** A zone where it is about noon now, so that no day ends under a test. Its signs are turned round: GMT+7 lies in the west. */
private fun noon(): String {
    val east = 12 - ZonedDateTime.now(ZoneOffset.UTC).hour
    return if (east > 0) "Etc/GMT-$east" else "Etc/GMT+${-east}"
}

/** Runs a program: its exit and what it wrote. */
fun run(vararg words: String): Pair<Int, String> {
    val process = ProcessBuilder(*words).redirectErrorStream(true).start()
    val said = process.inputStream.bufferedReader().readText()
    return process.waitFor() to said
}
