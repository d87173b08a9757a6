//! A class from its first line to its last, on one computer.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "where a program meets its system: clock, folder, network"
)]

use super::definition::ClassDefinition;
use super::moment::Moment;
use super::name_list::sorted_names;
use super::pages::PageTexts;
use super::server::{BenchPage, ClassServer, ServerParts, certificate, listen};
use super::store::{COPIES, Database, KeptClass, Scope, StoreError};
use super::{join_code, secret_token};
use detent_class_protocol::{JoinCode, Standing};
use detent_content::{ContentError, ContentLibrary};
use std::net::{IpAddr, Ipv4Addr, SocketAddr, UdpSocket};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;
use std::{fs, io};

/// The database in a class's folder.
const DATABASE: &str = "class.sqlite";
/// Between two copies.
const BETWEEN_COPIES: Duration = Duration::from_secs(10 * 60);
/// So many copies are kept.
const MOST_COPIES: usize = 6;
/// Until those who are being answered have their answer.
const LAST_ANSWERS: Duration = Duration::from_millis(500);

/// How a class is to be served.
pub struct ClassOptions {
    /// Where everything is kept.
    pub folder: PathBuf,
    /// What the class is, where it is not there yet.
    pub definition: ClassDefinition,
    /// In how long it opens by itself, where it is not there yet; at once without.
    pub opens_in: Option<Duration>,
    /// How long it lasts from when it opens by itself, where it is not there yet.
    pub lasts: Option<Duration>,
    /// Names for the list.
    pub names: Vec<String>,
    /// Where to listen.
    pub listen: SocketAddr,
    /// The address that learners are told, where it is not that of this computer: a school's own name, say.
    pub address: Option<String>,
    /// The packed page for browsers, if it is not in one of the usual folders.
    pub page: Option<PathBuf>,
    /// Files of the certificate and its key, where the class is served by TLS.
    pub certificate: Option<(PathBuf, PathBuf)>,
}

/// A class that has begun to listen.
pub struct StartedClass {
    /// What it is.
    pub definition: ClassDefinition,
    /// Whether it was there before.
    pub is_continued: bool,
    /// Where it stands.
    pub standing: Standing,
    /// The address to join at.
    pub address: String,
    /// The code to join with.
    pub code: JoinCode,
    /// The board's address, with the teacher's token behind `#`, where no server ever sees it.
    pub board: String,
    /// Whether there is a page for browsers.
    pub has_page: bool,
    /// Lines of the list that are no names.
    pub refused_names: Vec<String>,
    /// Names that were added to the list.
    pub added_names: u32,
}

/// Why a class cannot be served.
#[derive(Debug, thiserror::Error)]
pub enum ClassError {
    /// It cannot be kept.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// A scenario has a mistake.
    #[error(transparent)]
    Content(#[from] ContentError),
    /// The library has no such job.
    #[error("there is no job named {0}")]
    NoJob(String),
    /// There is no way to listen there.
    #[error("{address}: {reason}")]
    Listen {
        /// Where.
        address: SocketAddr,
        /// The system's reason.
        reason: io::Error,
    },
    /// The class's folder or the page's cannot be used.
    #[error("{}: {reason}", folder.display())]
    Folder {
        /// Which.
        folder: PathBuf,
        /// The system's reason.
        reason: io::Error,
    },
    /// The certificate or its key cannot be used.
    #[error("{}: {reason}", file.display())]
    Certificate {
        /// Which file.
        file: PathBuf,
        /// Why.
        reason: String,
    },
    /// No page lies in the folder that was named.
    #[error("{}: there is no packed page", .0.display())]
    NoPage(PathBuf),
    /// The system gives no threads.
    #[error("{0}")]
    System(io::Error),
}

/// The system's clock.
fn system_clock() -> Moment {
    let since = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH);
    Moment(since.map_or(0, |since| since.as_millis() as u64))
}

/// Serves a class until the program is told to end. `started` is called once, when learners can join.
///
/// # Errors
/// Why it cannot begin.
pub fn serve(
    options: ClassOptions,
    library: Arc<ContentLibrary>,
    started: impl FnOnce(&StartedClass),
) -> Result<(), ClassError> {
    for job in &options.definition.jobs {
        library
            .scenario(job)
            .map_err(|_| ClassError::NoJob(job.clone()))?;
    }
    let in_folder = |reason| ClassError::Folder {
        folder: options.folder.clone(),
        reason,
    };
    fs::create_dir_all(&options.folder).map_err(in_folder)?;
    let certificate = options
        .certificate
        .as_ref()
        .map(|(chain, key)| certificate(chain, key));
    let certificate = certificate
        .transpose()
        .map_err(|(file, reason)| ClassError::Certificate { file, reason })?;
    let scheme = if certificate.is_some() {
        "https"
    } else {
        "http"
    };
    let page = find_page(options.page.as_deref())?;
    let page_texts = PageTexts::in_each_language(&library)?;
    let database = Database::open(&options.folder.join(DATABASE))?;
    let scope = Scope {
        tenant: "local".to_owned(),
        class: "class".to_owned(),
    };
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .enable_all()
        .build()
        .map_err(ClassError::System)?;
    let listener = runtime
        .block_on(tokio::net::TcpListener::bind(options.listen))
        .map_err(|reason| ClassError::Listen {
            address: options.listen,
            reason,
        })?;
    let listening = listener.local_addr().map_err(ClassError::System)?;
    let address = options
        .address
        .unwrap_or_else(|| format!("{scheme}://{}/", on_network(listening)));

    let now = system_clock();
    let token = secret_token();
    let (names, refused_names) = sorted_names(options.names);
    let store = database.store(&scope);
    let (class, is_continued) = match store.class()? {
        Some(class) => (class, true),
        None => {
            let class = KeptClass {
                definition: options
                    .definition
                    .begun(now, options.opens_in, options.lasts),
                code: join_code(),
            };
            store.begin(&class.definition, class.code, &token, now)?;
            (class, false)
        }
    };
    // What is kept of a token cannot be shown again: each start gives a new one.
    store.give_teacher(&token)?;
    let added_names = store.add_names(&names, class.definition.seats)?;
    let standing = class.definition.standing(store.standing()?, now);
    let started_class = StartedClass {
        definition: class.definition.clone(),
        is_continued,
        standing,
        address: address.clone(),
        code: class.code,
        board: format!(
            "{scheme}://{}/teacher#{}",
            on_this_computer(listening),
            String::from(token)
        ),
        has_page: page.is_some(),
        refused_names,
        added_names,
    };
    let (server, threads) = ClassServer::begin(ServerParts {
        database,
        scope,
        class,
        library,
        page,
        page_texts,
        address,
        clock: system_clock,
        verifiers: 1,
    })?;
    started(&started_class);
    let copies = options.folder.join(COPIES);
    runtime.block_on(async {
        let keeping = tokio::spawn(keep_copies(server.clone(), copies));
        listen(listener, server.router(), certificate, told_to_end()).await;
        keeping.abort();
        tokio::time::sleep(LAST_ANSWERS).await;
    });
    server.end();
    runtime.shutdown_timeout(LAST_ANSWERS);
    threads.join();
    Ok(())
}

fn find_page(named: Option<&Path>) -> Result<Option<BenchPage>, ClassError> {
    let at = |folder: &Path| {
        let page = BenchPage::in_folder(folder);
        page.map_err(|reason| ClassError::Folder {
            folder: folder.to_owned(),
            reason,
        })
    };
    if let Some(folder) = named {
        return at(folder)?
            .map(Some)
            .ok_or_else(|| ClassError::NoPage(folder.to_owned()));
    }
    for folder in BenchPage::usual_folders() {
        if let Some(page) = at(&folder)? {
            return Ok(Some(page));
        }
    }
    Ok(None)
}

/// How this computer is reached from the same network: by the address from which it would send something. Nothing is
/// sent; 192.0.2.1 is nobody's (RFC 5737).
fn on_network(listening: SocketAddr) -> SocketAddr {
    if !listening.ip().is_unspecified() {
        return listening;
    }
    let own = || -> io::Result<IpAddr> {
        let socket = UdpSocket::bind((Ipv4Addr::UNSPECIFIED, 0))?;
        socket.connect((Ipv4Addr::new(192, 0, 2, 1), 9))?;
        Ok(socket.local_addr()?.ip())
    };
    SocketAddr::new(
        own().unwrap_or(Ipv4Addr::LOCALHOST.into()),
        listening.port(),
    )
}

fn on_this_computer(listening: SocketAddr) -> SocketAddr {
    match listening.ip().is_unspecified() {
        true => SocketAddr::new(Ipv4Addr::LOCALHOST.into(), listening.port()),
        false => listening,
    }
}

/// Waits until somebody ends the program by its keys, or the system does.
async fn told_to_end() {
    #[cfg(unix)]
    {
        use tokio::signal::unix::{SignalKind, signal};
        if let Ok(mut terminate) = signal(SignalKind::terminate()) {
            tokio::select! {
                _ = tokio::signal::ctrl_c() => {}
                _ = terminate.recv() => {}
            }
            return;
        }
    }
    let _ = tokio::signal::ctrl_c().await;
}

/// Keeps copies of the database, each whole, the newest few.
async fn keep_copies(server: ClassServer, folder: PathBuf) {
    loop {
        tokio::time::sleep(BETWEEN_COPIES).await;
        let (server, folder) = (server.clone(), folder.clone());
        // A copy that fails takes nothing from the class; the next one is tried in its turn.
        let _ = tokio::task::spawn_blocking(move || copy(&server, &folder, system_clock())).await;
    }
}

/// One copy, named by its moment, and away with those that are too many.
fn copy(server: &ClassServer, folder: &Path, now: Moment) -> Result<(), ClassError> {
    let at = |reason| ClassError::Folder {
        folder: folder.to_owned(),
        reason,
    };
    fs::create_dir_all(folder).map_err(at)?;
    server.back_up(&folder.join(format!("class-{:014}.sqlite", now.0 / 1000)))?;
    let mut copies: Vec<PathBuf> = fs::read_dir(folder)
        .map_err(at)?
        .flatten()
        .map(|entry| entry.path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "sqlite"))
        .collect();
    copies.sort();
    for old in copies.iter().rev().skip(MOST_COPIES) {
        fs::remove_file(old).map_err(at)?;
    }
    Ok(())
}
