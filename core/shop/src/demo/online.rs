//! The demo's hub, and its phones' way there: real TLS on this machine.

use std::path::Path;
use std::time::{Duration, Instant};

use sumpbook_daybook::exchange;
use sumpbook_daybook::phone::{Daybook, FileSeal};
use sumpbook_trade::{Stamp, TruckId};

use super::DemoError;
use crate::Shop;
use crate::hub::{Hub, HubClock, HubError, Running, ServeOptions, serve};

/// So long one exchange may take.
const PATIENCE: Duration = Duration::from_secs(30);
/// The phones of a month hurry through it.
const A_SECOND: std::num::NonZeroU32 = std::num::NonZeroU32::new(10_000).unwrap();

/// A hub over the demo's shop, on threads of its own.
pub struct Online {
    threads: tokio::runtime::Runtime,
    running: Option<Running>,
    hub: Hub,
    clock: HubClock,
}

impl Online {
    /// Begins to answer at one of these addresses, the first that is free.
    ///
    /// # Errors
    /// When none can be listened on.
    pub fn begin(shop: &Path, addresses: &[String], at: Stamp) -> Result<Online, DemoError> {
        let threads = tokio::runtime::Builder::new_multi_thread().enable_all().build()?;
        let clock = HubClock::beginning_at(at);
        let hub = Hub::over(Shop::open(shop)?, clock.clone())?;
        let mut failed = None;
        for address in addresses {
            let options = ServeOptions { address: address.clone(), a_second: A_SECOND, closes_days: false };
            match threads.block_on(serve(hub.clone(), &options)) {
                Ok(running) => return Ok(Online { threads, running: Some(running), hub, clock }),
                Err(error) => failed = Some(error),
            }
        }
        hub.stop();
        Err(failed.map_or(DemoError::Month("a hub without an address"), DemoError::from))
    }

    /// Where it answers, `host:port`.
    pub fn address(&self) -> String {
        self.running.as_ref().map(|running| running.address.to_string()).unwrap_or_default()
    }

    /// SHA-256 of the certificate that browsers are shown.
    ///
    /// # Errors
    /// When it cannot be read.
    pub fn fingerprint(&self) -> Result<String, DemoError> {
        Ok(self.hub.shown_fingerprint()?)
    }

    /// Sets the hub's clock.
    pub fn set_clock(&self, at: Stamp) {
        self.clock.set(at);
    }

    /// Lets a new phone in as a person does: a code on the shop's screen, the phone's key told back and
    /// accepted by name.
    ///
    /// # Errors
    /// When a step of it is refused.
    pub fn enrol(
        &self,
        shop: &mut Shop,
        home: &Path,
        name: &str,
        trucks: &[TruckId],
        at: Stamp,
    ) -> Result<Daybook, DemoError> {
        self.clock.set(at);
        let code = exchange::invite_by_code(&mut shop.ledger, trucks, &self.address(), at)?;
        let seal = FileSeal::new(home.join("phone.key"));
        let mut phone = Daybook::enrol_by_code(home, &code, name, &seal)?;
        self.exchange(&mut phone, at)?;
        let asks = exchange::pending(&shop.ledger, at)?;
        let asking = asks.iter().find(|device| device.name == name);
        let asking = asking.ok_or(DemoError::Month("a phone that does not ask"))?;
        let by = shop.person("Ilse Marrow")?;
        exchange::accept(&mut shop.ledger, &asking.fingerprint, Some(by), at)?;
        self.exchange(&mut phone, at)?;
        Ok(phone)
    }

    /// One exchange of a phone with the hub.
    ///
    /// # Errors
    /// When it does not come about.
    pub fn exchange(&self, phone: &mut Daybook, at: Stamp) -> Result<(), DemoError> {
        self.clock.set(at);
        let done = phone.exchange_once(&|| at, Instant::now() + PATIENCE)?;
        if done.whole || !done.enrolled { Ok(()) } else { Err(DemoError::Month("an exchange cut short")) }
    }

    /// Waits until `asked` is answered, the hub answering meanwhile.
    pub fn until<T>(&self, asked: impl Future<Output = T>) -> T {
        self.threads.block_on(asked)
    }

    /// Ends the hub.
    ///
    /// # Errors
    /// When it ended otherwise.
    pub fn stop(mut self) -> Result<(), HubError> {
        match self.running.take() {
            Some(running) => self.threads.block_on(running.stop()),
            None => Ok(()),
        }
    }
}
