//! The variants of a choice, listed so that none is left out.

/// Gives a type of variants without fields the list `ALL` of them, in the order written. A variant that is left out does not
/// compile.
#[macro_export]
macro_rules! all_variants {
    ($choice:ident: $($variant:ident),+ $(,)?) => {
        impl $choice {
            /// All of them, in their order.
            pub const ALL: [Self; [$($choice::$variant),+].len()] = [$($choice::$variant),+];
        }

        const _: fn($choice) = |($($choice::$variant)|+)| ();
    };
}
