//! A programme as a form gives it: each task by its number, fields left empty count nothing.

use sumpbook_daybook::text::Arg;
use sumpbook_trade::clock::{FirstService, Programme, Task, TaskId};

use crate::console::form::{Fields, ungrouped};
use crate::console::language::Language;
use crate::console::refused::Refused;

/// Tasks one form can carry; more is no form of ours.
const MOST: usize = 100;

/// The tasks of a form, without those that were ticked to go.
pub(super) fn tasks(fields: &Fields, language: Language) -> Result<Vec<Task>, Refused> {
    let mut tasks = Vec::new();
    // Beyond them a task would be left out without a word.
    if fields.text(&format!("task-{MOST}")).is_some() {
        return Err(Refused::Asked("form-unread"));
    }
    for nth in 0..MOST {
        let field = |name: &str| fields.text(&format!("{name}-{nth}"));
        let named = field("task").map(TaskId::from).or_else(|| field("name").map(of_name));
        if named.is_none() && ["hours", "months", "first"].into_iter().any(|figure| field(figure).is_some()) {
            return Err(Refused::Asked("programme-no-name"));
        }
        let Some(id) = named.filter(|_| field("gone").is_none()) else { continue };
        let name = super::page::name_in(language, &id.0);
        let number = |of: &str| {
            let read = |text| ungrouped(text)?.parse::<u32>().map_err(|_| not_read(language, &name));
            field(of).map(read).transpose()
        };
        let hours = |of: &str| {
            fields.hours(&format!("{of}-{nth}")).map_err(|why| match why {
                Refused::Asked("form-hours") => not_read(language, &name),
                other => other,
            })
        };
        let first = hours("first")?.map(|at| FirstService { id: TaskId(format!("first-{id}")), at });
        let given = Task {
            hours: hours("hours")?,
            months: number("months")?,
            first_service: first,
            counts_weighted: field("weighted").is_some(),
            display_counts: field("display").is_some(),
            parts_lead_days: number("lead")?.unwrap_or(0),
            id,
        };
        if given.hours.is_none() && given.months.is_none() {
            return Err(said(language, "programme-no-clock", &name));
        }
        tasks.push(given);
    }
    if tasks.is_empty() {
        return Err(Refused::Asked("programme-no-task"));
    }
    Ok(tasks)
}

/// The programme with these tasks; a first service keeps the name it had.
pub(super) fn programme(before: &Programme, mut tasks: Vec<Task>) -> Programme {
    for task in &mut tasks {
        let known = before.tasks.iter().find(|known| known.id == task.id);
        let known = known.and_then(|known| known.first_service.as_ref());
        if let Some((first, known)) = task.first_service.as_mut().zip(known) {
            first.id.clone_from(&known.id);
        }
    }
    Programme { edition: before.edition.saturating_add(1), tasks }
}

/// The name of a new task as records keep it: small letters and figures, words apart by a hyphen.
fn of_name(name: &str) -> TaskId {
    let words = name.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    TaskId(words.map(str::to_lowercase).collect::<Vec<_>>().join("-"))
}

fn not_read(language: Language, name: &str) -> Refused {
    said(language, "programme-not-read", name)
}

fn said(language: Language, key: &str, name: &str) -> Refused {
    Refused::Said(language.say(key, &[("name", Arg::Text(name))]))
}
