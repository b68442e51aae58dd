//! A calendar feed of what runs out: one whole day for each task of each unit, its last good day or, where the hours
//! likely run out before it, that likely day, and said so.
//!
//! A feed with a due moment would be overdue at that midnight. Names of items stay, `SEQUENCE` rises only when the
//! answer moved, and what was done stays in the feed as cancelled (RFC 5545). Readers of calendars cannot sign in, so
//! the address holds a secret; it can be ended, and another made.

mod ical;
mod kept;

use chrono::{Datelike, Days, NaiveDate};
use sha2::{Digest, Sha256};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::Stamp;

use crate::console::{say_in, task_in};
use crate::{Shop, ShopError};
use ical::{line, text};
use kept::{Answer, Ended, Item, Kept};

/// A feed as it reads now.
pub struct Feed {
    kept: Kept,
    moved: bool,
    fleet: String,
    host: String,
    /// Added to every number. A shop that was restored has forgotten how far its numbers went.
    base: u32,
}

/// More often than this no answer moves between a backup and its restoring.
const A_LIFE: u32 = 1_000;

impl Feed {
    /// Works the feed out from what is known now. Nothing is written: see [`keep`].
    ///
    /// # Errors
    /// As any read.
    pub fn read(ledger: &Ledger, now: Stamp) -> Result<Feed, ShopError> {
        let before = Kept::of(ledger)?;
        let mut kept = before.clone();
        kept.refresh(ledger, now)?;
        let moved = kept != before;
        let host = sumpbook_daybook::phone::online::host_name(ledger.root().fleet);
        let lives = sumpbook_daybook::exchange::epochs(ledger)
            .map_err(|error| ShopError::Feed(error.to_string()))?
            .len();
        let base = u32::try_from(lives.saturating_sub(1)).unwrap_or(0).saturating_mul(A_LIFE);
        Ok(Feed { moved, kept, fleet: ledger.fleet().name.clone(), host, base })
    }

    /// Whether something moved since it was last kept: then it must be kept before it is told, or the next telling
    /// could give the same number to another answer.
    pub fn moved(&self) -> bool {
        self.moved
    }

    /// As a file, in the words of a language by its tag.
    pub fn to_ics(&self, language: &str) -> String {
        let mut to = String::new();
        let name = say_in(language, "feed-name", &[("fleet", Arg::Text(&self.fleet))]);
        line(&mut to, "BEGIN", "VCALENDAR");
        line(&mut to, "VERSION", "2.0");
        line(&mut to, "PRODID", "-//Sumpbook//What runs out//EN");
        line(&mut to, "CALSCALE", "GREGORIAN");
        line(&mut to, "NAME", &text(&name));
        line(&mut to, "X-WR-CALNAME", &text(&name));
        line(&mut to, "REFRESH-INTERVAL;VALUE=DURATION", "PT1H");
        for (name, item) in &self.kept.items {
            self.event(&mut to, language, name, item);
        }
        line(&mut to, "END", "VCALENDAR");
        to
    }

    fn event(&self, to: &mut String, language: &str, name: &str, item: &Item) {
        let Answer { day, by_hours, likely, called, due_hours, ended } = &item.answer;
        let next = day.checked_add_days(Days::new(1)).unwrap_or(*day);
        let moved = item.moved.moment().to_utc().format("%Y%m%dT%H%M%SZ").to_string();
        let task = task_in(language, &item.task);
        let (summary, status) = match ended {
            None if *called => (self.said(language, "feed-called", item, &task, *day), "CONFIRMED"),
            // A day that is only likely is a tentative one (RFC 5545, 3.8.1.11).
            None if *likely => (self.said(language, "feed-likely", item, &task, *day), "TENTATIVE"),
            None => (self.said(language, "feed-open", item, &task, *day), "CONFIRMED"),
            Some(Ended::Done(done)) => (self.said(language, "feed-done", item, &task, *done), "CANCELLED"),
            Some(Ended::Gone) => (self.said(language, "feed-gone", item, &task, *day), "CANCELLED"),
        };
        let mut words = Vec::new();
        match (*likely, *by_hours) {
            (true, _) => words.push(say_in(language, "feed-by-pace", &[])),
            (false, true) => words.push(say_in(language, "feed-by-hours", &[])),
            (false, false) => {}
        }
        if let Some(hours) = due_hours {
            words.push(say_in(language, "feed-hours", &[("hours", Arg::Text(&hours.to_string()))]));
        }
        words.push(say_in(language, "feed-manual", &[]));
        line(to, "BEGIN", "VEVENT");
        line(to, "UID", &text(&format!("{name}@{}", self.host)));
        line(to, "DTSTAMP", &moved);
        line(to, "LAST-MODIFIED", &moved);
        line(to, "SEQUENCE", &item.sequence.saturating_add(self.base).to_string());
        line(to, "DTSTART;VALUE=DATE", &compact(*day));
        line(to, "DTEND;VALUE=DATE", &compact(next));
        line(to, "SUMMARY", &text(&summary));
        line(to, "DESCRIPTION", &text(&words.join("\n")));
        line(to, "STATUS", status);
        line(to, "TRANSP", "TRANSPARENT");
        line(to, "END", "VEVENT");
    }

    fn said(&self, language: &str, key: &str, item: &Item, task: &str, day: NaiveDate) -> String {
        let month = say_in(language, &format!("month-{}", day.month()), &[]);
        let (number, year) = (day.day().to_string(), day.year().to_string());
        let day = [("day", Arg::Text(&number)), ("month", Arg::Text(&month)), ("year", Arg::Text(&year))];
        let day = say_in(language, "ask-day-year", &day);
        say_in(
            language,
            key,
            &[("unit", Arg::Text(&item.unit)), ("task", Arg::Text(task)), ("day", Arg::Text(&day))],
        )
    }
}

fn compact(day: NaiveDate) -> String {
    day.format("%Y%m%d").to_string()
}

/// Works the feed out and keeps what it says, so that the next one goes on from it.
///
/// # Errors
/// As any write.
pub fn keep(shop: &mut Shop, now: Stamp) -> Result<Feed, ShopError> {
    shop.ledger.settle()?;
    let feed = Feed::read(&shop.ledger, now)?;
    if feed.moved {
        shop.ledger.store_mut().keep_calendar(&feed.kept.bytes()?)?;
    }
    Ok(feed)
}

/// Makes an address for the feed, and gives back its secret part. One made before ends.
///
/// # Errors
/// As any write.
pub fn make_address(shop: &mut Shop) -> Result<String, ShopError> {
    let mut kept = Kept::of(&shop.ledger)?;
    kept.make_token()?;
    shop.ledger.store_mut().keep_calendar(&kept.bytes()?)?;
    Ok(kept.token.unwrap_or_default())
}

/// Ends the feed's address.
///
/// # Errors
/// As any write.
pub fn end_address(shop: &mut Shop) -> Result<(), ShopError> {
    let mut kept = Kept::of(&shop.ledger)?;
    kept.token = None;
    Ok(shop.ledger.store_mut().keep_calendar(&kept.bytes()?)?)
}

/// The secret part of the feed's address, when one was made.
///
/// # Errors
/// As any read.
pub fn address(ledger: &Ledger) -> Result<Option<String>, ShopError> {
    Ok(Kept::of(ledger)?.token)
}

/// Whether this is the secret of the feed's address. Costs next to nothing, so that nobody without it can make the
/// hub work; takes as long whatever differs.
///
/// # Errors
/// As any read.
pub fn opens(ledger: &Ledger, token: &str) -> Result<bool, ShopError> {
    let Some(own) = address(ledger)? else { return Ok(false) };
    let [one, other] =
        [own.as_str(), token].map(|token| -> [u8; 32] { Sha256::digest(token.as_bytes()).into() });
    Ok(one.iter().zip(other).fold(0, |differs, (a, b)| differs | (a ^ b)) == 0)
}

/// Where the hub serves the feed of this secret.
pub fn path(token: &str) -> String {
    format!("/calendar/{token}.ics")
}
