//! Builds what is handed out: the bench for browsers, packed into one folder of static files, or the
//! native program. Neither carries a path of the machine that built it.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "the packer reads and writes files, runs tools and prints"
)]

mod builder_folders;

use builder_folders::BuilderFolders;
use clap::Parser;
use sha2::{Digest, Sha256};
use std::fs::{self, File};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode};
use wasm_bindgen_cli_support::Bindgen;

const TARGET: &str = "wasm32-unknown-unknown";
/// Debian's compiler for browsers (packages rustc-web, cargo-web, rust-web-src, lld).
const DEBIAN_RUSTC: &str = "/usr/bin/rustc";
const DEBIAN_CARGO: &str = "/usr/bin/cargo";
/// The page, as it lies in the repository.
const PAGE: &str = "assets/web";
const PAGE_FILES: [&str; 7] = [
    "index.html",
    "mirror.js",
    "page.css",
    "page.js",
    "service.js",
    "manifest.webmanifest",
    "icon.svg",
];

/// Build the bench for browsers into a folder of static files, or the native program.
#[derive(Debug, Parser)]
#[command(name = "detent-pack")]
struct Args {
    /// Folder to make; what is in it is replaced.
    #[arg(long, default_value = "target/browser")]
    out: PathBuf,
    /// Where compiled parts are kept between builds.
    #[arg(long, default_value = "target/browser-build")]
    build_dir: PathBuf,
    /// Build the empty app that sizes and times are compared with.
    #[arg(long)]
    empty: bool,
    /// Leave out optimisation over the whole program, wasm-opt and the best compression: minutes
    /// instead of half an hour, and larger files. Keep its build folder apart.
    #[arg(long)]
    quick: bool,
    /// Build the native program instead, stripped and with its SHA-256 beside it, into the folder given with --out.
    #[arg(long, visible_alias = "program", conflicts_with = "quick")]
    native: bool,
}

/// The project's folder.
const ROOT: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../..");

/// What went wrong, and what to do.
#[derive(Debug, thiserror::Error)]
enum PackError {
    #[error("{0}: {1}; check the folder and the free space")]
    Io(PathBuf, std::io::Error),
    #[error("{0} cannot be started: {1}")]
    Start(String, std::io::Error),
    #[error("{0} failed; its messages are above")]
    Failed(String),
    #[error(
        "no compiler for {TARGET} is here: run `rustup target add {TARGET}`, or on Debian `apt-get install rustc-web cargo-web rust-web-src lld`"
    )]
    NoTarget,
    #[error("the glue between page and program cannot be made: {0:#}")]
    Glue(anyhow::Error),
    #[error(
        "{0} names {1}, a folder of this machine, and is not handed out; build it with a fresh --build-dir, and without RUSTFLAGS that name folders"
    )]
    NamesFolder(PathBuf, PathBuf),
    #[error("{0} holds something that this program did not make; choose another folder with --out")]
    Foreign(PathBuf),
}

fn main() -> ExitCode {
    let args = Args::parse();
    let done = if args.native {
        build_native(&args)
    } else {
        pack(&args)
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("detent-pack: {error}");
            ExitCode::FAILURE
        }
    }
}

fn pack(args: &Args) -> Result<(), PackError> {
    let program = compile(args)?;
    let glue_folder = args.build_dir.join("glue");
    make_folder(&glue_folder)?;
    let name = if args.empty { "empty" } else { "detent" };
    Bindgen::new()
        .input_bytes(name, read(&program)?)
        .web(true)
        .and_then(|bindgen| {
            bindgen
                .typescript(false)
                .remove_name_section(true)
                .remove_producers_section(true)
                .generate(&glue_folder)
        })
        .map_err(PackError::Glue)?;
    let plain = glue_folder.join(format!("{name}_bg.wasm"));
    let wasm = if args.quick {
        read(&plain)?
    } else {
        with_the_right_table(read(&optimise(&plain)?)?)
    };
    let glue = read(&glue_folder.join(format!("{name}.js")))?;

    let out = &args.out;
    clear(out)?;
    let wasm_name = format!("detent-{}.wasm", short_hash(&[&wasm]));
    let glue_name = format!("detent-{}.js", short_hash(&[&glue]));
    let gzip = gzip(&wasm);
    let brotli = brotli(&wasm, if args.quick { 3 } else { 11 });
    write(&out.join(&wasm_name), &wasm)?;
    write(&out.join(format!("{wasm_name}.gz")), &gzip)?;
    write(&out.join(format!("{wasm_name}.br")), &brotli)?;
    write(&out.join(&glue_name), &glue)?;

    let pages: Vec<(&str, String)> = PAGE_FILES
        .iter()
        .map(|name| {
            let text = read(&Path::new(ROOT).join(PAGE).join(name))?;
            Ok((*name, String::from_utf8_lossy(&text).into_owned()))
        })
        .collect::<Result<_, PackError>>()?;
    let mut all: Vec<&[u8]> = vec![&wasm, &glue];
    all.extend(pages.iter().map(|(_, text)| text.as_bytes()));
    let version = short_hash(&all);
    let build = serde_json::json!({
        "version": version,
        "wasm": wasm_name,
        "glue": format!("./{glue_name}"),
        "bytes": { "": wasm.len(), "gz": gzip.len(), "br": brotli.len() },
    });
    let kept = serde_json::json!([
        "./",
        "mirror.js",
        "page.css",
        "page.js",
        "manifest.webmanifest",
        "icon.svg",
        glue_name
    ]);
    for (name, text) in pages {
        let text = text
            .replace("{{BUILD}}", &build.to_string())
            .replace("{{VERSION}}", &version)
            .replace("{{FILES}}", &kept.to_string());
        write(&out.join(name), text.as_bytes())?;
    }
    write(&out.join(MARK), b"")?;
    println!(
        "{}: {:.2} MB; gzip {:.2} MB, Brotli {:.2} MB",
        out.display(),
        megabytes(&wasm),
        megabytes(&gzip),
        megabytes(&brotli),
    );
    Ok(())
}

/// Compiles with this toolchain if it knows the target, else with Debian's compiler for browsers.
fn compile(args: &Args) -> Result<PathBuf, PackError> {
    let build_dir = absolute(&args.build_dir)?;
    let cargo = std::env::var("CARGO").unwrap_or_else(|_| "cargo".to_owned());
    let mut command = if has_target("rustc") {
        Command::new(&cargo)
    } else if has_source(DEBIAN_RUSTC) {
        let mut command = Command::new(DEBIAN_CARGO);
        command
            .env("RUSTC", DEBIAN_RUSTC)
            // Debian ships the standard library as source; building it is not stable yet.
            .env("RUSTC_BOOTSTRAP", "1")
            .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", "wasm-ld")
            .env_remove("RUSTUP_TOOLCHAIN")
            .args(["-Z", "build-std=std,panic_abort"]);
        command
    } else {
        return Err(PackError::NoTarget);
    };
    command
        .args(["build", "--locked", "--target", TARGET, "--profile", "web"])
        .args(subject(args))
        .arg("--target-dir")
        .arg(&build_dir)
        .env(
            "CARGO_ENCODED_RUSTFLAGS",
            encoded(&page_folders(&build_dir)),
        )
        .current_dir(ROOT);
    if args.quick {
        command
            .env("CARGO_PROFILE_WEB_LTO", "off")
            .env("CARGO_PROFILE_WEB_CODEGEN_UNITS", "16");
    }
    run(command)?;
    let folder = args.build_dir.join(TARGET).join("web");
    Ok(if args.empty {
        folder.join("empty.wasm")
    } else {
        folder.join("detent.wasm")
    })
}

/// What Cargo is to build.
fn subject(args: &Args) -> [&'static str; 4] {
    if args.empty {
        ["--package", "detent-empty", "--bin", "empty"]
    } else {
        ["--package", "detent", "--bin", "detent"]
    }
}

/// Builds the native program. It is handed out only if none of this machine's folders is in it.
fn build_native(args: &Args) -> Result<(), PackError> {
    let build_dir = absolute(&args.build_dir)?;
    let folders = program_folders(&build_dir);
    let mut command = Command::new(std::env::var("CARGO").unwrap_or_else(|_| "cargo".to_owned()));
    command
        .args(["build", "--locked", "--release"])
        .args(subject(args))
        .arg("--target-dir")
        .arg(&build_dir)
        .env("CARGO_ENCODED_RUSTFLAGS", encoded(&folders))
        .env("CARGO_PROFILE_RELEASE_STRIP", "symbols")
        .current_dir(ROOT);
    run(command)?;
    let built = if args.empty {
        "release/empty"
    } else {
        "release/detent"
    };
    let built = (args.build_dir.join(built)).with_extension(std::env::consts::EXE_EXTENSION);
    let program = read(&built)?;
    if let Some(folder) = folders.first_in(&program) {
        return Err(PackError::NamesFolder(built, folder.to_owned()));
    }
    make_folder(&args.out)?;
    let name = built.file_name().unwrap_or_default();
    let out = args.out.join(name);
    fs::copy(&built, &out).map_err(|e| PackError::Io(out.clone(), e))?;
    let sum = checksum_line(&program, &name.to_string_lossy());
    write(&args.out.join("SHA256SUMS"), sum.as_bytes())?;
    println!("{}: {:.1} MB", out.display(), megabytes(&program));
    Ok(())
}

/// Debian's source of the standard library, as its own builds name it.
const DEBIAN_SOURCE: &str = "/usr/src";

/// Folders that compiling for browsers would name.
///
/// The project's own sources need none: Cargo hands them over by their place in the workspace.
fn page_folders(build_dir: &Path) -> BuilderFolders {
    BuilderFolders::default()
        .with(Some(build_dir.to_owned()), "build")
        .with(home("CARGO_HOME", ".cargo"), "cargo")
        .with(home("RUSTUP_HOME", ".rustup"), "rustup")
        .with(Some(DEBIAN_SOURCE.into()), "rust")
}

/// Every folder of this machine that the program must not name.
fn program_folders(build_dir: &Path) -> BuilderFolders {
    BuilderFolders::default()
        .with(fs::canonicalize(ROOT).ok(), "detent")
        .with(Some(build_dir.to_owned()), "build")
        .with(std::env::home_dir(), "home")
        .with(home("CARGO_HOME", ".cargo"), "cargo")
        .with(home("RUSTUP_HOME", ".rustup"), "rustup")
        .with(printed("rustc", &["--print", "sysroot"]), "rust")
}

/// The folder that this variable names, else the one of this name at home.
fn home(variable: &str, folder: &str) -> Option<PathBuf> {
    std::env::var_os(variable)
        .map(PathBuf::from)
        .or_else(|| std::env::home_dir().map(|home| home.join(folder)))
}

/// Compiler's flags, as Cargo separates them, that give folders other names; to those that the surroundings ask for.
fn encoded(folders: &BuilderFolders) -> String {
    let mut flags: Vec<String> = std::env::var("RUSTFLAGS")
        .map(|flags| flags.split_whitespace().map(str::to_owned).collect())
        .unwrap_or_default();
    flags.extend(folders.flags());
    flags.join("\x1f")
}

/// A line that `sha256sum --check` reads.
fn checksum_line(bytes: &[u8], name: &str) -> String {
    let digits = Sha256::digest(bytes);
    let digits: String = digits.iter().map(|byte| format!("{byte:02x}")).collect();
    format!("{digits}  {name}\n")
}

fn absolute(path: &Path) -> Result<PathBuf, PackError> {
    make_folder(path)?;
    fs::canonicalize(path).map_err(|e| PackError::Io(path.to_owned(), e))
}

/// Names the table of JavaScript's objects anew: release 108 of wasm-opt, which Debian 12 has, exports
/// the first table under every name, and that one holds functions.
fn with_the_right_table(mut program: Vec<u8>) -> Vec<u8> {
    // A name with its length, the kind (1, a table) and the table's number.
    const WRONG: &[u8] = b"\x15__wbindgen_externrefs\x01\x00";
    if let Some(at) = program.windows(WRONG.len()).position(|w| w == WRONG) {
        program[at + WRONG.len() - 1] = 1;
    }
    program
}

fn printed(rustc: &str, what: &[&str]) -> Option<PathBuf> {
    let out = Command::new(rustc).args(what).output().ok()?;
    let text = String::from_utf8(out.stdout).ok()?;
    out.status
        .success()
        .then(|| PathBuf::from(text.trim().to_owned()))
}

/// The compiler has a standard library for the target.
fn has_target(rustc: &str) -> bool {
    printed(rustc, &["--print", "target-libdir", "--target", TARGET])
        .and_then(|folder| fs::read_dir(folder).ok())
        .is_some_and(|mut files| files.next().is_some())
}

/// The compiler has the standard library's source.
fn has_source(rustc: &str) -> bool {
    printed(rustc, &["--print", "sysroot"])
        .is_some_and(|root| root.join("lib/rustlib/src/rust/library/std").exists())
}

/// Makes the program smaller, where wasm-opt is installed.
fn optimise(plain: &Path) -> Result<PathBuf, PackError> {
    let small = plain.with_extension("small.wasm");
    let mut command = Command::new("wasm-opt");
    command
        .args(["-Os", "--strip-debug", "--strip-producers"])
        // What the compiler takes for granted and older releases of wasm-opt do not.
        .args([
            "--enable-bulk-memory",
            "--enable-mutable-globals",
            "--enable-sign-ext",
        ])
        .args([
            "--enable-nontrapping-float-to-int",
            "--enable-reference-types",
        ])
        .args(["--enable-multivalue", "--output"])
        .args([&small, &plain.to_owned()]);
    match run(command) {
        Ok(()) => Ok(small),
        Err(PackError::Start(..)) => {
            eprintln!(
                "wasm-opt is not here (Debian: apt-get install binaryen): the program stays larger than it need be"
            );
            Ok(plain.to_owned())
        }
        Err(error) => Err(error),
    }
}

fn run(mut command: Command) -> Result<(), PackError> {
    let name = command.get_program().to_string_lossy().into_owned();
    match command.status() {
        Ok(status) if status.success() => Ok(()),
        Ok(_) => Err(PackError::Failed(name)),
        Err(error) => Err(PackError::Start(name, error)),
    }
}

/// Lies in every folder that this program made.
const MARK: &str = ".detent-browser";

/// Empties the folder, if it is ours.
fn clear(folder: &Path) -> Result<(), PackError> {
    let ours = folder.join(MARK).exists();
    if folder.exists() && !ours && fs::read_dir(folder).is_ok_and(|mut f| f.next().is_some()) {
        return Err(PackError::Foreign(folder.to_owned()));
    }
    if ours {
        fs::remove_dir_all(folder).map_err(|e| PackError::Io(folder.to_owned(), e))?;
    }
    make_folder(folder)
}

fn make_folder(folder: &Path) -> Result<(), PackError> {
    fs::create_dir_all(folder).map_err(|e| PackError::Io(folder.to_owned(), e))
}

fn read(path: &Path) -> Result<Vec<u8>, PackError> {
    fs::read(path).map_err(|e| PackError::Io(path.to_owned(), e))
}

fn write(path: &Path, bytes: &[u8]) -> Result<(), PackError> {
    let write = || File::create(path)?.write_all(bytes);
    write().map_err(|e| PackError::Io(path.to_owned(), e))
}

fn short_hash(parts: &[&[u8]]) -> String {
    let mut hash = Sha256::new();
    for part in parts {
        hash.update(part);
    }
    let digits = hash.finalize();
    digits[..6]
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

fn gzip(bytes: &[u8]) -> Vec<u8> {
    let mut packer = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
    packer.write_all(bytes).expect("memory does not fail");
    packer.finish().expect("memory does not fail")
}

fn brotli(bytes: &[u8], quality: i32) -> Vec<u8> {
    let mut packed = Vec::new();
    let params = brotli::enc::BrotliEncoderParams {
        quality,
        lgwin: 24,
        size_hint: bytes.len(),
        ..Default::default()
    };
    brotli::BrotliCompress(&mut &bytes[..], &mut packed, &params).expect("memory does not fail");
    packed
}

fn megabytes(bytes: &[u8]) -> f64 {
    bytes.len() as f64 / 1e6
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_checksum_is_that_of_the_standard_s_example() {
        // FIPS 180-2, appendix B.1, from memory.
        let line = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  detent\n";
        assert_eq!(checksum_line(b"abc", "detent"), line);
    }

    #[test]
    fn the_program_is_compiled_without_this_machine_s_folders() {
        let folders = program_folders(Path::new("/somewhere/build"));
        let root = fs::canonicalize(ROOT).expect("the project's folder");
        let flags = encoded(&folders);
        for folder in [root.as_path(), Path::new("/somewhere/build")] {
            let flag = format!("--remap-path-prefix={}=", folder.display());
            assert!(flags.contains(&flag), "{flags}");
            let names = format!("panicked at {}/src/main.rs", folder.display());
            assert_eq!(folders.first_in(names.as_bytes()), Some(folder));
        }
        assert_eq!(folders.first_in(b"panicked at src/main.rs"), None);
    }

    #[test]
    fn the_program_for_handing_out_has_two_names_for_its_flag() {
        for flag in ["--native", "--program"] {
            let args = ["detent-pack", flag, "--out", "handout"];
            let args = Args::try_parse_from(args).expect("they are known");
            assert!(args.native && args.out == Path::new("handout"));
        }
        assert!(Args::try_parse_from(["detent-pack", "--program", "--quick"]).is_err());
    }
}
