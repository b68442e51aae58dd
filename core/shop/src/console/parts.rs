//! Oil to load, in words.

use sumpbook_daybook::text::Arg;

use super::words::Words;
use crate::parts::OilNeed;

/// "6 qt mineral VG 46, 2 jugs", or that it is not known how much.
pub(super) fn oil(words: &Words, oil: &OilNeed) -> String {
    let kind = kind(words, oil.family.as_deref(), oil.grade.as_deref());
    match (&oil.volume, oil.jugs) {
        (Some(volume), Some(count)) => words.with(
            "oil-jugs",
            &[
                ("volume", Arg::Text(&words.measure(volume))),
                ("kind", Arg::Text(&kind)),
                ("count", Arg::Count(i64::from(count))),
            ],
        ),
        _ => words.with("oil-how-much", &[("kind", Arg::Text(&kind))]),
    }
}

/// "mineral VG 46".
pub(super) fn kind(words: &Words, family: Option<&str>, grade: Option<&str>) -> String {
    let family = match family {
        Some(family) => words.or_plain(&format!("family-{family}"), family),
        None => words.t("oil-family-unknown"),
    };
    grade.map_or_else(|| family.clone(), |grade| format!("{family} {grade}"))
}
