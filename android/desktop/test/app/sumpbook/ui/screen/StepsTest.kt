package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performTextInput
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.LockPart
import app.sumpbook.core.LockState
import app.sumpbook.core.NotSo
import app.sumpbook.core.Signed
import app.sumpbook.core.SiteDust
import app.sumpbook.core.StepSaid
import app.sumpbook.core.StopNow
import app.sumpbook.core.TextAsk
import app.sumpbook.core.text
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs
import kotlin.test.assertTrue

@OptIn(ExperimentalTestApi::class)
class StepsTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    private fun now(door: String) = cab.phone.glass(cab.unit(door), null, null).stop

    private fun air(door: String) = cab.phone.unit(cab.unit(door), cab.person()).roadAir.air

    private fun steps(door: String, procedure: String) = Place.Steps(cab.unit(door), procedure)

    private fun SkikoComposeUiTest.done(times: Int) = with(cab) { repeat(times) { press("Done, next") } }

    @Test
    fun `one step after the other starts the air, and stops it`() = with(cab) {
        at(steps("TH-02", "start")) {
            // TH-02 has one pressure and no temperature shown: seven steps.
            onNodeWithText("Start air 1\u00A0/\u00A07").assertExists()
            picture("steps-start")
            done(6)
            assertEquals(emptyList(), kinds(), "nothing is recorded before the last step")
            press("Done")
            assertIs<StopNow.Running>(now("TH-02"))
        }
        at(steps("TH-02", "shut-down")) {
            done(4)
            picture("steps-blow-down")
            onNodeWithText("at most 2:00").assertExists()
            press("Done")
            assertIs<StopNow.Stopped>(now("TH-02"))
        }
    }

    @Test
    fun `how a step is done is told for the first three times`() = with(cab) {
        val hint = "Wait for it: turned over sooner, a cold engine only smokes."
        at(steps("TH-02", "start")) {
            picture("steps-first-time")
            onNodeWithText(hint).assertExists()
        }
        for (day in 3L downTo 1L) {
            says(day, "TH-05", "start-air", "{}")
            says(day, "TH-05", "stop-air", "{}")
        }
        at(steps("TH-02", "start")) { onNodeWithText(hint).assertDoesNotExist() }
        at(steps("TH-02", "start"), signer = Signer(person("Bettina Quaye"))) { onNodeWithText(hint).assertExists() }
    }

    @Test
    fun `in the largest text the step stands first, and is done only when its caution was seen`() = with(cab) {
        at(steps("TH-02", "start"), wide = 320, high = 616, text = 2f) {
            onNodeWithText("Preheat lamp").assertIsDisplayed()
            onNodeWithText("out").assertIsDisplayed()
            val caution = onNodeWithText("Never starting fluid", substring = true)
            val opening = onNodeWithText("The maker's manual", substring = true)
            assertTrue(caution.fetchSemanticsNode().positionInRoot.y < opening.fetchSemanticsNode().positionInRoot.y, "the caution comes before what stands over all steps")
            press("1 more below")
            onNodeWithText("Start air 1\u00A0/\u00A07").assertExists()
            val seen = caution.fetchSemanticsNode()
            assertEquals(seen.size.height.toFloat(), seen.boundsInRoot.height, "all of the caution is in the frame")
            done(1)
            onNodeWithText("Start air 2\u00A0/\u00A07").assertExists()
        }
    }

    @Test
    fun `the steps are those the unit has, by its own valves`() = with(cab) {
        at(steps("TH-01", "start")) {
            onNodeWithText("Start air 1\u00A0/\u00A010").assertExists()
            done(2)
            onNodeWithText("gauge port").assertExists()
            picture("steps-valves")
            done(1)
            onNodeWithText("Selector on low").assertExists()
        }
    }

    @Test
    fun `not so says what it locks, is recorded, and locks it`() = with(cab) {
        at(steps("TH-01", "start")) {
            done(3)
            press("Not so: stop here")
            onNodeWithText("I stop here").assertIsNotEnabled()
            press("stuck")
            onNodeWithText("This locks AIR until the shop certifies it.").assertExists()
            onNodeWithText("Call the shop and tell it.", substring = true).assertExists()
            picture("steps-not-so")
            press("I stop here")
            assertEquals(listOf("steps-done"), kinds(), "the steps are kept, and they are no start")
            assertEquals(StopNow.Unknown as StopNow, now("TH-01"))
            assertEquals(LockState.LOCKED, air("TH-01").state)
            onNodeWithText("Kept as far as it went. Locked: AIR.", substring = true).assertExists()
            picture("steps-locked")
        }
        at(steps("TH-01", "start")) {
            onNodeWithText("Selector on low: stuck", substring = true).assertExists()
            onNodeWithText("I use it all the same").assertIsNotEnabled()
        }
    }

    @Test
    fun `a cut hose is named by the unit's own names before it is kept, and alone is locked`() = with(cab) {
        at(steps("TH-01", "use-air")) {
            press("Not so: stop here")
            press("cut")
            onNodeWithText("I stop here").assertIsNotEnabled()
            onNodeWithText("Say which one it is.").assertExists()
            find("H-12")
            picture("steps-which-hose")
            press("I stop here")
            val road = phone.unit(unit("TH-01"), person()).roadAir
            assertEquals(listOf("H-12"), road.outlets.map { (it.part as LockPart.Outlet).v1 })
            assertEquals(LockState.NO_LOCK_ON_RECORD, road.air.state)
        }
    }

    @Test
    fun `what only has to wait goes on, and the record says both`() = with(cab) {
        at(steps("TH-02", "start")) {
            onNodeWithText("Preheat lamp").assertExists()
            press("Not so: stop here")
            press("lamp stays on")
            onNodeWithText("Wait until it is so. This locks nothing.").assertExists()
            press("It is so now")
            onNodeWithText("Start air 1\u00A0/\u00A07").assertExists()
            // It says by whom, and what was not so.
            onNode(hasText("Said ", substring = true) and hasText(" by Amos Tillery: lamp stays on", substring = true)).assertExists()
            done(1)
            onNodeWithText("Start air 2\u00A0/\u00A07").assertExists()
            // Whoever leaves has said so much: it is kept, and is no start.
            press("Back")
            assertEquals(listOf("steps-done"), kinds())
            assertEquals(LockState.NO_LOCK_ON_RECORD, air("TH-02").state)
        }
    }

    @Test
    fun `who comes after somebody reads what was said, and by whom`() = with(cab) {
        at(steps("TH-02", "start")) {
            done(2)
            onNodeWithText("Said ", substring = true).assertDoesNotExist()
        }
        at(steps("TH-02", "start"), signer = Signer(person("Bettina Quaye"))) {
            onNodeWithText("Start air 1\u00A0/\u00A07").assertExists()
            onNode(hasText("Said ", substring = true) and hasText(" by Amos Tillery", substring = true)).assertExists()
            picture("steps-said-before")
            // Her own word is a step of her own.
            done(1)
            onNodeWithText("Start air 2\u00A0/\u00A07").assertExists()
            done(1)
            onNodeWithText("Said ", substring = true).assertDoesNotExist()
        }
    }

    @Test
    fun `what was not so and gone on from is listed at the last step`() = with(cab) {
        val (unit, person) = unit("TH-02") to person()
        val all = phone.procedure(unit, "use-air", person).steps
        val marked = all.dropLast(1).first { step -> step.notSo.any { it.means == NotSo.Mark } }
        val word = marked.notSo.first { it.means == NotSo.Mark }.word
        for (step in all.dropLast(1)) phone.sayStep(unit, "use-air", person, StepSaid(step.id, "2026-11-02T07:02:00-07:00", word.takeIf { step == marked }, null), null)
        at(steps("TH-02", "use-air")) {
            onNodeWithText("Not so, and gone on from").performScrollTo().assertIsDisplayed()
            onNodeWithText(text("en", TextAsk("step-${marked.id}", emptyMap())) + ": " + text("en", TextAsk("not-so-$word", emptyMap()))).assertExists()
            picture("steps-skipped")
        }
    }

    @Test
    fun `a figure goes along with its step`() = with(cab) {
        at(steps("TH-02", "start")) {
            done(5)
            onNodeWithText("Watch it rise").assertExists()
            press("Give the figure")
            for (digit in "118") find(digit.toString())
            onNodeWithText("118 psi").assertExists()
            picture("steps-figure")
            done(1)
            press("Done")
            assertEquals(listOf("start-air"), kinds())
        }
    }

    @Test
    fun `leaving a site says what keeps one from driving off`() = with(cab) {
        at(steps("TH-02", "leave-site")) {
            press("Not so: stop here")
            press("PTO still in")
            onNodeWithText("Do not drive off until it is done.").assertExists()
            press("It is so after all")
            done(5)
            press("Done")
            assertEquals(listOf("steps-done"), kinds())
        }
    }

    @Test
    fun `with the air locked it opens at the lock, and asks why`() = with(cab) {
        val draft = walk("TH-02")
        phone.answerLine(draft, Answer(item = "oil-look", answer = AnswerKind.DEFECT, word = "milky"))
        phone.signPreTrip(draft, Signed(pinGiven = false), true, null)
        at(steps("TH-02", "start")) {
            picture("steps-at-the-lock")
            onNodeWithText("I use it all the same").assertIsNotEnabled()
            onNodeWithContentDescription("Why is it used although it is locked?").performTextInput("said \"go\" by the boss")
            settled()
            press("I use it all the same")
            done(6)
            press("Done")
            assertIs<StopNow.Running>(now("TH-02"))
        }
        at(steps("TH-02", "shut-down")) { onNodeWithText("Stop air 1\u00A0/\u00A05").assertExists() }
    }

    @Test
    fun `what was confirmed outlives the app, and is gone on with`() = with(cab) {
        at(steps("TH-02", "start")) { done(3) }
        assertEquals(emptyList(), kinds(), "the app was ended: nothing is recorded yet")
        at(Place.Unit(unit("TH-02"))) {
            find("Go on: Start air")
            onNodeWithText("Start air 4\u00A0/\u00A07").assertExists()
            done(3)
            press("Done")
            assertEquals(listOf("start-air"), kinds())
            assertEquals(emptyList(), phone.drafts().drafts)
            assertIs<StopNow.Running>(now("TH-02"))
        }
    }

    @Test
    fun `a step's figure is held against its rule before it is kept`() = with(cab) {
        at(steps("TH-01", "use-air")) {
            while (onAllNodes(hasText("Blow clean", substring = true)).fetchSemanticsNodes().isEmpty()) done(1)
            press("Give the figure")
            for (digit in "30") find(digit.toString())
            onNodeWithText("breaks the rule, less than 30 psi: United States (29 CFR, read 2026)").assertExists()
            picture("steps-figure-rule")
        }
    }

    @Test
    fun `arriving asks how dusty the site is, and keeps it with the last step`() = with(cab) {
        val of = phone.procedure(unit("TH-01"), "arrival", person()).steps.size
        at(steps("TH-01", "arrival"), high = 1_600) {
            onNodeWithText("How dusty is the site?").assertDoesNotExist()
            done(of - 1)
            onNodeWithText("How dusty is the site?").assertExists()
            press("very dusty")
            press("dusty")
            picture("steps-site")
            assertEquals(emptyList(), kinds(), "a slip of the thumb weighs no hour")
            press("Done")
            assertEquals(listOf("site-condition", "steps-done"), kinds().sorted())
            assertEquals(SiteDust.DUSTY, phone.procedure(unit("TH-01"), "arrival", person()).site?.said?.dust)
        }
    }

    @Test
    fun `the same in Spanish`() = with(cab) {
        at(steps("TH-01", "use-air"), OwnWay("es")) {
            picture("steps-es")
            press("No es así: parar aquí")
            picture("steps-not-so-es")
        }
    }
}
