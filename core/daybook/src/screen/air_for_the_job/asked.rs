//! What was said of each figure, read. A text that is no figure is named and left out; the rest stands.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use sumpbook_trade::TruckId;
use sumpbook_trade::ungrouped;
use sumpbook_trade::unit::HoseTag;
use uom::si::volume_rate::{cubic_foot_per_minute, cubic_meter_per_minute};

use super::field::{AirField, AirPart, Quantity, TOOLS};
use crate::ledger::Ledger;

/// What was said of one figure.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct AirSaid {
    /// Which.
    pub field: AirField,
    /// Of which tool, from 1; 0 of none.
    pub tool: u8,
    /// As it was written: "100", "3/4", "1 1/4", "5,906".
    pub said: String,
}

/// The whole question.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct AirQuery {
    /// The unit whose delivery, hoses and runs are taken; none: only what is said.
    pub unit: Option<TruckId>,
    /// m3/min, kPa, m, degC, mm instead of cfm, psi, ft, degF, in.
    pub metric: bool,
    /// The figures.
    pub said: Vec<AirSaid>,
    /// A device that cuts the flow when the hose fails is there; none: nobody said.
    pub cut_off: Option<bool>,
    /// Cleaning with air is part of the job.
    pub blowing: bool,
    /// A chip guard and eye protection are there.
    pub guarded: bool,
}

/// A width that may be meant: a hose of the unit by its tag, or a usual one.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct AirOffered {
    /// The tag of a hose of the unit; none: a usual width.
    pub tag: Option<String>,
    /// What is said by taking it.
    pub said: String,
}

/// One figure of the form.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct AirFieldRow {
    /// Which.
    pub field: AirField,
    /// Of which tool, from 1; 0 of none.
    pub tool: u8,
    /// What it is about.
    pub part: AirPart,
    /// Key of its name.
    pub key: String,
    /// Its unit as it is written beside it; empty for a bare number.
    pub unit: String,
    /// Decimals, for keys without a point.
    pub places: u8,
    /// It may lie below zero.
    pub below_zero: bool,
    /// What was said, at most 20 letters of it; none: nothing.
    pub said: Option<String>,
    /// What was said is no figure for it: it was left out.
    pub wrong: bool,
    /// The unit's own figure, taken where nothing is said.
    pub own: Option<String>,
    /// Widths that may be meant.
    pub offered: Vec<AirOffered>,
    /// Without it something stays unknown that a job wants to know.
    pub wanted: bool,
}

/// The figures as they were understood, in the asker's units.
pub(super) struct Asked {
    pub(super) metric: bool,
    figures: BTreeMap<(AirField, u8), f64>,
    pub(super) cut_off: Option<bool>,
    pub(super) blowing: bool,
    pub(super) guarded: bool,
    /// Something was said of this tool.
    begun: [bool; TOOLS as usize],
}

impl Asked {
    pub(super) fn figure(&self, field: AirField) -> Option<f64> {
        self.of_tool(field, 0)
    }

    pub(super) fn of_tool(&self, field: AirField, tool: u8) -> Option<f64> {
        self.figures.get(&(field, tool)).copied()
    }

    /// The tools of which something was said.
    pub(super) fn tools(&self) -> impl Iterator<Item = u8> {
        (1..=TOOLS).zip(self.begun).filter_map(|(tool, begun)| begun.then_some(tool))
    }
}

/// Reads the question: the form's rows, and what is reckoned with.
pub(super) fn read(ledger: &Ledger, query: &AirQuery) -> (Vec<AirFieldRow>, Asked) {
    let mut asked = Asked {
        metric: query.metric,
        figures: BTreeMap::new(),
        cut_off: query.cut_off,
        blowing: query.blowing,
        guarded: query.guarded,
        begun: [false; TOOLS as usize],
    };
    let own = query.unit.and_then(|unit| own_delivery(ledger, unit, query.metric));
    let truck = query.unit.and_then(|unit| ledger.fleet().trucks.get(&unit));
    let hoses = truck.map_or(&[][..], |truck| &truck.features.hoses);
    let mut rows = Vec::new();
    for (field, tool) in places() {
        let said = query.said.iter().find(|said| said.field == field && said.tool == tool);
        let said = said.map(|said| said.said.trim()).filter(|said| !said.is_empty());
        let (low, high) = field.ends(query.metric);
        let figure = said.and_then(figure_of).filter(|figure| *figure >= low && *figure <= high);
        let own = own.filter(|_| field == AirField::Delivery);
        if let Some(figure) = figure.or(own.filter(|_| said.is_none())) {
            asked.figures.insert((field, tool), figure);
        }
        if let (Some(begun), Some(_)) = (asked.begun.get_mut(usize::from(tool).wrapping_sub(1)), said) {
            *begun = true;
        }
        rows.push(AirFieldRow {
            field,
            tool,
            part: field.part(),
            key: field.text_key().to_owned(),
            unit: field.quantity().unit(query.metric).to_owned(),
            places: field.quantity().places(query.metric),
            below_zero: low < 0.0,
            said: said.map(|said| said.chars().take(20).collect()),
            wrong: said.is_some() && figure.is_none(),
            own: own.map(|own| own.to_string()),
            offered: if field == AirField::Bore { widths(hoses, query.metric) } else { Vec::new() },
            wanted: wanted(field, tool, query.blowing) && said.is_none() && own.is_none(),
        });
    }
    (rows, asked)
}

/// Every figure in the order of the form: a tool's figures once for each tool.
fn places() -> impl Iterator<Item = (AirField, u8)> {
    let of = |part: AirPart| AirField::ALL.into_iter().filter(move |field| field.part() == part);
    let alone = move |part| of(part).map(|field| (field, 0));
    let tools = (1..=TOOLS).flat_map(move |tool| of(AirPart::Tool).map(move |field| (field, tool)));
    alone(AirPart::Place).chain(tools).chain(alone(AirPart::Hose)).chain(alone(AirPart::Cleaning))
}

fn wanted(field: AirField, tool: u8, blowing: bool) -> bool {
    match field {
        AirField::Delivery | AirField::Holds | AirField::Bore | AirField::Length => true,
        AirField::Takes | AirField::At => tool == 1,
        AirField::Nozzle => blowing,
        _ => false,
    }
}

/// The delivery on record, in the asker's unit, to two places.
fn own_delivery(ledger: &Ledger, unit: TruckId, metric: bool) -> Option<f64> {
    let flow = ledger.fleet().set_on(unit)?.profile.delivery?.flow()?;
    let flow =
        if metric { flow.get::<cubic_meter_per_minute>() } else { flow.get::<cubic_foot_per_minute>() };
    Some((flow * 100.0).round() / 100.0)
}

/// The unit's own hoses, where their width is known, then the usual widths.
fn widths(hoses: &[HoseTag], metric: bool) -> Vec<AirOffered> {
    let own = hoses.iter().filter_map(|hose| {
        let um = f64::from(hose.inner_um?);
        let width = if metric { (um / 100.0).round() / 10.0 } else { (um / 25.4).round() / 1_000.0 };
        Some(AirOffered { tag: Some(hose.tag.clone()), said: width.to_string() })
    });
    let usual = if metric { ["10", "13", "19", "25", "32"] } else { ["3/8", "1/2", "3/4", "1", "1 1/4"] };
    own.chain(usual.map(|said| AirOffered { tag: None, said: said.to_owned() })).collect()
}

/// "0.75", "3/4", "1 1/4", "1,800".
fn figure_of(text: &str) -> Option<f64> {
    let plain = |text: &str| ungrouped(text)?.parse::<f64>().ok().filter(|figure| figure.is_finite());
    let part = |text: &str| {
        let (over, under) = text.split_once('/')?;
        let (over, under) = (plain(over.trim())?, plain(under.trim())?);
        (under > 0.0).then(|| over / under)
    };
    match text.split_once(' ') {
        Some((whole, rest)) => Some(plain(whole)? + part(rest)?),
        None => plain(text).or_else(|| part(text)),
    }
}

/// A rounded figure with its unit.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct AirFigure {
    /// The number as text.
    pub value: String,
    /// The unit as it is written beside it.
    pub unit: String,
}

impl AirFigure {
    pub(super) fn rounded(figure: f64, parts: f64, quantity: Quantity, metric: bool) -> AirFigure {
        let figure = (figure * parts).round() / parts;
        // Nothing is told as less than nothing.
        let figure = if figure == 0.0 { 0.0 } else { figure };
        AirFigure { value: figure.to_string(), unit: quantity.unit(metric).to_owned() }
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
    fn every_figure_stands_once_and_a_tools_figures_once_for_each() {
        let all: Vec<_> = places().collect();
        assert_eq!(all.len(), AirField::ALL.len() + 3 * 4);
        assert!(AirField::ALL.iter().all(|field| all.iter().any(|(of, _)| of == field)));
    }
}
