package app.sumpbook

import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.test.core.app.ActivityScenario
import app.sumpbook.core.Phone
import app.sumpbook.ui.HubYard
import org.junit.After
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.annotation.Config

@RunWith(RobolectricTestRunner::class)
@Config(qualifiers = "+es")
class ActivityTest {
    @get:Rule
    val rule = createEmptyComposeRule()
    private val app = RuntimeEnvironment.getApplication() as YardApp

    @After
    fun clear() = app.book.close()

    private fun shows(words: String) = rule.waitUntil("it shows $words", 20_000) { rule.onAllNodes(hasText(words)).fetchSemanticsNodes().isNotEmpty() }

    @Test
    fun aPhoneThatIsNotSetUpAsksForTheShopsCode() {
        ActivityScenario.launch(MainActivity::class.java).use {
            shows("Agregar este teléfono")
        }
    }

    @Test
    fun theWindowOpensTheRealBookAndKeepsItsPlaceWhenItIsMadeAnew() {
        HubYard().use { yard ->
            app.book.enrol { folder, keeper -> Phone.enrolByFile(folder, yard.invitation(), "yard phone 3", keeper, null) }
            ActivityScenario.launch(MainActivity::class.java).use { window ->
                shows("Amos Tillery")
                rule.onNodeWithText("¿Quién firma?").assertIsDisplayed()
                rule.onNodeWithText("Amos Tillery").performClick()
                shows("Empezar inspección, TH-01")
                window.recreate()
                shows("Empezar inspección, TH-01")
            }
        }
    }
}
