//! The tutorial for instructors, to be read beside the workshop that it is about.

use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::text::LayoutJob;
use bevy_egui::egui::{
    self, Align, FontId, Frame, Label, Margin, RichText, ScrollArea, TextFormat, Ui, vec2,
};
use detent_content::{
    CodeKind, HandbookBlock, HandbookSpan, Language, ListMark, instructors_tutorial,
};

/// Widest line that is still easily read, points.
const WIDEST: f32 = 760.0;

/// The tutorial while it is open.
pub struct Tutorial {
    language: Language,
    blocks: Vec<HandbookBlock>,
    /// The block that is to be scrolled to.
    wanted: Option<usize>,
}

impl Tutorial {
    /// From its beginning, in this language. A mistake in it leaves it empty: the tests read it.
    pub fn in_language(language: Language) -> Tutorial {
        Tutorial {
            language,
            blocks: instructors_tutorial(language).unwrap_or_default(),
            wanted: None,
        }
    }
}

/// Draws it; whether it is put away.
pub(super) fn tutorial_ui(ui: &mut Ui, context: &PanelContext, tutorial: &mut Tutorial) -> bool {
    if tutorial.language != context.ui_state.language {
        *tutorial = Tutorial::in_language(context.ui_state.language);
    }
    let back = context.text("tutorial-back");
    let closed = kit::go_sized(ui, back, egui::Vec2::ZERO).clicked();
    ScrollArea::vertical()
        .id_salt("tutorial")
        .auto_shrink(false)
        .show(ui, |ui| {
            ui.set_width(ui.available_width().min(WIDEST));
            let Tutorial { blocks, wanted, .. } = tutorial;
            let mut chapters_shown = false;
            let go_to = wanted.take();
            for (n, block) in blocks.iter().enumerate() {
                // Behind the title and what is said first.
                if !chapters_shown && is_chapter(block) {
                    chapters_shown = true;
                    *wanted = chapters_ui(ui, blocks);
                }
                let response = block_ui(ui, context, block);
                if go_to == Some(n) {
                    response.scroll_to_me(Some(Align::TOP));
                }
            }
            kit::scroll_by_keys(ui, true);
        });
    closed
}

fn is_chapter(block: &HandbookBlock) -> bool {
    matches!(block, HandbookBlock::Heading { level: 2, .. })
}

/// The chapters; the one that is wanted.
fn chapters_ui(ui: &mut Ui, blocks: &[HandbookBlock]) -> Option<usize> {
    let mut wanted = None;
    kit::card(ui, |ui| {
        for (n, block) in blocks.iter().enumerate() {
            if let HandbookBlock::Heading { level: 2, spans } = block
                && let button = kit::go(ui, plain(spans))
                && button.clicked()
            {
                wanted = Some(n);
                // What has the keys would be out of sight, and they would scroll nothing.
                button.surrender_focus();
            }
        }
    });
    wanted
}

/// The words alone.
fn plain(spans: &[HandbookSpan]) -> String {
    let words = spans.iter().map(|span| match span {
        HandbookSpan::Plain(text) | HandbookSpan::Label(text) | HandbookSpan::Code(text) => {
            text.as_str()
        }
    });
    words.collect()
}

fn block_ui(ui: &mut Ui, context: &PanelContext, block: &HandbookBlock) -> egui::Response {
    match block {
        HandbookBlock::Heading { level: 1, spans } => {
            ui.label(RichText::new(plain(spans)).size(28.0).color(t::AMBER))
        }
        HandbookBlock::Heading { spans, .. } => {
            ui.add_space(14.0);
            kit::heading(ui, plain(spans))
        }
        HandbookBlock::Paragraph(spans) => {
            let response = ui.add(Label::new(words(spans, "")).wrap());
            ui.add_space(4.0);
            response
        }
        HandbookBlock::ListItem { mark, spans } => {
            let mark = match mark {
                ListMark::Bullet => "•  ".to_owned(),
                ListMark::Number(number) => format!("{number}.  "),
            };
            ui.add(Label::new(words(spans, &mark)).wrap())
        }
        HandbookBlock::Code { kind, lines } => code_ui(ui, context, kind, lines),
    }
}

/// A paragraph: labels stand out, and what is typed is typed.
fn words(spans: &[HandbookSpan], mark: &str) -> LayoutJob {
    let format = |font, color| TextFormat {
        font_id: font,
        color,
        ..TextFormat::default()
    };
    let body = || FontId::proportional(t::BODY);
    let mut job = LayoutJob::default();
    job.append(mark, 0.0, format(body(), t::AMBER));
    for span in spans {
        match span {
            HandbookSpan::Plain(text) => job.append(text, 0.0, format(body(), t::TEXT)),
            HandbookSpan::Label(text) => job.append(text, 0.0, format(body(), t::SKY)),
            HandbookSpan::Code(text) => {
                job.append(text, 0.0, format(FontId::monospace(t::SMALL), t::GOOD));
            }
        }
    }
    job
}

/// Lines that are typed or stand in a file, with a button that copies them.
fn code_ui(
    ui: &mut Ui,
    context: &PanelContext,
    kind: &CodeKind,
    lines: &[String],
) -> egui::Response {
    let frame = Frame::new()
        .fill(t::INK)
        .inner_margin(Margin::symmetric(10, 8))
        .show(ui, |ui| {
            ui.set_width(ui.available_width());
            if let Some(heading) = kind.heading(context.texts) {
                kit::quiet(ui, heading);
            }
            let text = lines.join("\n");
            let mono = RichText::new(text).monospace().size(t::SMALL);
            ui.add(Label::new(mono.color(t::TEXT)).wrap());
            // What is answered is nothing to be typed.
            let copied = match kind {
                CodeKind::File(_) => Some(lines.join("\n")),
                CodeKind::Terminal => {
                    let typed = lines.iter().filter_map(|line| line.strip_prefix("$ "));
                    Some(typed.collect::<Vec<_>>().join("\n"))
                }
                CodeKind::Change(_) => None,
            };
            if let Some(copied) = copied {
                let button = egui::Button::new(context.text("tutorial-copy"));
                if ui.add(button.min_size(vec2(0.0, 28.0))).clicked() {
                    ui.ctx().copy_text(copied);
                }
            }
        });
    ui.add_space(6.0);
    frame.response
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::panels::tests::{Fixture, fixture};
    use detent_content::Texts;
    use egui_kittest::Harness;
    use egui_kittest::kittest::Queryable;

    /// It is read from its title to its end in both languages, and every chapter can be gone to.
    #[test]
    fn the_tutorial_is_read_and_its_chapters_are_gone_to() {
        for language in Language::ALL {
            let blocks = instructors_tutorial(language).expect("it is sound");
            let chapters: Vec<String> = (blocks.iter())
                .filter_map(|block| match block {
                    HandbookBlock::Heading { level: 2, spans } => Some(plain(spans)),
                    _ => None,
                })
                .collect();
            assert!(chapters.len() >= 3, "{chapters:?}");
            let mut harness = Harness::builder().with_size([900.0, 700.0]).build_ui_state(
                |ui, (panels, tutorial, closed): &mut (Fixture, Tutorial, bool)| {
                    kit::apply_theme(ui.ctx());
                    *closed |= tutorial_ui(ui, &panels.context(), tutorial);
                },
                (fixture(language), Tutorial::in_language(language), false),
            );
            harness.run_steps(3);
            for chapter in &chapters {
                let top = |harness: &Harness<'_, _>| {
                    let places = harness
                        .get_all_by_label(chapter)
                        .map(|node| node.rect().top());
                    places.fold(f32::MIN, f32::max)
                };
                let before = top(&harness);
                let button = harness
                    .get_all_by_label(chapter)
                    .min_by(|a, b| a.rect().top().total_cmp(&b.rect().top()));
                button.expect("in the list of chapters").click();
                harness.run_steps(90);
                let now = top(&harness);
                assert!(
                    now < before && now > -60.0 && now < 700.0,
                    "{chapter}: {before} {now}"
                );
                // Back to the list.
                for _ in 0..40 {
                    harness.key_press(egui::Key::PageUp);
                    harness.run_steps(12);
                }
            }
            let back = Texts::load(language).get("tutorial-back");
            harness.get_by_label(&back).click();
            harness.run_steps(3);
            assert!(harness.state().2);
        }
    }
}
