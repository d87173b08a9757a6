//! A document while it is laid out: its pages as what is drawn on them, and its structure as reading software
//! is told it. Text flows down a page and on to the next one.

use super::canvas::{Anchor, Area, BLACK, Canvas, Gray, Mark, QUIET, SHADE, Style, Weight};
use super::font::Fonts;

/// A size of paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum PaperSize {
    /// 210 mm × 297 mm (ISO 216).
    #[default]
    A4,
    /// 8.5 in × 11 in (ANSI/ASME Y14.1, size A).
    Letter,
}

impl PaperSize {
    /// Every size.
    pub const ALL: [PaperSize; 2] = [PaperSize::A4, PaperSize::Letter];

    /// Its name in small letters.
    pub const fn name(self) -> &'static str {
        match self {
            PaperSize::A4 => "a4",
            PaperSize::Letter => "letter",
        }
    }

    /// Width and height, pt (72 to the inch).
    pub const fn points(self) -> (f32, f32) {
        match self {
            PaperSize::A4 => (595.28, 841.89),
            PaperSize::Letter => (612.0, 792.0),
        }
    }
}

/// Empty edge of the page: printers reach to within a quarter of an inch at least, hole punches half an inch.
const MARGIN: f32 = 46.0;
/// From the lower edge to the foot line, pt.
const FOOT: f32 = 28.0;
const LINE: f32 = 1.32;

pub(super) const BODY: Style = Style {
    size: 9.5,
    weight: Weight::Regular,
    gray: BLACK,
};
pub(super) const STRONG: Style = Style {
    weight: Weight::Bold,
    ..BODY
};
/// The customer's words.
pub(super) const WORDS: Style = Style { size: 11.0, ..BODY };
pub(super) const SMALL: Style = Style { size: 8.0, ..BODY };
pub(super) const NOTE: Style = Style {
    size: 8.0,
    gray: QUIET,
    ..BODY
};

/// What a piece of the structure is (ISO 32000-1, 14.8.4).
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Kind {
    /// A heading of a level from 1, with its text.
    Heading(u16, String),
    Paragraph,
    /// A list.
    List,
    Item,
    Label,
    Body,
    /// A table and what it is about.
    Table(String),
    Row,
    /// A cell that heads its column, or its row.
    ColumnHead,
    RowHead,
    Cell,
    /// A drawing, and what it shows.
    Figure(String),
}

/// A child in the structure.
pub(super) enum Child {
    Node(usize),
    /// A piece of content, by its number.
    Content(usize),
}

pub(super) struct Node {
    pub kind: Kind,
    pub children: Vec<Child>,
}

/// Things drawn one after the other that belong to one place in the structure; none for what is only there
/// for the eye.
pub(super) struct Piece {
    pub content: Option<usize>,
    pub marks: Vec<Mark>,
}

/// A heading in the list of bookmarks.
pub(super) struct Bookmark {
    pub level: u16,
    pub text: String,
    pub page: usize,
    pub y: f32,
}

/// One page.
#[derive(Default)]
pub(super) struct DraftPage {
    pub pieces: Vec<Piece>,
}

/// What stands in a table's cell.
pub(super) enum Cell<'a> {
    Text(String),
    /// The same, in bold.
    Strong(String),
    /// Nothing: somebody writes here.
    Blank,
    /// A drawing of a height, and what it shows.
    Picture(String, f32, Drawing<'a>),
}

pub(super) type Drawing<'a> = Box<dyn Fn(&mut Canvas<'_>, Area) + 'a>;

/// How a table is set.
pub(super) struct TableShape<'a> {
    /// What it is about, for reading software.
    pub about: &'a str,
    /// Widths of the columns, as shares of the page's.
    pub columns: &'a [f32],
    /// Heads of the columns; none where the first cell of each row is its head.
    pub heads: &'a [String],
    /// Least height of a row, pt.
    pub row: f32,
    /// The first cell of each row is its head.
    pub row_heads: bool,
}

pub(super) struct Draft {
    pub paper: PaperSize,
    pub fonts: Fonts,
    pub pages: Vec<DraftPage>,
    pub nodes: Vec<Node>,
    /// Children of the structure's root.
    pub root: Vec<usize>,
    pub contents: usize,
    pub bookmarks: Vec<Bookmark>,
    y: f32,
    /// First page of those that are numbered together.
    sheet: usize,
}

impl Draft {
    pub fn new(paper: PaperSize) -> Draft {
        Draft {
            paper,
            fonts: Fonts::embedded(),
            pages: Vec::new(),
            nodes: Vec::new(),
            root: Vec::new(),
            contents: 0,
            bookmarks: Vec::new(),
            y: 0.0,
            sheet: 0,
        }
    }

    fn left(&self) -> f32 {
        MARGIN
    }

    pub fn width(&self) -> f32 {
        self.paper.points().0 - 2.0 * MARGIN
    }

    fn bottom(&self) -> f32 {
        self.paper.points().1 - MARGIN
    }

    /// Height of an empty page, pt.
    fn height(&self) -> f32 {
        self.bottom() - MARGIN
    }

    /// Begins a new page.
    pub fn page(&mut self) {
        self.pages.push(DraftPage::default());
        self.y = MARGIN;
    }

    /// Begins a new page where less than this is left, pt.
    pub fn need(&mut self, height: f32) {
        let left = self.bottom() - self.y;
        if self.pages.is_empty() || (left < height && self.y > MARGIN) {
            self.page();
        }
    }

    pub fn space(&mut self, height: f32) {
        self.y += height;
    }

    /// Begins a page that is counted as the first.
    pub fn sheet(&mut self) {
        self.page();
        self.sheet = self.pages.len() - 1;
    }

    /// Writes the feet of the pages since the last [`Draft::sheet`]: what they belong to, and their numbers.
    pub fn feet(&mut self, left: &str, number: impl Fn(usize, usize) -> String) {
        let from = self.sheet;
        let of = self.pages.len() - from;
        let y = self.paper.points().1 - FOOT;
        for n in 0..of {
            let (x, right) = (self.left(), self.left() + self.width());
            let number = number(n + 1, of);
            let room = self.width() - self.fonts.width(&number, NOTE.size) - 20.0;
            let lines = self.fonts.lines(left, NOTE.size, room);
            let mut canvas = self.canvas();
            canvas.text((x, y), Anchor::Left, NOTE, &lines[0]);
            canvas.text((right, y), Anchor::Right, NOTE, &number);
            canvas.rule(x, right, y - 11.0);
            let marks = canvas.marks;
            let content = None;
            self.pages[from + n].pieces.push(Piece { content, marks });
        }
    }

    fn canvas(&self) -> Canvas<'_> {
        Canvas {
            fonts: &self.fonts,
            marks: Vec::new(),
        }
    }

    /// A new piece of the structure in another one, or at its root.
    fn node(&mut self, parent: Option<usize>, kind: Kind) -> usize {
        let children = Vec::new();
        self.nodes.push(Node { kind, children });
        let node = self.nodes.len() - 1;
        match parent {
            Some(parent) => self.nodes[parent].children.push(Child::Node(node)),
            None => self.root.push(node),
        }
        node
    }

    /// Puts marks on the last page; those of no node are only for the eye.
    fn put(&mut self, node: Option<usize>, marks: Vec<Mark>) {
        if marks.is_empty() {
            return;
        }
        let content = node.map(|node| {
            let content = self.contents;
            self.contents += 1;
            self.nodes[node].children.push(Child::Content(content));
            content
        });
        if let Some(page) = self.pages.last_mut() {
            page.pieces.push(Piece { content, marks });
        }
    }

    /// Sets lines below each other from `y` and gives back how high they are.
    fn lines(&mut self, node: Option<usize>, (x, y): (f32, f32), style: Style, lines: &[String]) {
        let step = style.size * LINE;
        let mut canvas = self.canvas();
        for (n, line) in lines.iter().enumerate() {
            let baseline = y + step * n as f32 + style.size * 0.98;
            // A line ends in a space, so that its last word is not run into the next.
            let ended = if n + 1 < lines.len() {
                format!("{line} ")
            } else {
                line.clone()
            };
            canvas.text((x, baseline), Anchor::Left, style, &ended);
        }
        let marks = canvas.marks;
        self.put(node, marks);
    }

    /// A heading; at least `room` pt of what follows stand on the same page.
    pub fn heading(&mut self, level: u16, text: &str, room: f32) {
        let text = &shortened(text);
        let size = match level {
            1 => 17.0,
            2 => 12.5,
            _ => 10.5,
        };
        let style = Style { size, ..STRONG };
        let lines = self.fonts.lines(text, size, self.width());
        let height = size * LINE * lines.len() as f32;
        self.need(height + 12.0 + room);
        if self.y > MARGIN {
            self.space(if level == 1 { 0.0 } else { 9.0 });
        }
        let (page, y) = (self.pages.len() - 1, self.y);
        let text = lines.join(" ");
        self.bookmarks.push(Bookmark {
            level,
            text: text.clone(),
            page,
            y,
        });
        let node = self.node(None, Kind::Heading(level, text));
        self.lines(Some(node), (self.left(), self.y), style, &lines);
        self.space(height);
        if level <= 2 {
            let (left, right, y) = (self.left(), self.left() + self.width(), self.y + 1.0);
            let mut canvas = self.canvas();
            canvas.rule(left, right, y);
            let marks = canvas.marks;
            self.put(None, marks);
            self.space(5.0);
        } else {
            self.space(2.0);
        }
    }

    /// Text across the page; what does not fit on one page goes on on the next.
    pub fn paragraph(&mut self, text: &str, style: Style) {
        let lines = self.fonts.lines(text, style.size, self.width());
        let step = style.size * LINE;
        self.need((step * lines.len() as f32).min(self.height()));
        let node = self.node(None, Kind::Paragraph);
        let mut left = lines.as_slice();
        while !left.is_empty() {
            self.need(step);
            let room = ((self.bottom() - self.y) / step).floor().max(1.0) as usize;
            let (here, further) = left.split_at(room.min(left.len()));
            self.lines(Some(node), (self.left(), self.y), style, here);
            self.space(step * here.len() as f32);
            left = further;
        }
        self.space(3.0);
    }

    /// Room for something as wide as the page, on the next one where this is full.
    fn block(&mut self, height: f32) -> Area {
        self.need(height);
        Area {
            left: self.left(),
            top: self.y,
            width: self.width(),
            height,
        }
    }

    /// A paragraph that is framed and shaded.
    pub fn framed(&mut self, text: &str, style: Style) {
        let inner = self.width() - 16.0;
        let lines = self.fonts.lines(text, style.size, inner);
        let height = style.size * LINE * lines.len() as f32 + 10.0;
        if height > self.height() / 2.0 {
            return self.paragraph(text, style);
        }
        let area = self.block(height);
        let mut canvas = self.canvas();
        canvas.rect(area, Some(SHADE), Some((BLACK, 0.7)));
        let marks = canvas.marks;
        self.put(None, marks);
        let node = self.node(None, Kind::Paragraph);
        self.lines(Some(node), (self.left() + 8.0, self.y + 4.5), style, &lines);
        self.space(height + 5.0);
    }

    /// Fields to fill in on one line, each a name with a rule behind it, as wide as its share.
    pub fn fields(&mut self, fields: &[(&str, f32)]) {
        self.need(20.0);
        let node = self.node(None, Kind::Paragraph);
        let (mut x, y) = (self.left(), self.y);
        for (name, share) in fields {
            let wide = self.width() * share;
            self.lines(Some(node), (x, y), BODY, &[format!("{name} ")]);
            let from = x + self.fonts.width(name, BODY.size) + 5.0;
            let mut canvas = self.canvas();
            canvas.line(&[(from, y + 11.5), (x + wide - 8.0, y + 11.5)], 0.6);
            let marks = canvas.marks;
            self.put(None, marks);
            x += wide;
        }
        self.space(21.0);
    }

    /// A list whose items have a label: a number, a sign, or nothing for a box to tick.
    pub fn list(&mut self, items: &[(Option<String>, String)], columns: usize, style: Style) {
        let list = self.node(None, Kind::List);
        let gap = 14.0;
        let wide = (self.width() - gap * (columns as f32 - 1.0)) / columns as f32;
        let label_width = 17.0;
        let rows = items.len().div_ceil(columns);
        let broken: Vec<Vec<String>> = (items.iter())
            .map(|(_, text)| self.fonts.lines(text, style.size, wide - label_width))
            .collect();
        let step = style.size * LINE;
        for row in 0..rows {
            // Down one column, then down the next: the order of reading is the order of the items.
            let here: Vec<usize> = (0..columns)
                .map(|column| column * rows + row)
                .filter(|n| *n < items.len())
                .collect();
            let high = here.iter().map(|n| broken[*n].len()).max().unwrap_or(1);
            let height = step * high as f32 + 2.5;
            if columns == 1 {
                self.need(height);
            }
            for n in here {
                let x = self.left() + (wide + gap) * (n / rows) as f32;
                self.item(
                    list,
                    (x, self.y),
                    (items[n].0.as_deref(), style),
                    &broken[n],
                );
            }
            self.space(height);
        }
        // Row by row is how it is drawn; reading software goes by the items' order.
        if columns > 1 {
            let mut order: Vec<(usize, Child)> = Vec::new();
            let drawn = (0..rows).flat_map(|row| (0..columns).map(move |c| c * rows + row));
            let children = std::mem::take(&mut self.nodes[list].children);
            order.extend(drawn.filter(|n| *n < items.len()).zip(children));
            order.sort_by_key(|(n, _)| *n);
            self.nodes[list].children = order.into_iter().map(|(_, child)| child).collect();
        }
        self.space(3.0);
    }

    fn item(
        &mut self,
        list: usize,
        (x, y): (f32, f32),
        (label, style): (Option<&str>, Style),
        lines: &[String],
    ) {
        let item = self.node(Some(list), Kind::Item);
        match label {
            Some(label) => {
                let node = self.node(Some(item), Kind::Label);
                self.lines(Some(node), (x, y), style, &[format!("{label} ")]);
            }
            None => {
                let mut canvas = self.canvas();
                let area = Area {
                    left: x + 1.0,
                    top: y + 2.0,
                    width: 9.0,
                    height: 9.0,
                };
                canvas.rect(area, None, Some((BLACK, 0.8)));
                let marks = canvas.marks;
                self.put(None, marks);
            }
        }
        let body = self.node(Some(item), Kind::Body);
        self.lines(Some(body), (x + 17.0, y), style, lines);
    }

    /// A drawing as wide as the page.
    pub fn figure(&mut self, alt: &str, height: f32, draw: impl FnOnce(&mut Canvas<'_>, Area)) {
        let area = self.block(height);
        let mut canvas = self.canvas();
        draw(&mut canvas, area);
        let marks = canvas.marks;
        let node = self.node(None, Kind::Figure(alt.to_owned()));
        self.put(Some(node), marks);
        self.space(height + 4.0);
    }

    /// A table. A row is never broken; where a page ends, the heads are drawn again on the next one.
    pub fn table(&mut self, shape: &TableShape<'_>, rows: &[Vec<Cell<'_>>]) {
        let table = self.node(None, Kind::Table(shape.about.to_owned()));
        let first = rows.first().map_or(0.0, |row| self.row_height(shape, row));
        self.need(self.heads_height(shape) + first);
        self.heads(Some(table), shape);
        for (n, row) in rows.iter().enumerate() {
            let height = self.row_height(shape, row);
            if self.y + height > self.bottom() && height < self.height() {
                self.page();
                // Said once; what is drawn again is for the eye.
                self.heads(None, shape);
            }
            self.row(table, shape, row, (height, n % 2 == 1));
        }
        self.space(6.0);
    }

    fn columns(&self, shape: &TableShape<'_>) -> Vec<(f32, f32)> {
        let all: f32 = shape.columns.iter().sum();
        let mut x = self.left();
        let mut columns = Vec::new();
        for share in shape.columns {
            let wide = self.width() * share / all;
            columns.push((x, wide));
            x += wide;
        }
        columns
    }

    fn heads_height(&self, shape: &TableShape<'_>) -> f32 {
        let columns = self.columns(shape);
        let high = |((_, wide), head): (&(f32, f32), &String)| {
            self.fonts.lines(head, SMALL.size, wide - PAD * 2.0).len()
        };
        let most = columns.iter().zip(shape.heads).map(high).max();
        most.map_or(0.0, |lines| SMALL.size * LINE * lines as f32 + 5.0)
    }

    fn heads(&mut self, table: Option<usize>, shape: &TableShape<'_>) {
        let height = self.heads_height(shape);
        if height == 0.0 {
            return;
        }
        let style = Style {
            size: SMALL.size,
            ..STRONG
        };
        let columns = self.columns(shape);
        let band = Area {
            left: self.left(),
            top: self.y,
            width: self.width(),
            height,
        };
        self.boxes(&columns, band, Some(SHADE));
        let row = table.map(|table| self.node(Some(table), Kind::Row));
        for ((x, wide), head) in columns.iter().zip(shape.heads) {
            let node = row.map(|row| self.node(Some(row), Kind::ColumnHead));
            let lines = self.fonts.lines(head, style.size, wide - PAD * 2.0);
            self.lines(node, (x + PAD, self.y + 2.0), style, &lines);
        }
        self.space(height);
    }

    /// The frames of a row's cells.
    fn boxes(&mut self, columns: &[(f32, f32)], band: Area, fill: Option<Gray>) {
        let mut canvas = self.canvas();
        for (x, wide) in columns {
            let area = Area {
                left: *x,
                width: *wide,
                ..band
            };
            canvas.rect(area, fill, Some((QUIET, 0.5)));
        }
        let marks = canvas.marks;
        self.put(None, marks);
    }

    fn text_height(&self, text: &str, wide: f32) -> f32 {
        let lines = (self.fonts).lines(&shortened(text), BODY.size, wide - PAD * 2.0);
        BODY.size * LINE * lines.len() as f32
    }

    fn row_height(&self, shape: &TableShape<'_>, row: &[Cell<'_>]) -> f32 {
        let columns = self.columns(shape);
        let heights = columns.iter().zip(row).map(|((_, wide), cell)| match cell {
            Cell::Text(text) | Cell::Strong(text) => self.text_height(text, *wide) + 2.6,
            Cell::Blank => 0.0,
            Cell::Picture(_, high, _) => high + 2.6,
        });
        heights.fold(shape.row, f32::max)
    }

    fn row(
        &mut self,
        table: usize,
        shape: &TableShape<'_>,
        cells: &[Cell<'_>],
        (height, odd): (f32, bool),
    ) {
        let columns = self.columns(shape);
        let band = Area {
            left: self.left(),
            top: self.y,
            width: self.width(),
            height,
        };
        let to_fill_in = cells.iter().any(|cell| matches!(cell, Cell::Blank));
        let fill = (odd && !to_fill_in).then_some(247);
        self.boxes(&columns, band, fill);
        let row = self.node(Some(table), Kind::Row);
        for (n, ((x, wide), cell)) in columns.iter().zip(cells).enumerate() {
            let kind = if n == 0 && shape.row_heads {
                Kind::RowHead
            } else {
                Kind::Cell
            };
            let node = self.node(Some(row), kind);
            let inner = Area {
                left: x + PAD,
                top: self.y + 1.3,
                width: wide - PAD * 2.0,
                height: height - 2.6,
            };
            match cell {
                Cell::Text(text) => self.cell_text(node, inner, BODY, text),
                Cell::Strong(text) => self.cell_text(node, inner, STRONG, text),
                // A cell without content would be left out of its row.
                Cell::Blank => self.cell_text(node, inner, BODY, " "),
                Cell::Picture(alt, _, draw) => self.picture(node, inner, alt, draw),
            }
        }
        self.space(height);
    }

    fn cell_text(&mut self, node: usize, area: Area, style: Style, text: &str) {
        let mut lines = (self.fonts).lines(&shortened(text), style.size, area.width);
        if lines.iter().all(String::is_empty) {
            lines = vec![" ".to_owned()];
        }
        self.lines(Some(node), (area.left, area.top), style, &lines);
    }

    fn picture(&mut self, cell: usize, area: Area, alt: &str, draw: &Drawing<'_>) {
        let mut canvas = self.canvas();
        draw(&mut canvas, area);
        let marks = canvas.marks;
        let node = self.node(Some(cell), Kind::Figure(alt.to_owned()));
        self.put(Some(node), marks);
    }
}

/// Longest text of a heading or a cell, which stay on one page, characters.
const LONGEST: usize = 1200;

/// The text, or its beginning where no page could hold it.
fn shortened(text: &str) -> String {
    match text.char_indices().nth(LONGEST) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}

/// Between a cell's frame and its text, pt.
const PAD: f32 = 4.0;
