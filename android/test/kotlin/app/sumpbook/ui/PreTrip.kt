package app.sumpbook.ui

import androidx.compose.ui.test.ComposeUiTest
import androidx.compose.ui.test.ExperimentalTestApi
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Phone
import app.sumpbook.core.Signed
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.Settled
import java.io.File
import kotlin.test.AfterTest
import kotlin.test.BeforeTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** A pre-trip without a defect, counted in what a thumb does: the same on each platform. */
@OptIn(ExperimentalTestApi::class)
abstract class PreTrip {
    /** How often a page may have to be turned at the size it was drawn for. */
    open val turnsAtMost = 0

    private val yard = Yard()
    private val hand = HandHandset()
    protected lateinit var phone: Phone

    @BeforeTest
    fun enrol() {
        uniffiEnsureInitialized()
        yard.register(EVERYTHING)
        phone = Phone.enrolByFile(File(yard.root, "phone").path, yard.invitation(), "yard phone 3", keeperIn(File(yard.root, "key")), hand.clock)
        val amos = phone.fleet().people.first { it.name == "Amos Tillery" }.id
        phone.choosePin(amos, "314159", null)
        hand.daysBack = 1
        phone.hasWalked(phone.unitAt("TH-09"), amos)
        hand.daysBack = 0
    }

    @AfterTest
    fun clear() {
        phone.shutdown()
        yard.close()
    }

    protected fun walked(text: Float, drive: (ComposeUiTest, Driver) -> Unit) = onPhone(text = text) {
        val watched = Watched(phone)
        val desk = Desk(watched, hand)
        var draws: Thread? = null
        setContent {
            draws = Thread.currentThread()
            PhoneFace(Settled(text = text)) { App(desk) }
        }
        val driver = Driver(this, desk, hand).apply { settle() }
        drive(this, driver)
        assertEquals(null, watched.on[draws], "calls of the core while drawing")
        assertTrue(watched.on.values.sum() > 50, "${watched.on}")
        println("pre-trip, every feature, text $text: ${driver.taps} taps, ${driver.digits} digits, ${driver.drags} drags, ${driver.turns} page turns")
    }

    /** Three figures and no more: the meter's, by its digits, the PIN's beside them; the glass by one drag; both drops by a tap each. */
    protected fun threeFigures(driver: Driver) {
        assertEquals(HOURS_DIGITS + PIN_LENGTH, driver.digits, "digits")
        assertEquals(1, driver.drags, "drags")
    }

    @Test
    fun `every feature on at the size of text it was drawn for`() = walked(1f) { screen, driver ->
        driver.preTrip(screen, "walk")
        assertTrue(driver.taps <= 30, "${driver.taps} taps")
        assertTrue(driver.turns <= turnsAtMost, "${driver.turns} page turns")
        threeFigures(driver)
        assertEquals(WALKED + 2u, phone.whereItIs(0u).counts.onPhone)
    }

    private companion object {
        const val HOURS_DIGITS = 5
        const val PIN_LENGTH = 6
        const val EVERYTHING =
            """{"register":"unit","door":"TH-09","features":{"switched":["air-brakes","hydraulic-brakes","glow-plugs","intake-heater","diesel","gasoline","def","manual-tank-drains","trailer","trailer-air","trailer-electric","cooler-inside","shaft-drive","belt-drive","two-pressure","hour-meter","receiver-drain","temp-shown","hose-reels","hose-over-half-inch","outlet-filter","tool-oiler","power-steering","boom-hydraulics","gearbox-check","spare-fuses-kept"],"valves":["left","right"],"hoses":[{"tag":"H-91","inches":0.5},{"tag":"H-92","inches":0.75}]},"in-service":"2024-01-08","in-service-hours":"0.0"}"""
    }
}

/** Walks after which nobody is told any more how to look. */
const val WALKED = 3u

/** Signs so many parts of walks that no hints are given any more. */
fun Phone.hasWalked(unit: String, person: String) = repeat(WALKED.toInt()) {
    val draft = beginPreTrip(unit, person, null)
    answerLine(draft, Answer(item = "horn", answer = AnswerKind.OK))
    signPreTrip(draft, Signed(pinGiven = false), true, null)
}

/** A whole pre-trip without a defect: TH-09, from the name to the signature. */
@OptIn(ExperimentalTestApi::class)
fun Driver.preTrip(screen: ComposeUiTest, pictures: String?) {
    fun picture(name: String) = pictures?.let { screen.picture("$it-$name") }
    tapOn("Amos Tillery")
    tapOn("TH-09")
    picture("unit")
    main()
    picture("last-report")
    lookAtAll(MORE)
    main()
    walkToSignature { picture("stop-%02d".format(it)) }
    picture("sign")
    signs("314159")
    picture("signed")
}

/** Stop after stop until the signature. */
fun Driver.walkToSignature(at: (Int) -> Unit = {}) {
    var stop = 0
    while (!sees("I looked at what stands here")) {
        stop++
        at(stop)
        stopDone()
        check(stop < 40) { "no end at ${mainWords()}" }
    }
}

/** Stop after stop until one with this line stands there. */
fun Driver.walkToLine(line: String) {
    var stops = 0
    while (!sees(line)) {
        stopDone()
        check(stops++ < 40) { "no line $line" }
    }
    lookAtAll(MORE)
}

/** The PIN, chosen when there is none yet. */
fun Driver.signs(pin: String) {
    val chooses = mainWords() == "Go on"
    type(pin)
    main()
    if (chooses) {
        type(pin)
        main()
    }
}

/** One stop without a defect. */
@OptIn(ExperimentalTestApi::class)
fun Driver.stopDone() {
    lookAtAll(MORE)
    when {
        mainWords().startsWith("Start 60 s") -> {
            main()
            skipMinute()
            tap("2")
        }
        mainWords().startsWith("At 85") -> {
            main()
            main()
            lookAtAll(MORE)
            main()
        }
        // On a short walk the glass stands as the first driver's record shows it.
        mainWords().startsWith("Still ") -> main()
        wantsGlass() -> {
            drag(48)
            main()
        }
        wantsHours() -> {
            type("28624")
            while (mainWords().startsWith("Yes, it reads")) main()
            main()
        }
        else -> main()
    }
}

private val MORE = Regex("""\d+ more below""")
