//! `detent practice --learners`: the learners of a folder side by side.

use super::Failure;
use super::output::Output;
use detent_content::{
    LearnerInShort, ProfileError, ProfileFolder, ProfileStore, Texts, Value, day, disk,
    listed_learners,
};
use detent_training::practice::{LearnerSummary, Skill};
use schemars::JsonSchema;
use serde::Serialize;
use std::path::Path;

/// Version of what `--json` prints.
const VERSION: u32 = 1;

/// Prints the learners of a folder, as a table or as JSON; a profile that cannot be used is named after the others.
pub(super) fn learners(folder: &Path, json: bool, texts: &Texts) -> Result<(), Failure> {
    disk::check_listable(folder)?;
    let store = ProfileFolder::new(folder.to_owned());
    let (mut rows, mut damaged): (Vec<LearnerInShort>, Vec<(String, ProfileError)>) =
        Default::default();
    for learner in listed_learners(&store) {
        match learner.read {
            Ok(read) => rows.push(read),
            Err(error) => damaged.push((store.file(&learner.stem), error)),
        }
    }
    if rows.is_empty() && damaged.is_empty() {
        return Err(Failure::NoLearners(folder.display().to_string()));
    }
    let mut out = Output::standard();
    if json {
        return out.json(&Told::of(&rows, &damaged, texts));
    }
    for line in table(&rows, texts) {
        out.line(line)?;
    }
    for row in &rows {
        out.line(skills(row, texts))?;
    }
    for (_, error) in &damaged {
        out.line(texts.profile_error(error))?;
    }
    Ok(())
}

/// Heading and one line for each learner, in columns.
fn table(rows: &[LearnerInShort], texts: &Texts) -> Vec<String> {
    let head = [
        "cli-learners-name",
        "cli-learners-jobs",
        "cli-learners-last",
        "cli-learners-skills",
        "cli-learners-sittings",
        "cli-learners-lost",
    ];
    let mut cells: Vec<[String; 6]> = vec![head.map(|key| texts.get(key))];
    for LearnerInShort { name, summary } in rows {
        let (passed, asked) = sat(summary);
        let open = match summary.open_sittings {
            0 => String::new(),
            count => {
                let args = [("count", Value::from(count.to_string()))];
                format!(" {}", texts.with("cli-learners-open", &args))
            }
        };
        let practised = summary.mastered.len() + summary.worked_on.len();
        cells.push([
            name.clone(),
            format!("{}/{}", summary.jobs_passed, summary.jobs_done),
            (summary.last).map_or_else(|| "—".to_owned(), |at| day(at, 0)),
            format!("{}/{practised}", summary.mastered.len()),
            format!("{}: {passed}/{asked}{open}", summary.sittings.len()),
            summary.most_lost.map_or_else(
                || "—".to_owned(),
                |most| format!("{} {}/{}", skill(most.skill, texts), most.lost, most.of),
            ),
        ]);
    }
    let width = |column: usize| {
        let widths = cells.iter().map(|row| row[column].chars().count());
        widths.max().unwrap_or(0)
    };
    let widths: Vec<usize> = (0..head.len()).map(width).collect();
    let line = |row: &[String; 6]| {
        let cells = row.iter().zip(&widths);
        let padded: Vec<String> = cells
            .map(|(cell, width)| format!("{cell:<width$}"))
            .collect();
        padded.join("  ").trim_end().to_owned()
    };
    cells.iter().map(line).collect()
}

/// Which skills a learner has mastered and works on.
fn skills(row: &LearnerInShort, texts: &Texts) -> String {
    let list = |skills: &[Skill]| {
        let names: Vec<String> = skills.iter().map(|s| skill(*s, texts)).collect();
        let none = || "—".to_owned();
        Value::from(if names.is_empty() {
            none()
        } else {
            names.join(", ")
        })
    };
    let args = [
        ("name", Value::from(row.name.as_str())),
        ("mastered", list(&row.summary.mastered)),
        ("working", list(&row.summary.worked_on)),
    ];
    texts.with("cli-learners-row", &args)
}

fn skill(skill: Skill, texts: &Texts) -> String {
    texts.get(&format!("skill-{skill}"))
}

/// Jobs passed and jobs asked in the closed sittings.
fn sat(summary: &LearnerSummary) -> (usize, usize) {
    let sittings = summary.sittings.iter();
    sittings.fold((0, 0), |(passed, jobs), sitting| {
        (passed + sitting.passed, jobs + sitting.jobs)
    })
}

/// All of it, for other programs.
#[derive(Serialize, JsonSchema)]
#[schemars(title = "Learners of `detent practice --learners --json`")]
#[serde(deny_unknown_fields)]
pub(super) struct Told {
    /// Version of this format.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// The learners, by the names of their files.
    learners: Vec<ToldLearner>,
    /// Profiles that cannot be used.
    damaged: Vec<ToldDamage>,
}

/// One learner.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldLearner {
    /// As the learner wrote it.
    name: String,
    /// Jobs handed in, each attempt counted.
    jobs_done: usize,
    /// Those of them that were passed.
    jobs_passed: usize,
    /// Day of the last answer, UTC (ISO 8601); none where nothing was answered.
    last_day: Option<String>,
    /// Skills that were mastered when they were last practiced.
    mastered: Vec<&'static str>,
    /// Skills that were practiced and are not mastered.
    worked_on: Vec<&'static str>,
    /// The skill whose side of a job was lost most often.
    most_lost: Option<ToldLost>,
    /// Closed sittings of examinations.
    sittings: Vec<ToldSitting>,
    /// Sittings that are still open.
    open_sittings: usize,
}

/// The skill whose side of a job was lost most often.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldLost {
    /// The skill.
    skill: &'static str,
    /// Jobs in which its side was no pass.
    lost: usize,
    /// Jobs that scored its side.
    of: usize,
}

/// A closed sitting of an examination.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldSitting {
    /// Jobs passed.
    passed: usize,
    /// Jobs in the set.
    jobs: usize,
    /// Pauses in all of them.
    pauses: usize,
    /// How long these were together, s.
    paused_s: i64,
}

/// A profile that cannot be used.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldDamage {
    /// Its file.
    file: String,
    /// What is wrong and what to do, in words.
    problem: String,
}

impl Told {
    fn of(rows: &[LearnerInShort], damaged: &[(String, ProfileError)], texts: &Texts) -> Told {
        Told {
            version: VERSION,
            learners: rows.iter().map(ToldLearner::of).collect(),
            damaged: (damaged.iter())
                .map(|(file, error)| ToldDamage {
                    file: file.clone(),
                    problem: texts.profile_error(error),
                })
                .collect(),
        }
    }
}

impl ToldLearner {
    fn of(LearnerInShort { name, summary }: &LearnerInShort) -> ToldLearner {
        let names = |skills: &[Skill]| skills.iter().map(|skill| skill.name()).collect();
        ToldLearner {
            name: name.clone(),
            jobs_done: summary.jobs_done,
            jobs_passed: summary.jobs_passed,
            last_day: summary.last.map(|at| day(at, 0)),
            mastered: names(&summary.mastered),
            worked_on: names(&summary.worked_on),
            most_lost: summary.most_lost.map(|most| ToldLost {
                skill: most.skill.name(),
                lost: most.lost,
                of: most.of,
            }),
            sittings: (summary.sittings.iter())
                .map(|sitting| ToldSitting {
                    passed: sitting.passed,
                    jobs: sitting.jobs,
                    pauses: sitting.pauses,
                    paused_s: sitting.paused_s,
                })
                .collect(),
            open_sittings: summary.open_sittings,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kept_file;

    #[test]
    fn the_kept_schema_is_that_of_the_program() {
        kept_file::check_printed::<Told>("practice-learners", VERSION);
    }
}
