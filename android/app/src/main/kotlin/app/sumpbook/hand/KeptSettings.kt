package app.sumpbook.hand

import android.content.Context
import app.sumpbook.ui.desk.Light
import app.sumpbook.ui.desk.Settings
import app.sumpbook.ui.desk.Settled
import app.sumpbook.ui.words.OwnWay
import kotlinx.coroutines.flow.MutableStateFlow
import kotlinx.coroutines.flow.StateFlow

/** Keeps how this phone is set: the language where the system keeps it, the rest in preferences. */
class KeptSettings(private val context: Context) : Settings {
    private val kept = context.getSharedPreferences("settings", Context.MODE_PRIVATE)
    private val settled = MutableStateFlow(read())

    override val now: StateFlow<Settled> get() = settled

    override fun settle(to: Settled) {
        kept.edit()
            .putBoolean("metric", to.way.metric)
            .putBoolean("left-thumb", to.way.leftThumb)
            .putFloat("text", to.text)
            .putBoolean("high", to.high)
            .putString("light", to.light.name)
            .putBoolean("buzz", to.buzz)
            .putString("shop-number", to.shopNumber)
            .apply()
        if (to.way.language != settled.value.way.language) AppLanguage.choose(context, to.way.language)
        settled.value = to
    }

    /** Reads again: the language may have been changed in the system's own settings. */
    fun look() {
        settled.value = read()
    }

    private fun read() = Settled(
        OwnWay(AppLanguage.of(context), kept.getBoolean("metric", false), kept.getBoolean("left-thumb", false)),
        kept.getFloat("text", 1f),
        kept.getBoolean("high", false),
        Light.entries.firstOrNull { it.name == kept.getString("light", null) } ?: Light.AUTO,
        kept.getBoolean("buzz", true),
        kept.getString("shop-number", null).orEmpty(),
    )
}
