package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.Fluid
import app.sumpbook.core.Mix
import app.sumpbook.core.TopUpSaid
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.control.WordsField
import app.sumpbook.ui.desk.Act
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer

/**
 * What the drum's label says, read before the cap. Nothing is chosen beforehand: the unit's own oil is one tap away, and
 * another one is said by family and grade.
 *
 * @param scan reads the label; none where there are no pictures
 */
@Composable
fun ColumnScope.Drum(view: TopUpView, scan: Scan?, say: (TopUpSaid) -> Unit) {
    var other by rememberSaveable { mutableStateOf(false) }
    var grade by rememberSaveable { mutableStateOf(view.record.drumGrade.orEmpty()) }
    val oil = view.record.oil ?: return
    val own = view.own
    val same = view.record.mix == Mix.SAME
    // What the camera read is seen beside the chips: they say only whether it is the unit's own. Two oils that may not
    // meet stand above already.
    if (view.record.drumScanned && !view.record.mayNotPour) Line(stringResource(R.string.drum_oil), said = view.drum)
    if (scan != null) SecondaryButton(stringResource(R.string.scan_drum)) { scan.now() }
    Chips {
        if (own != null) {
            Chip(stringResource(R.string.drum_says, own), same) {
                other = false
                say(TopUpSaid(family = oil.family, grade = oil.grade))
            }
        }
        Chip(stringResource(R.string.drum_other), other || (view.record.mix != null && !same)) { other = true }
    }
    if (other) {
        Asked(stringResource(R.string.drum_family), view.families.map { it.first.name to it.second }, view.record.drumFamily?.name) { name ->
            say(TopUpSaid(family = view.families.first { it.first.name == name }.first))
        }
        WordsField(stringResource(R.string.drum_grade), grade) { grade = it }
        SecondaryButton(stringResource(R.string.drum_keep), whyNot = if (grade.isBlank()) stringResource(R.string.drum_grade_first) else null) {
            say(TopUpSaid(grade = grade.trim()))
        }
    }
}

/** The drum's oil may not meet the unit's: both by their names, and what they do when they meet. */
@Composable
fun TwoOils(view: TopUpView) {
    Line(stringResource(R.string.unit_oil), said = view.own ?: stringResource(R.string.oil_not_said))
    Line(stringResource(R.string.drum_oil), said = view.drum, defect = true)
    // That they may not meet is what is brought into sight, and both names with it.
    if (view.record.gels) Strip(stringResource(R.string.oils_gel), heavy = true, calls = false)
}

/** Another fluid: the top-up begun is given up, for nothing was poured, and one of that fluid begins. */
@Composable
fun Fluids(unit: String, draft: String, act: Act, signer: Signer, done: () -> Unit) {
    val back = LocalBackStack.current
    val shown by seen(unit) { Fluid.entries.map { it to fluidWords(it) } }
    (shown as? Told.Got)?.it?.forEach { (fluid, words) ->
        Line(words) {
            act.now({
                phone.beginTopUp(unit, signer.person, fluid).also { phone.dropDraft(draft) }
            }) {
                done()
                back.goInstead(Place.TopUp(unit, it))
            }
        }
    }
}
