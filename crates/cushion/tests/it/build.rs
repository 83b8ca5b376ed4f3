//! Layouts in few words, for tests.

use cushion::{
    Class, CompartmentRule, Layout, Length, MadeSize, Mass, Measure, Name, Numbers, Pattern,
    PointRule, Purpose, Rim, SeamRule, SeamShape, Size, Spot, Words, arrange,
};

pub(crate) fn name(text: &str) -> Name {
    Name::new(text).expect("a test uses good names")
}

pub(crate) fn size(text: &str) -> Size {
    text.parse().expect("a test uses good sizes")
}

pub(crate) fn share(x: f64, y: f64) -> Spot {
    Spot { x: Measure { share: x, mm: 0.0 }, y: Measure { share: y, mm: 0.0 } }
}

/// A layout with an outline through its four corners and nothing in it.
pub(crate) struct Build(pub(crate) Layout);

impl Build {
    /// The whole outline is written.
    pub(crate) fn whole() -> Self {
        let build = Self::empty(false)
            .point("rear-left", -0.5, 0.0)
            .point("rear-right", 0.5, 0.0)
            .point("front-right", 0.5, 1.0)
            .point("front-left", -0.5, 1.0);
        build.closed("outline", &["rear-left", "rear-right", "front-right", "front-left"])
    }

    /// The right half is written.
    pub(crate) fn mirrored() -> Self {
        Self::empty(true)
            .point("rear", 0.0, 0.0)
            .point("rear-corner", 0.5, 0.0)
            .point("front-corner", 0.5, 1.0)
            .point("front", 0.0, 1.0)
            .seam("outline", &["rear", "rear-corner", "front-corner", "front"])
    }

    fn empty(mirror: bool) -> Self {
        Self(Layout {
            name: name("test"),
            revision: None,
            title: "Test".into(),
            about: "For tests.".into(),
            rating_from: "nothing".into(),
            class: Class::SkinProtection,
            mirror,
            sizes: vec![MadeSize { size: size("400x400"), max_user_weight: Mass::from_kg(100.0) }],
            wall_height: Length::from_mm(60.0),
            rim: Rim::Soft,
            stock_crown: Measure { share: 0.0, mm: 10.0 },
            points: Vec::new(),
            seams: Vec::new(),
            compartments: Vec::new(),
        })
    }

    pub(crate) fn point(mut self, called: &str, x: f64, y: f64) -> Self {
        let rule = PointRule::Spot { spot: share(x, y), round: None };
        self.0.points.push((name(called), rule));
        self
    }

    pub(crate) fn on(mut self, called: &str, seam: &str, from: &str, to: &str, at: f64) -> Self {
        let at = Measure { share: at, mm: 0.0 };
        let (seam, from, to) = (name(seam), name(from), name(to));
        self.0.points.push((name(called), PointRule::On { seam, from, to, at }));
        self
    }

    pub(crate) fn round(mut self, called: &str, radius: f64) -> Self {
        let point = self.0.points.iter_mut().find(|(point, _)| point.as_str() == called);
        if let Some((_, PointRule::Spot { round, .. })) = point {
            *round = Some(Length::from_mm(radius));
        }
        self
    }

    pub(crate) fn seam(self, called: &str, through: &[&str]) -> Self {
        self.shaped(called, through, SeamShape::Straight, false)
    }

    pub(crate) fn closed(self, called: &str, through: &[&str]) -> Self {
        self.shaped(called, through, SeamShape::Straight, true)
    }

    pub(crate) fn shaped(
        mut self,
        called: &str,
        through: &[&str],
        shape: SeamShape,
        closed: bool,
    ) -> Self {
        let through = through.iter().map(|point| name(point)).collect();
        self.0.seams.push(SeamRule { name: name(called), through, shape, closed });
        self
    }

    pub(crate) fn one(self, id: &str, x: f64, y: f64, number: u8) -> Self {
        self.claim(id, x, y, Numbers::One(number))
    }

    pub(crate) fn pair(self, id: &str, x: f64, y: f64, left: u8, right: u8) -> Self {
        self.claim(id, x, y, Numbers::Pair { left, right })
    }

    fn claim(mut self, id: &str, x: f64, y: f64, numbers: Numbers) -> Self {
        let rule = CompartmentRule {
            id: name(id),
            seed: share(x, y),
            numbers,
            words: Words::english("a place"),
            purpose: Purpose::General,
        };
        self.0.compartments.push(rule);
        self
    }

    /// The pattern at a size, which must be without fault.
    #[track_caller]
    pub(crate) fn at(&self, text: &str) -> Pattern {
        arrange(&self.0, size(text)).expect("the layout is right")
    }
}

/// A smooth seam through its points.
pub(crate) const CURVE: SeamShape = SeamShape::Curve;

/// Arcs that stand off by a share of the straight way.
pub(crate) fn bow(share: f64) -> SeamShape {
    SeamShape::Bow(Measure { share, mm: 0.0 })
}

#[track_caller]
pub(crate) fn assert_near(actual: f64, expected: f64, tolerance: f64) {
    assert!((actual - expected).abs() <= tolerance, "{actual} is not {expected} +- {tolerance}");
}
