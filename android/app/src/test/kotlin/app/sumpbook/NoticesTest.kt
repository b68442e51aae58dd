package app.sumpbook

import android.app.Notification
import android.app.NotificationManager
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Phone
import app.sumpbook.core.Signed
import app.sumpbook.notice.Notices
import app.sumpbook.ui.HubYard
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config

@RunWith(RobolectricTestRunner::class)
class NoticesTest {
    private val app = RuntimeEnvironment.getApplication() as YardApp
    private val manager = app.getSystemService(NotificationManager::class.java)!!
    private val yard = HubYard()

    @After
    fun clear() {
        app.book.close()
        yard.close()
    }

    private fun enrolled() = app.book.enrol { folder, keeper -> Phone.enrolByFile(folder, yard.invitation(), "yard phone 3", keeper, null) }

    private fun shown() = manager.activeNotifications.map { it.notification }

    private fun Notification.title() = extras.getString(Notification.EXTRA_TITLE)

    private fun Notification.words() = extras.getCharSequence(Notification.EXTRA_BIG_TEXT).toString()

    /** A walk in which one stop lamp is out: it locks the road. */
    private fun findStopLampOut(phone: Phone) {
        val unit = phone.fleet().units.first { it.door == "TH-02" }.id
        val bettina = phone.fleet().people.first { it.name == "Bettina Quaye" }.id
        val draft = phone.beginPreTrip(unit, bettina, null)
        phone.answerLine(draft, Answer(item = "lamps-stop", place = "rear", answer = AnswerKind.DEFECT, word = "out"))
        phone.signPreTrip(draft, Signed(pinGiven = false), true, null)
    }

    @Test
    fun aLockIsToldOnceWithoutANameAndOpensItsUnit() {
        val phone = enrolled()
        app.tellNotices()
        val before = shown().count { it.title() == "TH-02: locked" }
        assertEquals(0, before)
        findStopLampOut(phone)
        app.tellNotices()
        val lock = shown().single { it.title() == "TH-02: locked" }
        assertTrue(lock.words(), lock.words().startsWith("ROAD: LOCKED") && "Stop lamps" in lock.words())
        assertFalse(lock.words(), "Bettina" in lock.words())
        val tap = shadowOf(lock.contentIntent).savedIntent
        val th02 = phone.fleet().units.first { it.door == "TH-02" }.id
        assertEquals(Notices.OPEN_UNIT to th02, tap.action to tap.getStringExtra(Notices.UNIT))
        manager.cancelAll()
        app.tellNotices()
        assertEquals("what was told is not told again", 0, shown().count { it.title() == "TH-02: locked" })
    }

    @Test
    fun whatNoLongerHoldsIsTakenAway() {
        val phone = enrolled()
        findStopLampOut(phone)
        app.tellNotices()
        assertEquals(1, shown().count { it.title() == "TH-02: locked" })
        Notices(app).show(emptyList())
        assertEquals(0, shown().size)
    }

    @Test
    fun nothingComesUpOverTheOfficersPageAndItIsToldAfterIt() {
        val phone = enrolled()
        app.holdNotices(true)
        findStopLampOut(phone)
        app.tellNotices()
        assertEquals(0, shown().size)
        app.holdNotices(false)
        app.tellNotices()
        assertEquals(1, shown().count { it.title() == "TH-02: locked" })
    }

    @Test
    fun aServiceThatIsPastDueIsToldOnceByItsName() {
        yard.says("register", yard.example("programme"))
        val phone = enrolled()
        // Long past by its calendar.
        phone.recordLine(
            """{"unit":"TH-01","person":"Amos Tillery","at":"2024-02-12T12:00:00-07:00","source":"brought-in","hours":"2418.0","kind":"service-done","body":{"tasks":["oil-and-filters"]}}""",
        )
        app.tellNotices()
        val due = shown().single { it.title() == "TH-01: service due" }
        assertTrue(due.words(), "Oil and filters: past due" in due.words())
        manager.cancelAll()
        app.tellNotices()
        assertEquals("what was told is not told again", 0, shown().count { it.title() == "TH-01: service due" })
    }

    @Test
    fun aServiceThatIsNotDueIsNotTold() {
        yard.says("register", yard.example("programme"))
        val phone = enrolled()
        phone.recordLine(
            """{"unit":"TH-01","person":"Amos Tillery","source":"shop","hours":"2418.0","kind":"service-done","body":{"tasks":["first-service","oil-and-filters","cooler-and-scavenge","separator"]}}""",
        )
        app.tellNotices()
        assertEquals(0, shown().count { it.title() == "TH-01: service due" })
    }

    @Test
    @Config(qualifiers = "+es")
    fun theSameInSpanish() {
        findStopLampOut(enrolled())
        app.tellNotices()
        val lock = shown().single { it.title() == "TH-02: bloqueo" }
        assertTrue(lock.words(), lock.words().startsWith("MANEJO: BLOQUEADO"))
    }
}
