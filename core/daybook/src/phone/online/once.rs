//! One exchange with the hub: as many messages as it takes, until a deadline.

use std::time::{Duration, Instant};

use sumpbook_trade::Stamp;

use super::{BackOff, Hub, HubSaid, PhotosSent, Unreached, Why, is_urgent};
use crate::exchange::{self, Came, ExchangeError};
use crate::phone::{Daybook, PhoneError};

/// Name of the remembered waits.
const BACK_OFF: &str = "back-off";
/// Name of the challenge the hub gave last.
const CHALLENGE: &str = "challenge";
/// Messages in one exchange at most: a year of books comes in fewer.
const MOST_TURNS: usize = 10_000;

/// What came of an exchange.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Exchanged {
    /// Entries the shop acknowledged for the first time in it.
    pub acknowledged: u64,
    /// Entries that came from the shop.
    pub came: usize,
    /// Entries the shop did not take, each with its reason kept beside it.
    pub refused: usize,
    /// Entries put in their place again, because a copy of this phone wrote in it first.
    pub placed_again: usize,
    /// Entries of this phone's own key that came back from the shop: it was put back from a copy, or is not alone.
    pub own_back: usize,
    /// Messages sent.
    pub turns: usize,
    /// Bytes sent and received, bodies only.
    pub bytes: (usize, usize),
    /// The shop has let this phone in; if not, it waits for somebody's yes.
    pub enrolled: bool,
    /// The shop stopped this phone.
    pub stopped: bool,
    /// The hub was set back: what it lost is sent again.
    pub shop_set_back: bool,
    /// Two shops answer with one key.
    pub two_shops: bool,
    /// Everything was exchanged; if not, the deadline came first.
    pub whole: bool,
    /// Hub time minus this clock, milliseconds.
    pub clock_off_ms: Option<i64>,
    /// What became of photos, which go after the entries.
    pub photos: PhotosSent,
}

/// Why an exchange did not come about. Everything recorded stays on this phone.
#[derive(Debug, thiserror::Error)]
pub enum OnlineError {
    /// The folder knows no hub.
    #[error(
        "This phone knows no hub. Your entries are kept on it. Hand them over by file, or ask the shop for a code."
    )]
    NoHub,
    /// No way there.
    #[error(
        "The shop can't be reached ({0}). Your entries are kept on this phone. Go on; they go by themselves, or hand them over by file."
    )]
    NoWay(String),
    /// Somebody else answers there.
    #[error(
        "This is not the shop this phone knows: its key is another. Nothing was sent, all is kept. Call the shop before you go on."
    )]
    OtherKey,
    /// The hub said no, in these words.
    #[error("{words}")]
    Declined {
        /// The status of HTTP.
        status: u16,
        /// Why it let nobody in, when it said so by a word this version knows.
        why: Option<Why>,
        /// Its words.
        words: String,
    },
    /// The exchange said no.
    #[error(transparent)]
    Exchange(#[from] ExchangeError),
    /// The phone's folder said no.
    #[error(transparent)]
    Phone(#[from] PhoneError),
}

/// When this phone should turn to the hub.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wish {
    /// At once: something urgent is not at the shop, or a try is due.
    Now,
    /// Not before this moment, milliseconds.
    NotBefore(i64),
}

impl Daybook {
    /// Exchanges with the hub until nothing is left or `until` comes. `clock` is asked for the moment of each
    /// message. Cut anywhere, nothing is lost or doubled; a failure makes the next try wait longer.
    ///
    /// # Errors
    /// [`OnlineError`]; everything recorded stays.
    pub fn exchange_once(
        &mut self,
        clock: &dyn Fn() -> Stamp,
        until: Instant,
    ) -> Result<Exchanged, OnlineError> {
        let address = self.home().hub.clone().ok_or(OnlineError::NoHub)?;
        let root = self.ledger().root();
        let hub = Hub::new(&address, root.fleet, root.shop).map_err(unreached)?;
        self.exchange_over(&hub, clock, until)
    }

    /// The same over a way that is kept warm.
    ///
    /// # Errors
    /// As [`Daybook::exchange_once`].
    pub fn exchange_over(
        &mut self,
        hub: &Hub,
        clock: &dyn Fn() -> Stamp,
        until: Instant,
    ) -> Result<Exchanged, OnlineError> {
        let before = exchange::counts(self.ledger())?.on_this_phone;
        let mut asked_s = None;
        let done = self.turns(hub, clock, until, &mut asked_s);
        let now = clock();
        match &done {
            Ok(_) => self.keep_back_off(BackOff::default())?,
            Err(error) => {
                let mut random = [0; 4];
                getrandom::fill(&mut random).map_err(PhoneError::from)?;
                let next =
                    self.back_off()?.failed(now, error.tried_why(), u32::from_ne_bytes(random), asked_s);
                self.keep_back_off(next)?;
            }
        }
        let (mut exchanged, token) = done?;
        exchanged.acknowledged = before.saturating_sub(exchange::counts(self.ledger())?.on_this_phone);
        if exchanged.whole {
            exchange::memory::forget_salvaged(self.ledger_mut().store_mut()).map_err(PhoneError::from)?;
        }
        if exchanged.shop_set_back {
            self.ledger_mut().store_mut().doubt_photos().map_err(PhoneError::from)?;
        }
        if let Some(token) = token.filter(|_| exchanged.whole && !exchanged.two_shops) {
            exchanged.photos = self.send_photos(hub, &token, clock, until)?;
        }
        Ok(exchanged)
    }

    /// What came of the entries, and the permission to send photos.
    fn turns(
        &mut self,
        hub: &Hub,
        clock: &dyn Fn() -> Stamp,
        until: Instant,
        asked_s: &mut Option<u64>,
    ) -> Result<(Exchanged, Option<[u8; 32]>), OnlineError> {
        let mut done = Exchanged::default();
        let mut token = None;
        let (mut stale, mut unknown) = (0, 0);
        for _ in 0..MOST_TURNS {
            let sent_at = clock();
            let challenge = self.challenge()?;
            let request = exchange::request(self.ledger_mut(), challenge, sent_at)?;
            let said = hub.exchange(&request.bytes, until).map_err(unreached)?;
            done.turns += 1;
            done.bytes = (done.bytes.0 + request.bytes.len(), done.bytes.1 + said.body.len());
            if let Some(challenge) = said.challenge {
                self.ledger_mut().store_mut().set_setting(CHALLENGE, &challenge).map_err(PhoneError::from)?;
            }
            match said.status {
                200 => {}
                // The challenge ran out meanwhile: once more with the fresh one.
                409 if stale < 2 => {
                    stale += 1;
                    continue;
                }
                // A hub set back to before it let this phone in: show what it said then.
                401 if unknown == 0 && self.is_enrolled() => {
                    unknown += 1;
                    exchange::not_known(self.ledger_mut())?;
                    continue;
                }
                _ => {
                    *asked_s = said.wait_s;
                    return Err(declined(&said));
                }
            }
            stale = 0;
            let came =
                exchange::take_answer(self.ledger_mut(), request.digest, &said.body, sent_at, clock())?;
            done.add(&came);
            token = came.token.or(token);
            if !came.more {
                done.whole = came.enrolled;
                break;
            }
            if Instant::now() >= until {
                break;
            }
        }
        Ok((done, token))
    }

    /// When to turn to the hub next, as of `now`.
    ///
    /// # Errors
    /// As any read.
    pub fn wish(&self, now: Stamp) -> Result<Wish, PhoneError> {
        let back_off = self.back_off()?;
        if back_off.is_due(now) || self.has_urgent()? {
            return Ok(Wish::Now);
        }
        Ok(Wish::NotBefore(back_off.not_before_ms))
    }

    /// Whether something the shop should hear of at once is only on this phone.
    ///
    /// # Errors
    /// As any read.
    pub fn has_urgent(&self) -> Result<bool, PhoneError> {
        for held in exchange::not_at_shop(self.ledger())? {
            if let Ok(entry) = sumpbook_trade::Entry::from_payload(&held.row.payload)
                && is_urgent(self.ledger().fleet(), &entry)
            {
                return Ok(true);
            }
        }
        Ok(false)
    }

    /// Failures in a row and when the next try is due.
    ///
    /// # Errors
    /// As any read.
    pub fn back_off(&self) -> Result<BackOff, PhoneError> {
        let kept = self.ledger().store().setting(BACK_OFF)?;
        Ok(kept.and_then(|bytes| BackOff::from_bytes(&bytes)).unwrap_or_default())
    }

    fn keep_back_off(&mut self, next: BackOff) -> Result<(), PhoneError> {
        if self.back_off()? != next {
            self.ledger_mut().store_mut().set_setting(BACK_OFF, &next.to_bytes())?;
        }
        Ok(())
    }

    fn challenge(&self) -> Result<[u8; 16], PhoneError> {
        let kept = self.ledger().store().setting(CHALLENGE)?;
        Ok(kept.and_then(|bytes| bytes.try_into().ok()).unwrap_or_default())
    }

    fn is_enrolled(&self) -> bool {
        let own = self.ledger().own_key().id();
        self.ledger().key(own).is_some()
    }
}

impl Exchanged {
    fn add(&mut self, came: &Came) {
        self.came += came.taken.admitted;
        self.refused += came.taken.refused.len();
        self.placed_again += came.taken.placed_again;
        self.own_back += came.taken.own_back;
        self.enrolled = came.enrolled;
        self.stopped |= came.stopped;
        self.shop_set_back |= came.taken.shop_set_back;
        self.two_shops |= came.taken.two_shops;
        self.clock_off_ms = came.clock_off_ms.or(self.clock_off_ms);
    }
}

fn unreached(why: Unreached) -> OnlineError {
    match why {
        Unreached::OtherKey => OnlineError::OtherKey,
        other => OnlineError::NoWay(other.to_string()),
    }
}

fn declined(said: &HubSaid) -> OnlineError {
    let words: String = String::from_utf8_lossy(&said.body).chars().filter(|c| !c.is_control()).collect();
    OnlineError::Declined { status: said.status, why: said.why, words }
}

/// So long a whole exchange may take when nobody says otherwise.
pub const PATIENCE: Duration = Duration::from_secs(60);
