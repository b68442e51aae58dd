//! Charts: what was recorded over time or over hours, with its limits. Drawn once, for the screen, the print and
//! the ear: points differ by shape, never by hue; limits carry their words; and the whole is told in a sentence.
//!
//! Words stand outside the picture as text; only the figures of its scales and of what was struck stand in it.
//! Only places along the width stretch with the page: they are percents, so letters and marks keep their size, and
//! the figures that run up have as much room as the longest of them takes.

mod scale;

use maud::{Markup, html};

pub(super) use scale::{Scale, before_shown, days};

use super::words::Words;

/// What a point shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Mark {
    /// Oil was poured: a triangle.
    Pour,
    /// A level, or a balance: a ring.
    Ring,
    /// A figure that was read: a dot.
    Figure,
    /// A figure that takes no part in the count: a ring with a stroke through it.
    Struck,
}

/// One point, and how far up and down it may be off.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Point {
    pub(super) mark: Mark,
    pub(super) x: f64,
    pub(super) y: f64,
    pub(super) between: Option<(f64, f64)>,
    /// Its figure, where the place alone does not tell it.
    pub(super) label: Option<String>,
}

/// What one chart shows.
pub(super) struct Chart {
    /// Told in place of the picture.
    pub(super) says: String,
    /// What runs up.
    pub(super) y_name: String,
    pub(super) x: Scale,
    pub(super) y: Scale,
    /// Points joined by a line, in order.
    pub(super) line: Vec<(f64, f64)>,
    pub(super) points: Vec<Point>,
    /// Limits, each with its words.
    pub(super) limits: Vec<(f64, String)>,
    /// Where a fill begins, each with its words.
    pub(super) posts: Vec<(f64, String)>,
}

/// The picture is so tall; what is drawn stands between these two.
const TALL: f64 = 232.0;
const TOP: f64 = 28.0;
const BOTTOM: f64 = 200.0;
/// A figure's letter takes at most so much: 632/1000 of 14, rounded up.
const DIGIT: usize = 9;
/// From this share of the width on a point's figure stands to its left: to its right the picture ends.
const LEFT_FROM: f64 = 0.7;

impl Chart {
    fn up(&self, y: f64) -> String {
        format!("{:.1}", BOTTOM - self.y.share(y) * (BOTTOM - TOP))
    }

    /// Room for the longest figure that runs up, and 8 beside it.
    fn y_wide(&self) -> usize {
        let longest = self.y.ticks().iter().map(|(_, said)| said.chars().count()).max().unwrap_or(0);
        longest.saturating_mul(DIGIT).saturating_add(8)
    }

    fn along(&self, x: f64) -> String {
        format!("{:.2}%", self.x.share(x) * 100.0)
    }

    /// Drawn, with the words of its marks below it.
    pub(super) fn draw(&self, words: &Words) -> Markup {
        let size = format!("{TALL}");
        let wide = self.y_wide();
        html! {
            p class="chart-name" aria-hidden="true" { (self.y_name) }
            div class="chart" role="img" aria-label=(self.says) {
                svg class="chart-y" width=(wide) height=(size) aria-hidden="true" focusable="false" {
                    @for (at, said) in self.y.ticks() {
                        text x=(wide.saturating_sub(8)) y=(self.up(*at)) dy="5" text-anchor="end" { (said) }
                    }
                }
                svg class="chart-plot" width="100%" height=(size) aria-hidden="true" focusable="false" {
                    @for (at, _) in self.y.ticks() {
                        line class="grid" x1="0" x2="100%" y1=(self.up(*at)) y2=(self.up(*at)) {}
                    }
                    @for (at, said) in self.x.ticks() {
                        @let along = self.along(*at);
                        line class="grid" x1=(along) x2=(along) y1=(BOTTOM) y2=(BOTTOM + 6.0) {}
                        text x=(along) y=(BOTTOM + 22.0) text-anchor="middle" { (said) }
                    }
                    @for (at, _) in &self.posts {
                        @let along = self.along(*at);
                        line class="post" x1=(along) x2=(along) y1=(TOP - 20.0) y2=(BOTTOM) {}
                    }
                    @for (nth, (at, _)) in self.limits.iter().enumerate() {
                        line class="limit" stroke-dasharray=(self.dashes(nth)) x1="0" x2="100%"
                            y1=(self.up(*at)) y2=(self.up(*at)) {}
                    }
                    @for pair in self.line.windows(2) {
                        @if let [from, to] = pair {
                            line class="through" x1=(self.along(from.0)) y1=(self.up(from.1))
                                x2=(self.along(to.0)) y2=(self.up(to.1)) {}
                        }
                    }
                    @for point in &self.points { (self.point(point)) }
                }
            }
            (self.key(words))
        }
    }

    /// The words of everything drawn, each beside what stands for it: real text, outside the picture.
    fn key(&self, words: &Words) -> Markup {
        let marks = [
            (Mark::Pour, "key-pour"),
            (Mark::Ring, "key-ring"),
            (Mark::Figure, "key-figure"),
            (Mark::Struck, "key-struck"),
        ];
        html! {
            p class="chart-key" aria-hidden="true" {
                @for (mark, key) in marks {
                    @if self.points.iter().any(|point| point.mark == mark) {
                        span { svg width="20" height="20" focusable="false" {
                            svg x="10" y="10" overflow="visible" { (shape(mark)) }
                        } " " (words.t(key)) }
                    }
                }
                @for (nth, (_, said)) in self.limits.iter().enumerate() {
                    @if !said.is_empty() {
                        span { svg width="34" height="20" focusable="false" {
                            line class="limit" stroke-dasharray=(self.dashes(nth)) x1="0" x2="34" y1="10" y2="10" {}
                        } " " (said) }
                    }
                }
                @if let Some((_, said)) = self.posts.first() {
                    span { svg width="20" height="20" focusable="false" {
                        line class="post" x1="10" x2="10" y1="1" y2="19" {}
                    } " " (said) }
                }
            }
        }
    }

    /// How the line of limit number `nth` is broken: no two alike, but a line without words is the second one of the
    /// limit before it.
    fn dashes(&self, nth: usize) -> &'static str {
        let named =
            self.limits.iter().take(nth.saturating_add(1)).filter(|(_, said)| !said.is_empty()).count();
        ["6 4", "2 4", "12 4"].get(named.saturating_sub(1)).copied().unwrap_or("12 4 2 4")
    }

    fn point(&self, point: &Point) -> Markup {
        let along = self.along(point.x);
        html! {
            @if let Some((low, high)) = point.between {
                line class="between" x1=(along) x2=(along) y1=(self.up(low)) y2=(self.up(high)) {}
            }
            svg x=(along) y=(self.up(point.y)) overflow="visible" {
                (shape(point.mark))
                @if let Some(label) = &point.label {
                    @if self.x.share(point.x) < LEFT_FROM { text x="12" y="5" { (label) } }
                    @else { text x="-12" y="5" text-anchor="end" { (label) } }
                }
            }
        }
    }
}

/// A mark around its middle.
fn shape(mark: Mark) -> Markup {
    html! {
        @match mark {
            Mark::Pour => path class="pour" d="M-8 7H8L0 -8Z" {},
            Mark::Ring => circle class="ring" r="5.5" {},
            Mark::Figure => circle class="figure" r="4" {},
            Mark::Struck => { circle class="ring" r="6" {} path class="stroke" d="M-9 9L9 -9" {} },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::console::language::{Choice, Language, Measures};

    fn words() -> Words {
        let choice = Choice { language: Language::En, measures: Measures::Us };
        let day = chrono::NaiveDate::from_ymd_opt(2026, 10, 20).unwrap();
        Words { choice, zone: chrono_tz::America::Denver, day }
    }

    #[test]
    fn figures_have_room_whatever_their_length_and_stand_within_the_picture() {
        let point =
            |x| Point { mark: Mark::Struck, x, y: 1220.0, between: None, label: Some("7,421.0".into()) };
        let chart = Chart {
            says: String::new(),
            y_name: "h".to_owned(),
            x: Scale::of(&[0.0, 10.0], 4, |x| format!("{x:.0}")),
            y: Scale::of(&[1_200.0, 1_230.0], 4, |y| format!("1,{:.1}", y - 1_000.0)),
            line: Vec::new(),
            points: vec![point(1.0), point(9.5)],
            limits: Vec::new(),
            posts: Vec::new(),
        };
        let drawn = chart.draw(&words()).into_string();
        assert!(drawn.contains("class=\"chart-y\" width=\"71\""), "{drawn}");
        assert!(drawn.contains("text x=\"63\""), "{drawn}");
        let figures = drawn.matches("<text x=\"12\"").count();
        let left = drawn.matches("<text x=\"-12\" y=\"5\" text-anchor=\"end\"").count();
        assert_eq!((figures, left), (1, 1));
    }

    #[test]
    fn each_mark_has_a_shape_of_its_own_and_is_told_in_words() {
        let point = |mark, x| Point { mark, x, y: 50.0, between: None, label: None };
        let chart = Chart {
            says: "Levels of the glass.".to_owned(),
            y_name: "%".to_owned(),
            x: Scale::of(&[0.0, 10.0], 4, |x| format!("{x:.0}")),
            y: Scale::of(&[0.0, 100.0], 4, |y| format!("{y:.0}")),
            line: vec![(0.0, 50.0), (10.0, 40.0)],
            points: vec![
                point(Mark::Pour, 0.0),
                point(Mark::Ring, 2.0),
                point(Mark::Figure, 4.0),
                point(Mark::Struck, 6.0),
            ],
            limits: vec![(45.0, "middle, from 45 %".to_owned())],
            posts: vec![(5.0, "filled".to_owned())],
        };
        let drawn = chart.draw(&words()).into_string();
        for said in [
            "role=\"img\" aria-label=\"Levels of the glass.\"",
            "class=\"pour\"",
            "class=\"ring\"",
            "class=\"figure\"",
            "class=\"stroke\"",
            " middle, from 45 %<",
            " filled<",
            "class=\"limit\"",
        ] {
            assert!(drawn.contains(said), "{said}: {drawn}");
        }
        let picture = drawn.split("class=\"chart-key\"").next().unwrap();
        for outside in ["middle, from", "filled", ">%<"] {
            let svg = picture.split("<svg").skip(1).any(|svg| svg.contains(outside));
            assert!(!svg, "{outside} stands in the picture");
        }
        let shapes: std::collections::BTreeSet<String> =
            [Mark::Pour, Mark::Ring, Mark::Figure, Mark::Struck].map(|mark| shape(mark).into_string()).into();
        assert_eq!(shapes.len(), 4);
    }
}
