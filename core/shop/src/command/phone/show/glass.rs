//! The sight glass, for people.

use sumpbook_daybook::screen::{GlassScreen, StopNow, Wait};
use sumpbook_daybook::text::Arg;
use sumpbook_trade::record::StopWait;

use super::unit::oil;
use super::words::Words;

pub(super) fn told(words: &Words, screen: &GlassScreen) -> Vec<String> {
    let mut lines = vec![screen.door.clone(), oil(words, &screen.oil)];
    lines.push(format!("The middle: {} to {} %", screen.middle.0, screen.middle.1));
    lines.extend(waited(words, &screen.stop, &screen.wait));
    lines.push(words.level(screen.level));
    if screen.rose_without_a_pour {
        lines.push(words.t("level-rose"));
    }
    if screen.photo_asked {
        lines.push("A photo of the glass is asked today.".to_owned());
    }
    lines.push(words.main(&screen.main, &screen.door, screen.given));
    lines
}

/// Since when it stands, and whether that is long enough.
pub(super) fn waited(words: &Words, stop: &StopNow, wait: &Wait) -> Vec<String> {
    let stop = match stop {
        StopNow::Stopped(at) => Some(format!("Stopped {}", words.at(*at))),
        StopNow::Running(at) => Some(words.with("running-since", &[("when", Arg::Text(&words.at(*at)))])),
        StopNow::Unknown => None,
    };
    let wait = match wait {
        Wait::Enough(StopWait { minutes: Some(minutes), .. }) => {
            words.with("wait-enough", &[("minutes", Arg::Count(i64::from(*minutes)))])
        }
        Wait::Enough(_) => words.t("wait-said"),
        Wait::TooShort { left_s, .. } => words.with("wait-too-short", &[("left", Arg::Count(*left_s))]),
        Wait::Ask => words.t("wait-ask"),
    };
    stop.into_iter().chain([wait]).collect()
}
