//! Pictures of the gradebook as files of their own: bars of shares, each with its label and its figure beside it, so that
//! nothing hangs on a color. The same figures stand in a table on the page.

use super::gradebook_page::difficulty;
use super::gradebook_view::{GradebookView, learner_name};
use super::page_texts::PageTexts;
use super::shown::shown;
use detent_gradebook::{ClassLearner, skills_of_learner};
use maud::html;

/// Sizes, px.
const WIDTH: u32 = 720;
const MARGIN: u32 = 16;
const HEAD: u32 = 66;
const ROW: u32 = 46;
const BAR: u32 = 16;
/// Room for the figure beside a bar.
const FIGURE: u32 = 64;

/// The colors of the pages by day: a picture is printed and put into other documents.
const PAPER: &str = "#fffaf0";
const INK: &str = "#222a2f";
const LINE: &str = "#c9bda2";
const FILL: &str = "#9a4112";

/// One bar: what it is of, the share (0 to 1), and the figure; none where there is nothing to show.
struct Bar {
    label: String,
    share: Option<f64>,
    figure: String,
}

fn bars(title: &str, of: &str, bars: &[Bar]) -> String {
    let rows = u32::try_from(bars.len()).unwrap_or(u32::MAX / ROW / 2);
    let height = HEAD + ROW * rows + MARGIN;
    let longest = WIDTH - 2 * MARGIN - FIGURE;
    let picture = html! {
        svg xmlns="http://www.w3.org/2000/svg" width=(WIDTH) height=(height) viewBox={ "0 0 " (WIDTH) " " (height) }
            role="img" aria-label={ (title) ": " (of) } font-family="system-ui, sans-serif" fill=(INK) {
            rect width=(WIDTH) height=(height) fill=(PAPER) {}
            text x=(MARGIN) y="30" font-size="18" font-weight="700" { (title) }
            text x=(MARGIN) y="52" font-size="14" { (of) }
            @for (row, bar) in (0..).zip(bars) {
                @let top = HEAD + ROW * row;
                @let length = f64::from(longest) * bar.share.unwrap_or(0.0).clamp(0.0, 1.0);
                text x=(MARGIN) y=(top + 15) font-size="14" { (bar.label) }
                rect x=(MARGIN) y=(top + 21) width=(longest) height=(BAR) fill="none" stroke=(LINE) {}
                @if bar.share.is_some() {
                    rect x=(MARGIN) y=(top + 21) width=(format!("{length:.1}")) height=(BAR) fill=(FILL) {}
                }
                text x=(WIDTH - MARGIN) y=(top + 34) font-size="14" text-anchor="end" { (bar.figure) }
            }
        }
    };
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n{}\n",
        picture.into_string()
    )
}

/// How difficult each job was: the mean share of the points.
pub fn items_plot(texts: &PageTexts, view: &GradebookView) -> String {
    let each = view.statistics.iter().map(|job| Bar {
        label: texts.job(&job.job),
        share: job.difficulty,
        figure: difficulty(job, texts),
    });
    bars(
        &texts.get("pages-book-plot-items"),
        &shown(&view.grades.title),
        &each.collect::<Vec<_>>(),
    )
}

/// What share of the points a learner keeps by skill.
pub fn skills_plot(texts: &PageTexts, view: &GradebookView, learner: &ClassLearner) -> String {
    let skills = skills_of_learner(&view.grades.book, learner.seat);
    let each = skills.iter().map(|(skill, summary)| Bar {
        label: texts.skill(*skill),
        share: Some(summary.kept),
        figure: texts.percent(summary.kept),
    });
    let title = texts.get("pages-book-plot-skills");
    bars(&title, &learner_name(learner), &each.collect::<Vec<_>>())
}
