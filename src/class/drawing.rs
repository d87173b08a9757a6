//! The machines of a class whose jobs are sealed: made here, one for each seat, so that nobody can look up at home or at the
//! neighbor's what is wrong with a machine.

use super::definition::{ClassDefinition, JobMachines};
use super::verify::within;
use detent_content::{
    ContentError, ContentLibrary, Language, ScenarioChange, ScenarioDraft, ScenarioSentence, Texts,
    Value, VariantSeries,
};

/// A seat's own scenario of a sealed job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DrawnJob {
    /// The name that the job has in the class.
    pub job: String,
    /// Its scenario.
    pub text: String,
    /// The seed of the machine.
    pub seed: u64,
    /// Number of the draft, where it is a variant.
    pub draft: Option<u64>,
}

/// Why there is no scenario.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum DrawingError {
    /// The library's own has a mistake.
    #[error(transparent)]
    Content(#[from] ContentError),
    /// The server is being ended.
    #[error("the server is being ended")]
    BrokenOff,
}

/// How far the variants of a job are drawn.
enum Series {
    /// The last draft that was taken, if any was.
    Waits {
        after: Option<u64>,
    },
    Begun(Box<VariantSeries>),
    /// There are none, or no more.
    Over,
}

/// Draws scenarios, job by job.
pub struct JobDrawing<'a> {
    library: &'a ContentLibrary,
    definition: &'a ClassDefinition,
    /// As many as there are jobs.
    series: Vec<Series>,
}

impl<'a> JobDrawing<'a> {
    /// After what was drawn before: the drafts of each job, by its place.
    pub fn new(
        library: &'a ContentLibrary,
        definition: &'a ClassDefinition,
        drawn: impl IntoIterator<Item = (usize, u64)>,
    ) -> JobDrawing<'a> {
        let mut last = vec![None; definition.jobs.len()];
        for (place, draft) in drawn {
            if let Some(last) = last.get_mut(place) {
                *last = (*last).max(Some(draft));
            }
        }
        JobDrawing {
            library,
            definition,
            series: last
                .into_iter()
                .map(|after| Series::Waits { after })
                .collect(),
        }
    }

    /// The scenario of this seat for the job in this place, and whether it is a variant where it should be one: a job of which
    /// no further variant can be proved is given as it is written. None where the class has no such job. `go_on` is asked after
    /// each slice of a few milliseconds.
    ///
    /// # Errors
    /// A mistake in the library's scenario, or `go_on` says no.
    pub fn draw(
        &mut self,
        place: usize,
        seat: u32,
        mut go_on: impl FnMut() -> bool,
    ) -> Result<Option<DrawnJob>, DrawingError> {
        let definition = self.definition;
        let (Some(original), Some(series)) =
            (definition.jobs.get(place), self.series.get_mut(place))
        else {
            return Ok(None);
        };
        let jobs = definition.jobs_of(seat);
        let Some(job) = jobs.into_iter().nth(place) else {
            return Ok(None);
        };
        let original = self.library.scenario(original)?;
        let mut drawn = DrawnJob {
            text: original.text.clone(),
            seed: job.seed,
            job: job.job,
            draft: None,
        };
        let variants = match definition.machines {
            JobMachines::SealedVariants => true,
            JobMachines::SealedAsWritten => false,
            JobMachines::Named => return Ok(None),
        };
        if variants {
            if let Series::Waits { after } = *series {
                let seed = definition.derived(b"variants", &[original.stem().as_bytes()]);
                let seed = seed.leading_number();
                let work = VariantSeries::begin_in_slices(self.library, &original, seed);
                let begun = within(work, &mut go_on).ok_or(DrawingError::BrokenOff)?;
                *series = match begun {
                    Ok(begun) => Series::Begun(Box::new(match after {
                        Some(after) => begun.after(after),
                        None => begun,
                    })),
                    Err(_) => Series::Over,
                };
            }
            if let Series::Begun(begun) = series {
                let next = within(begun.next_in_slices(self.library), &mut go_on);
                match next.ok_or(DrawingError::BrokenOff)? {
                    Ok(Some(variant)) => {
                        drawn.seed = variant.source.scenario.seed;
                        drawn.text = variant.source.text;
                        drawn.draft = Some(variant.number);
                    }
                    Ok(None) | Err(_) => *series = Series::Over,
                }
            }
        }
        drawn.text = under_number(place + 1, &drawn.job, &drawn.text)?;
        // Without it whoever has the library would find the job by its digest, which stands in the attempt.
        let salt = definition.derived(b"salt", &[&seat.to_be_bytes(), drawn.job.as_bytes()]);
        if !drawn.text.ends_with('\n') {
            drawn.text.push('\n');
        }
        drawn.text.push_str(&format!("// {salt}\n"));
        Ok(Some(drawn))
    }
}

/// The same scenario under a title that tells only its number: that of a variant names the original, and so what its fault is
/// akin to.
fn under_number(number: usize, job: &str, text: &str) -> Result<String, ContentError> {
    let mut draft = ScenarioDraft::of_text(job, text)?;
    for language in Language::ALL {
        let number = [("number", Value::from(number.to_string()))];
        let title = Texts::load(language).with("seat-sealed-title", &number);
        let change = ScenarioChange::Sentence(ScenarioSentence::Title, language, title);
        // A scenario that could be read has a title in each language.
        let changed = draft.change(&change);
        debug_assert!(changed.is_ok(), "{changed:?}");
    }
    Ok(draft.text().to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_class_protocol::ClassKind;
    use detent_training::lesson::Scenario;
    use std::collections::BTreeSet;

    fn class(machines: JobMachines, jobs: &[&str]) -> ClassDefinition {
        ClassDefinition {
            title: "Tuesday".to_owned(),
            kind: ClassKind::Examination,
            jobs: jobs.iter().map(|job| (*job).to_owned()).collect(),
            machines,
            drills: Vec::new(),
            seed: 7,
            seats: 24,
            only_listed: false,
            opens_ms: None,
            closes_ms: None,
        }
    }

    #[test]
    fn each_seat_gets_its_own_variant_and_the_drawing_goes_on_where_it_was() {
        let library = ContentLibrary::builtin().expect("the content is sound");
        let definition = class(JobMachines::SealedVariants, &["drain-code"]);
        let mut drawing = JobDrawing::new(&library, &definition, []);
        let draw = |drawing: &mut JobDrawing<'_>, seat| {
            let drawn = drawing.draw(0, seat, || true).expect("nothing is wrong");
            let drawn = drawn.expect("there is such a job");
            assert_eq!(drawn.job, "job-1");
            assert!(drawn.draft.is_some(), "{drawn:?}");
            drawn
        };
        let four: Vec<DrawnJob> = (1..=4).map(|seat| draw(&mut drawing, seat)).collect();
        let texts: BTreeSet<&str> = four.iter().map(|drawn| drawn.text.as_str()).collect();
        assert_eq!(texts.len(), 4);
        for drawn in &four {
            let read = library.scenario_source("job-1.ron".to_owned(), drawn.text.clone().into());
            let read = read.expect("it can be read");
            assert_eq!(read.scenario.seed, drawn.seed);
            let title = &read.scenario.title;
            assert_eq!(
                (title.en.as_str(), title.es.as_str()),
                ("Job 1", "Trabajo 1")
            );
        }
        // The third and the fourth again after a restart.
        let taken = four[..2]
            .iter()
            .map(|drawn| (0, drawn.draft.expect("it is one")));
        let mut again = JobDrawing::new(&library, &definition, taken);
        assert_eq!(draw(&mut again, 3), four[2]);
        assert_eq!(draw(&mut again, 4), four[3]);
        assert_eq!(drawing.draw(1, 1, || true), Ok(None));
        let mut broken_off = JobDrawing::new(&library, &definition, []);
        assert_eq!(
            broken_off.draw(0, 1, || false),
            Err(DrawingError::BrokenOff)
        );
    }

    #[test]
    fn as_written_nobody_finds_the_job_by_its_digest() {
        let library = ContentLibrary::builtin().expect("the content is sound");
        let definition = class(
            JobMachines::SealedAsWritten,
            &["drain-code", "no-hot-water"],
        );
        let mut drawing = JobDrawing::new(&library, &definition, []);
        let mut draw = |place, seat| {
            let drawn = drawing.draw(place, seat, || true);
            drawn.expect("nothing is wrong").expect("it is there")
        };
        let (one, other, second) = (draw(0, 1), draw(0, 2), draw(1, 1));
        assert_eq!((one.job.as_str(), second.job.as_str()), ("job-1", "job-2"));
        assert_ne!(one.text, other.text);
        assert_ne!(one.seed, other.seed);
        let original = library.scenario("drain-code").expect("it is there");
        let read = library.scenario_source("job-1.ron".to_owned(), one.text.into());
        let scenario = read.expect("it can be read").scenario;
        assert_eq!(scenario.title.en, "Job 1");
        let title = original.scenario.title.clone();
        assert_eq!(Scenario { title, ..scenario }, original.scenario);
    }
}
