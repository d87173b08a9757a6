//! `detent names`: what a file may say.

use super::output::Output;
use super::reference::model::{Body, Field, FileReference, Holds};
use super::reference::words::value_words;
use super::{Failure, LibraryFolder};
use detent_content::{ContentLibrary, FileKind, Language, Texts};
use detent_simulation::controller::{Monitor, Routine, Stage};
use detent_simulation::interface::{Component, Terminal};
use detent_simulation::names;
use detent_simulation::plant::{FaultKind, PresenceKind};
use detent_training::bench::{Advice, MeterMode};
use schemars::JsonSchema;
use serde::Serialize;

names! {
    /// What can be listed. Its text is `names-{name}`.
    NameKind {
        /// Pieces of advice in a report.
        Advice = "advice",
        /// Boards.
        Boards = "boards",
        /// Codes of a board.
        Codes = "codes",
        /// Components.
        Components = "components",
        /// Failure modes.
        Faults = "faults",
        /// Fields of files, by kind of file and type.
        Fields = "fields",
        /// Goals of a guide's steps.
        GuideGoals = "guide-goals",
        /// Kinds of failure modes, for a draw.
        Kinds = "kinds",
        /// Settings of the meter.
        MeterModes = "meter-modes",
        /// Watches that a control keeps.
        Monitors = "monitors",
        /// Parts at the counter.
        Parts = "parts",
        /// When a fault is there, for a draw.
        Presences = "presences",
        /// Routines of service mode.
        Routines = "routines",
        /// Stages of recalibration.
        Stages = "stages",
        /// Terminals.
        Terminals = "terminals",
    }
}

#[derive(Debug, clap::Args)]
pub(super) struct NamesArgs {
    #[arg(value_name = "KIND")]
    kind: Option<NameKind>,
    #[arg(long, default_value = "arc-dial")]
    board: String,
    #[arg(long, requires = "kind")]
    json: bool,
}

/// Version of what `--json` prints.
const VERSION: u32 = 1;

/// Lists what a file may say, or the kinds that can be listed.
pub(super) fn names(
    args: &NamesArgs,
    library: &LibraryFolder,
    language: Language,
) -> Result<(), Failure> {
    let mut out = Output::standard();
    let texts = Texts::load(language);
    let Some(kind) = args.kind else {
        return NameKind::ALL.iter().try_for_each(|kind| {
            let told = texts.get(&format!("names-{kind}"));
            out.line(format!("{:<12} {told}", kind.name()))
        });
    };
    let content_library = library.open()?;
    let board = match kind {
        NameKind::Codes => Some(args.board.as_str()),
        _ => None,
    };
    let names = list(kind, &content_library, board)?;
    if args.json {
        return out.json(&Told {
            version: VERSION,
            kind: kind.name(),
            names,
        });
    }
    let widest = names.iter().map(|name| name.name.chars().count()).max();
    let width = widest.unwrap_or(0).max(28);
    names.iter().try_for_each(|name| {
        let said = match language {
            Language::En => &name.en,
            Language::Es => &name.es,
        };
        out.line(format!("{:<width$} {said}", name.name))
    })
}

/// Everything of this kind; codes are those of `board`.
fn list(
    kind: NameKind,
    content_library: &ContentLibrary,
    board: Option<&str>,
) -> Result<Vec<ToldName>, Failure> {
    let [en, es] = [Language::En, Language::Es].map(Texts::load);
    let row = |name: String, said: &dyn Fn(&Texts) -> String| ToldName {
        name,
        en: said(&en),
        es: said(&es),
    };
    let text = |name: String, key: String| row(name, &|texts| texts.get(&key));
    Ok(match kind {
        NameKind::Advice => (Advice::ALL.iter())
            .map(|advice| text(format!("{advice:?}"), format!("advice-{advice}")))
            .collect(),
        NameKind::Boards => (content_library.boards.iter())
            .map(|board| text(board.id.clone(), board.name.clone()))
            .collect(),
        NameKind::Codes => {
            let board = super::sheet::board(content_library, board.unwrap_or_default())?;
            let codes = board.codes.iter();
            codes
                .map(|code| text(code.code.to_string(), format!("code-{}", code.monitor)))
                .collect()
        }
        NameKind::Components => (Component::ALL.iter())
            .map(|component| row(format!("{component:?}"), &|t| t.component(*component)))
            .collect(),
        NameKind::Faults => (content_library.catalogue.modes.iter())
            .map(|mode| row(mode.id.clone(), &|texts| texts.mode(&mode.id)))
            .collect(),
        NameKind::Fields => (FileKind::ALL.iter())
            .flat_map(|kind| fields(*kind))
            .map(|(name, field)| {
                let said =
                    |texts: &Texts| value_words(&field, texts, &str::to_owned, &str::to_owned);
                row(name, &said)
            })
            .collect(),
        NameKind::GuideGoals => {
            let guide = FileReference::of(FileKind::Guide);
            let goals = [("Bench", "BenchGoal"), ("Window", "WindowGoal")].into_iter();
            goals
                .filter_map(|(seen_by, goals)| Some((seen_by, guide.cases(goals)?)))
                .flat_map(|(seen_by, goals)| goals.iter().map(move |goal| (seen_by, goal)))
                .map(|(seen_by, goal)| {
                    let holds = match goal.holds {
                        Holds::Nothing => "",
                        Holds::Value(..) | Holds::Fields(_) => "(…)",
                    };
                    let key = format!("reference-goal-{}", hyphened(&goal.name));
                    text(format!("{seen_by}({}{holds})", goal.name), key)
                })
                .collect()
        }
        NameKind::Kinds => (FaultKind::ALL.iter())
            .map(|kind| text(format!("{kind:?}"), format!("fault-kind-{kind}")))
            .collect(),
        NameKind::MeterModes => MeterMode::all()
            .map(|mode| row(format!("{mode:?}"), &|texts| texts.meter_mode(mode)))
            .collect(),
        NameKind::Monitors => (Monitor::ALL.iter())
            .map(|monitor| text(format!("{monitor:?}"), format!("code-{monitor}")))
            .collect(),
        NameKind::Parts => (content_library.parts.parts.iter())
            .map(|part| text(part.number.clone(), part.name_key.clone()))
            .collect(),
        NameKind::Presences => (PresenceKind::ALL.iter())
            .map(|presence| {
                text(
                    format!("{presence:?}"),
                    format!("fault-presence-{presence}"),
                )
            })
            .collect(),
        NameKind::Routines => (Routine::ALL.iter())
            .map(|routine| text(format!("{routine:?}"), format!("routine-{routine}")))
            .collect(),
        NameKind::Stages => (Stage::ALL.iter())
            .map(|stage| text(format!("{stage:?}"), format!("stage-{stage}")))
            .collect(),
        // Terminals are called by component and number in every language.
        NameKind::Terminals => (Terminal::ALL.iter())
            .map(|terminal| row(format!("{terminal:?}"), &|_| terminal.to_string()))
            .collect(),
    })
}

/// Every field of a kind of file, by the file, the type and the case in which it stands.
fn fields(kind: FileKind) -> Vec<(String, Field)> {
    let mut named = Vec::new();
    for (n, of) in FileReference::of(kind).types.into_iter().enumerate() {
        let path = match n {
            0 => kind.name().to_owned(),
            _ => format!("{kind}.{}", of.name),
        };
        let mut add = |path: &str, fields: Vec<Field>| {
            let fields = fields.into_iter();
            named.extend(fields.map(|field| (format!("{path}.{}", field.name), field)));
        };
        match of.body {
            Body::Fields(fields) => add(&path, fields),
            Body::Cases(cases) => {
                for case in cases {
                    if let Holds::Fields(fields) = case.holds {
                        add(&format!("{path}.{}", case.name), fields);
                    }
                }
            }
            Body::Texts(_) => {}
        }
    }
    named
}

/// The name of a case as keys of texts have it.
fn hyphened(case: &str) -> String {
    let mut hyphened = String::new();
    for c in case.chars() {
        if c.is_uppercase() && !hyphened.is_empty() {
            hyphened.push('-');
        }
        hyphened.extend(c.to_lowercase());
    }
    hyphened
}

/// A list, for other programs.
#[derive(Serialize, JsonSchema)]
#[schemars(title = "List of `detent names KIND --json`")]
#[serde(deny_unknown_fields)]
struct Told {
    /// Version of this format.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// What is listed.
    kind: &'static str,
    /// Every one of it.
    names: Vec<ToldName>,
}

/// One name.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldName {
    /// As files write it.
    name: String,
    /// What it means, in English.
    en: String,
    /// In Spanish.
    es: String,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kept_file;

    #[test]
    fn the_kept_schema_is_that_of_the_program() {
        kept_file::check_printed::<Told>("names", VERSION);
    }

    #[test]
    fn every_name_of_every_kind_has_its_words_in_both_languages() {
        let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
        for kind in NameKind::ALL {
            let names = list(*kind, &content_library, Some("key-pad")).expect("a board");
            assert!(!names.is_empty(), "{kind}");
            for ToldName { name, en, es } in names {
                assert!(
                    !en.contains('‹') && !es.contains('‹'),
                    "{kind}: {name}: {en} {es}"
                );
            }
        }
    }
}
