//! `bring-in` and `take-out`: tables.

use std::fs;
use std::path::Path;

use super::args::in_out::{BringIn, TakeOut};
use super::exchange::{known_at, moment, write_whole};
use super::found::open;
use super::out::{self, Said, counted};
use super::{CommandError, clock};
use crate::Hand;
use crate::table::table;
use crate::table_in::{self, Asked, DryRun, Here, TableError};
use crate::table_out::{self, Of};

/// Tells what would come in; brings it in when its dry run was seen.
///
/// # Errors
/// When the file is no table, something must be said about it first, or it is not what the dry run saw.
pub(super) fn bring_in(folder: &Path, args: &BringIn) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let file =
        fs::read(&args.file).map_err(|reason| CommandError::File { path: args.file.clone(), reason })?;
    let asked = Asked {
        what: args.what.what(),
        dates: args.dates.map(super::args::in_out::DatesAsked::style),
        decimals: args.decimals.map(super::args::in_out::DecimalsAsked::style),
    };
    let at = moment(&shop, args.received)?;
    let person = args.by.as_deref().map(|name| shop.person(name)).transpose()?;
    let hand = Hand { person, at, received: args.received };
    let told = match &args.seen {
        Some(seen) => table_in::bring_in(&mut shop, &file, &asked, seen, &hand)?,
        None => table_in::dry_run(&shop.ledger, &file, &asked, at)?,
    };
    if let Some(ask) = &told.ask {
        let options = "Give --dates mdy, dmy, iso or serial, and --decimals point or comma.";
        let said = Said::new(format!("{ask}\n{options}"), &told)?;
        return Err(CommandError::Found(Box::new(said)));
    }
    if let Some(path) = &args.refused {
        let rows =
            table_in::refused_csv(&file, &told, |why| why.to_string()).map_err(crate::ShopError::from)?;
        write_whole(path, &rows, "Nothing of them came in.")?;
    }
    Said::new(text(&told, args.seen.is_some()), &told)
}

fn text(told: &DryRun, done: bool) -> String {
    let mut text = match done {
        true => format!(
            "{} brought in. {} refused, {} here already.\n",
            counted(told.good, "row", "rows"),
            told.refused_rows,
            told.here
        ),
        false => format!(
            "Dry run: {} good, {} refused, {} already here. Nothing was brought in yet.\n",
            told.good, told.refused_rows, told.here
        ),
    };
    if !told.unused.is_empty() {
        text.push_str(&format!("Nothing is done with these columns: {}\n", told.unused.join(", ")));
    }
    let refused = told.refused.iter().map(|refused| {
        [refused.row.to_string(), refused.field.clone(), refused.as_written.clone(), refused.why.to_string()]
    });
    text.push_str(&table(["Row", "Field", "As written", "Why refused"], refused));
    if done {
        return text;
    }
    let first = told.first.iter().map(|read| {
        let hours = read.hours.map_or_else(|| "-".to_owned(), |hours| hours.to_string());
        [read.row.to_string(), read.unit.clone(), read.day.format("%-d %B %Y").to_string(), hours]
    });
    let first = table(["Row", "Unit", "Read as", "Hours"], first);
    if !first.is_empty() {
        text.push_str(&format!("\nThe first good rows as they were read:\n{first}"));
    }
    let already = told.already.iter().map(|already| {
        let place = match &already.here {
            Here::Recorded { at, .. } => format!("recorded {at}"),
            Here::Registered => "registered so".to_owned(),
            Here::Row { same_as } => format!("same as row {same_as}"),
        };
        [already.row.to_string(), place]
    });
    let already = table(["Row", "Already here"], already);
    if !already.is_empty() {
        text.push_str(&format!("\n{already}"));
    }
    if told.good > 0 {
        text.push_str(&format!(
            "\nTo bring in the {}, say it again with:\n  --by NAME --seen {}",
            counted(told.good, "good row", "good rows"),
            told.seen
        ));
    }
    text
}

/// Writes a table.
///
/// # Errors
/// As any read; when the file cannot be written.
pub(super) fn take_out(folder: &Path, args: &TakeOut, json: bool) -> Result<Option<Said>, CommandError> {
    let mut shop = open(folder)?;
    let trucks = args.units.iter().map(|door| shop.unit(door)).collect::<Result<Vec<_>, _>>()?;
    let (then, now) = known_at(&mut shop, args.as_of)?;
    let ledger = then.as_ref().unwrap_or(&shop.ledger);
    let of = if trucks.is_empty() { Of::Fleet } else { Of::Units(&trucks) };
    let sheet = table_out::table(ledger, args.kind, of, now)?;
    let bytes = sheet.to_csv(args.mark);
    let Some(path) = &args.to else {
        if json {
            let rows: Vec<Vec<&str>> =
                sheet.rows.iter().map(|row| row.iter().map(table_out::Cell::as_str).collect()).collect();
            return Said::new("", &serde_json::json!({ "heads": sheet.heads, "rows": rows })).map(Some);
        }
        out::bytes(&bytes)?;
        return Ok(None);
    };
    write_whole(path, &bytes, "Nothing was changed.")?;
    let text = format!(
        "{} holds {} of {}.",
        path.display(),
        counted(sheet.rows.len(), "row", "rows"),
        args.kind.name()
    );
    Said::new(text, &serde_json::json!({ "file": path, "kind": args.kind, "rows": sheet.rows.len() }))
        .map(Some)
}

/// What a table refuses, as any command does.
impl From<TableError> for CommandError {
    fn from(error: TableError) -> CommandError {
        CommandError::Shop(error.into())
    }
}

/// Now on the yard's clock.
pub(super) fn now(shop: &crate::Shop) -> sumpbook_trade::Stamp {
    clock::in_zone(clock::now(), shop.ledger.fleet().zone)
}
