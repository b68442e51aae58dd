//! The answer, rounded to what a gauge shows and in the asker's units.

use serde::Serialize;
use sumpbook_trade::air::{Blowing, Fitting, HoseRun, Intake, Job, JobWarning, Site, Tool, air_for};
use sumpbook_trade::limit::Rules;
use uom::si::f64::{Length, Pressure, ThermodynamicTemperature, VolumeRate};
use uom::si::length::{foot, inch, meter, millimeter};
use uom::si::pressure::{kilopascal, psi};
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};
use uom::si::volume_rate::{cubic_foot_per_minute, cubic_meter_per_minute};

use super::asked::{Asked, ToolAsked};

/// Rounded figures in the asker's units.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Answered {
    /// Delivered here, free air of the standard sea level: cfm, or m3/min.
    pub(super) delivered: f64,
    /// Taken by the tools.
    pub(super) taken: f64,
    /// Left over; below zero what is missing.
    pub(super) left_over: f64,
    /// About so much pressure at the tool; none when the hose is not known.
    pub(super) at_tool: Option<f64>,
    /// Altitude was not given: the sea's level stands in for it.
    pub(super) at_sea_level: bool,
    /// Intake temperature was not given: the standard atmosphere's stands in for it.
    pub(super) standard_intake: bool,
    /// Under this temperature the receiver collects water.
    pub(super) dew_point: Option<f64>,
    /// The oil stands so many degrees over it; below zero under it.
    pub(super) over_by: Option<f64>,
    /// What to look out for.
    pub(super) warnings: Vec<Warning>,
}

/// One thing to look out for.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Warning {
    /// What: a key of the texts.
    pub(super) what: &'static str,
    /// By how much, or the figure it is about, in its unit.
    pub(super) figure: Option<f64>,
    /// Where the limit is written; none for what follows from the figures alone.
    pub(super) cites: Option<String>,
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

    fn flow_told(&self, flow: VolumeRate) -> f64 {
        if self.metric {
            rounded(flow.get::<cubic_meter_per_minute>(), 100.0)
        } else {
            rounded(flow.get::<cubic_foot_per_minute>(), 1.0)
        }
    }

    fn pressure(&self, gauge: f64) -> Pressure {
        if self.metric { Pressure::new::<kilopascal>(gauge) } else { Pressure::new::<psi>(gauge) }
    }

    fn pressure_told(&self, gauge: Pressure) -> f64 {
        rounded(if self.metric { gauge.get::<kilopascal>() } else { gauge.get::<psi>() }, 1.0)
    }

    fn temperature(&self, t: f64) -> ThermodynamicTemperature {
        if self.metric {
            ThermodynamicTemperature::new::<degree_celsius>(t)
        } else {
            ThermodynamicTemperature::new::<degree_fahrenheit>(t)
        }
    }

    fn temperature_told(&self, t: ThermodynamicTemperature) -> f64 {
        rounded(if self.metric { t.get::<degree_celsius>() } else { t.get::<degree_fahrenheit>() }, 1.0)
    }

    /// A difference of temperatures given in kelvins.
    fn degrees(&self, kelvins: f64) -> f64 {
        rounded(if self.metric { kelvins } else { kelvins * 1.8 }, 1.0)
    }

    fn height(&self, altitude: f64) -> Length {
        if self.metric { Length::new::<meter>(altitude) } else { Length::new::<foot>(altitude) }
    }

    fn bore(&self, bore: f64) -> Length {
        if self.metric { Length::new::<millimeter>(bore) } else { Length::new::<inch>(bore) }
    }

    fn bore_told(&self, bore: Length) -> f64 {
        if self.metric {
            rounded(bore.get::<millimeter>(), 10.0)
        } else {
            rounded(bore.get::<inch>(), 1_000.0)
        }
    }
}

fn rounded(figure: f64, parts: f64) -> f64 {
    let figure = (figure * parts).round() / parts;
    // Nothing is told as less than nothing.
    if figure == 0.0 { 0.0 } else { figure }
}

/// The air for what is asked; none while delivery or pressure are not known.
pub(super) fn of(asked: &Asked) -> Option<Answered> {
    let units = Units { metric: asked.is_metric() };
    let site = Site {
        intake: Intake {
            altitude: units.height(asked.altitude.unwrap_or(0.0)),
            temperature: asked.intake.map(|t| units.temperature(t)),
            humidity: asked.humidity.map(|percent| percent / 100.0),
        },
        rated: units.flow(asked.delivery?),
        holds: units.pressure(asked.holds?),
        oil: asked.oil.map(|t| units.temperature(t)),
    };
    let tools: Vec<Tool> = asked.tools.iter().filter_map(|tool| tool_of(&units, tool)).collect();
    let hose = asked.bore.zip(asked.length).map(|(bore, length)| HoseRun {
        bore: units.bore(bore),
        length: units.height(length),
        fittings: fittings(asked),
    });
    let nozzle = asked.nozzle.map(|gauge| units.pressure(gauge));
    let blowing = asked.blowing.then_some(Blowing { at_nozzle: nozzle, guarded: asked.guarded });
    let rules = Rules::common_practice().ok()?;
    let job = Job { tools, hose, cut_off: asked.cut_off, blowing };
    let air = air_for(&site, &job, rules, None);
    let cites = |topic: &str| rules.on(topic, None).map(|rule| rule.cites.clone());
    Some(Answered {
        delivered: units.flow_told(air.delivered),
        taken: units.flow_told(air.taken),
        left_over: units.flow_told(air.left_over),
        at_tool: air.at_tool.map(|gauge| units.pressure_told(gauge)),
        at_sea_level: asked.altitude.is_none(),
        standard_intake: asked.intake.is_none(),
        dew_point: air.warm.map(|warm| units.temperature_told(warm.dew_point)),
        over_by: air.warm.map(|warm| units.degrees(warm.over_by)),
        warnings: air.warnings.iter().map(|warning| told(&units, *warning, &cites)).collect(),
    })
}

fn tool_of(units: &Units, tool: &ToolAsked) -> Option<Tool> {
    Some(Tool {
        name: tool.name.clone(),
        takes: units.flow(tool.takes?),
        at: units.pressure(tool.at.unwrap_or(0.0)),
        count: tool.count.unwrap_or(1.0).round() as u32,
        share: tool.share.unwrap_or(100.0) / 100.0,
    })
}

fn fittings(asked: &Asked) -> Vec<Fitting> {
    let all = [
        (Fitting::Coupling, asked.couplings),
        (Fitting::QuickCoupling, asked.quick_couplings),
        (Fitting::Elbow, asked.elbows),
        (Fitting::Valve, asked.valves),
        (Fitting::Oiler, asked.oilers),
    ];
    all.into_iter().flat_map(|(fitting, count)| std::iter::repeat_n(fitting, count)).collect()
}

fn told(units: &Units, warning: JobWarning, cites: &dyn Fn(&str) -> Option<String>) -> Warning {
    let (what, figure, cites) = match warning {
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
    Warning { what, figure, cites }
}
