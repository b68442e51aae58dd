package app.sumpbook.ui.desktop

import androidx.compose.runtime.staticCompositionLocalOf
import app.sumpbook.R
import org.w3c.dom.Element
import java.util.Locale
import javax.xml.parsers.DocumentBuilderFactory

/** The strings of the shell as Android reads them: values, then values of the language, from the class path. */
class ChromeWords(private val language: String) {
    private val strings = HashMap<String, String>()
    private val plurals = HashMap<String, Map<String, String>>()
    private val locale = Locale.forLanguageTag(language)

    init {
        for (folder in listOf("values", "values-$language")) FILES.forEach { read("/res/$folder/$it") }
    }

    private fun read(path: String) {
        val stream = ChromeWords::class.java.getResourceAsStream(path) ?: return
        val root = stream.use { DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(it).documentElement }
        for (one in root.elements()) {
            val name = one.getAttribute("name")
            when (one.tagName) {
                "string" -> strings[name] = unescaped(one.textContent)
                "plurals" -> plurals[name] = one.elements().associate { it.getAttribute("quantity") to unescaped(it.textContent) }
            }
        }
    }

    /** A string by its number. */
    fun string(id: Int, vararg values: Any): String = filled(strings.getValue(STRINGS.getValue(id)), values)

    /** The string for one or for many. */
    fun plural(id: Int, count: Int, vararg values: Any): String {
        val forms = plurals.getValue(PLURALS.getValue(id))
        return filled(forms["one"]?.takeIf { count == 1 } ?: forms.getValue("other"), values)
    }

    private fun filled(text: String, values: Array<out Any>) = if (values.isEmpty()) text else String.format(locale, text, *values)

    private companion object {
        val STRINGS = names(R.string::class.java)
        val PLURALS = names(R.plurals::class.java)
        val FILES = R.FILES

        fun names(of: Class<*>) = of.fields.filter { it.type == Int::class.java }.associate { it.getInt(null) to it.name }

        fun Element.elements() = (0 until childNodes.length).mapNotNull { childNodes.item(it) as? Element }

        fun unescaped(text: String): String =
            Regex("""\\(u[0-9a-fA-F]{4}|.)""").replace(text.trim().replace(Regex("""\s+"""), " ")) { found ->
                val sign = found.groupValues[1]
                when {
                    sign.length == 5 -> sign.drop(1).toInt(16).toChar().toString()
                    sign == "n" -> "\n"
                    else -> sign
                }
            }
    }
}

/** The words of the shell in the language in force. */
val LocalChromeWords = staticCompositionLocalOf { ChromeWords("en") }
