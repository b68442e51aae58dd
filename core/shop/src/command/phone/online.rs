//! `phone DIR exchange`: the phone turns to the hub.

use std::time::{Duration, Instant};

use sumpbook_daybook::exchange;
use sumpbook_daybook::phone::online::OnlineError;

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
    if done.two_shops {
        lines.push(
            "Two shops answer with one key. Nothing is lost. Tell the shop before you go on.".to_owned(),
        );
    }
    if done.shop_set_back {
        lines.push("The shop was set back to an older day: what it lost was sent again.".to_owned());
    }
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
    if done.refused > 0 {
        lines.push(format!("{} not taken: the Where screen says why.", counted(done.refused, "was", "were")));
    }
    let json = serde_json::json!({
        "acknowledged": done.acknowledged, "came": done.came, "refused": done.refused,
        "enrolled": done.enrolled, "stopped": done.stopped, "shop-set-back": done.shop_set_back,
        "two-shops": done.two_shops, "whole": done.whole, "messages": done.turns,
        "bytes-sent": done.bytes.0, "bytes-received": done.bytes.1, "clock-off-ms": done.clock_off_ms,
        "on-this-phone": counts.on_this_phone, "at-the-shop": counts.at_the_shop,
    });
    Ok(Said::new(lines.join("\n"), &json)?.in_part(!done.whole))
}
