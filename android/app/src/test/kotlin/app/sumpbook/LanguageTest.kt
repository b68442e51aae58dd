package app.sumpbook

import app.sumpbook.hand.AppLanguage
import app.sumpbook.hand.KeptSettings
import app.sumpbook.ui.desk.Light
import app.sumpbook.ui.desk.Settled
import app.sumpbook.ui.words.OwnWay
import org.junit.Assert.assertEquals
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.annotation.Config

@RunWith(RobolectricTestRunner::class)
@Config(qualifiers = "+es")
class LanguageTest {
    private val app = RuntimeEnvironment.getApplication() as YardApp

    @Test
    fun itFollowsTheTelephoneUntilOneIsChosen() {
        assertEquals("es", AppLanguage.of(app))
        AppLanguage.choose(app, "en")
        assertEquals("en", AppLanguage.of(app))
        assertEquals("Lock-outs", AppLanguage.wrap(app).getString(R.string.notices_of_locks))
    }

    @Test
    @Config(qualifiers = "+fr")
    fun aLanguageWeDoNotHaveIsEnglish() {
        assertEquals("en", AppLanguage.of(app))
    }

    @Test
    fun settingsOutliveTheProcess() {
        val to = Settled(OwnWay("en", metric = true, leftThumb = true), 1.6f, high = true, light = Light.DARK, buzz = false)
        KeptSettings(app).settle(to)
        assertEquals(to, KeptSettings(app).now.value)
    }
}
