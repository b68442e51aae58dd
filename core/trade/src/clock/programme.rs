//! A service programme: which tasks a unit has, and how often. The shop's to edit.

use std::fmt;

use minicbor::{CborLen, Decode, Encode};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::quantity::Tenths;

/// The name of a task in a programme, such as `oil-and-filters`. Words for people come from the texts.
#[derive(
    Clone,
    Debug,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Serialize,
    Deserialize,
    JsonSchema,
    Encode,
    Decode,
    CborLen,
)]
#[serde(transparent)]
#[cbor(transparent)]
pub struct TaskId(#[n(0)] pub String);

/// What the name of a campaign's task begins with. No task of a programme does.
const CAMPAIGN: &str = "campaign:";

impl TaskId {
    /// The task of a maker's campaign, by the name the shop gave it, such as the number of the maker's paper.
    pub fn of_campaign(name: &str) -> TaskId {
        TaskId(format!("{CAMPAIGN}{name}"))
    }

    /// Of a campaign's task, the campaign's name; none of a programme's.
    pub fn campaign(&self) -> Option<&str> {
        self.0.strip_prefix(CAMPAIGN)
    }
}

impl From<&str> for TaskId {
    fn from(text: &str) -> TaskId {
        TaskId(text.to_owned())
    }
}

impl fmt::Display for TaskId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.0)
    }
}

/// The one early service of a new unit. Doing it counts as doing the task it belongs to; doing that task
/// first closes it (R1).
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema, Encode, Decode, CborLen)]
#[cbor(map)]
pub struct FirstService {
    /// Its own name, for it is recorded and shown on its own.
    #[n(0)]
    pub id: TaskId,
    /// The figure on the meter at which it is due: running hours from 0.0, never weighted.
    #[n(1)]
    pub at: Tenths,
}

/// One task: the unit of record of a service (a visit is a bundle of them).
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema, Encode, Decode, CborLen)]
#[cbor(map)]
pub struct Task {
    /// Its name.
    #[n(0)]
    pub id: TaskId,
    /// Running hours between two services; `None` where only the calendar counts.
    #[n(1)]
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hours: Option<Tenths>,
    /// Calendar months between two services; `None` where only hours count.
    #[n(2)]
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub months: Option<u32>,
    /// The early service that comes before the first regular one.
    #[n(3)]
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub first_service: Option<FirstService>,
    /// Whether hours in dust count more (R10): oil yes, separator no.
    #[n(4)]
    pub counts_weighted: bool,
    /// Whether the unit's own display counts this task and reminds of it.
    #[n(5)]
    pub display_counts: bool,
    /// Days from ordering the parts to having them; 0 when they are on the shelf.
    #[n(6)]
    pub parts_lead_days: u32,
}

/// What a unit is serviced by.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema, Encode, Decode, CborLen)]
#[cbor(map)]
pub struct Programme {
    /// Counts up with each change the shop makes, so that a record can name what was in force.
    #[n(0)]
    pub edition: u32,
    /// The tasks, in the shop's order.
    #[n(1)]
    pub tasks: Vec<Task>,
}

/// Why nothing can be serviced by a programme.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NotAProgramme {
    /// A task without a name, or with one that is a campaign's.
    #[error("a task needs a name of its own: '{0}' is none")]
    Name(String),
    /// A task, or a first service, stands twice.
    #[error("'{0}' stands twice in the programme")]
    Twice(TaskId),
    /// A task that would never be due.
    #[error("'{0}' has neither hours nor months: it would never be due")]
    NoClock(TaskId),
    /// An interval, or the hours of a first service, out of bounds.
    #[error("'{task}' has {what} of {given}: it goes from {least} to {most}")]
    OutOfBounds {
        /// The task.
        task: TaskId,
        /// Which of its figures.
        what: &'static str,
        /// As given.
        given: String,
        /// The least.
        least: &'static str,
        /// The most.
        most: &'static str,
    },
}

impl Programme {
    /// Whether it hangs together: every task and first service of one name, each task with a clock, every figure
    /// within its bounds.
    ///
    /// # Errors
    /// The first that does not.
    pub fn check(&self) -> Result<(), NotAProgramme> {
        let firsts = self.tasks.iter().filter_map(|task| Some(&task.first_service.as_ref()?.id));
        let mut seen = std::collections::BTreeSet::new();
        for id in self.tasks.iter().map(|task| &task.id).chain(firsts) {
            if id.0.trim().is_empty() || id.campaign().is_some() {
                return Err(NotAProgramme::Name(id.0.clone()));
            }
            if !seen.insert(id) {
                return Err(NotAProgramme::Twice(id.clone()));
            }
        }
        for task in &self.tasks {
            if task.hours.is_none() && task.months.is_none() {
                return Err(NotAProgramme::NoClock(task.id.clone()));
            }
            let hours = [("hours", task.hours), ("first hours", task.first_service.as_ref().map(|of| of.at))];
            for (what, given) in hours.into_iter().filter_map(|(what, given)| Some((what, given?))) {
                if !(Tenths(1)..=Tenths::hours(100_000)).contains(&given) {
                    let (task, given) = (task.id.clone(), given.to_string());
                    return Err(NotAProgramme::OutOfBounds {
                        task,
                        what,
                        given,
                        least: "0.1",
                        most: "100000",
                    });
                }
            }
            let days = Some(task.parts_lead_days).filter(|days| *days > 366);
            let months = task.months.filter(|months| !(1..=600).contains(months));
            let out = months.map(|given| ("months", given, "1", "600"));
            let out = out.or(days.map(|given| ("days for its parts", given, "0", "366")));
            if let Some((what, given, least, most)) = out {
                let (task, given) = (task.id.clone(), given.to_string());
                return Err(NotAProgramme::OutOfBounds { task, what, given, least, most });
            }
        }
        Ok(())
    }

    /// Tasks in which the oil is changed: those whose hours dust makes heavier, and their first service.
    pub fn oil_tasks(&self) -> impl Iterator<Item = &TaskId> {
        let oil = self.tasks.iter().filter(|task| task.counts_weighted);
        oil.flat_map(|task| std::iter::once(&task.id).chain(task.first_service.iter().map(|first| &first.id)))
    }

    /// Tasks that the unit's own display counts and reminds of, with their first services; where the shop ticked none,
    /// the oil's. A service of any other answers no reminder (R6).
    pub fn display_tasks(&self) -> Vec<&TaskId> {
        let counted: Vec<&Task> = self.tasks.iter().filter(|task| task.display_counts).collect();
        if counted.is_empty() {
            return self.oil_tasks().collect();
        }
        let firsts = counted.iter().filter_map(|task| Some(&task.first_service.as_ref()?.id));
        counted.iter().map(|task| &task.id).chain(firsts).collect()
    }

    /// What most fleets start from. Common practice, no published source; the maker's manual comes first.
    ///
    /// Oil, oil filter and intake filter at 50.0 h on the meter, then each 500 h or 12 months; cooler,
    /// scavenge orifice and its screen each 12 months; separator element each 3,000 h or 60 months.
    pub fn common_practice() -> Programme {
        let first = FirstService { id: "first-service".into(), at: Tenths::hours(50) };
        Programme {
            edition: 1,
            tasks: vec![
                Task {
                    id: "oil-and-filters".into(),
                    hours: Some(Tenths::hours(500)),
                    months: Some(12),
                    first_service: Some(first),
                    counts_weighted: true,
                    display_counts: true,
                    parts_lead_days: 0,
                },
                Task {
                    id: "cooler-and-scavenge".into(),
                    hours: None,
                    months: Some(12),
                    first_service: None,
                    counts_weighted: false,
                    display_counts: false,
                    parts_lead_days: 0,
                },
                Task {
                    id: "separator".into(),
                    hours: Some(Tenths::hours(3_000)),
                    months: Some(60),
                    first_service: None,
                    counts_weighted: false,
                    display_counts: true,
                    parts_lead_days: 0,
                },
            ],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_programme_that_does_not_hang_together_is_refused_by_name() {
        Programme::common_practice().check().unwrap();
        Programme { edition: 1, tasks: vec![] }.check().unwrap();
        let refused = |change: &dyn Fn(&mut Task)| {
            let mut programme = Programme::common_practice();
            change(&mut programme.tasks[0]);
            programme.check().unwrap_err().to_string()
        };
        let told = [
            refused(&|task| task.id = "".into()),
            refused(&|task| task.id = TaskId::of_campaign("TX-7")),
            refused(&|task| task.id = "separator".into()),
            refused(&|task| task.id = "first-service".into()),
            refused(&|task| (task.hours, task.months) = (None, None)),
            refused(&|task| task.hours = Some(Tenths(0))),
            refused(&|task| task.months = Some(0)),
            refused(&|task| task.months = Some(601)),
            refused(&|task| task.parts_lead_days = 367),
            refused(&|task| task.first_service.as_mut().unwrap().at = Tenths(-1)),
        ];
        assert_eq!(
            told,
            [
                "a task needs a name of its own: '' is none",
                "a task needs a name of its own: 'campaign:TX-7' is none",
                "'separator' stands twice in the programme",
                "'first-service' stands twice in the programme",
                "'oil-and-filters' has neither hours nor months: it would never be due",
                "'oil-and-filters' has hours of 0.0: it goes from 0.1 to 100000",
                "'oil-and-filters' has months of 0: it goes from 1 to 600",
                "'oil-and-filters' has months of 601: it goes from 1 to 600",
                "'oil-and-filters' has days for its parts of 367: it goes from 0 to 366",
                "'oil-and-filters' has first hours of -0.1: it goes from 0.1 to 100000",
            ]
        );
    }

    #[test]
    fn the_display_reminds_of_what_the_shop_ticked_and_else_of_the_oil() {
        let mut programme = Programme::common_practice();
        let told = |programme: &Programme| {
            programme.display_tasks().iter().map(ToString::to_string).collect::<Vec<_>>().join(" ")
        };
        assert_eq!(told(&programme), "oil-and-filters separator first-service");
        programme.tasks[0].display_counts = false;
        assert_eq!(told(&programme), "separator");
        programme.tasks[2].display_counts = false;
        assert_eq!(told(&programme), "oil-and-filters first-service");
    }

    #[test]
    fn a_programme_reads_back_in_both_encodings() {
        let programme = Programme::common_practice();
        let json = serde_json::to_string(&programme).unwrap();
        assert_eq!(serde_json::from_str::<Programme>(&json).unwrap(), programme);
        let bytes = minicbor::to_vec(&programme).unwrap();
        assert_eq!(minicbor::decode::<Programme>(&bytes).unwrap(), programme);
        assert_eq!(minicbor::len(&programme), bytes.len());
    }

    #[test]
    fn a_task_by_the_calendar_alone_says_nothing_of_hours() {
        let programme = Programme::common_practice();
        let json = serde_json::to_value(&programme.tasks[1]).unwrap();
        assert_eq!(
            json,
            serde_json::json!({
                "id": "cooler-and-scavenge", "months": 12,
                "counts_weighted": false, "display_counts": false, "parts_lead_days": 0
            })
        );
    }

    #[test]
    fn intervals_are_the_usual_ones() {
        // Common practice, no source.
        let programme = Programme::common_practice();
        let every: Vec<_> = programme.tasks.iter().map(|t| (t.hours.map(|h| h.0), t.months)).collect();
        assert_eq!(every, [(Some(5_000), Some(12)), (None, Some(12)), (Some(30_000), Some(60))]);
        assert_eq!(programme.tasks[0].first_service.as_ref().unwrap().at, Tenths(500));
    }
}
