//! Handout and key of the job on the bench, printed as PDF files beside it.

use super::{OwnTexts, StorageError};
use crate::background::Background;
use detent_content::{ContentLibrary, Language, ScenarioSource, Texts};
use detent_paper::{PaperError, PaperSize, SheetJob, answer_key, handout};
use std::sync::Arc;

/// What became of the last wish to print.
#[derive(Clone, Debug, PartialEq)]
pub enum PrintedJob {
    /// Handout and key are there.
    In([String; 2]),
    /// These files are there already: printed again only over them.
    Taken(Vec<String>),
    /// There is no paper of this job.
    NoPaper(PaperError),
    /// The system refused.
    Failed(StorageError),
}

impl PrintedJob {
    /// Why nothing was printed, in a sentence, where something went wrong.
    pub fn trouble(&self, texts: &Texts) -> Option<String> {
        match self {
            PrintedJob::In(_) | PrintedJob::Taken(_) => None,
            PrintedJob::NoPaper(PaperError::SetUp(error)) => Some(texts.set_up_error(error)),
            PrintedJob::NoPaper(PaperError::Path(error)) => Some(texts.path_error(error)),
            PrintedJob::NoPaper(PaperError::Refused(why)) => Some(why.clone()),
            PrintedJob::Failed(error) => Some(error.words(texts)),
        }
    }
}

/// The bytes of handout and key.
type Printed = Result<[Vec<u8>; 2], PaperError>;

/// A job that is being printed.
struct Printing {
    /// The names of the two files.
    names: [String; 2],
    /// Whether files of these names may be written over.
    replace: bool,
    work: Background<Printed>,
}

/// The paper of the job on the bench.
#[derive(Default)]
pub struct JobPaper {
    /// Size of the sheets.
    pub size: PaperSize,
    printing: Option<Printing>,
    last: Option<PrintedJob>,
}

impl JobPaper {
    /// Prints a sound job: over files that are there already only where `replace` says so.
    pub fn print(
        &mut self,
        (stem, source): (&str, &ScenarioSource),
        (library, language): (&Arc<ContentLibrary>, Language),
        own_jobs: &dyn OwnTexts,
        replace: bool,
    ) {
        let names = ["handout", "key"].map(|what| format!("{stem}-{what}.pdf"));
        if !replace {
            let there = names.iter().map(|name| own_jobs.beside(name));
            match there.collect::<Result<Vec<_>, _>>() {
                Err(error) => {
                    self.last = Some(PrintedJob::Failed(error));
                    return;
                }
                Ok(there) => {
                    let taken: Vec<String> = there.into_iter().flatten().collect();
                    if !taken.is_empty() {
                        self.last = Some(PrintedJob::Taken(taken));
                        return;
                    }
                }
            }
        }
        let (library, source, size) = (Arc::clone(library), source.clone(), self.size);
        let work = async move {
            let jobs = [SheetJob {
                source: &source,
                seed: source.scenario.seed,
                variant: None,
            }];
            Ok([
                handout(&library, &jobs, language, size)?,
                answer_key(&library, &jobs, language, size)?,
            ])
        };
        self.last = None;
        self.printing = Some(Printing {
            names,
            replace,
            work: Background::begin(Box::pin(work)),
        });
    }

    /// Once a frame: writes the two files once both are made, so that there is no handout without its key.
    pub fn watch(&mut self, own_jobs: &dyn OwnTexts) {
        if let Some(printing) = &mut self.printing {
            printing.work.go_on();
        }
        match self.printing.take() {
            Some(Printing {
                work: Background::Done(printed),
                names: [handout, key],
                replace,
            }) => {
                self.last = Some(match printed {
                    Err(error) => PrintedJob::NoPaper(error),
                    Ok([of_handout, of_key]) => {
                        let put =
                            |name: &str, bytes: &[u8]| own_jobs.put_beside(name, bytes, replace);
                        let written = put(&handout, &of_handout)
                            .and_then(|handout| Ok([handout, put(&key, &of_key)?]));
                        match written {
                            Ok(files) => PrintedJob::In(files),
                            Err(error) => PrintedJob::Failed(error),
                        }
                    }
                });
            }
            printing => self.printing = printing,
        }
    }

    /// Whether it is being printed.
    pub fn is_printing(&self) -> bool {
        self.printing.is_some()
    }

    /// What became of the last wish to print.
    pub fn last(&self) -> Option<&PrintedJob> {
        self.last.as_ref()
    }

    /// Takes back a wish to print.
    pub fn forget(&mut self) {
        self.last = None;
    }

    /// Waits until it is printed.
    #[cfg(test)]
    pub fn wait(&mut self, own_jobs: &dyn OwnTexts) {
        if let Some(printing) = &mut self.printing {
            printing.work.wait();
        }
        self.watch(own_jobs);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workshop::OwnTextFolder;

    #[test]
    fn handout_and_key_lie_beside_the_job_and_replace_nothing_unasked() {
        let library = Arc::new(ContentLibrary::builtin().expect("the built-in content is sound"));
        let source = library.scenario("drain-code").expect("built in");
        let folder = tempfile::tempdir().expect("a folder");
        let own_jobs = OwnTextFolder::new(folder.path().join("jobs"));
        let job = ("own-job", &source);
        let mut paper = JobPaper::default();
        paper.print(job, (&library, Language::En), &own_jobs, false);
        assert!(paper.is_printing());
        paper.wait(&own_jobs);
        let Some(PrintedJob::In(files)) = paper.last().cloned() else {
            panic!("{:?}", paper.last());
        };
        let read = |file: &String| std::fs::read(file).expect("there");
        let [handout, key] = files.each_ref().map(read);
        assert!(handout.starts_with(b"%PDF-") && key.starts_with(b"%PDF-"));
        assert_ne!(handout, key);
        // A file of this name stays as it is until somebody wants it replaced.
        std::fs::write(&files[0], "somebody's own").expect("written");
        paper.size = PaperSize::Letter;
        paper.print(job, (&library, Language::Es), &own_jobs, false);
        assert!(!paper.is_printing());
        assert_eq!(paper.last(), Some(&PrintedJob::Taken(files.to_vec())));
        assert_eq!(read(&files[0]), b"somebody's own");
        assert_eq!(read(&files[1]), key);
        paper.print(job, (&library, Language::Es), &own_jobs, true);
        paper.wait(&own_jobs);
        assert_eq!(paper.last(), Some(&PrintedJob::In(files.clone())));
        let [in_spanish, its_key] = files.each_ref().map(read);
        assert!(in_spanish.starts_with(b"%PDF-") && in_spanish != handout && its_key != key);
        // Papers are no jobs.
        assert_eq!(own_jobs.stems(), [""; 0]);
    }

    #[test]
    fn a_folder_that_takes_no_paper_says_so() {
        let library = Arc::new(ContentLibrary::builtin().expect("the built-in content is sound"));
        let source = library.scenario("drain-code").expect("built in");
        let folder = tempfile::tempdir().expect("a folder");
        let in_the_way = folder.path().join("file");
        std::fs::write(&in_the_way, "").expect("a file");
        let own_jobs = OwnTextFolder::new(in_the_way.join("jobs"));
        let mut paper = JobPaper::default();
        paper.print(
            ("own-job", &source),
            (&library, Language::En),
            &own_jobs,
            false,
        );
        paper.wait(&own_jobs);
        let last = paper.last().expect("told");
        assert!(matches!(last, PrintedJob::Failed(_)), "{last:?}");
        assert!(last.trouble(&Texts::load(Language::En)).is_some());
    }
}
