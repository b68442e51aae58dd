//! Tables in and out.

use sumpbook_trade::record::*;
use sumpbook_trade::{Fact, Tenths};

use super::yard::*;
use crate::ShopError;
use crate::table_in::{
    Ask, Asked, DateStyle, DecimalStyle, Here, TableError, What, Why, bring_in, dry_run, refused_csv,
};
use crate::table_out::{Kind, Of, table};

const NOW: &str = "2026-10-19T08:00:00-06:00";

fn asked(what: What) -> Asked {
    Asked { what, dates: None, decimals: None }
}

const SERVICES: &str = "Unit,Date,Hours,Task,Parts\n\
    TH-01,10/12/2024,\"1,911.0\",oil-and-filters,OF-210; AF-33\n\
    TH-02,03/31/2024,,Oil and filters,\n\
    TH-99,03/31/2024,12.0,oil-and-filters,\n\
    TH-02,13/31/2025,12.0,oil-and-filters,\n\
    TH-02,03/30/2025,12.0,wash,\n\
    TH-02,03/31/2027,12.0,separator,\n\
    TH-02,,12.0,separator,\n";

#[test]
fn a_day_that_can_be_two_is_asked_about_once_for_the_whole_file() {
    let yard = Yard::new();
    let told = dry_run(&yard.shop.ledger, SERVICES.as_bytes(), &asked(What::Services), at(NOW)).unwrap();
    let ask = told.ask.unwrap();
    assert!(matches!(&ask, Ask::Dates { row: 2, .. }), "{ask:?}");
    assert_eq!(
        ask.to_string(),
        "10/12/2024 can be 12 October or 10 December. Nothing was brought in. Say which, once for the whole file."
    );
    assert_eq!((told.good, told.refused_rows, told.here), (0, 0, 0));
}

#[test]
fn decimals_are_asked_about_as_well() {
    let yard = Yard::new();
    let ask = |file: &str| {
        dry_run(&yard.shop.ledger, file.as_bytes(), &asked(What::Readings), at(NOW)).unwrap().ask
    };
    let told = ask("unit;date;hours\nTH-01;2026-10-12;2.860\n").unwrap().to_string();
    assert_eq!(
        told,
        "2.860 can be 2.860 or 2860. Nothing was brought in. Say which, once for the whole file."
    );
    let mixed = ask("unit;date;hours\nTH-01;2026-10-12;2860.1\nTH-01;2026-10-13;2860,4\n").unwrap();
    assert!(matches!(mixed, Ask::DecimalsMixed { row: 2, other_row: 3, .. }), "{mixed:?}");
    let number = ask("unit;date;hours\nTH-01;46307;2860.1\n").unwrap().to_string();
    assert!(number.contains("12 October 2026"), "{number}");
    let mixed = ask("unit;date;hours\nTH-01;10/13/2025;1\nTH-01;13/10/2025;2\n").unwrap();
    assert!(matches!(mixed, Ask::DatesMixed { .. }), "{mixed:?}");
    assert_eq!(ask("unit;date;hours\nTH-01;2026-10-12;2860,1\n"), None);
}

#[test]
fn each_refused_row_is_told_with_its_field_as_written_and_why() {
    let mut yard = Yard::new();
    let said = Asked { dates: Some(DateStyle::Mdy), ..asked(What::Services) };
    let told = dry_run(&yard.shop.ledger, SERVICES.as_bytes(), &said, at(NOW)).unwrap();
    let refused: Vec<_> =
        told.refused.iter().map(|r| (r.row, r.field.as_str(), r.as_written.as_str(), r.why)).collect();
    assert_eq!(
        refused,
        [
            (4, "Unit", "TH-99", Why::UnknownUnit),
            (5, "Date", "13/31/2025", Why::NoSuchMonth),
            (6, "Task", "wash", Why::UnknownTask),
            (7, "Date", "03/31/2027", Why::Ahead),
            (8, "Date", "", Why::Blank),
        ]
    );
    assert_eq!((told.good, told.refused_rows, told.here), (2, 5, 0));
    let mended = refused_csv(SERVICES.as_bytes(), &told, |why| why.to_string()).unwrap();
    let mended = String::from_utf8(mended).unwrap();
    assert_eq!(mended.lines().count(), 6, "{mended}");
    assert!(mended.starts_with("Unit,Date,Hours,Task,Parts,refused\r\nTH-99,"), "{mended}");
    assert!(mended.contains("Date: no such month"), "{mended}");

    let ilse = yard.hand("Ilse", NOW);
    let other = bring_in(&mut yard.shop, SERVICES.as_bytes(), &said, &"0".repeat(64), &ilse).unwrap_err();
    assert!(matches!(other, ShopError::Table(TableError::NotSeen)), "{other}");
    let more = format!("{SERVICES}TH-01,03/31/2024,5,separator,\n");
    let changed = bring_in(&mut yard.shop, more.as_bytes(), &said, &told.seen, &ilse).unwrap_err();
    assert!(matches!(changed, ShopError::Table(TableError::NotSeen)), "{changed}");
    let before = yard.shop.ledger.store().truth().last_n().unwrap();
    bring_in(&mut yard.shop, SERVICES.as_bytes(), &said, &told.seen, &ilse).unwrap();
    let held = yard.shop.ledger.store().truth().between(before, i64::MAX, 9).unwrap();
    let entries: Vec<_> =
        held.iter().map(|held| sumpbook_trade::Entry::from_payload(&held.row.payload).unwrap()).collect();
    assert_eq!(entries.len(), 2);
    assert_eq!((entries[0].source, entries[0].hours), (Source::BroughtIn, Some(Tenths(19_110))));
    assert_eq!(entries[0].at, at("2024-10-12T12:00:00-06:00"));
    assert_eq!(entries[1].hours, None, "blank is unknown, not zero");
    assert!(matches!(&entries[0].fact, Fact::ServiceDone(done) if done.parts == ["OF-210", "AF-33"]));
    assert_eq!(entries[0].id.0.get_version_num(), 7);
}

#[test]
fn bringing_in_twice_doubles_nothing() {
    let mut yard = Yard::new();
    let file = "unidad;fecha;horas;nota\n\
        TH-01;12/10/2026;2.859,5;del libro\n\
        TH-01;13/10/2026;2861:24;\n\
        TH-01;12/10/2026;2.859,5;otra vez\n";
    let said =
        Asked { dates: Some(DateStyle::Dmy), decimals: Some(DecimalStyle::Comma), what: What::Readings };
    let told = dry_run(&yard.shop.ledger, file.as_bytes(), &said, at(NOW)).unwrap();
    assert_eq!((told.good, told.refused_rows, told.here), (2, 0, 1), "{told:?}");
    assert_eq!(told.already[0].here, Here::Row { same_as: 2 });
    assert_eq!(told.first[1].hours, Some(Tenths(28_614)), "2861:24 is 2861.4");
    let ilse = yard.hand("Ilse", NOW);
    bring_in(&mut yard.shop, file.as_bytes(), &said, &told.seen, &ilse).unwrap();
    let last = yard.shop.ledger.store().truth().last_n().unwrap();
    // By another hand, at another time, in another file with the same facts.
    let dov = yard.hand("Dov", "2026-10-20T09:00:00-06:00");
    let again = "date,unit,reading\n2026-10-12,th-01,2859.5\n2026-10-13,TH-01,2861.4\n";
    let iso = asked(What::Readings);
    let told = dry_run(&yard.shop.ledger, again.as_bytes(), &iso, dov.at).unwrap();
    assert_eq!((told.good, told.here), (0, 2), "{told:?}");
    bring_in(&mut yard.shop, again.as_bytes(), &iso, &told.seen, &dov).unwrap();
    let told = dry_run(&yard.shop.ledger, file.as_bytes(), &said, dov.at).unwrap();
    assert_eq!((told.good, told.here), (0, 3));
    bring_in(&mut yard.shop, file.as_bytes(), &said, &told.seen, &dov).unwrap();
    assert_eq!(yard.shop.ledger.store().truth().last_n().unwrap(), last);
    assert!(yard.shop.ledger.store().truth().aside().unwrap().is_empty());
}

#[test]
fn units_and_pours_come_in_and_nothing_there_is_changed() {
    let mut yard = Yard::new();
    let units = "door,in service,in service hours,vin,set serial,features,Glass volume (qt),oil volume\n\
        TH-11,2025-03-04,12.0,1FTEST0000000011,C-11,\"air-brakes; Diesel\",0.60,7.6 L\n\
        TH-01,2022-03-31,0.0,,,,,\n\
        TH-02,2021-11-30,5.0,,,,,\n\
        TH-12,2025-03-04,,,,,,\n\
        TH-13,2025-03-04,1.0,,C-13,wings,,\n\
        TH-14,2025-03-04,1.0,,C-14,,,8\n";
    let told = dry_run(&yard.shop.ledger, units.as_bytes(), &asked(What::Units), at(NOW)).unwrap();
    assert_eq!((told.good, told.refused_rows, told.here), (1, 4, 1), "{told:?}");
    let why: Vec<Why> = told.refused.iter().map(|refused| refused.why).collect();
    // An amount without its unit is no amount.
    assert_eq!(why, [Why::HereOtherwise, Why::Blank, Why::UnknownFeature, Why::NoVolumeUnit]);
    let ilse = yard.hand("Ilse", NOW);
    bring_in(&mut yard.shop, units.as_bytes(), &asked(What::Units), &told.seen, &ilse).unwrap();
    let truck = yard.truck("TH-11");
    let fleet = yard.shop.ledger.fleet();
    assert_eq!(fleet.set_on(truck).unwrap().serial.as_deref(), Some("C-11"));
    let profile = &fleet.set_on(truck).unwrap().profile;
    let volumes = [profile.glass, profile.oil_volume].map(|figure| figure.unwrap().to_string());
    assert_eq!(volumes, ["0.60 qt", "7.6 L"]);
    let sheet = table(&yard.shop.ledger, Kind::Units, Of::Units(&[truck]), at(NOW)).unwrap();
    assert_eq!(column(&sheet, "Oil volume (as given)"), ["7.6 L"]);
    // The same again, in another unit of measure, is there already; another amount is otherwise.
    let again = |amount: &str| {
        let row = format!("door,in service,in service hours,glass volume\nTH-11,2025-03-04,12.0,{amount}\n");
        dry_run(&yard.shop.ledger, row.as_bytes(), &asked(What::Units), at(NOW)).unwrap()
    };
    assert_eq!((again("568 mL").here, again("0.50 qt").refused_rows), (1, 1));
    assert_eq!(fleet.trucks[&truck].features.switched.len(), 2);

    let pours = "Unit,Date,Fluid,Volume (qt),Oil family,After\n\
        TH-11,2026-10-01,compressor oil,0.25,mineral,60 %\n\
        TH-11,2026-10-02,Compressor oil,8 fl oz,mineral,\n\
        TH-11,2026-10-03,compressor oil,2 pints,,\n\
        TH-11,2026-10-03,mystery,1,,101\n";
    let told = dry_run(&yard.shop.ledger, pours.as_bytes(), &asked(What::Pours), at(NOW)).unwrap();
    assert_eq!((told.good, told.refused_rows), (2, 2), "{told:?}");
    bring_in(&mut yard.shop, pours.as_bytes(), &asked(What::Pours), &told.seen, &ilse).unwrap();
    let sheet = table(&yard.shop.ledger, Kind::Pours, Of::Units(&[truck]), at(NOW)).unwrap();
    let poured: Vec<&str> = sheet.rows.iter().map(|row| row[8].as_str()).collect();
    // 0.25 US quart and 8 US fluid ounces are the same, 236.6 mL.
    assert_eq!(poured, ["236.6", "236.6"]);
}

fn column<'a>(sheet: &'a crate::table_out::Sheet, head: &str) -> Vec<&'a str> {
    let place = sheet.heads.iter().position(|is| is == head).unwrap_or_else(|| panic!("no {head}"));
    sheet.rows.iter().map(|row| row[place].as_str()).collect()
}

#[test]
fn tables_say_who_when_on_what_and_whether_it_is_void() {
    let mut yard = Yard::new();
    let words = "=HYPERLINK(\"x\")";
    let mirror = answer("mirrors", Some("right"), Some(sumpbook_trade::Severity::Road), words);
    yard.sign(1, "Carmelo", "TH-03", "2026-10-19T06:35:00-06:00", walk(vec![mirror], 7));
    let wrong = yard.sign(1, "Carmelo", "TH-03", "2026-10-19T16:40:00-06:00", reading(74_210));
    let why = Correction { target: wrong, why: "typed wrong".into(), instead: None };
    yard.sign(1, "Carmelo", "TH-03", "2026-10-19T16:42:00-06:00", why);
    yard.exchange(1, "2026-10-19T16:50:00-06:00");
    let truck = yard.truck("TH-03");
    let now = at("2026-10-19T17:00:00-06:00");
    let read = |kind| table(&yard.shop.ledger, kind, Of::Units(&[truck]), now).unwrap();
    let inspections = read(Kind::Inspections);
    assert_eq!(column(&inspections, "Words"), [format!("'{words}")]);
    assert_eq!(column(&inspections, "Time (UTC)"), ["2026-10-19T12:35:00Z"]);
    assert_eq!(column(&inspections, "Time (yard)"), ["2026-10-19T06:35:00-06:00"]);
    assert_eq!(column(&inspections, "Person"), ["Carmelo Ruiz"]);
    assert_eq!(column(&inspections, "Device"), ["yard phone 1"]);
    assert_eq!(column(&inspections, "Source"), ["phone"]);
    let readings = read(Kind::Readings);
    assert_eq!(column(&readings, "Void").last(), Some(&"yes"));
    let defects = read(Kind::Defects);
    assert_eq!((column(&defects, "State"), column(&defects, "Locks")), (vec!["open"], vec!["road"]));
    for kind in Kind::ALL {
        let sheet = table(&yard.shop.ledger, kind, Of::Fleet, now).unwrap();
        assert!(sheet.rows.iter().all(|row| row.len() == sheet.heads.len()), "{kind:?}");
        let csv = String::from_utf8(sheet.to_csv(true)).unwrap();
        assert!(csv.starts_with('\u{feff}') && csv.ends_with("\r\n"), "{kind:?}");
    }
}
