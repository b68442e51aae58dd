//! The road/air pair mark and the state tag: more ink is worse news. Words stand beside each, so the drawing
//! itself is silent.

use maud::{Markup, html};
use serde::Serialize;

/// What is on record of a part.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum LockNow {
    /// No lock on record.
    #[default]
    None,
    /// Certified; locked until the next driver's review.
    AwaitingReview,
    /// Locked.
    Locked,
}

impl LockNow {
    fn class(self) -> &'static str {
        match self {
            LockNow::None => "plain",
            LockNow::AwaitingReview => "awaiting",
            LockNow::Locked => "locked",
        }
    }

    /// Key of its words.
    pub(super) fn key(self) -> &'static str {
        match self {
            LockNow::None => "no-lock",
            LockNow::AwaitingReview => "lock-awaiting",
            LockNow::Locked => "lock-stands",
        }
    }
}

/// Road and air of a unit, and its outlets.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Pair {
    /// The road.
    pub(super) road: LockNow,
    /// The air.
    pub(super) air: LockNow,
    /// An outlet is locked.
    pub(super) outlet: bool,
    /// The news is past the shop's limit.
    pub(super) old_news: bool,
}

/// Hatches, once a page: every mark and ruler draws with them.
pub(super) fn patterns() -> Markup {
    html! {
        svg class="patterns" width="0" height="0" aria-hidden="true" focusable="false" {
            defs {
                pattern id="hatch-stop" width="6" height="6" patternUnits="userSpaceOnUse"
                    patternTransform="rotate(45)" {
                    rect class="f-sheet" width="6" height="6" {}
                    rect class="f-stop" width="3" height="6" {}
                }
                pattern id="hatch-ink" width="6" height="6" patternUnits="userSpaceOnUse"
                    patternTransform="rotate(45)" {
                    rect class="f-sheet" width="6" height="6" {}
                    rect class="f-ink" width="2" height="6" {}
                }
            }
        }
    }
}

const ROAD: &str = "M18 2H60L52 38H18Q14 38 14 34V6Q14 2 18 2Z";
const AIR: &str = "M64 2H94Q98 2 98 6V34Q98 38 94 38H56Z";

/// The pair mark.
pub(super) fn pair(pair: &Pair) -> Markup {
    let old = if pair.old_news { " old" } else { "" };
    html! {
        svg class=(format!("pair{old}")) viewBox="0 0 112 40" width="84" height="30" aria-hidden="true"
            focusable="false" {
            (bolt(pair.road, true))
            (bolt(pair.air, false))
            path class=(format!("half {}", pair.road.class())) d=(ROAD) {}
            path class=(format!("half {}", pair.air.class())) d=(AIR) {}
            @if pair.outlet && pair.air == LockNow::None {
                path class="corner" d="M98 25H84V38H94Q98 38 98 34Z" {}
                rect class="bolt" x="98" y="27" width="8" height="8" {}
            }
            g class=(format!("glyph {}", pair.road.class())) {
                @if pair.road == LockNow::AwaitingReview { circle class="disc" cx="33" cy="20" r="14" {} }
                circle class="wheel" cx="33" cy="20" r="9" {}
                circle class="dot" cx="33" cy="20" r="3" {}
            }
            g class=(format!("glyph {}", pair.air.class())) {
                @if pair.air == LockNow::AwaitingReview { circle class="disc" cx="79" cy="20" r="14" {} }
                path class="strokes" d="M70 12h12M70 20h18M70 28h6" {}
            }
        }
    }
}

/// The bolt: shot out when locked, half out while a review is awaited.
fn bolt(lock: LockNow, left: bool) -> Markup {
    html! {
        @match (lock, left) {
            (LockNow::Locked, true) => rect class="bolt" x="2" y="13" width="12" height="14" {},
            (LockNow::Locked, false) => rect class="bolt" x="98" y="13" width="12" height="14" {},
            (LockNow::AwaitingReview, true) => rect class="bolt half-out" x="8" y="13" width="6" height="14" {},
            (LockNow::AwaitingReview, false) => rect class="bolt half-out" x="98" y="13" width="6" height="14" {},
            (LockNow::None, _) => {},
        }
    }
}

/// The state tag of a task with its words, which give the amount. Far off has no tag.
pub(super) fn tag(state: &str, words: &str) -> Markup {
    let class = match state {
        "past-due" => "tag past",
        "due-today" => "tag today",
        "coming-up" => "tag coming",
        _ => return html! { (words) },
    };
    html! { span class=(class) { (words) } }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_state_of_the_pair_is_drawn_otherwise() {
        let all = [LockNow::None, LockNow::AwaitingReview, LockNow::Locked];
        let mut drawn = std::collections::BTreeSet::new();
        for road in all {
            for air in all {
                drawn.insert(pair(&Pair { road, air, ..Pair::default() }).into_string());
            }
        }
        drawn.insert(pair(&Pair { outlet: true, ..Pair::default() }).into_string());
        drawn.insert(pair(&Pair { old_news: true, ..Pair::default() }).into_string());
        assert_eq!(drawn.len(), 11);
    }
}
