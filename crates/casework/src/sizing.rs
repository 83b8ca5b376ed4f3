//! Which made size suits the client, of one layout or of all, and what the cushion means around it.

use std::collections::BTreeMap;

use case::{HeightEffect, LayoutRef, NoSizeToMake, SizeToMake};
use cushion::{Layout, Mass, Severity, Size};
use fitting::Sizing;

use crate::error::WorkError;
use crate::open_case::OpenCase;
use crate::sourced::faults_at;
use crate::surroundings::Surroundings;

/// What sizing found of one layout of many.
#[derive(Debug)]
pub struct LayoutSizing {
    /// The layout's name, as its source knows it, or its file's as the client's file has it.
    pub name: String,
    /// Whom it suits, in its author's words; none where it could not be looked at.
    pub about: Option<String>,
    /// The sizes that it is made in, or why it could not be looked at.
    pub sizing: Result<Sizing, WorkError>,
    /// Whether it can be drawn in the size that would have to be made; none where there is none.
    pub can_be_drawn_so: Option<bool>,
}

/// What sizing found of all layouts.
#[derive(Debug)]
pub struct AllSizings {
    /// Each layout, in the order of the source of layouts; that of the client's file is the last
    /// where the source does not list it.
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
        fitting::sizing(&client.measures, self.weighed(), &client.chair, &layout.sizes)
    }

    fn weighed(&self) -> Option<Mass> {
        self.client.value.latest_weighing().map(|weighing| weighing.weight)
    }

    fn suiting(&self) -> Result<SizeToMake, Vec<NoSizeToMake>> {
        let client = &self.client.value;
        fitting::size_to_make(&client.measures, self.weighed(), &client.chair)
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

    /// Looks over the sizes of all layouts that the source of layouts lists, and of the client's
    /// own; one that draws for one size only is asked for the size that the client's file names.
    #[must_use]
    pub fn all_sizings(&self, surroundings: Surroundings<'_>) -> AllSizings {
        let own = &self.client.value.cushion;
        let mut names = surroundings.layouts.names();
        let own_name = own.layout.to_string();
        if !names.contains(&own_name) {
            names.push(own_name);
        }
        let mut layouts: Vec<LayoutSizing> = (names.into_iter())
            .map(|name| {
                let found = surroundings.layout_for(&self.client, &self.called(&name), own.size);
                let about = found.as_ref().ok().map(|layout| layout.value.about.clone());
                let sizing = found.map(|layout| self.sizing_of(&layout.value));
                LayoutSizing { name, about, sizing, can_be_drawn_so: None }
            })
            .collect();
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

    /// A layout of this name: the client's own as its file has it, another as its source knows it.
    fn called(&self, name: &str) -> LayoutRef {
        let own = &self.client.value.cushion.layout;
        if own.to_string() == name {
            return own.clone();
        }
        LayoutRef::Named { name: name.to_owned(), parameters: BTreeMap::new() }
    }

    /// Whether a layout can be drawn at a size and filled with the client's cell.
    fn is_drawn(&self, surroundings: Surroundings<'_>, layout: &LayoutRef, size: Size) -> bool {
        surroundings.layout_for(&self.client, layout, size).is_ok_and(|layout| {
            let faults = faults_at(&layout.value, size, &self.cell.value);
            !faults.iter().any(|fault| fault.kind.severity() == Severity::Error)
        })
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
