//! The second week: a pour over the middle, the wrong oil, a figure that runs backwards, clocks that go back.

use super::*;

pub(super) fn second_week(deeds: &mut Vec<Deed>) -> Result<(), DemoError> {
    let mut add = |deed: Deed| deeds.push(deed);
    let [amos, bettina, ..] = &USUAL;
    // A top-up in the morning, over the middle.
    let pours = vec![pour("0.08", Some(44))?, pour("0.13", Some(65))?];
    let top_up = poured(OilFamily::Mineral, Some(30), pours, Some(65));
    add(record(moment("2026-10-26T07:05:00-06:00")?, amos, hours("2884.9")?, fact(top_up)));
    // Another family of oil than the unit's own, and what it takes to put that right.
    let wrong = poured(OilFamily::Mineral, None, vec![pour("0.25", None)?], None);
    add(named("wrong oil", ivo(moment("2026-10-27T21:40:00-06:00")?, hours("1934.0")?, None, fact(wrong))));
    let flushed = service("oil-and-filters", Some(("8", OilFamily::Polyglycol)), Some(OilReason::Mixed))?;
    add(Deed {
        at: moment("2026-10-28T13:10:00-06:00")?,
        what: Doing::AtShop {
            unit: "TH-07",
            person: "Dov Petrakis",
            hours: hours("1934.5")?,
            fact: Box::new(flushed.into()),
            name: None,
        },
    });
    add(Deed {
        at: moment("2026-10-28T13:30:00-06:00")?,
        what: Doing::Certify {
            unit: "TH-07",
            person: "Dov Petrakis",
            found: "wrong oil",
            item: "oil-look",
            place: None,
            verdict: RepairVerdict::Repaired,
            words: "drained and flushed by the manual, filled with polyglycol",
            name: "oil flushed",
        },
    });
    add(hand_over("yard phone 6", "2026-10-28T18:30:00-06:00")?);
    add(ivo(moment("2026-10-28T18:45:00-06:00")?, None, None, Recorded::Review(&["oil flushed"])));
    // 10: four evenings, one figure of two is wrong.
    for (at, figure, name) in [
        ("2026-10-27T16:15:00-06:00", "1211.0", None),
        ("2026-10-28T16:15:00-06:00", "1226.2", Some("wednesday")),
        ("2026-10-29T16:20:00-06:00", "1221.5", Some("thursday")),
        ("2026-10-30T16:15:00-06:00", "1227.9", None),
    ] {
        add(reading(moment(at)?, bettina, figure, name)?);
    }
    // 11: the night the clocks go back.
    add(ivo(moment("2026-10-31T23:50:00-06:00")?, None, None, Recorded::Walk(500, &[])));
    add(ivo(moment("2026-11-01T00:50:00-06:00")?, hours("1951.0")?, None, fact(started())));
    add(ivo(moment("2026-11-01T01:40:00-07:00")?, hours("1952.8")?, None, fact(stopped())));
    add(ivo(moment("2026-11-01T04:40:00-07:00")?, None, None, fact(report())));
    add(hand_over("yard phone 6", "2026-11-01T05:00:00-07:00")?);
    Ok(())
}
