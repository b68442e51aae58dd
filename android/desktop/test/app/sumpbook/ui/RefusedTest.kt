package app.sumpbook.ui

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SkikoComposeUiTest
import app.sumpbook.core.Phone
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.Home
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.desktop.FileKeeper
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import java.io.File
import java.io.RandomAccessFile
import java.time.Instant
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertNotNull
import kotlin.test.assertTrue
import org.junit.Assume.assumeTrue

/** What goes wrong outside the screens, each brought about in earnest: the screen says why, what is kept, and what to do. */
@OptIn(ExperimentalTestApi::class)
class RefusedTest {
    private val yard = Yard()
    private val hand = HandHandset()

    init {
        uniffiEnsureInitialized()
    }

    @AfterTest
    fun clear() = yard.close()

    private fun invited(folder: File = File(yard.root, "phone")): Phone =
        Phone.enrolByFile(folder.path, yard.invitation(), "yard phone 3", FileKeeper(File(yard.root, "key")), hand.clock)

    private fun letIn(hub: Hub): Phone {
        val phone = Phone.enrolByCode(File(yard.root, "phone").path, hub.code(), "yard phone 3", FileKeeper(File(yard.root, "key")), hand.clock)
        phone.exchangeOnce(20_000u)
        yard.accepts(phone.about().key)
        phone.exchangeOnce(20_000u)
        return phone
    }

    private fun Phone.startAir() = recordLine("""{"unit":"TH-01","person":"Amos Tillery","kind":"start-air","body":{}}""")

    private fun at(phone: Phone, place: Place, drive: SkikoComposeUiTest.(Driver) -> Unit) = onScreen {
        val desk = Desk(phone, hand)
        val back = BackStack(Place.Today(), Signer(phone.fleet().people.first { it.name == "Amos Tillery" }.id)).apply { go(place) }
        setContent { DesktopFace { App(desk, back) } }
        drive(Driver(this, desk, hand).apply { settle() })
    }

    private fun Driver.says(words: String) = assertTrue(sees(words), strips())

    @Test
    fun `a core of another version is not used`() {
        val other = UnfitLibrary.made(yard.root)
        assumeTrue("a C compiler makes the other library", other != null)
        val (exit, said) = run(
            File(System.getProperty("java.home"), "bin/java").path, "-cp", System.getProperty("java.class.path"), "-Djava.awt.headless=true",
            "-Duniffi.component.sumpbook.libraryOverride=${other!!.path}", "app.sumpbook.ui.UnfitLibrary", File(yard.root, "phone").path,
        )
        assertEquals(0, exit, said)
        assertTrue("The app and its core are of two versions. What was recorded is kept on this phone. Install the app again over this one" in said, said)
    }

    @Test
    fun `a full phone keeps what was signed, says that this is not, and goes on when there is room`() {
        val disk = File(yard.root, "small").apply { mkdirs() }
        val mounted = runCatching { run("mount", "-t", "tmpfs", "-o", "size=12m", "tmpfs", disk.path).first }.getOrDefault(1) == 0
        if (!mounted) println("-- skipped: a phone whose disk is full: nobody here may mount a small one")
        assumeTrue("a small disk can be mounted", mounted)
        try {
            val phone = invited(File(disk, "phone"))
            val unit = phone.unitAt("TH-01")
            at(phone, Place.Hours(unit)) { driver ->
                driver.type("28655")
                val filler = filled(disk)
                // What the book had room for within itself is used up as well.
                runCatching { repeat(2_000) { phone.startAir() } }.onSuccess { error("never full") }
                val before = phone.whereItIs(0u).counts.onPhone
                driver.settle()
                driver.main()
                picture("full")
                driver.says("This phone is full. What you signed is kept; this is not. Make room, then do it again.")
                assertEquals(before, phone.whereItIs(0u).counts.onPhone)
                filler.delete()
                driver.main()
                assertEquals(before + 1u, phone.whereItIs(0u).counts.onPhone)
            }
            phone.shutdown()
        } finally {
            run("umount", disk.path)
        }
    }

    /** Everything but a page or two is taken. */
    private fun filled(disk: File): File = File(disk, "filler").apply {
        outputStream().use { out -> runCatching { while (true) out.write(ByteArray(4096)) } }
    }

    @Test
    fun `a book saved out of a damaged file is told of until the shop has given what it had`() {
        Hub(yard).use { hub ->
            val before = letIn(hub)
            repeat(40) { before.startAir() }
            before.shutdown()
            val folder = File(yard.root, "phone")
            RandomAccessFile(File(folder, "book.db"), "rw").use { it.setLength(it.length() * 3 / 4 / 4096 * 4096) }
            val phone = Phone.open(folder.path, FileKeeper(File(yard.root, "key")), hand.clock)
            assertNotNull(phone.about().salvaged)
            assertTrue(phone.exchangeOnce(20_000u).whole)
            assertEquals(null, phone.about().salvaged)
            phone.shutdown()
        }
    }

    @Test
    fun `a core that is closed or rests changes nothing`() {
        val phone = invited()
        val unit = phone.unitAt("TH-01")
        at(phone, Place.Glass(unit)) { driver ->
            driver.tap("Yes, at least 5 minutes")
            driver.drag(48)
            phone.pause()
            driver.main()
            driver.says("The book rests while the app is not in front. Nothing was changed. Open the app, then do it again.")
            phone.resume()
            phone.shutdown()
            driver.main()
            driver.says("The book is closed just now. Nothing was changed. Open the app again.")
            picture("closed")
        }
    }

    @Test
    fun `a phone that the shop stopped keeps its entries and says who decides`() {
        Hub(yard).use { hub ->
            val phone = letIn(hub)
            phone.startAir()
            yard.says("stop-phone", phone.about().key, "--by", "Ilse Marrow", "--why", "left at the north gate")
            at(phone, Place.WhereItIs()) { driver ->
                driver.main()
                driver.waitFor("The shop stopped this phone on ")
                driver.settle()
                picture("stopped")
                driver.says("kept and can be handed over by file; a person there decides. Use another phone or paper.")
                driver.says("On this phone: 1")
            }
            phone.shutdown()
        }
    }

    @Test
    fun `a hub with another key gets nothing`() {
        val hub = Hub(yard)
        val phone = letIn(hub)
        hub.close()
        phone.startAir()
        Yard().use { other ->
            Hub(other, hub.port).use {
                at(phone, Place.WhereItIs()) { driver ->
                    driver.main()
                    driver.waitFor("This is not the shop this phone knows")
                    driver.says("its key is another. Nothing was sent, all is kept. Call the shop before you go on.")
                    driver.says("On this phone: 1")
                    picture("another-key")
                }
            }
        }
        phone.shutdown()
    }

    @Test
    fun `a code that ran out adds nothing, and says whom to ask`() {
        Yard(demo = true).use { other ->
            Hub(other).use { hub ->
                val code = hub.code("--received", Instant.now().minusSeconds(16 * 60).toString())
                adding(File(other.root, "late"), code) { driver ->
                    driver.waitFor("That code ran out after 15 minutes.")
                    driver.says("Nothing was added. Ask the shop for a new one.")
                    picture("code-ran-out")
                    // That is no end: the next code takes its place.
                    driver.tap("Type another code")
                    driver.write("A name for this phone", "late")
                    driver.write("The shop's code", hub.code())
                    driver.main()
                    driver.waitFor("This phone's key")
                    other.accepts(driver.keyShown())
                    driver.waitFor("Who is signing?")
                }
            }
        }
    }

    @Test
    fun `a code that another phone used, and a mistyped one, add nothing`() {
        Hub(yard).use { hub ->
            val code = hub.code()
            adding(File(yard.root, "first"), code) { driver ->
                driver.waitFor("This phone's key")
                yard.accepts(driver.keyShown())
                driver.waitFor("Who is signing?")
            }
            adding(File(yard.root, "second"), code) { driver ->
                driver.waitFor("Another phone used that code. Nothing was added. Ask the shop for a new one.")
                picture("code-used")
            }
            adding(File(yard.root, "third"), code.replaceRange(9, 10, if (code[9] == 'A') "B" else "A")) { driver ->
                driver.waitFor("A sign of the code is wrong or missing. Nothing was added. Type it again, sign by sign.")
                picture("code-mistyped")
            }
            adding(File(yard.root, "fourth"), "no code at all") { driver ->
                driver.waitFor("That is not a code of the shop. Nothing was added. Read it again, or ask for a new one.")
            }
        }
    }

    private fun adding(folder: File, code: String, drive: SkikoComposeUiTest.(Driver) -> Unit) = onScreen {
        setContent { DesktopFace { Door(Home(folder.path, FileKeeper(File("${folder.path} key")), hand.clock, hand)) } }
        val driver = Driver(this, null, hand)
        driver.waitFor("A name for this phone")
        driver.write("A name for this phone", folder.name)
        driver.write("The shop's code", code)
        driver.main()
        drive(driver)
    }
}
