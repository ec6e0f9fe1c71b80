//! The figures that a reformulation can aim at: shares of all flour, each a sum over the lines.

use formula::Ingredient;
use formula::arithmetic::Figures;
use formula::ingredient::Figure;
use formula::read::Group;
use quantity::Fraction;

/// A figure that can be aimed at.
pub struct Aim {
    /// Its name.
    pub name: &'static str,
    /// Whether it counts the flours or everything else.
    pub of_flour: bool,
    /// What a gram of an ingredient brings to it; none where no source says.
    pub brings: fn(&Ingredient) -> Option<f64>,
    /// The same figure as the sheet works it out.
    pub on_the_sheet: fn(&Figures) -> Fraction,
}

/// Every figure; a line more for each.
pub static ALL: &[Aim] = &[
    Aim {
        name: "hydration",
        of_flour: false,
        brings: |one| whole(one.is_water()),
        on_the_sheet: |sheet| sheet.nominal_hydration,
    },
    Aim { name: "true-hydration", of_flour: false, brings: water, on_the_sheet: |sheet| sheet.true_hydration.value },
    Aim { name: "salt", of_flour: false, brings: |one| whole(one.group == Group::Salt), on_the_sheet: |sheet| sheet.salt },
    Aim { name: "sugars", of_flour: false, brings: |one| holds(one, Figure::Sugars), on_the_sheet: |sheet| sheet.sugars.value },
    Aim { name: "fat", of_flour: false, brings: |one| holds(one, Figure::Fat), on_the_sheet: |sheet| sheet.fat.value },
    Aim { name: "egg", of_flour: false, brings: |one| whole(one.group == Group::Egg), on_the_sheet: |sheet| sheet.egg },
    Aim {
        name: "protein",
        of_flour: true,
        brings: |one| holds(one, Figure::Protein),
        on_the_sheet: |sheet| sheet.flour_protein.value,
    },
];

fn whole(counts: bool) -> Option<f64> {
    Some(if counts { 1.0 } else { 0.0 })
}

fn holds(one: &Ingredient, figure: Figure) -> Option<f64> {
    one.composition.share(figure).map(Fraction::as_ratio)
}

fn water(one: &Ingredient) -> Option<f64> {
    if one.is_water() { Some(1.0) } else { holds(one, Figure::Water) }
}
