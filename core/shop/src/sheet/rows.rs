//! Rows of the later sections: notes, pours, readings, what is set aside and what came late.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_trade::{EntryId, Stamp, Tenths};

use crate::oil_use::OilUse;

/// Somebody was hurt, something spilt or was hit, as far as it was told.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct HappenedRow {
    /// Door number.
    pub unit: String,
    /// `hurt`, `spill`, `hit`, `other`; none when not said.
    pub what: Option<String>,
    /// When it happened, or else when it was written down.
    pub when: Stamp,
    /// Where, in words.
    pub place: Option<String>,
    /// How much of what, in words.
    pub how_much: Option<String>,
    /// Who was told, in words.
    pub told: Option<String>,
    /// Words added.
    pub words: Option<String>,
    /// How many photos.
    pub photos: usize,
    /// Who wrote it down.
    pub who: Option<String>,
}

/// Someone answered a display note.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct AnsweredBy {
    /// Who; none when not said.
    pub who: Option<String>,
    /// When.
    pub at: Stamp,
    /// They told the shop; otherwise they saw it.
    pub told_shop: bool,
}

/// What a display said.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct ReminderRow {
    /// Door number.
    pub unit: String,
    /// `fault`, `warning`, `reminder`.
    pub kind: String,
    /// Shown at.
    pub shown: Stamp,
    /// As it stood there.
    pub as_it_stood: String,
    /// Who read it off.
    pub read_by: Option<String>,
    /// The answer that stands: the earliest.
    pub seen_by: Option<AnsweredBy>,
    /// The first that told the shop.
    pub shop_told_by: Option<AnsweredBy>,
    /// Later answers.
    pub others: Vec<AnsweredBy>,
    /// Answers dated before the note itself, by a slow clock: shown with their own time and not counted (R5).
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub dated_before: Vec<AnsweredBy>,
    /// First seen gone again.
    pub gone: Option<Stamp>,
    /// A service recorded since it was shown.
    pub service: Option<Stamp>,
    /// The question to ask when it went away and no service is recorded.
    pub ask: Option<String>,
}

/// Something was poured.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct TopUpRow {
    /// Door number.
    pub unit: String,
    /// When.
    pub at: Stamp,
    /// Which fluid: a key of the texts.
    pub fluid: String,
    /// Grade on the drum.
    pub grade: Option<String>,
    /// How much in all, as it was given.
    pub poured: String,
    /// Level before: "30 %", "below view".
    pub before: Option<String>,
    /// Level after.
    pub after: Option<String>,
    /// Who; none when not said.
    pub who: Option<String>,
    /// What the pour itself tells, such as another oil family.
    pub finding: Option<String>,
    /// What the glass and the oil's use tell at this pour.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub oil: Vec<OilFound>,
}

/// What a pour of compressor oil tells.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "what", rename_all = "kebab-case", rename_all_fields = "kebab-case")]
pub enum OilFound {
    /// It ended over the middle band.
    OverMiddle {
        /// Over the middle, percent of the glass.
        percent: i64,
        /// That is so much, in the unit of the glass; none when its volume is not known.
        volume: Option<String>,
    },
    /// More was poured than the glass shows, or less, by more than two readings can be off.
    Astray {
        /// Poured and not in the glass, millilitres; below zero more came than was poured.
        ml: i64,
    },
    /// Its use has changed.
    Changed {
        /// Use over what is usual, tenths; none when nothing is usual.
        times_tenths: Option<i64>,
        /// Since this day.
        since: NaiveDate,
        /// To less, and not to more.
        less: bool,
    },
    /// The balance it closed lies wholly over the limit.
    OverLimit,
}

/// A unit whose oil somebody should look at: it drinks, or its level rose.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct OilRow {
    /// Door number.
    pub unit: String,
    /// What its use comes to, when that is an alarm.
    #[serde(flatten)]
    pub oil: Option<OilUse>,
    /// On this day its level rose, and no pour is recorded.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rose: Option<RoseRow>,
}

/// A level that rose by itself.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct RoseRow {
    /// When it was read.
    pub at: Stamp,
    /// Where it had stood.
    pub from: String,
    /// Where it stands.
    pub to: String,
}

/// A figure of a reading.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct FigureRow {
    /// Its entry, for deciding about it.
    pub entry: EntryId,
    /// When it was read.
    pub at: Stamp,
    /// What the meter showed.
    pub figure: Tenths,
    /// Who read it.
    pub who: Option<String>,
    /// Struck: it does not count.
    pub struck: bool,
    /// The most the meter could show then.
    pub ceiling: Option<Tenths>,
}

/// Readings that wait for a person.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct SettleRow {
    /// Door number.
    pub unit: String,
    /// Figures in the order they were read, struck ones too.
    pub figures: Vec<FigureRow>,
    /// What the due list uses until it is settled.
    pub used: Option<Tenths>,
    /// Why it is asked: the rule's word.
    pub why: String,
    /// What may have happened, the likeliest first.
    pub hints: Vec<String>,
}

/// A set that was recorded as fitted to a truck, or taken off it, and is registered otherwise. The registration rules
/// until the shop changes it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct SetRow {
    /// Door number of the truck at which it was recorded.
    pub unit: String,
    /// Its entry, for deciding about it.
    pub entry: EntryId,
    /// When.
    pub at: Stamp,
    /// Who; none when not said.
    pub who: Option<String>,
    /// `fitted` or `removed`.
    pub what: String,
    /// Serial of the set; its id where it has none.
    pub set: String,
    /// Its hours then, as they were read.
    pub hours: Option<Tenths>,
    /// The truck that set is registered on; none for none.
    pub registered_on: Option<String>,
    /// The set that is registered on this truck; none for none.
    pub registered_here: Option<String>,
}

/// A reading somebody took back.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CorrectedRow {
    /// Door number.
    pub unit: String,
    /// The reading's own time.
    pub at: Stamp,
    /// The struck figure.
    pub struck: Tenths,
    /// The figure given instead.
    pub instead: Option<Tenths>,
    /// Who took it back.
    pub who: Option<String>,
    /// Why.
    pub why: String,
}

/// One telling of a service.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct ToldService {
    /// Its entry, for deciding about it.
    pub entry: EntryId,
    /// When.
    pub at: Stamp,
    /// Hours then.
    pub hours: Option<Tenths>,
    /// Who.
    pub who: Option<String>,
}

/// Two entries that look like one service.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct TwiceRow {
    /// Door number.
    pub unit: String,
    /// The task: a key of the texts.
    pub task: String,
    /// The earlier telling.
    pub first: ToldService,
    /// The later one.
    pub second: ToldService,
    /// Hours that count until the shop decides: the fewer.
    pub hours: Option<Tenths>,
    /// Day that counts until then: the earlier.
    pub day: chrono::NaiveDate,
}

/// An entry that does not count until a person says so.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct AsideRow {
    /// Its entry, for deciding about it.
    pub entry: EntryId,
    /// Which phone signed it.
    pub came_from: String,
    /// Door number; none for a matter of the fleet.
    pub unit: Option<String>,
    /// Its kind: a key of the texts.
    pub says: String,
    /// Who, as it says.
    pub who: Option<String>,
    /// Why it is set aside: the judgement's word.
    pub why: String,
    /// Its own time.
    pub at: Stamp,
    /// Here since.
    pub since: Stamp,
}

/// An entry of the day that came after its first closing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct LateRow {
    /// Door number; none for a matter of the fleet.
    pub unit: Option<String>,
    /// Its kind: a key of the texts.
    pub says: String,
    /// Who; none when not said.
    pub who: Option<String>,
    /// Its own time.
    pub at: Stamp,
    /// When it came.
    pub came: Stamp,
    /// Which phone signed it.
    pub came_from: String,
    /// Compressor hours it carries.
    pub hours: Option<Tenths>,
}
