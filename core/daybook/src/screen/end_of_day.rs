//! What the next driver will read.

use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::record::{Answer, SiteDust};
use sumpbook_trade::{EntryId, Feature, Figure, Stamp, Tenths};

use super::display::NoteRow;
use super::figures::ReadingRow;
use super::glass::{StopNow, stop_now};
use super::levels::PourRow;
use super::main_act::{DisabledReason, Main, MainAct};
use super::pre_trip::Days;
use super::site::SiteAsk;
use crate::draft::EndOfDayDraft;
use crate::ledger::{Ledger, LedgerError};

/// Something said above the button. It keeps nobody from signing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum EndOfDayNotice {
    /// No pre-trip covers today.
    NoPreTrip,
    /// Air was started and no stop is recorded: the steps of leaving come first.
    AirStillOn,
}

impl EndOfDayNotice {
    /// Key of its words.
    pub fn text_key(self) -> &'static str {
        match self {
            EndOfDayNotice::NoPreTrip => "notice-no-pre-trip",
            EndOfDayNotice::AirStillOn => "notice-air-still-on",
        }
    }
}

/// A defect named in the report so far.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FoundRow {
    /// The row's id: item and place.
    pub id: String,
    /// The item.
    pub item: String,
    /// Its place.
    pub place: Option<String>,
    /// Key of the word chosen.
    pub word: Option<String>,
    /// What it locks.
    pub severity: Option<Severity>,
}

impl FoundRow {
    pub(super) fn of(defect: &Answer) -> FoundRow {
        let named = [Some(defect.item.as_str()), defect.place.as_deref()];
        FoundRow {
            id: named.into_iter().flatten().collect::<Vec<_>>().join("/"),
            item: defect.item.clone(),
            place: defect.place.clone(),
            word: defect.word.clone(),
            severity: defect.severity,
        }
    }
}

/// An end-of-day report under way.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct EndOfDayScreen {
    /// The draft.
    pub draft: EntryId,
    /// The unit's door number.
    pub door: String,
    /// Since when the pre-trip that this ends covers; none: no pre-trip.
    pub covers_from: Option<Stamp>,
    /// Defects named so far.
    pub found: Vec<FoundRow>,
    /// "None found" was said.
    pub none_found: bool,
    /// Display notes of today.
    pub notes: Vec<NoteRow>,
    /// Top-ups of today.
    pub poured: Vec<PourRow>,
    /// The last reading that counts.
    pub last_hours: Option<ReadingRow>,
    /// Hours given.
    pub hours: Option<Tenths>,
    /// Odometer given.
    pub odometer: Option<Figure>,
    /// Whether draining the tanks is asked at all.
    pub asks_tanks: bool,
    /// The answer.
    pub tanks_drained: Option<bool>,
    /// How dusty the site was, as chosen for this report.
    pub dust: Option<SiteDust>,
    /// Whether that is asked, and what was said of it today; none where the dust does not count.
    pub site: Option<SiteAsk>,
    /// Words for the next driver.
    pub to_next: Option<String>,
    /// What stands above the button.
    pub notices: Vec<EndOfDayNotice>,
    /// The main button.
    pub main: Main,
}

/// An end-of-day report as it stands.
///
/// # Errors
/// As reading the store.
pub fn end_of_day(ledger: &Ledger, draft: &EndOfDayDraft, now: Stamp) -> Result<EndOfDayScreen, LedgerError> {
    let fleet = ledger.fleet();
    let state = ledger.unit_state(draft.unit)?;
    let today = fleet.yard_day(now);
    let covering = Days::of(ledger, draft.unit, now)?.covering(now).map(|span| Stamp::from(span.from));
    let running = matches!(stop_now(ledger, draft.unit)?, StopNow::Running(_));
    let notices = [
        covering.is_none().then_some(EndOfDayNotice::NoPreTrip),
        running.then_some(EndOfDayNotice::AirStillOn),
    ];
    // A night shift reports what happened since it began, midnight or not.
    let of_this_work = |at: Stamp| covering.map_or(fleet.yard_day(at) == today, |from| from <= at);
    let said = draft.none_found || !draft.defects.is_empty();
    let found = draft.defects.iter().map(FoundRow::of);
    Ok(EndOfDayScreen {
        draft: draft.id,
        door: fleet.door(draft.unit),
        covers_from: covering,
        found: found.collect(),
        none_found: draft.none_found,
        notes: state
            .notes
            .iter()
            .filter(|note| of_this_work(note.at.into()))
            .map(|note| NoteRow::of(note, fleet))
            .collect(),
        poured: state
            .top_ups
            .iter()
            .filter(|top_up| of_this_work(top_up.at.into()))
            .map(|top_up| PourRow::of(top_up, fleet))
            .collect(),
        last_hours: state.hours.last.as_ref().map(ReadingRow::from),
        hours: draft.hours,
        odometer: draft.odometer,
        asks_tanks: fleet.trucks.get(&draft.unit).is_some_and(|t| t.features.has(Feature::ManualTankDrains)),
        tanks_drained: draft.tanks_drained,
        dust: draft.dust,
        site: SiteAsk::at_days_end(ledger, draft.unit, now)?,
        to_next: draft.to_next.clone(),
        notices: notices.into_iter().flatten().collect(),
        main: Main { act: MainAct::SignEndOfDay, why_not: (!said).then_some(DisabledReason::DefectsNotSaid) },
    })
}
