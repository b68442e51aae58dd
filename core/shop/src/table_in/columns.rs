//! The columns of a file, by their heads: English or Spanish, in any order.

use serde::{Deserialize, Serialize};
use sumpbook_trade::Unit;

/// What a file holds, one row each.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum What {
    /// Units: door number, serials, plate, what they have, in service since.
    Units,
    /// Services, with their day, hours, tasks, parts and oil.
    Services,
    /// Figures of meters.
    Readings,
    /// Fluids poured.
    Pours,
}

impl What {
    /// All of them, in the order they are brought in.
    pub const ALL: [What; 4] = [What::Units, What::Services, What::Readings, What::Pours];

    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            What::Units => "units",
            What::Services => "services",
            What::Readings => "readings",
            What::Pours => "pours",
        }
    }

    /// The columns it knows, those it cannot do without first.
    pub fn columns(self) -> &'static [Column] {
        use Column as C;
        match self {
            What::Units => &[
                C::Unit,
                C::InService,
                C::InServiceHours,
                C::Serial,
                C::Plate,
                C::SetSerial,
                C::Features,
                C::OilFamily,
                C::OilGrade,
                C::GlassVolume,
                C::OilVolume,
            ],
            What::Services => &[
                C::Unit,
                C::Date,
                C::Task,
                C::Hours,
                C::Time,
                C::Parts,
                C::Volume,
                C::OilFamily,
                C::OilGrade,
                C::Note,
            ],
            What::Readings => &[C::Unit, C::Date, C::Hours, C::Time, C::Meter, C::Note],
            What::Pours => &[
                C::Unit,
                C::Date,
                C::Fluid,
                C::Volume,
                C::Hours,
                C::Time,
                C::OilFamily,
                C::OilGrade,
                C::Before,
                C::After,
                C::Note,
            ],
        }
    }

    /// The columns it cannot do without.
    pub fn needed(self) -> &'static [Column] {
        let count = match self {
            What::Units | What::Services | What::Readings => 3,
            What::Pours => 4,
        };
        self.columns().get(..count).unwrap_or_default()
    }
}

/// A column.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Column {
    /// Door number.
    Unit,
    /// The day.
    Date,
    /// The time of day.
    Time,
    /// Hours of the meter.
    Hours,
    /// Tasks of the programme.
    Task,
    /// Numbers of parts used.
    Parts,
    /// How much, with its unit in the head or in the cell.
    Volume,
    /// Family of the oil.
    OilFamily,
    /// Grade as printed on the drum.
    OilGrade,
    /// Words.
    Note,
    /// Which meter; the compressor's when the file has no such column.
    Meter,
    /// Which fluid.
    Fluid,
    /// Glass before, percent.
    Before,
    /// Glass after, percent.
    After,
    /// Serial of the truck.
    Serial,
    /// Plate.
    Plate,
    /// Serial of the compressor set.
    SetSerial,
    /// In service since.
    InService,
    /// Hours on that day.
    InServiceHours,
    /// What the unit has.
    Features,
    /// Volume of the glass, 0 to 100 %, with its unit in the head or in the cell.
    GlassVolume,
    /// All the oil in it, likewise.
    OilVolume,
}

impl Column {
    /// Its name.
    pub fn name(self) -> &'static str {
        let [english, _] = self.heads();
        english.first().copied().unwrap_or_default()
    }

    /// A head that is taken for it, in a language by its tag; its name where that is another than Spanish.
    pub fn name_in(self, tag: &str) -> &'static str {
        let [_, spanish] = self.heads();
        spanish.first().copied().filter(|_| tag == "es").unwrap_or_else(|| self.name())
    }

    /// What its head may be in English and in Spanish, without case, accents' signs kept; the first is its name.
    fn heads(self) -> [&'static [&'static str]; 2] {
        match self {
            Column::Unit => [&["unit", "door", "door number", "truck"], &["unidad", "camión", "número"]],
            Column::Date => [&["date", "day", "done on"], &["fecha", "día"]],
            Column::Time => [&["time"], &["hora"]],
            Column::Hours => [
                &["hours", "hour meter", "meter reading", "reading", "figure"],
                &["horas", "horómetro", "lectura"],
            ],
            Column::Task => [&["task", "tasks", "service"], &["tarea", "tareas", "servicio"]],
            Column::Parts => {
                [&["parts", "part numbers", "part number", "filters"], &["piezas", "refacciones", "filtros"]]
            }
            Column::Volume => {
                [&["volume", "amount", "poured", "oil"], &["volumen", "cantidad", "agregado", "aceite"]]
            }
            Column::OilFamily => [&["oil family", "family"], &["familia de aceite", "familia"]],
            Column::OilGrade => [&["oil grade", "grade"], &["grado de aceite", "grado"]],
            Column::Note => [&["note", "notes", "remarks"], &["nota", "notas", "observaciones"]],
            Column::Meter => [&["meter"], &["medidor", "qué horómetro"]],
            Column::Fluid => [&["fluid"], &["fluido", "líquido"]],
            Column::Before => [&["before", "glass before", "level before"], &["antes"]],
            Column::After => [&["after", "glass after", "level after"], &["después"]],
            Column::Serial => [&["truck serial", "serial", "vin"], &["serie del camión", "serie"]],
            Column::Plate => [&["plate", "license plate"], &["placa", "placas"]],
            Column::SetSerial => {
                [&["set serial", "compressor serial"], &["serie del equipo", "serie del compresor"]]
            }
            Column::InService => [&["in service", "in service since"], &["en servicio", "en servicio desde"]],
            Column::InServiceHours => [&["in service hours", "hours in service"], &["horas en servicio"]],
            Column::GlassVolume => [&["glass volume"], &["volumen de mirilla", "mirilla"]],
            Column::OilVolume => [&["oil volume"], &["volumen de aceite", "carga de aceite"]],
            Column::Features => [&["features", "has", "equipment"], &["equipamiento", "lleva"]],
        }
    }
}

/// A column as a file has it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Head {
    pub(super) column: Column,
    /// Its place in a row, from 0.
    pub(super) place: usize,
    /// As the file writes it.
    pub(super) written: String,
    /// The unit in its head, such as (qt).
    pub(super) unit: Option<Unit>,
}

/// The columns a file has, and the heads nothing is done with.
pub(super) fn known(what: What, heads: &[String]) -> (Vec<Head>, Vec<String>) {
    let (mut found, mut unused) = (Vec::<Head>::new(), Vec::new());
    for (place, written) in heads.iter().enumerate() {
        let (name, unit) = without_unit(written);
        let plain = name.to_lowercase().replace(['_', '-'], " ");
        let plain = plain.split_whitespace().collect::<Vec<_>>().join(" ");
        let plain = unaccented(&plain);
        let is = |column: &&Column| column.heads().concat().iter().any(|head| unaccented(head) == plain);
        let column = what.columns().iter().find(is);
        match column {
            // A head that stands twice: the first counts, the other is told.
            Some(column) if !found.iter().any(|head| head.column == *column) => {
                found.push(Head { column: *column, place, written: written.clone(), unit });
            }
            _ if written.trim().is_empty() => {}
            _ => unused.push(written.trim().to_owned()),
        }
    }
    (found, unused)
}

/// Many a keyboard in the yard has no accents.
pub(super) fn unaccented(text: &str) -> String {
    let plain = |c| match c {
        'á' => 'a',
        'é' => 'e',
        'í' => 'i',
        'ó' => 'o',
        'ú' | 'ü' => 'u',
        'ñ' => 'n',
        other => other,
    };
    text.chars().map(plain).collect()
}

/// "Volume (qt)": the head and the unit in it.
fn without_unit(head: &str) -> (String, Option<Unit>) {
    let head = head.trim();
    let Some((name, rest)) = head.split_once(['(', '[']) else { return (head.to_owned(), None) };
    (name.trim().to_owned(), volume_unit(rest.trim_end_matches([')', ']'])))
}

/// A unit of volume as people write it.
pub(crate) fn volume_unit(text: &str) -> Option<Unit> {
    match text.trim().trim_end_matches('.').to_lowercase().as_str() {
        "qt" | "qts" | "quart" | "quarts" | "cuarto" | "cuartos" => Some(Unit::Quart),
        "gal" | "gals" | "gallon" | "gallons" | "galón" | "galones" => Some(Unit::Gallon),
        "fl oz" | "fl-oz" | "floz" => Some(Unit::FluidOunce),
        "l" | "lt" | "liter" | "liters" | "litre" | "litres" | "litro" | "litros" => Some(Unit::Litre),
        "ml" => Some(Unit::Millilitre),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn heads_are_known_in_either_language_and_order() {
        let heads: Vec<String> = ["Fecha", " UNIDAD ", "Volumen (L)", "colour", "Volume (qt)", "líquido", ""]
            .iter()
            .map(|head| (*head).to_owned())
            .collect();
        let (found, unused) = known(What::Pours, &heads);
        let columns: Vec<_> = found.iter().map(|head| (head.column, head.place, head.unit)).collect();
        assert_eq!(
            columns,
            [
                (Column::Date, 0, None),
                (Column::Unit, 1, None),
                (Column::Volume, 2, Some(Unit::Litre)),
                (Column::Fluid, 5, None)
            ]
        );
        assert_eq!(unused, ["colour", "Volume (qt)"]);
    }

    #[test]
    fn no_head_stands_for_two_columns() {
        for what in What::ALL {
            let mut all: Vec<&str> =
                what.columns().iter().flat_map(|column| column.heads().concat()).collect();
            let count = all.len();
            all.sort_unstable();
            all.dedup();
            assert_eq!(all.len(), count, "{what:?}");
        }
    }
}
