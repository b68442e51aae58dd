//! What a form carried: fields by name, some of them several times.

use axum::Form;
use axum::extract::{FromRequest, Request};
use chrono::{Datelike, NaiveDate, NaiveTime};
use sumpbook_trade::{Stamp, Tenths};

use super::Console;
use super::refused::Refused;

/// Years that a form's day may lie in: another one is a slip of the hand.
const YEARS: std::ops::RangeInclusive<i32> = 1980..=2099;
/// Hours of a meter at most; none runs so long.
const MOST_HOURS: Tenths = Tenths(10_000_000);

/// The fields of a form, in the order they were sent.
#[derive(Clone, Debug, Default)]
pub(super) struct Fields(pub(super) Vec<(String, String)>);

impl FromRequest<Console> for Fields {
    type Rejection = Refused;

    async fn from_request(request: Request, console: &Console) -> Result<Fields, Refused> {
        let form = Form::<Vec<(String, String)>>::from_request(request, console).await;
        let Form(mut fields) = form.map_err(|_| Refused::Asked("form-unread"))?;
        for (_, value) in &mut fields {
            value.retain(|letter| !unseen(letter));
        }
        Ok(Fields(fields))
    }
}

impl Fields {
    /// What stands in a field, without the blanks around it; none when it is empty.
    pub(super) fn text(&self, name: &str) -> Option<&str> {
        let of = self.0.iter().filter(|(key, _)| key == name).map(|(_, value)| value.trim());
        of.into_iter().find(|value| !value.is_empty())
    }

    /// The same, kept.
    pub(super) fn owned(&self, name: &str) -> Option<String> {
        self.text(name).map(str::to_owned)
    }

    /// Everything that was sent under one name.
    pub(super) fn all<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a str> {
        let of = self.0.iter().filter(move |(key, _)| key == name).map(|(_, value)| value.trim());
        of.filter(|value| !value.is_empty())
    }

    /// A day; none when the field is empty.
    pub(super) fn day(&self, name: &str) -> Result<Option<NaiveDate>, Refused> {
        let read = |text: &str| match text.parse::<NaiveDate>() {
            Ok(day) if YEARS.contains(&day.year()) => Ok(day),
            Ok(_) => Err(Refused::Asked("form-day-far")),
            Err(_) => Err(Refused::Asked("form-day")),
        };
        self.text(name).map(read).transpose()
    }

    /// Hours of a meter; none when the field is empty. A comma at the thousands is let stand.
    pub(super) fn hours(&self, name: &str) -> Result<Option<Tenths>, Refused> {
        let read = |text| {
            let hours = ungrouped(text)?.parse().map_err(|_| Refused::Asked("form-hours"))?;
            if (Tenths::ZERO..=MOST_HOURS).contains(&hours) {
                Ok(hours)
            } else {
                Err(Refused::Asked("form-hours"))
            }
        };
        self.text(name).map(read).transpose()
    }

    /// A time of day; none when the field is empty.
    pub(super) fn time(&self, name: &str) -> Result<Option<NaiveTime>, Refused> {
        let read = |text: &str| {
            NaiveTime::parse_from_str(text, "%H:%M")
                .or_else(|_| NaiveTime::parse_from_str(text, "%H:%M:%S"))
                .map_err(|_| Refused::Asked("form-time"))
        };
        self.text(name).map(read).transpose()
    }

    /// A day and a time of the yard's clock.
    pub(super) fn moment(
        &self,
        day: &str,
        time: &str,
        zone: chrono_tz::Tz,
    ) -> Result<Option<Stamp>, Refused> {
        let Some(day) = self.day(day)? else { return Ok(None) };
        let time = self.time(time)?.ok_or(Refused::Asked("form-time"))?;
        let at = sumpbook_trade::day::yard_moment(day, time, zone).ok_or(Refused::Asked("form-time"))?;
        Ok(Some(Stamp::new(at)))
    }
}

/// What nobody sees in a field and what turns round the letters after it: no word of anybody's.
fn unseen(letter: char) -> bool {
    let turns = matches!(letter, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    turns || (letter.is_control() && !matches!(letter, '\n' | '\r' | '\t'))
}

/// A figure without the commas between its thousands.
pub(super) fn ungrouped(text: &str) -> Result<String, Refused> {
    sumpbook_trade::ungrouped(text).ok_or(Refused::Asked("form-comma"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fields(pairs: &[(&str, &str)]) -> Fields {
        Fields(pairs.iter().map(|(name, value)| ((*name).to_owned(), (*value).to_owned())).collect())
    }

    #[test]
    fn a_field_is_read_or_refused_by_name() {
        let form =
            fields(&[("tick", "a"), ("tick", "b"), ("day", "2026-10-22"), ("at", "06:40"), ("h", "2,918.0")]);
        assert_eq!(form.all("tick").collect::<Vec<_>>(), ["a", "b"]);
        assert_eq!(form.day("day").unwrap(), "2026-10-22".parse().ok());
        assert_eq!(form.day("none").unwrap(), None);
        assert_eq!(form.hours("h").unwrap(), Some(Tenths(29_180)));
        let at = form.moment("day", "at", chrono_tz::America::Denver).unwrap().unwrap();
        assert_eq!(at.to_string(), "2026-10-22T06:40:00-06:00");
        assert!(matches!(fields(&[("day", "10/22/2026")]).day("day"), Err(Refused::Asked("form-day"))));
        for none in ["many", "-7", "99999999", "1000000.1"] {
            assert!(matches!(fields(&[("h", none)]).hours("h"), Err(Refused::Asked("form-hours"))), "{none}");
        }
        for far in ["1900-01-01", "2999-12-31", "0202-10-22"] {
            assert!(
                matches!(fields(&[("day", far)]).day("day"), Err(Refused::Asked("form-day-far"))),
                "{far}"
            );
        }
        assert!(form.moment("day", "none", chrono_tz::UTC).is_err());
    }

    #[test]
    fn a_comma_that_may_be_a_point_is_asked_about() {
        for (written, read) in
            [("2,918.0", 29_180), ("12,918", 129_180), ("500.5", 5_005), ("902,918.5", 9_029_185)]
        {
            assert_eq!(fields(&[("h", written)]).hours("h").unwrap(), Some(Tenths(read)), "{written}");
        }
        for asked in ["500,5", "0,5", "2.918,0", "1,00", ",500", "12,34,567", "1234,567", "1,5 h"] {
            assert!(
                matches!(fields(&[("h", asked)]).hours("h"), Err(Refused::Asked("form-comma"))),
                "{asked}"
            );
        }
    }
}
