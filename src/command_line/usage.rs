//! Wrong use of the command line, in the chosen language.

use clap::error::{ContextKind, ContextValue, ErrorKind};
use detent_content::Texts;
use detent_simulation::units::UnknownName;
use std::error::Error;

/// What is wrong with the arguments, and how the command is used; none for help and version, which are not wrong.
pub(super) fn words(error: &clap::Error, texts: &Texts) -> Option<String> {
    let of = |kind| error.get(kind).map(named).unwrap_or_default();
    let (argument, value) = (of(ContextKind::InvalidArg), of(ContextKind::InvalidValue));
    let with = |key: &str, args: &[(&str, &String)]| {
        let args: Vec<_> = (args.iter())
            .map(|(name, value)| (*name, value.as_str().into()))
            .collect();
        texts.with(key, &args)
    };
    let of_value = |key| with(key, &[("argument", &argument), ("value", &value)]);
    let told = match error.kind() {
        ErrorKind::DisplayHelp
        | ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand
        | ErrorKind::DisplayVersion => return None,
        ErrorKind::UnknownArgument => with("cli-usage-no-argument", &[("argument", &argument)]),
        ErrorKind::InvalidSubcommand => {
            let command = of(ContextKind::InvalidSubcommand);
            with("cli-usage-no-command", &[("command", &command)])
        }
        ErrorKind::MissingSubcommand => {
            let known = of(ContextKind::ValidSubcommand);
            with("cli-usage-missing", &[("arguments", &known)])
        }
        ErrorKind::MissingRequiredArgument => {
            with("cli-usage-missing", &[("arguments", &argument)])
        }
        ErrorKind::ArgumentConflict => match of(ContextKind::PriorArg) {
            other if other == argument => with("cli-usage-twice", &[("argument", &argument)]),
            other => with(
                "cli-usage-conflict",
                &[("argument", &argument), ("other", &other)],
            ),
        },
        ErrorKind::InvalidValue if value.is_empty() => {
            with("cli-usage-needs-value", &[("argument", &argument)])
        }
        ErrorKind::InvalidValue => of_value("cli-usage-no-value"),
        ErrorKind::ValueValidation => match taken(error) {
            Some(taken) => with(
                "cli-usage-range",
                &[
                    ("argument", &argument),
                    ("range", &taken),
                    ("value", &value),
                ],
            ),
            None => of_value("cli-usage-no-value"),
        },
        ErrorKind::TooManyValues => of_value("cli-usage-takes-none"),
        ErrorKind::InvalidUtf8 => texts.get("cli-usage-not-text"),
        // What no command of this program asks for, or a later clap finds.
        other => with("cli-usage-other", &[("problem", &other.to_string())]),
    };
    let usage = of(ContextKind::Usage);
    Some(match usage.split_once(':') {
        Some((_, usage)) => {
            // One line, also where clap breaks it.
            let usage: Vec<&str> = usage.split_whitespace().collect();
            format!(
                "{told} {}",
                with("cli-usage", &[("usage", &usage.join(" "))])
            )
        }
        None => told,
    })
}

/// A piece of what is wrong.
fn named(value: &ContextValue) -> String {
    match value {
        ContextValue::Strings(all) => all.join(", "),
        one => one.to_string(),
    }
}

/// What would have been taken: the names that there are, or the range that a number is outside of, such as `1..=10`.
fn taken(error: &clap::Error) -> Option<String> {
    let source = error.source()?;
    if let Some(unknown) = source.downcast_ref::<UnknownName>() {
        return (!unknown.names.is_empty()).then(|| unknown.names.join(", "));
    }
    let told = source.to_string();
    let (_, range) = told.rsplit_once(" is not in ")?;
    Some(range.to_owned())
}

#[cfg(test)]
mod tests {
    use super::super::Cli;
    use super::*;
    use clap::Parser;
    use detent_content::Language;

    /// What is told of these arguments holds each of `named`, in both languages, which differ.
    #[track_caller]
    fn check(args: &[&str], named: &[&str]) {
        let args = [&["detent"], args].concat();
        let error = Cli::try_parse_from(&args).expect_err("wrong use");
        let told = [Language::En, Language::Es].map(|language| {
            let told = words(&error, &Texts::load(language)).expect("something is wrong");
            for named in named {
                assert!(told.contains(named), "{named} is not in: {told}");
            }
            assert!(!told.contains(['‹', '{']), "{told}");
            told
        });
        assert_ne!(told[0], told[1]);
    }

    #[test]
    fn wrong_use_is_told_in_both_languages_with_what_was_typed() {
        check(&["play", "--sed"], &["--sed"]);
        check(&["plya"], &["plya"]);
        check(&["play", "drain-code"], &["<SCRIPT>"]);
        check(&["course", "--lang", "en"], &["pack", "open", "check"]);
        check(&["course", "pak"], &["pak"]);
        check(&["play", "a", "b", "--resume"], &["--save"]);
        check(&["play", "a", "b", "--seed", "x"], &["--seed", "x"]);
        check(&["play", "a", "b", "--seed"], &["--seed"]);
        check(
            &["play", "a", "b", "--seed", "1", "--seed", "2"],
            &["--seed"],
        );
        check(&["play", "a", "b", "--json=yes"], &["--json", "yes"]);
        check(
            &["play", "a", "b", "--seed", "1", "--call-back", "c"],
            &["--seed", "--call-back"],
        );
        check(&["simulate", "a", "--seconds", "0"], &["--seconds", "1..="]);
        #[cfg(feature = "class")]
        check(
            &["class", "--drill", "lamps"],
            &["--drill", "lamps", "lamp-reading, "],
        );
    }

    #[test]
    fn help_and_version_are_not_wrong() {
        for asked in ["--help", "--version"] {
            let error = Cli::try_parse_from(["detent", asked]).expect_err("it is printed");
            assert_eq!(words(&error, &Texts::load(Language::Es)), None);
        }
    }
}
