//! A defect as a row.

use sumpbook_daybook::screen::{CertificateRow, DefectNow, DefectRow, SaidRow};
use sumpbook_trade::defect::{LockPart, Verdict};
use sumpbook_trade::record::Digest;
use sumpbook_trade::{EntryId, Stamp};

/// One defect.
#[uniffi::remote(Record)]
pub struct DefectRow {
    /// Stable id of the row: entry, item and place of the first finding.
    pub id: String,
    /// The checklist's item, for the text `item-...`.
    pub item: String,
    /// Its place.
    pub place: Option<String>,
    /// What it locks; empty for a note.
    pub locks: Vec<LockPart>,
    /// Since when.
    pub since: Stamp,
    /// Where it stands.
    pub state: DefectNow,
    /// Everything that was said, in order of time: two answers of one day are both here.
    pub said: Vec<SaidRow>,
    /// The shop's certificate.
    pub certificate: Option<CertificateRow>,
}

/// One person's answer.
#[uniffi::remote(Record)]
pub struct SaidRow {
    /// Who; none when nobody here knows the name.
    pub by: Option<String>,
    /// When.
    pub at: Stamp,
    /// It was OK.
    pub ok: bool,
    /// Key of the word chosen, for the text `choice-...`.
    pub word: Option<String>,
    /// The person's own words.
    pub words: Option<String>,
    /// Photos of the defect by their names, where they were asked for; this phone may not hold them.
    pub photos: Vec<Digest>,
    /// The sound of the defect by its name, where it was asked for; this phone may not hold it.
    pub sound: Option<Digest>,
}

/// A certificate.
#[uniffi::remote(Record)]
pub struct CertificateRow {
    /// Its entry: what a review names.
    pub id: EntryId,
    /// Repaired, or repair not needed.
    pub verdict: Verdict,
    /// Who signed.
    pub by: Option<String>,
    /// When.
    pub at: Stamp,
    /// In the shop's words.
    pub words: String,
    /// Known by its slip's code only: the certificate itself has not come, and no review can name it yet.
    pub by_slip: bool,
}

/// Where a defect stands.
#[uniffi::remote(Enum)]
pub enum DefectNow {
    /// No certificate.
    Open,
    /// Certified; the next driver has not reviewed that.
    AwaitingReview,
    /// Over.
    Closed,
}
