//! Which made size suits the client, of one layout or of all, and what the cushion means around it.

use std::collections::BTreeMap;

use case::{HeightEffect, LayoutRef, NoSizeToMake, SizeToMake};
use cushion::{Cell, Layout, Mass, Severity, Size};
use fitting::Sizing;

use crate::error::WorkError;
use crate::file_remarks::FileRemarks;
use crate::open_case::OpenCase;
use crate::sourced::{Sourced, faults_at};
use crate::surroundings::Surroundings;

/// What sizing found of one layout of many.
#[derive(Debug)]
pub struct LayoutSizing {
    /// The layout's name, as its source knows it, or its file's as the client's file has it.
    pub name: String,
    /// Whom it suits, in its author's words; none where it could not be looked at.
    pub about: Option<String>,
    /// The sizes that it is made in, or why it could not be looked at; of a file beside the client's,
    /// those that it can be drawn in.
    pub sizing: Result<Sizing, WorkError>,
    /// Of a file beside the client's that cannot be drawn in each of its sizes, what is wrong.
    pub not_drawn: Option<FileRemarks>,
    /// Whether it can be drawn in the size that would have to be made; none where there is none.
    pub can_be_drawn_so: Option<bool>,
}

/// What sizing found of all layouts.
#[derive(Debug)]
pub struct AllSizings {
    /// Each layout, in the order of the source of layouts, then the files beside the client's; that
    /// of the client's file is the last where neither lists it.
    pub layouts: Vec<LayoutSizing>,
    /// What would have to be made, or why nothing can; none where a made size suits.
    pub to_make: Option<Result<SizeToMake, Vec<NoSizeToMake>>>,
}

impl OpenCase {
    /// Finds which of the sizes that the layout is made in suits the client, and why the others do
    /// not.
    #[must_use]
    pub fn sizing(&self) -> Sizing {
        self.sizing_of(&self.layout.value)
    }

    fn sizing_of(&self, layout: &Layout) -> Sizing {
        let client = &self.client.value;
        fitting::sizing(&fitting::sized_by(client), self.weighed(), &client.chair, &layout.sizes)
    }

    fn weighed(&self) -> Option<Mass> {
        self.client.value.latest_weighing().map(|weighing| weighing.weight)
    }

    fn suiting(&self) -> Result<SizeToMake, Vec<NoSizeToMake>> {
        let client = &self.client.value;
        fitting::size_to_make(&fitting::sized_by(client), self.weighed(), &client.chair)
    }

    /// Finds the size of this layout that would have to be made for the client where no made one
    /// suits.
    ///
    /// # Errors
    ///
    /// Fails where no size can suit, and where the layout cannot be drawn so.
    pub fn size_to_make(
        &self,
        surroundings: Surroundings<'_>,
    ) -> Result<SizeToMake, Vec<NoSizeToMake>> {
        let to_make = self.suiting()?;
        let size = to_make.made.size;
        let drawn = self.is_drawn(surroundings, &self.client.value.cushion.layout, size);
        if drawn { Ok(to_make) } else { Err(vec![NoSizeToMake::LayoutNotDrawn { size }]) }
    }

    /// Looks over the sizes of all layouts that the source of layouts lists, of those in `files`,
    /// each called as the client's file would call it, and of the client's own; one that draws for one
    /// size only is asked for the size that the client's file names.
    #[must_use]
    pub fn all_sizings(&self, surroundings: Surroundings<'_>, files: &[String]) -> AllSizings {
        let mut names = surroundings.layouts.names();
        names.extend(files.iter().cloned());
        let own_name = self.client.value.cushion.layout.to_string();
        if !names.contains(&own_name) {
            names.push(own_name);
        }
        let looked_at = |name: String| self.looked_at(surroundings, files.contains(&name), name);
        let mut layouts: Vec<LayoutSizing> = names.into_iter().map(looked_at).collect();
        let suits = |own: &LayoutSizing| own.sizing.as_ref().is_ok_and(|it| it.chosen.is_some());
        if layouts.iter().any(suits) {
            return AllSizings { layouts, to_make: None };
        }
        let mut to_make = self.suiting();
        if let Ok(SizeToMake { made, .. }) = to_make {
            for layout in &mut layouts {
                let drawn = self.is_drawn(surroundings, &self.called(&layout.name), made.size);
                layout.can_be_drawn_so = Some(drawn);
            }
            if layouts.iter().all(|layout| layout.can_be_drawn_so == Some(false)) {
                to_make = Err(vec![NoSizeToMake::LayoutNotDrawn { size: made.size }]);
            }
        }
        AllSizings { layouts, to_make: Some(to_make) }
    }

    /// What sizing finds of a layout; of one in a file beside the client's, only as it can be drawn.
    fn looked_at(
        &self,
        surroundings: Surroundings<'_>,
        is_beside: bool,
        name: String,
    ) -> LayoutSizing {
        let size = self.client.value.cushion.size;
        let mut found = surroundings.layout_for(&self.client, &self.called(&name), size);
        let mut not_drawn = None;
        if let (true, Ok(layout)) = (is_beside, &mut found) {
            not_drawn = self.only_drawn(layout);
        }
        let about = found.as_ref().ok().map(|layout| layout.value.about.clone());
        let sizing = found.map(|layout| self.sizing_of(&layout.value));
        LayoutSizing { name, about, sizing, not_drawn, can_be_drawn_so: None }
    }

    /// Leaves the sizes away that a layout cannot be drawn in, and says what is wrong, where there
    /// are some.
    fn only_drawn(&self, layout: &mut Sourced<Layout>) -> Option<FileRemarks> {
        let edge = self.cell.value.edge;
        let faults = cushion::check_layout(&layout.value, edge);
        let remarks = files::layout_remarks(&layout.file.text, &faults);
        let file = FileRemarks { remarks, ..layout.file.clone() };
        if !file.is_wrong() {
            return None;
        }
        let all = layout.value.clone();
        layout.value.sizes.retain(|made| can_be_drawn(&all, made.size, &self.cell.value));
        Some(file)
    }

    /// A layout of this name: the client's own as its file has it, another as its source knows it, or its file is called.
    fn called(&self, name: &str) -> LayoutRef {
        let own = &self.client.value.cushion.layout;
        if own.to_string() == name {
            return own.clone();
        }
        if LayoutRef::is_path(name) {
            return LayoutRef::File(name.to_owned());
        }
        LayoutRef::Named { name: name.to_owned(), parameters: BTreeMap::new() }
    }

    /// Whether a layout can be drawn at a size and filled with the client's cell.
    fn is_drawn(&self, surroundings: Surroundings<'_>, layout: &LayoutRef, size: Size) -> bool {
        let found = surroundings.layout_for(&self.client, layout, size);
        found.is_ok_and(|layout| can_be_drawn(&layout.value, size, &self.cell.value))
    }

    /// Returns what the cushion's height means for footrests, feet and transfers.
    ///
    /// Nothing is predicted: the cushion under the thighs is taken as high as its walls.
    #[must_use]
    pub fn height_effects(&self) -> Vec<HeightEffect> {
        let client = &self.client.value;
        let high = self.pattern.wall_height();
        let propulsion = client.function.propulsion;
        let mut effects =
            fitting::height_effects(&client.measures, &client.chair, propulsion, high);
        effects.push(HeightEffect::Seated { height: high });
        effects
    }
}

/// Whether a layout can be drawn at a size and filled with a cell.
fn can_be_drawn(layout: &Layout, size: Size, cell: &Cell) -> bool {
    let faults = faults_at(layout, size, cell);
    !faults.iter().any(|fault| fault.kind.severity() == Severity::Error)
}
