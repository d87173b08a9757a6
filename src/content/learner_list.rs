//! The learners of a store side by side.

use super::profile_file::{KeptProfile, ProfileError, ProfileStore};
use detent_training::practice::LearnerSummary;

/// A learner of a store.
#[derive(Clone, Debug, PartialEq)]
pub struct ListedLearner {
    /// Stem of the profile's file name.
    pub stem: String,
    /// What is in the profile, or why it cannot be used.
    pub read: Result<LearnerInShort, ProfileError>,
}

/// A learner's name and how things stand.
#[derive(Clone, Debug, PartialEq)]
pub struct LearnerInShort {
    /// As the learner wrote it.
    pub name: String,
    /// What answers and examinations come to.
    pub summary: LearnerSummary,
}

impl ListedLearner {
    /// Name, or the stem where the profile cannot be used.
    pub fn name(&self) -> &str {
        match &self.read {
            Ok(learner) => &learner.name,
            Err(_) => &self.stem,
        }
    }
}

/// All learners of a store, in the order of their files. Every profile is read, and none is written.
pub fn listed_learners(store: &dyn ProfileStore) -> Vec<ListedLearner> {
    let stems = store.stems().into_iter();
    let listed = stems.map(|stem| {
        let read = KeptProfile::open(store, &stem).map(|kept| LearnerInShort {
            summary: LearnerSummary::of(&kept.profile.answers, &kept.profile.sittings),
            name: kept.profile.name,
        });
        ListedLearner { stem, read }
    });
    listed.collect()
}

#[cfg(test)]
#[allow(clippy::disallowed_methods, reason = "a test spoils a file on purpose")]
mod tests {
    use super::*;
    use crate::{Language, ProfileFolder};
    use detent_training::practice::review::DAY_S;
    use detent_training::practice::{Answer, Detail, Moment, Skill};

    #[test]
    fn learners_are_listed_with_what_they_mastered_and_what_is_due() {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let store = ProfileFolder::new(folder.path().to_owned());
        let mut ines = KeptProfile::create(&store, "Inés", Language::Es).expect("free");
        // Right on two days: mastered, and due again some days later.
        let answers = (0..8).map(|n| Answer {
            at: Moment(n / 4 * DAY_S + n),
            skill: Skill::Metering,
            right: true,
            took_s: 5.0,
            detail: Detail::None,
        });
        ines.profile.answers = answers.collect();
        ines.save(&store).expect("nobody else wrote");
        KeptProfile::create(&store, "Zoe", Language::En).expect("free");
        std::fs::write(folder.path().join("torn.learner"), "(").expect("it can be written");

        let listed = listed_learners(&store);
        let names: Vec<&str> = listed.iter().map(ListedLearner::name).collect();
        assert_eq!(names, ["Inés", "torn", "Zoe"]);
        assert!(listed[1].read.is_err());
        let summary = |n: usize| &listed[n].read.as_ref().expect("sound").summary;
        let last = Moment(DAY_S + 7);
        assert_eq!(summary(0).mastered, [Skill::Metering]);
        assert_eq!(summary(0).last, Some(last));
        assert_eq!(summary(0).due(last), []);
        let year = Moment(365 * DAY_S);
        assert_eq!(summary(0).due(year), [Skill::Metering]);
        assert_eq!((summary(2).last, summary(2).due(year).len()), (None, 0));
    }
}
