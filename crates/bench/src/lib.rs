//! A formula in a kitchen: what its scales can show, what must be minded, and (as the room grows)
//! what the dough will do there.

pub mod cautions;
pub mod forecast;
pub mod rules;
pub mod target;
pub mod weighing;
