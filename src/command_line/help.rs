//! What `--help` says, in the chosen language. Commands and arguments are declared without words: theirs are the texts
//! `help-…` of the language files.

use clap::{Arg, ArgAction, Command};
use detent_content::{Texts, Value};

/// The commands with their words.
pub(super) fn in_words(commands: Command, texts: &Texts) -> Command {
    let about = texts.get("help-about");
    let more = format!("{about}\n\n{}", texts.get("help-about-more"));
    let version = option("version", ArgAction::Version, texts).short('V');
    let mut commands = told(
        commands.disable_version_flag(true).arg(version),
        None,
        texts,
    )
    .about(about)
    .long_about(more)
    .after_help(texts.get("help-exit-status"));
    commands.build();
    let options = format!("[{}]", texts.get("help-value-options"));
    used(commands, &options)
}

/// A command and those under it, with what is said of each and of its arguments.
fn told(command: Command, name: Option<&str>, texts: &Texts) -> Command {
    let help = option("help", ArgAction::Help, texts).short('h');
    let usage = texts.get("help-heading-usage");
    command
        .disable_help_flag(true)
        .help_template(format!(
            "{{about-with-newline}}\n{usage}: {{usage}}\n\n{{all-args}}{{after-help}}"
        ))
        .subcommand_help_heading(texts.get("help-heading-commands"))
        .subcommand_value_name(texts.get("help-value-command"))
        .arg(help)
        .mut_args(|argument| explained(argument, name, texts))
        .mut_subcommands(|command| {
            let name = match name {
                Some(above) => format!("{above}-{}", command.get_name()),
                None => command.get_name().to_owned(),
            };
            let about = texts.get(&format!("help-command-{name}"));
            told(command, Some(&name), texts).about(about)
        })
}

/// An option that every program has.
fn option(name: &'static str, action: ArgAction, texts: &Texts) -> Arg {
    Arg::new(name)
        .long(name)
        .action(action)
        .help(texts.get(&format!("help-option-{name}")))
}

/// An argument of this command: what it is for, what its value is called, and what it is when it is left out.
fn explained(argument: Arg, command: Option<&str>, texts: &Texts) -> Arg {
    if argument.is_hide_set() {
        return argument;
    }
    let own = command.map(|command| key(command, &argument));
    let of_several = || key("option", &argument);
    let help = texts.get(&own.filter(|own| texts.has(own)).unwrap_or_else(of_several));
    let takes_value = argument.get_action().takes_values();
    let default = argument.get_default_values().first();
    let help = match default.filter(|_| takes_value) {
        Some(default) => {
            let value = default.to_string_lossy().into_owned();
            let said = [("help", Value::from(help)), ("value", Value::from(value))];
            texts.with("help-default", &said)
        }
        None => help,
    };
    let heading = match argument.is_positional() {
        true => "help-heading-arguments",
        false => "help-heading-options",
    };
    let named: Vec<String> = (argument.get_value_names().unwrap_or_default().iter())
        .map(|name| texts.get(&format!("help-value-{}", hyphened(name))))
        .collect();
    let argument = argument.help(help).help_heading(texts.get(heading));
    if !takes_value {
        return argument;
    }
    let argument = argument.hide_default_value(true).hide_env(true);
    if named.is_empty() {
        argument
    } else {
        argument.value_names(named)
    }
}

/// Key of what an argument is for, under a command or under what several have in common.
fn key(under: &str, argument: &Arg) -> String {
    format!("help-{under}-{}", hyphened(argument.get_id().as_str()))
}

fn hyphened(name: &str) -> String {
    name.to_lowercase().replace('_', "-")
}

/// The line of usage of every command, with the language's word for its options.
fn used(command: Command, options: &str) -> Command {
    let mut command = command.mut_subcommands(|command| used(command, options));
    let line = command.render_usage().to_string();
    let line = line
        .split_once(": ")
        .map_or(line.as_str(), |(_, line)| line);
    let line = line.replace("[OPTIONS]", options);
    command.override_usage(line)
}

#[cfg(test)]
mod tests {
    use super::super::Cli;
    use super::*;
    use clap::CommandFactory;
    use detent_content::Language;
    use std::collections::BTreeSet;

    /// What is printed for these arguments.
    fn printed(args: &[&str], language: Language) -> String {
        let commands = in_words(Cli::command(), &Texts::load(language));
        let args = [&["detent"], args].concat();
        let asked = commands.try_get_matches_from(args);
        asked.expect_err("it is printed").to_string()
    }

    /// Every command with its arguments as they are declared, and how it is called, none for the program itself.
    fn every_command() -> Vec<(Vec<String>, Command)> {
        let mut every = vec![(Vec::new(), Cli::command())];
        let mut looked_into = 0;
        while let Some((called, command)) = every.get(looked_into).cloned() {
            let below = command.get_subcommands();
            every.extend(below.map(|below| {
                let called = [&called[..], &[below.get_name().to_owned()]].concat();
                (called, below.clone())
            }));
            looked_into += 1;
        }
        every
    }

    /// What is printed for the help of a command.
    fn help_of(called: &[String], language: Language) -> String {
        let called = called.iter().map(String::as_str);
        let args: Vec<&str> = called.chain(["--help"]).collect();
        printed(&args, language)
    }

    #[test]
    fn every_command_and_argument_is_explained_in_both_languages() {
        for language in Language::ALL {
            let texts = Texts::load(language);
            for (called, command) in every_command() {
                let name = &called.join("-");
                let told = help_of(&called, language);
                assert!(!told.contains(['‹', '{']), "{told}");
                for argument in command.get_arguments().filter(|arg| !arg.is_hide_set()) {
                    let own = key(name, argument);
                    let of_several = key("option", argument);
                    let key = [own, of_several].into_iter().find(|key| texts.has(key));
                    let key = key.unwrap_or_else(|| panic!("{name}: {argument} is not explained"));
                    // Lines are broken where they are too long.
                    let words = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
                    assert!(
                        words(&told).contains(&words(&texts.get(&key))),
                        "{key}: {told}"
                    );
                }
            }
        }
    }

    #[test]
    fn nothing_of_the_help_is_left_in_english() {
        for (called, _) in every_command() {
            let told = help_of(&called, Language::Es);
            for english in [
                "Usage",
                "Options",
                "OPTIONS",
                "Commands",
                "COMMAND",
                "Arguments",
                "Print",
                "[default",
                "the ",
            ] {
                assert!(!told.contains(english), "{english}: {told}");
            }
            assert!(told.contains("Uso: detent"), "{told}");
        }
        let told = printed(&["play", "--help"], Language::Es);
        assert!(
            told.contains("Uso: detent play [OPCIONES] <TRABAJO> <GUION>"),
            "{told}"
        );
        let told = printed(&["jobs", "--help"], Language::En);
        assert!(told.contains("[default: 24]"), "{told}");
    }

    /// What no command has is no text of the help.
    /// With every command there is.
    #[cfg(feature = "class")]
    #[test]
    fn every_text_of_the_help_is_used() {
        let texts = include_str!("../../assets/lang/en.ftl");
        let keys = texts.lines().filter_map(|line| line.split_once(" = "));
        let kept: BTreeSet<&str> = (keys.map(|(key, _)| key))
            .filter(|key| key.starts_with("help-"))
            .collect();
        let general = ["about", "about-more", "default", "exit-status"];
        let mut used: BTreeSet<String> =
            (general.iter().map(|key| format!("help-{key}"))).collect();
        used.extend(
            ["arguments", "commands", "options", "usage"].map(|key| format!("help-heading-{key}")),
        );
        used.extend(["help", "version"].map(|key| format!("help-option-{key}")));
        used.extend(["command", "options"].map(|key| format!("help-value-{key}")));
        for (called, command) in every_command() {
            let name = &called.join("-");
            used.insert(format!("help-command-{name}"));
            for argument in command.get_arguments() {
                used.extend([key(name, argument), key("option", argument)]);
                let names = argument.get_value_names().unwrap_or_default().iter();
                used.extend(names.map(|name| format!("help-value-{}", hyphened(name))));
            }
        }
        let unused: Vec<&&str> = kept.iter().filter(|key| !used.contains(**key)).collect();
        assert!(unused.is_empty(), "{unused:?}");
    }
}
