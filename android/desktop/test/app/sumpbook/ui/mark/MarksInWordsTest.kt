package app.sumpbook.ui.mark

import app.sumpbook.core.LockState
import app.sumpbook.core.Standing
import app.sumpbook.core.StopMark
import app.sumpbook.core.TextAsk
import app.sumpbook.core.keyOfLock
import app.sumpbook.core.keyOfStanding
import app.sumpbook.core.text
import kotlin.test.Test
import kotlin.test.assertEquals

/** A mark never stands alone: every state has words of its own, in both languages. */
class MarksInWordsTest {
    private fun apart(keys: List<String>) {
        for (language in listOf("en", "es")) {
            val words = keys.map { text(language, TextAsk(it, emptyMap())) }
            assertEquals(keys.size, words.toSet().size, "$language: $words")
        }
    }

    @Test
    fun `locks, stops, standings and places have words of their own`() {
        apart(LockState.entries.map(::keyOfLock))
        apart(StopMark.entries.map { "mark-${it.name.lowercase().replace('_', '-')}" })
        apart(Standing.entries.map(::keyOfStanding))
        apart(Where.entries.map { it.key })
    }
}
