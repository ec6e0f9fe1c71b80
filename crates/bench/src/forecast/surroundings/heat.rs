//! What a kitchen heats with, as the forecast sees it.

use super::measured;
use formula::read::{Fryer, HeatsBy, Kitchen, Material, Oven, Pan, Vessel};
use formula::{Known, Step};
use quantity::{Between, HeatCapacity, Length, Power, Temperature, TimeSpan};
use science::sugar::boil_off::Hob;

/// Rings, oven and fryer.
#[derive(Clone, Debug)]
pub struct Heat {
    /// The ring that syrups and stews stand on.
    pub ring: Ring,
    /// Whether the oven has a fan.
    pub fan: Known<bool>,
    oven: Option<Oven>,
    /// The fryer, if one is stated.
    pub fryer: Option<Fryer>,
    /// How hot a pan's surface gets, by the mark of the knob; the coolest first.
    pub dial: Vec<(String, Temperature)>,
    /// The kitchen's title, where figures of the oven come from.
    title: String,
}

/// A ring and the pans that stand on it.
#[derive(Clone, Debug)]
pub struct Ring {
    /// How it heats.
    pub heats_by: Known<HeatsBy>,
    /// What it takes up.
    pub power: Known<Power>,
    /// How wide the narrowest pan is, which is the one that a syrup is taken for.
    pub across: Known<Length>,
    pans: Vec<Pan>,
}

impl Ring {
    /// How wide the pan is that a step names among its equipment, or else the narrowest.
    #[must_use]
    pub fn across(&self, step: &Step) -> Known<Length> {
        let named = |pan: &&Pan| step.equipment.iter().any(|one| one.to_lowercase().contains(&pan.title.to_lowercase()));
        let pan = self.pans.iter().find(named).map(|pan| pan.across);
        pan.map_or_else(|| self.across.clone(), |across| Known { value: across, ..self.across.clone() })
    }

    /// The power that arrives in the pan.
    #[must_use]
    pub fn arriving(&self) -> Between<Power> {
        let hob = match self.heats_by.value {
            HeatsBy::Gas => Hob::Gas,
            HeatsBy::Plate => Hob::Plate,
            HeatsBy::Induction => Hob::Induction,
        };
        hob.efficiency().map(|share| self.power.value * share.as_ratio())
    }
}

impl Heat {
    /// What a kitchen states, with the usual figures where it states none.
    #[must_use]
    pub fn of(kitchen: &Kitchen) -> Self {
        let practice = "common practice, no source";
        let hob = kitchen.hob.as_ref();
        let heats_by = hob.and_then(|hob| hob.heats_by);
        let power = hob.and_then(|hob| hob.power);
        let across = kitchen.pans.iter().map(|pan| pan.across).min_by(|a, b| a.as_millimetres().total_cmp(&b.as_millimetres()));
        let mut dial = hob.map(|hob| hob.dial.clone()).unwrap_or_default();
        dial.sort_by(|a, b| a.1.as_celsius().total_cmp(&b.1.as_celsius()));
        Self {
            ring: Ring {
                heats_by: heats_by.map_or_else(|| Known::assumed(HeatsBy::Plate, practice), |by| measured(kitchen, by)),
                power: power.map_or_else(|| Known::assumed(Power::kilowatts(1.8), practice), |power| measured(kitchen, power)),
                across: across
                    .map_or_else(|| Known::assumed(Length::millimetres(240.0), practice), |across| measured(kitchen, across)),
                pans: kitchen.pans.clone(),
            },
            fan: match &kitchen.oven {
                Some(oven) => measured(kitchen, oven.fan),
                None => Known::assumed(false, practice),
            },
            oven: kitchen.oven.clone(),
            fryer: kitchen.fryer.clone(),
            dial,
            title: kitchen.title.clone(),
        }
    }

    /// How hot the oven really is at a setting: between the settings that were measured, and beyond them as far
    /// off as the nearest.
    #[must_use]
    pub fn really(&self, set: Temperature) -> Known<Temperature> {
        let real = self.oven.as_ref().map_or(&[][..], |oven| &oven.real);
        let celsius = |t: Temperature| t.as_celsius();
        let (Some(first), Some(last)) = (real.first(), real.last()) else {
            return Known::assumed(set, "an oven as hot as it is set");
        };
        let off = |(set, real): &(Temperature, Temperature)| celsius(*real) - celsius(*set);
        let off = match real.iter().position(|(point, _)| *point >= set) {
            Some(0) => off(first),
            None => off(last),
            Some(n) => {
                let (low, high) = (&real[n - 1], &real[n]);
                let width = celsius(high.0) - celsius(low.0);
                let share = if width > 0.0 { (celsius(set) - celsius(low.0)) / width } else { 0.0 };
                off(low) + share * (off(high) - off(low))
            }
        };
        let value = Temperature::celsius(celsius(set) + off);
        Known { value, band: None, origin: formula::Origin::Measured(self.title.clone()) }
    }

    /// How far the oven falls when it is loaded, in kelvin, and how long it takes to come back.
    #[must_use]
    pub fn recovery(&self) -> Known<(f64, TimeSpan)> {
        let usual = (25.0, TimeSpan::minutes(6.0));
        let stated = self.oven.as_ref().filter(|oven| oven.falls_by.is_some() || oven.recovers_in.is_some());
        match stated {
            Some(oven) => Known {
                value: (oven.falls_by.map_or(usual.0, |by| by.as_kelvins()), oven.recovers_in.unwrap_or(usual.1)),
                band: None,
                origin: formula::Origin::Measured(self.title.clone()),
            },
            None => Known::assumed(usual, "common practice, no source"),
        }
    }

    /// The mark of the knob whose surface comes nearest to a temperature.
    #[must_use]
    pub fn mark(&self, wanted: Temperature) -> Option<&(String, Temperature)> {
        let apart = |t: Temperature| (t.as_celsius() - wanted.as_celsius()).abs();
        self.dial.iter().min_by(|a, b| apart(a.1).total_cmp(&apart(b.1)))
    }
}

/// The heat that a vessel takes up for each kelvin, if its weight is stated. Specific heats of the materials
/// from memory, as handbooks of heat transfer tabulate them at 300 K.
pub fn capacity(vessel: &Vessel) -> Option<HeatCapacity> {
    let specific = match vessel.material {
        Some(Material::CastIron) => 460.0,
        Some(Material::Aluminium) => 900.0,
        Some(Material::Copper) => 385.0,
        Some(Material::Glass) => 835.0,
        Some(Material::Ceramic) => 880.0,
        Some(Material::Plastic) => 1900.0,
        Some(Material::Wood) => 2000.0,
        Some(Material::Steel) | None => 480.0,
    };
    Some(HeatCapacity::joules_per_kelvin(vessel.weighs?.as_kilograms() * specific))
}
