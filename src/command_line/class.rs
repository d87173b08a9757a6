//! `detent class`: one computer serves a class.

use super::output::Output;
use super::{Failure, LibraryFolder};
use detent_class::definition::{ClassDefinition, JobMachines, MOST_SEATS};
use detent_class::protocol::{ClassKind, Standing};
use detent_class::store::StoreError;
use detent_class::{ClassError, ClassOptions, StartedClass, names_in, seed, serve};
use detent_content::{ContentLibrary, Language, Texts, Value, disk, read_class_plan};
use detent_training::practice::drill::{MOST_QUESTIONS, QUESTIONS};
use detent_training::practice::{ClassPlan, ClassPurpose, PlannedDrill, Skill};
use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::path::PathBuf;
use std::process::{Command, Stdio};
use std::sync::Arc;
use std::time::Duration;

/// Where a class listens.
const PORT: u16 = 8720;
/// Most learners, where nobody asks for another number.
const USUAL_SEATS: u32 = 60;

#[derive(Debug, clap::Args)]
pub(super) struct ClassArgs {
    #[arg(long, value_name = "FOLDER")]
    data: Option<PathBuf>,
    #[arg(long, value_name = "FILE", conflicts_with_all = [
        "title", "job", "drill", "questions", "examination", "opens_in", "minutes", "only_listed", "seats",
    ])]
    plan: Option<PathBuf>,
    #[arg(long)]
    title: Option<String>,
    #[arg(long, value_name = "JOB")]
    job: Vec<String>,
    #[arg(long, value_name = "SKILL")]
    drill: Vec<Skill>,
    #[arg(long, value_name = "COUNT", requires = "drill")]
    questions: Option<u32>,
    #[arg(long)]
    examination: bool,
    #[arg(long, requires = "examination")]
    as_written: bool,
    #[arg(long, value_name = "MINUTES")]
    opens_in: Option<u32>,
    #[arg(long, value_name = "MINUTES")]
    minutes: Option<u32>,
    #[arg(long, value_name = "FILE")]
    names: Option<PathBuf>,
    #[arg(long)]
    only_listed: bool,
    #[arg(long)]
    seats: Option<u32>,
    #[arg(long)]
    port: Option<u16>,
    #[arg(long)]
    bind: Option<IpAddr>,
    #[arg(long)]
    address: Option<String>,
    #[arg(long, value_name = "FOLDER")]
    page: Option<PathBuf>,
    #[arg(long, value_name = "FILE", requires = "key")]
    cert: Option<PathBuf>,
    #[arg(long, value_name = "FILE", requires = "cert")]
    key: Option<PathBuf>,
    #[arg(long)]
    no_open: bool,
}

pub(super) fn class(
    args: &ClassArgs,
    library: &LibraryFolder,
    language: Language,
) -> Result<(), Failure> {
    let texts = Texts::load(language);
    let library = library.open()?;
    let plan = match &args.plan {
        Some(file) => {
            let known: Vec<&str> = library.stems().collect();
            let bytes = disk::read_bytes(file)?;
            read_class_plan(&file.display().to_string(), &bytes, &known)?
        }
        None => plan_of_options(args, &library, &texts)?,
    };
    let names = match &args.names {
        Some(file) => names_in(&String::from_utf8_lossy(&disk::read_bytes(file)?)),
        None => Vec::new(),
    };
    let folder = match &args.data {
        Some(folder) => folder.clone(),
        None => disk::data_folder()
            .ok_or(Failure::NoDataFolder)?
            .join("class"),
    };
    let listen = SocketAddr::new(
        args.bind.unwrap_or(Ipv4Addr::UNSPECIFIED.into()),
        args.port.unwrap_or(PORT),
    );
    let minutes = |minutes: u32| Duration::from_secs(60 * u64::from(minutes));
    let options = ClassOptions {
        folder: folder.clone(),
        opens_in: plan.opens_in_minutes.map(minutes),
        lasts: plan.minutes.map(minutes),
        definition: ClassDefinition {
            title: plan.title,
            kind: match plan.kind {
                ClassPurpose::Practice => ClassKind::Practice,
                ClassPurpose::Examination => ClassKind::Examination,
            },
            machines: match (plan.kind, args.as_written) {
                (ClassPurpose::Practice, _) => JobMachines::Named,
                (ClassPurpose::Examination, true) => JobMachines::SealedAsWritten,
                (ClassPurpose::Examination, false) => JobMachines::SealedVariants,
            },
            jobs: plan.jobs,
            drills: plan.drills,
            seed: seed(),
            seats: plan.seats.unwrap_or(USUAL_SEATS),
            only_listed: plan.only_listed,
            opens_ms: None,
            closes_ms: None,
        },
        names,
        listen,
        address: args.address.clone(),
        page: args.page.clone(),
        certificate: args.cert.clone().zip(args.key.clone()),
    };
    let opens = !args.no_open;
    let mut told = Ok(());
    serve(options, Arc::new(library), |started| {
        told = tell(started, &folder.display().to_string(), &texts);
        if opens {
            open_in_browser(&started.board);
        }
    })
    .map_err(Failure::Class)?;
    told
}

/// The plan that the options of the command line make.
fn plan_of_options(
    args: &ClassArgs,
    library: &ContentLibrary,
    texts: &Texts,
) -> Result<ClassPlan, Failure> {
    let seats = args.seats.unwrap_or(USUAL_SEATS);
    if !(1..=MOST_SEATS).contains(&seats) {
        let (found, most) = (seats.into(), MOST_SEATS.into());
        return Err(Failure::Seats { found, most });
    }
    let questions = args.questions.unwrap_or(QUESTIONS as u32);
    if !(1..=MOST_QUESTIONS as u32).contains(&questions) {
        let (found, most) = (questions.into(), MOST_QUESTIONS as u64);
        return Err(Failure::Questions { found, most });
    }
    for (n, drill) in args.drill.iter().enumerate() {
        if args.drill[..n].contains(drill) {
            return Err(Failure::DrillTwice(*drill));
        }
    }
    let jobs = if args.job.is_empty() && args.drill.is_empty() {
        let course = library.scenarios()?;
        course
            .iter()
            .filter(|job| job.scenario.course.is_some())
            .map(|job| job.stem())
            .collect()
    } else {
        args.job.clone()
    };
    let drills = args.drill.iter();
    Ok(ClassPlan {
        title: (args.title.clone()).unwrap_or_else(|| texts.get("cli-class-title")),
        kind: match args.examination {
            true => ClassPurpose::Examination,
            false => ClassPurpose::Practice,
        },
        jobs,
        drills: drills
            .map(|skill| PlannedDrill {
                skill: *skill,
                questions,
            })
            .collect(),
        opens_in_minutes: args.opens_in,
        minutes: args.minutes,
        seats: Some(seats),
        only_listed: args.only_listed,
    })
}

/// What the instructor has to know, line by line.
fn tell(started: &StartedClass, folder: &str, texts: &Texts) -> Result<(), Failure> {
    let mut out = Output::standard();
    let definition = &started.definition;
    let code = started.code.to_string();
    let (first, second) = code.split_at(code.len() / 2);
    let code = format!("{first} {second}");
    let args = [
        ("title", Value::from(definition.title.as_str())),
        ("jobs", definition.jobs.len().into()),
        ("folder", folder.into()),
    ];
    let key = if started.is_continued {
        "cli-class-continued"
    } else {
        "cli-class-begun"
    };
    out.line(texts.with(key, &args))?;
    if !definition.drills.is_empty() {
        let count = [("count", Value::from(definition.drills.len()))];
        out.line(texts.with("cli-class-drills", &count))?;
    }
    for refused in &started.refused_names {
        out.line(texts.with("cli-class-no-name", &[("line", refused.as_str().into())]))?;
    }
    if started.added_names > 0 {
        out.line(texts.with("cli-class-names", &[("count", started.added_names.into())]))?;
    }
    out.line(texts.with(
        "cli-class-join",
        &[("address", started.address.as_str().into())],
    ))?;
    out.line(texts.with("cli-class-code", &[("code", code.into())]))?;
    out.line(texts.with(
        "cli-class-board",
        &[("address", started.board.as_str().into())],
    ))?;
    match started.standing {
        Standing::NotOpen { in_s } => {
            let args = [("minutes", Value::from(in_s.div_ceil(60)))];
            out.line(texts.with("cli-class-opens", &args))?;
        }
        Standing::Open { .. } | Standing::Paused | Standing::Closed => {}
    }
    let key = if started.has_page {
        "cli-class-page"
    } else {
        "cli-class-no-page"
    };
    out.line(texts.with(key, &[("address", started.address.as_str().into())]))?;
    if started.address.starts_with("http://") {
        out.line(texts.get("cli-class-plain"))?;
    }
    out.line(texts.get("cli-class-end"))
}

/// Opens an address in the browser that the system prefers, where it has one.
fn open_in_browser(address: &str) {
    let program = if cfg!(windows) {
        "explorer"
    } else if cfg!(target_vendor = "apple") {
        "open"
    } else {
        "xdg-open"
    };
    let mut browser = Command::new(program);
    browser
        .arg(address)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null());
    // The address was told, too: whoever has no such program types it.
    let _ = browser.spawn();
}

/// Why the class could not begin, in the words of a language.
pub(super) fn words(error: &ClassError, texts: &Texts) -> String {
    let file = |path: &std::path::Path| Value::from(path.display().to_string());
    let system = |reason: &std::io::Error| Value::from(texts.system_reason(&reason.into()));
    match error {
        ClassError::Content(error) => texts.content_error(error),
        ClassError::NoJob(job) => {
            texts.with("cli-class-error-job", &[("job", job.as_str().into())])
        }
        ClassError::Listen { address, reason } => {
            let args = [
                ("address", Value::from(address.to_string())),
                ("reason", system(reason)),
            ];
            texts.with("cli-class-error-listen", &args)
        }
        ClassError::Folder { folder, reason } => texts.with(
            "cli-class-error-system",
            &[("file", file(folder)), ("reason", system(reason))],
        ),
        ClassError::Certificate { file: path, reason } => {
            let args = [("file", file(path)), ("reason", reason.as_str().into())];
            texts.with("cli-class-error-certificate", &args)
        }
        ClassError::NoPage(folder) => texts.with("cli-class-error-page", &[("file", file(folder))]),
        ClassError::System(reason) => {
            texts.with("cli-class-error-threads", &[("reason", system(reason))])
        }
        ClassError::Store(error) => store_words(error, texts),
    }
}

fn store_words(error: &StoreError, texts: &Texts) -> String {
    let file = |path: &std::path::Path| Value::from(path.display().to_string());
    match error {
        StoreError::Taken(path) => texts.with("cli-class-error-taken", &[("file", file(path))]),
        StoreError::NetworkShare { file: path, kind } => texts.with(
            "cli-class-error-share",
            &[("file", file(path)), ("kind", kind.as_str().into())],
        ),
        StoreError::Foreign(path) => texts.with("cli-class-error-foreign", &[("file", file(path))]),
        StoreError::Newer(path) => texts.with("cli-class-error-newer", &[("file", file(path))]),
        StoreError::Damaged { file: path, found } => texts.with(
            "cli-class-error-damaged",
            &[("file", file(path)), ("found", found.as_str().into())],
        ),
        StoreError::Full => texts.get("cli-class-error-full"),
        StoreError::Name(path) => texts.with("cli-class-error-name", &[("file", file(path))]),
        StoreError::System { file: path, reason } => texts.with(
            "cli-class-error-system",
            &[("file", file(path)), ("reason", reason.as_str().into())],
        ),
        StoreError::Row(_)
        | StoreError::Busy
        | StoreError::Sqlite(_)
        | StoreError::Commit(_)
        | StoreError::Ended => texts.with(
            "cli-class-error-database",
            &[("reason", error.to_string().into())],
        ),
    }
}
