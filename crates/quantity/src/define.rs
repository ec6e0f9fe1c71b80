//! One line a unit: the macro behind every plain quantity.

/// Defines a quantity stored as one `f64`, with its constructors, readers and arithmetic.
macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident { $($(#[$unit_doc:meta])* $from:ident, $into:ident: $factor:expr;)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);
            $(
                $(#[$unit_doc])*
                #[must_use]
                pub const fn $from(value: f64) -> Self { Self(value * $factor) }
                /// The value in the unit of the name.
                #[must_use]
                pub const fn $into(self) -> f64 { self.0 / $factor }
            )+
            /// Whether the value is an ordinary number.
            #[must_use]
            pub const fn is_finite(self) -> bool { self.0.is_finite() }
            /// The larger of two.
            #[must_use]
            pub const fn max(self, other: Self) -> Self { Self(self.0.max(other.0)) }
            /// The smaller of two.
            #[must_use]
            pub const fn min(self, other: Self) -> Self { Self(self.0.min(other.0)) }
            /// The value without its sign.
            #[must_use]
            pub const fn abs(self) -> Self { Self(self.0.abs()) }
        }
        $crate::define::arithmetic!($name);
    };
}

/// Sums, multiples and ratios of like with like.
macro_rules! arithmetic {
    ($name:ident) => {
        impl std::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }
        impl std::ops::Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }
        impl std::ops::AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                self.0 += other.0;
            }
        }
        impl std::ops::Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }
        impl std::ops::Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }
        impl std::ops::Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }
        impl std::ops::Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }
        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
                items.fold(Self(0.0), |a, b| a + b)
            }
        }
    };
}

pub(crate) use {arithmetic, quantity};
