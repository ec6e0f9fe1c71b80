//! The messages of labels.

#[cfg(test)]
pub const LABEL: &[super::message::Message] = &[];
