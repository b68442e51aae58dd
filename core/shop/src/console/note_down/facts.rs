//! What a form of this page says, as the fact it is.

use sumpbook_trade::hours::Estimate;
use sumpbook_trade::record::{
    HoursEstimate, LabAnswer, Meter, MeterExchange, Sample, SiteCondition, SiteDust, Warmth,
};
use sumpbook_trade::{EntryId, Fact, Tenths};

use crate::console::form::Fields;
use crate::console::refused::Refused;

pub(super) const METERS: [(Meter, &str); 3] =
    [(Meter::Compressor, "compressor"), (Meter::Engine, "engine"), (Meter::Pto, "pto")];
pub(super) const DUST: [(SiteDust, &str); 3] =
    [(SiteDust::Clean, "clean"), (SiteDust::Dusty, "dusty"), (SiteDust::VeryDusty, "very-dusty")];
pub(super) const WARMTH: [(Warmth, &str); 2] = [(Warmth::Cold, "cold"), (Warmth::Hot, "hot")];

/// The fact of the form `what`.
pub(super) fn of(what: &str, fields: &Fields) -> Result<Fact, Refused> {
    match what {
        "meter" => exchange(fields).map(Fact::from),
        "estimate" => estimate(fields).map(Fact::from),
        "sample" => sample(fields).map(Fact::from),
        "answer" => answer(fields).map(Fact::from),
        "site" => site(fields).map(Fact::from),
        _ => Err(Refused::NotThere),
    }
}

fn chosen<T: Copy>(fields: &Fields, name: &str, of: &[(T, &str)]) -> Option<T> {
    let word = fields.text(name)?;
    of.iter().find(|(_, known)| *known == word).map(|(chosen, _)| *chosen)
}

fn meter(fields: &Fields) -> Result<Meter, Refused> {
    chosen(fields, "meter", &METERS).ok_or(Refused::Asked("note-which-meter"))
}

fn exchange(fields: &Fields) -> Result<MeterExchange, Refused> {
    let new_start = fields.hours("new-start")?.ok_or(Refused::Asked("note-meter-figure"))?;
    Ok(MeterExchange {
        meter: meter(fields)?,
        old_end: fields.hours("old-end")?,
        new_start,
        went_round: fields.text("went-round").is_some(),
    })
}

fn estimate(fields: &Fields) -> Result<HoursEstimate, Refused> {
    let figure = |name| -> Result<Tenths, Refused> {
        fields.hours(name)?.ok_or(Refused::Asked("note-estimate-order"))
    };
    let (low, likely, high) = (figure("low")?, figure("likely")?, figure("high")?);
    let at = chrono::DateTime::UNIX_EPOCH.fixed_offset();
    if !(Estimate { at, low, likely, high }).is_in_order() {
        return Err(Refused::Asked("note-estimate-order"));
    }
    Ok(HoursEstimate { meter: meter(fields)?, low, likely, high })
}

fn sample(fields: &Fields) -> Result<Sample, Refused> {
    Ok(Sample {
        bottle: fields.owned("bottle").ok_or(Refused::Asked("note-sample-bottle"))?,
        point: fields.owned("point"),
        warmth: chosen(fields, "warmth", &WARMTH),
        hours_on_oil: fields.hours("hours-on-oil")?,
    })
}

fn answer(fields: &Fields) -> Result<LabAnswer, Refused> {
    let sample = fields.text("sample").and_then(|text| text.parse().ok().map(EntryId));
    Ok(LabAnswer {
        sample: sample.ok_or(Refused::Asked("note-which-sample"))?,
        words: fields.owned("words").ok_or(Refused::Asked("note-answer-words"))?,
    })
}

fn site(fields: &Fields) -> Result<SiteCondition, Refused> {
    let dust = chosen(fields, "dust", &DUST).ok_or(Refused::Asked("note-which-dust"))?;
    Ok(SiteCondition { dust })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fields(pairs: &[(&str, &str)]) -> Fields {
        Fields(pairs.iter().map(|(name, value)| ((*name).to_owned(), (*value).to_owned())).collect())
    }

    #[test]
    fn an_estimate_has_three_figures_in_order_of_a_meter() {
        let good = [("meter", "compressor"), ("low", "0"), ("likely", "80"), ("high", "240.0")];
        let Ok(Fact::HoursEstimate(estimate)) = of("estimate", &fields(&good)) else { panic!("no estimate") };
        assert_eq!((estimate.low, estimate.likely, estimate.high), (Tenths(0), Tenths(800), Tenths(2_400)));
        let turned = [("meter", "compressor"), ("low", "80"), ("likely", "0"), ("high", "240.0")];
        assert!(matches!(of("estimate", &fields(&turned)), Err(Refused::Asked("note-estimate-order"))));
        assert!(matches!(of("estimate", &fields(&good[..3])), Err(Refused::Asked("note-estimate-order"))));
        assert!(matches!(of("estimate", &fields(&good[1..])), Err(Refused::Asked("note-which-meter"))));
    }

    #[test]
    fn what_is_not_said_is_asked_for_by_name() {
        assert!(matches!(of("meter", &fields(&[])), Err(Refused::Asked("note-meter-figure"))));
        assert!(matches!(of("sample", &fields(&[])), Err(Refused::Asked("note-sample-bottle"))));
        assert!(matches!(
            of("answer", &fields(&[("sample", "x")])),
            Err(Refused::Asked("note-which-sample"))
        ));
        assert!(matches!(of("site", &fields(&[("dust", "mud")])), Err(Refused::Asked("note-which-dust"))));
        assert!(matches!(of("other", &fields(&[])), Err(Refused::NotThere)));
    }
}
