import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.ChangeListener
import app.sumpbook.core.ChangeSet
import app.sumpbook.core.EnrolmentKind
import app.sumpbook.core.Figure
import app.sumpbook.core.Fluid
import app.sumpbook.core.Glass
import app.sumpbook.core.How
import app.sumpbook.core.HowGiven
import app.sumpbook.core.ItemFigure
import app.sumpbook.core.KeyKeeper
import app.sumpbook.core.MainAct
import app.sumpbook.core.Meter
import app.sumpbook.core.Phone
import app.sumpbook.core.PhoneException
import app.sumpbook.core.Pour
import app.sumpbook.core.Signed
import app.sumpbook.core.TextAsk
import app.sumpbook.core.TextValue
import app.sumpbook.core.TopUpSaid
import app.sumpbook.core.keyOfMain
import app.sumpbook.core.text
import app.sumpbook.core.uniffiEnsureInitialized
import java.io.File
import java.util.concurrent.LinkedBlockingQueue
import java.util.concurrent.TimeUnit
import kotlin.io.path.createTempDirectory
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFailsWith
import kotlin.test.assertIs
import kotlin.test.assertNotEquals
import kotlin.test.assertTrue

/** A keystore: a file in a folder of its own. */
class FileKeeper(private val file: File) : KeyKeeper {
    override fun keep(secret: ByteArray) = file.writeBytes(secret)

    override fun giveBack(): ByteArray? = if (file.exists()) file.readBytes() else null
}

/** Runs a program and gives its exit and what it wrote. */
fun run(vararg words: String): Pair<Int, String> {
    val process = ProcessBuilder(*words).redirectErrorStream(true).start()
    val said = process.inputStream.bufferedReader().readText()
    return process.waitFor() to said
}

/** This class path and these properties in another virtual machine. */
fun another(main: String, library: String, vararg words: String): Pair<Int, String> = run(
    File(System.getProperty("java.home"), "bin/java").path, "-cp", System.getProperty("java.class.path"),
    "-Duniffi.component.sumpbook.libraryOverride=$library", main, *words,
)

/** Answers a stop as a driver does, and gives the next one's label. */
fun answerStop(phone: Phone, draft: String, label: String): String? {
    phone.reachStop(draft, label)
    var screen = phone.stop(draft, label, emptyList(), 0u)!!
    for (line in screen.lines.filter { it.answer == null }) {
        val asked = line.figure ?: continue
        if (asked.how != HowGiven.ASKED && asked.how != HowGiven.CHOSEN && asked.how != HowGiven.TIMED) continue
        if (asked.unit == "h") {
            phone.preTripHours(draft, 28_624)
            continue
        }
        val figure = ItemFigure(Figure(31, 0u, asked.unit), How.ASKED)
        phone.answerLine(draft, Answer(item = line.item, place = line.place, answer = AnswerKind.OK, figures = listOf(figure)))
    }
    val seen = screen.lines.map { it.id }
    screen = phone.stop(draft, label, seen, 5_000u)!!
    if (screen.left > 0u) phone.okTogether(draft, label, 5_000u)
    screen = phone.stop(draft, label, seen, 5_000u)!!
    return assertIs<MainAct.NextStop>(screen.main.act).stop
}

/** Walks some stops and is halted: nothing is closed. */
object Walker {
    @JvmStatic
    fun main(words: Array<String>) {
        val phone = Phone.open(words[0], FileKeeper(File(words[1])), null)
        val unit = phone.fleet().units.first { it.door == "TH-02" }.id
        val person = phone.fleet().people.first { it.name == "Bettina Quaye" }.id
        val draft = phone.beginPreTrip(unit, person, null)
        var label = phone.stop(draft, null, emptyList(), 0u)!!.label
        repeat(4) { label = answerStop(phone, draft, label)!! }
        println("$draft $label")
        System.out.flush()
        Runtime.getRuntime().halt(9)
    }
}

/** Only loads the library. The checksums are compared when this is called, and by nothing else: an app calls it first. */
object Loader {
    @JvmStatic
    fun main(words: Array<String>) {
        uniffiEnsureInitialized()
        println(text("en", TextAsk("main-try-shop", emptyMap())))
    }
}

class DayTest {
    private val root = createTempDirectory("sumpbook").toFile()
    private val command = System.getProperty("sumpbook.command")
    private val library = System.getProperty("sumpbook.library")
    private val shop = File(root, "shop").path
    private val folder = File(root, "phone").path
    private val key = File(root, "keystore")

    private fun says(vararg words: String): String {
        val (exit, said) = run(command, *words, "--shop", shop)
        assertEquals(0, exit, said)
        return said
    }

    private fun enrolled(): Phone {
        says("init", "--name", "Tern Hollow Water", "--zone", "America/Denver")
        says("register", File("../../core/shop/examples/fleet.jsonl").path)
        val file = File(root, "invitation")
        says("invite", file.path)
        return Phone.enrolByFile(folder, file.readBytes(), "yard phone 3", FileKeeper(key), null)
    }

    @AfterTest
    fun clear() {
        root.deleteRecursively()
    }

    @Test
    fun aDayWithAKillInBetweenReachesTheShop() {
        enrolled().shutdown()
        val (exit, said) = another("Walker", library, folder, key.path)
        assertEquals(9, exit, said)
        val (draft, reached) = said.trim().lines().last().split(" ")
        val phone = Phone.open(folder, FileKeeper(key), null)
        val bettina = phone.fleet().people.first { it.name == "Bettina Quaye" }.id
        val row = phone.today(bettina).units.first()
        assertEquals("TH-02", row.door)
        assertEquals(draft, (row.main.act as MainAct.GoOn).draft)
        assertEquals("main-go-on", keyOfMain(row.main.act))
        var label: String? = reached
        while (label != null) label = answerStop(phone, draft, label)
        phone.signPreTrip(draft, Signed(pinGiven = true), false, 600_000u)

        val pouring = phone.beginTopUp(row.id, bettina, Fluid.COMPRESSOR_OIL)
        val pour = Pour(Figure(25, 2u, "qt"), Glass.Percent(50u), 60_000u)
        assertFailsWith<PhoneException.Draft> { phone.addPour(pouring, pour, false) }
        phone.sayTopUp(pouring, TopUpSaid(gaugeZero = true, blowDownSilent = true, capTight = true))
        phone.addPour(pouring, pour, false)
        phone.signTopUp(pouring, Signed(pinGiven = false))
        val here = phone.whereItIs(0u).counts.onPhone

        val file = File(root, "handed").apply { writeBytes(phone.handOver().bytes) }
        val answer = File(root, "answer")
        says("take-in", file.path, "--answer", answer.path, "--accept", phone.about().key)
        assertTrue(phone.takeIn(answer.readBytes()).receipt)
        val counts = phone.whereItIs(0u).counts
        assertEquals(0u to here, counts.onPhone to counts.atShop)
        phone.shutdown()
        phone.close()
    }

    @Test
    fun callsAreTimedAndPrinted() {
        val phone = enrolled()
        val person = phone.fleet().people.first { it.name == "Amos Tillery" }.id
        val unit = phone.fleet().units.first().id
        val calls = mapOf(
            "today" to { phone.today(person) }, "unit" to { phone.unit(unit, person) },
            "last report" to { phone.lastReport(unit, emptyList()) }, "hours" to { phone.hours(unit, 12_345, Meter.COMPRESSOR) },
            "where it is" to { phone.whereItIs(7u) }, "text" to { text("es", TextAsk("main-try-shop", emptyMap())) },
        )
        for ((name, call) in calls) {
            repeat(100) { call() }
            val took = LongArray(200) { val began = System.nanoTime(); call(); System.nanoTime() - began }.sorted()
            println("$name: median ${took[100] / 1_000} us, 95th of 100 ${took[190] / 1_000} us")
        }
        assertEquals(phone.lastReport(unit, emptyList()).defects, phone.lastReport(unit, emptyList()).defects)
        phone.shutdown()
    }

    @Test
    fun aListenerHearsAndShuttingDownEndsIt() {
        val phone = enrolled()
        val heard = LinkedBlockingQueue<ChangeSet>()
        phone.setListener(object : ChangeListener {
            override fun changed(what: ChangeSet) { heard.put(what) }
        })
        phone.recordLine("""{"unit":"TH-01","person":"Amos Tillery","kind":"start-air","body":{}}""")
        assertTrue(heard.poll(5, TimeUnit.SECONDS)!!.entries)
        phone.pause()
        assertTrue(assertFailsWith<PhoneException.Closed> { phone.fleet() }.paused)
        phone.resume()
        phone.shutdown()
        assertTrue(!assertFailsWith<PhoneException.Closed> { phone.fleet() }.paused)
    }

    /** Every kind, with what it carries: a new one does not compile here until somebody has looked at it. */
    private fun sentence(error: PhoneException): String = when (error) {
        is PhoneException.Closed -> "closed ${error.paused}"
        is PhoneException.Enrolment -> "enrolment ${error.kind} ${error.device}"
        is PhoneException.Key -> "key ${error.kind}"
        is PhoneException.Storage -> "storage ${error.kind} ${error.textKey}"
        is PhoneException.Photo -> "photo ${error.kind} ${error.textKey}"
        is PhoneException.File -> "file ${error.kind}"
        is PhoneException.Online -> "online ${error.kind} ${error.retryAt} ${error.onPhone}"
        is PhoneException.Draft -> "draft ${error.kind} ${error.stop} ${error.left}"
        is PhoneException.Entry -> "entry"
        is PhoneException.Slip -> "slip ${error.kind} ${error.waitS}"
        is PhoneException.Argument -> "argument ${error.what}"
        is PhoneException.Unexpected -> "unexpected"
    }

    @Test
    fun whatIsWrongIsToldByKind() {
        val gone = assertFailsWith<PhoneException.Enrolment> { Phone.open(File(root, "none").path, null, null) }
        assertEquals(EnrolmentKind.NOT_ENROLLED, gone.kind)
        val phone = enrolled()
        fun told(call: () -> Unit) = sentence(assertFailsWith<PhoneException> { call() })
        assertEquals("argument person", told { phone.today("nobody") })
        assertEquals("file NOT_A_FILE", told { phone.takeIn(byteArrayOf(1)) })
        assertEquals("photo NOT_A_PHOTO error-not-a-photo", told { phone.keepPhoto(byteArrayOf(1)) })
        assertEquals("online NO_HUB null 0", told { phone.exchangeOnce(100u) }.replace(Regex(" -?[0-9]+ "), " null "))
        phone.shutdown()
        val broken = object : KeyKeeper {
            override fun keep(secret: ByteArray) = error("no")
            override fun giveBack(): ByteArray? = error("the keystore is gone")
        }
        val key = assertFailsWith<PhoneException.Key> { Phone.open(folder, broken, null) }
        assertTrue("the keystore is gone" in key.reason, key.reason)
    }

    @Test
    fun textsComeInBothLanguages() {
        val asked = TextAsk("main-all-ok", mapOf("lines" to TextValue.Count(8)))
        assertNotEquals(text("en", asked), text("es-MX", asked))
    }

    @Test
    fun aLibraryOfAnotherVersionIsRefused() {
        val other = File(root, "other.so")
        val (made, how) = run("python3", "../python/other_version.py", library, other.path)
        if (made == 3) return println("skipped: $how")
        assertEquals(0, made, how)
        val (exit, said) = another("Loader", other.path)
        assertTrue(exit != 0 && "checksum mismatch" in said, said)
        val (right, words) = another("Loader", library)
        assertEquals(0, right, words)
    }
}
