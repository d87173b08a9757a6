//! `detent reference`: what each kind of file may say, and its JSON Schema.

mod example;
pub(super) mod model;
mod page;
pub(super) mod words;

use super::Failure;
use super::output::Output;
use detent_content::{FileKind, Language, Texts, file_schema};

#[derive(Debug, clap::Args)]
pub(super) struct ReferenceArgs {
    #[arg(value_name = "KIND")]
    kind: Option<FileKind>,
    #[arg(long, requires = "kind")]
    json: bool,
}

/// Prints the page or the schema of a kind of file, or the kinds that there are.
pub(super) fn reference(args: &ReferenceArgs, language: Language) -> Result<(), Failure> {
    let mut out = Output::standard();
    let Some(kind) = args.kind else {
        let texts = Texts::load(language);
        return FileKind::ALL.iter().try_for_each(|kind| {
            let told = texts.get(&format!("file-kind-{kind}"));
            out.line(format!("{:<12} {told}", kind.name()))
        });
    };
    if args.json {
        return out.json(&file_schema(kind));
    }
    let page = page::page(kind)?;
    page.lines().try_for_each(|line| out.line(line))
}

#[cfg(test)]
mod tests {
    use super::model::{Body, Field, FileReference, Holds};
    use super::*;
    use crate::kept_file;
    use detent_content::{KnownBoard, builtin};
    use std::collections::BTreeSet;

    #[test]
    fn the_kept_schemas_and_pages_are_those_of_the_program() {
        for kind in FileKind::ALL {
            kept_file::check_schema(&file_schema(*kind), &format!("{kind}.json"));
            let page = page::page(*kind).expect("the built-in files are sound");
            kept_file::check(&format!("assets/reference/{kind}.md"), &page);
        }
    }

    /// All fields of a kind of file, those of cases too.
    fn fields(reference: &FileReference) -> Vec<&Field> {
        let mut fields = Vec::new();
        for of in &reference.types {
            match &of.body {
                Body::Fields(of) => fields.extend(of),
                Body::Cases(cases) => {
                    for case in cases {
                        if let Holds::Fields(of) = &case.holds {
                            fields.extend(of);
                        }
                    }
                }
                Body::Texts(_) => {}
            }
        }
        fields
    }

    #[test]
    fn every_type_and_field_is_explained_and_tells_the_unit_in_its_name() {
        let units = [
            ("_ms", "ms"),
            ("_s", "s"),
            ("minutes", "min"),
            ("_hours", "h"),
            ("_mm", "mm"),
            ("_v", "V"),
            ("_ohms", "Ω"),
            ("_c", "°C"),
            ("_k", "K"),
            ("_a", "A"),
            ("_rpm", "rev/min"),
            ("_deg", "°"),
        ];
        for kind in FileKind::ALL {
            let reference = FileReference::of(*kind);
            for of in &reference.types {
                assert!(!of.told.is_empty(), "{kind}: {}", of.name);
            }
            for field in fields(&reference) {
                let name = &field.name;
                let told = &field.told;
                assert!(
                    told.ends_with('.') && told.len() > 5,
                    "{kind}: {name}: {told:?}"
                );
                let unit = units.iter().find(|(ending, _)| name.ends_with(ending));
                match (unit, name.as_str()) {
                    // A time for an angle.
                    (_, "ms_per_deg" | "cam_ms_per_deg") => assert_eq!(field.unit, Some("ms")),
                    (Some((_, unit)), _) => assert_eq!(field.unit, Some(*unit), "{kind}: {name}"),
                    (None, _) => {}
                }
            }
        }
    }

    /// The blocks of a page.
    fn blocks(page: &str) -> Vec<&str> {
        let blocks = page.split("```ron\n").skip(1);
        blocks
            .filter_map(|rest| rest.split_once("```"))
            .map(|(block, _)| block)
            .collect()
    }

    fn without_blanks(text: &str) -> String {
        text.chars().filter(|c| !c.is_whitespace()).collect()
    }

    #[test]
    fn every_example_of_a_page_is_in_a_file_that_its_reader_takes() {
        let boards: Vec<KnownBoard> = builtin::in_folder("assets/boards")
            .map(|(file, text)| detent_content::read_board(&file, text.as_bytes()))
            .map(|board| KnownBoard::of(&board.expect("a sound board")))
            .collect();
        let catalogue = builtin::catalogue().expect("a sound catalogue");
        let parts = builtin::parts().expect("sound parts");
        let jobs: Vec<String> = builtin::in_folder("scenarios")
            .filter_map(|(file, _)| {
                Some(
                    file.strip_prefix("scenarios/")?
                        .strip_suffix(".ron")?
                        .to_owned(),
                )
            })
            .collect();
        let jobs: Vec<&str> = jobs.iter().map(String::as_str).collect();
        for kind in FileKind::ALL {
            let files = example::files(*kind).expect("the files are built in");
            for (file, text) in &files {
                let bytes = text.as_bytes();
                let errors = match kind {
                    FileKind::Scenario => {
                        detent_content::check_scenario(file, bytes, &catalogue, &parts, &boards)
                            .err()
                    }
                    FileKind::Board => detent_content::read_board(file, bytes).err(),
                    FileKind::Guide => detent_content::check_guide(file, bytes).err(),
                    FileKind::Examination => {
                        detent_content::check_examination(file, bytes, &jobs).err()
                    }
                    FileKind::Parts => {
                        let own = ["school-lamp"];
                        detent_content::read_added_parts(file, bytes, &parts, &own).err()
                    }
                    FileKind::Course => detent_content::read_course(file, bytes, None).err(),
                    FileKind::Plan => detent_content::check_class_plan(file, bytes, &jobs).err(),
                };
                assert_eq!(errors, None);
            }
            let page = page::page(*kind).expect("the built-in files are sound");
            let texts: Vec<String> = files.iter().map(|(_, text)| without_blanks(text)).collect();
            let blocks = blocks(&page);
            let examples = blocks.iter().flat_map(|block| values(block));
            let mut seen = 0;
            for example in examples {
                seen += 1;
                let wanted = without_blanks(example);
                assert!(
                    texts.iter().any(|text| text.contains(&wanted)),
                    "{kind}: {example}"
                );
            }
            assert!(seen >= blocks.len() && seen > 1, "{kind}: {seen}");
        }
    }

    /// The values in a block, which begin at the margin; a file is one.
    fn values(block: &str) -> Vec<&str> {
        let mut starts: Vec<usize> = Vec::new();
        let mut at = 0;
        for line in block.split_inclusive('\n') {
            if line.starts_with(|c: char| c.is_alphanumeric()) {
                starts.push(at);
            }
            at += line.len();
        }
        match starts.first() {
            Some(0) => {
                let ends = starts.iter().skip(1).copied().chain([block.len()]);
                starts
                    .iter()
                    .zip(ends)
                    .map(|(start, end)| &block[*start..end])
                    .collect()
            }
            _ => vec![block],
        }
    }

    #[test]
    fn every_link_of_a_page_leads_to_a_heading_of_it() {
        for kind in FileKind::ALL {
            let page = page::page(*kind).expect("the built-in files are sound");
            let headings: BTreeSet<String> = (page.lines())
                .filter_map(|line| line.strip_prefix("## "))
                .map(str::to_lowercase)
                .collect();
            let links = page
                .split("](#")
                .skip(1)
                .filter_map(|rest| rest.split(')').next());
            let links: BTreeSet<&str> = links.collect();
            assert!(!links.is_empty(), "{kind}");
            for link in links {
                assert!(headings.contains(link), "{kind}: {link}");
            }
        }
    }
}
