//! Another cushion of the same client: what was found on it teaches how the client sits.

use case::{
    Client, CushionIdentity, Entry, Expected, LayoutRef, Likeness, OtherCushion, RecordedPlan,
    Taught, Trouble,
};
use fitting::{PreparedCushion, Spacings};
use mechanics::Stop;

use crate::as_found::found_on;
use crate::error::WorkError;
use crate::open_case::{OpenCase, identity_of};
use crate::sourced::{Sourced, pattern};
use crate::surroundings::Surroundings;

/// A plan on another cushion, with the file in which it stands.
struct Elsewhere<'a> {
    file: &'a Sourced<Client>,
    plan: &'a RecordedPlan,
}

impl Elsewhere<'_> {
    /// How many cells are in that cushion, by the record or else by the plan, and what is expected of
    /// them.
    fn in_it(&self) -> (u32, Option<&Expected>) {
        let plan = self.plan;
        let there = (plan.layout.clone(), plan.size);
        let now = self.file.value.cushion_now();
        match now.filter(|now| now.cushion.as_ref() == Some(&there)) {
            Some(now) => (now.total(), plan.expected.as_ref().filter(|_| now.is_as_planned(plan))),
            None => (plan.total(), plan.expected.as_ref()),
        }
    }
}

impl OpenCase {
    /// How many cells are in this cushion: by the record, or by its plan, or else by the stock fill;
    /// and what its plan expects of them.
    #[must_use]
    pub fn cells_here(&self) -> (u32, Option<&Expected>) {
        let plan = self.client.value.latest_plan();
        let plan = plan.filter(|plan| self.is_for_this_cushion(plan).is_ok());
        match (self.counted().filter(|own| own.0.from.is_told()), plan) {
            (Some((now, _)), plan) => {
                let as_planned = plan.filter(|plan| now.is_as_planned(plan));
                (now.total(), as_planned.and_then(|plan| plan.expected.as_ref()))
            }
            (None, Some(plan)) => (plan.total(), plan.expected.as_ref()),
            (None, None) => (self.cushion.stock().total(), None),
        }
    }

    /// Takes up what was found on another cushion of the client: the one that the file named before, or
    /// that of the file which it names as the first.
    ///
    /// # Errors
    ///
    /// Fails where the first file cannot be read.
    pub(crate) fn learn_elsewhere(
        &mut self,
        surroundings: Surroundings<'_>,
    ) -> Result<(), WorkError> {
        let first = self.first(surroundings)?;
        self.first_file = first.as_ref().map(|first| first.file.path.clone());
        let elsewhere = match (self.earlier_plan(), &first) {
            (Some(plan), _) => Some(Elsewhere { file: &self.client, plan }),
            (None, Some(file)) => file.value.latest_plan().map(|plan| Elsewhere { file, plan }),
            (None, None) => None,
        };
        let Some(elsewhere) = elsewhere else { return Ok(()) };
        let taught = self.taught_by(surroundings, &elsewhere);
        let plan = elsewhere.plan;
        let (cells, expected) = elsewhere.in_it();
        let other = OtherCushion {
            layout: plan.layout.clone(),
            size: plan.size,
            on: plan.on,
            cells,
            expected: expected.cloned(),
            taught: taught.is_some(),
        };
        self.other = Some(other);
        self.client.value.taught = taught.map(Taught::of_the_client).into_iter().collect();
        Ok(())
    }

    /// The client's file that this one names as the first.
    fn first(&self, surroundings: Surroundings<'_>) -> Result<Option<Sourced<Client>>, WorkError> {
        let Some(named) = &self.client.value.cushion.first_file else { return Ok(None) };
        let path = surroundings.shelf.beside(&self.client.file.path, named);
        let read = if path == self.client.file.path {
            Err(WorkError::file(Trouble::FirstFileIsItself { file: path }))
        } else {
            surroundings.client(&path)
        };
        read.map(Some).map_err(|error| error.named_in(&self.client.file, "cushion", "first_file"))
    }

    /// The last plan of the record that is for another cushion than the file now names; one that was
    /// withdrawn only where no other is.
    fn earlier_plan(&self) -> Option<&RecordedPlan> {
        let identity = self.identity();
        let client = &self.client.value;
        let mut in_force = client.in_force().into_iter().rev();
        let last = in_force.find_map(|own| plan_elsewhere(&identity, own));
        let mut all = client.record.iter().rev();
        last.or_else(|| all.find_map(|own| plan_elsewhere(&identity, own)))
    }

    /// What was found on the cushion of a plan; none where nothing was, or its layout is not there any
    /// more as it was.
    fn taught_by(
        &self,
        surroundings: Surroundings<'_>,
        elsewhere: &Elsewhere<'_>,
    ) -> Option<Taught> {
        let Elsewhere { file, plan } = elsewhere;
        let layout = layout_ref(&plan.layout)?;
        let mut layout = surroundings.layout_for(file, &layout, plan.size).ok()?;
        let cell = surroundings.cell_of(file).ok()?;
        let pattern = pattern(&mut layout, plan.size, &cell.value).ok()?;
        let identity = identity_of(&plan.layout, &layout, &cell, &pattern);
        let found = found_on(&file.value, &pattern, &identity);
        if found.is_empty() {
            return None;
        }
        let cushion = PreparedCushion::new(&pattern, &cell.value, Spacings::default()).ok()?;
        let weight = self.weight().ok()?;
        fitting::taught(&self.client.value, &cushion, weight, &found, Stop::never()).ok()
    }
}

/// The plan of an entry, where it is one for another cushion.
fn plan_elsewhere<'e>(identity: &CushionIdentity, entry: &'e Entry) -> Option<&'e RecordedPlan> {
    match entry {
        Entry::Plan(plan) if is_elsewhere(identity, plan) => Some(plan),
        _ => None,
    }
}

/// Whether a plan is for another cushion.
fn is_elsewhere(identity: &CushionIdentity, plan: &RecordedPlan) -> bool {
    matches!(identity.likeness(plan), Likeness::Other | Likeness::OtherCompartments)
}

/// The layout that a record names; none of a plugin, whose parameters the record does not have.
fn layout_ref(named: &str) -> Option<LayoutRef> {
    if named.starts_with("plugin:") {
        return None;
    }
    if LayoutRef::is_path(named) {
        return Some(LayoutRef::File(named.to_owned()));
    }
    Some(LayoutRef::Named { name: named.to_owned(), parameters: <_>::default() })
}
