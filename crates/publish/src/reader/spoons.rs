//! Whose spoons and cups a reader may choose.

use crate::tongue::Tongue;
use crate::words::Units;
use formula::read::BookSettings;
use quantity::SpoonSystem;
use serde_json::{Value, json};

/// Every system by its name, in millilitre.
pub fn systems(tongue: Tongue) -> Value {
    let one = |system: &SpoonSystem| {
        let ml = |volume: quantity::Volume| volume.as_millilitres();
        let sizes = json!({
            "called": tongue.spoons(*system),
            "cup": ml(system.cup()), "tbsp": ml(system.tablespoon()), "tsp": ml(system.teaspoon()),
            "american": matches!(system, SpoonSystem::UsCustomary | SpoonSystem::UsLabel),
        });
        (system.name().to_owned(), sizes)
    };
    Value::Object(SpoonSystem::ALL.iter().map(one).collect())
}

/// What the page is printed in.
pub fn own(settings: &BookSettings) -> Value {
    let units = Units::of(settings);
    json!({ "household": units.household().name(), "american": units.is_american() })
}
