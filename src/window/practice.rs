//! What ties practice to the window: the learner at the bench, and the drill being done.

use super::attempts::{Attempts, FileExchange};
use super::class::ClassRes;
pub use super::drill::DrillRes;
use super::port::JobSource;
use super::state::{BenchRes, Coached, JobSourceRes, UiState};
use bevy::prelude::*;
use bevy::render::view::screenshot::{Screenshot, ScreenshotCaptured};
use detent_content::{
    KeptProfile, Language, ListedLearner, Preferences, ProfileError, ProfileStore, answers_csv,
    disk, file_date, listed_learners,
};
use detent_training::practice::{
    Answer, Examination, ExaminationError, ExaminationSitting, Exercise, Learner, Moment, Target,
    answers_of_job, coach, hand_record,
};
use detent_training::reason::HandRecord;
use std::path::PathBuf;
use std::sync::Arc;

/// Who practises here, and what they answered so far. Nobody chosen is a guest, whose answers last as long
/// as the program.
#[derive(Resource, Default)]
pub struct LearnerRes {
    store: Option<Box<dyn ProfileStore>>,
    /// Where exported files go; none where the browser hands them out.
    exports: Option<PathBuf>,
    kept: Option<KeptProfile>,
    guest: Vec<Answer>,
    guest_target: Target,
    guest_sittings: Vec<ExaminationSitting>,
    guest_preferences: Preferences,
    learner: Learner,
    /// How this learner's hand did at the entry gesture lately.
    hand: HandRecord,
    known: Option<Arc<[ListedLearner]>>,
    /// Why the learner is not read or not kept, since that went wrong.
    pub storage_error: Option<ProfileError>,
    /// What the panel remembers.
    pub ui_state: PracticeDesk,
}

/// What the practice panel remembers.
#[derive(Default)]
pub struct PracticeDesk {
    /// Progress is shown, not what to practise.
    pub progress: bool,
    /// The new learner's name as typed.
    pub name: String,
    /// Deletion was asked for once.
    pub deleting: bool,
    /// Where the last export went, or why it did not.
    pub exported: Option<Result<String, String>>,
    /// Where the charts stand in the window, in logical pixels.
    pub charts: Rect,
    /// A picture of this part of the window is wanted, in logical pixels.
    pub picture: Option<Rect>,
}

impl LearnerRes {
    /// Learners kept in `store`; their exports go to a folder, if there is one.
    pub fn kept_in(store: Box<dyn ProfileStore>, exports: Option<PathBuf>) -> LearnerRes {
        LearnerRes {
            store: Some(store),
            exports,
            ..LearnerRes::default()
        }
    }

    /// Whoever worked here last goes on; the language that they work in.
    pub fn go_on(&mut self) -> Option<Language> {
        let last = self.store.as_ref()?.last_stem()?;
        self.open(Some(&last))
    }

    /// A guest with these answers.
    pub fn guest(answers: Vec<Answer>) -> LearnerRes {
        LearnerRes {
            learner: Learner::of(&answers),
            hand: hand_record(&answers),
            guest: answers,
            ..LearnerRes::default()
        }
    }

    /// Takes in an answer and keeps it.
    pub fn note(&mut self, answer: Answer) {
        self.learner.note(&answer);
        match &mut self.kept {
            Some(kept) => kept.profile.answers.push(answer),
            None => self.guest.push(answer),
        }
        self.hand = hand_record(self.answers());
        self.save();
    }

    /// Every sitting of an examination so far, in order.
    pub fn sittings(&self) -> &[ExaminationSitting] {
        match &self.kept {
            Some(kept) => &kept.profile.sittings,
            None => &self.guest_sittings,
        }
    }

    fn sittings_mut(&mut self) -> &mut Vec<ExaminationSitting> {
        match &mut self.kept {
            Some(kept) => &mut kept.profile.sittings,
            None => &mut self.guest_sittings,
        }
    }

    /// The sitting that is not closed yet.
    pub fn sitting(&self) -> Option<&ExaminationSitting> {
        self.sittings().last().filter(|sitting| sitting.is_open())
    }

    /// Begins an examination, unless one is open. Every sitting draws its own jobs' seed from when it begins.
    pub fn sit(&mut self, file: &str, examination: &Examination) {
        if self.sitting().is_some() {
            return;
        }
        let (now, file) = (now(), file.to_owned());
        let sitting = ExaminationSitting::begin(file, examination, now.0.unsigned_abs(), now);
        self.sittings_mut().push(sitting);
        self.save();
    }

    /// Changes the open sitting and keeps it where `change` says that it did. Whether a sitting is open and took it.
    pub fn in_sitting(
        &mut self,
        change: impl FnOnce(&mut ExaminationSitting) -> Result<bool, ExaminationError>,
    ) -> bool {
        let sitting = self.sittings_mut().last_mut();
        let sitting = sitting.filter(|sitting| sitting.is_open());
        let changed = sitting.map(change);
        if let Some(Ok(true)) = changed {
            self.save();
        }
        matches!(changed, Some(Ok(_)))
    }

    /// Closes the open sitting: what its jobs say about skills counts from now on.
    pub fn close_sitting(&mut self) {
        let mut answers = Vec::new();
        let closed = self.in_sitting(|sitting| {
            answers = sitting.close(now())?;
            Ok(true)
        });
        if closed {
            for answer in answers {
                self.note(answer);
            }
        }
    }

    /// How this learner's hand did at the entry gesture in the drill's latest tries.
    pub fn hand(&self) -> HandRecord {
        self.hand
    }

    fn save(&mut self) {
        if let (Some(kept), Some(store)) = (&mut self.kept, &self.store) {
            self.storage_error = kept.save(store.as_ref()).err();
            // How this learner stands has changed.
            self.known = None;
        }
    }

    /// Every answer so far, in order.
    pub fn answers(&self) -> &[Answer] {
        match &self.kept {
            Some(kept) => &kept.profile.answers,
            None => &self.guest,
        }
    }

    /// What they say.
    pub fn learner(&self) -> &Learner {
        &self.learner
    }

    /// The learner's name; none for a guest.
    pub fn name(&self) -> Option<&str> {
        Some(&self.kept.as_ref()?.profile.name)
    }

    /// The learner's stem; none for a guest.
    pub fn stem(&self) -> Option<&str> {
        Some(self.kept.as_ref()?.stem())
    }

    /// Share of right answers to aim at.
    pub fn target(&self) -> Target {
        match &self.kept {
            Some(kept) => kept.profile.target,
            None => self.guest_target,
        }
    }

    /// Aims at another share; `keep` when it is settled.
    pub fn aim(&mut self, target: Target, keep: bool) {
        match &mut self.kept {
            Some(kept) => kept.profile.target = target,
            None => self.guest_target = target,
        }
        if keep {
            self.save();
        }
    }

    /// Keys, hands, motion and size of text; a guest's last as long as the program.
    pub fn preferences(&self) -> &Preferences {
        match &self.kept {
            Some(kept) => &kept.profile.preferences,
            None => &self.guest_preferences,
        }
    }

    /// Prefers others from now on, and keeps them.
    pub fn prefer(&mut self, preferences: Preferences) {
        match &mut self.kept {
            Some(kept) => kept.profile.preferences = preferences,
            None => self.guest_preferences = preferences,
        }
        self.save();
    }

    /// Whether learners can be kept here.
    pub fn keeps(&self) -> bool {
        self.store.is_some()
    }

    /// Where they are kept, if that can be pointed at.
    pub fn place(&self) -> Option<String> {
        self.store.as_ref()?.place()
    }

    /// Everybody who can be chosen, and how they stand; looked up when first asked for after a change.
    pub fn known(&mut self) -> Arc<[ListedLearner]> {
        let stores = self.store.iter();
        let look = || (stores.flat_map(|store| listed_learners(store.as_ref()))).collect();
        Arc::clone(self.known.get_or_insert_with(look))
    }

    /// Chooses a learner, or the guest, from now on; the language that the learner works in.
    pub fn choose(&mut self, stem: Option<&str>) -> Option<Language> {
        let language = self.open(stem);
        if let (None, Some(store)) = (&self.storage_error, &self.store) {
            self.storage_error = store.keep_last_stem(stem).err();
        }
        language
    }

    fn open(&mut self, stem: Option<&str>) -> Option<Language> {
        self.ui_state = PracticeDesk {
            progress: self.ui_state.progress,
            ..PracticeDesk::default()
        };
        self.storage_error = None;
        let opened = stem.zip(self.store.as_ref());
        let opened = opened.map(|(stem, store)| KeptProfile::open(store.as_ref(), stem));
        self.kept = match opened.transpose() {
            Ok(kept) => kept,
            Err(storage_error) => {
                self.storage_error = Some(storage_error);
                return None;
            }
        };
        self.learner = Learner::of(self.answers());
        self.hand = hand_record(self.answers());
        self.kept.as_ref()?.profile.language
    }

    /// Makes a new learner with the name that was typed, and chooses them.
    pub fn create(&mut self, language: Language) {
        let Some(store) = &self.store else { return };
        match KeptProfile::create(store.as_ref(), &self.ui_state.name, language) {
            Ok(kept) => {
                self.known = None;
                let stem = kept.stem().to_owned();
                self.choose(Some(&stem));
            }
            Err(storage_error) => self.storage_error = Some(storage_error),
        }
    }

    /// Deletes the learner at hand for good; a guest goes on.
    pub fn delete(&mut self) {
        let (Some(kept), Some(store)) = (&self.kept, &self.store) else {
            return;
        };
        match store.remove(kept.stem()) {
            Ok(()) => {
                self.known = None;
                self.choose(None);
            }
            Err(storage_error) => {
                self.ui_state.deleting = false;
                self.storage_error = Some(storage_error);
            }
        }
    }

    /// The learner works in this language now; kept with the next answer.
    pub fn speak(&mut self, language: Language) {
        if let Some(kept) = &mut self.kept {
            kept.profile.language = Some(language);
        }
    }

    /// Hands out a file of the learner's, by `file_exchange` where people cannot reach files themselves.
    pub fn export(&mut self, kind: &str, bytes: &[u8], file_exchange: Option<&dyn FileExchange>) {
        let stem = self.stem().unwrap_or("guest");
        let name = format!("{stem}-{}.{kind}", file_date(now()));
        self.ui_state.exported = Some(match (file_exchange, &self.exports) {
            (Some(file_exchange), _) => {
                file_exchange.save_copy(&name, bytes);
                Ok(name)
            }
            (None, Some(folder)) => {
                let path = folder.join(name);
                let place = path.display().to_string();
                match disk::write_whole(&path, bytes) {
                    Ok(()) => Ok(place),
                    Err(error) => Err(format!("{place}: {error}")),
                }
            }
            (None, None) => Err(name),
        });
    }

    /// Hands out the answers as comma-separated values.
    pub fn export_csv(&mut self, file_exchange: Option<&dyn FileExchange>) {
        let bytes = answers_csv(self.answers());
        self.export("csv", &bytes, file_exchange);
    }
}

/// Lets whoever worked here last go on, in their own language unless another was `asked` for.
pub fn welcome(app: &mut App, mut learner: LearnerRes, asked: bool) {
    if let Some(language) = learner.go_on().filter(|_| !asked) {
        app.world_mut().resource_mut::<UiState>().language = language;
    }
    app.insert_resource(learner);
}

/// The learner's own time now.
pub fn now() -> Moment {
    Moment(chrono::Utc::now().timestamp())
}

/// How far clocks here are ahead of UTC, s.
pub fn ahead_s() -> i64 {
    i64::from(chrono::Local::now().offset().local_minus_utc())
}

/// A job that was handed in counts once, for the learner who is there.
fn take_in_jobs(
    mut bench: ResMut<BenchRes>,
    mut learner: ResMut<LearnerRes>,
    ui_state: Res<UiState>,
    mut class: ResMut<ClassRes>,
) {
    if let Some((file, score, took_s)) = bench.take_result() {
        if ui_state.sealed {
            class.keep_back((file, score, took_s));
            return;
        }
        if ui_state.examined.is_some() {
            // What is not in the set, or comes after its end, counts nothing.
            learner.in_sitting(|sitting| {
                sitting.hand_in(&file, &score, now(), took_s)?;
                Ok(true)
            });
            return;
        }
        for answer in answers_of_job(&file, &score, now(), took_s) {
            learner.note(answer);
        }
    }
}

/// The one thing to work on after the job that lies finished on the bench, for the learner who is there.
pub fn coached(bench: &BenchRes, learner: &Learner, jobs: &dyn JobSource) -> Option<Coached> {
    let done = (bench.job().file.as_str(), bench.score()?);
    let course = jobs.offers().iter().map(|offer| &offer.course);
    let advice = coach(done, learner, course, now())?;
    let title = match &advice.exercise {
        Exercise::Job(file) => {
            let mut offers = jobs.offers().iter();
            let offer = offers.find(|offer| offer.course.file == *file);
            offer.map(|offer| offer.title.clone())
        }
        Exercise::Drill(_) => None,
    };
    Some(Coached { advice, title })
}

/// What is to be worked on follows from the job and from what the learner can do by now.
fn ask_coach(
    bench: Res<BenchRes>,
    learner: Res<LearnerRes>,
    jobs: Res<JobSourceRes>,
    mut ui_state: ResMut<UiState>,
) {
    let coached = coached(&bench, learner.learner(), jobs.0.as_ref());
    if ui_state.coached != coached {
        ui_state.coached = coached;
    }
}

/// Takes the picture that was asked for.
fn take_picture(mut commands: Commands, mut learner: ResMut<LearnerRes>, window: Single<&Window>) {
    let Some(part) = learner.ui_state.picture.take() else {
        return;
    };
    let scale = window.scale_factor();
    commands.spawn(Screenshot::primary_window()).observe(
        move |shot: On<ScreenshotCaptured>,
              mut learner: ResMut<LearnerRes>,
              jobs: Res<JobSourceRes>| {
            let file_exchange = jobs.0.attempts().and_then(Attempts::file_exchange);
            match png(shot.image.clone(), part, scale) {
                Ok(bytes) => learner.export("png", &bytes, file_exchange),
                Err(reason) => learner.ui_state.exported = Some(Err(reason)),
            }
        },
    );
}

/// That part of a picture of the window as a PNG file's bytes.
fn png(image: Image, part: Rect, scale: f32) -> Result<Vec<u8>, String> {
    let image = image.try_into_dynamic().map_err(|e| e.to_string())?;
    let [x, y, width, height] =
        [part.min.x, part.min.y, part.width(), part.height()].map(|v| (v * scale) as u32);
    let format = bevy::image::ImageFormat::Png.as_image_crate_format();
    let format = format.ok_or("PNG was left out of this program")?;
    let mut bytes = std::io::Cursor::new(Vec::new());
    let cut = image.crop_imm(x, y, width, height).to_rgb8();
    cut.write_to(&mut bytes, format)
        .map_err(|e| e.to_string())?;
    Ok(bytes.into_inner())
}

/// Jobs that are handed in, and pictures that are asked for.
pub fn plugin(app: &mut App) {
    app.add_systems(Update, (take_in_jobs, ask_coach).chain())
        .add_systems(Last, take_picture);
}

#[cfg(test)]
mod tests {
    use super::*;
    use bevy::asset::RenderAssetUsages;
    use bevy::image::{CompressedImageFormats, ImageSampler, ImageType};
    use bevy::render::render_resource::{Extent3d, TextureDimension, TextureFormat};

    #[test]
    fn the_picture_saved_is_the_part_that_was_asked_for() {
        // A window of 8 by 6 at scale 2: red, and the lower right quarter green.
        let (width, height) = (16_u32, 12_u32);
        let pixel = |n: u32| match (n % width >= 8, n / width >= 6) {
            (true, true) => [0, 255, 0, 255],
            _ => [255, 0, 0, 255],
        };
        let image = Image::new(
            Extent3d {
                width,
                height,
                depth_or_array_layers: 1,
            },
            TextureDimension::D2,
            (0..width * height).flat_map(pixel).collect(),
            TextureFormat::Rgba8UnormSrgb,
            RenderAssetUsages::MAIN_WORLD,
        );
        let part = Rect::new(4.0, 3.0, 8.0, 6.0);
        let bytes = png(image, part, 2.0).expect("PNG is built in");
        let again = Image::from_buffer(
            &bytes,
            ImageType::Extension("png"),
            CompressedImageFormats::NONE,
            true,
            ImageSampler::Default,
            RenderAssetUsages::MAIN_WORLD,
        );
        let again = again.expect("it is a PNG");
        assert_eq!((again.width(), again.height()), (8, 6));
        let pixels = again.data.expect("it has pixels");
        assert!(pixels.chunks(4).all(|pixel| pixel[..3] == [0, 255, 0]));
    }
}
