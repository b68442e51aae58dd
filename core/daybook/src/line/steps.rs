//! Steps of a procedure as they are recorded: what a step that was not so locks comes from the table, never from
//! whoever writes it down.

use sumpbook_trade::Fact;
use sumpbook_trade::procedure::{OnNotSo, Procedure, ProcedureError, Procedures};
use sumpbook_trade::record::{StartAir, StepDone, StepsDone, StopAir};

/// The procedures whose steps, once the compressor turns or stands, are a start or a stop.
const START: &str = "start";
const STOP: &str = "shut-down";

/// Why steps do not hold.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum StepsError {
    /// The table of procedures itself does not read.
    #[error(transparent)]
    Table(ProcedureError),
    /// There is no such procedure.
    #[error("there is no procedure '{procedure}'. Procedures are: {known}.")]
    UnknownProcedure {
        /// As it was written.
        procedure: String,
        /// The procedures there are.
        known: String,
    },
    /// The procedure has no such step.
    #[error("'{procedure}' has no step '{step}'. Its steps are: {known}.")]
    UnknownStep {
        /// The procedure.
        procedure: String,
        /// As it was written.
        step: String,
        /// Its steps.
        known: String,
    },
    /// The step does not offer this word.
    #[error("the step '{step}' has no word '{word}'. Its words are: {known}.")]
    UnknownWord {
        /// The step.
        step: String,
        /// As it was written.
        word: String,
        /// Its words; "none" when nothing of it can fail to be so.
        known: String,
    },
    /// A word on a step that was so.
    #[error(
        "the step '{step}' was so, and a word says what was not. Leave the word out, or say \"not-so\": true."
    )]
    WordOfWhatIsSo {
        /// The step.
        step: String,
    },
    /// Something was recorded after the step at which the procedure stopped.
    #[error("'{step}' was not so, and the procedure stops there. Leave out what comes after it.")]
    AfterTheStop {
        /// The step that was not so.
        step: String,
    },
    /// Nothing was confirmed.
    #[error("'{procedure}' without a step records nothing. Give the steps that were confirmed.")]
    NoStep {
        /// The procedure.
        procedure: String,
    },
}

/// The fact that the steps of a procedure are: a start or a stop from the step on at which the compressor turns
/// or stands; before that, and for any other procedure, the steps alone.
///
/// # Errors
/// A procedure, step or word that the table does not have; something after the step that was not so; no step at all.
pub fn fact_of_steps(
    table: &Procedures,
    procedure: &str,
    steps: Vec<StepDone>,
    in_spite_of_lock: Option<String>,
) -> Result<Fact, StepsError> {
    let own = known(table, procedure)?;
    if steps.is_empty() {
        return Err(StepsError::NoStep { procedure: procedure.to_owned() });
    }
    let steps = with_locks(own, steps)?;
    let turned = steps.iter().any(|done| own.step(&done.step).is_some_and(|step| step.turns));
    Ok(match procedure {
        START if turned => StartAir { steps, in_spite_of_lock }.into(),
        STOP if turned => {
            // The last step is the pressure's fall: confirmed, or not so.
            let blew_down = steps.iter().find(|done| done.step == "blow-down").map(|done| !done.not_so);
            StopAir { steps, blew_down }.into()
        }
        _ => StepsDone { procedure: procedure.to_owned(), steps }.into(),
    })
}

/// A fact with what its steps lock filled in; any other fact as it is.
///
/// # Errors
/// A procedure, step or word that the table does not have; something after the step that was not so.
pub(super) fn with_step_locks(table: &Procedures, fact: Fact) -> Result<Fact, StepsError> {
    Ok(match fact {
        Fact::StartAir(mut start) => {
            start.steps = with_locks(known(table, START)?, start.steps)?;
            start.into()
        }
        Fact::StopAir(mut stop) => {
            stop.steps = with_locks(known(table, STOP)?, stop.steps)?;
            stop.into()
        }
        Fact::StepsDone(mut done) => {
            done.steps = with_locks(known(table, &done.procedure)?, done.steps)?;
            done.into()
        }
        other => other,
    })
}

fn known<'a>(table: &'a Procedures, procedure: &str) -> Result<&'a Procedure, StepsError> {
    table.of(procedure).ok_or_else(|| StepsError::UnknownProcedure {
        procedure: procedure.to_owned(),
        known: table.procedures.iter().map(|p| p.id.as_str()).collect::<Vec<_>>().join(", "),
    })
}

fn with_locks(procedure: &Procedure, steps: Vec<StepDone>) -> Result<Vec<StepDone>, StepsError> {
    let mut stopped: Option<String> = None;
    let mut all = Vec::with_capacity(steps.len());
    for mut done in steps {
        if let Some(step) = stopped {
            return Err(StepsError::AfterTheStop { step });
        }
        let Some(step) = procedure.step(&done.step) else {
            let known = procedure.steps.iter().map(|step| step.id.as_str()).collect::<Vec<_>>().join(", ");
            return Err(StepsError::UnknownStep { procedure: procedure.id.clone(), step: done.step, known });
        };
        done.locks = match done.word.as_deref() {
            None => None,
            Some(_) if !done.not_so => return Err(StepsError::WordOfWhatIsSo { step: done.step }),
            Some(word) => match step.on(word) {
                Some(OnNotSo::Lock(severity)) => Some(severity),
                Some(_) => None,
                None => {
                    let words: Vec<&str> = step.stops.iter().map(|stop| stop.0.as_str()).collect();
                    let known = if words.is_empty() { "none".to_owned() } else { words.join(", ") };
                    return Err(StepsError::UnknownWord { step: done.step, word: word.to_owned(), known });
                }
            },
        };
        // What only has to wait, or goes on with a mark, ends nothing.
        let ends =
            !matches!(done.word.as_deref().and_then(|w| step.on(w)), Some(OnNotSo::Wait | OnNotSo::Mark));
        if done.not_so && ends {
            stopped = Some(done.step.clone());
        }
        all.push(done);
    }
    Ok(all)
}

#[cfg(test)]
mod tests {
    use sumpbook_trade::Stamp;
    use sumpbook_trade::checklist::Severity;

    use super::*;

    fn table() -> &'static Procedures {
        Procedures::common_practice().unwrap()
    }

    fn step(id: &str, word: Option<&str>) -> StepDone {
        let at = Stamp::from_parts(1_793_000_000_000, -360).unwrap();
        let word = word.map(str::to_owned);
        StepDone {
            step: id.to_owned(),
            at,
            not_so: word.is_some(),
            word,
            locks: None,
            figure: None,
            place: None,
        }
    }

    fn fact(procedure: &str, steps: &[(&str, Option<&str>)]) -> Result<Fact, StepsError> {
        let steps = steps.iter().map(|(id, word)| step(id, *word)).collect();
        fact_of_steps(table(), procedure, steps, None)
    }

    #[test]
    fn a_start_is_one_from_the_step_on_at_which_the_compressor_turns() {
        let before = fact("start", &[("engine-run", None), ("sel-low", Some("stuck"))]).unwrap();
        let Fact::StepsDone(done) = before else { panic!("no start: {before:?}") };
        assert_eq!(done.procedure, "start");
        assert_eq!(done.steps[1].locks, Some(Severity::Air));

        let turned = fact("start", &[("engine-run", None), ("pto-in", Some("grinds"))]).unwrap();
        assert!(matches!(turned, Fact::StartAir(_)), "the shaft turned: {turned:?}");
    }

    #[test]
    fn a_stop_says_whether_the_pressure_fell() {
        let fell = fact("shut-down", &[("stop-button", None), ("blow-down", None)]).unwrap();
        assert!(matches!(fell, Fact::StopAir(StopAir { blew_down: Some(true), .. })));
        let held =
            fact("shut-down", &[("stop-button", None), ("blow-down", Some("holds-pressure"))]).unwrap();
        let Fact::StopAir(StopAir { blew_down: Some(false), steps }) = held else { panic!("{held:?}") };
        assert_eq!(steps[1].locks, Some(Severity::Air));
    }

    #[test]
    fn waiting_goes_on_and_a_lock_ends_the_procedure() {
        let waited = [("valves-closed", Some("valve-open")), ("valves-closed", None), ("sel-low", None)];
        assert!(fact("start", &waited).is_ok());
        let on = fact("start", &[("sel-low", Some("stuck")), ("pto-in", None)]);
        assert_eq!(on, Err(StepsError::AfterTheStop { step: "sel-low".to_owned() }));
    }

    #[test]
    fn what_the_table_does_not_have_is_told_with_what_it_has() {
        let said = |fact: Result<Fact, StepsError>| fact.unwrap_err().to_string();
        assert!(said(fact("begin", &[])).contains("Procedures are: arrival"));
        assert!(said(fact("start", &[("pto", None)])).contains("Its steps are: preheat-out"));
        assert!(said(fact("start", &[("sel-low", Some("broken"))])).contains("Its words are: stuck"));
        assert!(said(fact("shut-down", &[("tools-off", Some("on"))])).contains("Its words are: none"));
        assert!(said(fact("arrival", &[])).contains("without a step"));
    }
}
