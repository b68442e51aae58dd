//! What a test looks at: the main button in words, the first screen, a walk that was signed.

use serde_json::{Value, json};
use sumpbook_daybook::screen::*;
use sumpbook_daybook::text::Texts;

use super::{Yard, at};

/// The main button in words, as it would stand on the phone.
pub(crate) fn button(door: &str, main: &Main) -> String {
    let texts = Texts::english();
    let args = json!(main.act);
    let inner = args.as_object().and_then(|act| act.values().next()).cloned().unwrap_or(Value::Null);
    let text = |name: &str| inner.get(name).and_then(Value::as_str).unwrap_or_default().to_owned();
    let at = inner.get("at").and_then(Value::as_u64);
    let (stop, figure) = (at.map_or_else(|| text("stop"), |at| at.to_string()), text("figure"));
    let lines = inner.get("lines").and_then(Value::as_i64).unwrap_or_default();
    let label = texts.get(
        main.act.text_key(),
        &[
            ("door", door.into()),
            ("stop", stop.as_str().into()),
            ("figure", figure.as_str().into()),
            ("lines", lines.into()),
            ("level", "the level".into()),
        ],
    );
    match &main.why_not {
        None => format!("[ {label} ]"),
        Some(DisabledReason::MoreBelow { left }) => {
            format!("( {label} ) {}", texts.get("why-not-more-below", &[("left", (*left).into())]))
        }
        Some(DisabledReason::FigureMissing { item }) => {
            let item = texts.get(&format!("item-{item}"), &[]);
            format!("( {label} ) {}", texts.get("why-not-figure-missing", &[("item", item.as_str().into())]))
        }
        Some(why) => format!("( {label} ) {}", texts.get(why.text_key(), &[])),
    }
}

pub(crate) fn see_today(yard: &Yard, person: sumpbook_trade::PersonId, now: &str) -> Value {
    let screen = today(&yard.ledger, &TodayQuery { person }, &yard.standing, at(now)).unwrap();
    assert_eq!(screen, today(&yard.ledger, &TodayQuery { person }, &yard.standing, at(now)).unwrap());
    // Today asks of all units at once what the page of one asks for itself.
    for row in &screen.units {
        let query = UnitQuery { unit: row.id, person };
        let page = unit(&yard.ledger, &query, &yard.standing, at(now)).unwrap();
        assert_eq!((&row.pre_trip, &row.road_air), (&page.pre_trip, &page.road_air), "{} {now}", row.door);
    }
    let buttons: Vec<String> = screen.units.iter().map(|row| button(&row.door, &row.main)).collect();
    json!({ "buttons": buttons, "screen": screen })
}

/// Mon 19 Oct: Amos has walked round TH-01 and signed at 06:32.
pub(crate) fn walked() -> Yard {
    let mut yard = Yard::new();
    yard.phone(
        r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T06:32:00-06:00","hours":"2862.4","kind":"pre-trip-section","body":{"walk":"00000000-0000-0000-0000-000000000901","edition":1,"answers":[{"item":"horn","answer":"ok"},{"item":"oil-level","answer":"ok","figures":[{"figure":{"value":"38","unit":"%"},"how":"asked"}]}],"seconds":430,"complete":true}}"#,
    );
    yard
}
