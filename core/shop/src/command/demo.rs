//! `demo`: the invented fleet lives its days, and the console opens on the last of them.

use std::path::Path;

use chrono::NaiveDate;
use sumpbook_trade::Stamp;

use super::args::Demo;
use super::day_sheet::{self, Words};
use super::serve::asked_to_end;
use super::{CommandError, due, out};
use crate::console::session::{Role, Users};
use crate::demo::{DemoError, World, moment};
use crate::due::due_list;
use crate::sheet::{View, day_sheet as read_sheet};

/// Where the hub listens when nobody says otherwise: this machine alone, and another port if that one is taken.
const ADDRESSES: [&str; 2] = ["127.0.0.1:8443", "127.0.0.1:0"];
/// The day it opens on.
const DAY: &str = "2026-11-09";
/// Who signs in. Both stand on the sign-in page, marked as the demo's.
const NAME: &str = "Ilse Marrow";
const PASSWORD: &str = "tern-hollow-17";

/// Lives the days and ends with the console open on the last of them; or, without a hub, with the last day's
/// sheet and the due list.
///
/// # Errors
/// When the folder cannot be written, or no address can be listened on.
pub(super) fn demo(args: &Demo, json: bool) -> Result<(), CommandError> {
    let day = match args.until {
        Some(day) => day,
        None => DAY.parse::<NaiveDate>().map_err(DemoError::from)?,
    };
    let temporary = tempfile::Builder::new().prefix("tern-hollow-water-").tempdir()?;
    let folder = args.folder.clone().unwrap_or_else(|| temporary.path().to_owned());
    out::aside(&format!("Tern Hollow Water, an invented fleet, in {}", folder.display()));
    let hub = !args.no_hub && !json;
    let mut world = if hub {
        out::aside("A shop with its hub, and eight phones that reach it in the evening.");
        World::begin_online(&folder, &addresses(args))?
    } else {
        out::aside("A shop, eight phones, no network: files carry everything.");
        World::begin(&folder)?
    };
    let until = evening_of(day)?;
    let deeds = live(&mut world, until)?;
    if hub {
        opened(world, until, &folder, args.folder.is_some())?;
        return Ok(temporary.close()?);
    }
    let sheet = read_sheet(&world.shop.ledger, day, View::Evening, until)?;
    let list = due_list(&world.shop.ledger, until)?;
    // What was made is there to look at.
    let _kept = temporary.keep();
    if json {
        let said = serde_json::json!({ "folder": folder, "deeds": deeds, "sheet": sheet, "due": list });
        return out::line(&said.to_string());
    }
    let words = Words::new(world.shop.ledger.fleet(), day);
    out::line(&format!("\n{}", day_sheet::told(&world.shop.ledger, &sheet)))?;
    out::line(&format!("{}\n{}\n", due::NEAR, due::due_rows(&words, &due::near(&list.rows))))?;
    out::line(&next_steps(&folder, day, until))
}

fn addresses(args: &Demo) -> Vec<String> {
    match &args.address {
        Some(address) => vec![address.clone()],
        None => ADDRESSES.map(str::to_owned).to_vec(),
    }
}

/// Lives until a moment, with a word for each day.
fn live(world: &mut World, until: Stamp) -> Result<usize, CommandError> {
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
    Ok(deeds)
}

/// The console, open until somebody ends it.
fn opened(world: World, until: Stamp, folder: &Path, stays: bool) -> Result<(), CommandError> {
    let shop = folder.join("shop");
    let set = Users::of(&shop).set_shown(NAME, Role::Shop, PASSWORD);
    set.map_err(|error| CommandError::Asked(error.to_string()))?;
    let online = world.leave().ok_or(DemoError::Month("a hub that is not there"))?;
    online.set_clock(until);
    let me = std::env::args().next().unwrap_or_else(|| "sumpbook".to_owned());
    out::line(&format!(
        "\nOpen https://{}   name: {NAME}   password: {PASSWORD}\n\
         The browser does not know this hub's certificate and asks. It begins with {}\n\n\
         The same day from the command line, and from the cab:\n\
         \x20 {me} --shop {shop} day-sheet --as-of {until}\n\
         \x20 {me} phone {phone} show unit --unit TH-02 --person 'Bettina Quaye' --now {until}\n\n\
         Ctrl-C ends it.",
        online.address(),
        online.fingerprint()?.get(..23).unwrap_or_default(),
        shop = shop.display(),
        phone = folder.join("yard-phone-2").display(),
    ))?;
    online.until(asked_to_end());
    online.stop()?;
    out::line(if stays { "Stopped. The folder stays." } else { "Stopped. Nothing is left behind." })
}

fn next_steps(folder: &Path, day: NaiveDate, until: Stamp) -> String {
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
