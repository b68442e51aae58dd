//! Where this phone's entries stand, as its screens ask for it.

use super::{Daybook, PhoneError};
use crate::exchange::not_at_shop;
use crate::screen::Standing;

impl Daybook {
    /// What is only here, what is at the shop, what is set aside, and when the shop was last heard.
    ///
    /// # Errors
    /// As any read.
    pub fn standing(&self) -> Result<Standing, PhoneError> {
        let ledger = self.ledger();
        let truth = ledger.store().truth();
        let own = ledger.own_key().id();
        let here = not_at_shop(ledger)?;
        let on_phone: std::collections::BTreeSet<_> =
            here.iter().filter(|held| held.row.actor.key() == own).map(|held| held.row.id).collect();
        let written = truth.written_here()?;
        let moment = |ms: i64| ledger.fleet().yard_stamp(ms);
        let back_off = self.back_off()?;
        let failing = Some(back_off).filter(|tries| tries.failures > 0);
        Ok(Standing {
            at_shop: u32::try_from(written.saturating_sub(on_phone.len() as u64)).unwrap_or(u32::MAX),
            on_phone,
            aside: truth.aside()?.into_iter().map(|fact| fact.id).collect(),
            heard: truth.last_receipt_ms()?.and_then(moment),
            tried_why: failing.and_then(|tries| tries.why),
            stopped: self.stopped_ms()?.and_then(moment),
            tried: failing.map(|tries| tries.failed_ms).filter(|ms| *ms > 0).and_then(moment),
            again: failing.map(|tries| tries.not_before_ms).and_then(moment),
            photos: self.photos_standing()?,
        })
    }

    /// When the shop stopped this phone, by the shop's own entry.
    fn stopped_ms(&self) -> Result<Option<i64>, PhoneError> {
        let ledger = self.ledger();
        let own = ledger.own_key().id().0;
        let Some((_, said, _)) = ledger.fleet().revoked.iter().find(|(id, _, _)| *id == own) else {
            return Ok(None);
        };
        let truth = ledger.store().truth();
        let Some(held) = truth.by_id(*said)?.into_iter().next() else { return Ok(None) };
        Ok(truth.fact(held.n)?.map(|fact| fact.at_ms))
    }
}
