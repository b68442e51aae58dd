//! The fields of the form as the calculator asks for them.

use sumpbook_daybook::screen::{AIR_TOOLS, AirField, AirPart, AirQuery, AirSaid};
use sumpbook_trade::TruckId;

use crate::console::form::Fields;
use crate::console::language::Measures;

/// The name of a figure's field: `holds`; of a tool's: `takes-2`.
pub(super) fn name(field: AirField, tool: u8) -> String {
    let key = field.text_key();
    let plain = key.strip_prefix("air-").unwrap_or(key);
    if tool == 0 { plain.to_owned() } else { format!("{plain}-{tool}") }
}

/// What the form asks.
pub(super) fn of(fields: &Fields, own: Measures, unit: Option<TruckId>) -> AirQuery {
    let measures = match fields.text("measures") {
        Some("us") => Measures::Us,
        Some("metric") => Measures::Metric,
        _ => own,
    };
    let places = AirField::ALL.into_iter().flat_map(|field| {
        let tools = if field.part() == AirPart::Tool { 1..=AIR_TOOLS } else { 0..=0 };
        tools.map(move |tool| (field, tool))
    });
    let said = places
        .filter_map(|(field, tool)| Some(AirSaid { field, tool, said: fields.owned(&name(field, tool))? }));
    let flag = |name: &str| fields.text(name) == Some("yes");
    AirQuery {
        unit,
        metric: measures == Measures::Metric,
        said: said.collect(),
        cut_off: match fields.text("cut-off") {
            Some("yes") => Some(true),
            Some("no") => Some(false),
            _ => None,
        },
        blowing: flag("blowing"),
        guarded: flag("guarded"),
    }
}

/// What the tools are called, for whoever reads the page; nothing is reckoned with it.
pub(super) fn tool_names(fields: &Fields) -> Vec<String> {
    let named = |tool| fields.text(&format!("tool-{tool}")).unwrap_or_default();
    (1..=AIR_TOOLS).map(|tool| named(tool).chars().take(60).collect()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_field_of_the_form_reaches_the_calculator_under_its_name() {
        let pairs = [("holds", "100"), ("quick", "2"), ("takes-2", "80"), ("takes", "9"), ("measures", "us")];
        let fields =
            Fields(pairs.iter().map(|(name, said)| ((*name).to_owned(), (*said).to_owned())).collect());
        let query = of(&fields, Measures::Metric, None);
        assert!(!query.metric);
        let said: Vec<_> =
            query.said.iter().map(|said| (said.field, said.tool, said.said.as_str())).collect();
        assert_eq!(
            said,
            [(AirField::Holds, 0, "100"), (AirField::Takes, 2, "80"), (AirField::QuickCouplings, 0, "2")]
        );
    }
}
