//! Clients of the audit: bodies of an open survey and children, with postures, injuries and goals
//! by lot.
//!
//! Source of the adults: ANSUR II, `tests/reference/ansur2.csv`. The children are invented, in the
//! proportions of body tables (from memory), since no open table of them is at hand.

use case::{Client, FrontSides, Goal, SiteName, Want};
use cushion::{Length, MadeSize, Mass, Side, Size};

use crate::advice::survey::size_for;
use crate::prediction::prepared::{PreparedCushion, Spacings};
use crate::tests::dice::Dice;

const TABLE: &str = include_str!("../../../../../tests/reference/ansur2.csv");
const LAYOUTS: [&str; 3] = ["row-six", "island-eight", "curved-ten"];

/// A client with the cushion that was chosen for them.
pub(super) struct AuditClient {
    /// By which they are found again.
    pub(super) seed: u64,
    pub(super) client: Client,
    pub(super) layout: &'static str,
    pub(super) size: Size,
    /// Whether body, injuries and goals are the same left and right.
    pub(super) symmetric: bool,
}

impl AuditClient {
    /// The client of a seed; one in eight is a child.
    pub(super) fn new(seed: u64) -> Self {
        let mut dice = Dice(seed.wrapping_mul(0x2545_f491_4f6c_dd1d) ^ 0x000a_0d17);
        loop {
            if let Some(found) = Self::by_lot(seed, &mut dice) {
                return found;
            }
        }
    }

    /// None where no made size suits the body.
    fn by_lot(seed: u64, dice: &mut Dice) -> Option<Self> {
        let child = dice.chance(0.125);
        let layout = if child { LAYOUTS[0] } else { dice.one_of(&LAYOUTS) };
        let (kg, hips, depth) = if child { child_body(dice) } else { adult_body(dice) };
        let sizes: Vec<MadeSize> = testkit::layout(layout).sizes.clone();
        let body = case::SurveyedBody {
            row: 1,
            sex: String::new(),
            weight: Mass::from_kg(kg),
            hip_width: Length::from_mm(hips),
            thigh_depth: Length::from_mm(depth),
        };
        let size = size_for(&body, &sizes)?;
        let (posture, uneven) = posture(dice, if child { 0.5 } else { 1.0 });
        let (skin, hurt) = skin(dice);
        let text = format!(
            "format = 1\nkind = \"client\"\nclient = \"T-1\"\n\
             [measures]\nunits = \"mm\"\nhip_width = {hips}\n\
             thigh_depth = {{ left = {depth}, right = {depth} }}\n\
             [weight]\nkg = {kg}\nweighed_on = 2026-03-01\n{posture}{skin}\
             [cushion]\nlayout = \"{layout}\"\nsize = \"{size}\"\nspare_cells = 60\n"
        );
        let mut client = files::read_client(&text).value.expect("a client");
        let wants = goals(dice, &client);
        client.goals = wants.iter().map(|want| Goal { want: *want, because: None }).collect();
        let even = |want: &Want| match want {
            Want::OffLoad { site, .. } => *site == SiteName::Coccyx,
            Want::LowerFront { sides, .. } => *sides == FrontSides::Both,
            _ => true,
        };
        let symmetric = !uneven && hurt.is_none_or(|site| site == SiteName::Coccyx);
        let symmetric = symmetric && wants.iter().all(even);
        Some(Self { seed, client, layout, size, symmetric })
    }

    /// The client's cushion on meshes of these widths, mm, the roughest half as wide again as the rough
    /// one, as in the program.
    pub(super) fn cushion(&self, fine: f64, rough: f64) -> PreparedCushion {
        let pattern = testkit::pattern(self.layout, &self.size.to_string());
        let [fine, rough, roughest] = [fine, rough, 1.5 * rough].map(Length::from_mm);
        let spacings = Spacings { fine, coarse: fine, rough, roughest };
        PreparedCushion::new(&pattern, &testkit::cell(), spacings).expect("a cushion")
    }
}

/// Weight, kg, hip width and thigh depth, mm.
fn adult_body(dice: &mut Dice) -> (f64, f64, f64) {
    let bodies = files::read_bodies(TABLE).expect("the table of the repository");
    let body = &bodies[(dice.roll() % bodies.len() as u64) as usize];
    let whole = |value: f64| value.round();
    (whole(body.weight.to_kg()), whole(body.hip_width.to_mm()), whole(body.thigh_depth.to_mm()))
}

fn child_body(dice: &mut Dice) -> (f64, f64, f64) {
    let kg = dice.between(17.0, 38.0).round();
    (kg, (180.0 + 3.2 * kg).round(), (250.0 + 4.2 * kg).round())
}

/// A posture, and whether it is another left than right.
fn posture(dice: &mut Dice, scale: f64) -> (String, bool) {
    let is = match dice.roll() % 9 {
        0 => "\"fixed\"",
        1 | 2 => "\"flexible\"",
        3 => "\"partly\", reducible = 4",
        _ => return (String::new(), false),
    };
    let by = (scale * dice.between(8.0, 18.0)).round().max(5.0);
    let lower = dice.one_of(&["left", "right"]);
    let of = format!("{{ lower = \"{lower}\", by = {by}, at = \"seat bones\", is = {is} }}");
    (format!("[posture]\nobliquity = {of}\n"), true)
}

/// Skin, and where it is injured.
fn skin(dice: &mut Dice) -> (String, Option<SiteName>) {
    if !dice.chance(0.35) {
        return (String::new(), None);
    }
    let site = SiteName::ALL[(dice.roll() % 5) as usize];
    let text = format!(
        "[[skin.injury]]\nsite = \"{}\"\ncategory = \"2\"\nis = \"healing\"\nseen_on = 2026-02-10\n",
        site.id()
    );
    (text, Some(site))
}

/// One to three goals.
fn goals(dice: &mut Dice, client: &Client) -> Vec<Want> {
    let mm =
        |low: f64, high: f64, dice: &mut Dice| Length::from_mm(dice.between(low, high).round());
    let turn = client.posture.obliquity.map(|obliquity| match obliquity.flexibility {
        case::Flexibility::Fixed => Want::AccommodateObliquity,
        _ => Want::CorrectObliquity,
    });
    let side = dice.one_of(&[Side::Left, Side::Right]);
    let hurt = client.skin.unhealed().first().copied();
    let site = hurt.unwrap_or(SiteName::SeatBone(side));
    let sides = dice.one_of(&[FrontSides::Both, FrontSides::One(side)]);
    let all = [
        Want::OffLoad { site, share: (dice.between(8.0, 20.0)).round() / 100.0 },
        Want::Shelf { height: mm(6.0, 14.0, dice) },
        Want::LowerFront { sides, by: mm(6.0, 12.0, dice) },
        Want::MedialSupport { height: mm(5.0, 10.0, dice) },
        Want::LateralSupport { height: mm(5.0, 12.0, dice) },
        Want::EqualFirmness,
        Want::NearStock,
    ];
    let mut wants: Vec<Want> = hurt.map(|_| all[0]).into_iter().chain(turn).collect();
    let count = 1 + (dice.roll() % 3) as usize;
    while wants.len() < count {
        let next = all[(dice.roll() % all.len() as u64) as usize];
        if !wants.contains(&next) {
            wants.push(next);
        }
    }
    wants.truncate(3);
    wants
}
