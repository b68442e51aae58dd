//! `campaign`: what a maker asks to be done once on units of some serials.

use std::path::Path;

use sumpbook_trade::checklist::Severity;
use sumpbook_trade::record::CampaignOf;

use super::CommandError;
use super::args::campaign::{Campaign, CampaignVerb, Enter, LocksAsked, Look, OfAsked, Withdraw};
use super::day_sheet::Words;
use super::exchange::known_at;
use super::found::{hand, open};
use super::out::{Said, counted};
use crate::campaign::{CampaignRow, CampaignUnitRow, NewCampaign, ranges_of};
use crate::due::due_list;
use crate::table::table;

/// Lists campaigns, or changes one.
///
/// # Errors
/// As any read; when a campaign, a unit or a person is unknown, or a range does not compare.
pub(super) fn campaign(folder: &Path, args: &Campaign) -> Result<Said, CommandError> {
    match &args.verb {
        None => listed(folder, args),
        Some(CampaignVerb::Enter(enter)) => entered(folder, enter),
        Some(CampaignVerb::Withdraw(withdraw)) => withdrawn(folder, withdraw),
        Some(CampaignVerb::Look(look)) => looked(folder, look),
    }
}

fn listed(folder: &Path, args: &Campaign) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let (then, now) = known_at(&mut shop, args.as_of)?;
    let ledger = then.as_ref().unwrap_or(&shop.ledger);
    let campaigns = due_list(ledger, now)?.campaigns;
    let words = Words::new(ledger.fleet(), ledger.fleet().yard_day(now));
    let known = now.moment().format("%a %-d %b %Y %H:%M");
    let text = match campaigns.is_empty() {
        true => format!("No maker's campaign was entered, as known at {known}."),
        false => format!("Makers' campaigns, as known at {known}\n{}", told(&words, &campaigns)),
    };
    Said::new(text, &serde_json::json!({ "campaigns": campaigns }))
}

/// Each campaign with its units below it.
pub(super) fn told(words: &Words, campaigns: &[CampaignRow]) -> String {
    campaigns.iter().map(|row| one(words, row)).collect::<Vec<_>>().join("\n")
}

fn one(words: &Words, row: &CampaignRow) -> String {
    let of = if row.of == CampaignOf::Set { "compressor sets" } else { "trucks" };
    let ranges = row.ranges.iter().map(|range| match range.from == range.to {
        true => range.from.clone(),
        false => format!("{} to {}", range.from, range.to),
    });
    let hours = row.hours.map_or_else(String::new, |hours| format!(" or at {hours} h"));
    let locks = match (row.locks.as_str(), row.stop) {
        ("note", _) => "locks nothing".to_owned(),
        (locks, true) => format!("the maker says stop: locks {}", locks.replace('-', " ")),
        (locks, false) => format!("locks {} after that day", locks.replace('-', " ")),
    };
    let mut text = format!("{}: {}\n", row.name, row.words);
    let paper = [("paper", &row.paper), ("read at", &row.read_at)];
    for (what, said) in paper.iter().filter_map(|(what, said)| Some((what, said.as_ref()?))) {
        text.push_str(&format!("     {what} {said}\n"));
    }
    text.push_str(&format!(
        "     of {of} {}, by {}{hours}; {locks}\n",
        ranges.collect::<Vec<_>>().join(", "),
        words.day(Some(row.deadline)),
    ));
    if let Some(gone) = &row.withdrawn {
        let (who, at) = (words.who(&gone.by), words.at(gone.at));
        text.push_str(&format!("     taken back by {who} {at}: {}\n", gone.why));
    }
    let rows = row.units.iter().map(|unit| {
        [
            unit.unit.clone(),
            unit.serial.clone().unwrap_or_else(|| "not recorded".to_owned()),
            stands(words, unit),
        ]
    });
    text.push_str(&table(["Unit", "Serial", "State"], rows));
    text.push_str(&format!(
        "\n     {} looked at; {} to be done, {} past the last good day, {} to be looked at, {} done\n",
        counted(row.looked_at, "unit", "units"),
        row.count("open") + row.count("past-deadline"),
        row.count("past-deadline"),
        row.count("look"),
        row.count("done"),
    ));
    text
}

/// "to be done, 27 days left", "look at it: no serial on record", "done 2 Dec 2026 at 1,100.0 h, 2 days late".
fn stands(words: &Words, unit: &CampaignUnitRow) -> String {
    let mut said = match unit.state.as_str() {
        "open" => "to be done".to_owned(),
        "past-deadline" => "past its last good day or hour".to_owned(),
        "look" => format!("look at it: {}", words.text(&look_key(unit), "")),
        "done" => format!("done {}", words.day(unit.done_on)),
        _ => "taken back".to_owned(),
    };
    if let Some(hours) = unit.done_hours {
        said.push_str(&format!(" at {hours} h"));
    }
    if let Some(days) = unit.late_days {
        said.push_str(&format!(", {days} d late"));
    }
    if let Some(days) = unit.days_left {
        said.push_str(&format!(", {days} d left"));
    }
    if let Some(hours) = &unit.hours_left {
        said.push_str(&format!(", {hours} h left"));
    }
    if let Some(looked) = &unit.looked {
        said.push_str(&format!(" (looked at: {looked})"));
    }
    said
}

fn look_key(unit: &CampaignUnitRow) -> String {
    format!("campaign-look-{}", unit.look_why.as_deref().unwrap_or_default())
}

fn entered(folder: &Path, args: &Enter) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let person = shop.person(&args.by)?;
    let hand = hand(&shop, Some(person), args.received);
    let new = NewCampaign {
        name: args.name.clone(),
        words: args.words.clone(),
        paper: args.paper.clone(),
        read_at: args.read_at.clone(),
        of: match args.of {
            OfAsked::Set => CampaignOf::Set,
            OfAsked::Truck => CampaignOf::Truck,
        },
        ranges: args.ranges.iter().flat_map(|range| ranges_of(range)).collect(),
        deadline: args.deadline,
        hours: args.hours,
        severity: match args.locks {
            LocksAsked::Nothing => Severity::Note,
            LocksAsked::Air => Severity::Air,
            LocksAsked::Road => Severity::Road,
            LocksAsked::RoadAndAir => Severity::RoadAndAir,
        },
        stop: args.stop,
    };
    let id = shop.enter_campaign(new, &hand)?;
    shop.ledger.settle()?;
    let campaigns = due_list(&shop.ledger, hand.at)?.campaigns;
    let row = campaigns.into_iter().find(|row| row.entry == id);
    let words = Words::new(shop.ledger.fleet(), shop.ledger.fleet().yard_day(hand.at));
    let below = row.as_ref().map_or_else(String::new, |row| one(&words, row));
    let text = format!("Entered by {}.\n{below}The campaign is entry {id}.", args.by.trim());
    Said::new(text, &serde_json::json!({ "campaign": id, "row": row }))
}

fn withdrawn(folder: &Path, args: &Withdraw) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let person = shop.person(&args.by)?;
    let hand = hand(&shop, Some(person), args.received);
    let id = shop.withdraw_campaign(&args.name, &args.why, &hand)?;
    shop.ledger.settle()?;
    let (name, by) = (args.name.trim(), args.by.trim());
    let text = format!("{name} was taken back by {by}. What was done stays done. That is entry {id}.");
    Said::new(text, &serde_json::json!({ "campaign": id }))
}

fn looked(folder: &Path, args: &Look) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let person = shop.person(&args.by)?;
    let truck = shop.unit(&args.unit)?;
    let hand = hand(&shop, Some(person), args.received);
    let id = shop.look_campaign(&args.name, truck, args.meant, &args.why, &hand)?;
    shop.ledger.settle()?;
    let is = if args.meant { "is meant by" } else { "is not meant by" };
    let (unit, name, by) = (args.unit.trim(), args.name.trim(), args.by.trim());
    let text = format!("{unit} {is} {name}, says {by}. That is entry {id}.");
    Said::new(text, &serde_json::json!({ "campaign": id }))
}
