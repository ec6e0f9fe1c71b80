//! Every figure of a page that grows with a line, under the key by which the page finds it.

use super::size::weighs;
use crate::needs::needs;
use crate::page::figure::line_key;
use crate::words::Units;
use formula::Formula;
use formula::arithmetic::{figures, overall};
use formula::read::EggSize;
use quantity::{Fraction, Mass};
use std::collections::BTreeMap;

/// Gram of lines, needs and cells of the table; percent of its shares and figures.
pub fn by_key(formula: &Formula) -> BTreeMap<String, f64> {
    let [raw, done] = weighs(formula);
    let mut all = BTreeMap::from([("raw".to_owned(), raw), ("done".to_owned(), done)]);
    for (c, component) in formula.components.iter().enumerate() {
        for (s, stage) in component.stages.iter().enumerate() {
            all.extend(stage.lines.iter().enumerate().map(|(l, line)| (line_key(c, s, l), line.mass.value.as_grams())));
        }
        let needs = needs(formula, c, Units::default(), EggSize::M);
        all.extend(needs.iter().enumerate().map(|(n, need)| (format!("n.{c}.{n}"), need.mass.as_grams())));
        of_table(&mut all, formula, c);
    }
    all
}

fn of_table(all: &mut BTreeMap<String, f64>, formula: &Formula, c: usize) {
    let overall = overall(formula, c);
    let mut put = |key: String, value: f64| {
        all.insert(key, value);
    };
    for (r, row) in overall.rows.iter().enumerate() {
        put(format!("t.{c}.{r}"), row.mass.as_grams());
        put(format!("p.{c}.{r}"), row.percent.map_or(0.0, Fraction::as_percent));
        for (s, mass) in row.by_stage.iter().enumerate() {
            put(format!("t.{c}.{r}.{s}"), mass.as_grams());
        }
    }
    put(format!("t.{c}.all"), overall.total.as_grams());
    put(format!("p.{c}.all"), overall.percent().as_percent());
    for s in 0..formula.components[c].stages.len() {
        put(format!("t.{c}.all.{s}"), overall.rows.iter().map(|row| row.by_stage[s]).sum::<Mass>().as_grams());
    }
    let Some(figures) = figures(&overall) else { return };
    let told = [
        ("water", figures.nominal_hydration),
        ("all-water", figures.true_hydration.value),
        ("salt", figures.salt),
        ("sugars", figures.sugars.value),
        ("fat", figures.fat.value),
    ];
    for (name, share) in told {
        put(format!("f.{c}.{name}"), share.as_percent());
    }
}
