//! A measured figure as it was given: digits, decimals, unit.

use std::fmt;
use std::str::FromStr;

use minicbor::{CborLen, Decode, Encode};
use schemars::JsonSchema;
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};
use uom::si::f64::{Length, Pressure, ThermodynamicTemperature, Volume, VolumeRate};
use uom::si::{length, pressure, thermodynamic_temperature, volume, volume_rate};

/// The units a figure may be given in. Numbers are the wire's and are never reused.
#[derive(
    Clone,
    Copy,
    Debug,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Encode,
    Decode,
    CborLen,
    Serialize,
    Deserialize,
    JsonSchema,
)]
#[cbor(index_only)]
pub enum Unit {
    /// Pound-force per square inch (gauge).
    #[n(0)]
    #[serde(rename = "psi")]
    Psi,
    /// Kilopascal (gauge).
    #[n(1)]
    #[serde(rename = "kPa")]
    Kilopascal,
    /// Bar (gauge).
    #[n(2)]
    #[serde(rename = "bar")]
    Bar,
    /// US liquid quart.
    #[n(3)]
    #[serde(rename = "qt")]
    Quart,
    /// US gallon.
    #[n(4)]
    #[serde(rename = "gal")]
    Gallon,
    /// US fluid ounce.
    #[n(5)]
    #[serde(rename = "fl-oz")]
    FluidOunce,
    /// Litre.
    #[n(6)]
    #[serde(rename = "L")]
    Litre,
    /// Millilitre.
    #[n(7)]
    #[serde(rename = "mL")]
    Millilitre,
    /// Thirty-second of an inch (tread).
    #[n(8)]
    #[serde(rename = "in/32")]
    ThirtySecond,
    /// Inch.
    #[n(9)]
    #[serde(rename = "in")]
    Inch,
    /// Millimetre.
    #[n(10)]
    #[serde(rename = "mm")]
    Millimetre,
    /// Degree Fahrenheit.
    #[n(11)]
    #[serde(rename = "degF")]
    Fahrenheit,
    /// Degree Celsius.
    #[n(12)]
    #[serde(rename = "degC")]
    Celsius,
    /// Second.
    #[n(13)]
    #[serde(rename = "s")]
    Second,
    /// Mile (odometer).
    #[n(14)]
    #[serde(rename = "mi")]
    Mile,
    /// Kilometre (odometer).
    #[n(15)]
    #[serde(rename = "km")]
    Kilometre,
    /// A bare count.
    #[n(16)]
    #[serde(rename = "count")]
    Count,
    /// Percent.
    #[n(17)]
    #[serde(rename = "%")]
    Percent,
    /// Cubic foot per minute of free air.
    #[n(18)]
    #[serde(rename = "cfm")]
    CubicFootPerMinute,
}

/// A figure exactly as someone gave it. Another unit on the screen never rewrites it.
///
/// `0.21 qt` is digits 21, places 2, unit quart. In JSON `{"value": "0.21", "unit": "qt"}`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Encode, Decode, CborLen)]
#[cbor(array)]
pub struct Figure {
    /// All digits without the decimal point.
    #[n(0)]
    pub digits: i64,
    /// How many of them stand after the point; at most 6.
    #[n(1)]
    pub places: u8,
    /// The unit it was given in.
    #[n(2)]
    pub unit: Unit,
}

/// A cubic foot, exactly: 0.3048 m cubed (NIST SP 811). The units crate has it to seven digits.
const CUBIC_FOOT_M3: f64 = 0.028_316_846_592;

/// A US gallon is 231 cubic inches, exactly this many litres (NIST SP 811, B.8). The units crate has seven
/// digits of it, which is too few for a sum of many pours.
const GALLON_L: f64 = 3.785_411_784;

/// A pound-force on a square inch in pascals: 0.45359237 kg x 9.80665 m/s2 / (0.0254 m)2.
const PSI_PA: f64 = 0.453_592_37 * 9.806_65 / (0.0254 * 0.0254);

/// The most decimals a figure may have.
const MOST_PLACES: u8 = 6;

impl Figure {
    /// A figure from its text, such as `"0.21"`.
    pub fn parse(value: &str, unit: Unit) -> Result<Figure, FigureError> {
        let wrong = || FigureError(value.chars().take(40).collect());
        let (sign, plain) = value.strip_prefix('-').map_or((1, value), |rest| (-1, rest));
        let (whole, part) = plain.split_once('.').unwrap_or((plain, ""));
        let all: String = [whole, part].concat();
        let digits_only = all.bytes().all(|b| b.is_ascii_digit());
        if whole.is_empty() || !digits_only || all.len() > 15 || plain.ends_with('.') {
            return Err(wrong());
        }
        let places = u8::try_from(part.len()).ok().filter(|p| *p <= MOST_PLACES).ok_or_else(wrong)?;
        let digits: i64 = all.parse().map_err(|_| wrong())?;
        Ok(Figure { digits: sign * digits, places, unit })
    }

    /// The bare number, in the unit given.
    pub fn value(self) -> f64 {
        self.digits as f64 / 10f64.powi(i32::from(self.places))
    }

    /// The number as text, every decimal that was given.
    pub fn value_text(self) -> String {
        let places = usize::from(self.places.min(MOST_PLACES));
        let sign = if self.digits < 0 { "-" } else { "" };
        let all = format!("{:0width$}", self.digits.unsigned_abs(), width = places + 1);
        let (whole, part) = all.split_at(all.len() - places);
        if part.is_empty() { format!("{sign}{whole}") } else { format!("{sign}{whole}.{part}") }
    }

    /// As a volume, if it is one.
    pub fn volume(self) -> Option<Volume> {
        let v = self.value();
        Some(match self.unit {
            Unit::Quart => Volume::new::<volume::liter>(v * GALLON_L / 4.0),
            Unit::Gallon => Volume::new::<volume::liter>(v * GALLON_L),
            Unit::FluidOunce => Volume::new::<volume::liter>(v * GALLON_L / 128.0),
            Unit::Litre => Volume::new::<volume::liter>(v),
            Unit::Millilitre => Volume::new::<volume::milliliter>(v),
            _ => return None,
        })
    }

    /// As litres, if it is a volume.
    pub fn litres(self) -> Option<f64> {
        self.volume().map(|volume| volume.get::<volume::liter>())
    }

    /// As a pressure, if it is one.
    pub fn pressure(self) -> Option<Pressure> {
        let v = self.value();
        Some(match self.unit {
            Unit::Psi => Pressure::new::<pressure::pascal>(v * PSI_PA),
            Unit::Kilopascal => Pressure::new::<pressure::kilopascal>(v),
            Unit::Bar => Pressure::new::<pressure::bar>(v),
            _ => return None,
        })
    }

    /// As a flow of free air, if it is one.
    pub fn flow(self) -> Option<VolumeRate> {
        let cfm = matches!(self.unit, Unit::CubicFootPerMinute);
        cfm.then(|| {
            VolumeRate::new::<volume_rate::cubic_meter_per_second>(self.value() * CUBIC_FOOT_M3 / 60.0)
        })
    }

    /// As a length, if it is one.
    pub fn length(self) -> Option<Length> {
        let v = self.value();
        Some(match self.unit {
            Unit::ThirtySecond => Length::new::<length::inch>(v / 32.0),
            Unit::Inch => Length::new::<length::inch>(v),
            Unit::Millimetre => Length::new::<length::millimeter>(v),
            Unit::Mile => Length::new::<length::mile>(v),
            Unit::Kilometre => Length::new::<length::kilometer>(v),
            _ => return None,
        })
    }

    /// As a temperature, if it is one.
    pub fn temperature(self) -> Option<ThermodynamicTemperature> {
        let v = self.value();
        Some(match self.unit {
            Unit::Fahrenheit => {
                ThermodynamicTemperature::new::<thermodynamic_temperature::degree_fahrenheit>(v)
            }
            Unit::Celsius => ThermodynamicTemperature::new::<thermodynamic_temperature::degree_celsius>(v),
            _ => return None,
        })
    }
}

/// Why a text is not a figure.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("'{0}' is not a figure: digits with at most 6 decimals and a point, such as 0.21")]
pub struct FigureError(String);

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = match self.unit {
            Unit::Psi => " psi",
            Unit::Kilopascal => " kPa",
            Unit::Bar => " bar",
            Unit::Quart => " qt",
            Unit::Gallon => " gal",
            Unit::FluidOunce => " fl oz",
            Unit::Litre => " L",
            Unit::Millilitre => " mL",
            Unit::ThirtySecond => "/32 in",
            Unit::Inch => " in",
            Unit::Millimetre => " mm",
            Unit::Fahrenheit => " degF",
            Unit::Celsius => " degC",
            Unit::Second => " s",
            Unit::Mile => " mi",
            Unit::Kilometre => " km",
            Unit::Count => "",
            Unit::Percent => " %",
            Unit::CubicFootPerMinute => " cfm",
        };
        write!(f, "{}{unit}", self.value_text())
    }
}

#[derive(Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, expecting = r#"an object such as {"value": "0.21", "unit": "qt"}"#)]
#[schemars(rename = "Figure")]
struct FigureText {
    /// The number as text, as it was given: "0.21"
    value: String,
    unit: Unit,
}

impl Serialize for Figure {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        FigureText { value: self.value_text(), unit: self.unit }.serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for Figure {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Figure, D::Error> {
        let text = FigureText::deserialize(deserializer)?;
        text.value.parse::<PlainNumber>().map_err(de::Error::custom)?;
        Figure::parse(&text.value, text.unit).map_err(de::Error::custom)
    }
}

/// Only so that a number with a comma says what is wrong with it.
struct PlainNumber;

impl FromStr for PlainNumber {
    type Err = String;
    fn from_str(text: &str) -> Result<PlainNumber, String> {
        if text.contains(',') {
            Err(format!("'{text}' has a comma: use a point for decimals and no separators"))
        } else {
            Ok(PlainNumber)
        }
    }
}

impl JsonSchema for Figure {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Figure".into()
    }
    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        FigureText::json_schema(generator)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figure_stays_as_it_was_given() {
        for (text, unit, shown) in [
            ("0.21", Unit::Quart, "0.21 qt"),
            ("4", Unit::ThirtySecond, "4/32 in"),
            ("-5.50", Unit::Celsius, "-5.50 degC"),
        ] {
            let figure = Figure::parse(text, unit).unwrap();
            assert_eq!(figure.to_string(), shown);
            let json = serde_json::to_string(&figure).unwrap();
            assert_eq!(serde_json::from_str::<Figure>(&json).unwrap(), figure);
        }
    }

    #[test]
    fn what_is_no_number_is_refused() {
        for text in ["", ".", "1.", "1,5", "0.1234567", "1e3", "9999999999999999"] {
            assert!(Figure::parse(text, Unit::Quart).is_err(), "{text}");
        }
    }

    #[test]
    fn tread_in_three_units_is_one_depth() {
        let of =
            |text, unit| Figure::parse(text, unit).unwrap().length().unwrap().get::<length::millimeter>();
        assert!((of("4", Unit::ThirtySecond) - of("3.175", Unit::Millimetre)).abs() < 1e-12);
        assert!((of("0.125", Unit::Inch) - of("3.175", Unit::Millimetre)).abs() < 1e-12);
    }

    const UNITS: [Unit; 19] = [
        Unit::Psi,
        Unit::Kilopascal,
        Unit::Bar,
        Unit::Quart,
        Unit::Gallon,
        Unit::FluidOunce,
        Unit::Litre,
        Unit::Millilitre,
        Unit::ThirtySecond,
        Unit::Inch,
        Unit::Millimetre,
        Unit::Fahrenheit,
        Unit::Celsius,
        Unit::Second,
        Unit::Mile,
        Unit::Kilometre,
        Unit::Count,
        Unit::Percent,
        Unit::CubicFootPerMinute,
    ];

    proptest::proptest! {
        #[test]
        fn a_figure_comes_back_from_text_json_and_cbor_as_it_was_given(
            digits in -9_999_999_999i64..9_999_999_999,
            places in 0u8..=MOST_PLACES,
            unit in proptest::sample::select(&UNITS[..]),
        ) {
            let figure = Figure { digits, places, unit };
            let read = Figure::parse(&figure.value_text(), unit).unwrap();
            // Nothing but the sign of nothing can be lost.
            assert_eq!((read.value(), read.places, read.value_text()), (figure.value(), places, figure.value_text()));
            let json = serde_json::to_string(&figure).unwrap();
            assert_eq!(serde_json::from_str::<Figure>(&json).unwrap(), read);
            let cbor = minicbor::to_vec(figure).unwrap();
            assert_eq!(minicbor::decode::<Figure>(&cbor).unwrap(), figure);
        }

        #[test]
        fn a_quantity_comes_back_from_the_other_units_as_it_was(digits in 1i64..100_000_000, places in 0u8..=4) {
            let of = |unit| Figure { digits, places, unit };
            let near = |got: f64, given: Figure| {
                assert!((got - given.value()).abs() <= 1e-12 * given.value().abs().max(1.0), "{got} {given}");
            };
            // Each is taken apart by its own definition: 231 in3 to the gallon, 4.4482216152605 N to the pound.
            let litres = |unit| of(unit).volume().unwrap().get::<volume::liter>();
            near(litres(Unit::Quart) / (231.0 * 0.016_387_064 / 4.0), of(Unit::Quart));
            near(litres(Unit::Gallon) / (231.0 * 0.016_387_064), of(Unit::Gallon));
            near(litres(Unit::FluidOunce) * 128.0 / (231.0 * 0.016_387_064), of(Unit::FluidOunce));
            near(litres(Unit::Millilitre) * 1_000.0, of(Unit::Millilitre));
            let pascals = |unit| of(unit).pressure().unwrap().get::<pressure::pascal>();
            near(pascals(Unit::Psi) * 0.0254 * 0.0254 / 4.448_221_615_260_5, of(Unit::Psi));
            near(pascals(Unit::Kilopascal) / 1_000.0, of(Unit::Kilopascal));
            let metres = |unit| of(unit).length().unwrap().get::<length::meter>();
            near(metres(Unit::Inch) / 0.0254, of(Unit::Inch));
            near(metres(Unit::ThirtySecond) * 32.0 / 0.0254, of(Unit::ThirtySecond));
            let kelvins = |unit| of(unit).temperature().unwrap().get::<thermodynamic_temperature::kelvin>();
            near(kelvins(Unit::Celsius) - 273.15, of(Unit::Celsius));
            near(kelvins(Unit::Fahrenheit) * 1.8 - 459.67, of(Unit::Fahrenheit));
        }
    }
}
