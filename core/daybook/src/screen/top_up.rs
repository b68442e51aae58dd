//! A top-up: the gate of two signs, whether the oils may meet, small pours.

use serde::{Deserialize, Serialize};
use sumpbook_trade::fluid::Fluids;
use sumpbook_trade::oil::{Level, Millilitres, OilSystem, astray};
use sumpbook_trade::procedure::{Procedures, Step};
use sumpbook_trade::record::{Glass, Pour, Warmth};
use sumpbook_trade::{EntryId, Figure, Fluid, Mix, Oil, OilFamily, Stamp};

use super::glass::{StopNow, Wait, stop_now, wait};
use super::levels::{LevelNow, OilLine, PourRow, middle, oil_line};
use super::main_act::{DisabledReason, Main, MainAct};
use super::oil_use::OilUseRow;
use crate::draft::{MissingSign, TopUpDraft};
use crate::ledger::{Ledger, LedgerError};

/// A top-up under way.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TopUpScreen {
    /// The draft.
    pub draft: EntryId,
    /// The unit's door number.
    pub door: String,
    /// Which fluid.
    pub fluid: Fluid,
    /// It should not need any: a pour opens a defect by itself.
    pub sealed: bool,
    /// What belongs in the compressor; none for another fluid.
    pub oil: Option<OilLine>,
    /// Family on the drum.
    pub drum_family: Option<OilFamily>,
    /// Grade on the drum.
    pub drum_grade: Option<String>,
    /// That was read off its label by a camera; with neither family nor grade it is an unknown drum.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub drum_scanned: bool,
    /// What stands between the two; none for another fluid and before the drum was read.
    pub mix: Option<Mix>,
    /// By what the drum says it may not go in: both oils are shown by their names.
    pub may_not_pour: bool,
    /// The two families gel when they meet.
    pub gels: bool,
    /// Poured so, it locks the air: another oil, an unknown one, or a level out of view before it or after.
    pub locks_air: bool,
    /// First sign: the gauge reads 0.
    pub gauge_zero: Option<bool>,
    /// Second sign: blow-down ended, silent.
    pub blow_down_silent: Option<bool>,
    /// What keeps the cap shut; none when it may be opened.
    pub missing: Option<MissingSign>,
    /// Whether it runs.
    pub stop: StopNow,
    /// How long it had stood.
    pub wait: Wait,
    /// Where it stood before.
    pub before: Option<Glass>,
    /// That level is asked for before the first pour.
    pub wants_before: bool,
    /// The level is asked for after each pour.
    pub wants_after: bool,
    /// A pour that may not be made can be noted all the same when it is poured already.
    pub only_if_poured: bool,
    /// Seconds until oil that was poured has come up in the glass.
    pub settle_s: u32,
    /// The cautions of the step it stands at, for the texts `caution-...`.
    pub cautions: Vec<String>,
    /// Cold or hot, as it was said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub warmth: Option<Warmth>,
    /// The oil's temperature, where it was given: hot oil stands higher, and two levels compare at one temperature.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub oil_temperature: Option<Figure>,
    /// The oil's temperature may be given: it is the compressor's oil and was not said to be cold. Nothing waits for it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub offers_temperature: bool,
    /// Pours so far, first to last.
    pub pours: Vec<Pour>,
    /// All of them together, millilitres, to the nearest.
    pub poured_ml: i64,
    /// Where it stands now.
    pub now: Option<Glass>,
    /// The middle band in percent, both ends in it.
    pub middle: (u8, u8),
    /// That against the middle.
    pub level: LevelNow,
    /// What the glass shows of the pours, when that is farther from what was poured than two readings can be:
    /// millilitres that are not there, below zero more than was poured. Ask: another unit, spilt, a leak?
    pub astray_ml: Option<i64>,
    /// Where the oil goes; none for another fluid.
    pub oil_use: Option<OilUseRow>,
    /// The last three top-ups, newest first.
    pub last: Vec<PourRow>,
    /// The main button: a pour, until it stands in the middle or over it.
    pub main: Main,
}

/// A top-up as it stands.
///
/// # Errors
/// As reading the store.
pub fn top_up(ledger: &Ledger, draft: &TopUpDraft, now: Stamp) -> Result<TopUpScreen, LedgerError> {
    let is_oil = draft.fluid == Fluid::CompressorOil;
    let oil = if is_oil { Some(oil_line(ledger, draft.unit)?) } else { None };
    let told = draft.has_read_drum();
    let own = oil.as_ref().map(|line| Oil::labelled(line.family, line.grade.as_deref()));
    let drum = Oil::labelled(draft.family, draft.grade.as_deref());
    let mix = own.filter(|_| told).map(|own| Oil::mix(own, drum));
    let fluids = Fluids::common_practice().ok();
    let families = own.and_then(|own| own.family).zip(draft.family);
    let stop = stop_now(ledger, draft.unit)?;
    let state = ledger.unit_state(draft.unit)?;
    let level = LevelNow::of(draft.level(), middle(ledger));
    let main = main(draft, level, mix);
    let wrong = !draft.pours.is_empty() && own.is_some_and(|own| Oil::poured_wrong(own, drum).is_some());
    Ok(TopUpScreen {
        draft: draft.id,
        door: ledger.fleet().door(draft.unit),
        fluid: draft.fluid,
        sealed: fluids.and_then(|f| f.of(draft.fluid)).is_some_and(|facts| facts.sealed),
        drum_family: draft.family,
        drum_grade: draft.grade.clone(),
        drum_scanned: draft.label_scanned,
        gels: families.zip(fluids).is_some_and(|((a, b), fluids)| fluids.gel(a, b)),
        locks_air: is_oil && (draft.was_out_of_view() || wrong),
        may_not_pour: mix.is_some_and(|mix| !mix.may_pour()),
        mix,
        gauge_zero: draft.signs.gauge_zero,
        blow_down_silent: draft.signs.blow_down_silent,
        missing: draft.missing_sign(),
        wait: wait(stop, None, now),
        stop,
        before: draft.before,
        wants_before: is_oil && draft.before.is_none() && draft.pours.is_empty(),
        wants_after: is_oil,
        only_if_poured: matches!(
            main.why_not,
            Some(DisabledReason::SignMissing(_) | DisabledReason::OilMayNotMeet(_))
        ),
        settle_s: step("pour-small").and_then(|step| step.dwell).unwrap_or_default(),
        cautions: if is_oil { cautions(draft, mix, level) } else { Vec::new() },
        warmth: draft.warmth,
        oil_temperature: draft.oil_temperature,
        offers_temperature: is_oil && draft.warmth != Some(Warmth::Cold),
        poured_ml: millilitres(&draft.pours),
        pours: draft.pours.clone(),
        now: draft.level(),
        middle: middle(ledger),
        level,
        astray_ml: if is_oil { astray_ml(ledger, draft) } else { None },
        oil_use: if is_oil { OilUseRow::of(&state.oil, ledger.fleet()) } else { None },
        last: state.top_ups.iter().map(|top_up| PourRow::of(top_up, ledger.fleet())).collect(),
        main,
        oil,
    })
}

fn main(draft: &TopUpDraft, level: LevelNow, mix: Option<Mix>) -> Main {
    let is_oil = draft.fluid == Fluid::CompressorOil;
    let in_or_over = matches!(level, LevelNow::Middle | LevelNow::Over(_) | LevelNow::AboveView);
    // A fluid without a glass is finished whenever the person says so.
    if !draft.pours.is_empty() && (in_or_over || !is_oil) {
        // What was poured is poured: it can always be finished and signed.
        return Main::ready(MainAct::FinishTopUp);
    }
    // The two signs are looked at on the unit, so they say more than a stop somebody forgot to record. But for oil that
    // may not go in nobody opens the cap at all.
    let why_not = match (draft.missing_sign(), mix) {
        (_, Some(mix)) if !mix.may_pour() => Some(DisabledReason::OilMayNotMeet(mix)),
        (Some(missing), _) => Some(DisabledReason::SignMissing(missing)),
        (None, None) if is_oil => Some(DisabledReason::DrumNotRead),
        _ => None,
    };
    Main { act: MainAct::AddPour, why_not }
}

/// A step of the top-up as the table of procedures has it.
fn step(id: &str) -> Option<&'static Step> {
    Procedures::common_practice().ok()?.of("top-up")?.step(id)
}

/// The caution of the step it stands at: before the cap opens, before the drum is tipped, while the level comes up, and
/// once it stands in the middle.
fn cautions(draft: &TopUpDraft, mix: Option<Mix>, level: LevelNow) -> Vec<String> {
    let at = match (draft.missing_sign(), mix, level) {
        (Some(_), _, _) => "zero-two-signs",
        (None, None, _) => "oil-match",
        (None, Some(_), LevelNow::NotGiven | LevelNow::BelowView | LevelNow::Under(_)) => "cap-slow",
        (None, Some(_), LevelNow::Middle | LevelNow::Over(_) | LevelNow::AboveView) => "stop-middle",
    };
    step(at).and_then(|step| step.caution.clone()).into_iter().collect()
}

/// What is poured and not seen in the glass, when it must be asked about.
fn astray_ml(ledger: &Ledger, draft: &TopUpDraft) -> Option<i64> {
    let system = OilSystem::of(ledger.fleet().set_on(draft.unit).map(|set| &set.profile));
    let after = draft.pours.iter().rev().find_map(|pour| pour.after)?;
    let poured: Millilitres = draft
        .pours
        .iter()
        .filter_map(|pour| Millilitres::of(pour.volume))
        .fold(Millilitres::ZERO, |sum, one| sum + one);
    // Hot before and hot after compare with each other; only their difference is asked for.
    let cold = |glass: Glass| Level { glass: glass.into(), warmth: None, celsius: None, stood: None };
    let found = astray(&cold(draft.before?), poured, &cold(after), &system, &ledger.fleet().numbers.oil())?;
    found.ask.then(|| found.astray.0.round() as i64)
}

fn millilitres(pours: &[Pour]) -> i64 {
    // Volumes are cubic metres inside.
    let cubic_metres: f64 = pours.iter().filter_map(|pour| pour.volume.volume()).map(|v| v.value).sum();
    (cubic_metres * 1e6).round() as i64
}
