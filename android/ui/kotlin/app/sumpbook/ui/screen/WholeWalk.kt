package app.sumpbook.ui.screen

import app.sumpbook.core.StopScreen
import app.sumpbook.ui.desk.Reader

/** Every stop of a walk in its order, as the core has it now. */
fun Reader.wholeWalk(draft: String): List<StopScreen> =
    phone.signing(draft, null).stops.mapNotNull { phone.stop(draft, it.label, emptyList(), 0u) }
