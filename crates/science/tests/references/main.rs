//! Every equation against values that come from outside this project.

mod ferment;
mod harness;
mod heat;
mod keeping;
mod leaven;
mod measure;
mod numeric;
mod nutrition;
mod sensory;
mod sugar;
