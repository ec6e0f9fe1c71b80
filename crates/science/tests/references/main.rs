//! Every equation against values that come from outside this project.
#![allow(clippy::disallowed_methods)] // Tests open files as the world does.

mod constants;
mod ferment;
mod harness;
mod heat;
mod keeping;
mod leaven;
mod measure;
mod numeric;
mod nutrition;
mod published;
mod sensory;
mod sugar;
