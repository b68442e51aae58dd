//! A top-up, from its two signs to its signature.

use sumpbook_daybook::draft::{Draft, TopUpDraft};
use sumpbook_trade::record::{Glass, Pour, StopWait, Warmth};
use sumpbook_trade::{EntryId, Figure, Fluid, OilFamily, PersonId, Tenths, TruckId};

use super::{Signed, fresh, keep, record, signing, top_up};
use crate::error::PhoneError;
use crate::listener::ChangeSet;
use crate::phone::Phone;

/// What is said of a top-up. What is given replaces what was said before; what is left out stays.
#[derive(Clone, Debug, Default, PartialEq, uniffi::Record)]
pub struct TopUpSaid {
    /// Family on the drum.
    #[uniffi(default)]
    pub family: Option<OilFamily>,
    /// Grade on the drum.
    #[uniffi(default)]
    pub grade: Option<String>,
    /// First sign: the gauge reads 0.
    #[uniffi(default)]
    pub gauge_zero: Option<bool>,
    /// Second sign: blow-down ended, silent.
    #[uniffi(default)]
    pub blow_down_silent: Option<bool>,
    /// Where the level stood before.
    #[uniffi(default)]
    pub before: Option<Glass>,
    /// Cold or hot.
    #[uniffi(default)]
    pub warmth: Option<Warmth>,
    /// The oil's temperature, where a display shows it.
    #[uniffi(default)]
    pub oil_temperature: Option<Figure>,
    /// How long the unit had stood.
    #[uniffi(default)]
    pub stopped: Option<StopWait>,
    /// The cap was cleaned, set and tight.
    #[uniffi(default)]
    pub cap_tight: Option<bool>,
    /// Compressor hours, when read.
    #[uniffi(default)]
    pub hours: Option<Tenths>,
}

#[uniffi::export]
impl Phone {
    /// Begins a top-up: nothing is said.
    ///
    /// # Errors
    /// As any write.
    pub fn begin_top_up(&self, unit: TruckId, person: PersonId, fluid: Fluid) -> Result<EntryId, PhoneError> {
        self.change(ChangeSet::DRAFTS, |book, now| {
            let id = fresh(now)?;
            keep(book, &Draft::TopUp(TopUpDraft::begin(id, unit, person, fluid, now)), now)?;
            Ok(id)
        })
    }

    /// Says something of a top-up.
    ///
    /// # Errors
    /// `Draft`; as any write.
    pub fn say_top_up(&self, draft: EntryId, said: TopUpSaid) -> Result<(), PhoneError> {
        self.pouring(draft, |top_up| {
            let TopUpSaid { family, grade, gauge_zero, blow_down_silent, .. } = said;
            top_up.says_drum(family, grade);
            top_up.signs.gauge_zero = gauge_zero.or(top_up.signs.gauge_zero);
            top_up.signs.blow_down_silent = blow_down_silent.or(top_up.signs.blow_down_silent);
            top_up.before = said.before.or(top_up.before);
            top_up.warmth = said.warmth.or(top_up.warmth);
            top_up.oil_temperature = said.oil_temperature.or(top_up.oil_temperature);
            top_up.stopped = said.stopped.or(top_up.stopped.take());
            top_up.cap_tight = said.cap_tight.or(top_up.cap_tight);
            top_up.hours = said.hours.or(top_up.hours);
            Ok(())
        })
    }

    /// Adds a pour. `already_poured` records what was done without the two signs.
    ///
    /// # Errors
    /// `Draft` without both signs, or when its volume is none; as any write.
    pub fn add_pour(&self, draft: EntryId, pour: Pour, already_poured: bool) -> Result<(), PhoneError> {
        self.pouring(draft, |top_up| Ok(top_up.pour(pour, already_poured)?))
    }

    /// Signs a top-up.
    ///
    /// # Errors
    /// `Draft` when nothing is poured or the cap is not said to be tight; then the draft is still there.
    pub fn sign_top_up(&self, draft: EntryId, signed: Signed) -> Result<EntryId, PhoneError> {
        self.change(ChangeSet::RECORDED, |book, now| {
            let signing = signing(book, &signed, now)?;
            let entry = top_up(book, draft)?.sign(book.ledger().fleet(), &signing)?;
            record(book, vec![entry], now)?;
            Ok(draft)
        })
    }
}

impl Phone {
    pub(crate) fn pouring(
        &self,
        draft: EntryId,
        change: impl FnOnce(&mut TopUpDraft) -> Result<(), PhoneError>,
    ) -> Result<(), PhoneError> {
        self.change(ChangeSet::DRAFTS, |book, now| {
            let mut pours = top_up(book, draft)?;
            change(&mut pours)?;
            keep(book, &Draft::TopUp(pours), now)
        })
    }
}
