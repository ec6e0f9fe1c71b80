//! The messages of what is printed.
