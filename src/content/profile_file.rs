//! A learner's profile: a plain RON file, `STEM.learner`, that holds the answers and little else.
//!
//! Where such files are is a [`ProfileStore`]'s affair: a folder ([`super::ProfileFolder`]), or a browser's
//! storage. A file that cannot be read, or is not as it was read, is never written over.

use super::disk::LONGEST_PROFILE_BYTES;
use super::error::{Allowed, Choices, ContentError, Problem};
use super::error_words::english;
use super::preferences::Preferences;
use super::reader::{Finding, Page};
use super::text::Language;
use detent_training::practice::{Answer, Detail, ExaminationSitting, Target};
use detent_training::record::{SystemReason, ron_text};
use serde::{Deserialize, Serialize};
use std::fmt::Write;

/// Version of the file's layout. The second has sittings of examinations; the third notes when work on their jobs
/// began; the fourth has preferences; the fifth says how loud the machine is.
const FORMAT: u32 = 5;
/// Ending of a profile's file name.
pub const ENDING: &str = ".learner";
/// Most characters of a learner's name.
pub const LONGEST_NAME: usize = 40;
/// The year 2200: later moments are mistakes. Seconds since 1970.
const LATEST_S: i64 = 7_258_118_400;
/// Longest time to an answer, s: a day and a night.
const LONGEST_ANSWER_S: f64 = 86_400.0;

/// What is kept of a learner.
#[derive(Clone, Debug, PartialEq)]
pub struct Profile {
    /// As the learner wrote it.
    pub name: String,
    /// Share of right answers to aim at.
    pub target: Target,
    /// Language chosen; none for the program's.
    pub language: Option<Language>,
    /// Every answer, in order.
    pub answers: Vec<Answer>,
    /// Every sitting of an examination, in order; the last one may be open.
    pub sittings: Vec<ExaminationSitting>,
    /// Keys, hands, motion and size of text.
    pub preferences: Preferences,
}

/// As written.
#[derive(Serialize, Deserialize)]
#[serde(rename = "Learner", deny_unknown_fields)]
struct Written {
    format: u32,
    name: String,
    target: f64,
    #[serde(default)]
    language: Option<String>,
    answers: Vec<Answer>,
    #[serde(default)]
    preferences: Preferences,
    #[serde(default)]
    sittings: Vec<ExaminationSitting>,
}

#[derive(Deserialize)]
struct Layout {
    format: u32,
}

/// Why a profile is not read or not kept.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}", english().profile_error(self))]
pub enum ProfileError {
    /// What is in it.
    Content(#[from] ContentError),
    /// The disk, the system or the browser refused.
    Refused {
        /// The file that was meant.
        file: String,
        /// The system's reason.
        reason: SystemReason,
    },
    /// It is not as it was when it was read.
    Changed(String),
    /// A name with no letter or digit in it.
    NoName,
    /// A name that another learner has.
    Taken(String),
}

/// Where profiles are kept, by the stem of their file names.
pub trait ProfileStore: Send + Sync {
    /// Where that is, for people, if it can be pointed at.
    fn place(&self) -> Option<String>;
    /// All of them, in alphabetical order.
    fn stems(&self) -> Vec<String>;
    /// The file of one as errors name it.
    fn file(&self, stem: &str) -> String;
    /// The whole text of one; none when there is no such profile.
    ///
    /// # Errors
    /// Why it cannot be read.
    fn read(&self, stem: &str) -> Result<Option<Vec<u8>>, ProfileError>;
    /// Writes the whole text of one: all of it or nothing.
    ///
    /// # Errors
    /// Why it is not written.
    fn write(&self, stem: &str, text: &[u8]) -> Result<(), ProfileError>;
    /// Deletes one for good.
    ///
    /// # Errors
    /// Why it is still there.
    fn remove(&self, stem: &str) -> Result<(), ProfileError>;
    /// Who worked here last; none for a guest.
    fn last_stem(&self) -> Option<String>;
    /// Remembers who works here.
    ///
    /// # Errors
    /// Why it is not remembered.
    fn keep_last_stem(&self, stem: Option<&str>) -> Result<(), ProfileError>;
}

/// Read a profile.
///
/// # Errors
/// The first mistake in the file.
pub fn read_profile(file: &str, bytes: &[u8]) -> Result<Profile, ContentError> {
    let page = Page::open_longer(file, bytes, LONGEST_PROFILE_BYTES)?;
    // A newer layout has fields that would only confuse.
    if let Ok(Layout { format }) = page.parse()
        && format > FORMAT
    {
        let problem = Problem::NewerLayout(format);
        page.judge((), vec![("format".to_owned(), problem)])?;
    }
    let written: Written = page.parse()?;
    let findings = check(&written);
    let Written {
        name,
        target,
        language,
        answers,
        sittings,
        preferences,
        ..
    } = page.judge(written, findings)?;
    let known = |code: &String| Language::ALL.into_iter().find(|l| l.code() == code);
    Ok(Profile {
        name,
        target: Target::new(target).unwrap_or_default(),
        language: language.as_ref().and_then(known),
        answers,
        sittings,
        preferences,
    })
}

fn check(written: &Written) -> Vec<Finding> {
    let mut findings = Vec::new();
    if written.format == 0 {
        let problem = Problem::OutOfRange {
            found: 0.0,
            allowed: Allowed::Layout,
        };
        findings.push(("format".to_owned(), problem));
    }
    if clean_name(&written.name).as_deref() != Ok(&written.name) {
        let problem = Problem::NoName { most: LONGEST_NAME };
        findings.push(("name".to_owned(), problem));
    }
    if Target::new(written.target).is_err() {
        let problem = Problem::OutOfRange {
            found: written.target,
            allowed: Allowed::Target,
        };
        findings.push(("target".to_owned(), problem));
    }
    if let Some(code) = &written.language
        && !Language::ALL.iter().any(|language| language.code() == code)
    {
        let problem = Problem::UnknownName {
            found: code.clone(),
            expected: Box::new(Choices {
                names: Language::ALL
                    .map(|language| language.code().to_owned())
                    .to_vec(),
                of: Language::ALL.len(),
            }),
        };
        findings.push(("language".to_owned(), problem));
    }
    for (n, answer) in written.answers.iter().enumerate() {
        check_answer(&format!("answers[{n}]"), answer, &mut findings);
    }
    for (n, sitting) in written.sittings.iter().enumerate() {
        check_sitting(&format!("sittings[{n}]"), sitting, &mut findings);
    }
    findings
}

fn check_sitting(place: &str, sitting: &ExaminationSitting, findings: &mut Vec<Finding>) {
    let mut moments = vec![
        (format!("{place}.began"), sitting.began),
        (format!("{place}.until"), sitting.until),
    ];
    for (n, job) in sitting.jobs.iter().enumerate() {
        let of_job = [("begun", job.begun), ("worked_on", job.worked_on)];
        let known = (of_job.into_iter()).filter_map(|(field, moment)| Some((field, moment?)));
        moments.extend(known.map(|(field, moment)| (format!("{place}.jobs[{n}].{field}"), moment)));
    }
    for (path, moment) in moments {
        if !(0..=LATEST_S).contains(&moment.0) {
            let problem = Problem::OutOfRange {
                found: moment.0 as f64,
                allowed: Allowed::Moment,
            };
            findings.push((path, problem));
        }
    }
    for (n, job) in sitting.jobs.iter().enumerate() {
        let Some(result) = &job.result else { continue };
        for (k, answer) in result.answers.iter().enumerate() {
            let place = format!("{place}.jobs[{n}].result.answers[{k}]");
            check_answer(&place, answer, findings);
        }
    }
}

fn check_answer(place: &str, answer: &Answer, findings: &mut Vec<Finding>) {
    let mut range = |field: &str, found: f64, highest: f64, allowed| {
        if !(0.0..=highest).contains(&found) {
            let path = format!("{place}.{field}");
            findings.push((path, Problem::OutOfRange { found, allowed }));
        }
    };
    let at = answer.at.0 as f64;
    range("at", at, LATEST_S as f64, Allowed::Moment);
    let took = answer.took_s;
    range("took_s", took, LONGEST_ANSWER_S, Allowed::AnswerSeconds);
    match &answer.detail {
        Detail::None => {}
        Detail::Lamps { shown, read } => {
            let number = Allowed::LampNumber;
            range("detail.shown", f64::from(*shown), 99.0, number);
            range("detail.read", f64::from(*read), 99.0, number);
        }
        Detail::Rhythm {
            mean_ms,
            spread_ms,
            odds,
        } => {
            let longest_ms = 1000.0 * LONGEST_ANSWER_S;
            range(
                "detail.mean_ms",
                *mean_ms,
                longest_ms,
                Allowed::Milliseconds,
            );
            range(
                "detail.spread_ms",
                *spread_ms,
                longest_ms,
                Allowed::Milliseconds,
            );
            range("detail.odds", *odds, 1.0, Allowed::Chance);
        }
        Detail::Job { kept, .. } => range("detail.kept", *kept, 1.0, Allowed::Share),
    }
}

/// The name without what cannot be seen and without spaces around it.
fn clean_name(name: &str) -> Result<String, ProfileError> {
    let seen: String = name.chars().filter(|c| !c.is_control()).collect();
    let name: String = seen.trim().chars().take(LONGEST_NAME).collect();
    let name = name.trim_end().to_owned();
    if name.chars().any(char::is_alphanumeric) {
        Ok(name)
    } else {
        Err(ProfileError::NoName)
    }
}

/// A file name's stem that every system takes: letters and digits of any script, `-` for the rest.
fn stem_of(name: &str) -> String {
    let mut stem = String::new();
    for c in name.chars() {
        if c.is_alphanumeric() {
            stem.extend(c.to_lowercase());
        } else if !stem.is_empty() && !stem.ends_with('-') {
            stem.push('-');
        }
    }
    let stem = stem.trim_end_matches('-');
    // One system keeps these names for its devices, whatever their ending; none is longer.
    if stem.is_ascii() && stem.len() <= 4 {
        format!("{stem}-learner")
    } else {
        stem.to_owned()
    }
}

/// The file's text: one answer a line.
fn write_profile(profile: &Profile) -> String {
    let options = ron_text::options();
    // Neither names, numbers nor answers can fail to be written.
    let ron = |written: ron::Result<String>| written.unwrap_or_default();
    let mut text =
        String::from("// What a learner answered in Detent; all else follows from it.\n(\n");
    let name = ron(options.to_string(&profile.name));
    let language = profile.language.map(Language::code);
    let language = ron(options.to_string(&language));
    let target = profile.target.share();
    let _ = write!(
        text,
        "    format: {FORMAT},\n    name: {name},\n    target: {target},\n    language: {language},\n    answers: [\n"
    );
    for answer in &profile.answers {
        let _ = writeln!(text, "        {},", ron(options.to_string(answer)));
    }
    text.push_str("    ],\n");
    if profile.preferences != Preferences::default() {
        let preferences = ron(options.to_string(&profile.preferences));
        let _ = writeln!(text, "    preferences: {preferences},");
    }
    if !profile.sittings.is_empty() {
        text.push_str("    sittings: [\n");
        for sitting in &profile.sittings {
            let _ = writeln!(text, "        {},", ron(options.to_string(sitting)));
        }
        text.push_str("    ],\n");
    }
    text.push_str(")\n");
    text
}

/// A profile with the file that it is kept in.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptProfile {
    stem: String,
    /// What is in it now.
    pub profile: Profile,
    /// The file as it was read or written last.
    text: Vec<u8>,
}

impl KeptProfile {
    /// The profile of this stem.
    ///
    /// # Errors
    /// There is none, or it cannot be read.
    pub fn open(store: &dyn ProfileStore, stem: &str) -> Result<KeptProfile, ProfileError> {
        let file = store.file(stem);
        let text = store.read(stem)?;
        let text = text.ok_or_else(|| ProfileError::Changed(file.clone()))?;
        let profile = read_profile(&file, &text)?;
        Ok(KeptProfile {
            stem: stem.to_owned(),
            profile,
            text,
        })
    }

    /// A new profile with this name and nothing answered.
    ///
    /// # Errors
    /// No name, one that another learner has, or it cannot be written.
    pub fn create(
        store: &dyn ProfileStore,
        name: &str,
        language: Language,
    ) -> Result<KeptProfile, ProfileError> {
        let name = clean_name(name)?;
        let stem = stem_of(&name);
        if store.stems().contains(&stem) || store.read(&stem)?.is_some() {
            return Err(ProfileError::Taken(name));
        }
        let profile = Profile {
            name,
            target: Target::default(),
            language: Some(language),
            answers: Vec::new(),
            sittings: Vec::new(),
            preferences: Preferences::default(),
        };
        let text = write_profile(&profile).into_bytes();
        store.write(&stem, &text)?;
        Ok(KeptProfile {
            stem,
            profile,
            text,
        })
    }

    /// Writes it, if its file is still as it was.
    ///
    /// # Errors
    /// It was changed or deleted meanwhile, or cannot be written; the file is as it was.
    pub fn save(&mut self, store: &dyn ProfileStore) -> Result<(), ProfileError> {
        if store.read(&self.stem)?.as_ref() != Some(&self.text) {
            return Err(ProfileError::Changed(store.file(&self.stem)));
        }
        let text = write_profile(&self.profile).into_bytes();
        store.write(&self.stem, &text)?;
        self.text = text;
        Ok(())
    }

    /// Stem of its file name.
    pub fn stem(&self) -> &str {
        &self.stem
    }
}

#[cfg(test)]
#[allow(clippy::disallowed_methods, reason = "a test spoils files on purpose")]
mod tests {
    use super::*;
    use crate::ProfileFolder;
    use crate::preferences::{CharacterKeys, KeyAction, KeyPlace, Motion, SoundVolume, TextSize};
    use detent_training::lesson::{Bilingual, Score};
    use detent_training::practice::{Examination, ExaminationError, Moment, Skill};
    use std::fs;

    fn answer(n: i64, detail: Detail) -> Answer {
        Answer {
            at: Moment(1_700_000_000 + n),
            skill: Skill::LampReading,
            right: n % 2 == 0,
            took_s: 3.25,
            detail,
        }
    }

    /// A closed sitting with one job handed in.
    fn sitting() -> ExaminationSitting {
        let title = Bilingual {
            en: "One".to_owned(),
            es: "Uno".to_owned(),
        };
        let examination = Examination::of_job(title, "drain-code".to_owned());
        let mut sitting =
            ExaminationSitting::begin("one".to_owned(), &examination, 4, Moment(1_000));
        let score = Score {
            dimensions: Vec::new(),
        };
        (sitting.begin_job("drain-code", false, Moment(1_001))).expect("open");
        (sitting.note_work("drain-code", None, Moment(1_002))).expect("in the set");
        (sitting.note_pause("drain-code", Moment(1_002), Moment(1_009))).expect("in the set");
        (sitting.hand_in("drain-code", &score, Moment(1_010), 9.0)).expect("open");
        sitting.close(Moment(1_011)).expect("open");
        sitting
    }

    /// Ana with these answers and this sitting.
    fn ana() -> Profile {
        Profile {
            name: "Ana".to_owned(),
            target: Target::default(),
            language: None,
            answers: answers(),
            sittings: vec![sitting()],
            preferences: left_handed(),
        }
    }

    /// Keys by their places, larger text and the panels on their other sides.
    fn left_handed() -> Preferences {
        Preferences {
            character_keys: CharacterKeys::WithAlt,
            keys: [
                (KeyAction::Start, Some(KeyPlace::F2)),
                (KeyAction::Stop, None),
            ]
            .into(),
            left_handed: true,
            motion: Motion::Reduced,
            sound: SoundVolume::Low,
            text_size: TextSize::Percent150,
        }
    }

    fn answers() -> Vec<Answer> {
        let file = "drain-code".to_owned();
        let details = [
            Detail::None,
            Detail::Lamps { shown: 42, read: 7 },
            Detail::Rhythm {
                mean_ms: 210.5,
                spread_ms: 0.1 + 0.2,
                odds: 0.75,
            },
            Detail::Job { file, kept: 0.8 },
        ];
        (0..)
            .zip(details)
            .map(|(n, detail)| answer(n, detail))
            .collect()
    }

    #[test]
    fn what_is_written_is_read_again() {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let store = ProfileFolder::new(folder.path().join("learners"));
        let mut kept = KeptProfile::create(&store, "  Ana \"Núñez\" ", Language::Es).expect("free");
        kept.profile.answers = answers();
        kept.profile.preferences = left_handed();
        kept.save(&store).expect("nobody else wrote");
        assert_eq!(store.stems(), ["ana-núñez"]);
        let again = KeptProfile::open(&store, "ana-núñez").expect("sound");
        assert_eq!(again, kept);
        assert_eq!(again.profile.name, "Ana \"Núñez\"");
        kept.save(&store).expect("as it was");
    }

    /// Whoever ends the program in the middle of a job that is kept nowhere has had the one try at it.
    #[test]
    fn a_job_broken_off_stays_so_when_the_profile_is_opened_again() {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let store = ProfileFolder::new(folder.path().to_owned());
        let mut kept = KeptProfile::create(&store, "Ana", Language::Es).expect("free");
        let title = Bilingual {
            en: "Two".to_owned(),
            es: "Dos".to_owned(),
        };
        let mut examination = Examination::of_job(title, "drain-code".to_owned());
        examination.jobs.push("dark-machine".to_owned());
        let mut sitting =
            ExaminationSitting::begin("two".to_owned(), &examination, 4, Moment(1_000));
        for job in ["drain-code", "dark-machine"] {
            (sitting.begin_job(job, false, Moment(1_001))).expect("open");
        }
        (sitting.note_work("drain-code", None, Moment(1_002))).expect("in the set");
        kept.profile.sittings.push(sitting);
        kept.save(&store).expect("nobody else wrote");
        let mut again = KeptProfile::open(&store, kept.stem()).expect("sound");
        let sitting = again.profile.sittings.last_mut().expect("just kept");
        let broken_off = sitting.begin_job("drain-code", false, Moment(1_010));
        assert_eq!(broken_off, Err(ExaminationError::BrokenOff));
        let untouched = sitting.begin_job("dark-machine", false, Moment(1_010));
        assert_eq!(untouched, Ok(()));
    }

    /// The second layout knew no more of a job than whether its attempt was kept.
    #[test]
    fn a_profile_of_the_second_layout_is_read() {
        let profile = ana();
        let text = write_profile(&profile);
        let older = text.replacen("format: 5", "format: 2", 1);
        let older = older.replacen("worked_on:Some(1002),", "", 1);
        assert_eq!(older.len(), text.len() - "worked_on:Some(1002),".len());
        let read = read_profile("ana.learner", older.as_bytes()).expect("sound");
        let mut expected = profile;
        expected.sittings[0].jobs[0].worked_on = None;
        assert_eq!(read, expected);
    }

    #[test]
    fn names_are_made_safe_and_no_two_alike() {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let store = ProfileFolder::new(folder.path().join("learners"));
        let create =
            |name: &str| KeptProfile::create(&store, name, Language::En).map(|kept| kept.stem);
        for (name, stem) in [
            ("../../etc/passwd", "etc-passwd"),
            ("C:\\users", "c-users"),
            ("con", "con-learner"),
            ("王小明先生样", "王小明先生样"),
            ("José\u{202e}\n", "josé"),
        ] {
            assert_eq!(create(name), Ok(stem.to_owned()), "{name}");
        }
        for name in ["JOSÉ", "josé ", "etc passwd"] {
            assert!(
                matches!(create(name), Err(ProfileError::Taken(_))),
                "{name}"
            );
        }
        for name in ["", "   ", "../..", "\u{7}"] {
            assert_eq!(create(name), Err(ProfileError::NoName), "{name}");
        }
        assert_eq!(store.stems().len(), 5);
        let outside = fs::read_dir(folder.path()).expect("the folder").count();
        assert_eq!(outside, 1, "nothing beside the folder");
    }

    #[test]
    fn mistakes_are_told_with_file_line_and_field() {
        let text = write_profile(&ana());
        let check = |from: &str, to: &str, words: &[&str]| {
            let changed = text.replacen(from, to, 1);
            assert_ne!(changed, text);
            let error = read_profile("ana.learner", changed.as_bytes()).expect_err(to);
            let told = error.to_string();
            assert!(words.iter().all(|word| told.contains(word)), "{told}");
        };
        check(
            "format: 5",
            "format: 9",
            &["ana.learner:3", "format", "newer"],
        );
        check("\"Ana\"", "\" \"", &["ana.learner:4", "name"]);
        check("0.75", "0.2", &["ana.learner:5", "target", "0.5 to 0.95"]);
        check(
            "None",
            "Some(\"xx\")",
            &["ana.learner:6", "language", "en, es"],
        );
        check("shown:42", "shown:142", &["answers[1].detail", "99"]);
        check("LampReading", "LampReding", &["LampReding", "answers[0]"]);
        check("took_s:3.25", "took_s:-1", &["answers[0].took_s"]);
        check(
            "worked_on:Some(1002)",
            "worked_on:Some(-2)",
            &["sittings[0].jobs[0].worked_on"],
        );
        check("],", "", &["ana.learner:"]);
        let cut = read_profile("ana.learner", &text.as_bytes()[..200]);
        assert!(cut.is_err());
    }

    #[test]
    fn a_damaged_or_changed_file_is_left_as_it_is() {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let store = ProfileFolder::new(folder.path().to_owned());
        let mut kept = KeptProfile::create(&store, "Benito", Language::Es).expect("free");
        let path = folder.path().join("benito.learner");
        fs::write(&path, "a letter to my aunt").expect("the folder can be written");
        kept.profile.answers = answers();
        let refused = kept.save(&store);
        assert!(
            matches!(refused, Err(ProfileError::Changed(_))),
            "{refused:?}"
        );
        let open = KeptProfile::open(&store, "benito");
        assert!(matches!(open, Err(ProfileError::Content(_))), "{open:?}");
        let taken = KeptProfile::create(&store, "Benito", Language::Es);
        assert!(matches!(taken, Err(ProfileError::Taken(_))), "{taken:?}");
        let left = fs::read_to_string(&path).expect("still there");
        assert_eq!(left, "a letter to my aunt");
        fs::remove_file(&path).expect("it is there");
        let gone = kept.save(&store);
        assert!(matches!(gone, Err(ProfileError::Changed(_))), "{gone:?}");
        assert!(!path.exists(), "what was deleted stays so");
    }

    #[test]
    fn deleting_leaves_nothing_behind() {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let store = ProfileFolder::new(folder.path().to_owned());
        for name in ["Carla Ruiz", "Carla Ruiz Paz"] {
            KeptProfile::create(&store, name, Language::Es).expect("free");
        }
        // What a power failure in the middle of writing leaves.
        fs::write(folder.path().join("carla-ruiz.learner.77.tmp"), "half")
            .expect("the folder can be written");
        store.remove("carla-ruiz").expect("it is there");
        let left = fs::read_dir(folder.path()).expect("the folder").flatten();
        let left: Vec<_> = left.map(|entry| entry.file_name()).collect();
        assert_eq!(left, ["carla-ruiz-paz.learner"]);
        assert!(store.remove("../carla-ruiz-paz").is_err());
    }
}
