package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.SiteAsk
import app.sumpbook.core.SiteDust
import app.sumpbook.core.SiteRow
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.theme.LocalType

/** The site's dust: whether it is asked, its words, and what was said of it today. */
data class SiteWords(val asked: Boolean, val dusts: List<Pair<SiteDust, String>>, val said: String?)

/** A site in words. */
fun Reader.siteWords(site: SiteAsk) = SiteWords(site.asked, SiteDust.entries.map { it to dustWords(it) }, site.said?.let(::saidOfSite))

private fun Reader.dustWords(dust: SiteDust): String = words("dust-${dust.name.lowercase().replace('_', '-')}")

private fun Reader.saidOfSite(site: SiteRow): String =
    words("site-said", "dust" to dustWords(site.dust), "when" to moments.time(site.at), "by" to site.by.orEmpty())

/** How dusty it is here: one tap, none chosen beforehand. An hour in the dust counts for more of the oil's life. */
@Composable
fun ColumnScope.SitePart(site: SiteWords, chosen: SiteDust?, choose: (SiteDust) -> Unit) {
    if (site.asked) {
        Asked(stringResource(R.string.how_dusty), site.dusts.map { (dust, words) -> dust.name to words }, chosen?.name) { choose(SiteDust.valueOf(it)) }
    }
    site.said?.let { Text(it, style = LocalType.current.help) }
}
