//! How SQLite goes about the questions of a day sheet: through an index, never through a whole history.

use super::{Store, StoreError, facts, units};

/// One question with the steps SQLite takes for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// Which question.
    pub question: &'static str,
    /// The steps, in SQLite's words (`EXPLAIN QUERY PLAN`).
    pub steps: Vec<String>,
}

impl Plan {
    /// Whether a step goes through all entries, or all facts.
    pub fn reads_all(&self) -> bool {
        let whole = ["SCAN e", "SCAN f", "SCAN entry", "SCAN fact"];
        self.steps.iter().any(|step| whole.iter().any(|w| step == w || step.starts_with(&format!("{w} "))))
    }
}

impl Store {
    /// The plans of what a day sheet asks.
    ///
    /// # Errors
    /// As any read.
    pub fn plans_of_a_day(&self) -> Result<Vec<Plan>, StoreError> {
        let asked = [
            ("facts of a day", facts::told()),
            ("what is set aside", facts::select(facts::ASIDE)),
            ("lock-outs that stand or ended since", units::LOCKS_SINCE.to_owned()),
            ("states of the units", units::BODIES.to_owned()),
        ];
        asked.into_iter().map(|(question, sql)| self.plan(question, &sql)).collect()
    }

    fn plan(&self, question: &'static str, sql: &str) -> Result<Plan, StoreError> {
        let mut query = self.connection.prepare(&format!("EXPLAIN QUERY PLAN {sql}"))?;
        let nothing = vec![rusqlite::types::Null; query.parameter_count()];
        let steps = query.query_map(rusqlite::params_from_iter(nothing), |row| row.get(3))?;
        Ok(Plan { question, steps: steps.collect::<Result<_, _>>()? })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_question_of_a_day_goes_through_a_whole_history() {
        let store = Store::in_memory().unwrap();
        for plan in store.plans_of_a_day().unwrap() {
            assert!(!plan.reads_all(), "{plan:?}");
        }
        let mine = store.plan("units of a person", facts::OF_PERSON).unwrap();
        assert!(!mine.reads_all(), "{mine:?}");
        assert!(mine.steps.iter().any(|step| step.contains("fact_day")), "{mine:?}");
        let all = store.plan("all", "SELECT payload FROM entry e").unwrap();
        assert!(all.reads_all(), "{all:?}");
    }
}
