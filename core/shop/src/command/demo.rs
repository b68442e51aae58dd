//! `demo`: the invented fleet lives a few days.

use std::path::PathBuf;

use chrono::NaiveDate;
use sumpbook_trade::Stamp;

use super::args::Demo;
use super::day_sheet::{self, Words};
use super::{CommandError, due, out};
use crate::demo::{DemoError, World, moment};
use crate::due::due_list;
use crate::sheet::{View, day_sheet as read_sheet};

/// Lives the days, prints the last one's sheet and the due list, and says where to look next.
///
/// # Errors
/// When the folder cannot be written.
pub(super) fn demo(args: &Demo, json: bool) -> Result<(), CommandError> {
    let day = match args.until {
        Some(day) => day,
        None => "2026-10-21".parse::<NaiveDate>().map_err(DemoError::from)?,
    };
    let folder = match &args.folder {
        Some(folder) => folder.clone(),
        None => kept_temporary()?,
    };
    out::aside(&format!("Tern Hollow Water, an invented fleet, in {}", folder.display()));
    out::aside("A shop, eight phones, no network: files carry everything.");
    let mut world = World::begin(&folder)?;
    let until = evening_of(day)?;
    let mut told: Option<NaiveDate> = None;
    let mut deeds = 0usize;
    world.live_until(until, &mut |deed| {
        let of = deed.at.moment().date_naive();
        deeds += 1;
        if told != Some(of) {
            told = Some(of);
            out::aside(&format!("  {} ...", of.format("%a %-d %b")));
        }
    })?;
    world.shop.ledger.settle()?;
    let sheet = read_sheet(&world.shop.ledger, day, View::Evening, until)?;
    let list = due_list(&world.shop.ledger, until)?;
    if json {
        let said = serde_json::json!({ "folder": folder, "deeds": deeds, "sheet": sheet, "due": list });
        return out::line(&said.to_string());
    }
    let words = Words::new(world.shop.ledger.fleet(), day);
    out::line(&format!("\n{}", day_sheet::told(&world.shop.ledger, &sheet)))?;
    out::line(&format!("{}\n{}\n", due::NEAR, due::due_rows(&words, &due::near(&list.rows))))?;
    out::line(&next_steps(&folder, day, until))
}

fn next_steps(folder: &std::path::Path, day: NaiveDate, until: Stamp) -> String {
    let shop = folder.join("shop");
    let (shop, phone) = (shop.display(), folder.join("yard-phone-2"));
    let at = until.to_string();
    // As it was called, so that the lines below run as they stand.
    let me = std::env::args().next().unwrap_or_else(|| "sumpbook".to_owned());
    format!(
        "Where to look next (an invented fleet; its folder stays until you delete it):\n\
         \x20 {me} --shop {shop} day-sheet 2026-10-20 --as-of 2026-10-20T17:00:00-06:00     one lamp, two answers\n\
         \x20 {me} --shop {shop} day-sheet {day} --view morning --as-of {at}\n\
         \x20 {me} --shop {shop} verify\n\
         \x20 {me} phone {} show unit --unit TH-02 --person 'Bettina Quaye' --now {at}",
        phone.display()
    )
}

/// 17:00 of the yard on that day.
fn evening_of(day: NaiveDate) -> Result<Stamp, CommandError> {
    let zone: chrono_tz::Tz = crate::demo::ZONE.parse().unwrap_or(chrono_tz::Tz::UTC);
    let there = day
        .and_hms_opt(17, 0, 0)
        .and_then(|at| at.and_local_timezone(zone).earliest())
        .map(|at| Stamp::new(at.fixed_offset()));
    match there {
        Some(at) => Ok(at),
        None => Ok(moment("2026-10-21T17:00:00-06:00")?),
    }
}

/// A temporary folder that stays, so that there is something to look at afterwards.
fn kept_temporary() -> Result<PathBuf, CommandError> {
    let folder = tempfile::Builder::new().prefix("tern-hollow-water-").tempdir()?;
    Ok(folder.keep())
}
