//! The answer: rounded to what a gauge shows, in the asker's units, each figure as sure as it is.

use serde::{Deserialize, Serialize};
use sumpbook_trade::air::{Blowing, Fitting, HoseRun, Intake, Job, JobAir, JobWarning, Site, Tool, air_for};
use sumpbook_trade::limit::Rules;
use uom::si::f64::{Length, Pressure, ThermodynamicTemperature, VolumeRate};
use uom::si::length::{foot, inch, meter, millimeter};
use uom::si::pressure::{kilopascal, psi};
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};
use uom::si::volume_rate::{cubic_foot_per_minute, cubic_meter_per_minute};

use super::asked::{AirFigure, Asked};
use super::field::{AirField, Quantity};

/// One line of the answer.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct AirAnswerRow {
    /// Key of what it is.
    pub key: String,
    /// Key of how it is told, about `$figure`: about, at least, at most; or that it is not known.
    pub told: String,
    /// The figure; none: it is not known.
    pub figure: Option<AirFigure>,
}

/// One thing to look out for. It refuses nothing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct AirWarningRow {
    /// Key of what, about `$figure`.
    pub key: String,
    /// By how much, or the figure it is about.
    pub figure: Option<AirFigure>,
    /// Where the limit is written; none: the text `<key>-source` says where it comes from.
    pub cites: Option<String>,
}

/// The answer.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct AirAnswer {
    /// Its lines, in order.
    pub rows: Vec<AirAnswerRow>,
    /// Keys of what stood in for figures that were not given.
    pub stood_in: Vec<String>,
    /// What to look out for.
    pub warnings: Vec<AirWarningRow>,
}

/// The asker's units.
struct Units {
    metric: bool,
}

impl Units {
    fn flow(&self, flow: f64) -> VolumeRate {
        if self.metric {
            VolumeRate::new::<cubic_meter_per_minute>(flow)
        } else {
            VolumeRate::new::<cubic_foot_per_minute>(flow)
        }
    }

    fn flow_told(&self, flow: VolumeRate) -> AirFigure {
        if self.metric {
            self.told(flow.get::<cubic_meter_per_minute>(), 100.0, Quantity::Flow)
        } else {
            self.told(flow.get::<cubic_foot_per_minute>(), 1.0, Quantity::Flow)
        }
    }

    fn pressure(&self, gauge: f64) -> Pressure {
        if self.metric { Pressure::new::<kilopascal>(gauge) } else { Pressure::new::<psi>(gauge) }
    }

    fn pressure_told(&self, gauge: Pressure) -> AirFigure {
        let gauge = if self.metric { gauge.get::<kilopascal>() } else { gauge.get::<psi>() };
        self.told(gauge, 1.0, Quantity::Pressure)
    }

    fn temperature(&self, t: f64) -> ThermodynamicTemperature {
        if self.metric {
            ThermodynamicTemperature::new::<degree_celsius>(t)
        } else {
            ThermodynamicTemperature::new::<degree_fahrenheit>(t)
        }
    }

    fn temperature_told(&self, t: ThermodynamicTemperature) -> AirFigure {
        let t = if self.metric { t.get::<degree_celsius>() } else { t.get::<degree_fahrenheit>() };
        self.told(t, 1.0, Quantity::Warmth)
    }

    /// A difference of temperatures given in kelvins.
    fn degrees(&self, kelvins: f64) -> AirFigure {
        self.told(if self.metric { kelvins } else { kelvins * 1.8 }, 1.0, Quantity::Warmth)
    }

    fn height(&self, altitude: f64) -> Length {
        if self.metric { Length::new::<meter>(altitude) } else { Length::new::<foot>(altitude) }
    }

    fn bore(&self, bore: f64) -> Length {
        if self.metric { Length::new::<millimeter>(bore) } else { Length::new::<inch>(bore) }
    }

    fn bore_told(&self, bore: Length) -> AirFigure {
        if self.metric {
            self.told(bore.get::<millimeter>(), 10.0, Quantity::Bore)
        } else {
            self.told(bore.get::<inch>(), 1_000.0, Quantity::Bore)
        }
    }

    fn told(&self, figure: f64, parts: f64, quantity: Quantity) -> AirFigure {
        AirFigure::rounded(figure, parts, quantity, self.metric)
    }
}

/// The air for what is asked; none while delivery or pressure are not known.
pub(super) fn of(asked: &Asked) -> Option<AirAnswer> {
    let units = Units { metric: asked.metric };
    let site = Site {
        intake: Intake {
            altitude: units.height(asked.figure(AirField::Altitude).unwrap_or(0.0)),
            temperature: asked.figure(AirField::Intake).map(|t| units.temperature(t)),
            humidity: asked.figure(AirField::Humidity).map(|percent| percent / 100.0),
        },
        rated: units.flow(asked.figure(AirField::Delivery)?),
        holds: units.pressure(asked.figure(AirField::Holds)?),
        oil: asked.figure(AirField::Oil).map(|t| units.temperature(t)),
    };
    let tools: Vec<Tool> = asked.tools().filter_map(|tool| tool_of(&units, asked, tool)).collect();
    let begun = asked.tools().count();
    let bore_and_length = asked.figure(AirField::Bore).zip(asked.figure(AirField::Length));
    let hose = bore_and_length.map(|(bore, length)| HoseRun {
        bore: units.bore(bore),
        length: units.height(length),
        fittings: fittings(asked),
    });
    let at_nozzle = asked.figure(AirField::Nozzle).map(|gauge| units.pressure(gauge));
    let blowing = asked.blowing.then_some(Blowing { at_nozzle, guarded: asked.guarded });
    let rules = Rules::common_practice().ok()?;
    // A tool that nobody has a figure of takes air all the same.
    let known = tools.len();
    let all_known = known == begun;
    let job = Job { tools, hose, cut_off: asked.cut_off, blowing };
    let air = air_for(&site, &job, rules, None);
    let cites = |topic: &str| rules.on(topic, None).map(|rule| rule.cites.clone());
    let mut warnings: Vec<_> = air.warnings.iter().map(|warning| told(&units, *warning, &cites)).collect();
    if !all_known {
        warnings.push(AirWarningRow { key: "air-warn-tool".into(), figure: None, cites: None });
    }
    let unsaid = |field, key: &str| asked.figure(field).is_none().then(|| key.to_owned());
    let no_pressure = asked.tools().any(|tool| asked.of_tool(AirField::At, tool).is_none());
    Some(AirAnswer {
        rows: rows(&units, &air, begun, known),
        stood_in: [
            unsaid(AirField::Altitude, "air-at-sea-level"),
            unsaid(AirField::Intake, "air-standard-intake"),
            no_pressure.then(|| "air-no-pressure-wanted".to_owned()),
        ]
        .into_iter()
        .flatten()
        .collect(),
        warnings,
    })
}

fn rows(units: &Units, air: &JobAir, tools: usize, known: usize) -> Vec<AirAnswerRow> {
    let row = |key: &str, told: &str, figure| AirAnswerRow { key: key.into(), told: told.into(), figure };
    let mut rows = vec![row("air-delivered", "air-about", Some(units.flow_told(air.delivered)))];
    if tools == 0 {
        rows.push(row("air-taken", "air-no-tool", None));
    } else if known == 0 {
        rows.push(row("air-taken", "air-taken-unknown", None));
    } else {
        let all_known = known == tools;
        let how = if all_known { "air-figure" } else { "air-at-least" };
        rows.push(row("air-taken", how, Some(units.flow_told(air.taken))));
        let missing = air.left_over.value < 0.0;
        let how = match (missing, all_known) {
            (_, true) => "air-about",
            (true, false) => "air-at-least-about",
            (false, false) => "air-at-most-about",
        };
        let (key, left) =
            if missing { ("air-missing", -air.left_over) } else { ("air-left-over", air.left_over) };
        rows.push(row(key, how, Some(units.flow_told(left))));
        rows.push(match air.at_tool {
            Some(gauge) => {
                // Worked out from the pressure held: tools that take more than is delivered pull it down.
                let how = if all_known && !missing { "air-about" } else { "air-at-most-about" };
                row("air-at-tool", how, Some(units.pressure_told(gauge)))
            }
            None => row("air-at-tool", "air-at-tool-unknown", None),
        });
    }
    match air.warm {
        Some(warm) => {
            rows.push(row("air-dew-point", "air-about", Some(units.temperature_told(warm.dew_point))));
            let how = if warm.over_by < 0.0 { "air-oil-under" } else { "air-oil-over" };
            rows.push(row("air-oil-is", how, Some(units.degrees(warm.over_by.abs()))));
        }
        None => rows.push(row("air-dew-point", "air-dew-point-unknown", None)),
    }
    rows
}

fn tool_of(units: &Units, asked: &Asked, n: u8) -> Option<Tool> {
    Some(Tool {
        name: String::new(),
        takes: units.flow(asked.of_tool(AirField::Takes, n)?),
        at: units.pressure(asked.of_tool(AirField::At, n).unwrap_or(0.0)),
        count: asked.of_tool(AirField::Count, n).unwrap_or(1.0).round() as u32,
        share: asked.of_tool(AirField::Share, n).unwrap_or(100.0) / 100.0,
    })
}

fn fittings(asked: &Asked) -> Vec<Fitting> {
    let all = [
        (Fitting::Coupling, AirField::Couplings),
        (Fitting::QuickCoupling, AirField::QuickCouplings),
        (Fitting::Elbow, AirField::Elbows),
        (Fitting::Valve, AirField::Valves),
        (Fitting::Oiler, AirField::Oilers),
    ];
    let count = |field| asked.figure(field).map_or(0, |count| count.round() as usize);
    all.into_iter().flat_map(|(fitting, field)| std::iter::repeat_n(fitting, count(field))).collect()
}

fn told(units: &Units, warning: JobWarning, cites: &dyn Fn(&str) -> Option<String>) -> AirWarningRow {
    let (key, figure, cites) = match warning {
        JobWarning::TooLittleAir(short) => ("air-warn-too-little", Some(units.flow_told(short)), None),
        JobWarning::TooLittlePressure(short) => ("air-warn-pressure", Some(units.pressure_told(short)), None),
        JobWarning::CutOffWanted(bore) => {
            ("air-warn-cut-off", Some(units.bore_told(bore)), cites("hose-without-cut-off"))
        }
        JobWarning::NozzleOver(at) => ("air-warn-nozzle", Some(units.pressure_told(at)), cites("blow-gun")),
        JobWarning::NozzleUnknown => ("air-warn-nozzle-unknown", None, cites("blow-gun")),
        JobWarning::NoGuard => ("air-warn-guard", None, cites("blow-gun")),
        JobWarning::RunWarm(by) => ("air-warn-run-warm", Some(units.degrees(by)), None),
        JobWarning::HoseUnknown => ("air-warn-hose", None, None),
    };
    AirWarningRow { key: key.to_owned(), figure, cites }
}
