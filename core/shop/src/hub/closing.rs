//! The hub closes ended days by itself, once a night; after a night in which it was switched off, when it begins.

use std::time::Duration;

use chrono::{DateTime, Utc};
use sumpbook_trade::Stamp;

use super::{Hub, HubError};
use crate::Hand;
use crate::close::{Closing, close, closing_hour, to_close};

/// So often it looks at the clock: a clock that is set, or a machine that slept, is noticed soon.
const EVERY: Duration = Duration::from_secs(30);

/// What was closed already.
#[derive(Default)]
pub(super) struct Closer {
    hour: Option<DateTime<Utc>>,
    looked: i64,
}

/// Goes on until it is dropped.
pub(super) async fn close_days(hub: Hub) {
    let mut closer = Closer::default();
    loop {
        if let Err(error) = closer.turn(&hub).await {
            // Tried again at the next turn: nothing of a day is lost by closing it later.
            tracing::warn!(%error, "days were not closed");
        }
        tokio::time::sleep(EVERY).await;
    }
}

impl Closer {
    /// Closes what is to be closed now. One write a day: phones are answered in between.
    pub(super) async fn turn(&mut self, hub: &Hub) -> Result<(), HubError> {
        let (now, looked, known) = (hub.now(), self.looked, self.hour);
        let asked = hub.read(move |ledger| {
            let zone = ledger.fleet().zone;
            let hour = closing_hour(zone, now);
            if known == Some(hour) {
                return Ok(None);
            }
            Ok(Some((hour, zone, ledger.store().truth().last_n()?, to_close(ledger, looked, now)?)))
        });
        let Some((hour, zone, last, days)) = asked.await? else { return Ok(()) };
        let at = Stamp::from(now.moment().with_timezone(&zone).fixed_offset());
        self.hour = Some(hour);
        let Some(days) = days else { return Ok(()) };
        for day in days {
            let closing = hub.write(move |shop| close(shop, day, &Hand::nobody(at))).await;
            let closing = closing.inspect_err(|_| self.hour = None)?;
            if let Closing::Closed(sheet) = closing {
                tracing::info!(%day, version = sheet.version, "closed");
            }
        }
        self.looked = last;
        Ok(())
    }
}
