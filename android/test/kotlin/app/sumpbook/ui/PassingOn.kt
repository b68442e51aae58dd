package app.sumpbook.ui

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import app.sumpbook.core.NoteKind
import app.sumpbook.core.PhoneException
import app.sumpbook.core.Said
import app.sumpbook.core.ShownNote
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.fileSize
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test

/** Where entries stand, and handing over by file: the same on each platform. */
@OptIn(ExperimentalTestApi::class)
abstract class PassingOn {
    private val yard = HubYard()

    @After
    fun clear() = yard.close()

    private fun HeldPhone.record(kind: String) = phone.recordLine("""{"unit":"TH-01","person":"Amos Tillery","kind":"$kind","body":{}}""")

    @Test
    fun whatIsOnlyHereGoesWhenTheShopIsTriedAndStaysWhenItIsNot() = onPhone {
        yard.begin()
        val held = HeldPhone.letIn(yard, "Amos Tillery") { Place.WhereItIs() }
        held.record("start-air")
        held.record("stop-air")
        held.show(this)
        shows("On this phone: 2")
        onNodeWithText("Try the shop now").performClick()
        shows("2 entries reached the shop.")
        shows("On this phone: 0")
        yard.end()
        held.record("start-air")
        shows("On this phone: 1")
        onNodeWithText("Try the shop now").performClick()
        shows("No signal since ")
        shows(", no signal")
        shows("On this phone: 1")
        shows("Again at")
        held.phone.shutdown()
    }

    @Test
    fun aTryThatNobodySawIsToldWithItsCause() = onPhone {
        yard.begin()
        val held = HeldPhone.letIn(yard, "Amos Tillery") { Place.WhereItIs() }
        held.record("start-air")
        yard.end()
        assertThrows(PhoneException.Online::class.java) { held.phone.exchangeOnce(20_000u) }
        held.show(this)
        shows("Tried ")
        shows(", no signal")
        yard.begin()
        held.phone.exchangeOnce(20_000u)
        waitUntil("a try that came through is no try in vain", 20_000) { waitForIdle(); onAllNodes(hasText(", no signal", substring = true)).fetchSemanticsNodes().isEmpty() }
        held.phone.shutdown()
    }

    @Test
    fun aLockSaysThatTheShopDoesNotKnowUntilItDoes() = onPhone {
        val held = HeldPhone.invited(yard, "Amos Tillery") { Place.Unit(it.unitAt("TH-02")) }
        held.phone.recordLine("""{"unit":"TH-02","person":"Amos Tillery","kind":"pre-trip-section","body":{"walk":"${held.phone.newId()}","edition":1,"answers":[{"item":"mirrors","place":"left","answer":"defect","word":"no-view"}],"complete":false}}""")
        held.show(this)
        val here = "ROAD locked on this phone; the shop does not know yet. Call."
        shows(here)
        held.phone.takeIn(yard.takeIn(held.phone.handOver().bytes, held.phone.about().key))
        waitUntil("the shop knows", 20_000) { waitForIdle(); onAllNodes(hasText(here)).fetchSemanticsNodes().isEmpty() }
        shows("ROAD: LOCKED")
        held.phone.shutdown()
    }

    @Test
    fun aFileCarriesItToTheShopAndTheAnswerBack() = onPhone {
        val held = HeldPhone.invited(yard, "Amos Tillery") { Place.HandOver() }
        val photo = held.phone.keepPhoto(aPhoto())
        held.phone.keepNote(Said(held.phone.unitAt("TH-01"), held.signer.person), ShownNote(NoteKind.FAULT, "E 12", false, photo = photo))
        held.show(this)
        shows("1 entry goes with the file")
        shows("1 photo or sound stays on this phone until it reaches the shop.")
        onNodeWithText("Make the file").performClick()
        waitUntil("the file is given", 20_000) { held.handed.isNotEmpty() }
        shows("The file is made: ${fileSize(held.handed.single().second.size)}. Nothing is sent")
        val (name, bytes) = held.handed.single()
        assertTrue(name, Regex("""yard-phone-3-\d{4}-\d\d-\d\d-\d{4}\.sumpbook""").matches(name))
        held.comesIn.value = yard.takeIn(bytes, held.phone.about().key)
        shows("Another app gave a file.")
        onNodeWithText("Take in this file").performClick()
        shows("The shop's receipt came with it.")
        assertEquals(0u, held.phone.whereItIs(0u).counts.onPhone)
        assertEquals("a file is taken in once", null, held.comesIn.value)
        held.phone.shutdown()
    }

    @Test
    fun withNothingNewAFileIsMadeOnlyWhenSomebodySaysSo() = onPhone {
        val held = HeldPhone.invited(yard, "Amos Tillery") { Place.HandOver() }
        held.show(this)
        shows("All of it is at the shop. Make one all the same?")
        onNodeWithText("Make one all the same").performClick()
        shows("Make the file")
        assertEquals("nothing was made by the first press", 0, held.handed.size)
        onNodeWithText("Make the file").performClick()
        waitUntil("the file is given", 20_000) { held.handed.size == 1 }
        held.phone.shutdown()
    }

    @Test
    fun whatIsNoFileOfOursIsRefusedInWordsAndChangesNothing() = onPhone(language = "es") {
        val held = HeldPhone.invited(yard, "Amos Tillery") { Place.HandOver() }
        held.settled.value = held.settled.value.copy(way = held.settled.value.way.copy(language = "es"))
        held.comesIn.value = byteArrayOf(1, 2, 3)
        val before = held.phone.whereItIs(7u).counts
        held.show(this)
        shows("Otra aplicación dio un archivo.")
        onNodeWithText("Recibir este archivo").performClick()
        shows("Ese archivo no es de Sumpbook.")
        assertEquals(before, held.phone.whereItIs(7u).counts)
        onNodeWithText("Dejarlo").performClick()
        shows("Hacerlo de todos modos")
        held.phone.shutdown()
    }
}
