//! The messages of labels.
