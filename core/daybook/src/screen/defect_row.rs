//! A defect as a row: who said what, what it locks, what the shop certified.

use serde::{Deserialize, Serialize};
use sumpbook_trade::defect::{Certified, Defect, DefectState, LockPart, Said, Verdict};
use sumpbook_trade::record::{Answer, Digest};
use sumpbook_trade::{Entry, EntryId, Fact, PersonId, Stamp};
use uuid::Uuid;

use crate::fleet::Fleet;
use crate::ledger::{Ledger, LedgerError};

/// Where a defect stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DefectNow {
    /// No certificate.
    Open,
    /// Certified; the next driver has not reviewed that.
    AwaitingReview,
    /// Over.
    Closed,
}

/// One person's answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
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
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub photos: Vec<Digest>,
    /// The sound of the defect by its name, where it was asked for; this phone may not hold it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sound: Option<Digest>,
}

/// A certificate.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
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
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub by_slip: bool,
}

/// One defect.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
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

impl DefectRow {
    pub(super) fn of(defect: &Defect, fleet: &Fleet) -> DefectRow {
        let (state, certified) = match &defect.state {
            DefectState::Open => (DefectNow::Open, None),
            DefectState::AwaitingReview { certified } => (DefectNow::AwaitingReview, Some(certified)),
            DefectState::Closed { certified, .. } => (DefectNow::Closed, Some(certified)),
        };
        let said = defect.answers.iter().map(|answer| {
            let (ok, (word, words)) = match &answer.said {
                Said::Ok => (true, (None, None)),
                Said::Defect { words, .. } => (false, word_and_words(words)),
            };
            SaidRow {
                by: name(fleet, answer.person),
                at: answer.at.into(),
                ok,
                word,
                words,
                photos: Vec::new(),
                sound: None,
            }
        });
        DefectRow {
            id: row_id(defect),
            item: defect.item.clone(),
            place: defect.place.clone(),
            locks: defect.parts.keys().cloned().collect(),
            since: defect.since.into(),
            state,
            said: said.collect(),
            certificate: certified.map(|certified| certificate(certified, fleet)),
        }
    }
}

/// The word that stands for a defect: the first one anybody chose.
pub(super) fn first_word(defect: &Defect) -> Option<String> {
    defect.answers.iter().find_map(|answer| match &answer.said {
        Said::Defect { words, .. } => word_and_words(words).0,
        Said::Ok => None,
    })
}

impl DefectRow {
    /// The same with the photos its finders took and the sounds they recorded.
    pub(super) fn with_photos(ledger: &Ledger, defect: &Defect) -> Result<DefectRow, LedgerError> {
        let mut row = DefectRow::of(defect, ledger.fleet());
        let truth = ledger.store().truth();
        for (said, answer) in row.said.iter_mut().zip(&defect.answers).filter(|(said, _)| !said.ok) {
            for held in truth.by_id(EntryId(answer.entry))? {
                let Ok(entry) = Entry::from_payload(&held.row.payload) else { continue };
                let same = answers_about(&entry.fact, &defect.item, defect.place.as_deref());
                said.photos = same.iter().flat_map(|answer| answer.photos.iter().copied()).collect();
                said.sound = same.iter().find_map(|answer| answer.sound);
            }
        }
        Ok(row)
    }
}

/// What an entry answers about an item.
fn answers_about<'a>(fact: &'a Fact, item: &str, place: Option<&str>) -> Vec<&'a Answer> {
    let answers = match fact {
        Fact::PreTripSection(section) => &section.answers,
        Fact::EndOfDay(report) => &report.defects,
        _ => return Vec::new(),
    };
    let same = |answer: &&Answer| answer.item == item && answer.place.as_deref() == place;
    answers.iter().filter(same).collect()
}

/// The row's id: it stays the same whatever is added later.
pub(super) fn row_id(defect: &Defect) -> String {
    let place = defect.place.as_deref().map(|place| format!("/{place}")).unwrap_or_default();
    format!("{}/{}{place}", defect.reference.entry, defect.item)
}

fn certificate(certified: &Certified, fleet: &Fleet) -> CertificateRow {
    CertificateRow {
        id: EntryId(certified.certificate),
        verdict: certified.verdict,
        by: name(fleet, certified.by),
        at: certified.at.into(),
        words: certified.words.clone(),
        by_slip: certified.certificate.is_nil(),
    }
}

/// A person's name; none for nobody and for somebody this phone does not know yet.
pub(super) fn name(fleet: &Fleet, person: Uuid) -> Option<String> {
    fleet.person_name(PersonId(person)).map(str::to_owned)
}

/// The word's key and the person's own words, which a finding keeps as `word: words`.
fn word_and_words(text: &str) -> (Option<String>, Option<String>) {
    let is_key = |t: &str| !t.is_empty() && t.bytes().all(|b| b.is_ascii_lowercase() || b == b'-');
    match text.split_once(": ") {
        Some((word, words)) if is_key(word) => (Some(word.to_owned()), Some(words.to_owned())),
        _ if is_key(text) => (Some(text.to_owned()), None),
        _ => (None, Some(text.to_owned()).filter(|t| !t.is_empty())),
    }
}
