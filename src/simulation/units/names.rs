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
                    .ok_or_else(|| $crate::units::UnknownName { kind: stringify!($name), text: text.to_owned(), names: &[$($text),+] })
            }
        }

        impl ::std::fmt::Display for $name {
            fn fmt(&self, f: &mut ::std::fmt::Formatter<'_>) -> ::std::fmt::Result {
                f.write_str(self.name())
            }
        }
    };
}

/// Writes a value of [`names!`](crate::names) into a file by its fixed name: `#[serde(with = "by_name")]`.
pub mod by_name {
    use super::UnknownName;
    use serde::{Deserialize, Deserializer, Serializer, de::Error};
    use std::fmt::Display;
    use std::str::FromStr;

    /// Writes the name.
    ///
    /// # Errors
    /// Those of the serializer.
    pub fn serialize<T: Display, S: Serializer>(value: &T, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(value)
    }

    /// Reads a name.
    ///
    /// # Errors
    /// It is no text, or no value has this name.
    pub fn deserialize<'de, T, D>(from: D) -> Result<T, D::Error>
    where
        T: FromStr<Err = UnknownName>,
        D: Deserializer<'de>,
    {
        let text = String::deserialize(from)?;
        (text.parse())
            .map_err(|unknown: UnknownName| D::Error::unknown_variant(&unknown.text, unknown.names))
    }
}

/// A name that stands for nothing in this machine.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("no {kind} is called \"{text}\"")]
pub struct UnknownName {
    /// What was looked for.
    pub kind: &'static str,
    /// The name as written.
    pub text: String,
    /// The names that exist, where they are few enough to list.
    pub names: &'static [&'static str],
}
