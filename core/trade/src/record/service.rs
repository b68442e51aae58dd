//! Services, visits, parts, and sets that move.

use chrono::NaiveDate;

use super::{DefectName, Digest};
use crate::clock::TaskId;
use crate::fluid::OilFamily;
use crate::quantity::day;
use crate::{EntryId, Figure, SetId, Tenths};

choice! {
    /// Why oil was changed out of its turn.
    pub enum OilReason {
        /// Families were mixed.
        #[n(0)] Mixed,
        /// Water in it.
        #[n(1)] Milky,
        /// It was burnt.
        #[n(2)] Burnt,
        /// A new fill for another reason.
        #[n(3)] NewFill,
    }
}

choice! {
    /// What became of a line of the list before a return to service.
    pub enum ReturnHow {
        /// It was done.
        #[n(0)] Done,
        /// It was left out, by name and for a reason.
        #[n(1)] Waived,
    }
}

record! {
    /// Oil that went in at a service.
    pub struct OilPut {
        /// How much.
        #[n(0)] pub volume: Option<Figure>,
        /// Its family.
        #[n(1)] pub family: Option<OilFamily>,
        /// Its grade.
        #[n(2)] pub grade: Option<String>,
    }

    /// Tasks were done. Hours of the meter stand in the entry.
    pub struct ServiceDone {
        /// Which tasks; a visit is only a bundle of them.
        #[n(0)] pub tasks: Vec<TaskId>,
        /// Oil, when it was changed.
        #[n(1)] pub oil: Option<OilPut>,
        /// Parts used, by the unit's own numbers.
        #[cbor(default)]
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[n(2)] pub parts: Vec<String>,
        /// Why the oil was changed out of its turn.
        #[n(3)] pub oil_reason: Option<OilReason>,
        /// A photo of the invoice or the work.
        #[n(4)] pub photo: Option<Digest>,
    }

    /// The shop plans a visit.
    pub struct VisitPlan {
        /// Tasks to be done in it.
        #[n(0)] pub tasks: Vec<TaskId>,
        /// On which day of the yard.
        #[cbor(with = "day")]
        #[n(1)] pub day: NaiveDate,
        /// In which bay, by whom.
        #[n(2)] pub where_and_who: Option<String>,
        /// Defects to be repaired in it.
        #[cbor(default, skip_if = "Vec::is_empty")]
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[n(3)] pub defects: Vec<DefectName>,
    }

    /// Work waits for a part. It is still due.
    pub struct WaitingForPart {
        /// For which task, when it is a task.
        #[n(0)] pub task: Option<TaskId>,
        /// Which part.
        #[n(1)] pub part: String,
        /// Promised for this day.
        #[cbor(with = "day::option", has_nil)]
        #[n(2)] pub promised: Option<NaiveDate>,
        /// The wait is over.
        #[n(3)] pub over: bool,
        /// For which defect, when it is one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(4)] pub defect: Option<DefectName>,
    }

    /// Put away: the compressor set, on whatever truck it stands. Its hours then stand in the entry.
    pub struct LayUp {
        /// What was done before.
        #[n(0)] pub done: Option<String>,
    }

    /// One line of the list before a return to service, as somebody answered it by name.
    pub struct ReturnLine {
        /// The line's id in the list.
        #[n(0)] pub line: String,
        /// Done, or waived.
        #[n(1)] pub how: ReturnHow,
        /// Why it was waived; beside what was done it may be left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(2)] pub reason: Option<String>,
    }

    /// Brought back, or on the way there: lines of the list, done or waived by the entry's person. The set is back
    /// when every line has such an answer; words alone bring nothing back.
    pub struct ReturnToService {
        /// What was done before.
        #[n(0)] pub done: Option<String>,
        /// The lay-up whose list this answers; the newest before it when none is named.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(1)] pub lay_up: Option<EntryId>,
        /// Edition of the list.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(2)] pub edition: Option<u32>,
        /// Lines that were answered.
        #[cbor(default, skip_if = "Vec::is_empty")]
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[n(3)] pub lines: Vec<ReturnLine>,
    }

    /// A set was fitted to this truck, as somebody at the truck saw it. Which books a set's entries belong to is
    /// ruled by the shop's registration of the set ([`SetRegistered`](super::SetRegistered)) and by nothing else:
    /// where the two disagree the shop is asked.
    pub struct SetFitted {
        /// Which set.
        #[n(0)] pub set: SetId,
        /// Its hours then, as they were read. No reading of a meter's history: which set's it would be is just what
        /// may be in question.
        #[n(1)] pub hours: Option<Tenths>,
    }

    /// A set was taken off this truck, as somebody at the truck saw it. The registration rules, as for
    /// [`SetFitted`].
    pub struct SetRemoved {
        /// Which set.
        #[n(0)] pub set: SetId,
    }
}
