package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.FlowRow
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.PersonHere
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.desk.stamp
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/** Whose name stands under the next entries. */
@Composable
fun WhoSigns() {
    val shown by seen { phone.about().device to phone.fleet().people.filter { !it.gone } }
    var learner by remember { mutableStateOf<PersonHere?>(null) }
    var notListed by remember { mutableStateOf(false) }
    val told = shown ?: return
    val back = LocalBackStack.current
    val desk = LocalDesk.current
    val (device, people) = (told as? Told.Got)?.it ?: ("" to emptyList())
    val learning = learner
    ScreenFrame(
        header = {
            FlowRow(Modifier.fillMaxWidth().heightIn(56.dp), Arrangement.SpaceBetween, Arrangement.spacedBy(4.dp), Alignment.CenterVertically) {
                Column {
                    val title = if (learning == null) stringResource(R.string.who_signs) else stringResource(R.string.learning_with, learning.name)
                    Text(title, Modifier.semantics { heading() }, style = LocalType.current.title)
                    Text(device, style = LocalType.current.help, color = LocalTokens.current.soft)
                }
                OtherLanguage()
            }
        },
        strips = {
            back.said?.let { Strip(it) }
            if (told is Told.Refused) Strip(sentence(told.why))
            if (told is Told.Got && people.isEmpty()) Strip(stringResource(R.string.no_names_yet))
            if (notListed) Strip(stringResource(R.string.not_on_the_list_then), heavy = true)
            Strip(stringResource(R.string.pin_is_asked_at_signature))
        },
        secondary = {
            if (learning != null) SecondaryButton(stringResource(R.string.back)) { learner = null }
            SecondaryButton(stringResource(R.string.not_on_the_list)) { notListed = true }
        },
    ) {
        for (person in if (learning == null) people else trainersOf(people)) {
            val label = if (person.learning) stringResource(R.string.name_learning, person.name) else person.name
            Line(label) {
                when {
                    learning != null -> back.signsNow(Signer(learning.id, trainer = person.id), desk.handset.stamp())
                    person.learning -> learner = person
                    else -> back.signsNow(Signer(person.id), desk.handset.stamp())
                }
            }
        }
    }
}

/** Whom somebody may learn with. */
fun trainersOf(people: List<PersonHere>): List<PersonHere> = people.filter { it.mayTrain }
