package app.sumpbook.ui

import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.ui.graphics.asSkiaBitmap
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.captureToImage
import androidx.compose.ui.test.onRoot
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Mix
import app.sumpbook.core.Phone
import app.sumpbook.core.Signed
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.Home
import app.sumpbook.ui.desk.LocalPictures
import app.sumpbook.ui.desk.codeIn
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.desktop.DesktopPictures
import app.sumpbook.ui.desktop.FileKeeper
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import com.google.zxing.BarcodeFormat
import com.google.zxing.EncodeHintType
import com.google.zxing.qrcode.QRCodeWriter
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel
import java.awt.Color
import java.awt.RenderingHints
import java.awt.geom.AffineTransform
import java.awt.image.BufferedImage
import java.io.File
import java.util.Random
import javax.imageio.ImageIO
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertNull
import kotlin.test.assertTrue
import org.jetbrains.skia.EncodedImageFormat
import org.jetbrains.skia.Image

/** Codes read from pictures: the one on the shop's screen, a door tag, and pictures in which there is none. */
@OptIn(ExperimentalTestApi::class)
class ScanTest {
    private val yard = Yard()
    private val hand = HandHandset()

    init {
        uniffiEnsureInitialized()
    }

    @AfterTest
    fun clear() = yard.close()

    /** Squares as a printer or a screen shows them. */
    private fun drawn(squares: List<Pair<Int, Int>>, whole: Int, pixels: Int) = BufferedImage(whole * pixels, whole * pixels, BufferedImage.TYPE_INT_RGB).apply {
        val pen = createGraphics()
        pen.color = Color.WHITE
        pen.fillRect(0, 0, width, height)
        pen.color = Color.BLACK
        for ((x, y) in squares) pen.fillRect(x * pixels, y * pixels, pixels, pixels)
        pen.dispose()
    }

    /** A code of these words, as printed on a tag. */
    private fun tag(words: String): BufferedImage {
        val code = QRCodeWriter().encode(words, BarcodeFormat.QR_CODE, 0, 0, mapOf(EncodeHintType.ERROR_CORRECTION to ErrorCorrectionLevel.H))
        val squares = (0 until code.height).flatMap { y -> (0 until code.width).filter { x -> code[x, y] }.map { x -> x to y } }
        return drawn(squares, code.width, 8)
    }

    /** The same as a hand photographs it: askew, small in the picture, dim on one side, with grain, as JPEG. */
    private fun photographed(of: BufferedImage, name: String, wide: Int = 1600, high: Int = 1200, degrees: Double = 11.0): File {
        val photo = BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB)
        val pen = photo.createGraphics()
        pen.color = Color(150, 140, 120)
        pen.fillRect(0, 0, wide, high)
        pen.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR)
        val times = high * 0.62 / of.height
        pen.drawImage(
            of,
            AffineTransform().apply {
                translate(wide / 2.0, high / 2.0)
                rotate(Math.toRadians(degrees))
                shear(0.05, 0.02)
                scale(times, times)
                translate(-of.width / 2.0, -of.height / 2.0)
            },
            null,
        )
        pen.dispose()
        val random = Random(7)
        for (y in 0 until high) for (x in 0 until wide) {
            val light = 1.0 - 0.45 * x / wide
            fun dim(part: Int) = (part * light + random.nextGaussian() * 9).toInt().coerceIn(0, 255)
            val was = Color(photo.getRGB(x, y))
            photo.setRGB(x, y, Color(dim(was.red), dim(was.green), dim(was.blue)).rgb)
        }
        return File(yard.root, name).also { ImageIO.write(photo, "jpeg", it) }
    }

    private fun textIn(file: File): String? = DesktopPictures { null }.pixels(file.readBytes())?.let(::codeIn)

    @Test
    fun `a code is read askew, dim and grainy, in pictures of any size - and none where there is none`() {
        val words = "TH-07"
        for (degrees in listOf(0.0, 11.0, 93.0, 200.0)) assertEquals(words, textIn(photographed(tag(words), "tag $degrees.jpg", degrees = degrees)), "$degrees degrees")
        for ((wide, high) in listOf(640 to 480, 4000 to 3000)) assertEquals(words, textIn(photographed(tag(words), "tag $wide.jpg", wide, high)), "$wide x $high")
        val nothing = BufferedImage(800, 600, BufferedImage.TYPE_INT_RGB)
        assertNull(textIn(photographed(nothing, "nothing.jpg")))
        assertNull(DesktopPictures { null }.pixels(byteArrayOf(1, 2, 3)))
    }

    @Test
    fun `a phone is added from a picture of the shop's screen`() {
        Hub(yard).use { hub ->
            val (squares, whole, text) = ConsoleVisit(yard, hub.address, "shop").codePicture(hub.address)
            val file = photographed(drawn(squares, whole, 4), "screen.jpg", 2400, 1800)
            val choices = ArrayDeque(listOf(photographed(BufferedImage(300, 300, BufferedImage.TYPE_INT_RGB), "dark.jpg"), file))
            onScreen {
                val home = Home(File(yard.root, "phone").path, FileKeeper(File(yard.root, "key")), hand.clock, hand)
                setContent { CompositionLocalProvider(LocalPictures provides DesktopPictures { choices.removeFirst() }) { DesktopFace { Door(home) } } }
                val driver = Driver(this, null, hand)
                driver.waitFor("Scan the shop's code")
                driver.main()
                driver.waitFor("No code could be read in that picture. Nothing was changed.")
                picture("scan-nothing")
                driver.main()
                driver.waitFor("Scan again")
                picture("scan-read")
                assertTrue(driver.sees(text), driver.strips())
                driver.write("A name for this phone", "yard phone 3")
                driver.main()
                driver.waitFor("This phone's key")
                yard.accepts(driver.keyShown())
                driver.waitFor("Who is signing?")
            }
        }
    }

    @Test
    fun `a door tag opens its unit, and another says what it is`() {
        val phone = Phone.enrolByFile(File(yard.root, "phone").path, yard.invitation(), "yard phone 3", FileKeeper(File(yard.root, "key")), hand.clock)
        val choices = ArrayDeque(listOf(photographed(tag("ladder 12"), "ladder.jpg"), photographed(tag("th-07\n"), "door.jpg")))
        onScreen {
            val desk = Desk(phone, hand)
            val back = BackStack(Place.AnotherUnit(), Signer(phone.fleet().people.first().id))
            setContent { CompositionLocalProvider(LocalPictures provides DesktopPictures { choices.removeFirst() }) { DesktopFace { App(desk, back) } } }
            val driver = Driver(this, desk, hand).apply { settle() }
            driver.tap("Scan the door tag")
            driver.waitFor("That says ladder 12, and no unit here is called so. Nothing was opened.")
            driver.tap("Scan the door tag")
            driver.waitFor("Start pre-trip")
            assertEquals(Place.Unit(phone.unitAt("TH-07")), back.top)
        }
        phone.shutdown()
    }

    /** Mud over the middle of a printed code and a scratch near a corner: about a tenth of it is gone. */
    private fun dirty(of: BufferedImage) = of.apply {
        val pen = createGraphics()
        pen.color = Color(90, 70, 40)
        pen.fillOval(width * 38 / 100, height * 40 / 100, width * 28 / 100, height * 24 / 100)
        pen.color = Color(200, 200, 200)
        pen.fillRect(width * 32 / 100, height * 74 / 100, width * 25 / 100, height * 4 / 100)
        pen.dispose()
    }

    @Test
    fun `what the shop prints is read under dirt - the door tag opens its unit, the drum says its oil`() {
        Hub(yard).use { hub ->
            val phone = Phone.enrolByCode(File(yard.root, "phone").path, hub.code(), "yard phone 3", FileKeeper(File(yard.root, "key")), hand.clock)
            phone.exchangeOnce(20_000u)
            yard.accepts(phone.about().key)
            phone.exchangeOnce(20_000u)
            val console = ConsoleVisit(yard, hub.address)
            fun printed(path: String, name: String): File {
                val (squares, whole) = console.printedCode(path)
                return photographed(dirty(drawn(squares, whole, 12)), name)
            }
            val tag = printed("/units/TH-01/door-tag", "tag.jpg")
            val mineral = printed("/drum-label?family=mineral&grade=ISO+VG+46", "mineral.jpg")
            val choices = ArrayDeque(listOf(mineral, tag, tag, photographed(tag("4006381333931"), "nobody's.jpg"), mineral))
            onScreen(high = 1_400) {
                val desk = Desk(phone, hand)
                val back = BackStack(Place.AnotherUnit(), Signer(phone.fleet().people.first().id))
                setContent { CompositionLocalProvider(LocalPictures provides DesktopPictures { choices.removeFirst() }) { DesktopFace { App(desk, back) } } }
                val driver = Driver(this, desk, hand).apply { settle() }
                driver.tap("Scan the door tag")
                driver.waitFor("That is a drum's label. Nothing was opened.")
                picture("scan-drum-for-tag")
                driver.tap("Scan the door tag")
                driver.waitFor("Start pre-trip")
                assertEquals(Place.Unit(phone.unitAt("TH-01")), back.top)
                driver.tap("Oil")
                driver.waitFor("Scan the label")
                driver.tap("Scan the label")
                driver.waitFor("That is a unit's door tag, not a drum's label. Nothing was changed.")
                driver.tap("Scan the label")
                driver.waitFor("Unknown drum. Do not pour; call.")
                picture("scan-unknown-drum")
                driver.tap("Scan the label")
                waitUntil(timeoutMillis = 30_000) { !driver.sees("Unknown drum") }
                driver.settle()
                picture("scan-own-drum")
                val draft = phone.drafts().drafts.single { it.kind == "top-up" }.id
                val said = phone.topUp(draft)
                assertEquals(Mix.SAME to true, said.mix to said.drumScanned)
            }
            phone.shutdown()
        }
    }

    @Test
    fun `the officer's page carries a code by which the shop finds the same`() {
        Hub(yard).use { hub ->
            val phone = Phone.enrolByCode(File(yard.root, "phone").path, hub.code(), "yard phone 3", FileKeeper(File(yard.root, "key")), hand.clock)
            phone.exchangeOnce(20_000u)
            yard.accepts(phone.about().key)
            phone.exchangeOnce(20_000u)
            val walk = phone.beginPreTrip(phone.unitAt("TH-02"), phone.fleet().people.first { it.name == "Bettina Quaye" }.id, null)
            phone.answerLine(walk, Answer("lamps-stop", "rear", AnswerKind.DEFECT, word = "out"))
            phone.signPreTrip(walk, Signed(pinGiven = false), true, null)
            phone.exchangeOnce(20_000u)
            onScreen(high = 3_000) {
                val desk = Desk(phone, hand)
                val back = BackStack(Place.Today(), Signer(phone.fleet().people.first().id)).apply { go(Place.Roadside(phone.unitAt("TH-02"))) }
                setContent { DesktopFace { App(desk, back) } }
                val driver = Driver(this, desk, hand).apply { settle() }
                picture("officers-page")
                assertTrue(driver.sees("Lamps and reflectors: defect") && driver.sees("Horn: not looked at here"), driver.strips())
                assertTrue(driver.sees("no PIN given"), driver.strips())
                val shown = Image.makeFromBitmap(onRoot().captureToImage().asSkiaBitmap()).encodeToData(EncodedImageFormat.PNG)!!.bytes
                val (door, ms, check) = codeIn(DesktopPictures { null }.pixels(shown)!!).orEmpty().split(" ")
                assertEquals("TH-02", door)
                assertTrue(driver.sees("Check code $check"), driver.strips())
                val report = ConsoleVisit(yard, hub.address).cabReport("TH-02", ms.toLong())
                assertTrue(check in report, "$check: $report")
            }
            phone.shutdown()
        }
    }
}
