package app.sumpbook.ui

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import app.sumpbook.core.NoteKind
import app.sumpbook.core.Phone
import app.sumpbook.core.Said
import app.sumpbook.core.ShownNote
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.desktop.DesktopHandset
import app.sumpbook.ui.desktop.FileKeeper
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.words.OwnWay
import java.io.File
import java.io.RandomAccessFile
import java.nio.file.Files
import java.nio.file.attribute.PosixFilePermissions
import kotlin.test.AfterTest
import kotlin.test.BeforeTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertNotNull

@OptIn(ExperimentalTestApi::class)
class TodayTest {
    private val yard = Yard()
    private val key = File(yard.root, "key")
    private lateinit var phone: Phone

    @BeforeTest
    fun enrol() {
        uniffiEnsureInitialized()
        phone = Phone.enrolByFile(File(yard.root, "phone").path, yard.invitation(), "yard phone 3", FileKeeper(key), null)
    }

    @AfterTest
    fun clear() {
        phone.shutdown()
        yard.close()
    }

    @Test
    fun `a name, then today with what the book holds`() = onScreen {
        val desk = Desk(phone, DesktopHandset())
        setContent { DesktopFace { App(desk) } }
        settle(desk)
        picture("who-signs")
        onNodeWithText("yard phone 3").assertIsDisplayed()
        onNodeWithText("Amos Tillery").performClick()
        settle(desk)
        picture("today")
        onNodeWithText("TH-01").assertIsDisplayed()
        onNodeWithText("Start pre-trip, TH-01").assertIsDisplayed()
    }

    @Test
    fun `the same in Spanish`() = onScreen {
        val desk = Desk(phone, DesktopHandset())
        setContent { DesktopFace(OwnWay("es")) { App(desk) } }
        settle(desk)
        onNodeWithText("¿Quién firma?").assertIsDisplayed()
        onNodeWithText("Amos Tillery").performClick()
        settle(desk)
        onNodeWithText("Empezar inspección, TH-01").assertIsDisplayed()
    }

    @Test
    fun `leaving a walk for another unit is asked once`() = onScreen {
        val desk = Desk(phone, DesktopHandset())
        val amos = phone.fleet().people.first { it.name == "Amos Tillery" }.id
        phone.beginPreTrip(phone.fleet().units.first { it.door == "TH-01" }.id, amos, null)
        val back = BackStack(Place.AnotherUnit(), Signer(amos))
        setContent { DesktopFace { App(desk, back) } }
        settle(desk)
        onNodeWithText("TH-03").performScrollTo().performClick()
        settle(desk)
        onNodeWithText("TH-01 stands at stop 1. It is kept. Press again to go to another unit.").assertIsDisplayed()
        assertEquals(Place.AnotherUnit(), back.top)
        onNodeWithText("TH-03").performScrollTo().performClick()
        settle(desk)
        onNodeWithText("Start pre-trip, TH-03").assertIsDisplayed()
    }

    @Test
    fun `a book that was saved out of a damaged file says so at every opening, until the shop was there`() {
        val amos = phone.fleet().people.first { it.name == "Amos Tillery" }.id
        repeat(40) { phone.keepNote(Said(phone.unitAt("TH-01"), amos), ShownNote(NoteKind.WARNING, "NOTE $it, as it stands there", false)) }
        phone.shutdown()
        val folder = File(yard.root, "phone")
        RandomAccessFile(File(folder, "book.db"), "rw").use { it.setLength(it.length() * 3 / 4 / 4096 * 4096) }
        phone = Phone.open(folder.path, FileKeeper(key), null)
        val saved = assertNotNull(phone.about().salvaged)
        phone.shutdown()
        phone = Phone.open(folder.path, FileKeeper(key), null)
        assertEquals(saved, phone.about().salvaged, "not told only once")
        onScreen {
            val desk = Desk(phone, DesktopHandset())
            setContent { DesktopFace { App(desk, BackStack(Place.Today(), Signer(amos))) } }
            settle(desk)
            picture("today-salvaged")
            onNodeWithText("Part of this phone's book can't be read. ${saved.saved} of ${saved.held} entries are kept", substring = true).assertIsDisplayed()
        }
    }

    @Test
    fun `the key's file is its owner's alone`() {
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(key.toPath())))
    }
}
