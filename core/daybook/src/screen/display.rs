//! What the display said, and who knows of it.

use serde::{Deserialize, Serialize};
use sumpbook_trade::notes::Ack;
use sumpbook_trade::record::{NoteKind, ShopSays};
use sumpbook_trade::{EntryId, Stamp, TruckId};

use super::defect_row::name;
use super::main_act::{DisabledReason, Main, MainAct};
use super::news::{News, Standing, count};
use crate::fleet::Fleet;
use crate::ledger::{Ledger, LedgerError};
use crate::state::NoteNow;

/// Which unit, and which note is being answered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DisplayQuery {
    /// The unit.
    pub unit: TruckId,
    /// A note somebody wrote down; none to write a new one.
    pub note: Option<EntryId>,
}

/// Somebody's answer to a note.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct AckRow {
    /// Its entry.
    pub id: EntryId,
    /// Who.
    pub by: Option<String>,
    /// When.
    pub at: Stamp,
    /// The shop was told; otherwise it was only seen.
    pub told_shop: bool,
    /// Dated before the note, by a slow clock: shown and not counted (R5). Its words: `ack-before-note`.
    pub before_note: bool,
}

/// One note.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct NoteRow {
    /// Its entry: the row's id.
    pub id: EntryId,
    /// What kind.
    pub what: NoteKind,
    /// As it stood there.
    pub as_shown: String,
    /// When.
    pub at: Stamp,
    /// Who wrote it down.
    pub by: Option<String>,
    /// The unit stopped by itself.
    pub stopped_by_itself: Option<bool>,
    /// The answer that stands (R5).
    pub first: Option<AckRow>,
    /// The first that told the shop, when it is another.
    pub told: Option<AckRow>,
    /// The rest, in order of time; those dated before the note are the last.
    pub others: Vec<AckRow>,
    /// First seen gone again.
    pub gone: Option<Stamp>,
}

/// What the shop says to a kind of note.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ShopSaysRow {
    /// The kind.
    pub what: NoteKind,
    /// The shop's words.
    pub words: String,
}

fn shop_says(says: &ShopSays) -> Vec<ShopSaysRow> {
    let kinds = [
        (NoteKind::Fault, &says.of_fault),
        (NoteKind::Warning, &says.of_warning),
        (NoteKind::Reminder, &says.of_reminder),
    ];
    let said =
        |(what, words): (NoteKind, &Option<String>)| words.clone().map(|words| ShopSaysRow { what, words });
    kinds.into_iter().filter_map(said).collect()
}

/// The display notes of a unit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DisplayScreen {
    /// The unit's door number.
    pub door: String,
    /// How old the shop's news is.
    pub news: News,
    /// The note being answered.
    pub note: Option<NoteRow>,
    /// The note being answered is only on this phone: that the shop was told, somebody did by word of mouth.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub note_only_here: bool,
    /// Other notes that are not gone, newest first.
    pub open: Vec<NoteRow>,
    /// How often it stopped by itself today.
    pub stopped_today: u32,
    /// What the shop says to each kind of note, in its own words; a kind it set none for is not here.
    pub shop_says: Vec<ShopSaysRow>,
    /// The main button.
    pub main: Main,
}

/// The display notes of a unit.
///
/// # Errors
/// As reading the store.
pub fn display(
    ledger: &Ledger,
    query: &DisplayQuery,
    standing: &Standing,
    now: Stamp,
) -> Result<DisplayScreen, LedgerError> {
    let fleet = ledger.fleet();
    let state = ledger.unit_state(query.unit)?;
    let today = fleet.yard_day(now);
    let stopped = state
        .notes
        .iter()
        .filter(|n| n.stopped_by_itself == Some(true) && fleet.yard_day(n.at.into()) == today)
        .count();
    let note = query.note.and_then(|id| state.notes.iter().find(|note| note.entry == id));
    let mut open: Vec<NoteRow> = state
        .notes
        .iter()
        .filter(|n| n.gone.is_none() && query.note != Some(n.entry))
        .map(|n| NoteRow::of(n, fleet))
        .collect();
    open.reverse();
    let note = note.map(|note| NoteRow::of(note, fleet));
    let told =
        note.as_ref().is_some_and(|n| n.told.is_some() || n.first.as_ref().is_some_and(|a| a.told_shop));
    Ok(DisplayScreen {
        door: fleet.door(query.unit),
        news: News::at(standing.heard, now),
        note_only_here: note.as_ref().is_some_and(|note| standing.on_phone.contains(&note.id)),
        open,
        stopped_today: count(stopped),
        shop_says: shop_says(&fleet.says),
        main: match &note {
            Some(_) => Main { act: MainAct::ToldShop, why_not: told.then_some(DisabledReason::AlreadyTold) },
            None => Main::ready(MainAct::KeepNote),
        },
        note,
    })
}

impl NoteRow {
    pub(super) fn of(note: &NoteNow, fleet: &Fleet) -> NoteRow {
        let ack = |ack: &Ack| AckRow {
            id: EntryId(ack.entry),
            by: name(fleet, ack.person),
            at: ack.at.into(),
            told_shop: ack.told_shop,
            before_note: ack.at < note.at,
        };
        let answered = &note.answered;
        let told = answered.told.filter(|told| Some(told.entry) != answered.first.map(|first| first.entry));
        NoteRow {
            id: note.entry,
            what: note.what,
            as_shown: note.as_shown.clone(),
            at: note.at.into(),
            by: note.person.and_then(|p| name(fleet, p.0)),
            stopped_by_itself: note.stopped_by_itself,
            first: answered.first.as_ref().map(ack),
            told: told.as_ref().map(ack),
            others: answered.others.iter().chain(&answered.set_aside_before_note).map(ack).collect(),
            gone: note.gone.map(Stamp::from),
        }
    }
}
