package app.sumpbook.hand

import android.app.LocaleManager
import android.content.Context
import android.content.res.Configuration
import android.os.Build
import android.os.LocaleList
import java.util.Locale

/**
 * The language of this app, whatever the telephone's is. From Android 13 on the system keeps it, and shows it in its
 * own settings as well; before, a preference does.
 */
object AppLanguage {
    private const val KEPT = "language"

    /** The language in force: `en` or `es`. */
    fun of(context: Context): String = known(chosen(context) ?: context.resources.configuration.locales[0].language)

    /** Chooses it. Before Android 13 the window has to be made anew for it to be seen. */
    fun choose(context: Context, language: String) {
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU) {
            context.getSystemService(LocaleManager::class.java)!!.applicationLocales = LocaleList.forLanguageTags(language)
        } else {
            kept(context).edit().putString(KEPT, language).apply()
        }
    }

    /** A context whose strings are in that language. */
    fun wrap(context: Context): Context {
        val language = chosen(context) ?: return context
        val changed = Configuration(context.resources.configuration)
        changed.setLocale(Locale.forLanguageTag(language))
        return context.createConfigurationContext(changed)
    }

    private fun chosen(context: Context): String? = if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU) {
        context.getSystemService(LocaleManager::class.java)?.applicationLocales?.get(0)?.language
    } else {
        kept(context).getString(KEPT, null)
    }

    private fun known(language: String) = if (language == "es") "es" else "en"

    private fun kept(context: Context) = context.getSharedPreferences(KEPT, Context.MODE_PRIVATE)
}
