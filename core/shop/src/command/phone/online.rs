//! `phone DIR exchange`: the phone turns to the hub.

use std::time::{Duration, Instant};

use sumpbook_daybook::exchange;
use sumpbook_daybook::phone::online::{OnlineError, PhotoStop, PhotosSent};
use sumpbook_daybook::text::Texts;

use super::super::args::Phone;
use super::super::out::{Said, counted};
use super::super::{CommandError, clock};
use super::open;

/// Exchanges once.
///
/// # Errors
/// When the hub cannot be reached or says no; everything recorded stays.
pub(super) fn exchange(args: &Phone, seconds: u64) -> Result<Said, CommandError> {
    let mut phone = open(args)?;
    let begun = clock::now();
    super::now(args, phone.ledger())?;
    let given = args.now;
    // A given clock runs on like any other.
    let now = move || match given {
        None => clock::now(),
        Some(at) => {
            let since = clock::now().unix_ms().saturating_sub(begun.unix_ms());
            let ms = at.unix_ms().saturating_add(since);
            sumpbook_trade::Stamp::from_parts(ms, at.offset_minutes()).unwrap_or(at)
        }
    };
    let until = Instant::now() + Duration::from_secs(seconds);
    let done = phone.exchange_once(&now, until).map_err(|error| match error {
        OnlineError::Phone(error) => CommandError::Phone(error),
        OnlineError::Exchange(error) => CommandError::Exchange(error),
        other => CommandError::Asked(other.to_string()),
    })?;
    phone.ledger_mut().settle()?;
    let counts = exchange::counts(phone.ledger())?;
    let count = |n: u64| usize::try_from(n).unwrap_or(usize::MAX);
    let mut lines = Vec::new();
    if !done.enrolled {
        let key = exchange::PendingDevice::fingerprint_of(phone.ledger().own_key().id());
        lines.push(format!("The shop has not let this phone in yet. Its key: {key}\nWhat is recorded is kept; exchange again when the shop has said yes."));
    }
    lines.extend(done.sentences().iter().map(|sentence| sentence.text(Texts::english())));
    if done.stopped {
        lines.push(format!(
            "The shop stopped this phone. {} kept and can be handed over by file; a person there decides.",
            counted(count(counts.own_on_this_phone), "entry is", "entries are")
        ));
    }
    if done.enrolled {
        lines.push(format!(
            "{} reached the shop, {} came from it. {} only on this phone.",
            counted(count(done.acknowledged), "entry", "entries"),
            done.came,
            counted(count(counts.on_this_phone), "entry is", "entries are")
        ));
    }
    lines.extend(photos(&done.photos));
    if let Some(off) = done.clock_off_ms {
        lines.push(clock_off(off));
    }
    if done.refused > 0 {
        lines.push(format!("{} not taken: the Where screen says why.", counted(done.refused, "was", "were")));
    }
    let json = serde_json::json!({
        "acknowledged": done.acknowledged, "came": done.came, "refused": done.refused,
        "enrolled": done.enrolled, "stopped": done.stopped, "shop-set-back": done.shop_set_back,
        "two-shops": done.two_shops, "placed-again": done.placed_again, "whole": done.whole, "messages": done.turns,
        "bytes-sent": done.bytes.0, "bytes-received": done.bytes.1, "clock-off-ms": done.clock_off_ms,
        "photos-sent": done.photos.arrived, "photos-left": done.photos.left,
        "photo-bytes-sent": done.photos.bytes,
        "on-this-phone": counts.on_this_phone, "at-the-shop": counts.at_the_shop,
    });
    Ok(Said::new(lines.join("\n"), &json)?.in_part(!done.whole))
}

/// What became of photos; nothing when there are none to speak of.
fn photos(sent: &PhotosSent) -> Option<String> {
    let many =
        |n: u32| counted(usize::try_from(n).unwrap_or(usize::MAX), "photo or sound", "photos and sounds");
    let why = sent.stopped.as_ref().map(|why| match why {
        PhotoStop::NoWay => "the signal went",
        PhotoStop::NoRoom => "the shop has no room now",
        PhotoStop::Declined(_) => "the shop did not take it",
        PhotoStop::Unreadable => "a photo or sound on this phone cannot be read",
    });
    match (sent.arrived, sent.left) {
        (0, 0) => None,
        (arrived, 0) => Some(format!("{} reached the shop.", many(arrived))),
        (arrived, left) => Some(format!(
            "{} reached the shop, {} not yet: {}. Entries do not wait for them; these go on by themselves.",
            many(arrived),
            many(left),
            why.unwrap_or("there was no time")
        )),
    }
}

/// How far this clock is from the hub's.
fn clock_off(off_ms: i64) -> String {
    let seconds = off_ms.unsigned_abs() / 1_000;
    let far = format!("{}:{:02}:{:02}", seconds / 3_600, seconds / 60 % 60, seconds % 60);
    match off_ms {
        _ if seconds == 0 => "This clock and the hub's agree to the second.".to_owned(),
        ms if ms > 0 => format!("This clock is {far} behind the hub's."),
        _ => format!("This clock is {far} ahead of the hub's."),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn clocks_and_photos_are_said_in_words() {
        assert_eq!(clock_off(400), "This clock and the hub's agree to the second.");
        assert_eq!(clock_off(-125_300), "This clock is 0:02:05 ahead of the hub's.");
        assert_eq!(clock_off(3_661_000), "This clock is 1:01:01 behind the hub's.");
        assert_eq!(photos(&PhotosSent::default()), None);
        let stopped = PhotosSent { arrived: 1, left: 2, bytes: 9, stopped: Some(PhotoStop::NoWay) };
        assert!(
            photos(&stopped).unwrap().starts_with(
                "1 photo or sound reached the shop, 2 photos and sounds not yet: the signal went."
            )
        );
    }
}
