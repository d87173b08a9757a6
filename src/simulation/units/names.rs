//! Plain enums with a fixed name for each value, as files, text keys and scripts use them.

/// Makes a plain enum with a list of all its values and a fixed lower-case name for each.
#[macro_export]
macro_rules! names {
    ($(#[$meta:meta])* $name:ident { $($(#[$vmeta:meta])* $variant:ident = $text:literal),+ $(,)? }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, ::serde::Serialize, ::serde::Deserialize)]
        pub enum $name { $($(#[$vmeta])* $variant),+ }

        impl $name {
            /// Every value, in order.
            pub const ALL: &'static [$name] = &[$($name::$variant),+];

            /// The fixed name used in files, text keys and scripts.
            pub const fn name(self) -> &'static str {
                match self { $($name::$variant => $text),+ }
            }

            /// Position in [`Self::ALL`].
            pub const fn index(self) -> usize {
                self as usize
            }
        }

        impl ::std::str::FromStr for $name {
            type Err = $crate::units::UnknownName;
            fn from_str(text: &str) -> Result<Self, $crate::units::UnknownName> {
                Self::ALL.iter().copied().find(|v| v.name() == text)
                    .ok_or_else(|| $crate::units::UnknownName { kind: stringify!($name), text: text.to_owned() })
            }
        }

        impl ::std::fmt::Display for $name {
            fn fmt(&self, f: &mut ::std::fmt::Formatter<'_>) -> ::std::fmt::Result {
                f.write_str(self.name())
            }
        }
    };
}

/// A name that stands for nothing in this machine.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("no {kind} is called \"{text}\"")]
pub struct UnknownName {
    /// What was looked for.
    pub kind: &'static str,
    /// The name as written.
    pub text: String,
}
