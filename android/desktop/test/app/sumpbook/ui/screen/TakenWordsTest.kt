package app.sumpbook.ui.screen

import app.sumpbook.core.FileTaken
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals

/** What must not go unsaid of a file that was taken in. */
class TakenWordsTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    private fun words(language: String, forged: UInt, placedAgain: UInt) = Reader(cab.phone, cab.phone.fleet(), OwnWay(language), 0).takenWords(
        FileTaken(
            admitted = 37u, known = 0u, waiting = 0u, refused = forged, forged = forged, placedAgain = placedAgain, endedAfter = null, endedOf = null,
            receipt = false, twoShops = false, shopSetBack = false,
        ),
    )

    @Test
    fun `signatures that do not hold, and a copy of this phone, are told in both languages`() {
        with(words("en", 3u, 2u)) {
            assertEquals("3 entries carry a signature that does not hold. They were not taken in; the other 37 were. Tell the shop whose file it was.", forged)
            assertEquals(true, placedAgain?.contains("Tell the shop that this phone was copied."))
        }
        assertEquals(true, words("es", 1u, 0u).forged?.startsWith("1 registro trae una firma que no vale."))
        with(words("en", 0u, 0u)) { assertEquals(null to null, forged to placedAgain) }
    }
}
