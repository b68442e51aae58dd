//! `record` at the shop: lines of JSON, signed with the shop's key.

use std::path::Path;

use sumpbook_daybook::ledger::{NewEntry, new_id};
use sumpbook_daybook::line::{Line, Writer};
use sumpbook_trade::record::Source;
use sumpbook_trade::{Fact, FactKind};

use super::args::FromLines;
use super::found::{hand, open, read_lines};
use super::{CommandError, out};
use crate::service::not_before_service;
use crate::{Shop, ShopError};

/// Records each line; its id is printed when its entry is durable.
///
/// # Errors
/// At the first line that does not read; those before it are recorded.
pub(super) fn record(folder: &Path, args: &FromLines, json: bool) -> Result<(), CommandError> {
    let mut shop = open(folder)?;
    if args.received.is_some() && !shop.ledger.fleet().demo {
        return Err(ShopError::ReceivedGiven.into());
    }
    let text = read_lines(args)?;
    for (recorded, (number, line)) in Line::read_all(&text).enumerate() {
        let id = line
            .map_err(CommandError::from)
            .and_then(|line| one(&mut shop, line, args))
            .map_err(|e| CommandError::Line { number, reason: e.to_string(), recorded })?;
        let told = if json { serde_json::json!({ "recorded": id }).to_string() } else { id.to_string() };
        out::line(&told)?;
    }
    shop.ledger.settle()?;
    if text.trim().is_empty() {
        out::aside("sumpbook: no lines came; nothing was recorded. Give one JSON object a line.");
    }
    Ok(())
}

fn one(shop: &mut Shop, mut line: Line, args: &FromLines) -> Result<sumpbook_trade::EntryId, CommandError> {
    if has_its_own_verb(line.fact.kind()) {
        return Err(CommandError::Asked(
            "this kind has a verb of its own. Use register, take-in --accept, certify, settle, campaign or day-sheet --close."
                .to_owned(),
        ));
    }
    // Whoever types at the shop is not a phone; where the record says nothing else, the shop saw it.
    line.source = Some(line.source.filter(|source| *source != Source::Phone).unwrap_or(Source::Shop));
    let hand = hand(shop, None, args.received);
    let id = new_id(hand.at).map_err(|e| CommandError::Asked(e.to_string()))?;
    let writer = Writer { now: hand.at, clock_off_ms: Some(0), id };
    let template = shop.ledger.fleet().checklist().map_err(|e| CommandError::Asked(e.to_string()))?;
    let entry = line.resolve(shop.ledger.fleet(), template, &writer)?;
    let id = entry.id;
    // An old binder is kept as it stands.
    let told = matches!(entry.fact, Fact::ServiceDone(_)) && entry.source != Source::BroughtIn;
    if told && entry.at > hand.at {
        return Err(ShopError::Ahead(entry.at).into());
    }
    if let Some(truck) = entry.unit.filter(|_| told) {
        not_before_service(shop, truck, entry.at)?;
    }
    let received = args.received.unwrap_or(hand.at).unix_ms();
    shop.ledger.record(&[NewEntry::about_its_unit(entry)], received)?;
    Ok(id)
}

fn has_its_own_verb(kind: FactKind) -> bool {
    matches!(
        kind,
        FactKind::FleetNamed
            | FactKind::TruckRegistered
            | FactKind::SetRegistered
            | FactKind::ProgrammeSet
            | FactKind::PersonSet
            | FactKind::DeviceEnrolled
            | FactKind::DayStatusSet
            | FactKind::SheetClosed
            | FactKind::Decision
            | FactKind::Certificate
            | FactKind::CampaignSet
    ) || Fact::Newer { code: 0, body: Vec::new() }.kind() == kind
}
