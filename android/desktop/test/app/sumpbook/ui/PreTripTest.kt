package app.sumpbook.ui

import androidx.compose.ui.test.ExperimentalTestApi
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

@OptIn(ExperimentalTestApi::class)
class PreTripTest : PreTrip() {
    @Test
    fun `the same with larger text`() = walked(1.3f) { screen, driver ->
        driver.preTrip(screen, null)
        threeFigures(driver)
        assertTrue(driver.turns <= 15, "${driver.turns} page turns")
        assertEquals(WALKED + 2u, phone.whereItIs(0u).counts.onPhone)
    }

    @Test
    fun `the same with the largest text`() = walked(2f) { screen, driver ->
        driver.preTrip(screen, "walk-2.0")
        threeFigures(driver)
        assertTrue(driver.turns <= 40, "${driver.turns} page turns")
        assertEquals(WALKED + 2u, phone.whereItIs(0u).counts.onPhone)
    }
}
