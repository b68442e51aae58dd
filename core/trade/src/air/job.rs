//! The whole question: is there air enough for this job, here, today?

use uom::si::f64::{Length, Pressure, ThermodynamicTemperature, VolumeRate};
use uom::si::length::inch;
use uom::si::pressure::{pascal, psi};

use super::atmosphere::{Intake, standard_pressure};
use super::delivered::delivered;
use super::hose::{HoseRun, hose_loss};
use super::tools::{Tool, demand};
use super::warm::{RunWarm, run_warm};
use crate::limit::{Case, Measure, Rules};

/// Where and with what it runs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Site {
    /// What it breathes.
    pub intake: Intake,
    /// The rated delivery.
    pub rated: VolumeRate,
    /// The pressure it holds, gauge.
    pub holds: Pressure,
    /// The oil's temperature in the receiver, where it is shown.
    pub oil: Option<ThermodynamicTemperature>,
}

/// Cleaning with air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Blowing {
    /// Pressure at the nozzle, gauge; `None` when not known.
    pub at_nozzle: Option<Pressure>,
    /// A chip guard and eye protection are there.
    pub guarded: bool,
}

/// What is to be done.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// The tools on one hose.
    pub tools: Vec<Tool>,
    /// The hose; `None` when its bore or length is not known.
    pub hose: Option<HoseRun>,
    /// A device that cuts the flow when the hose fails; `None` when nobody said.
    pub cut_off: Option<bool>,
    /// Cleaning with air, when it is part of it.
    pub blowing: Option<Blowing>,
}

/// What to look out for. Nothing here refuses anything.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum JobWarning {
    /// The tools take more than is delivered, by so much: a smaller tool, or one at a time.
    TooLittleAir(VolumeRate),
    /// The tool gets less than its pressure, by so much: a larger or a shorter hose.
    TooLittlePressure(Pressure),
    /// A hose over 1/2 in inside wants a device that cuts the flow when it fails (29 CFR 1926.302(b)(7)).
    CutOffWanted(Length),
    /// Cleaning air must be under 30 psi at the nozzle (29 CFR 1910.242(b)).
    NozzleOver(Pressure),
    /// Cleaning air with no figure at the nozzle: reduce it and look.
    NozzleUnknown,
    /// Cleaning air wants a chip guard and eye protection.
    NoGuard,
    /// The receiver is colder than the dew point, by so many kelvins: run it warm once a day.
    RunWarm(f64),
    /// Bore or length of the hose is not known, so neither is the pressure at the tool.
    HoseUnknown,
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct JobAir {
    /// Delivered here, in free air of the standard sea level.
    pub delivered: VolumeRate,
    /// Taken by the tools.
    pub taken: VolumeRate,
    /// Left over; below zero what is missing.
    pub left_over: VolumeRate,
    /// At the tool, gauge, about; `None` when the hose is not known.
    pub at_tool: Option<Pressure>,
    /// The dew point in the receiver, where humidity and oil temperature are known.
    pub warm: Option<RunWarm>,
    /// What to look out for, in the order of this list's own kinds.
    pub warnings: Vec<JobWarning>,
}

/// Works out the air for a job. Limits come from `rules`, the shop's set first.
pub fn air_for(site: &Site, job: &Job, rules: &Rules, set: Option<&str>) -> JobAir {
    let delivered = delivered(site.rated, &site.intake);
    let taken = demand(&job.tools);
    let left_over = delivered - taken;
    let outside = standard_pressure(site.intake.altitude);
    // What is not delivered cannot be lost on the way.
    let flow = if taken < delivered { taken } else { delivered };
    let lost = job.hose.as_ref().and_then(|hose| hose_loss(hose, flow, site.holds + outside));
    let at_tool = lost.map(|lost| (site.holds - lost).max(Pressure::new::<pascal>(0.0)));
    let warm = site.oil.and_then(|oil| run_warm(&site.intake, site.holds, oil));

    let mut warnings = Vec::new();
    if left_over.value < 0.0 {
        warnings.push(JobWarning::TooLittleAir(-left_over));
    }
    let wanted = job.tools.iter().map(|tool| tool.at.get::<pascal>()).fold(0.0, f64::max);
    match at_tool.map(|at| wanted - at.get::<pascal>()) {
        Some(short) if short > 0.0 => {
            warnings.push(JobWarning::TooLittlePressure(Pressure::new::<pascal>(short)));
        }
        None if !job.tools.is_empty() => warnings.push(JobWarning::HoseUnknown),
        _ => {}
    }
    let holds = |topic, figure: f64, unit| {
        let limit = rules.on(topic, set).and_then(|rule| rule.limit(&Case::default()).ok());
        limit.and_then(|limit| limit.holds_in(figure, unit)).unwrap_or(false)
    };
    if let Some(hose) = &job.hose
        && job.cut_off != Some(true)
        && !job.tools.is_empty()
        && !holds("hose-without-cut-off", hose.bore.get::<inch>(), Measure::Inch)
    {
        warnings.push(JobWarning::CutOffWanted(hose.bore));
    }
    if let Some(blowing) = job.blowing {
        match blowing.at_nozzle {
            None => warnings.push(JobWarning::NozzleUnknown),
            Some(at) if !holds("blow-gun", at.get::<psi>(), Measure::Psi) => {
                warnings.push(JobWarning::NozzleOver(at));
            }
            Some(_) => {}
        }
        if !blowing.guarded {
            warnings.push(JobWarning::NoGuard);
        }
    }
    if let Some(warm) = warm.filter(|warm| warm.over_by < 0.0) {
        warnings.push(JobWarning::RunWarm(-warm.over_by));
    }
    JobAir { delivered, taken, left_over, at_tool, warm, warnings }
}
