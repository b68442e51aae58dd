//! A top-up under way: the two signs first, then small pours, each looked at after it settled.

use serde::{Deserialize, Serialize};
use sumpbook_trade::procedure::CapSigns;
use sumpbook_trade::record::{Glass, Pour, StopWait, TopUp, Warmth};
use sumpbook_trade::{
    Entry, EntryId, Figure, Fluid, OilFamily, PersonId, Stamp, Tenths, TruckId, may_open_cap,
};

use super::error::MissingSign;
use super::{DraftError, Signing};
use crate::fleet::Fleet;
use crate::label::{NotADrum, drum_scan};

/// A top-up under way. Fields are set as they are said; none is filled beforehand.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct TopUpDraft {
    /// The id its entry will have.
    pub id: EntryId,
    /// The unit.
    pub unit: TruckId,
    /// Who pours.
    pub person: PersonId,
    /// Since when.
    pub begun: Stamp,
    /// Which fluid.
    pub fluid: Fluid,
    /// Family on the drum.
    pub family: Option<OilFamily>,
    /// Grade on the drum.
    pub grade: Option<String>,
    /// The drum's label was read by a camera, and said the family and grade above; neither of them: an unknown drum.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub label_scanned: bool,
    /// The two signs that pressure is gone.
    pub signs: CapSigns,
    /// Where the level stood before.
    pub before: Option<Glass>,
    /// Cold or hot.
    pub warmth: Option<Warmth>,
    /// The oil's temperature, where a display showed it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub oil_temperature: Option<Figure>,
    /// How long the unit had stood.
    pub stopped: Option<StopWait>,
    /// Pours so far.
    pub pours: Vec<Pour>,
    /// The cap was cleaned, set and tight.
    pub cap_tight: Option<bool>,
    /// Compressor hours, when read.
    pub hours: Option<Tenths>,
}

impl TopUpDraft {
    /// A top-up that has just begun.
    pub fn begin(id: EntryId, unit: TruckId, person: PersonId, fluid: Fluid, begun: Stamp) -> TopUpDraft {
        TopUpDraft {
            id,
            unit,
            person,
            begun,
            fluid,
            family: None,
            grade: None,
            label_scanned: false,
            signs: CapSigns::default(),
            before: None,
            warmth: None,
            oil_temperature: None,
            stopped: None,
            pours: Vec::new(),
            cap_tight: None,
            hours: None,
        }
    }

    /// What the drum says, by somebody's own eyes; what is left out stays as it was said.
    pub fn says_drum(&mut self, family: Option<OilFamily>, grade: Option<String>) {
        if family.is_none() && grade.is_none() {
            return;
        }
        // A label that a camera could make nothing of leaves nothing that half a word could be added to.
        self.label_scanned = false;
        self.family = family.or(self.family);
        self.grade = grade.or(self.grade.take());
    }

    /// What the drum's label says to a camera, all of it; `Ok` with neither is an unknown drum.
    ///
    /// # Errors
    /// Why the text is about no drum; then nothing is changed.
    pub fn scans_drum(&mut self, text: &str) -> Result<(), NotADrum> {
        let (family, grade) = drum_scan(text)?;
        (self.family, self.grade, self.label_scanned) = (family, grade, true);
        Ok(())
    }

    /// Whether anything is known of the drum: by its label or by somebody's word.
    pub fn has_read_drum(&self) -> bool {
        self.label_scanned || self.family.is_some() || self.grade.is_some()
    }

    /// The sign that keeps the cap shut; none when it may be opened. Only compressor oil is under pressure.
    pub fn missing_sign(&self) -> Option<MissingSign> {
        if self.fluid != Fluid::CompressorOil || may_open_cap(self.signs) {
            return None;
        }
        let seen = |sign: Option<bool>| sign == Some(true);
        Some(match (seen(self.signs.gauge_zero), seen(self.signs.blow_down_silent)) {
            (false, true) => MissingSign::GaugeZero,
            (true, _) => MissingSign::BlowDownSilent,
            (false, false) => MissingSign::Both,
        })
    }

    /// Adds a pour. `already_poured` records what was done without the signs: the truth before the rule.
    ///
    /// # Errors
    /// Without both signs, unless it is poured already; a volume that is none.
    pub fn pour(&mut self, pour: Pour, already_poured: bool) -> Result<(), DraftError> {
        if let Some(missing) = self.missing_sign().filter(|_| !already_poured) {
            return Err(DraftError::GateClosed(missing));
        }
        if pour.volume.volume().is_none() || pour.volume.digits <= 0 {
            return Err(DraftError::NoVolume);
        }
        self.pours.push(pour);
        Ok(())
    }

    /// Where the level stands now: after the last pour that was looked at, else as before.
    pub fn level(&self) -> Option<Glass> {
        self.pours.iter().rev().find_map(|pour| pour.after).or(self.before)
    }

    /// Whether the level was out of view at any time of it, before the first pour too: what was poured since does not
    /// say where the oil went.
    pub fn was_out_of_view(&self) -> bool {
        let seen = self.pours.iter().filter_map(|pour| pour.after).chain(self.before);
        seen.into_iter().any(|glass| matches!(glass, Glass::BelowView | Glass::AboveView))
    }

    /// The top-up as an entry.
    ///
    /// # Errors
    /// Nothing poured; for compressor oil the cap not said to be tight.
    pub fn sign(&self, fleet: &Fleet, signing: &Signing) -> Result<Entry, DraftError> {
        if self.pours.is_empty() {
            return Err(DraftError::NothingPoured);
        }
        if self.fluid == Fluid::CompressorOil && self.cap_tight != Some(true) {
            return Err(DraftError::CapOpen);
        }
        let fact = TopUp {
            fluid: self.fluid,
            family: self.family,
            grade: self.grade.clone(),
            gauge_zero: self.signs.gauge_zero,
            blow_down_silent: self.signs.blow_down_silent,
            before: self.before,
            pours: self.pours.clone(),
            after: self.pours.iter().rev().find_map(|pour| pour.after),
            warmth: self.warmth,
            stopped: self.stopped.clone(),
            cap_tight: self.cap_tight,
            oil_temperature: self.oil_temperature,
            label_scanned: self.label_scanned.then_some(true),
        };
        let mut entry = signing.entry(fleet, self.id, self.unit, self.person, fact.into());
        entry.hours = self.hours;
        Ok(entry)
    }
}
