//! Where this phone's entries stand, as its screens ask for it.

use sumpbook_trade::Stamp;

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
        let zone = ledger.fleet().zone;
        let moment = |ms: i64| {
            let at = chrono::DateTime::from_timestamp_millis(ms)?;
            Some(Stamp::new(at.with_timezone(&zone).fixed_offset()))
        };
        let back_off = self.back_off()?;
        let failing = Some(back_off).filter(|tries| tries.failures > 0);
        Ok(Standing {
            at_shop: u32::try_from(written.saturating_sub(on_phone.len() as u64)).unwrap_or(u32::MAX),
            on_phone,
            aside: truth.aside()?.into_iter().map(|fact| fact.id).collect(),
            heard: truth.last_receipt_ms()?.and_then(moment),
            tried: failing.map(|tries| tries.failed_ms).filter(|ms| *ms > 0).and_then(moment),
            again: failing.map(|tries| tries.not_before_ms).and_then(moment),
            photos: self.photos_standing()?,
        })
    }
}
