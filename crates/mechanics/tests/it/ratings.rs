//! The built-in layouts' maximum user weights against the mechanics: the heaviest rated client
//! keeps the clearance limit.

use cushion::{Length, Mass, Pattern, Side};
use mechanics::{
    Body, Cells, NestedMeshes, Outcome, Parameters, SeatedBody, SeatedClient, SheetModel, SiteName,
    Stop, UnloadedCushion, come_to_rest, unit_sheets,
};

/// The clearance under each seat bone that the ratings keep, on the central estimate.
///
/// 25 mm: from memory, widely taught; a parameter of the fitting, unverified.
const CLEARANCE: Length = Length::from_mm(25.0);

/// Whether a client of this weight, as wide as the size is for, keeps the clearance on both sides.
struct Rated {
    model: SheetModel,
    cells: Vec<Cells>,
    pattern: Pattern,
    parameters: Parameters,
}

impl Rated {
    fn of(layout: &str, size: &str) -> Self {
        let pattern = testkit::pattern(layout, size);
        let parameters = Parameters::default();
        let cell = testkit::cell();
        let meshes = NestedMeshes::new(&pattern, Length::from_mm(8.0)).expect("it can be meshed");
        let units = unit_sheets(&meshes);
        let unloaded = UnloadedCushion::of_meshes(&pattern, &cell, &parameters, &meshes, &units);
        let stock = unloaded.expect("it has a stock fill").into_stock();
        let cells = pattern.indices().map(|ix| Cells {
            count: f64::from(stock[ix].cells.stock),
            each: cell.inflated,
            packing: stock[ix].packing,
        });
        let cells = cells.collect();
        Self { model: SheetModel::new(&meshes, pattern.wall_height()), cells, pattern, parameters }
    }

    /// The least clearance under a seat bone; none where the client does not come to rest.
    fn clearance(&self, weight: Mass) -> Option<Length> {
        let mut client = SeatedClient::new(weight);
        // Common practice: the cushion is 25 mm wider than the hips, and ends 50 mm behind the knee.
        let size = self.pattern.size();
        client.measures.hip_width = Some(size.width() - Length::from_mm(25.0));
        client.measures.thigh_depth.left = Some(size.depth() + Length::from_mm(50.0));
        client.measures.thigh_depth.right = Some(size.depth() + Length::from_mm(50.0));
        // A small cushion is for a small body: places scale with its depth from those of 400 mm.
        client.seat_bones_forward = Some(size.depth() * 0.325);
        client.load_forward = Some(size.depth() * 0.1);
        let seated = SeatedBody::new(&self.model, Body::of_client(&client).expect("a body"));
        let rest =
            come_to_rest(&self.model, &self.cells, &seated, &self.parameters, None, Stop::never());
        if !matches!(rest.outcome, Outcome::AtRest | Outcome::Bottomed) {
            return None;
        }
        let resting = rest.resting?;
        let bones = [SiteName::SeatBone(Side::Left), SiteName::SeatBone(Side::Right)];
        let bones = resting.sites.iter().filter(|site| bones.contains(&site.site.name));
        bones.map(|site| site.clearance).reduce(Length::min)
    }
}

#[test]
fn the_heaviest_rated_client_keeps_the_clearance() {
    for layout in ["row-six", "island-eight", "curved-ten"] {
        for made in &testkit::layout(layout).sizes {
            let rated = Rated::of(layout, &made.size.to_string());
            let clearance = rated.clearance(made.max_user_weight).expect("the client rests");
            assert!(
                clearance >= CLEARANCE,
                "{layout} {}: {:.1} mm at {:.0} kg",
                made.size,
                clearance.to_mm(),
                made.max_user_weight.to_kg()
            );
        }
    }
}
