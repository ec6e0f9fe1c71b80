//! The messages of what is printed.

#[cfg(test)]
pub const PAPER: &[super::message::Message] = &[];
