//! What lies on the trucks in cans: counted by somebody, drawn down by every pour since, and what to load again.

use std::collections::BTreeMap;

use serde::Serialize;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::fluid::Fluid;
use sumpbook_trade::record::{StockCounted, TopUp};
use sumpbook_trade::{Entry, Fact, FactKind, Figure, Stamp, TruckId, Unit};

use crate::parts::jugs;
use crate::sheet::{Yard, entry_of, key};
use crate::{Hand, Shop, ShopError};

/// Pours of one unit looked through, newest first: more than it has in a year.
const POURS: i64 = 500;
/// Counts of one unit looked through: the newest of each fluid is among them.
const COUNTS: i64 = 100;
/// Days of pours that are told of a truck on which nothing was counted.
const DAYS: i64 = 28;

/// One fluid on one truck.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct StockRow {
    /// Door number.
    pub unit: String,
    /// Which fluid: a key of the texts.
    pub fluid: String,
    /// Of compressor oil, what the unit's set is down as having; none when that is not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub oil: Option<OilKind>,
    /// What was counted, quarts to the hundredth: "4.00 qt". None when nobody ever counted.
    pub counted: Option<String>,
    /// When.
    pub counted_at: Option<Stamp>,
    /// Poured since then, or in the last 28 days where nothing was counted: "0.21 qt".
    pub poured: String,
    /// Left of what was counted, never below zero: "3.79 qt". None when nobody ever counted.
    pub left: Option<String>,
    /// More was poured than was counted: what it came out of is not on record.
    pub more_than_counted: bool,
    /// Litres to load, so that as much lies there as was counted.
    #[serde(skip)]
    litres: f64,
}

/// Which oil: kinds that differ are never loaded as one.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct OilKind {
    /// Its family: a key of the texts; none when that is not known.
    pub family: Option<String>,
    /// Its grade.
    pub grade: Option<String>,
}

/// One fluid over all trucks; compressor oil by its kind.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct ToLoad {
    /// Which fluid: a key of the texts.
    pub fluid: String,
    /// Of compressor oil, which.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub oil: Option<OilKind>,
    /// How much, quarts to the hundredth: "2.35 qt".
    pub volume: String,
    /// Whole jugs of one US gallon that hold it.
    pub jugs: u32,
}

/// The list for the next loading.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Stock {
    /// By door number, then fluid.
    pub rows: Vec<StockRow>,
    /// What to load in all, by fluid.
    pub to_load: Vec<ToLoad>,
}

/// What lies on every truck.
///
/// # Errors
/// As any read.
pub fn stock(ledger: &Ledger, now: Stamp) -> Result<Stock, ShopError> {
    let yard = Yard::of(ledger, ledger.fleet().yard_day(now), now)?;
    let mut rows = Vec::new();
    for (door, truck) in yard.units(ledger)? {
        rows.extend(of_unit(ledger, &yard, &door, truck)?);
    }
    let mut all: BTreeMap<(String, Option<OilKind>), f64> = BTreeMap::new();
    for row in &rows {
        *all.entry((row.fluid.clone(), row.oil.clone())).or_default() += row.litres;
    }
    let to_load = all.into_iter().filter(|(_, litres)| *litres > 0.0);
    let to_load = to_load.map(|((fluid, oil), litres)| ToLoad {
        fluid,
        oil,
        volume: quarts(litres),
        jugs: jugs(litres),
    });
    Ok(Stock { to_load: to_load.collect(), rows })
}

/// What lies on one truck.
///
/// # Errors
/// As any read.
pub(crate) fn of_unit(
    ledger: &Ledger,
    yard: &Yard,
    door: &str,
    truck: TruckId,
) -> Result<Vec<StockRow>, ShopError> {
    let mut counts: BTreeMap<String, (Stamp, f64)> = BTreeMap::new();
    for entry in newest(ledger, yard, truck, FactKind::StockCounted, COUNTS)? {
        let Fact::StockCounted(stock) = &entry.fact else { continue };
        let litres = stock.volume.litres().unwrap_or_default();
        counts.entry(key(&stock.fluid)).or_insert((entry.at, litres));
    }
    let recent = yard.cut_ms.saturating_sub(DAYS.saturating_mul(24 * 60 * 60 * 1_000));
    let mut poured: BTreeMap<String, f64> = counts.keys().map(|fluid| (fluid.clone(), 0.0)).collect();
    for entry in newest(ledger, yard, truck, FactKind::TopUp, POURS)? {
        let Fact::TopUp(top_up) = &entry.fact else { continue };
        let fluid = key(&top_up.fluid);
        let since = counts.get(&fluid).map_or(recent, |(at, _)| at.unix_ms());
        // Fuel and the like come out of no can: only what is counted, or oil, is told of.
        let told = counts.contains_key(&fluid) || top_up.fluid == Fluid::CompressorOil;
        if told && entry.at.unix_ms() > since {
            *poured.entry(fluid).or_default() += litres(top_up);
        }
    }
    let profile = ledger.fleet().set_on(truck).map(|set| &set.profile);
    let kind = profile.map(|profile| OilKind {
        family: profile.oil_family.as_ref().map(key),
        grade: profile.oil_grade.clone(),
    });
    let rows = poured.into_iter().map(|(fluid, poured)| {
        let counted = counts.get(&fluid).copied();
        let left = counted.map(|(_, litres)| (litres - poured).max(0.0));
        StockRow {
            unit: door.to_owned(),
            oil: kind.clone().filter(|_| fluid == key(&Fluid::CompressorOil)),
            counted: counted.map(|(_, litres)| quarts(litres)),
            counted_at: counted.map(|(at, _)| yard.stamp(at.moment())),
            poured: quarts(poured),
            left: left.map(quarts),
            // A hundredth of a quart more is the rounding of two units.
            more_than_counted: counted.is_some_and(|(_, litres)| poured > litres + 0.01),
            litres: poured,
            fluid,
        }
    });
    Ok(rows.collect())
}

/// Entries of one kind in a truck's books that count, up to the cut, newest first.
fn newest(
    ledger: &Ledger,
    yard: &Yard,
    truck: TruckId,
    kind: FactKind,
    most: i64,
) -> Result<Vec<Entry>, ShopError> {
    let truth = ledger.store().truth();
    let mut entries = Vec::new();
    for fact in truth.newest_facts_by(truck, kind.code().unwrap_or(0), yard.cut_ms, most)? {
        if fact.judged == Judged::Counts
            && let Some((_, entry)) = entry_of(&truth, fact.n)?
        {
            entries.push(entry);
        }
    }
    Ok(entries)
}

fn litres(top_up: &TopUp) -> f64 {
    top_up.pours.iter().filter_map(|pour| pour.volume.litres()).sum()
}

/// "3.79 qt".
fn quarts(litres: f64) -> String {
    let quart = Figure { digits: 1, places: 0, unit: Unit::Quart }.litres().unwrap_or(1.0);
    format!("{:.2} qt", litres / quart)
}

/// Records what lies on a truck.
///
/// # Errors
/// When nobody is named, or as any write.
pub fn count_stock(
    shop: &mut Shop,
    truck: TruckId,
    counted: StockCounted,
    hand: &Hand,
) -> Result<(), ShopError> {
    if hand.person.is_none() {
        return Err(ShopError::NoPerson);
    }
    shop.write(Some(truck), counted.into(), None, hand).map(|_| ())
}
