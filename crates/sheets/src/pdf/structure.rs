//! The structure of a document as PDF tags: headings, paragraphs, lists, tables, figures.

use lopdf::{Dictionary, Document as Pdf, Object, ObjectId, dictionary};

use kurbo::{Rect, Vec2};

use crate::page::{Block, Heads, Mark, Page, Role, turn};
use crate::text::MM_PER_PT;

use super::finish::text;

/// The tag of an entry's mark: its number, dash or dot.
pub(super) const LABEL: &str = "Lbl";

/// The tag of a block's content.
pub(super) fn tag(role: &Role) -> &'static str {
    match role {
        Role::Heading(1) => "H1",
        Role::Heading(2) => "H2",
        Role::Heading(_) => "H3",
        Role::Paragraph | Role::Foot => "P",
        Role::ListItem => "LBody",
        Role::Cell { header: Some(_), .. } => "TH",
        Role::Cell { header: None, .. } => "TD",
        Role::Figure { .. } => "Figure",
        Role::Artifact => "Artifact",
    }
}

/// The open container of blocks that belong together.
#[derive(Clone, Copy, PartialEq)]
enum Group {
    None,
    List(ObjectId),
    Row { table: usize, table_id: ObjectId, row: usize, row_id: ObjectId },
}

/// Builds the structure tree of a document in a language and hangs it into the catalogue.
pub(super) fn add_structure(pdf: &mut Pdf, pages: &[Page], language: &str) {
    let page_ids: Vec<ObjectId> = pdf.get_pages().into_values().collect();
    let root = pdf.new_object_id();
    let whole = pdf.new_object_id();
    let mut tree = Tree { pdf, children: Vec::new(), parents: Vec::new(), other_language: None };
    for (number, (page, page_id)) in pages.iter().zip(&page_ids).enumerate() {
        tree.other_language = (page.language != language).then_some(page.language);
        tree.page(page, number, *page_id, whole);
    }
    let Tree { children, parents, .. } = tree;
    let document = dictionary! {
        "Type" => "StructElem", "S" => "Document", "P" => root, "K" => children,
    };
    pdf.objects.insert(whole, document.into());
    let nums: Vec<Object> = parents
        .into_iter()
        .enumerate()
        .flat_map(|(number, elements)| [Object::Integer(number as i64), elements.into()])
        .collect();
    let parent_tree = pdf.add_object(dictionary! { "Nums" => nums });
    let tree_root = dictionary! {
        "Type" => "StructTreeRoot",
        "K" => vec![Object::Reference(whole)],
        "ParentTree" => parent_tree,
        "ParentTreeNextKey" => page_ids.len() as i64,
    };
    pdf.objects.insert(root, tree_root.into());
    if let Ok(catalog) = pdf.catalog_mut() {
        catalog.set("StructTreeRoot", root);
        catalog.set("MarkInfo", dictionary! { "Marked" => true });
    }
}

struct Tree<'a> {
    pdf: &'a mut Pdf,
    /// What lies right under the document.
    children: Vec<Object>,
    /// For each page, the element of each marked block.
    parents: Vec<Vec<Object>>,
    /// The language of the page, where it is not that of the document: a reader that speaks has to
    /// know it.
    other_language: Option<&'static str>,
}

impl Tree<'_> {
    fn page(&mut self, page: &Page, number: usize, page_id: ObjectId, whole: ObjectId) {
        let mut group = Group::None;
        let mut marked = Vec::new();
        for block in page.in_order().filter(|block| block.role != Role::Artifact) {
            group = self.group_for(&block.role, group, whole);
            let parent = match group {
                Group::None => whole,
                Group::List(list) => self.element("LI", list),
                Group::Row { row_id, .. } => row_id,
            };
            let mut mark = |tree: &mut Self, tag: &str| {
                let element = tree.element(tag, parent);
                tree.place(element, marked.len(), page_id);
                marked.push(Object::Reference(element));
                element
            };
            if block.has_label() {
                mark(self, LABEL);
            }
            let element = mark(self, tag(&block.role));
            self.describe(element, block, page.paper.height());
        }
        self.parents.push(marked);
        if let Ok(Object::Dictionary(page)) = self.pdf.get_object_mut(page_id) {
            page.set("StructParents", number as i64);
            page.set("Tabs", "S");
        }
    }

    /// The group that a block belongs to, begun where the one before does not go on.
    fn group_for(&mut self, role: &Role, open: Group, whole: ObjectId) -> Group {
        match (role, open) {
            (Role::ListItem, Group::List(list)) => Group::List(list),
            (Role::ListItem, _) => Group::List(self.element("L", whole)),
            (Role::Cell { table, row, .. }, Group::Row { table: t, table_id, row: r, row_id })
                if *table == t =>
            {
                let row_id = if *row == r { row_id } else { self.element("TR", table_id) };
                Group::Row { table: t, table_id, row: *row, row_id }
            }
            (Role::Cell { table, row, .. }, _) => {
                let table_id = self.element("Table", whole);
                let row_id = self.element("TR", table_id);
                Group::Row { table: *table, table_id, row: *row, row_id }
            }
            _ => Group::None,
        }
    }

    /// A new element, last among its parent's children.
    fn element(&mut self, kind: &str, parent: ObjectId) -> ObjectId {
        let mut element = dictionary! {
            "Type" => "StructElem", "S" => kind, "P" => parent, "K" => Vec::<Object>::new(),
        };
        if let Some(language) = self.other_language {
            element.set("Lang", text(language));
        }
        let id = self.pdf.add_object(element);
        match self.pdf.get_object_mut(parent).and_then(Object::as_dict_mut) {
            Ok(parent) => push_child(parent, id),
            // The document itself is put in last.
            Err(_) => self.children.push(Object::Reference(id)),
        }
        id
    }

    /// Says where an element's content is.
    fn place(&mut self, element: ObjectId, number: usize, page: ObjectId) {
        if let Ok(element) = self.pdf.get_object_mut(element).and_then(Object::as_dict_mut) {
            element.set("K", number as i64);
            element.set("Pg", page);
        }
    }

    /// Says what an element is, on a page so high.
    fn describe(&mut self, element: ObjectId, block: &Block, height: f64) {
        let Ok(element) = self.pdf.get_object_mut(element).and_then(Object::as_dict_mut) else {
            return;
        };
        match &block.role {
            Role::Figure { alt } => {
                element.set("Alt", text(alt));
                let around = bounds(block);
                let pt = |mm: f64| Object::Real((mm / MM_PER_PT) as f32);
                let corners = [around.x0, height - around.y1, around.x1, height - around.y0];
                let corners: Vec<Object> = corners.map(pt).to_vec();
                let layout = dictionary! {
                    "O" => "Layout", "Placement" => "Block", "BBox" => corners,
                };
                element.set("A", layout);
            }
            Role::Cell { header: Some(heads), .. } => {
                let scope = match heads {
                    Heads::Column => "Column",
                    Heads::Row => "Row",
                };
                element.set("A", dictionary! { "O" => "Table", "Scope" => scope });
            }
            _ => {}
        }
    }
}

/// The box around the marks of a block, in millimetres of the page.
fn bounds(block: &Block) -> Rect {
    let around = |mark: &Mark| match mark {
        Mark::Shape(shape) => {
            let half = shape.pen.as_ref().map_or(0.0, |pen| pen.width / 2.0);
            kurbo::Shape::bounding_box(&shape.path).inflate(half, half)
        }
        Mark::Text(run) => {
            let (sin, cos) = turn(run.angle);
            let along = Vec2::new(cos, sin) * run.shaped.width(run.size_pt);
            let up = Vec2::new(sin, -cos) * run.size_pt * MM_PER_PT;
            Rect::from_points(run.at, run.at + along)
                .union(Rect::from_points(run.at + up, run.at + along + up))
        }
    };
    block.marks.iter().map(around).reduce(|all, one| all.union(one)).unwrap_or_default()
}

fn push_child(parent: &mut Dictionary, child: ObjectId) {
    if let Ok(children) = parent.get_mut(b"K").and_then(Object::as_array_mut) {
        children.push(Object::Reference(child));
    }
}
