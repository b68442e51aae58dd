//! The two-clock ruler: hours above, calendar below, both to one post. Only the tracks are drawn; the words
//! stand as text above and below.

use maud::{Markup, html};
use serde::Serialize;

/// One clock of a task: how much of its interval is used, in thousandths, and where coming up begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Track {
    /// Thousandths used; over 1000 past the post. Of counted or estimated hours, at most so many.
    pub(super) used: i64,
    /// Of counted or estimated hours, used at least: solid up to here, hatched from here on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) least: Option<i64>,
    /// Coming up from here on.
    pub(super) coming_from: i64,
    /// It runs out first.
    pub(super) nearer: bool,
}

/// When the hours run out, on the calendar's scale: thousandths of its interval.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Span {
    /// Not before.
    pub(super) earliest: i64,
    /// Likely.
    pub(super) likely: i64,
    /// Not after; none when that cannot be told.
    pub(super) latest: Option<i64>,
}

/// Share of the interval at which the drawing is cut.
const CUT: i64 = 1_220;

/// x of a share: 8 + 248 f.
fn x(thousandths: i64) -> f64 {
    8.0 + 248.0 * thousandths.clamp(0, CUT) as f64 / 1_000.0
}

/// Both tracks and, under the calendar's, when the hours run out. Without a clock its track is not drawn.
pub(super) fn draw(hours: Option<Track>, days: Option<Track>, runs_out: Option<Span>) -> Markup {
    let runs_out = runs_out.filter(|_| days.is_some());
    let frame = if runs_out.is_some() { "0 16 328 78" } else { "0 16 328 64" };
    html! {
        svg class="ruler" viewBox=(frame) aria-hidden="true" focusable="false" {
            @if let Some(hours) = hours { (track(hours, 22, 26)) }
            @if let Some(days) = days { (track(days, 56, 60)) }
            path class="post" d="M256 18V78" {}
            path class="flag" d="M256 18h14v10h-14Z" {}
            @if let Some(span) = runs_out { (forecast(span)) }
        }
    }
}

/// A line from the earliest to the latest day with caps, a ring at the likely one, an arrow tip where it leaves.
fn forecast(span: Span) -> Markup {
    const Y: f64 = 87.0;
    let cap = |at: i64| format!("M{:.1} {}v10", x(at), Y - 5.0);
    let end = span.latest.filter(|latest| *latest <= CUT);
    let mut line = format!("M{:.1} {Y}H{:.1}", x(span.earliest), x(end.unwrap_or(CUT)));
    if span.earliest <= CUT {
        line.push_str(&cap(span.earliest));
    }
    match end {
        Some(end) => line.push_str(&cap(end)),
        None => line.push_str(&format!("M{:.1} {}l8 5l-8 5", x(CUT) - 8.0, Y - 5.0)),
    }
    html! {
        path class="forecast" d=(line) {}
        @if span.likely <= CUT { circle class="likely" cx=(format!("{:.1}", x(span.likely))) cy=(Y) r="5" {} }
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
        @if let Some(least) = track.least.map(|least| x(least.min(1_000)).min(used)) {
            rect class="bound" x="8" y=(y) width=(format!("{:.1}", used - 8.0)) height=(tall) {}
            rect class="used" x="8" y=(y) width=(format!("{:.1}", least - 8.0)) height=(tall) {}
        } @else {
            rect class="used" x="8" y=(y) width=(format!("{:.1}", used - 8.0)) height=(tall) {}
        }
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

    fn track_of(used: i64, least: Option<i64>) -> Track {
        Track { used, least, coming_from: 900, nearer: true }
    }

    fn one(used: i64) -> String {
        draw(Some(track_of(used, None)), None, None).into_string()
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

    #[test]
    fn what_is_bounded_is_solid_to_the_low_and_hatched_to_the_high() {
        let drawn = draw(Some(track_of(750, Some(250))), None, None).into_string();
        assert!(drawn.contains(r#"class="bound" x="8" y="22" width="186.0""#), "{drawn}");
        assert!(drawn.contains(r#"class="used" x="8" y="22" width="62.0""#), "{drawn}");
        let past = draw(Some(track_of(1_250, Some(700))), None, None).into_string();
        assert!(past.contains("class=\"bound\"") && past.contains("class=\"past\""), "{past}");
    }

    #[test]
    fn the_forecast_has_caps_a_ring_and_an_arrow_where_it_leaves() {
        let days = Some(track_of(700, None));
        let told = |span| draw(None, days, Some(span)).into_string();
        let whole = told(Span { earliest: 800, likely: 900, latest: Some(1_000) });
        assert!(whole.contains("M206.4 87H256.0M206.4 82v10M256.0 82v10"), "{whole}");
        assert!(whole.contains(r#"cx="231.2" cy="87" r="5""#), "{whole}");
        let open = told(Span { earliest: 800, likely: 900, latest: None });
        assert!(
            open.contains("H310.6") && open.contains("l8 5l-8 5") && !open.contains("M310.6 82"),
            "{open}"
        );
        let beyond = told(Span { earliest: 1_300, likely: 1_400, latest: None });
        assert!(!beyond.contains("<circle"), "{beyond}");
        assert!(!draw(None, days, None).into_string().contains("forecast"));
        assert!(
            !draw(None, None, Some(Span { earliest: 1, likely: 2, latest: None }))
                .into_string()
                .contains("forecast")
        );
    }
}
