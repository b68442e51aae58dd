//! The two-clock ruler: hours above, calendar below, both to one post. Only the tracks are drawn; the words
//! stand as text above and below.

use maud::{Markup, html};
use serde::Serialize;

/// One clock of a task: how much of its interval is used, in thousandths, and where coming up begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Track {
    /// Thousandths used; over 1000 past the post.
    pub(super) used: i64,
    /// Coming up from here on.
    pub(super) coming_from: i64,
    /// It runs out first.
    pub(super) nearer: bool,
}

/// Share of the interval at which the drawing is cut.
const CUT: i64 = 1_220;

/// x of a share: 8 + 248 f.
fn x(thousandths: i64) -> f64 {
    8.0 + 248.0 * thousandths.clamp(0, CUT) as f64 / 1_000.0
}

/// Both tracks. Without a clock its track is not drawn.
pub(super) fn draw(hours: Option<Track>, days: Option<Track>) -> Markup {
    html! {
        svg class="ruler" viewBox="0 16 328 64" aria-hidden="true" focusable="false" {
            @if let Some(hours) = hours { (track(hours, 22, 26)) }
            @if let Some(days) = days { (track(days, 56, 60)) }
            path class="post" d="M256 18V78" {}
            path class="flag" d="M256 18h14v10h-14Z" {}
        }
    }
}

/// The nearer clock is 16 tall, the other 8.
fn track(track: Track, near_y: i32, far_y: i32) -> Markup {
    let (y, tall) = if track.nearer { (near_y, 16) } else { (far_y, 8) };
    let used = x(track.used.min(1_000));
    let comb_from = x(track.coming_from.clamp(0, 1_000));
    // Strokes every 5, the last at the post.
    let strokes = (0..50).map(|n| 256.0 - 5.0 * f64::from(n)).take_while(|at| *at >= comb_from.max(used));
    let comb: String = strokes.map(|at| format!("M{at:.1} {y}v{tall}")).collect();
    // What is past is never so little that it is not seen.
    let past = (track.used > 1_000).then(|| x(track.used).max(264.0) - 256.0);
    html! {
        rect class="track" x="8" y=(y) width="248" height=(tall) {}
        rect class="used" x="8" y=(y) width=(format!("{:.1}", used - 8.0)) height=(tall) {}
        @if !comb.is_empty() { path class="comb" d=(comb) {} }
        @if let Some(past) = past {
            @let cut = track.used > CUT;
            @let end = 256.0 + past;
            @if cut {
                path class="past" d=(format!(
                    "M256 {y}H{:.1}L{end:.1} {:.1}L{:.1} {}H256Z",
                    end - 8.0, f64::from(y) + f64::from(tall) / 2.0, end - 8.0, y + tall
                )) {}
            } @else {
                rect class="past" x="256" y=(y) width=(format!("{past:.1}")) height=(tall) {}
            }
        }
        @if track.nearer && track.used <= 1_000 {
            path class="here" d=(format!("M{:.1} {}h16l-8 -9Z", used - 8.0, y + tall + 9)) {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn one(used: i64) -> String {
        draw(Some(Track { used, coming_from: 900, nearer: true }), None).into_string()
    }

    #[test]
    fn used_time_is_solid_to_its_share_and_coming_up_is_a_comb() {
        assert!(one(500).contains(r#"width="124.0""#), "{}", one(500));
        assert!(one(500).contains("class=\"comb\""));
        assert!(one(950).contains("class=\"comb\""));
        assert!(!one(1_000).contains("M251.0"), "nothing is left to come up: {}", one(1_000));
    }

    #[test]
    fn past_the_post_is_hatched_at_least_eight_wide_and_tipped_where_it_is_cut() {
        assert!(one(1_001).contains(r#"class="past" x="256" y="22" width="8.0""#), "{}", one(1_001));
        assert!(one(1_100).contains(r#"width="24.8""#), "{}", one(1_100));
        assert!(one(9_000).contains("class=\"past\" d="), "{}", one(9_000));
        assert!(!one(1_100).contains("class=\"here\""));
    }
}
