//! Rows of what was found and what is locked because of it.

use serde::{Deserialize, Serialize};
use sumpbook_trade::Stamp;

/// One answer about a defect.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct SaidRow {
    /// Who; none when not said.
    pub who: Option<String>,
    /// When.
    pub at: Stamp,
    /// It said OK.
    pub ok: bool,
    /// Their own words.
    pub words: String,
}

/// A defect.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct DefectRow {
    /// Door number.
    pub unit: String,
    /// The checklist's item: a key of the texts.
    pub item: String,
    /// Which of several.
    pub place: Option<String>,
    /// Found at.
    pub since: Stamp,
    /// The answer that found it.
    pub one_answer: SaidRow,
    /// An answer by someone else that differs.
    pub other_answer: Option<SaidRow>,
    /// Further answers.
    pub more_answers: Vec<SaidRow>,
    /// What it locks: `road`, `air`, `outlet/` with its name; empty for a note.
    pub locks: Vec<String>,
    /// Photos, by SHA-256.
    pub photos: Vec<String>,
    /// Sounds, by SHA-256.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sounds: Vec<String>,
    /// `open`, `awaiting-review`, `closed`.
    pub state: String,
    /// The certificate that stands.
    pub certificate: Option<CertificateSaid>,
    /// Who reviewed it and when.
    pub reviewed: Option<SaidRow>,
    /// The same item ended within 30 days before.
    pub repeat: bool,
    /// Dated after it came: the clock that dated it is ahead.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub ahead: bool,
}

/// A certificate as it is told of.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CertificateSaid {
    /// `repaired` or `not-needed`.
    pub verdict: String,
    /// Who; none when not said.
    pub who: Option<String>,
    /// When.
    pub at: Stamp,
    /// In their words.
    pub words: String,
}

/// A lock-out that stands.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct LockedRow {
    /// Door number.
    pub unit: String,
    /// `road`, `air`, or `outlet/` with its name.
    pub lock: String,
    /// Since the worst answer's own time.
    pub since: Stamp,
    /// The item: a key of the texts; `laid-up` of a lay-up.
    pub item: String,
    /// Its place.
    pub place: Option<String>,
    /// In whose words.
    pub why: String,
    /// Who found it.
    pub who: Option<String>,
    /// When the shop knew.
    pub shop_knew: Option<Stamp>,
    /// When the phone that last wrote of the unit held it.
    pub driver_knew: Option<Stamp>,
    /// Certified at; it stays locked until the next driver's review.
    pub certified: Option<Stamp>,
    /// `certify` or `review`; of a lay-up `return-list`, of a maker's campaign `service`.
    pub next_step: String,
    /// Dated after it came: the clock that dated it is ahead. Whoever looks now holds it for locked.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub ahead: bool,
}
