//! The first week: a quiet walk, two answers about one lamp, a slipped decimal point, a first service.

use super::*;

pub(super) fn first_week(deeds: &mut Vec<Deed>) -> Result<(), DemoError> {
    let mut add = |deed: Deed| deeds.push(deed);
    let [amos, bettina, carmelo, edric, gil, _] = &USUAL;
    // 1: a quiet walk.
    add(record(moment("2026-10-19T06:32:00-06:00")?, amos, hours("2862.4")?, Recorded::Walk(420, &[])));
    // 2: two people look at one lamp.
    add(record(moment("2026-10-20T06:41:00-06:00")?, bettina, None, Recorded::Walk(340, &[])));
    add(named(
        "lamp",
        on(
            "yard phone 3",
            "TH-02",
            "Hattie Brun",
            moment("2026-10-20T06:44:00-06:00")?,
            Recorded::PassedBy(STOP_LAMP),
        ),
    ));
    let left = Drive { what: DriveWhat::LeftYard, in_spite_of_lock: None };
    add(record(moment("2026-10-20T06:50:00-06:00")?, bettina, None, fact(left)));
    add(hand_over("yard phone 3", "2026-10-20T11:05:00-06:00")?);
    add(hand_over("yard phone 2", "2026-10-20T15:50:00-06:00")?);
    add(hand_over("yard phone 2", "2026-10-20T17:20:00-06:00")?);
    add(Deed {
        at: moment("2026-10-22T06:10:00-06:00")?,
        what: Doing::Certify {
            unit: "TH-02",
            person: "Wren Castellane",
            found: "lamp",
            item: "lamps-stop",
            place: Some("rear"),
            verdict: RepairVerdict::Repaired,
            words: "new bulb, socket cleaned",
            name: "lamp repaired",
        },
    });
    add(hand_over("yard phone 2", "2026-10-22T06:20:00-06:00")?);
    add(record(moment("2026-10-22T06:38:00-06:00")?, bettina, None, Recorded::Review(&["lamp repaired"])));
    add(record(moment("2026-10-22T06:41:00-06:00")?, bettina, None, Recorded::Walk(340, &[])));
    // 3: a slipped decimal point.
    add(reading(moment("2026-10-20T16:40:00-06:00")?, carmelo, "738.4", None)?);
    add(reading(moment("2026-10-21T16:35:00-06:00")?, carmelo, "7421.0", Some("typed wrong"))?);
    add(reading(moment("2026-10-22T16:30:00-06:00")?, carmelo, "746.0", None)?);
    let of = moment("2026-10-21T16:35:00-06:00")?;
    let right = Recorded::FactOf(of, Box::new(read("742.1")?.into()));
    add(named("read right", record(moment("2026-10-22T16:33:00-06:00")?, carmelo, None, right)));
    add(record(
        moment("2026-10-22T16:34:00-06:00")?,
        carmelo,
        None,
        Recorded::Correct("typed wrong", "the decimal point slipped: it read 742.1", "read right"),
    ));
    add(hand_over("yard phone 4", "2026-10-22T16:45:00-06:00")?);
    // 4: a reminder, two who answer it.
    add(reading(moment("2026-10-21T16:20:00-06:00")?, gil, "47.2", None)?);
    let shown = DisplayNote {
        what: NoteKind::Reminder,
        as_shown: "service due".to_owned(),
        stopped_by_itself: Some(false),
        gone_again: None,
        photo: None,
    };
    add(named("first reminder", record(moment("2026-10-22T15:05:00-06:00")?, gil, None, fact(shown))));
    add(Deed {
        at: moment("2026-10-22T15:07:00-06:00")?,
        what: Doing::PassOn { from: "yard phone 5", to: "yard phone 3" },
    });
    let told = Recorded::Acknowledge("first reminder", true);
    add(on("yard phone 3", "TH-05", "Hattie Brun", moment("2026-10-22T15:10:00-06:00")?, told));
    let seen = Recorded::Acknowledge("first reminder", false);
    add(record(moment("2026-10-22T15:22:00-06:00")?, gil, None, seen));
    add(reading(moment("2026-10-22T16:10:00-06:00")?, gil, "50.4", None)?);
    add(hand_over("yard phone 5", "2026-10-22T18:20:00-06:00")?);
    add(hand_over("yard phone 3", "2026-10-23T07:02:00-06:00")?);
    // 5: the first service.
    add(Deed {
        at: moment("2026-10-23T14:00:00-06:00")?,
        what: Doing::AtShop {
            unit: "TH-05",
            person: "Dov Petrakis",
            hours: hours("51.9")?,
            fact: Box::new(service("first-service", Some(("8", OilFamily::Mineral)), None)?.into()),
            name: Some("first service"),
        },
    });
    // Of no event: a small pour, so that a day has one.
    let a_little = poured(OilFamily::Mineral, Some(38), vec![pour("0.13", Some(52))?], Some(52));
    add(record(moment("2026-10-21T15:20:00-06:00")?, edric, None, fact(a_little)));
    // 6: a night across two days.
    add(ivo(moment("2026-10-22T23:10:00-06:00")?, hours("1918.0")?, None, fact(started())));
    add(ivo(moment("2026-10-23T02:25:00-06:00")?, hours("1921.2")?, None, fact(stopped())));
    Ok(())
}
