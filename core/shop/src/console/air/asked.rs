//! What the form asks, each figure with its unit. A figure that is none is named and left out; the rest stands.

use serde::Serialize;
use sumpbook_trade::Figure;
use uom::si::volume_rate::cubic_foot_per_minute;

use crate::console::form::Fields;
use crate::console::language::Measures;

/// Tools a form has room for.
pub(super) const TOOLS: usize = 4;

/// One kind of tool.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct ToolAsked {
    pub(super) name: String,
    /// Free air it takes, cfm or m3/min.
    pub(super) takes: Option<f64>,
    /// The pressure it wants, psi or kPa.
    pub(super) at: Option<f64>,
    /// How many.
    pub(super) count: Option<f64>,
    /// Percent of the time it is pulled.
    pub(super) share: Option<f64>,
}

/// A field that says no figure that can be.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Bad {
    /// The field: a key of the texts.
    pub(super) field: &'static str,
    /// What stood in it.
    pub(super) said: String,
}

/// Everything asked, in the units of `measures`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Asked {
    /// `us`: cfm, psi, ft, degF, in. `metric`: m3/min, kPa, m, degC, mm.
    pub(super) measures: &'static str,
    pub(super) unit: Option<String>,
    pub(super) delivery: Option<f64>,
    /// The delivery is the unit's own.
    pub(super) delivery_of_unit: bool,
    pub(super) holds: Option<f64>,
    pub(super) altitude: Option<f64>,
    pub(super) intake: Option<f64>,
    /// Percent.
    pub(super) humidity: Option<f64>,
    pub(super) oil: Option<f64>,
    pub(super) tools: Vec<ToolAsked>,
    pub(super) bore: Option<f64>,
    pub(super) length: Option<f64>,
    pub(super) couplings: usize,
    pub(super) quick_couplings: usize,
    pub(super) elbows: usize,
    pub(super) valves: usize,
    pub(super) oilers: usize,
    pub(super) cut_off: Option<bool>,
    pub(super) blowing: bool,
    pub(super) nozzle: Option<f64>,
    pub(super) guarded: bool,
    /// Fields that were left out.
    pub(super) bad: Vec<Bad>,
}

/// Fields as they are read, one after the other.
struct Reading<'a> {
    fields: &'a Fields,
    metric: bool,
    bad: Vec<Bad>,
}

impl Reading<'_> {
    /// A figure between two ends, which are given in US units and in metric ones.
    fn figure(&mut self, name: &str, field: &'static str, us: (f64, f64), metric: (f64, f64)) -> Option<f64> {
        let said = self.fields.text(name)?;
        let (low, high) = if self.metric { metric } else { us };
        let figure = figure_of(said).filter(|figure| *figure >= low && *figure <= high);
        if figure.is_none() {
            // A field is read back onto the page: no more of it than a figure can be.
            self.bad.push(Bad { field, said: said.chars().take(20).collect() });
        }
        figure
    }

    /// How many of something, up to 50.
    fn count(&mut self, name: &str, field: &'static str) -> usize {
        self.figure(name, field, (0.0, 50.0), (0.0, 50.0)).map_or(0, |count| count.round() as usize)
    }
}

/// "0.75", "3/4", "1 1/4", "1,800".
fn figure_of(text: &str) -> Option<f64> {
    let plain = |text: &str| text.replace(',', "").parse::<f64>().ok().filter(|figure| figure.is_finite());
    let part = |text: &str| {
        let (over, under) = text.split_once('/')?;
        let (over, under) = (plain(over.trim())?, plain(under.trim())?);
        (under > 0.0).then(|| over / under)
    };
    let text = text.trim();
    match text.split_once(' ') {
        Some((whole, rest)) => Some(plain(whole)? + part(rest)?),
        None => plain(text).or_else(|| part(text)),
    }
}

impl Asked {
    pub(super) fn of(fields: &Fields, own: Measures, unit: Option<String>, of_unit: Option<Figure>) -> Asked {
        let measures = match fields.text("measures") {
            Some("us") => Measures::Us,
            Some("metric") => Measures::Metric,
            _ => own,
        };
        let mut read = Reading { fields, metric: measures == Measures::Metric, bad: Vec::new() };
        let delivery = read.figure("delivery", "air-delivery", (1.0, 10_000.0), (0.03, 300.0));
        // What is written counts; an empty field is the unit's own.
        let own_delivery = of_unit.filter(|_| delivery.is_none()).and_then(Figure::flow);
        let own_delivery = own_delivery.map(|flow| {
            let flow = if read.metric {
                flow.get::<uom::si::volume_rate::cubic_meter_per_minute>()
            } else {
                flow.get::<cubic_foot_per_minute>()
            };
            (flow * 100.0).round() / 100.0
        });
        let tools = (1..=TOOLS).filter_map(|n| read.tool(n)).collect();
        let flag = |name: &str| fields.text(name) == Some("yes");
        let mut asked = Asked {
            measures: measures.tag(),
            unit,
            delivery: delivery.or(own_delivery),
            delivery_of_unit: delivery.is_none() && own_delivery.is_some(),
            holds: read.figure("holds", "air-holds", (1.0, 500.0), (5.0, 3_500.0)),
            altitude: read.figure("altitude", "air-altitude", (-1_400.0, 20_000.0), (-430.0, 6_100.0)),
            intake: read.figure("intake", "air-intake", (-60.0, 160.0), (-50.0, 70.0)),
            humidity: read.figure("humidity", "air-humidity", (0.0, 100.0), (0.0, 100.0)),
            oil: read.figure("oil", "air-oil", (-60.0, 300.0), (-50.0, 150.0)),
            tools,
            bore: read.figure("bore", "air-bore", (0.1, 6.0), (2.5, 155.0)),
            length: read.figure("length", "air-length", (0.0, 3_000.0), (0.0, 1_000.0)),
            couplings: read.count("couplings", "air-couplings"),
            quick_couplings: read.count("quick", "air-quick"),
            elbows: read.count("elbows", "air-elbows"),
            valves: read.count("valves", "air-valves"),
            oilers: read.count("oilers", "air-oilers"),
            cut_off: match fields.text("cut-off") {
                Some("yes") => Some(true),
                Some("no") => Some(false),
                _ => None,
            },
            blowing: flag("blowing"),
            nozzle: read.figure("nozzle", "air-nozzle", (0.0, 500.0), (0.0, 3_500.0)),
            guarded: flag("guarded"),
            bad: Vec::new(),
        };
        asked.bad = read.bad;
        asked
    }

    pub(super) fn is_metric(&self) -> bool {
        self.measures == Measures::Metric.tag()
    }
}

impl Reading<'_> {
    /// A row of tools; none when it is empty.
    fn tool(&mut self, n: usize) -> Option<ToolAsked> {
        let of = |name: &str| format!("{name}-{n}");
        let name = self.fields.owned(&of("tool")).map(|name| name.chars().take(60).collect::<String>());
        let tool = ToolAsked {
            takes: self.figure(&of("takes"), "air-takes", (0.0, 10_000.0), (0.0, 300.0)),
            at: self.figure(&of("at"), "air-at", (0.0, 500.0), (0.0, 3_500.0)),
            count: self.figure(&of("count"), "air-count", (0.0, 99.0), (0.0, 99.0)),
            share: self.figure(&of("share"), "air-share", (0.0, 100.0), (0.0, 100.0)),
            name: name.unwrap_or_default(),
        };
        (tool != ToolAsked::default()).then_some(tool)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bore_may_be_a_fraction() {
        assert_eq!(figure_of("3/4"), Some(0.75));
        assert_eq!(figure_of("1 1/4"), Some(1.25));
        assert_eq!(figure_of("5,906"), Some(5_906.0));
        for no in ["", "wide", "3/0", "1/", "NaN", "inf", "1 x"] {
            assert_eq!(figure_of(no), None, "{no}");
        }
    }

    #[test]
    fn what_is_no_figure_is_named_and_the_rest_stands() {
        let pairs =
            [("holds", "100"), ("altitude", "high"), ("bore", "60"), ("takes-2", "80"), ("measures", "us")];
        let fields =
            Fields(pairs.iter().map(|(name, said)| ((*name).to_owned(), (*said).to_owned())).collect());
        let asked = Asked::of(&fields, Measures::Metric, None, None);
        assert_eq!(
            (asked.measures, asked.holds, asked.altitude, asked.bore),
            ("us", Some(100.0), None, None)
        );
        assert_eq!(asked.tools.len(), 1);
        let bad: Vec<&str> = asked.bad.iter().map(|bad| bad.field).collect();
        assert_eq!(bad, ["air-altitude", "air-bore"]);
    }
}
