//! November: a reminder that goes away by itself, a cracked mirror, one service entered twice.

use super::*;

pub(super) fn november(deeds: &mut Vec<Deed>) -> Result<(), DemoError> {
    let mut add = |deed: Deed| deeds.push(deed);
    let [amos, _, carmelo, ..] = &USUAL;
    // 12: a reminder that goes away by itself.
    add(reading(moment("2026-11-02T16:00:00-07:00")?, amos, "2908.3", None)?);
    let shown = DisplayNote {
        what: NoteKind::Reminder,
        as_shown: "change oil".to_owned(),
        stopped_by_itself: Some(false),
        gone_again: None,
        photo: None,
    };
    let at = moment("2026-11-04T15:40:00-07:00")?;
    add(named("oil reminder", record(at, amos, hours("2919.6")?, fact(shown))));
    let told = Recorded::Acknowledge("oil reminder", true);
    add(record(moment("2026-11-04T15:44:00-07:00")?, amos, None, told));
    add(hand_over("yard phone 1", "2026-11-04T16:45:00-07:00")?);
    let gone = Recorded::GoneAgain("oil reminder");
    add(record(moment("2026-11-05T16:20:00-07:00")?, amos, hours("2924.1")?, gone));
    // 13: a cracked mirror that needs no repair.
    let cracked = record(moment("2026-11-03T06:35:00-07:00")?, carmelo, None, Recorded::Walk(520, &[MIRROR]));
    add(named("mirror", cracked));
    add(hand_over("yard phone 4", "2026-11-03T07:30:00-07:00")?);
    add(Deed {
        at: moment("2026-11-03T07:55:00-07:00")?,
        what: Doing::Certify {
            unit: "TH-03",
            person: "Wren Castellane",
            found: "mirror",
            item: "mirrors",
            place: None,
            verdict: RepairVerdict::NotNeeded,
            words: "hairline outside the view; glass ordered",
            name: "mirror not needed",
        },
    });
    let ordered = WaitingForPart {
        task: None,
        part: "right mirror glass".to_owned(),
        promised: NaiveDate::from_ymd_opt(2026, 11, 17),
        over: false,
        // The defect is certified; the glass is for the mirror all the same.
        defect: None,
    };
    add(Deed {
        at: moment("2026-11-03T07:56:00-07:00")?,
        what: Doing::AtShop {
            unit: "TH-03",
            person: "Wren Castellane",
            hours: None,
            fact: Box::new(ordered.into()),
            name: None,
        },
    });
    add(hand_over("yard phone 4", "2026-11-03T08:00:00-07:00")?);
    let read = Recorded::Review(&["mirror not needed"]);
    add(on("yard phone 4", "TH-03", "Dinah Fosse", moment("2026-11-03T08:10:00-07:00")?, read));
    add(hand_over("yard phone 4", "2026-11-03T08:15:00-07:00")?);
    // 14: one service, entered twice.
    add(Deed {
        at: moment("2026-11-06T13:30:00-07:00")?,
        what: Doing::AtShop {
            unit: "TH-01",
            person: "Dov Petrakis",
            hours: hours("2926.0")?,
            fact: Box::new(service("oil-and-filters", Some(("8", OilFamily::Mineral)), None)?.into()),
            name: Some("oil by the shop"),
        },
    });
    let again = service("oil-and-filters", None, None)?;
    let amos_says = record(moment("2026-11-09T06:40:00-07:00")?, amos, hours("2926.3")?, fact(again));
    add(named("oil by the driver", amos_says));
    add(record(moment("2026-11-09T06:45:00-07:00")?, amos, None, Recorded::Walk(430, &[])));
    Ok(())
}
