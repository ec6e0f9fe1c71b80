//! Catalogues are whole.
