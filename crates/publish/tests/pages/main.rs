//! Pages of the demo book: what they show is what they state as data, and every reader can use them.

mod demo;
mod structured;
mod weights;
mod words;
