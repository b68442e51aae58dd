package app.sumpbook.ui.place

/**
 * Where one can be: one place for each screen, with what it is about. Written and read as one line, so that a phone
 * whose system ended the app opens where it was.
 */
sealed class Place(private vararg val parts: String) {
    /** The line it is written as. */
    fun line(): String = parts.joinToString("|")

    override fun equals(other: Any?): Boolean = other is Place && other.line() == line()

    override fun hashCode(): Int = line().hashCode()

    override fun toString(): String = line()

    /** Who signs. */
    class WhoSigns : Place("who-signs")

    /** Today's units. */
    class Today : Place("today")

    /** A unit that is not one of one's own, by its door number. */
    class AnotherUnit : Place("another-unit")

    /** One unit. */
    class Unit(val unit: String) : Place("unit", unit)

    /** What the last one left, read for a walk that has begun; an empty [draft]: only read. */
    class LastReport(val unit: String, val draft: String) : Place("last-report", unit, draft)

    /** A stop of a walk; an empty [stop]: where the walk stands. */
    class Stop(val unit: String, val draft: String, val stop: String) : Place("stop", unit, draft, stop)

    /** What is wrong with a line of a stop; [figure]: what was measured there, when it is over the limit. */
    class Defect(val unit: String, val draft: String, val stop: String, val line: String, val figure: String = "") :
        Place("defect", unit, draft, stop, line, figure)

    /** What the last report says is not what is seen. */
    class NotWhatISee(val unit: String, val draft: String) : Place("not-what-i-see", unit, draft)

    /** The signature under a walk. */
    class Sign(val unit: String, val draft: String) : Place("sign", unit, draft)

    /** The code of a certificate's slip. */
    class Slip(val unit: String) : Place("slip", unit)

    /** A level of the glass by itself. */
    class Glass(val unit: String) : Place("glass", unit)

    /** A top-up; an empty [draft]: a new one. */
    class TopUp(val unit: String, val draft: String) : Place("top-up", unit, draft)

    /** A procedure step by step: arriving, starting, using and stopping air, leaving. */
    class Steps(val unit: String, val procedure: String) : Place("steps", unit, procedure)

    /** Figures read while the air runs. */
    class Running(val unit: String) : Place("running", unit)

    /** Whether there is air enough for a job. */
    class AirForTheJob(val unit: String) : Place("air-for-the-job", unit)

    /** Display notes; an empty [note]: a new one. */
    class Display(val unit: String, val note: String) : Place("display", unit, note)

    /** Hours by themselves. */
    class Hours(val unit: String) : Place("hours", unit)

    /** The end-of-day report; an empty [draft]: a new one. */
    class EndOfDay(val unit: String, val draft: String) : Place("end-of-day", unit, draft)

    /** A use in spite of a lock, and why. */
    class Used(val unit: String) : Place("used", unit)

    /** What was said of this unit and belongs to another one. */
    class OtherUnit(val unit: String) : Place("other-unit", unit)

    /** It happened. */
    class Happened(val unit: String) : Place("happened", unit)

    /** Where one's entries are. */
    class WhereItIs : Place("where-it-is")

    /** One entry that is set aside. */
    class SetAside(val entry: String) : Place("set-aside", entry)

    /** Handing over by file. */
    class HandOver : Place("hand-over")

    /** The page for an officer. */
    class Roadside(val unit: String) : Place("roadside", unit)

    /** This phone's own way. */
    class Settings : Place("settings")

    /** One's own figures. */
    class OwnFigures : Place("own-figures")

    /** The unit a place is about; none for the places without one. */
    fun unitOf(): String? = when (this) {
        is Unit, is LastReport, is Stop, is Defect, is NotWhatISee, is Sign, is Slip, is Glass, is TopUp, is Steps, is Running, is Display, is Hours,
        is EndOfDay, is Used, is Happened, is Roadside, is AirForTheJob, is OtherUnit,
        -> parts[1]
        else -> null
    }

    companion object {
        /** The place a line was written from; none for a line of another version. */
        fun of(line: String): Place? {
            val all = line.split("|")
            fun part(n: Int) = all.getOrElse(n) { "" }
            return when (all.first()) {
                "who-signs" -> WhoSigns()
                "today" -> Today()
                "another-unit" -> AnotherUnit()
                "unit" -> Unit(part(1))
                "last-report" -> LastReport(part(1), part(2))
                "stop" -> Stop(part(1), part(2), part(3))
                "defect" -> Defect(part(1), part(2), part(3), part(4), part(5))
                "not-what-i-see" -> NotWhatISee(part(1), part(2))
                "sign" -> Sign(part(1), part(2))
                "slip" -> Slip(part(1))
                "glass" -> Glass(part(1))
                "top-up" -> TopUp(part(1), part(2))
                "steps" -> Steps(part(1), part(2))
                "running" -> Running(part(1))
                "air-for-the-job" -> AirForTheJob(part(1))
                "display" -> Display(part(1), part(2))
                "hours" -> Hours(part(1))
                "end-of-day" -> EndOfDay(part(1), part(2))
                "used" -> Used(part(1))
                "other-unit" -> OtherUnit(part(1))
                "happened" -> Happened(part(1))
                "where-it-is" -> WhereItIs()
                "set-aside" -> SetAside(part(1))
                "hand-over" -> HandOver()
                "roadside" -> Roadside(part(1))
                "settings" -> Settings()
                "own-figures" -> OwnFigures()
                else -> null
            }
        }
    }
}
