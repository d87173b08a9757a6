//! Variants of a job as scenarios with their words, one after the other.

use super::complaint_words;
use super::content_library::{ContentLibrary, ScenarioSource};
use super::error::ContentError;
use super::error_words::english;
use super::text::{Language, Texts, Value};
use detent_training::lesson::{Bilingual, Mains, Scenario};
use detent_training::practice::drill::SuppliedBoard;
use detent_training::variant::{
    Band, Difficulty, Draft, Variant, VariantError, VariantMaker, VariantRefusal,
};
use ron::ser::PrettyConfig;

/// Drafts in a row that may be refused before there are taken to be no more variants.
pub const MOST_REFUSED: u64 = 400;

/// A proved variant, as a scenario that can be played and kept.
#[derive(Clone, Debug, PartialEq)]
pub struct JobVariant {
    /// Number of its draft, from 0. With original and seed it names the variant.
    pub number: u64,
    /// Its file name, which says nothing of the answer, its text and what that says.
    pub source: ScenarioSource,
    /// How difficult it is.
    pub difficulty: Difficulty,
}

/// First line of a variant's text.
pub(super) const VARIANT_MARK: &str =
    "// A variant that the program drew: customer, machine and fault are made up.";

/// Why there is no variant.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}", english().job_variant_error(self))]
pub enum JobVariantError {
    /// None can be made.
    Variant(#[from] VariantError),
    /// What was made is no scenario.
    Content(#[from] ContentError),
}

/// Variants of one job. The same job, seed and program give the same variants.
#[derive(Clone, Debug)]
pub struct VariantSeries {
    original: ScenarioSource,
    seed: u64,
    maker: VariantMaker,
    next: u64,
}

impl VariantSeries {
    /// Judges how difficult the original is and lays out the drafts, in slices of a few milliseconds each.
    ///
    /// # Errors
    /// The original's difficulty cannot be judged.
    pub async fn begin_in_slices(
        content_library: &ContentLibrary,
        original: &ScenarioSource,
        seed: u64,
    ) -> Result<VariantSeries, JobVariantError> {
        let boards = content_library.boards_with_tables();
        let table = |board: &SuppliedBoard<'_>| content_library.table(&board.library, board.mains);
        let maker = VariantMaker::begin_in_slices(&original.scenario, &boards, table, seed).await?;
        Ok(VariantSeries {
            original: original.clone(),
            seed,
            maker,
            next: 0,
        })
    }

    /// The same, from the draft behind this one on.
    pub fn after(mut self, number: u64) -> VariantSeries {
        self.next = number.saturating_add(1);
        self
    }

    /// The difficulties that a variant may have.
    pub fn band(&self) -> &Band {
        self.maker.band()
    }

    /// How difficult the original's own machines are.
    pub fn own(&self) -> &[Difficulty] {
        self.maker.own()
    }

    /// The next variant that is proved, in slices of a few milliseconds each; none when very many drafts in a row were
    /// refused.
    ///
    /// # Errors
    /// A draft cannot be tried.
    pub async fn next_in_slices(
        &mut self,
        content_library: &ContentLibrary,
    ) -> Result<Option<JobVariant>, JobVariantError> {
        for _ in 0..MOST_REFUSED {
            let number = self.next;
            self.next += 1;
            if let Ok(variant) = self.prove_in_slices(content_library, number).await? {
                return self.job(content_library, variant).map(Some);
            }
        }
        Ok(None)
    }

    /// Draft `number`, from 0, unproved; none where no second fault goes with the first.
    pub fn draft(&self, content_library: &ContentLibrary, number: u64) -> Option<Draft> {
        self.maker
            .draft(&content_library.boards_with_tables(), number)
    }

    /// Proves draft `number`, from 0, for whoever wants to know why drafts are refused. It may be done for many numbers
    /// at once and in any order.
    ///
    /// # Errors
    /// The draft cannot be tried.
    pub async fn prove_in_slices(
        &self,
        content_library: &ContentLibrary,
        number: u64,
    ) -> Result<Result<Variant, VariantRefusal>, JobVariantError> {
        let boards = content_library.boards_with_tables();
        Ok(self.maker.prove_in_slices(&boards, number).await?)
    }

    /// A proved variant as a scenario with words.
    ///
    /// # Errors
    /// It is none that the reader of scenarios takes.
    pub fn job(
        &self,
        content_library: &ContentLibrary,
        variant: Variant,
    ) -> Result<JobVariant, JobVariantError> {
        let number = variant.number;
        let difficulty = variant.difficulty;
        let scenario = self.worded(variant);
        let text = text(&scenario);
        let name = self.original.file.rsplit(['/', '\\']).next();
        let name = name.unwrap_or_default().trim_end_matches(".ron");
        let file = format!("{name}-like-{}-{:04}.ron", self.seed, number + 1);
        Ok(JobVariant {
            number,
            source: content_library.scenario_source(file, text.into_bytes())?,
            difficulty,
        })
    }

    fn worded(&self, variant: Variant) -> Scenario {
        let original = &self.original.scenario;
        let mains = variant.scenario.mains;
        let goal = match &original.course {
            Some(course) => format!("variant-goal-{}", course.part),
            None => "variant-goal".to_owned(),
        };
        let number = variant.number + 1;
        Scenario {
            title: both(mains, |texts| {
                let title = match texts.language() {
                    Language::En => &original.title.en,
                    Language::Es => &original.title.es,
                };
                let args = [
                    ("title", Value::from(title.as_str())),
                    ("number", Value::from(number.to_string())),
                ];
                texts.with("variant-title", &args)
            }),
            complaint: complaint_words(&variant.complaint, mains),
            goal: both(mains, |texts| texts.get(&goal)),
            ..variant.scenario
        }
    }
}

fn both(mains: Mains, said: impl Fn(&Texts) -> String) -> Bilingual {
    let volts = mains.rating().volts as u32;
    let said = |language| said(&Texts::load(language).for_supply(volts));
    Bilingual {
        en: said(Language::En),
        es: said(Language::Es),
    }
}

/// A scenario as the text of its file.
fn text(scenario: &Scenario) -> String {
    let layout = PrettyConfig::new().depth_limit(2);
    // Plain values have nothing to fail at; an empty text would be refused by the reader.
    let body = ron::ser::to_string_pretty(scenario, layout).unwrap_or_default();
    format!("{VARIANT_MARK}\n{body}\n")
}
