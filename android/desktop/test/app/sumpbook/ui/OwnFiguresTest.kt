package app.sumpbook.ui

import androidx.compose.ui.test.ExperimentalTestApi
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Phone
import app.sumpbook.core.Signed
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.desktop.FileKeeper
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import java.io.File
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertTrue

/** What one's own records say, before anybody else asks. */
@OptIn(ExperimentalTestApi::class)
class OwnFiguresTest {
    private val yard = Yard()
    private val hand = HandHandset()

    init {
        uniffiEnsureInitialized()
    }

    @AfterTest
    fun clear() = yard.close()

    @Test
    fun `one's own figures stand behind one's PIN`() {
        val phone = Phone.enrolByFile(File(yard.root, "phone").path, yard.invitation(), "yard phone 3", FileKeeper(File(yard.root, "key")), hand.clock)
        val amos = phone.fleet().people.first { it.name == "Amos Tillery" }.id
        phone.choosePin(amos, "274906", null)
        val walk = phone.beginPreTrip(phone.unitAt("TH-02"), amos, null)
        phone.answerLine(walk, Answer("lamps-stop", "rear", AnswerKind.DEFECT, word = "out"))
        phone.signPreTrip(walk, Signed(pinGiven = true), true, 70_000u)
        onScreen {
            val desk = Desk(phone, hand)
            val back = BackStack(Place.Today(), Signer(amos)).apply { go(Place.Settings()) }
            setContent { DesktopFace { App(desk, back) } }
            val driver = Driver(this, desk, hand).apply { settle() }
            driver.tap("My own figures")
            driver.type("274905")
            assertTrue(driver.sees("That PIN is another. Nothing is shown.") && !driver.sees("defects found"), driver.strips())
            driver.type("274906")
            picture("own-figures")
            assertTrue(driver.sees("What the records here say of Amos Tillery.") && driver.sees("defects found: 1") && driver.sees("signed with the PIN: 1"), driver.strips())
        }
        phone.shutdown()
    }
}
