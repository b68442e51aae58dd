package app.sumpbook.ui

import java.io.File
import javax.xml.parsers.DocumentBuilderFactory
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue
import org.w3c.dom.Element

/** The strings of the shell: the same in both languages, and none that says more than was recorded. */
class WordsOfTheShellTest {
    private val res = File(System.getProperty("sumpbook.root"), "android/ui/res")

    private fun strings(folder: String): Map<String, String> =
        checkNotNull(File(res, folder).listFiles()).sorted().flatMap { file ->
            val root = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file).documentElement
            (0 until root.childNodes.length).mapNotNull { root.childNodes.item(it) as? Element }
                .map { "${file.name}: ${it.getAttribute("name")}" to it.textContent }
        }.toMap()

    private fun values(text: String) = Regex("""%\d\$[ds]""").findAll(text).map { it.value }.toSortedSet()

    @Test
    fun `every string stands in both languages with the same values`() {
        val (english, spanish) = strings("values") to strings("values-es")
        assertEquals(english.keys, spanish.keys)
        for ((name, text) in english) assertEquals(values(text), values(spanish.getValue(name)), name)
    }

    @Test
    fun `no word promises anything, blames or begs`() {
        val never = Regex(
            """\b(safe|safely|fit|pass|passed|good to go|please|segur[oa]s?|apt[oa]s?|aprobad[oa]|por favor)\b|!|¡""", RegexOption.IGNORE_CASE,
        )
        for ((name, text) in strings("values") + strings("values-es").mapKeys { "es ${it.key}" }) {
            assertTrue(never.find(text) == null, "$name: $text")
        }
    }
}
