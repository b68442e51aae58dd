package app.sumpbook.ui

import java.io.File
import java.io.PrintWriter
import java.io.StringWriter
import java.util.spi.ToolProvider
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/**
 * The thread that draws never calls the core: read from the compiled classes, so that a call made anywhere is found. What
 * calls it is made a reader of, and a reader is only made by the desk, on the core's own thread (PreTrip watches that).
 */
class NoCallWhileDrawingTest {
    private class Call(val of: String, val method: String, val to: String)

    /** Every call into the core, and the method it stands in. */
    private fun calls(classes: File): List<Call> {
        val files = classes.walk().filter { it.extension == "class" && "/core/" !in it.path }.map { it.path }.toList()
        val said = StringWriter()
        val javap = ToolProvider.findFirst("javap").get()
        assertEquals(0, javap.run(PrintWriter(said), PrintWriter(System.err), "-p", "-c", *files.toTypedArray()))
        val found = ArrayList<Call>()
        var (of, method) = "" to ""
        for (line in said.toString().lines()) {
            when {
                Regex("""^(public |final |abstract |static )*(class|interface) """).containsMatchIn(line) -> of = line.substringAfter("class ").substringAfter("interface ").substringBefore(' ')
                line.startsWith("  ") && line.endsWith(";") && '(' in line && !line.startsWith("   ") -> method = line.trim()
                else -> INTO.find(line)?.let { found += Call(of, method, it.groupValues[1]) }
            }
        }
        return found
    }

    @Test
    fun `what calls the core reads, and does not draw`() {
        val all = calls(File(System.getProperty("sumpbook.root"), "android/desktop/target/classes/app/sumpbook/ui"))
        assertTrue(all.size > 60, "too few calls found to be all of them: ${all.size}")
        val wrong = all.filter { call -> "Composer" in call.method || !(READERS.any { it in call.of } || "app.sumpbook.ui.desk.Reader" in call.method) }
        assertEquals("", wrong.joinToString("\n") { "${it.of}: ${it.method} calls ${it.to}" })
    }

    private companion object {
        /** A call of the core: one of the phone, or one of its words. */
        val INTO = Regex("""// (?:Interface)?Method (app/sumpbook/core/(?:Phone(?:Interface|\.Companion|\${'$'}Companion)?|[A-Za-z_]*Kt)\.[^:]+):""")

        /** What is only ever called on the core's thread. */
        val READERS = listOf("app.sumpbook.ui.desk.Reader", "app.sumpbook.ui.desk.Desk", "app.sumpbook.ui.desk.Refusal", "app.sumpbook.ui.desk.Home", "app.sumpbook.ui.desk.FolderHome")
    }
}
