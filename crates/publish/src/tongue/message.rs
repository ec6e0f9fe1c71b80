//! How a message gets its accessor: its name and what it is filled with are written once, and tests hold every
//! catalogue to them.

/// A message that a catalogue must have.
#[cfg(test)]
#[derive(Clone, Copy, Debug)]
pub struct Message {
    /// Its name there.
    pub id: &'static str,
    /// What it is filled with.
    pub takes: &'static [&'static str],
}

/// Messages with their accessors. A `count` chooses the plural and is never printed; texts are printed.
macro_rules! messages {
    ($list:ident { $($name:ident $(($($arg:ident: $kind:ty),+))?;)+ }) => {
        /// The messages of this part.
        #[cfg(test)]
        pub const $list: &[$crate::tongue::message::Message] = &[
            $($crate::tongue::message::Message { id: stringify!($name), takes: &[$($(stringify!($arg)),+)?] }),+
        ];

        impl $crate::tongue::Tongue {
            $($crate::tongue::message::messages!(@accessor $name $(($($arg: $kind),+))?);)+
        }
    };
    (@accessor $name:ident) => {
        pub(crate) fn $name(self) -> &'static str {
            self.catalogue.fixed(stringify!($name))
        }
    };
    (@accessor $name:ident ($($arg:ident: $kind:ty),+)) => {
        pub(crate) fn $name(self, $($arg: $kind),+) -> String {
            self.catalogue.filled(stringify!($name), &[$((stringify!($arg), $arg.into())),+])
        }
    };
}

pub(super) use messages;
