//! Attempts in the browser's own database, as the same text that a file would hold.
//!
//! Every attempt is held in memory too: what the browser does not keep can still be carried out.
//! Each action writes its whole attempt in one transaction, so that a tab closed in the middle loses
//! at most that action.

use super::{ask_for_file, ask_for_library, date_now, save_copy};
use crate::attempts::{AttemptSink, Attempts, FileExchange, LibraryForm, StorageError, free_name};
use crate::library::{CarriedFiles, CarriedLibrary, LibraryPlace};
use detent_simulation::units::Time;
use detent_training::bench::Action;
use detent_training::record::{AttemptLog, Footer, Header, LogError, PART, ROUND, read_attempt};
use idb::event::DatabaseEvent as _;
use idb::{Database, Error, ObjectStore, TransactionMode, TransactionResult};
use js_sys::{Array, Object, Reflect, Uint8Array};
use std::cell::RefCell;
use std::collections::{BTreeMap, VecDeque};
use std::io::{self, Write};
use std::rc::Rc;
use std::sync::{Mutex, MutexGuard, PoisonError};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::spawn_local;

const DATABASE: &str = "detent";
/// Version of the database's layout.
const LAYOUT: u32 = 2;
/// Records `{text, at, changed}` by the attempt's name.
const STORE: &str = "attempts";
/// The library that is open, under [`OPEN_LIBRARY`]: `{name, zip}`, or `{name, paths, contents}` for a folder.
const LIBRARY_STORE: &str = "library";
const OPEN_LIBRARY: &str = "open";
/// One attempt.
#[derive(Clone, Default)]
struct Entry {
    text: Vec<u8>,
    /// How far the clock had come.
    at: Option<Time>,
    /// When it was changed last, ms since 1970.
    changed: f64,
}

struct State {
    entries: BTreeMap<String, Entry>,
    arrived: VecDeque<(String, Vec<u8>)>,
    arrived_library: Option<CarriedLibrary>,
    storage_error: Option<StorageError>,
    /// Another tab writes now.
    let_go: bool,
}

static STATE: Mutex<State> = Mutex::new(State {
    entries: BTreeMap::new(),
    arrived: VecDeque::new(),
    arrived_library: None,
    storage_error: None,
    let_go: false,
});

thread_local! {
    static OPEN: RefCell<Option<Rc<Database>>> = const { RefCell::new(None) };
}

fn state() -> MutexGuard<'static, State> {
    STATE.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Opens the database and reads what is in it; the library that was open last, if there is one. What goes wrong shows as
/// [`Attempts::storage_error`].
pub(super) async fn open() -> Option<CarriedLibrary> {
    match try_to_open().await {
        Ok(library) => library,
        Err(error) => {
            state().storage_error = Some(storage_error(&error));
            None
        }
    }
}

async fn try_to_open() -> Result<Option<CarriedLibrary>, Error> {
    let mut database = Database::builder(DATABASE)
        .version(LAYOUT)
        .add_object_store(ObjectStore::builder(STORE))
        .add_object_store(ObjectStore::builder(LIBRARY_STORE))
        .build()
        .await?;
    // A newer Detent in another tab may change the layout: do not stand in its way.
    database.on_version_change(|event| {
        if let Ok(database) = event.database() {
            database.close();
        }
    });
    let both = [STORE, LIBRARY_STORE];
    let transaction = database.transaction(&both, TransactionMode::ReadOnly)?;
    let store = transaction.object_store(STORE)?;
    let keys = store.get_all_keys(None, None)?.await?;
    let values = store.get_all(None, None)?.await?;
    let library = transaction.object_store(LIBRARY_STORE)?;
    let library = library.get(JsValue::from(OPEN_LIBRARY))?.await?;
    transaction.await?;
    let read = keys.iter().zip(&values);
    state().entries = read
        .filter_map(|(key, value)| Some((key.as_string()?, entry(value))))
        .collect();
    OPEN.set(Some(Rc::new(database)));
    Ok(library.as_ref().and_then(carried))
}

fn field(value: &JsValue, name: &str) -> JsValue {
    Reflect::get(value, &name.into()).unwrap_or(JsValue::UNDEFINED)
}

/// A library as it was kept.
fn carried(value: &JsValue) -> Option<CarriedLibrary> {
    let bytes = |value: JsValue| Some(value.dyn_into::<Uint8Array>().ok()?.to_vec());
    let name = field(value, "name").as_string()?;
    let files = match bytes(field(value, "zip")) {
        Some(zip) => CarriedFiles::Zip(zip),
        None => {
            let list = |name: &str| field(value, name).dyn_into::<Array>().ok();
            let (paths, contents) = (list("paths")?, list("contents")?);
            let paths = paths.iter().map(|path| path.as_string());
            let contents = contents.iter().map(bytes);
            let files = paths.zip(contents).map(|(path, bytes)| path.zip(bytes));
            CarriedFiles::Folder(files.collect::<Option<_>>()?)
        }
    };
    Some(CarriedLibrary { name, files })
}

fn library_record(carried: &CarriedLibrary) -> JsValue {
    let bytes = |bytes: &[u8]| JsValue::from(Uint8Array::from(bytes));
    let name = ("name", carried.name.as_str().into());
    match &carried.files {
        CarriedFiles::Zip(zip) => object([name, ("zip", bytes(zip))]),
        CarriedFiles::Folder(files) => {
            let paths = files.iter().map(|(path, _)| JsValue::from(path.as_str()));
            let paths = paths.collect::<Array>().into();
            let contents = files.iter().map(|(_, content)| bytes(content));
            let contents = contents.collect::<Array>().into();
            object([name, ("paths", paths), ("contents", contents)])
        }
    }
}

/// A plain object with these properties.
fn object<const N: usize>(properties: [(&str, JsValue); N]) -> JsValue {
    let object = Object::new();
    for (name, value) in properties {
        // A plain object takes any property.
        let _ = Reflect::set(&object, &name.into(), &value);
    }
    object.into()
}

/// Keeps the library that is open, so that it is open the next time too, or forgets the one that was.
pub(crate) fn keep_library(place: &LibraryPlace) {
    let record = match place {
        LibraryPlace::Carried(carried) => Some(library_record(carried)),
        LibraryPlace::BuiltIn | LibraryPlace::Folder(_) => None,
    };
    keep_in(LIBRARY_STORE, vec![(OPEN_LIBRARY.to_owned(), record)]);
}

fn entry(value: &JsValue) -> Entry {
    let field = |name: &str| field(value, name);
    let at = field("at").as_f64().filter(|at| *at >= 0.0);
    Entry {
        // Anything but text reads as an empty attempt, which is shown as damaged.
        text: field("text").as_string().unwrap_or_default().into_bytes(),
        at: at.map(|at| Time(at as u64)),
        changed: field("changed").as_f64().unwrap_or(0.0),
    }
}

fn record(entry: &Entry) -> JsValue {
    let at = entry.at.map_or(JsValue::NULL, |at| (at.0 as f64).into());
    object([
        ("text", String::from_utf8_lossy(&entry.text).as_ref().into()),
        ("at", at),
        ("changed", entry.changed.into()),
    ])
}

fn storage_error(error: &Error) -> StorageError {
    let text = error.to_string();
    if text.contains("QuotaExceeded") {
        StorageError::Full(text)
    } else {
        StorageError::Refused(text)
    }
}

/// Writes these attempts as they stand now, all or none; those that are no more are deleted.
fn write(names: &[&str]) {
    let mut state = state();
    if state.let_go {
        return;
    }
    let now = date_now();
    let changes: Vec<(String, Option<JsValue>)> = names
        .iter()
        .map(|name| {
            let entry = state.entries.get_mut(*name);
            let value = entry.map(|entry| {
                entry.changed = now;
                record(entry)
            });
            ((*name).to_owned(), value)
        })
        .collect();
    drop(state);
    keep_in(STORE, changes);
}

/// Makes these changes in one of the database's stores, all or none: a record, or none where it is to be deleted.
fn keep_in(store: &'static str, changes: Vec<(String, Option<JsValue>)>) {
    // Without a database the trouble has been told already.
    let Some(database) = OPEN.with_borrow(Clone::clone) else {
        return;
    };
    spawn_local(async move {
        let done = put(&database, store, changes).await;
        let mut state = state();
        if !state.let_go {
            state.storage_error = match done {
                Ok(TransactionResult::Committed) => None,
                // The requests went well and the disk did not: there is no room, or it fails.
                Ok(TransactionResult::Aborted) => Some(StorageError::Full("aborted".to_owned())),
                Err(error) => Some(storage_error(&error)),
            };
        }
        drop(state);
        super::wake();
    });
}

async fn put(
    database: &Database,
    store: &str,
    changes: Vec<(String, Option<JsValue>)>,
) -> Result<TransactionResult, Error> {
    let transaction = database.transaction(&[store], TransactionMode::ReadWrite)?;
    let store = transaction.object_store(store)?;
    for (name, value) in changes {
        let key = JsValue::from(name);
        match value {
            Some(value) => drop(store.put(&value, Some(&key))?.await?),
            None => store.delete(key)?.await?,
        }
    }
    transaction.commit()?.await
}

/// A file that the person gave: a library as one zip, or else an attempt.
pub(super) fn arrive(name: String, bytes: Vec<u8>) {
    if name.to_ascii_lowercase().ends_with(".zip") {
        let files = CarriedFiles::Zip(bytes);
        arrive_library(CarriedLibrary { name, files });
    } else {
        state().arrived.push_back((name, bytes));
    }
}

/// A library that the person gave.
pub(super) fn arrive_library(carried: CarriedLibrary) {
    state().arrived_library = Some(carried);
}

/// The library that the person gave last, once.
pub(super) fn arrived_library() -> Option<CarriedLibrary> {
    state().arrived_library.take()
}

/// Nothing more is written from here.
pub(super) fn let_go() {
    let mut state = state();
    state.let_go = true;
    state.storage_error = Some(StorageError::Elsewhere);
    drop(state);
    if let Some(database) = OPEN.take() {
        database.close();
    }
}

/// Attempts in this browser.
pub(super) struct Browser;

impl Attempts for Browser {
    fn place(&self) -> Option<String> {
        None
    }

    fn names(&self) -> Vec<String> {
        let state = state();
        let entries = state.entries.iter();
        let mut names: Vec<_> = entries.filter(|(name, _)| !name.ends_with(ROUND)).collect();
        names.sort_by(|(_, a), (_, b)| b.changed.total_cmp(&a.changed));
        names.into_iter().map(|(name, _)| name.clone()).collect()
    }

    fn read(&self, name: &str) -> Result<Vec<u8>, StorageError> {
        let state = state();
        let entry = state.entries.get(name);
        entry.map_or_else(
            || Err(StorageError::Gone(name.to_owned())),
            |entry| Ok(entry.text.clone()),
        )
    }

    fn seen_until(&self, name: &str) -> Option<Time> {
        state().entries.get(name)?.at
    }

    fn begin(&self, job: &str, header: &Header) -> Result<Box<dyn AttemptSink>, StorageError> {
        let name = free_entry(job)? + PART;
        state().entries.insert(name.clone(), Entry::default());
        let log = AttemptLog::begin(Page { name: name.clone() }, header).map_err(other)?;
        Ok(Box::new(Line { name, log }))
    }

    fn go_on(&self, name: &str) -> Result<Box<dyn AttemptSink>, StorageError> {
        let attempt = read_attempt(name, &self.read(name)?)?;
        if let Some(entry) = state().entries.get_mut(name) {
            entry.text.truncate(attempt.whole_bytes);
        }
        let page = Page {
            name: name.to_owned(),
        };
        let log = AttemptLog::resume(page, &attempt).map_err(other)?;
        Ok(Box::new(Line {
            name: name.to_owned(),
            log,
        }))
    }

    fn keep_round(&self, name: &str, text: &str) -> Result<(), StorageError> {
        let entry = Entry {
            text: text.as_bytes().to_vec(),
            ..Entry::default()
        };
        state().entries.insert(name.to_owned(), entry);
        write(&[name]);
        Ok(())
    }

    fn remove(&self, name: &str) -> Result<(), StorageError> {
        state().entries.remove(name);
        write(&[name]);
        Ok(())
    }

    fn file_exchange(&self) -> Option<&dyn FileExchange> {
        Some(self)
    }

    fn storage_error(&self) -> Option<StorageError> {
        state().storage_error.clone()
    }

    fn complain(&self, storage_error: StorageError) {
        state().storage_error = Some(storage_error);
    }
}

impl FileExchange for Browser {
    fn save_copy(&self, name: &str, bytes: &[u8]) {
        save_copy(name, bytes);
    }

    fn ask_for_file(&self) {
        ask_for_file();
    }

    fn ask_for_library(&self, form: LibraryForm) {
        ask_for_library(form == LibraryForm::Folder);
    }

    fn arrived(&self) -> Option<(String, Vec<u8>)> {
        state().arrived.pop_front()
    }

    fn take_in(&self, name: &str, bytes: &[u8]) -> Result<String, StorageError> {
        let attempt = read_attempt(name, bytes)?;
        let file = attempt.header.scenario.rsplit('/').next();
        let job = file.unwrap_or("job").trim_end_matches(".ron").to_owned();
        let part = if attempt.footer.is_some() { "" } else { PART };
        let name = free_entry(&job)? + part;
        let entry = Entry {
            text: bytes[..attempt.whole_bytes].to_vec(),
            ..Entry::default()
        };
        state().entries.insert(name.clone(), entry);
        write(&[&name]);
        Ok(name)
    }
}

fn other(error: LogError) -> StorageError {
    StorageError::Log(error)
}

fn free_entry(job: &str) -> Result<String, StorageError> {
    let state = state();
    let free = free_name(job, |name| state.entries.contains_key(name));
    free.ok_or_else(|| StorageError::NoName(job.to_owned()))
}

/// One attempt's text as something to write to; a flush keeps it.
#[derive(Debug)]
struct Page {
    name: String,
}

impl Write for Page {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let mut state = state();
        let entry = state.entries.entry(self.name.clone()).or_default();
        entry.text.extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        write(&[&self.name]);
        Ok(())
    }
}

struct Line {
    name: String,
    log: AttemptLog<Page>,
}

impl AttemptSink for Line {
    fn name(&self) -> String {
        self.name.clone()
    }

    fn push(&mut self, at: Time, action: &Action) -> Result<(), StorageError> {
        if let Some(entry) = state().entries.get_mut(&self.name) {
            entry.at = Some(at);
        }
        self.log.push(at, action).map_err(other)
    }

    fn mark(&mut self, at: Time) {
        if let Some(entry) = state().entries.get_mut(&self.name) {
            if entry.at == Some(at) {
                return;
            }
            entry.at = Some(at);
        }
        write(&[&self.name]);
    }

    fn finish(self: Box<Self>, footer: &Footer) -> Result<String, StorageError> {
        let Line { name, log } = *self;
        log.finish(footer).map_err(other)?;
        let whole = name.trim_end_matches(PART).to_owned();
        let mut state = state();
        if let Some(mut entry) = state.entries.remove(&name) {
            entry.at = None;
            state.entries.insert(whole.clone(), entry);
        }
        drop(state);
        write(&[&whole, &name]);
        Ok(whole)
    }
}
