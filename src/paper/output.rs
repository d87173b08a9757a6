//! From a laid out document to the bytes of a PDF that meets PDF/UA-1 (ISO 14289-1), as far as a program can
//! check it.

use super::canvas::{Gray, Mark};
use super::draft::{Child, Draft, Kind, Piece};
use super::{PaperError, PaperSize};
use krilla::color::luma;
use krilla::configure::{Accessibility, ConfigurationBuilder};
use krilla::destination::XyzDestination;
use krilla::geom::Point;
use krilla::metadata::Metadata;
use krilla::num::NormalizedF32;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, FillRule, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::tagging::{
    Artifact, ArtifactType, ContentTag, Identifier, ListNumbering, Node as OutNode, SpanTag,
    TableHeaderScope, Tag, TagGroup, TagKind, TagTree,
};
use krilla::{Document, SerializeSettings};
use std::num::NonZeroU16;

/// What a document says of itself.
pub(super) struct About<'a> {
    pub title: &'a str,
    /// Two-letter code.
    pub language: &'a str,
}

pub(super) fn pdf(draft: Draft, about: &About<'_>) -> Result<Vec<u8>, PaperError> {
    let refused = |why: String| PaperError::Refused(why);
    let configuration = ConfigurationBuilder::new()
        .with_accessibility_validator(Accessibility::UA1)
        .finish()
        .map_err(|error| refused(format!("{error:?}")))?;
    let mut document = Document::new_with(SerializeSettings {
        configuration,
        ..SerializeSettings::default()
    });
    let mut tagged: Vec<Option<Identifier>> = Vec::new();
    tagged.resize_with(draft.contents, || None);
    for page in &draft.pages {
        let (width, height) = PaperSize::points(draft.paper);
        let settings = PageSettings::from_wh(width, height);
        let settings = settings.ok_or_else(|| refused("no such size of paper".to_owned()))?;
        let mut out = document.start_page_with(settings);
        let mut surface = out.surface();
        for piece in &page.pieces {
            if let (Some(content), id) = (piece.content, draw(&mut surface, &draft, piece)) {
                tagged[content] = Some(id);
            }
        }
        surface.finish();
        out.finish();
    }
    document.set_metadata(
        Metadata::new()
            .title(about.title.to_owned())
            .language(about.language.to_owned())
            .creator("Detent".to_owned()),
    );
    document.set_outline(outline(&draft));
    let mut tree = TagTree::new().with_lang(Some(about.language.to_owned()));
    for node in &draft.root {
        tree.push(group(&draft, *node, &mut tagged));
    }
    document.set_tag_tree(tree);
    document
        .finish()
        .map_err(|error| refused(format!("{error:?}")))
}

fn fill(gray: Gray) -> Fill {
    Fill {
        paint: luma::Color::new(gray).into(),
        opacity: NormalizedF32::ONE,
        rule: FillRule::NonZero,
    }
}

fn stroke(gray: Gray, width: f32, dashed: bool) -> Stroke {
    Stroke {
        paint: luma::Color::new(gray).into(),
        width,
        dash: dashed.then(|| StrokeDash {
            array: vec![2.5, 2.0],
            offset: 0.0,
        }),
        ..Stroke::default()
    }
}

fn draw(surface: &mut Surface<'_>, draft: &Draft, piece: &Piece) -> Identifier {
    let id = surface.start_tagged(match piece.content {
        Some(_) => ContentTag::Span(SpanTag::empty()),
        None => ContentTag::Artifact(Artifact::with_kind(ArtifactType::Other)),
    });
    for mark in &piece.marks {
        match mark {
            Mark::Text { x, y, style, text } => {
                surface.set_fill(Some(fill(style.gray)));
                let line = style.size * style.weight.outline();
                surface.set_stroke(Some(stroke(style.gray, line, false)));
                let mut x = *x;
                for run in draft.fonts.runs(text) {
                    let start = Point::from_xy(x, *y);
                    surface.draw_glyphs(start, &run.glyphs, run.font, &run.text, style.size, false);
                    x += run.width * style.size;
                }
            }
            Mark::Shape {
                path,
                fill: inside,
                line,
                dashed,
            } => {
                surface.set_fill(inside.map(fill));
                surface.set_stroke(line.map(|(gray, width)| stroke(gray, width, *dashed)));
                surface.draw_path(path);
            }
        }
    }
    surface.end_tagged();
    id
}

/// Bookmarks: the headings of the second level under those of the first.
fn outline(draft: &Draft) -> Outline {
    let mut outline = Outline::new();
    let mut open: Option<OutlineNode> = None;
    for bookmark in &draft.bookmarks {
        let to = XyzDestination::new(bookmark.page, Point::from_xy(0.0, bookmark.y));
        let node = OutlineNode::new(bookmark.text.clone(), to);
        match (bookmark.level, &mut open) {
            (1, _) => {
                if let Some(done) = open.replace(node) {
                    outline.push_child(done);
                }
            }
            (2, Some(parent)) => parent.push_child(node),
            _ => {}
        }
    }
    if let Some(done) = open {
        outline.push_child(done);
    }
    outline
}

fn tag(kind: &Kind) -> TagKind {
    match kind {
        Kind::Heading(level, text) => {
            let level = NonZeroU16::new(*level).unwrap_or(NonZeroU16::MIN);
            Tag::Hn(level, Some(text.clone())).into()
        }
        Kind::Paragraph => Tag::P.into(),
        Kind::List => Tag::L(ListNumbering::None).into(),
        Kind::Item => Tag::LI.into(),
        Kind::Label => Tag::Lbl.into(),
        Kind::Body => Tag::LBody.into(),
        Kind::Table(about) => Tag::Table.with_summary(Some(about.clone())).into(),
        Kind::Row => Tag::TR.into(),
        Kind::ColumnHead => Tag::TH(TableHeaderScope::Column).into(),
        Kind::RowHead => Tag::TH(TableHeaderScope::Row).into(),
        Kind::Cell => Tag::TD.into(),
        Kind::Figure(alt) => Tag::Figure(Some(alt.clone())).into(),
    }
}

fn group(draft: &Draft, node: usize, tagged: &mut [Option<Identifier>]) -> TagGroup {
    let node = &draft.nodes[node];
    let mut group = TagGroup::new(tag(&node.kind));
    for child in &node.children {
        match child {
            Child::Node(child) => group.push(OutNode::Group(self::group(draft, *child, tagged))),
            Child::Content(content) => {
                if let Some(id) = tagged[*content].take() {
                    group.push(id);
                }
            }
        }
    }
    group
}
