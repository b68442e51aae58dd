package app.sumpbook.ui

import androidx.compose.runtime.Composable
import androidx.compose.runtime.key
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.SemanticsNodeInteraction
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.hasAnyAncestor
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performSemanticsAction
import app.sumpbook.R
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.NoteKind
import app.sumpbook.core.NotSo
import app.sumpbook.core.Phone
import app.sumpbook.core.PhoneException
import app.sumpbook.core.Said
import app.sumpbook.core.ShownNote
import app.sumpbook.core.Signed
import app.sumpbook.core.StepSaid
import app.sumpbook.core.StorageKind
import app.sumpbook.core.TextAsk
import app.sumpbook.core.TextValue
import app.sumpbook.core.text
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.Home
import app.sumpbook.ui.desk.Refusal
import app.sumpbook.ui.desk.stamp
import app.sumpbook.ui.desktop.ChromeWords
import app.sumpbook.ui.desktop.FileKeeper
import app.sumpbook.ui.frame.MAIN
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.screen.AddPhone
import app.sumpbook.ui.screen.BookShut
import app.sumpbook.ui.screen.sentence
import java.io.File

/** A screen to be looked at: where it is, and what is pressed on it first. */
@OptIn(ExperimentalTestApi::class)
class ToLookAt(
    val name: String,
    val place: Place = Place.Today(),
    val show: @Composable (Desk, BackStack) -> Unit = { desk, back -> key(name) { App(desk, back) } },
    val then: Pressing.() -> Unit = {},
)

/** What is pressed on a screen before it is looked at, by the words of its language. */
@OptIn(ExperimentalTestApi::class)
class Pressing(private val screen: SkikoComposeUiTest, val language: String, private val hand: HandHandset, private val stands: () -> Unit) {
    /** The main button. */
    fun main() = on(screen.onNode(hasClickAction() and hasAnyAncestor(hasTestTag(MAIN)))) { it.performClick() }

    /** So much goes by. */
    fun skip(ms: Long) {
        hand.skip(ms)
        screen.mainClock.advanceTimeBy(1_000)
        stands()
    }

    /** What says a string of the shell. */
    fun press(id: Int) = press(ChromeWords(language).string(id))

    /** What says a text of the core. */
    fun pressText(key: String, vararg values: Pair<String, TextValue>) = press(text(language, TextAsk(key, mapOf(*values))))

    /** What says just this. */
    fun press(words: String) = on(screen.onAllNodes(hasText(words) and hasClickAction()).onFirst()) { it.performClick() }

    /** Digits on the keypad. */
    fun type(digits: String) = digits.forEach { press(it.toString()) }

    /** The level of the glass. */
    fun level(percent: Int) = on(screen.onNode(SemanticsMatcher.keyIsDefined(SemanticsActions.SetProgress))) {
        it.performSemanticsAction(SemanticsActions.SetProgress) { set -> set(percent.toFloat()) }
    }

    private fun on(node: SemanticsNodeInteraction, act: (SemanticsNodeInteraction) -> Unit) {
        // What is fixed needs no scrolling, and cannot be scrolled to.
        runCatching { node.performScrollTo() }
        act(node)
        stands()
    }
}

/** A phone in the middle of a full day: locks, a programme, notes, pours, walks begun; what every screen has something to show of. */
@OptIn(ExperimentalTestApi::class)
class DayToLookAt : AutoCloseable {
    private val yard = Yard()
    val hand = HandHandset()
    val phone: Phone
    val signer: Signer

    init {
        uniffiEnsureInitialized()
        yard.says("register", yard.example("programme"))
        yard.says("record", yard.example("brought-in"))
        phone = Hub(yard).use { hub ->
            val new = Phone.enrolByCode(File(yard.root, "phone").path, hub.code(), "yard phone 3", FileKeeper(File(yard.root, "key")), hand.clock)
            new.exchangeOnce(20_000u)
            yard.accepts(new.about().key)
            repeat(2) { new.exchangeOnce(20_000u) }
            waitForAPart(new)
            new
        }
        signer = Signer(person("Amos Tillery"))
        phone.choosePin(signer.person, "314159", null)
    }

    private val draft = phone.beginPreTrip(unit("TH-01"), signer.person, null)
    private val broken = brokenWalk()
    private val note = phone.keepNote(Said(unit("TH-01"), signer.person), ShownNote(NoteKind.FAULT, "HIGH TEMP", true, photo = phone.keepPhoto(aPhoto())))

    /** TH-04's note, of which somebody told the shop by word of mouth. */
    private val toldNote = phone.keepNote(Said(unit("TH-04"), signer.person), ShownNote(NoteKind.WARNING, "OIL TEMP", false))
        .also { phone.acknowledge(Said(unit("TH-04"), signer.person), it, true) }

    init {
        // All but the last step of TH-02's air in use is said; there was too little of it.
        val (unit, person) = unit("TH-02") to signer.person
        for (step in phone.procedure(unit, "use-air", person).steps.dropLast(1)) {
            val word = step.notSo.firstOrNull { it.means == NotSo.Mark }?.word
            phone.sayStep(unit, "use-air", person, StepSaid(step.id, hand.stamp(), word, null), "to blow out a trench")
        }
        // Somebody else began to stop TH-02's air.
        val first = phone.procedure(unit, "shut-down", person).steps.first()
        phone.sayStep(unit, "shut-down", person("Bettina Quaye"), StepSaid(first.id, hand.stamp(), null, null), null)
    }

    /** TH-07 with a frayed belt that locks its air, and a mirror for which the shop waits for the part. */
    private fun waitForAPart(new: Phone) {
        val walk = new.newId()
        val found = new.recordLine(
            """{"unit":"TH-07","person":"Bettina Quaye","kind":"pre-trip-section","body":{"walk":"$walk","edition":1,"answers":[{"item":"mirrors","place":"right","answer":"defect","word":"hairline"},{"item":"belts","answer":"defect","word":"frayed-air"}],"complete":false}}""",
        )
        new.exchangeOnce(20_000u)
        yard.saysTo(
            """{"unit":"TH-07","person":"Wren Castellane","source":"shop","kind":"waiting-for-part","body":{"part":"mirror glass","over":false,"defect":{"entry":"$found","item":"mirrors","place":"right"}}}""" + "\n",
            "record",
        )
        new.exchangeOnce(20_000u)
    }

    private val onHold = phone.beginPreTrip(unit("TH-07"), signer.person, null)

    /** TH-03 with every stop answered, not signed yet. */
    private val answered = phone.answeredWalk(unit("TH-03"), signer.person, 7_386) { if (it == "%") 48 else 2 }

    /** TH-02 with a lamp out and a note for the mechanic: signed in part, so that it is locked. */
    private fun brokenWalk(): String {
        val walk = phone.beginPreTrip(unit("TH-02"), person("Bettina Quaye"), null)
        phone.answerLine(walk, Answer("lamps-stop", "rear", AnswerKind.DEFECT, word = "out"))
        phone.answerLine(walk, Answer("mirrors", null, AnswerKind.DEFECT, word = "cracked", words = "hairline, low corner"))
        phone.signPreTrip(walk, Signed(pinGiven = false), true, null)
        return phone.beginPreTrip(unit("TH-02"), signer.person, null)
    }

    /** A figure of TH-08 that its meter cannot have shown. */
    private val aside = phone.recordLine("""{"unit":"TH-08","person":"Amos Tillery","kind":"hour-reading","body":{"meter":"compressor","figure":"9999.0","how":"asked","kept-when-asked":true}}""")

    fun unit(door: String): String = phone.fleet().units.first { it.door == door }.id

    private fun person(name: String): String = phone.fleet().people.first { it.name == name }.id

    /** Every screen, in the order of a day. */
    fun screens(): List<ToLookAt> {
        val one = unit("TH-01")
        val locked = unit("TH-02")
        val stops = (1..40).mapNotNull { phone.stop(draft, "$it", emptyList(), 0u) }.distinctBy { it.label }
        val mirrors = stops.first { stop -> stop.lines.any { it.item == "mirrors" } }
        val onHoldAt = (1..40).mapNotNull { phone.stop(onHold, "$it", emptyList(), 0u) }.first { stop -> stop.lines.any { it.waitsFor != null } }
        val tread = stops.first { stop -> stop.lines.any { it.item == "tread-front" } }
        return listOf(
            ToLookAt("01-who-signs", show = { desk, _ -> key("who") { App(desk, BackStack()) } }),
            ToLookAt("01-who-signs-learning", show = { desk, _ -> key("learning") { App(desk, BackStack()) } }) { press(ChromeWords(language).string(R.string.name_learning, "Gil Sandoval")) },
            ToLookAt("01-who-signs-not-listed", show = { desk, _ -> key("not") { App(desk, BackStack()) } }) { press(R.string.not_on_the_list) },
            ToLookAt("02-today"),
            ToLookAt("02-today-became", show = { desk, _ -> key("became") { App(desk, BackStack(Place.Today(), Signer(person("Bettina Quaye")))) } }),
            ToLookAt("02-another-unit", Place.AnotherUnit()),
            ToLookAt("02-another-unit-typed", Place.AnotherUnit()) { type("07") },
            ToLookAt("03-unit", Place.Unit(one)),
            ToLookAt("03-unit-more", Place.Unit(one)) { press(R.string.more) },
            ToLookAt("03-unit-locked", Place.Unit(locked)),
            ToLookAt("03-used-all-the-same", Place.Used(locked)),
            ToLookAt("03-slip", Place.Slip(locked)),
            ToLookAt("03-slip-mistyped", Place.Slip(locked)) {
                type("123456789012")
                press(R.string.slip_take)
            },
            ToLookAt("03-slip-nothing-locked", Place.Slip(one)),
            ToLookAt("03-other-unit", Place.OtherUnit(one)),
            ToLookAt("04-read-only", Place.LastReport(locked, "")),
            ToLookAt("04-last-report", Place.LastReport(locked, broken)),
            ToLookAt("04-not-what-i-see", Place.NotWhatISee(locked, broken)),
            *stops.map { ToLookAt("05-stop-%02d-%s".format(it.index.toInt(), it.stop), Place.Stop(one, draft, it.label)) }.toTypedArray(),
            ToLookAt("05-stop-part-on-hold", Place.Stop(unit("TH-07"), onHold, onHoldAt.label)),
            ToLookAt("05-stop-locked", Place.Stop(locked, broken, phone.stops(broken).first { it.stop == "cab-off" }.label)),
            ToLookAt("06-defect", Place.Defect(one, draft, mirrors.label, mirrors.lines.first { it.item == "mirrors" }.id)),
            ToLookAt("06-defect-chosen", Place.Defect(one, draft, mirrors.label, mirrors.lines.first { it.item == "mirrors" }.id)) { pressText("choice-no-view") },
            ToLookAt("06-defect-recording", Place.Defect(one, draft, mirrors.label, mirrors.lines.first { it.item == "mirrors" }.id)) { pressText("sound-record") },
            ToLookAt("06-figure", Place.Defect(one, draft, tread.label, tread.lines.first { it.item == "tread-front" }.id)) {
                press(R.string.figure_give)
                type("3")
            },
            ToLookAt("07-drop-chips", Place.Stop(one, draft, stops.first { it.stop == "leak-released" }.label)) {
                main()
                skip(61_000)
            },
            ToLookAt("08-sign-pin", Place.Sign(unit("TH-03"), answered)),
            ToLookAt("08-sign", Place.Sign(one, draft)),
            ToLookAt("09-glass", Place.Glass(one)),
            ToLookAt("09-glass-given", Place.Glass(one)) { level(38) },
            ToLookAt("10-top-up", Place.TopUp(one, "")),
            ToLookAt("10-top-up-other-oil", Place.TopUp(one, "")) {
                press(R.string.drum_other)
                pressText("family-polyglycol")
            },
            ToLookAt("10-top-up-other-fluid", Place.TopUp(one, "")) { press(R.string.other_fluid) },
            ToLookAt("11-air-for-the-job", Place.AirForTheJob(one)),
            ToLookAt("11-start-air", Place.Steps(one, "start")),
            ToLookAt("11-stop-air", Place.Steps(one, "shut-down")),
            ToLookAt("11-not-so", Place.Steps(one, "start")) { press(R.string.not_so) },
            ToLookAt("11-leave-site", Place.Steps(one, "leave-site")),
            ToLookAt("11-running", Place.Running(one)),
            ToLookAt("11-air-locked", Place.Steps(unit("TH-07"), "start")),
            ToLookAt("11-skipped", Place.Steps(locked, "use-air")),
            ToLookAt("11-said-before", Place.Steps(locked, "shut-down")),
            ToLookAt("12-display", Place.Display(one, "")),
            ToLookAt("12-note", Place.Display(one, note)),
            ToLookAt("12-note-told", Place.Display(unit("TH-04"), toldNote)),
            ToLookAt("13-hours", Place.Hours(one)),
            ToLookAt("13-hours-asked", Place.Hours(one)) { type("99999") },
            ToLookAt("14-end-of-day", Place.EndOfDay(one, "")),
            ToLookAt("15-happened", Place.Happened(one)),
            ToLookAt("16-where-it-is", Place.WhereItIs()),
            ToLookAt("16-set-aside", Place.SetAside(aside)),
            ToLookAt("17-hand-over", Place.HandOver()),
            ToLookAt("18-roadside", Place.Roadside(locked)),
            ToLookAt("18-roadside-leaving", Place.Roadside(locked)) { press(R.string.leave_with_pin) },
            ToLookAt("19-add-phone", show = { _, _ -> AddPhone(Home(File(yard.root, "new").path, null, null, hand)) {} }),
            ToLookAt("19-book-shut", show = { _, _ -> BookShut(sentence(Refusal.of(PhoneException.Storage(StorageKind.OTHER, null, "")))) {} }),
            ToLookAt("20-settings", Place.Settings()),
            ToLookAt("20-own-figures-pin", Place.OwnFigures()),
            ToLookAt("20-own-figures", Place.OwnFigures()) { type("314159") },
            ToLookAt("20-cautions", Place.Settings()) { press(R.string.cautions) },
            ToLookAt("20-licences", Place.Settings()) { press(R.string.about_and_licences) },
        )
    }

    override fun close() {
        phone.shutdown()
        yard.close()
    }
}
