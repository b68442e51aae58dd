//! A top-up, for people.

use sumpbook_daybook::screen::TopUpScreen;

use super::glass::waited;
use super::unit::{oil, pours};
use super::words::Words;
use crate::sheet::poured;

pub(super) fn told(words: &Words, screen: &TopUpScreen) -> Vec<String> {
    let mut lines = vec![format!("{}, {}", screen.door, words.choice("fluid", &screen.fluid))];
    lines.extend(screen.oil.iter().map(|line| oil(words, line)));
    lines.extend(screen.cautions.iter().map(|caution| words.t(&format!("caution-{caution}"))));
    let drum = screen.drum_family.map(|family| words.choice("family", &family));
    let drum: Vec<String> = drum.into_iter().chain(screen.drum_grade.clone()).collect();
    if !drum.is_empty() {
        lines.push(format!("On the drum: {}", drum.join(" ")));
    }
    lines.extend(screen.mix.iter().map(|mix| words.choice("mix", mix)));
    lines.extend(screen.missing.iter().map(|sign| words.choice("sign-missing", sign)));
    lines.extend(waited(words, &screen.stop, &screen.wait));
    if let Some(before) = screen.before {
        lines.push(format!("Before: {}", words.glass(Some(before))));
    }
    if !screen.pours.is_empty() {
        lines.push(format!("Poured: {}, {}", poured(&screen.pours), words.glass(screen.now)));
    }
    lines.push(words.level(screen.level));
    if !screen.last.is_empty() {
        lines.push(pours(words, &screen.last));
    }
    lines.push(words.main(&screen.main, &screen.door, screen.now));
    lines
}
