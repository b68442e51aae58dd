//! What one entry says, in a line of words.

use sumpbook_daybook::line::Line;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::Fact;
use sumpbook_trade::procedure::{item_of_step, word_of_step};
use sumpbook_trade::record::{AnswerKind, Glass, OilPut, ReturnHow, ReturnLine, ReturnToService};

use crate::console::words::Words;
use crate::sheet::{key, poured};

/// The line, with its hours and the words that were added.
///
/// `set` is the serial of the set it names, where it names one.
pub(super) fn said(words: &Words, line: &Line, set: Option<&str>) -> String {
    let hours = line.hours.map(|hours| words.meter(hours));
    let set = set.map(|serial| format!("{} {serial}", words.t("set-serial"))).unwrap_or_default();
    let parts =
        [fact(words, &line.fact), set, hours.unwrap_or_default(), line.note.clone().unwrap_or_default()];
    words.listed(parts.into_iter().filter(|part| !part.is_empty()))
}

fn fact(words: &Words, fact: &Fact) -> String {
    let chosen = |kind: &str, word: &str| words.or_plain(&format!("{kind}-{word}"), word);
    match fact {
        Fact::PreTripSection(section) => {
            let defects = section.answers.iter().filter(|a| a.answer == AnswerKind::Defect);
            let named = defects.map(|a| words.item(&a.item, a.place.as_deref()));
            walk(words, section.answers.len(), named.collect(), section.seconds)
        }
        Fact::EndOfDay(report) if report.defects.is_empty() => {
            joined(words, words.t("told-no-defect"), report.to_next.clone())
        }
        Fact::EndOfDay(report) => {
            let defects = report.defects.iter().map(|a| words.item(&a.item, a.place.as_deref()));
            joined(words, words.listed(defects), report.to_next.clone())
        }
        Fact::HourReading(reading) => {
            format!("{} {} h", chosen("meter", &key(&reading.meter)), words.hours(reading.figure))
        }
        Fact::MeterExchange(exchange) => {
            let old = exchange.old_end.map_or_else(|| words.t("not-said"), |hours| words.meter(hours));
            let new = words.meter(exchange.new_start);
            words.with("from-to", &[("from", Arg::Text(&old)), ("to", Arg::Text(&new))])
        }
        Fact::HoursEstimate(estimate) => words.with(
            "hours-between",
            &[
                ("low", Arg::Text(&words.hours(estimate.low))),
                ("likely", Arg::Text(&words.hours(estimate.likely))),
                ("high", Arg::Text(&words.hours(estimate.high))),
            ],
        ),
        Fact::LevelCheck(level) => {
            format!("{} {}", chosen("fluid", &key(&level.fluid)), glass(words, level.glass))
        }
        Fact::StockCounted(stock) => {
            let volume = format!("{} {}", stock.volume.value_text(), key(&stock.volume.unit));
            format!("{} {}", chosen("fluid", &key(&stock.fluid)), words.measure(&volume))
        }
        Fact::TopUp(top_up) => {
            format!("{} {}", chosen("fluid", &key(&top_up.fluid)), words.measure(&poured(&top_up.pours)))
        }
        Fact::DisplayNote(note) => {
            joined(words, chosen("note", &key(&note.what)), Some(note.as_shown.clone()))
        }
        Fact::Acknowledgement(known) => words.t(if known.told_shop { "ack-told" } else { "ack-seen" }),
        Fact::SiteCondition(site) => chosen("dust", &key(&site.dust)),
        Fact::OilCondition(oil) => chosen("look", &key(&oil.look)),
        Fact::LabAnswer(answer) => answer.words.clone(),
        Fact::Sample(sample) => sample.bottle.clone(),
        Fact::Certificate(certificate) => {
            let of = &certificate.defect;
            let verdict = chosen("verdict", &key(&certificate.verdict));
            format!("{}: {verdict}, {}", words.item(&of.item, of.place.as_deref()), certificate.words)
        }
        Fact::ServiceDone(done) => {
            let tasks = done.tasks.iter().map(|task| words.task(&task.0));
            let oil = done.oil.as_ref().map(|oil| oil_put(words, oil)).filter(|oil| !oil.is_empty());
            let why = done.oil_reason.map(|why| chosen("service-oil", &key(&why)));
            words.listed(tasks.chain(oil).chain(why).chain(done.parts.iter().cloned()))
        }
        Fact::VisitPlan(plan) => {
            let tasks = plan.tasks.iter().map(|task| words.task(&task.0));
            let defects = plan.defects.iter().map(|of| words.item(&of.item, of.place.as_deref()));
            let work = words.listed(tasks.chain(defects));
            joined(words, format!("{} {work}", words.short_day(plan.day)), plan.where_and_who.clone())
        }
        Fact::WaitingForPart(wait) => {
            let of_defect = wait.defect.as_ref().map(|of| words.item(&of.item, of.place.as_deref()));
            let work = of_defect.or_else(|| wait.task.as_ref().map(|task| words.task(&task.0)));
            let part = work.map_or_else(|| wait.part.clone(), |work| format!("{work}: {}", wait.part));
            if wait.over { format!("{part} ({})", words.t("wait-over")) } else { part }
        }
        Fact::LayUp(lay_up) => lay_up.done.clone().unwrap_or_default(),
        Fact::ReturnToService(said) => returned(words, said),
        Fact::SetFitted(fitted) => {
            fitted.hours.map_or_else(String::new, |hours| format!("{} h", words.hours(hours)))
        }
        Fact::Correction(correction) => correction.why.clone(),
        Fact::Decision(decision) => decision.why.clone(),
        Fact::Drive(drive) => {
            joined(words, words.t(&format!("used-{}", key(&drive.what))), drive.in_spite_of_lock.clone())
        }
        Fact::StartAir(_) | Fact::StopAir(_) | Fact::StepsDone(_) => steps(words, fact),
        Fact::Happened(happened) => {
            let what = happened.what.map(|what| words.t(&format!("happened-{}", key(&what))));
            let parts = [what, happened.place.clone(), happened.how_much.clone(), happened.told.clone()];
            words.listed(parts.into_iter().flatten())
        }
        Fact::DayStatusSet(status) => {
            format!("{} {}", chosen("status", &key(&status.status)), words.short_day(status.from))
        }
        _ => String::new(),
    }
}

/// "8.0 qt mineral VG 46".
fn oil_put(words: &Words, oil: &OilPut) -> String {
    let volume =
        oil.volume.map(|volume| words.measure(&format!("{} {}", volume.value_text(), key(&volume.unit))));
    let family = oil.family.map(|family| words.or_plain(&format!("family-{}", key(&family)), &key(&family)));
    [volume, family, oil.grade.clone()].into_iter().flatten().collect::<Vec<_>>().join(" ")
}

/// How far a procedure went, what was not so, and why it was done in spite of a lock.
fn steps(words: &Words, fact: &Fact) -> String {
    let done = fact.steps();
    let mut parts = Vec::new();
    if let Fact::StepsDone(steps) = fact {
        parts.push(words.or_plain(&format!("procedure-{}", steps.procedure), &steps.procedure));
    }
    for step in done.iter().filter(|step| step.not_so) {
        let name = words.item(&item_of_step(&step.step), step.place.as_deref());
        let word =
            step.word.as_deref().map_or_else(|| words.t("not-so"), |word| words.found(&word_of_step(word)));
        parts.push(format!("{name}: {word}"));
    }
    if let Fact::StartAir(start) = fact {
        parts.extend(start.in_spite_of_lock.clone());
    }
    words.listed(parts)
}

/// "7 lines done, waived: belts or drive shaft (none on this set)".
fn returned(words: &Words, said: &ReturnToService) -> String {
    let name = |line: &ReturnLine| words.or_plain(&format!("return-{}", line.line), &line.line);
    let done: Vec<String> = said.lines.iter().filter(|l| l.how == ReturnHow::Done).map(name).collect();
    let waived = said.lines.iter().filter(|line| line.how == ReturnHow::Waived).map(|line| {
        let why = line.reason.as_ref().map_or_else(String::new, |why| format!(" ({why})"));
        format!("{}{why}", name(line))
    });
    let waived: Vec<String> = waived.collect();
    let mut parts = Vec::new();
    if !done.is_empty() {
        parts.push(format!("{}: {}", words.t("return-how-done"), done.join(", ")));
    }
    if !waived.is_empty() {
        parts.push(format!("{}: {}", words.t("return-how-waived"), waived.join(", ")));
    }
    parts.extend(said.done.clone());
    parts.join("; ")
}

fn walk(words: &Words, answers: usize, defects: Vec<String>, seconds: Option<u32>) -> String {
    let count = |n: usize| Arg::Count(i64::try_from(n).unwrap_or(i64::MAX));
    let mut parts = vec![words.with("answers-count", &[("count", count(answers))])];
    if let Some(seconds) = seconds {
        parts.push(words.with("walk-minutes", &[("minutes", Arg::Count(i64::from(seconds / 60)))]));
    }
    if !defects.is_empty() {
        let named = words.listed(defects.iter().cloned());
        parts.push(words.with("walk-defects", &[("defects", Arg::Text(&named))]));
    }
    words.listed(parts)
}

fn joined(words: &Words, first: String, rest: Option<String>) -> String {
    words.listed([Some(first), rest].into_iter().flatten().filter(|part| !part.is_empty()))
}

/// Where a level stood.
pub(super) fn glass(words: &Words, glass: Glass) -> String {
    match glass {
        Glass::Percent(level) => format!("{level} %"),
        Glass::BelowView => words.t("glass-below"),
        Glass::AboveView => words.t("glass-above"),
    }
}
