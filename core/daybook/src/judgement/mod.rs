//! Judgement: does an admitted entry count, or is it set aside and why.
//!
//! The same pure function on phone and hub. Admission is for ever; judgement may change when a decision or
//! a revocation comes, and what is set aside stays in its book, is shown, and a person can settle it.

use serde::{Deserialize, Serialize};
use sumpbook_trade::record::Verdict;
use sumpbook_trade::{Entry, Fact, FactKind};

use crate::book::BookId;
use crate::gate::KeyId;

/// What becomes of an entry. Numbers are the projection's.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Judged {
    /// It counts.
    Counts,
    /// Void by a correction; it stays visible.
    Void,
    /// The shop left it out by name.
    LeftOut,
    /// Its device had been stopped, and the shop had not seen it before that.
    DeviceStopped,
    /// Only the shop may write this.
    ShopOnly,
    /// It speaks of another unit than the book it stands in.
    OtherUnit,
    /// Another content stands under the same id.
    TwoContents,
    /// Made by a newer version of this program.
    NewerVersion,
    /// Its content is not that of an entry.
    Unreadable,
}

/// Every judgement with its number.
const NUMBERED: [(Judged, i64); 9] = [
    (Judged::Counts, 0),
    (Judged::Void, 1),
    (Judged::LeftOut, 2),
    (Judged::DeviceStopped, 3),
    (Judged::ShopOnly, 4),
    (Judged::OtherUnit, 5),
    (Judged::TwoContents, 6),
    (Judged::NewerVersion, 7),
    (Judged::Unreadable, 8),
];

impl Judged {
    /// Its number in the projection.
    pub fn number(self) -> i64 {
        NUMBERED.iter().find(|(j, _)| *j == self).map_or(8, |(_, n)| *n)
    }

    /// From its number.
    pub fn from_number(number: i64) -> Judged {
        NUMBERED.iter().find(|(_, n)| *n == number).map_or(Judged::Unreadable, |(j, _)| *j)
    }

    /// Whether it waits for a person.
    pub fn is_aside(self) -> bool {
        !matches!(self, Judged::Counts | Judged::Void | Judged::LeftOut)
    }
}

/// What judgement needs to know beside the entry itself.
#[derive(Clone, Copy, Debug)]
pub struct Circumstances {
    /// The book it stands in.
    pub book: BookId,
    /// Who signed it.
    pub signer: KeyId,
    /// The shop's own key.
    pub shop: KeyId,
    /// The id that was signed with its place.
    pub id: sumpbook_trade::EntryId,
    /// Another payload stands under the same id.
    pub two_contents: bool,
    /// The signer was revoked and the revocation's heads do not reach this entry.
    pub beyond_revocation: bool,
    /// An entry of the same unit voids it.
    pub void: bool,
    /// The shop's standing decision, when there is one.
    pub decided: Option<Verdict>,
    /// Accepted by name although its device was stopped.
    pub accepted_late: bool,
}

/// Judges one entry; `None` when its payload could not be read as one.
pub fn judge(entry: Option<&Entry>, about: &Circumstances) -> Judged {
    let Some(entry) = entry else { return Judged::Unreadable };
    if entry.id != about.id {
        return Judged::Unreadable;
    }
    if about.two_contents {
        return Judged::TwoContents;
    }
    let kind = entry.fact.kind();
    if is_shop_only(kind) && about.signer != about.shop {
        return Judged::ShopOnly;
    }
    if about.beyond_revocation {
        // Of a stopped device's entry the whole is decided about, and not a figure in it.
        match about.decided {
            Some(Verdict::DoNotUse) => return Judged::LeftOut,
            Some(Verdict::Use) => {}
            _ if about.accepted_late => {}
            _ => return Judged::DeviceStopped,
        }
    }
    let book_truck = match about.book {
        BookId::Fleet => None,
        BookId::Truck { truck, .. } => Some(truck),
    };
    if entry.unit != book_truck && about.decided != Some(Verdict::Use) {
        return if about.decided == Some(Verdict::DoNotUse) { Judged::LeftOut } else { Judged::OtherUnit };
    }
    if matches!(entry.fact, Fact::Newer { .. }) {
        return Judged::NewerVersion;
    }
    if about.void {
        return Judged::Void;
    }
    // A figure that does not count leaves the rest of its entry standing: readings are settled by R3.
    if about.decided == Some(Verdict::DoNotUse) && !carries_a_reading(entry) {
        return Judged::LeftOut;
    }
    Judged::Counts
}

/// Kinds that only the shop's key may write.
pub fn is_shop_only(kind: FactKind) -> bool {
    use FactKind as K;
    matches!(
        kind,
        K::Certificate
            | K::FleetNamed
            | K::TruckRegistered
            | K::SetRegistered
            | K::ProgrammeSet
            | K::PersonSet
            | K::ShopSays
            | K::RuleNumbers
            | K::SeveritiesSet
            | K::CampaignSet
            | K::DeviceEnrolled
            | K::DeviceRevoked
            | K::DayStatusSet
            | K::Decision
            | K::LateAccepted
            | K::SheetClosed
            | K::VisitPlan
            | K::PaperPage
    )
}

/// Whether a decision about this entry is about the figure in it. An exchange or an estimate that does not count is
/// none at all, and so is a service.
fn carries_a_reading(entry: &Entry) -> bool {
    match entry.fact.kind() {
        FactKind::HourReading => true,
        FactKind::ServiceDone | FactKind::MeterExchange | FactKind::HoursEstimate => false,
        _ => entry.hours.is_some(),
    }
}

/// Of decisions none of which has seen another, the stricter stands.
pub fn stricter(a: Verdict, b: Verdict) -> Verdict {
    let rank = |v: Verdict| match v {
        Verdict::DoNotUse => 0,
        Verdict::SameService => 1,
        Verdict::ReadingStands => 2,
        Verdict::Use => 3,
    };
    if rank(a) <= rank(b) { a } else { b }
}
