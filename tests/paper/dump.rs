use detent_content::{ContentLibrary, Language};
use detent_paper::*;
#[test]
fn dump() {
    let content = ContentLibrary::builtin().unwrap();
    for (name, lang, paper) in [
        ("drain-code", Language::En, PaperSize::A4),
        ("reading-seven-segments", Language::Es, PaperSize::Letter),
        (
            "reading-long-and-short-flashes",
            Language::Es,
            PaperSize::A4,
        ),
    ] {
        let source = content.scenario(name).unwrap();
        let job = SheetJob {
            seed: source.scenario.seed,
            source: &source,
            variant: None,
        };
        let t = std::time::Instant::now();
        let bytes = handout(&content, &[job], lang, paper).unwrap();
        println!("{name} {} {:?}", bytes.len(), t.elapsed());
        std::fs::write(format!("/tmp/p/{name}.pdf"), bytes).unwrap();
        let t = std::time::Instant::now();
        let bytes = answer_key(&content, &[job], lang, paper).unwrap();
        println!("{name} key {} {:?}", bytes.len(), t.elapsed());
        std::fs::write(format!("/tmp/p/{name}-key.pdf"), bytes).unwrap();
    }
}
