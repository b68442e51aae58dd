//! What was answered of a line, and of a part by all its lines.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Severity;

/// What was answered of one line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Answer {
    /// Looked at, nothing found.
    Ok,
    /// A defect, with what it locks.
    Defect(Severity),
    /// It could not be looked at.
    CouldNotCheck,
    /// The unit has no such part.
    NotFitted,
}

impl Answer {
    /// Worse is lower. A part not looked at stands below a part found in order, because it may
    /// hide anything; one that is not fitted says nothing of those that are.
    fn rank(self) -> (u8, Severity) {
        match self {
            Answer::Defect(severity) => (0, severity),
            Answer::CouldNotCheck => (1, Severity::Note),
            Answer::Ok => (2, Severity::Note),
            Answer::NotFitted => (3, Severity::Note),
        }
    }

    /// Both together: of two defects what they lock together, else the worse answer.
    fn and(self, other: Answer) -> Answer {
        match (self, other) {
            (Answer::Defect(a), Answer::Defect(b)) => Answer::Defect(a.and(b)),
            (a, b) if a.rank() <= b.rank() => a,
            (_, b) => b,
        }
    }
}

/// The answer of a part by those of its places: the worst of them. `None` when nothing was answered.
pub fn worst(answers: impl IntoIterator<Item = Answer>) -> Option<Answer> {
    answers.into_iter().reduce(Answer::and)
}

#[cfg(test)]
mod tests {
    use super::*;
    use Answer::{CouldNotCheck, Defect, NotFitted, Ok as Fine};

    #[test]
    fn the_worst_place_speaks_for_the_part() {
        assert_eq!(worst([]), None);
        assert_eq!(worst([Fine, Fine]), Some(Fine));
        assert_eq!(worst([Fine, Defect(Severity::Note), CouldNotCheck]), Some(Defect(Severity::Note)));
        assert_eq!(worst([Defect(Severity::Note), Defect(Severity::Road)]), Some(Defect(Severity::Road)));
        assert_eq!(worst([Fine, CouldNotCheck]), Some(CouldNotCheck));
        assert_eq!(worst([NotFitted, Fine]), Some(Fine));
        assert_eq!(worst([NotFitted, NotFitted]), Some(NotFitted));
    }

    #[test]
    fn a_road_and_an_air_finding_lock_both() {
        let both = [Defect(Severity::Air), Fine, Defect(Severity::Road)];
        assert_eq!(worst(both), Some(Defect(Severity::RoadAndAir)));
        assert_eq!(Severity::Outlet.and(Severity::Note), Severity::Outlet);
        assert_eq!(Severity::Outlet.and(Severity::Air), Severity::Air);
    }

    #[test]
    fn severity_is_ordered_worst_first() {
        use Severity::{Air, Note, Outlet, Road, RoadAndAir};
        let mut all = [Note, Outlet, Air, Road, RoadAndAir];
        all.sort();
        assert_eq!(all, [RoadAndAir, Road, Air, Outlet, Note]);
    }
}
