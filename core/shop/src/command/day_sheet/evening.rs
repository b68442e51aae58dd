//! The 17:00 view as text, section by section.

use chrono::NaiveDate;

use super::words::Words;
use crate::command::due::{due_rows, papers};
use crate::sheet::{Evening, LateRow, OilFound, OilRow, SaidRow, TopUpRow};
use crate::table::{section, table};

/// Sections in their order; one with nothing keeps its line with 0.
pub(super) fn told(words: &Words, sheet: &Evening, text: &mut String) {
    let none = |count: usize| if count == 0 { "none recorded" } else { "" };
    happened(words, sheet, text);
    used(words, sheet, text);
    missing(words, sheet, text);
    defects(words, sheet, text);
    locked(words, sheet, text);
    let due = due_rows(words, &sheet.due.rows);
    text.push_str(&section(sheet.due.count, "Past due, due, coming up", "", &due));
    super::morning::laid_up(words, &sheet.due.laid_up, text);
    let done = sheet.due.done.iter().map(|row| {
        let tasks: Vec<String> = row.tasks.iter().map(|task| words.task(task)).collect();
        let late =
            if row.late.is_empty() { String::new() } else { format!(", late: {}", row.late.join(", ")) };
        let left: Vec<String> = row.not_bundled.iter().map(|task| words.task(task)).collect();
        let left =
            if left.is_empty() { String::new() } else { format!("; not done with it: {}", left.join(", ")) };
        let again = row.again.iter().map(|task| format!(", {} told again", words.task(task)));
        let again: String = again.collect();
        format!(
            "     Done: {} {} {} by {}{again}{late}{left}\n",
            row.unit,
            tasks.join(" and "),
            words.at(row.at),
            words.who(&row.who)
        )
    });
    text.extend(done);
    text.extend(sheet.due.parts.iter().map(|part| {
        format!(
            "     Waiting for a part: {} {}, promised {}\n",
            part.unit,
            part.part,
            words.day(part.promised)
        )
    }));
    papers(words, &sheet.due.papers, text);
    reminders(words, sheet, text);
    let rows = sheet.top_ups.rows.iter().map(|row| {
        let fluid = words.text(&format!("fluid-{}", row.fluid), &row.fluid);
        let span = [row.before.as_deref(), row.after.as_deref()].map(|level| level.unwrap_or("?").to_owned());
        [
            row.unit.clone(),
            words.at(row.at),
            fluid,
            row.poured.clone(),
            span.join(" to "),
            words.who(&row.who),
            found(words, row),
        ]
    });
    let below = table(["Unit", "When", "Fluid", "Poured", "Before and after", "Who", "Finding"], rows);
    text.push_str(&section(sheet.top_ups.count, "Top-ups", none(sheet.top_ups.count), &below));
    let rows = sheet.oil.rows.iter().map(|row| {
        let rate = row.oil.and_then(|oil| oil.ml_per_hour_hundredths);
        let rate = rate.map_or_else(String::new, |rate| format!("about {:.2} mL/h", rate as f64 / 100.0));
        [row.unit.clone(), drinks(words, row), rate]
    });
    let below = table(["Unit", "Alarm", "Oil use"], rows);
    text.push_str(&section(sheet.oil.count, "Who's drinking oil?", none(sheet.oil.count), &below));
    readings(words, sheet, text);
    late(words, sheet, text);
    ahead(words, &sheet.dated_ahead.rows, text);
    let tomorrow = sheet.bays_tomorrow.rows.iter().map(|row| row.unit.as_str()).collect::<Vec<_>>();
    if !tomorrow.is_empty() {
        text.push_str(&format!("     In the bays tomorrow: {}\n", tomorrow.join(", ")));
    }
}

fn happened(words: &Words, sheet: &Evening, text: &mut String) {
    if sheet.happened.is_empty() {
        return;
    }
    let rows = sheet.happened.rows.iter().map(|row| {
        let own = |text: &Option<String>| text.clone().unwrap_or_else(|| "not said".to_owned());
        let what = row.what.as_deref().unwrap_or("not said");
        let what = row.words.as_ref().map_or_else(|| what.to_owned(), |words| format!("{what}: {words}"));
        [
            row.unit.clone(),
            words.at(row.when),
            what,
            own(&row.place),
            own(&row.how_much),
            own(&row.told),
            words.who(&row.who),
        ]
    });
    let below = table(["Unit", "When", "What", "Where", "How much", "Told whom", "Who"], rows);
    text.push_str(&section(sheet.happened.count, "It happened", "", &below));
}

/// What a pour tells, in words.
fn found(words: &Words, row: &TopUpRow) -> String {
    let oil = row.oil.iter().map(|found| match found {
        OilFound::OverMiddle { percent, volume } => match volume {
            Some(volume) => format!("over the middle by {percent} % = {volume}"),
            None => format!("over the middle by {percent} %"),
        },
        OilFound::Astray { ml } if *ml > 0 => format!("{ml} mL poured is not in the glass: ask"),
        OilFound::Astray { ml } => format!("the glass shows {} mL more than was poured: ask", ml.abs()),
        OilFound::Changed { times_tenths, since, .. } => times(words, *times_tenths, *since),
        OilFound::OverLimit => "over the limit".to_owned(),
    });
    row.finding.clone().into_iter().chain(oil).collect::<Vec<_>>().join(", ")
}

fn times(words: &Words, tenths: Option<i64>, since: NaiveDate) -> String {
    let times = tenths.map_or_else(|| "?".to_owned(), |n| format!("{:.1}", n as f64 / 10.0));
    format!("{times}x its usual since {}", words.day(Some(since)))
}

fn drinks(words: &Words, row: &OilRow) -> String {
    let changed = row.oil.and_then(|oil| Some(times(words, oil.times_tenths, oil.since?)));
    let over = row.oil.filter(|oil| oil.over_limit).map(|_| "over the limit".to_owned());
    let rose = row.rose.as_ref().map(|rose| {
        format!("rose from {} to {} with no pour recorded: ask, drain-check", rose.from, rose.to)
    });
    [changed, over, rose].into_iter().flatten().collect::<Vec<_>>().join(", ")
}

fn used(words: &Words, sheet: &Evening, text: &mut String) {
    let none = |count: usize| if count == 0 { "none recorded" } else { "" };
    let rows = sheet.without.rows.iter().map(|row| {
        let more = if row.more > 0 { format!(" and {} more", row.more) } else { String::new() };
        [
            row.unit.clone(),
            words.at(row.first_use),
            format!("{}{more}", row.what.replace('-', " ")),
            words.who(&row.who),
            words.at_or(row.pre_trip_came, "none"),
            row.reason.clone().unwrap_or_else(|| "none".to_owned()),
        ]
    });
    let below = table(["Unit", "First use", "What", "Who", "Pre-trip came", "Reason typed"], rows);
    text.push_str(&section(
        sheet.without.count,
        "Used without a pre-trip",
        none(sheet.without.count),
        &below,
    ));
    let rows = sheet.against.rows.iter().map(|row| {
        [
            row.unit.clone(),
            format!("{} since {}", words.lock(&row.lock), words.at(row.since)),
            format!("{} {}", row.what.replace('-', " "), words.at(row.used)),
            words.who(&row.driver),
            row.said.clone(),
            row.reason.clone().unwrap_or_else(|| "none".to_owned()),
        ]
    });
    let below = table(["Unit", "Lock", "Used", "Driver", "Could they know?", "Reason typed"], rows);
    text.push_str(&section(
        sheet.against.count,
        "Used against a lock-out",
        none(sheet.against.count),
        &below,
    ));
}

fn missing(words: &Words, sheet: &Evening, text: &mut String) {
    let not = &sheet.not_reported;
    let rows = not.rows.iter().map(|row| {
        [
            row.unit.clone(),
            words.at_or(row.expected, "any time"),
            row.phone.clone().unwrap_or_else(|| "none yet".to_owned()),
            words.at_or(row.last_heard, "never"),
            row.quiet_days.map_or_else(|| "-".to_owned(), |n| format!("not heard from, day {n}")),
        ]
    });
    let below = table(["Unit", "Expected", "Its phone", "Last heard", "Day"], rows);
    let alone = not.reported.iter().filter(|row| row.trainee_alone);
    let beside = alone.chain(&not.due_out).chain(&not.not_expected);
    let aside: Vec<String> = beside.map(|row| format!("{} {}", row.unit, row.said)).collect();
    let name = format!("Not reported, of {} expected out", not.expected);
    text.push_str(&section(not.count, &name, &aside.join("; "), &below));
}

fn defects(words: &Words, sheet: &Evening, text: &mut String) {
    let answer = |said: &SaidRow| {
        let what = if said.ok { "OK".to_owned() } else { said.words.clone() };
        format!("{what}; {} {}", words.who(&said.who), words.at(said.at))
    };
    let rows = sheet.new_defects.rows.iter().map(|row| {
        let locks: Vec<String> = row.locks.iter().map(|lock| words.lock(lock)).collect();
        [
            row.unit.clone(),
            words.item(&row.item, row.place.as_deref()),
            answer(&row.one_answer),
            row.other_answer.as_ref().map_or_else(|| "-".to_owned(), answer),
            if locks.is_empty() { "nothing".to_owned() } else { locks.join(" and ") },
            row.state.replace('-', " "),
        ]
    });
    let below = table(["Unit", "What", "One answer", "The other answer", "Locks", "State"], rows);
    let count = sheet.new_defects.count;
    let aside = if count == 0 { "none recorded" } else { "" };
    text.push_str(&section(count, "New defects, worst first", aside, &below));
}

fn locked(words: &Words, sheet: &Evening, text: &mut String) {
    let below = super::morning::locked_rows(words, &sheet.locked.rows);
    let aside = if sheet.locked.count == 0 { "no lock-out on record" } else { "" };
    text.push_str(&section(sheet.locked.count, "Locked now", aside, &below));
}

fn reminders(words: &Words, sheet: &Evening, text: &mut String) {
    let answered = |by: &Option<crate::sheet::AnsweredBy>| {
        by.as_ref()
            .map_or_else(|| "nobody".to_owned(), |by| format!("{} {}", words.who(&by.who), words.at(by.at)))
    };
    let rows = sheet.reminders.rows.iter().map(|row| {
        let early = row.dated_before.iter().map(|by| {
            format!("{} {}, dated before the note, not counted", words.who(&by.who), words.at(by.at))
        });
        let service = match (&row.ask, row.service) {
            (Some(ask), _) => ask.clone(),
            (None, Some(at)) => words.at(at),
            (None, None) => "none recorded".to_owned(),
        };
        [
            row.unit.clone(),
            words.at(row.shown),
            format!("{}: {}", row.kind, row.as_it_stood),
            [answered(&row.seen_by)].into_iter().chain(early).collect::<Vec<_>>().join("; "),
            answered(&row.shop_told_by),
            service,
        ]
    });
    let below = table(["Unit", "Shown", "As it stood", "Seen by", "Shop told by", "Service"], rows);
    let aside = if sheet.reminders.count == 0 { "none recorded" } else { "" };
    text.push_str(&section(sheet.reminders.count, "Reminders and other display notes", aside, &below));
}

fn readings(words: &Words, sheet: &Evening, text: &mut String) {
    let rows = sheet.to_settle.rows.iter().map(|row| {
        let figures: Vec<String> = row
            .figures
            .iter()
            .map(|f| {
                let struck = if f.struck { " (not counted)" } else { "" };
                let most = f.ceiling.filter(|_| f.struck).map_or(String::new(), |c| format!(", at most {c}"));
                format!("{} {}{struck}{most}", f.figure, words.at(f.at))
            })
            .collect();
        let hints: Vec<String> =
            row.hints.iter().map(|hint| words.text(&format!("hint-{hint}"), hint)).collect();
        [
            row.unit.clone(),
            figures.join("; "),
            row.used.map_or_else(|| "none".to_owned(), |hours| hours.to_string()),
            words.text(&format!("question-{}", row.why), &row.why),
            hints.join("; "),
        ]
    });
    let below = table(["Unit", "Figures", "Used until settled", "Why", "What may have happened"], rows);
    // Whoever settles names the entry, so the sheet must.
    let ids: String = sheet
        .to_settle
        .rows
        .iter()
        .flat_map(|row| row.figures.iter().map(move |f| (row, f)))
        .map(|(row, f)| format!("      {} {}: entry {}\n", row.unit, f.figure, f.entry))
        .collect::<std::collections::BTreeSet<_>>()
        .into_iter()
        .collect();
    let corrected: String = sheet
        .corrected
        .rows
        .iter()
        .map(|row| {
            let instead = row.instead.map_or_else(|| "nothing".to_owned(), |hours| hours.to_string());
            format!(
                "      Corrected: {} {} struck, {instead} stands; {}: {}\n",
                row.unit,
                row.struck,
                words.who(&row.who),
                row.why
            )
        })
        .collect();
    let twice: String = sheet
        .entered_twice
        .rows
        .iter()
        .map(|row| {
            let told = |t: &crate::sheet::ToldService| {
                let hours = t.hours.map_or_else(|| "no hours".to_owned(), |h| h.to_string());
                format!("{} {} {hours}, entry {}", words.who(&t.who), words.at(t.at), t.entry)
            };
            format!(
                "      Entered twice: {} {}: {}; {}\n",
                row.unit,
                words.task(&row.task),
                told(&row.first),
                told(&row.second)
            )
        })
        .collect();
    let sets: String = sheet
        .sets
        .rows
        .iter()
        .map(|row| {
            let on = row.registered_on.as_deref().unwrap_or("no truck");
            format!(
                "      Set: {} {} recorded as {} {} by {}, registered on {on}: entry {}\n",
                row.unit,
                row.set,
                row.what,
                words.at(row.at),
                words.who(&row.who),
                row.entry
            )
        })
        .collect();
    let count = sheet.to_settle.count + sheet.entered_twice.count + sheet.sets.count;
    let aside = if count == 0 { "nothing is disputed" } else { "" };
    let mut under = below;
    if !under.is_empty() {
        under.push('\n');
    }
    under.push_str(&ids);
    under.push_str(&corrected);
    under.push_str(&twice);
    under.push_str(&sets);
    text.push_str(&section(count, "To settle", aside, &under));
}

fn late(words: &Words, sheet: &Evening, text: &mut String) {
    let rows = sheet.set_aside.rows.iter().map(|row| {
        [
            row.came_from.clone(),
            row.unit.clone().unwrap_or_else(|| "the fleet".to_owned()),
            words.kind(&row.says),
            words.text(&format!("judged-{}", row.why), &row.why),
            words.at(row.since),
        ]
    });
    let below = table(["Came from", "Unit", "What it says", "Why", "Since"], rows);
    let aside = if sheet.set_aside.count == 0 { "nothing is set aside" } else { "" };
    text.push_str(&section(sheet.set_aside.count, "Set aside", aside, &below));
    let rows = sheet.came_late.rows.iter().map(|row| {
        [
            row.unit.clone().unwrap_or_else(|| "the fleet".to_owned()),
            words.kind(&row.says),
            words.who(&row.who),
            words.at(row.at),
            format!("{} by {}", words.at(row.came), row.came_from),
        ]
    });
    let below = table(["Unit", "What it says", "Who", "When", "Came"], rows);
    let aside = if sheet.came_late.count == 0 { "nothing came late" } else { "" };
    text.push_str(&section(
        sheet.came_late.count,
        "Came in late, after this day's first closing",
        aside,
        &below,
    ));
}

/// Entries dated after the moment of looking, in either view; nothing where none is.
pub(super) fn ahead(words: &Words, rows: &[LateRow], text: &mut String) {
    if rows.is_empty() {
        return;
    }
    let told = rows.iter().map(|row| {
        [
            row.unit.clone().unwrap_or_else(|| "the fleet".to_owned()),
            words.kind(&row.says),
            words.who(&row.who),
            // Another year is what this is often about.
            row.at.moment().format("%a %-d %b %Y %H:%M").to_string(),
            format!("{} by {}", words.at(row.came), row.came_from),
        ]
    });
    let below = table(["Unit", "What it says", "Who", "Dated", "Came"], told);
    text.push_str(&section(rows.len(), "Dated after they came: a clock is ahead", "", &below));
}
