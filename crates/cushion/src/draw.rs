//! Draws a layout's seams at one size: points to nodes, seams to stretches between nodes.

use std::collections::{BTreeMap, BTreeSet};

use kurbo::{CubicBez, Point, Vec2};

use crate::curve::{Chain, Piece};
use crate::pattern::NodeIx;
use crate::round::{self, Rounding};
use crate::{Fault, FaultKind, Layout, Name, PointRule, SeamRule, SeamShape, Size, Subject};

/// Points closer than this are one place: a tenth of what a seam can be sewn to, in mm.
pub(crate) const SAME_PLACE: f64 = 0.1;
/// An x within this of zero lies on the centre line, in mm.
const ON_CENTRE: f64 = 1e-6;

/// A stretch of seam between two nodes, before the faces are known.
#[derive(Clone, Debug)]
pub(crate) struct Stretch {
    /// Place of the seam in the layout's list.
    pub(crate) seam: usize,
    pub(crate) from: NodeIx,
    pub(crate) to: NodeIx,
    pub(crate) chain: Chain,
}

/// All seams, cut at all nodes.
#[derive(Debug)]
pub(crate) struct Drawing {
    pub(crate) nodes: Vec<Point>,
    /// For each node, the place of its point in the layout's list.
    pub(crate) points: Vec<usize>,
    pub(crate) stretches: Vec<Stretch>,
}

/// Draws all seams of the layout.
///
/// Points and seams depend on each other: a seam needs its points, a point on a seam needs the
/// seam. Whatever is ready is drawn, round after round, until nothing is left or nothing is ready.
pub(crate) fn draw(layout: &Layout, size: Size) -> Result<Drawing, Vec<Fault>> {
    let mut draft = Draft::new(layout, size)?;
    while draft.advance() {}
    draft.finish()
}

/// A seam drawn through its points: where each point of `through` comes along it.
struct DrawnSeam {
    chain: Chain,
    /// Length along the chain at each point of `through`; for a closed seam, once more at the end.
    stations: Vec<f64>,
    /// Points set on it from outside: place in the list of points, and length along the chain.
    guests: Vec<(usize, f64)>,
}

struct Draft<'a> {
    layout: &'a Layout,
    size: Size,
    /// Place of each point in the layout's list.
    by_name: BTreeMap<&'a Name, usize>,
    /// For a rounded point, the seam that is rounded there.
    rounded_by: BTreeMap<usize, usize>,
    places: Vec<Option<Point>>,
    seams: Vec<Option<DrawnSeam>>,
    faults: Vec<Fault>,
    failed_seams: Vec<bool>,
    failed_points: Vec<bool>,
}

impl<'a> Draft<'a> {
    fn new(layout: &'a Layout, size: Size) -> Result<Self, Vec<Fault>> {
        let by_name: BTreeMap<_, _> =
            layout.points.iter().enumerate().map(|(place, (name, _))| (name, place)).collect();
        let faults = unknown_names(layout, &by_name);
        if !faults.is_empty() {
            return Err(faults);
        }
        let mut draft = Self {
            layout,
            size,
            rounded_by: rounded_by(layout, &by_name),
            by_name,
            places: vec![None; layout.points.len()],
            seams: layout.seams.iter().map(|_| None).collect(),
            faults,
            failed_seams: vec![false; layout.seams.len()],
            failed_points: vec![false; layout.points.len()],
        };
        for (place, (name, rule)) in layout.points.iter().enumerate() {
            if let PointRule::Spot { spot, .. } = rule {
                let at = spot.at(size);
                if layout.mirror && at.x < -ON_CENTRE {
                    draft.fault(Subject::Point(name.clone()), FaultKind::WrongHalf);
                }
                if !draft.rounded_by.contains_key(&place) {
                    draft.places[place] = Some(at);
                }
            }
        }
        Ok(draft)
    }

    fn fault(&mut self, subject: Subject, kind: FaultKind) {
        self.faults.push(Fault { subject, sizes: vec![self.size], kind });
    }

    /// Draws whatever is ready; returns whether that was anything.
    fn advance(&mut self) -> bool {
        let mut moved = false;
        for seam in 0..self.layout.seams.len() {
            if self.seams[seam].is_none() && !self.failed_seams[seam] && self.is_ready(seam) {
                moved = true;
                match self.draw_seam(seam) {
                    Ok(drawn) => {
                        self.settle_rounded(seam, &drawn);
                        self.seams[seam] = Some(drawn);
                    }
                    Err((subject, kind)) => {
                        self.failed_seams[seam] = true;
                        self.fault(subject, kind);
                    }
                }
            }
        }
        for point in 0..self.layout.points.len() {
            moved |= self.settle_guest(point);
        }
        moved
    }

    /// Whether every point that the seam runs through has a place.
    fn is_ready(&self, seam: usize) -> bool {
        self.layout.seams[seam].through.iter().all(|name| {
            let point = self.by_name[name];
            self.places[point].is_some() || self.rounded_by.get(&point) == Some(&seam)
        })
    }

    /// The spot of a point, unrounded where this seam is the one that rounds it.
    fn station_point(&self, seam: usize, name: &Name) -> (Point, Option<f64>) {
        let point = self.by_name[name];
        match &self.layout.points[point].1 {
            PointRule::Spot { spot, round: Some(radius) }
                if self.rounded_by.get(&point) == Some(&seam) =>
            {
                (spot.at(self.size), Some(radius.to_mm()))
            }
            _ => (self.places[point].expect("a seam is drawn when its points are placed"), None),
        }
    }

    fn draw_seam(&self, seam: usize) -> Result<DrawnSeam, (Subject, FaultKind)> {
        let rule = &self.layout.seams[seam];
        let mut stops: Vec<_> =
            rule.through.iter().map(|name| self.station_point(seam, name)).collect();
        if rule.closed {
            stops.push(stops[0]);
        }
        self.no_two_at_one_place(rule, &stops)?;
        let spans = match rule.shape {
            SeamShape::Straight => round::rounded(&Rounding { stops: &stops, closed: rule.closed })
                .map_err(|stop| {
                    let name = rule.through[stop % rule.through.len()].clone();
                    (Subject::Point(name), FaultKind::NoRoomToRound)
                })?,
            SeamShape::Bow(_) | SeamShape::Curve if stops.iter().any(|(_, r)| r.is_some()) => {
                let stop = stops.iter().position(|(_, r)| r.is_some()).unwrap_or(0);
                let name = rule.through[stop % rule.through.len()].clone();
                return Err((Subject::Point(name), FaultKind::NoRoomToRound));
            }
            SeamShape::Bow(height) => bowed(&stops, |chord| height.of(chord))
                .ok_or_else(|| (Subject::Seam(rule.name.clone()), FaultKind::TooMuchBow))?,
            SeamShape::Curve => self.smooth(rule, &stops),
        };
        let mut stations = vec![0.0];
        for span in &spans {
            stations.push(stations[stations.len() - 1] + span.length());
        }
        let chain = spans.into_iter().reduce(Chain::joined).expect("a seam has two points");
        Ok(DrawnSeam { chain, stations, guests: Vec::new() })
    }

    fn no_two_at_one_place(
        &self,
        rule: &SeamRule,
        stops: &[(Point, Option<f64>)],
    ) -> Result<(), (Subject, FaultKind)> {
        for (place, pair) in stops.windows(2).enumerate() {
            if pair[0].0.distance(pair[1].0) < SAME_PLACE {
                let name = |stop: usize| rule.through[stop % rule.through.len()].clone();
                return Err((Subject::Point(name(place + 1)), FaultKind::SamePlace(name(place))));
            }
        }
        Ok(())
    }

    /// One smooth curve through the points; across the centre line of a mirrored layout it goes
    /// on into its own image.
    fn smooth(&self, rule: &SeamRule, stops: &[(Point, Option<f64>)]) -> Vec<Chain> {
        let points: Vec<Point> = stops.iter().map(|(point, _)| *point).collect();
        let last = points.len() - 1;
        let image = |at: usize, beside: usize| {
            (self.layout.mirror && points[at].x.abs() < ON_CENTRE)
                .then(|| Point::new(-points[beside].x, points[beside].y))
        };
        let (before, after) = if rule.closed {
            (Some(points[last - 1]), Some(points[1]))
        } else {
            (image(0, 1), image(last, last - 1))
        };
        smooth_spans(before, &points, after)
    }

    /// Gives a rounded point its place in the middle of its rounding.
    fn settle_rounded(&mut self, seam: usize, drawn: &DrawnSeam) {
        for (stop, name) in self.layout.seams[seam].through.iter().enumerate() {
            let point = self.by_name[name];
            if self.rounded_by.get(&point) == Some(&seam) {
                self.places[point] = Some(drawn.chain.point_at(drawn.stations[stop]));
            }
        }
    }

    /// Places a point that lies on a seam, when the seam is drawn; returns whether it did.
    fn settle_guest(&mut self, point: usize) -> bool {
        let (name, PointRule::On { seam, from, to, at }) = &self.layout.points[point] else {
            return false;
        };
        if self.places[point].is_some() || self.failed_points[point] {
            return false;
        }
        let host = self.layout.seams.iter().position(|rule| rule.name == *seam);
        let host = host.expect("unknown names are refused first");
        let rule = &self.layout.seams[host];
        let Some(drawn) = &mut self.seams[host] else { return false };
        let station = |wanted: &Name, after: usize| {
            let found = (after..rule.through.len()).find(|&stop| rule.through[stop] == *wanted);
            let back = (rule.closed && rule.through[0] == *wanted).then_some(rule.through.len());
            found
                .or(back)
                .ok_or_else(|| FaultKind::NotOnSeam { seam: seam.clone(), point: wanted.clone() })
        };
        let found = station(from, 0).and_then(|first| {
            let last = station(to, first + 1)?;
            let (start, end) = (drawn.stations[first], drawn.stations[last]);
            let length = start + at.of(end - start);
            if start + SAME_PLACE < length && length < end - SAME_PLACE {
                Ok(length)
            } else {
                Err(FaultKind::BeyondSeam)
            }
        });
        match found {
            Ok(length) => {
                drawn.guests.push((point, length));
                self.places[point] = Some(drawn.chain.point_at(length));
            }
            Err(kind) => {
                self.failed_points[point] = true;
                self.fault(Subject::Point(name.clone()), kind);
            }
        }
        true
    }

    fn finish(mut self) -> Result<Drawing, Vec<Fault>> {
        if self.faults.is_empty() {
            let stuck = (0..self.layout.points.len()).find(|&point| self.places[point].is_none());
            if let Some(point) = stuck {
                let subject = Subject::Point(self.layout.points[point].0.clone());
                self.fault(subject, FaultKind::Circular);
            }
        }
        if !self.faults.is_empty() {
            return Err(self.faults);
        }
        let cut = Cut::new(self.layout, self.size, &self.places)?;
        Ok(cut.all(&self.seams, &self.by_name))
    }
}

/// Cuts drawn seams at the nodes, and makes the other half of a mirrored layout.
struct Cut<'a> {
    layout: &'a Layout,
    nodes: Vec<Point>,
    points: Vec<usize>,
    /// For each point, its node as written and its node on the other half.
    node_of: Vec<(NodeIx, NodeIx)>,
}

impl<'a> Cut<'a> {
    fn new(layout: &'a Layout, size: Size, places: &[Option<Point>]) -> Result<Self, Vec<Fault>> {
        let mut cut = Self { layout, nodes: Vec::new(), points: Vec::new(), node_of: Vec::new() };
        for (point, place) in places.iter().enumerate() {
            let at = place.expect("all points are placed");
            let written = cut.add(point, at);
            let made = if layout.mirror && at.x.abs() >= ON_CENTRE {
                cut.add(point, Point::new(-at.x, at.y))
            } else {
                written
            };
            cut.node_of.push((written, made));
        }
        let faults = cut.shared_places(size);
        if faults.is_empty() { Ok(cut) } else { Err(faults) }
    }

    fn add(&mut self, point: usize, at: Point) -> NodeIx {
        self.nodes.push(at);
        self.points.push(point);
        NodeIx(self.nodes.len() as u32 - 1)
    }

    fn shared_places(&self, size: Size) -> Vec<Fault> {
        let mut faults = Vec::new();
        for (place, (node, _)) in self.node_of.iter().enumerate() {
            let at = self.nodes[node.index()];
            let twin = self.node_of[..place]
                .iter()
                .position(|(other, _)| self.nodes[other.index()].distance(at) < SAME_PLACE);
            if let Some(twin) = twin {
                faults.push(Fault {
                    subject: Subject::Point(self.layout.points[place].0.clone()),
                    sizes: vec![size],
                    kind: FaultKind::SamePlace(self.layout.points[twin].0.clone()),
                });
            }
        }
        faults
    }

    fn all(self, seams: &[Option<DrawnSeam>], by_name: &BTreeMap<&Name, usize>) -> Drawing {
        let mut stretches = Vec::new();
        for (seam, drawn) in seams.iter().enumerate() {
            let drawn = drawn.as_ref().expect("all seams are drawn");
            for stretch in self.stretches(seam, drawn, by_name) {
                let image = self.image(&stretch);
                stretches.push(stretch);
                stretches.extend(image);
            }
        }
        Drawing { nodes: self.nodes, points: self.points, stretches }
    }

    fn stretches(
        &self,
        seam: usize,
        drawn: &DrawnSeam,
        by_name: &BTreeMap<&Name, usize>,
    ) -> Vec<Stretch> {
        let rule = &self.layout.seams[seam];
        let names = rule.through.iter().chain(rule.closed.then_some(&rule.through[0]));
        let own = names.map(|name| by_name[name]).zip(drawn.stations.iter().copied());
        let mut stops: Vec<(usize, f64)> = own.chain(drawn.guests.iter().copied()).collect();
        stops.sort_by(|a, b| a.1.total_cmp(&b.1));
        let mut rest = drawn.chain.clone();
        let mut done = 0.0;
        let mut stretches = Vec::new();
        for (place, pair) in stops.windows(2).enumerate() {
            let chain = if place + 2 == stops.len() {
                rest.clone()
            } else {
                let (before, after) = rest.split_at(pair[1].1 - done);
                rest = after;
                before
            };
            done = pair[1].1;
            let (from, to) = (self.node_of[pair[0].0].0, self.node_of[pair[1].0].0);
            stretches.push(Stretch { seam, from, to, chain });
        }
        stretches
    }

    /// The image of a stretch on the other half; none for one that lies along the centre line.
    fn image(&self, stretch: &Stretch) -> Option<Stretch> {
        let along_centre = stretch.chain.pieces().iter().all(
            |piece| matches!(piece, Piece::Line(a, b) if a.x.abs() < ON_CENTRE && b.x.abs() < ON_CENTRE),
        );
        let made = |node: NodeIx| {
            let point = self.node_of.iter().find(|(written, _)| *written == node);
            point.expect("a stretch ends at points").1
        };
        (self.layout.mirror && !along_centre).then(|| Stretch {
            seam: stretch.seam,
            from: made(stretch.from),
            to: made(stretch.to),
            chain: stretch.chain.mirrored(),
        })
    }
}

/// Faults for names that nothing has, and for seams through too few points.
fn unknown_names(layout: &Layout, by_name: &BTreeMap<&Name, usize>) -> Vec<Fault> {
    let mut faults = Vec::new();
    let mut fault = |subject, kind| faults.push(Fault { subject, sizes: Vec::new(), kind });
    for (name, rule) in &layout.points {
        let PointRule::On { seam, from, to, .. } = rule else { continue };
        if !layout.seams.iter().any(|rule| rule.name == *seam) {
            fault(Subject::Point(name.clone()), FaultKind::UnknownSeam(seam.clone()));
        }
        for point in [from, to] {
            if !by_name.contains_key(point) {
                fault(Subject::Point(name.clone()), FaultKind::UnknownPoint(point.clone()));
            }
        }
    }
    for seam in &layout.seams {
        for point in &seam.through {
            if !by_name.contains_key(point) {
                fault(Subject::Seam(seam.name.clone()), FaultKind::UnknownPoint(point.clone()));
            }
        }
        fault_of_repeats(seam, &mut fault);
        // A closed seam needs a middle point to have an inside, unless its spans bow out.
        let least = if seam.closed && seam.shape == SeamShape::Straight { 3 } else { 2 };
        if seam.through.len() < least {
            fault(Subject::Seam(seam.name.clone()), FaultKind::TooFewPoints { least });
        }
    }
    faults
}

/// A seam that runs through a point twice, other than to end where it began.
fn fault_of_repeats(seam: &SeamRule, fault: &mut impl FnMut(Subject, FaultKind)) {
    let mut seen = BTreeSet::new();
    let returns = seam.through.len() > 1 && seam.through.first() == seam.through.last();
    let through = &seam.through[usize::from(returns)..];
    if let Some(twice) = through.iter().find(|name| !seen.insert(*name)) {
        fault(Subject::Seam(seam.name.clone()), FaultKind::TwiceThrough(twice.clone()));
    }
}

/// For each rounded point, the first seam that passes through it rather than ending there.
fn rounded_by(layout: &Layout, by_name: &BTreeMap<&Name, usize>) -> BTreeMap<usize, usize> {
    let mut rounded = BTreeMap::new();
    for (place, seam) in layout.seams.iter().enumerate() {
        let last = seam.through.len().saturating_sub(1);
        for (stop, name) in seam.through.iter().enumerate() {
            let point = by_name[name];
            let is_rounded =
                matches!(layout.points[point].1, PointRule::Spot { round: Some(_), .. });
            if is_rounded && (seam.closed || (0 < stop && stop < last)) {
                rounded.entry(point).or_insert(place);
            }
        }
    }
    rounded
}

/// True arcs from stop to stop; none where one bows out farther than half a circle.
fn bowed(stops: &[(Point, Option<f64>)], height: impl Fn(f64) -> f64) -> Option<Vec<Chain>> {
    stops
        .windows(2)
        .map(|pair| {
            let (from, to) = (pair[0].0, pair[1].0);
            let chord = from.distance(to);
            let height = height(chord);
            (height.abs() <= chord / 2.0).then(|| Chain::new(vec![Piece::bow(from, to, height)]))
        })
        .collect()
}

/// Cubics through the points, each tangent that of the parabola through a point and its two
/// neighbours, with the straight lengths as parameter; `before` and `after` are the neighbours
/// beyond the ends, where there are any.
fn smooth_spans(before: Option<Point>, points: &[Point], after: Option<Point>) -> Vec<Chain> {
    let tangent = |at: usize| -> Vec2 {
        let here = points[at];
        let back = if at == 0 { before } else { Some(points[at - 1]) };
        let ahead = if at + 1 == points.len() { after } else { Some(points[at + 1]) };
        match (back, ahead) {
            (Some(back), Some(ahead)) => {
                let (a, b) = (here.distance(back), ahead.distance(here));
                ((here - back) * (b / a) + (ahead - here) * (a / b)) / (a + b)
            }
            // At a free end the parabola through the last three points ends without a bend of
            // its own: the tangent mirrors the next one in the chord.
            (None, Some(ahead)) => free_end(here, ahead, points.get(at + 2).copied()),
            (Some(back), None) => -free_end(here, back, at.checked_sub(2).map(|next| points[next])),
            (None, None) => Vec2::ZERO,
        }
    };
    (0..points.len() - 1)
        .map(|at| {
            let (from, to) = (points[at], points[at + 1]);
            let third = from.distance(to) / 3.0;
            let cubic =
                CubicBez::new(from, from + tangent(at) * third, to - tangent(at + 1) * third, to);
            Chain::new(vec![Piece::Cubic(cubic)])
        })
        .collect()
}

/// The tangent at a free end, by length: of the parabola through it and the next two points.
fn free_end(here: Point, next: Point, second: Option<Point>) -> Vec2 {
    let a = here.distance(next);
    let chord = (next - here) / a;
    match second {
        None => chord,
        Some(second) => {
            let b = next.distance(second);
            let middle = ((next - here) * (b / a) + (second - next) * (a / b)) / (a + b);
            chord * 2.0 - middle
        }
    }
}
