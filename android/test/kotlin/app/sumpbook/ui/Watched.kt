package app.sumpbook.ui

import app.sumpbook.core.Meter
import app.sumpbook.core.Phone
import app.sumpbook.core.PhoneInterface
import app.sumpbook.core.Signed
import java.util.concurrent.ConcurrentHashMap

/** A phone of which the calls of a walk are watched: on which thread each was made. */
class Watched(private val of: Phone) : PhoneInterface by of {
    /** Calls by thread. */
    val on = ConcurrentHashMap<Thread, Int>()

    private fun <T> seen(call: () -> T): T {
        on.merge(Thread.currentThread(), 1, Int::plus)
        return call()
    }

    override fun fleet() = seen { of.fleet() }
    override fun today(person: String) = seen { of.today(person) }
    override fun unit(unit: String, person: String) = seen { of.unit(unit, person) }
    override fun beginPreTrip(unit: String, person: String, walk: String?) = seen { of.beginPreTrip(unit, person, walk) }
    override fun lastReport(unit: String, seen: List<String>) = seen { of.lastReport(unit, seen) }
    override fun reachStop(draft: String, stop: String) = seen { of.reachStop(draft, stop) }
    override fun stop(draft: String, stop: String?, seen: List<String>, openMs: UInt) = seen { of.stop(draft, stop, seen, openMs) }
    override fun okTogether(draft: String, stop: String, onScreenMs: UInt) = seen { of.okTogether(draft, stop, onScreenMs) }
    override fun hours(unit: String, typed: Long?, meter: Meter) = seen { of.hours(unit, typed, meter) }
    override fun givePin(person: String, pin: String) = seen { of.givePin(person, pin) }
    override fun signPreTrip(draft: String, signed: Signed, part: Boolean, walkedMs: ULong?) = seen { of.signPreTrip(draft, signed, part, walkedMs) }
}
