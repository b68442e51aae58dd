//! The last report, for people: what the law has the next driver review.

use sumpbook_daybook::screen::{DefectRow, LastReportScreen, SaidRow};
use sumpbook_daybook::text::Arg;

use super::words::Words;
use crate::sheet::key;
use crate::table::table;

pub(super) fn told(words: &Words, screen: &LastReportScreen) -> Vec<String> {
    let mut lines = vec![screen.door.clone()];
    lines.extend(words.news(&screen.news));
    match &screen.report {
        None => lines.push(words.t("report-none-held")),
        Some(report) if report.none_found && report.listed == 0 => {
            lines.push(words.with("report-none-found", &[("when", Arg::Text(&words.at(report.at)))]));
        }
        Some(report) => {
            let listed = words.with("report-listed", &[("count", Arg::Count(i64::from(report.listed)))]);
            lines.push(format!("{}, {}: {listed}", words.who(&report.by), words.at(report.at)));
            lines.extend(report.to_next.iter().map(|said| format!("'{said}'")));
        }
    }
    if !screen.defects.is_empty() {
        let rows = screen.defects.iter().map(|row| defect(words, row));
        lines.push(table(["What", "Said", "Locks", "Certificate"], rows));
    }
    lines.push(words.main(&screen.main, &screen.door, None));
    lines
}

fn defect(words: &Words, row: &DefectRow) -> [String; 4] {
    let said: Vec<String> = row.said.iter().map(|said| one_said(words, said)).collect();
    let locks: Vec<String> = row.locks.iter().map(|part| words.part(part)).collect();
    let certificate = row.certificate.as_ref().map_or_else(
        || words.t("report-no-certificate"),
        |paper| {
            let verdict = words.choice("verdict", &paper.verdict);
            let (by, when) = (words.who(&paper.by), words.at(paper.at));
            format!(
                "{verdict}, {by} {when}: '{}'; {}",
                paper.words,
                words.t(&format!("defect-{}", key(&row.state)))
            )
        },
    );
    [words.item(&row.item, row.place.as_deref()), said.join("\n"), locks.join(", "), certificate]
}

fn one_said(words: &Words, said: &SaidRow) -> String {
    let what = match (said.ok, &said.word) {
        (true, _) => words.t("answer-ok"),
        (false, Some(word)) => words.wrong(word),
        (false, None) => words.t("answer-defect"),
    };
    let more = said.words.as_deref().map_or_else(String::new, |more| format!(" '{more}'"));
    format!("{what}{more}, {} {}", words.who(&said.by), words.at(said.at))
}
