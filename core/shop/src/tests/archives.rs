//! What leaves the shop whole and comes back: backup, whole fleet, evidence pack, calendar feed.

use std::io::{Read, Write};
use std::sync::atomic::{AtomicBool, Ordering};

use sha2::{Digest as _, Sha256};
use sumpbook_daybook::exchange::epochs;
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::record::*;

use super::yard::*;
use crate::archive::{Archive, ArchiveError, Purpose};
use crate::calendar_feed::{self, Feed};
use crate::proof::{Moments, pack, verify_pack};
use crate::sealed_key::{Phrase, SealError, make_phrase};
use crate::table_out::Of;
use crate::whole_fleet::{export, import, still};
use crate::{Shop, ShopError, backup, heads, verify};

const NOW: &str = "2026-10-20T17:00:00-06:00";

/// The yard after a day, with a closed sheet, an exchange and a phrase.
fn lived() -> (Yard, Phrase) {
    let mut yard = Yard::new();
    yard.sign(
        1,
        "Amos",
        "TH-01",
        "2026-10-19T06:32:00-06:00",
        walk(vec![answer("engine-oil", None, None, "")], 7),
    );
    yard.sign_with(1, "Amos", "TH-01", "2026-10-19T16:30:00-06:00", Some(28_640), end_of_day());
    yard.exchange(1, "2026-10-19T16:50:00-06:00");
    yard.close("2026-10-19", "2026-10-19T17:00:00-06:00");
    let wrong = yard.sign(2, "Carmelo", "TH-03", "2026-10-20T16:40:00-06:00", reading(74_210));
    let void = Correction { target: wrong, why: "typed wrong".into(), instead: None };
    yard.sign(2, "Carmelo", "TH-03", "2026-10-20T16:42:00-06:00", void);
    yard.exchange(2, "2026-10-20T16:50:00-06:00");
    yard.shop.ledger.settle().unwrap();
    let key = yard.shop.ledger.own_key();
    let phrase = make_phrase(&yard.shop.folder, yard.shop.ledger.root().fleet, key).unwrap();
    (yard, phrase)
}

#[test]
fn a_backup_taken_while_another_writes_is_of_one_moment_and_restores_in_a_new_epoch() {
    let (yard, phrase) = lived();
    let folder = tempfile::tempdir().unwrap();
    let (file, shop_folder) = (folder.path().join("b.zip"), yard.shop.folder.clone());
    let before = yard.shop.ledger.store().truth().last_n().unwrap();
    let stop = AtomicBool::new(false);
    let manifest = std::thread::scope(|scope| {
        let writer = scope.spawn(|| {
            let mut other = Shop::open(&shop_folder).unwrap();
            let truck = other.unit("TH-01").unwrap();
            let ilse = other.person("Ilse Marrow").unwrap();
            let mut written = 0;
            while !stop.load(Ordering::Relaxed) {
                let hand = crate::Hand::of(ilse, at(NOW)).received(at(NOW));
                other
                    .write(Some(truck), SiteCondition { dust: SiteDust::Dusty }.into(), None, &hand)
                    .unwrap();
                written += 1;
            }
            written
        });
        // Something is being written before the copy begins.
        while Shop::open(&shop_folder).unwrap().ledger.store().truth().last_n().unwrap() == before {}
        let ledger = still(&yard.shop).unwrap();
        let manifest = backup::backup(&ledger, &shop_folder, &file, at(NOW)).unwrap();
        // The writer was not kept waiting: it goes on while the reader still holds its moment.
        let held = ledger.store().truth().last_n().unwrap();
        while Shop::open(&shop_folder).unwrap().ledger.store().truth().last_n().unwrap() <= held {}
        stop.store(true, Ordering::Relaxed);
        assert!(writer.join().unwrap() > 1);
        manifest
    });
    let place = folder.path().join("restored");
    let other = Phrase::generate().unwrap();
    let wrong = backup::restore(&file, &place, &other).unwrap_err();
    assert!(matches!(wrong, ShopError::Seal(SealError::Closed)), "{wrong}");
    assert!(!place.exists(), "nothing half-made stands there");
    backup::restore(&file, &place, &phrase).unwrap();
    let mut shop = Shop::open(&place).unwrap();
    assert_eq!(shop.ledger.root(), yard.shop.ledger.root());
    let count = shop.ledger.store().truth().between(0, i64::MAX, i64::MAX).unwrap().len();
    assert_eq!(count, manifest.entries);
    assert!(verify::verify(&mut shop).unwrap().findings.is_empty());
    let (old, new) = (epochs(&yard.shop.ledger).unwrap(), epochs(&shop.ledger).unwrap());
    assert_eq!(new.len(), old.len() + 1);
    assert!(!old.contains(new.last().unwrap()));
    let again = backup::restore(&file, &place, &phrase).unwrap_err();
    assert!(matches!(again, ShopError::NotEmpty(_)), "{again}");
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 2, "no part of it lies about");
}

#[test]
fn without_a_phrase_no_backup_is_made() {
    let yard = Yard::new();
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("b.zip");
    let none = backup::backup(&still(&yard.shop).unwrap(), &yard.shop.folder, &file, at(NOW)).unwrap_err();
    assert!(none.to_string().contains("sumpbook phrase"), "{none}");
    assert!(!file.exists());
}

#[test]
fn a_whole_fleet_taken_in_elsewhere_has_equal_heads_and_closings() {
    let (yard, phrase) = lived();
    let folder = tempfile::tempdir().unwrap();
    let (file, place) = (folder.path().join("f.zip"), folder.path().join("other"));
    let ledger = still(&yard.shop).unwrap();
    let manifest = export(&ledger, &yard.shop.folder, &file, at(NOW)).unwrap();
    assert!(
        manifest.files.keys().any(|name| name == "books/TH-01-2026.automerge"),
        "{:?}",
        manifest.files.keys()
    );
    import(&file, &place, &phrase).unwrap();
    let mut shop = Shop::open(&place).unwrap();
    assert_eq!(heads::digest(&shop.ledger).unwrap(), heads::digest(&ledger).unwrap());
    assert_eq!(shop.ledger.store().sheets().unwrap(), ledger.store().sheets().unwrap());
    assert_eq!(shop.ledger.store().truth().last_n().unwrap(), ledger.store().truth().last_n().unwrap());
    let report = verify::verify(&mut shop).unwrap();
    assert!(report.findings.is_empty() && report.closings == 1, "{report:?}");
    // It is a shop: it writes on.
    let ilse = shop.person("Ilse Marrow").unwrap();
    let truck = shop.unit("TH-01").unwrap();
    let fact = SiteCondition { dust: SiteDust::Clean };
    shop.write(Some(truck), fact.into(), None, &crate::Hand::of(ilse, at(NOW))).unwrap();
    assert!(matches!(
        Archive::open(&file, Purpose::Backup),
        Err(ArchiveError::OtherPurpose(Purpose::WholeFleet))
    ));
}

/// The files of a zip, by name.
fn files(path: &std::path::Path) -> Vec<(String, Vec<u8>)> {
    let mut zip = zip::ZipArchive::new(std::fs::File::open(path).unwrap()).unwrap();
    (0..zip.len())
        .map(|n| {
            let mut file = zip.by_index(n).unwrap();
            let mut bytes = Vec::new();
            file.read_to_end(&mut bytes).unwrap();
            (file.name().to_owned(), bytes)
        })
        .collect()
}

fn zipped(path: &std::path::Path, files: &[(String, Vec<u8>)]) {
    let mut zip = zip::ZipWriter::new(std::fs::File::create(path).unwrap());
    for (name, bytes) in files {
        zip.start_file(name.as_str(), zip::write::SimpleFileOptions::default()).unwrap();
        zip.write_all(bytes).unwrap();
    }
    zip.finish().unwrap();
}

#[test]
fn a_pack_holds_and_a_changed_one_is_refused_wherever_it_was_changed() {
    let (yard, _) = lived();
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("p.zip");
    let truck = yard.truck("TH-03");
    let ledger = still(&yard.shop).unwrap();
    pack(&ledger, &yard.shop.folder, Of::Units(&[truck]), &file, false, Moments::now(at(NOW))).unwrap();
    let key = heads::fingerprint(&yard.shop.ledger.root().shop);
    let report = verify_pack(&file, Some(&key.to_lowercase())).unwrap();
    assert_eq!((report.books, report.is_the_key_asked_for), (2, Some(true)));
    assert_eq!(
        verify_pack(&file, Some("00 11 22 33 44 55 66 77")).unwrap().is_the_key_asked_for,
        Some(false)
    );
    let good = files(&file);
    let page = good.iter().find(|(name, _)| name == "READ-ME-FIRST.html").unwrap();
    let page = String::from_utf8(page.1.clone()).unwrap();
    let (gaps, identity) = (page.find("1. Gaps").unwrap(), page.find("2. Identity").unwrap());
    assert!(
        gaps < identity && page.contains("serial is not recorded") && page.contains("voided or left out")
    );
    let readings = good.iter().find(|(name, _)| name == "tables/readings.csv").unwrap();
    assert!(String::from_utf8_lossy(&readings.1).contains("7421.0"), "a void figure stays in");

    let changed = folder.path().join("c.zip");
    let refused = |files: &[(String, Vec<u8>)]| {
        zipped(&changed, files);
        match verify_pack(&changed, None) {
            Err(ShopError::Archive(error)) => error.to_string(),
            other => panic!("{other:?}"),
        }
    };
    zipped(&changed, &good);
    assert!(verify_pack(&changed, None).is_ok(), "packed anew it is the same");
    for (place, (name, _)) in good.iter().enumerate() {
        let mut one = good.clone();
        let at = one[place].1.len() / 2;
        one[place].1[at] ^= 1;
        refused(&one);
        let mut less = good.clone();
        less.remove(place);
        assert!(!refused(&less).is_empty(), "{name}");
    }
    let mut more = good.clone();
    more.push(("tables/more.csv".to_owned(), b"x".to_vec()));
    assert!(refused(&more).contains("put in"));
    let mut up = good.clone();
    up.push(("../x".to_owned(), b"x".to_vec()));
    refused(&up);
    // A second file of a name that is there: written under another of the same length, then renamed in the bytes.
    let mut twice = good.clone();
    twice.push(("check.pz".to_owned(), b"print('All that was checked holds.')".to_vec()));
    zipped(&changed, &twice);
    let mut bytes = std::fs::read(&changed).unwrap();
    let places: Vec<usize> =
        bytes.windows(8).enumerate().filter(|(_, w)| *w == b"check.pz").map(|(at, _)| at).collect();
    assert_eq!(places.len(), 2, "in its own head and in the list at the end");
    places.iter().for_each(|at| bytes[*at..*at + 8].copy_from_slice(b"check.py"));
    std::fs::write(&changed, &bytes).unwrap();
    assert!(verify_pack(&changed, None).is_err());
    std::fs::write(&changed, b"no zip").unwrap();
    assert!(matches!(verify_pack(&changed, None), Err(ShopError::Archive(ArchiveError::NotOurs(_)))));
}

#[test]
fn a_pack_in_spanish_too_has_both_pages_and_both_heads_of_every_table() {
    let (yard, _) = lived();
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("p.zip");
    let truck = yard.truck("TH-03");
    let ledger = still(&yard.shop).unwrap();
    pack(&ledger, &yard.shop.folder, Of::Units(&[truck]), &file, true, Moments::now(at(NOW))).unwrap();
    assert!(verify_pack(&file, None).unwrap().photos.hold());
    let all = files(&file);
    let text = |name: &str| {
        let found = all.iter().find(|(is, _)| is == name).unwrap_or_else(|| panic!("no {name}"));
        String::from_utf8(found.1.clone()).unwrap()
    };
    let (english, spanish) = (text("READ-ME-FIRST.html"), text("LEER-PRIMERO.html"));
    for said in [
        "lang=\"es\"",
        "1. Faltantes",
        "2. Identidad",
        "Serie del camión",
        &crate::console::task_in("es", "oil-and-filters"),
        "Una firma dice:",
    ] {
        assert!(spanish.contains(said), "{said}: {spanish}");
    }
    // No key without its text, and nothing of one language on the other's page.
    for page in [&english, &spanish] {
        assert!(!page.contains("&lt;"), "{page}");
    }
    assert!(english.contains("All as is usual, from the beginning."), "{english}");
    assert!(!spanish.contains("Identity") && !english.contains("Identidad"));
    for kind in crate::table_out::Kind::ALL {
        let heads = |folder: &str| {
            let table = text(&format!("{folder}/{}.csv", kind.name()));
            let (heads, rows) = table.split_once("\r\n").unwrap();
            (heads.to_owned(), rows.to_owned())
        };
        let ((one, rows), (other, again)) = (heads("tables"), heads("tablas"));
        assert_eq!(rows, again, "{kind:?}");
        assert_eq!(one.matches(',').count(), other.matches(',').count(), "{kind:?}");
        assert!(one != other && !other.contains('<'), "{kind:?}: {other}");
        // The heads in the code are those of the English texts.
        let sheet = crate::table_out::table(&ledger, kind, Of::Units(&[truck]), at(NOW)).unwrap();
        assert_eq!(sheet.headed_in("en"), sheet, "{kind:?}");
    }
}

#[test]
fn a_packs_photos_are_held_against_what_its_entries_name() {
    let (mut yard, _) = lived();
    let photo = |bytes: &[u8]| -> Digest { Digest(Sha256::digest(bytes).into()) };
    let (held, missing) = (photo(b"one"), photo(b"two"));
    for (minute, photo) in [(10, held), (12, missing)] {
        let level = LevelCheck {
            fluid: sumpbook_trade::Fluid::CompressorOil,
            glass: Glass::Percent(48),
            warmth: None,
            stopped: None,
            look: None,
            photo: Some(photo),
            oil_temperature: None,
        };
        yard.sign(1, "Amos", "TH-03", &format!("2026-10-22T17:{minute}:00-06:00"), level);
    }
    yard.exchange(1, "2026-10-22T17:20:00-06:00");
    let photos = yard.shop.folder.join("photos");
    std::fs::create_dir_all(&photos).unwrap();
    std::fs::write(photos.join(held.to_string()), b"one").unwrap();
    // Of another unit, or of nobody: it has no place in the pack.
    std::fs::write(photos.join(photo(b"three").to_string()), b"three").unwrap();
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("p.zip");
    let trucks = [yard.truck("TH-03")];
    let made = |yard: &Yard| {
        let ledger = still(&yard.shop).unwrap();
        pack(
            &ledger,
            &yard.shop.folder,
            Of::Units(&trucks),
            &file,
            false,
            Moments::now(at("2026-10-22T18:00:00-06:00")),
        )
        .unwrap();
        verify_pack(&file, None).unwrap().photos
    };
    let found = made(&yard);
    assert!(found.hold());
    assert_eq!((found.held, found.missing, found.foreign), (1, vec![missing.to_string()], vec![]));
    // The shop's own copy went bad: the pack's list is signed, and the name still tells.
    std::fs::write(photos.join(held.to_string()), b"bad").unwrap();
    std::fs::remove_file(&file).unwrap();
    let found = made(&yard);
    assert!(!found.hold());
    assert_eq!((found.held, found.altered), (0, vec![held.to_string()]));
    assert_eq!(found.missing, [missing.to_string()]);
}

#[test]
fn a_defects_sound_goes_into_pack_backup_and_fleet_as_its_photos_do() {
    let (mut yard, phrase) = lived();
    let bytes = sumpbook_daybook::sound::cleaned(&noise(3)).unwrap();
    let kept = sumpbook_daybook::photo::PhotoFolder::of(&yard.shop.folder).keep(&bytes).unwrap();
    let mut mount = answer("mounts", None, Some(sumpbook_trade::checklist::Severity::Air), "rattles");
    mount.sound = Some(kept);
    let report = EndOfDay { defects: vec![mount], none_found: false, ..end_of_day() };
    yard.sign(1, "Amos", "TH-03", "2026-10-20T16:10:00-06:00", report);
    yard.exchange(1, "2026-10-20T16:20:00-06:00");
    yard.shop.ledger.settle().unwrap();
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str| folder.path().join(name);
    let ledger = still(&yard.shop).unwrap();
    let trucks = [yard.truck("TH-03")];
    pack(&ledger, &yard.shop.folder, Of::Units(&trucks), &file("p.zip"), false, Moments::now(at(NOW)))
        .unwrap();
    let found = verify_pack(&file("p.zip"), None).unwrap().photos;
    assert_eq!((found.held, found.hold(), found.missing.len()), (1, true, 0));
    let answers =
        crate::table_out::table(&ledger, crate::table_out::Kind::Inspections, Of::Units(&trucks), at(NOW))
            .unwrap();
    assert!(String::from_utf8(answers.to_csv(false)).unwrap().contains(&kept.to_string()));
    backup::backup(&ledger, &yard.shop.folder, &file("b.zip"), at(NOW)).unwrap();
    backup::restore(&file("b.zip"), &file("restored"), &phrase).unwrap();
    export(&ledger, &yard.shop.folder, &file("f.zip"), at(NOW)).unwrap();
    import(&file("f.zip"), &file("elsewhere"), &phrase).unwrap();
    for shop in ["restored", "elsewhere"] {
        let there = sumpbook_daybook::photo::PhotoFolder::of(&file(shop));
        assert_eq!(there.read(kept).unwrap().unwrap(), bytes, "{shop}");
        let shop = Shop::open(&file(shop)).unwrap();
        assert_eq!(shop.ledger.store().truth().naming_photo(kept).unwrap().len(), 1);
    }
}

fn unfolded(feed: &Feed) -> String {
    feed.to_ics("en").replace("\r\n ", "")
}

/// The event of a name, as its lines.
fn event(ics: &str, holds: &str) -> Vec<String> {
    let events =
        ics.split("BEGIN:VEVENT").skip(1).map(|event| event.lines().map(str::to_owned).collect::<Vec<_>>());
    let mut found: Vec<Vec<String>> =
        events.filter(|event| event.iter().any(|line| line.contains(holds))).collect();
    assert_eq!(found.len(), 1, "{holds}: {ics}");
    found.remove(0)
}

fn value(event: &[String], name: &str) -> String {
    let line =
        event.iter().find(|line| line.starts_with(name)).unwrap_or_else(|| panic!("no {name}: {event:?}"));
    line.split_once(':').unwrap().1.to_owned()
}

#[test]
fn the_feed_keeps_its_names_and_its_numbers_rise_only_when_an_answer_moves() {
    let mut yard = Yard::new();
    let first = unfolded(&calendar_feed::keep(&mut yard.shop, at("2026-10-19T17:00:00-06:00")).unwrap());
    let oil = event(&first, "TH-01: Oil");
    assert_eq!(value(&oil, "DTSTART"), "20270212");
    assert_eq!(value(&oil, "DTEND"), "20270213");
    assert_eq!((value(&oil, "SEQUENCE"), value(&oil, "STATUS")), ("0".into(), "CONFIRMED".into()));
    let name = value(&oil, "UID");
    // A day later nothing has moved, and so not a byte has.
    let feed = calendar_feed::keep(&mut yard.shop, at(NOW)).unwrap();
    assert!(!feed.moved());
    assert_eq!(unfolded(&feed), first);
    // The hours run out: the last good day is the day that showed it, and stays so.
    yard.sign(1, "Amos", "TH-01", "2026-11-04T15:40:00-07:00", reading(29_196));
    yard.exchange(1, "2026-11-04T16:00:00-07:00");
    let late = unfolded(&calendar_feed::keep(&mut yard.shop, at("2026-11-04T17:00:00-07:00")).unwrap());
    let oil = event(&late, &name);
    assert_eq!((value(&oil, "DTSTART"), value(&oil, "SEQUENCE")), ("20261104".into(), "1".into()));
    yard.sign(1, "Amos", "TH-01", "2026-11-05T16:20:00-07:00", reading(29_241));
    yard.exchange(1, "2026-11-05T16:30:00-07:00");
    let later = unfolded(&calendar_feed::keep(&mut yard.shop, at("2026-11-05T17:00:00-07:00")).unwrap());
    assert_eq!(value(&event(&later, &name), "SEQUENCE"), "1");
    // Done: it stays, cancelled, and the next one has a name of its own.
    yard.sign_with(
        1,
        "Dov",
        "TH-01",
        "2026-11-06T13:30:00-07:00",
        Some(29_260),
        service(&["oil-and-filters"]),
    );
    yard.exchange(1, "2026-11-06T14:00:00-07:00");
    let done = unfolded(&calendar_feed::keep(&mut yard.shop, at("2026-11-06T17:00:00-07:00")).unwrap());
    let old = event(&done, &name);
    assert_eq!((value(&old, "STATUS"), value(&old, "SEQUENCE")), ("CANCELLED".into(), "2".into()));
    assert!(value(&old, "SUMMARY").contains("done 6 November 2026"), "{old:?}");
    assert_eq!(value(&event(&done, "DTSTART;VALUE=DATE:20271106"), "SEQUENCE"), "0");
    assert!(done.matches("BEGIN:VEVENT").count() > first.matches("BEGIN:VEVENT").count());
    // That service does not count after all: what ran from it was never done, and the one before is open again.
    let uid = value(&event(&done, "DTSTART;VALUE=DATE:20271106"), "UID");
    let service = uid.split('@').next().unwrap().rsplit('.').next().unwrap().to_owned();
    let service = sumpbook_trade::EntryId(uuid::Uuid::try_parse(&service).unwrap());
    let hand = yard.hand("Ilse", "2026-11-07T08:00:00-07:00");
    crate::settle::decide(&mut yard.shop, &[service], Verdict::DoNotUse, "another truck's", &hand).unwrap();
    yard.shop.ledger.settle().unwrap();
    let void = unfolded(&calendar_feed::keep(&mut yard.shop, at("2026-11-07T09:00:00-07:00")).unwrap());
    let gone = event(&void, &uid);
    assert_eq!(value(&gone, "STATUS"), "CANCELLED");
    assert!(!value(&gone, "SUMMARY").contains("done"), "{gone:?}");
    assert_eq!(value(&event(&void, &name), "STATUS"), "CONFIRMED");
    // Sold, it is asked for no more; nobody did it.
    let (hand, truck) = (yard.hand("Ilse", "2026-11-08T08:00:00-07:00"), yard.truck("TH-01"));
    let sold = DayStatusSet { from: day("2026-11-08"), status: DayStatus::Sold, expected_minute: None };
    yard.shop.write(Some(truck), sold.into(), None, &hand).unwrap();
    yard.shop.ledger.settle().unwrap();
    let sold = unfolded(&calendar_feed::keep(&mut yard.shop, at("2026-11-08T09:00:00-07:00")).unwrap());
    let gone = event(&sold, &name);
    assert!(value(&gone, "STATUS") == "CANCELLED" && !value(&gone, "SUMMARY").contains("done"), "{gone:?}");
}

#[test]
fn the_feeds_address_is_secret_and_can_be_ended() {
    let mut yard = Yard::new();
    let opens = |yard: &Yard, token: &str| calendar_feed::opens(&yard.shop.ledger, token).unwrap();
    assert!(!opens(&yard, "") && calendar_feed::address(&yard.shop.ledger).unwrap().is_none());
    let one = calendar_feed::make_address(&mut yard.shop).unwrap();
    assert!(one.len() >= 32 && opens(&yard, &one) && !opens(&yard, "x"));
    let two = calendar_feed::make_address(&mut yard.shop).unwrap();
    assert!(opens(&yard, &two) && !opens(&yard, &one));
    calendar_feed::end_address(&mut yard.shop).unwrap();
    assert!(!opens(&yard, &two));
}

#[test]
fn a_pack_tells_what_the_shop_set_otherwise_than_usual_and_since_when() {
    use sumpbook_trade::checklist::Severity;
    use sumpbook_trade::record::{OwnSeverity, RuleNumbers};
    let (mut yard, _) = lived();
    let hand = yard.hand("Ilse", "2026-10-20T09:00:00-06:00");
    let own = |item: &str, word: &str, severity, again| OwnSeverity {
        item: item.into(),
        word: word.into(),
        severity,
        again,
    };
    let set = vec![
        own("mirrors", "hairline", Severity::Road, None),
        own("coolant", "low", Severity::Note, Some(Severity::Note)),
    ];
    yard.shop.set_severities(set, Some("ours show it on the display"), &hand).unwrap();
    yard.shop.set_numbers(RuleNumbers { forecast_spreads: 164, ..RuleNumbers::default() }, &hand).unwrap();
    yard.shop.set_severities(vec![], None, &yard.hand("Ilse", "2026-10-20T10:00:00-06:00")).unwrap();
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("p.zip");
    let ledger = still(&yard.shop).unwrap();
    let truck = yard.truck("TH-03");
    pack(&ledger, &yard.shop.folder, Of::Units(&[truck]), &file, true, Moments::now(at(NOW))).unwrap();
    let all = files(&file);
    let text =
        |name: &str| String::from_utf8(all.iter().find(|(is, _)| is == name).unwrap().1.clone()).unwrap();
    let page = text("READ-ME-FIRST.html");
    for said in [
        "4. What the shop has otherwise than usual",
        "Mirrors: hairline: road; usual is note",
        "Coolant: low, the second time in 7 days: note; usual is road",
        "Earliest and latest, spreads to either side: 1.64; usual is 1.28",
        "All as is usual from then on.",
        "Why, as it was written: ours show it on the display",
    ] {
        assert!(page.contains(said), "{said}: {page}");
    }
    assert_eq!(page.matches("What findings lock, since").count(), 2, "{page}");
    assert!(text("LEER-PRIMERO.html").contains("lo habitual es 1.28"));
}
