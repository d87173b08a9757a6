//! Which module of the simulation may import which. Cargo keeps whole members apart; inside this one
//! nothing but this does.

use std::fs;
use std::path::Path;

/// Each module and the others that it may name. `interface` is what plant and controller share, so that
/// neither has to know the other.
const MAY_IMPORT: [(&str, &[&str]); 5] = [
    ("units", &[]),
    ("interface", &["units"]),
    ("plant", &["units", "interface"]),
    ("controller", &["units", "interface"]),
    ("machine", &["units", "interface", "plant", "controller"]),
];

#[test]
fn each_module_names_only_what_it_may() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    for (module, may) in MAY_IMPORT {
        let mut named = Vec::new();
        visit(&root.join(module), &mut named);
        assert!(!named.is_empty() || may.is_empty(), "{module} was read");
        for (file, other) in named {
            assert!(
                other == module || may.contains(&other.as_str()),
                "{file}: `{module}` must not name `{other}`"
            );
        }
    }
}

/// Every module of this crate that a file below `folder` names by its path from the root.
fn visit(folder: &Path, named: &mut Vec<(String, String)>) {
    for entry in fs::read_dir(folder).expect("the source is here") {
        let path = entry.expect("it can be listed").path();
        if path.is_dir() {
            visit(&path, named);
            continue;
        }
        let source = fs::read_to_string(&path).expect("it is text");
        for (at, _) in source.match_indices("crate::") {
            let rest = &source[at + "crate::".len()..];
            let end = rest.find(|c: char| !c.is_alphanumeric() && c != '_');
            let name = &rest[..end.unwrap_or(rest.len())];
            if MAY_IMPORT.iter().any(|(module, _)| *module == name) {
                named.push((path.display().to_string(), name.to_owned()));
            }
        }
        // The other way out of a module.
        assert!(
            !source.contains("super::super"),
            "{}: write `crate::`",
            path.display()
        );
    }
}
