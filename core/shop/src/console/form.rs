//! What a form carried: fields by name, some of them several times.

use axum::Form;
use axum::extract::{FromRequest, Request};
use chrono::{NaiveDate, NaiveTime};
use sumpbook_trade::{Stamp, Tenths};

use super::Console;
use super::refused::Refused;

/// The fields of a form, in the order they were sent.
#[derive(Clone, Debug, Default)]
pub(super) struct Fields(pub(super) Vec<(String, String)>);

impl FromRequest<Console> for Fields {
    type Rejection = Refused;

    async fn from_request(request: Request, console: &Console) -> Result<Fields, Refused> {
        let form = Form::<Vec<(String, String)>>::from_request(request, console).await;
        form.map(|Form(fields)| Fields(fields)).map_err(|_| Refused::Asked("form-unread"))
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
        self.text(name).map(|text| text.parse().map_err(|_| Refused::Asked("form-day"))).transpose()
    }

    /// Hours of a meter; none when the field is empty. A comma at the thousands is let stand.
    pub(super) fn hours(&self, name: &str) -> Result<Option<Tenths>, Refused> {
        let text = self.text(name).map(|text| text.replace(',', ""));
        text.map(|text| text.parse().map_err(|_| Refused::Asked("form-hours"))).transpose()
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
        assert!(matches!(fields(&[("h", "many")]).hours("h"), Err(Refused::Asked("form-hours"))));
        assert!(form.moment("day", "none", chrono_tz::UTC).is_err());
    }
}
