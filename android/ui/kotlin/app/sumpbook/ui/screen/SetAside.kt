package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.AboutRow
import app.sumpbook.core.Aside
import app.sumpbook.core.OnCall
import app.sumpbook.core.SetAsideScreen
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.hours

/** An entry that is set aside, with its words; [todo] none when it counts again. */
data class SetAsideView(
    val door: String,
    val unit: String?,
    val what: String,
    val why: String,
    /** What it says. */
    val says: List<String>,
    /** What was said about it: who, when, in their own words. */
    val about: List<String>,
    val todo: String?,
    /** The meter is read again. */
    val reading: Boolean,
    val onCall: List<OnCall>,
)

/** One entry of this phone that is set aside; none when this phone did not write it. */
fun Reader.setAsideView(entry: String): SetAsideView? = phone.setAside(entry)?.let { record ->
    val key = record.why?.let(::asideKey)
    SetAsideView(
        door = record.door.orEmpty(),
        unit = record.unit,
        what = listOfNotNull(record.says?.let { "${words("kind-${it.kind}")}, ${moments.at(it.at)}" }, record.by).joinToString(", "),
        why = words(if (key == null) "aside-counts-again" else "aside-why-$key"),
        says = record.says?.let { saysWords(it).ifEmpty { null } }.orEmpty().ifEmpty { listOf(words("aside-no-words")) } + readingWords(record),
        about = record.about.map(::aboutWords),
        todo = key?.let { words("aside-do-$it") },
        reading = record.why == Aside.Reading,
        onCall = fleet.onCall,
    )
}

/** The last part of the keys of why an entry is set aside. */
fun asideKey(aside: Aside): String = when (aside) {
    is Aside.Judged -> aside.v1
    Aside.Reading -> "reading"
    Aside.ByShop -> "by-shop"
}

/** The figure that does not fit, and what may have happened to it. */
private fun Reader.readingWords(record: SetAsideScreen): List<String> {
    val reading = record.reading
    val ceiling = reading?.ceiling
    val most = if (reading != null && ceiling != null) words("aside-at-most", "figure" to hours(reading.figure), "ceiling" to hours(ceiling)) else null
    return listOfNotNull(most) + record.hints.map { words("hint-$it") }
}

private fun Reader.aboutWords(row: AboutRow): String {
    val whoAndWhen = listOfNotNull(row.by, moments.at(row.at)).joinToString(", ")
    val said = listOfNotNull(row.belongsTo?.let { words("aside-belongs-to", "door" to it) }, row.words?.let { "'$it'" })
    return if (said.isEmpty()) whoAndWhen else "$whoAndWhen: ${said.joinToString(", ")}"
}

/** One entry that is set aside: the whole reason, what it says, what was said about it, what to do. */
@Composable
fun SetAside(entry: String) {
    val back = LocalBackStack.current
    val shown by seen(entry) { setAsideView(entry) }
    val told = shown ?: return
    val view = (told as? Told.Got)?.it ?: return Refused((told as? Told.Refused)?.let { sentence(it.why) } ?: stringResource(R.string.set_aside_not_here)) { back.back() }
    ScreenFrame(
        header = { DoorHeader(view.door, stringResource(R.string.set_aside)) { back.back() } },
        strips = { Strip(view.why, heavy = view.todo != null) },
        secondary = {
            if (view.todo != null) CallThem(view.onCall)
            view.unit?.takeIf { view.reading }?.let { unit -> SecondaryButton(stringResource(R.string.hours)) { back.go(Place.Hours(unit)) } }
        },
    ) {
        Text(view.what, style = LocalType.current.line)
        Section(stringResource(R.string.set_aside_says), view.says)
        Section(stringResource(R.string.set_aside_about), view.about)
        Section(stringResource(R.string.set_aside_do), listOfNotNull(view.todo))
        if (view.todo != null) onCallNumbers(view.onCall).forEach { Text(stringResource(R.string.on_call, it), style = LocalType.current.strong) }
    }
}
