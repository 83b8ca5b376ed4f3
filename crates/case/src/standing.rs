//! How a fitting stands on a day, from what the record says: one answer for all papers and
//! commands.

use crate::stocktaking::{Cells, Stocktaking};
use crate::{Check, CheckOutcome, Client, Date, Entry, SiteName, StaleFilling, withdrawn};

/// How a fitting stands on a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Standing<'a> {
    /// What may be said of the counts.
    pub state: State<'a>,
    /// When the client is looked at again.
    pub review: Review,
}

/// What may be said of the counts in a cushion.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum State<'a> {
    /// Too little is known of the client to plan.
    ToMeasure,
    /// Nothing was planned and nothing put in.
    ToPlan,
    /// Nobody has recorded that the counts fit: no check, or none that was finished.
    Estimate,
    /// Counts that are expected to break a limit were put in on that day, and no check found them right.
    NotSafe(Date),
    /// A check of these counts passed, and nothing since speaks against it.
    Fitted(Looked<'a>),
    /// A check of these counts found something wrong.
    Failed(Looked<'a>),
    /// A check passed, and no longer holds.
    Lapsed(Looked<'a>, Lapse),
}

/// When and by whom a check was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Looked<'a> {
    /// The day.
    pub on: Date,
    /// Who.
    pub by: &'a str,
}

/// Why a check that passed no longer holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lapse {
    /// The file names another cushion than the one that was checked.
    OtherCushion,
    /// A fill was begun on that day, and is not recorded yet.
    Filling(Date),
    /// Other counts were put into the cushion on that day.
    Counts(Date),
    /// The recount of that day is off by more than handling explains.
    Recount(Date),
    /// A mark was seen on the skin on that day.
    Skin(Date, SiteName),
    /// At the weight of that day a limit is broken.
    Weight(Date),
}

/// Whether the client is to be looked at again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Review {
    /// No day is set.
    None,
    /// By that day.
    Due(Date),
    /// That day has passed.
    Overdue(Date),
}

impl Review {
    /// Returns how a day for the next look stands on another day.
    #[must_use]
    pub fn of(by: Option<Date>, on: Date) -> Self {
        match by {
            None => Self::None,
            Some(by) if by < on => Self::Overdue(by),
            Some(by) => Self::Due(by),
        }
    }

    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::None => "none",
            Self::Due(_) => "due",
            Self::Overdue(_) => "overdue",
        }
    }

    /// The day.
    #[must_use]
    pub fn by(self) -> Option<Date> {
        match self {
            Self::None => None,
            Self::Due(by) | Self::Overdue(by) => Some(by),
        }
    }
}

impl State<'_> {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::ToMeasure => "to-measure",
            Self::ToPlan => "to-plan",
            Self::Estimate => "estimate",
            Self::NotSafe(_) => "not-safe",
            Self::Fitted(_) => "fitted",
            Self::Failed(_) => "failed",
            Self::Lapsed(..) => "lapsed",
        }
    }
}

impl Lapse {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::OtherCushion => "other-cushion",
            Self::Filling(_) => "filling",
            Self::Counts(_) => "counts",
            Self::Recount(_) => "recount",
            Self::Skin(..) => "skin",
            Self::Weight(_) => "weight",
        }
    }
}

impl<'a> Standing<'a> {
    /// An estimate of which nobody said when to look again.
    pub const ESTIMATE: Self = Self { state: State::Estimate, review: Review::None };

    /// The check, while it holds and the client was looked at in time.
    #[must_use]
    pub fn fitted(self) -> Option<Looked<'a>> {
        match (self.state, self.review) {
            (State::Fitted(looked), Review::None | Review::Due(_)) => Some(looked),
            _ => None,
        }
    }
}

/// What a record cannot say by itself.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Beside {
    /// Whether the newest weight breaks a limit which the weight at the check did not: whoever can
    /// predict knows, see [`Client::weight_since_check`].
    pub weight_breaks_limit: bool,
    /// Whether what was last put into the cushion is expected to break a limit: whoever can predict
    /// knows.
    pub counts_break_limit: bool,
    /// Whether the file names another cushion than the record is about, by more than layout and
    /// size, which are compared here.
    pub other_cushion: bool,
    /// When the record asks for another look, beside the day that the file sets.
    pub look_again: Option<Date>,
}

/// Returns how the fitting stands on a day.
#[must_use]
pub fn state(client: &Client, on: Date, beside: Beside) -> Standing<'_> {
    let by = client.next_review.into_iter().chain(beside.look_again).min();
    let state = match (client.state(beside), client.cushion_now().and_then(|now| now.from.on())) {
        // Hands that found a limit broken, or these counts right, know better.
        (
            State::Estimate | State::Lapsed(_, Lapse::Counts(_) | Lapse::Recount(_)),
            Some(put_in),
        ) if beside.counts_break_limit => State::NotSafe(put_in),
        (state, _) => state,
    };
    Standing { state, review: Review::of(by, on) }
}

impl Client {
    fn state(&self, beside: Beside) -> State<'_> {
        let course = Course::of(self);
        let Some(now) = &course.cells.now else { return self.before_any_plan() };
        let check = match &course.check {
            None => return State::Estimate,
            Some(check) if course.is_undone => {
                return match check.outcome {
                    CheckOutcome::Passed => course.skin.map_or(State::Estimate, |seen| {
                        State::Lapsed(check.looked, Lapse::Skin(seen.0, seen.1))
                    }),
                    CheckOutcome::Failed | CheckOutcome::NotFinished => State::Estimate,
                };
            }
            Some(check) => check,
        };
        let changed = check.counts != now.meant;
        match check.outcome {
            CheckOutcome::NotFinished => return State::Estimate,
            CheckOutcome::Failed if changed => return State::Estimate,
            CheckOutcome::Failed => return State::Failed(check.looked),
            CheckOutcome::Passed => {}
        }
        let chosen = (self.cushion.layout.to_string(), self.cushion.size.to_string());
        let other = now
            .cushion
            .as_ref()
            .is_some_and(|own| (&own.0, own.1.to_string()) != (&chosen.0, chosen.1.clone()));
        let counted = now.from.on().filter(|_| !now.is_as_meant()).map(Lapse::Recount);
        let put_in = course.cells.meant_on.filter(|_| changed).map(Lapse::Counts);
        let weighed = self.latest_weighing().filter(|_| beside.weight_breaks_limit);
        let lapse = (other || beside.other_cushion).then_some(Lapse::OtherCushion);
        let lapse = lapse.or(put_in).or(counted);
        let lapse = lapse.or(course.skin.map(|(on, site)| Lapse::Skin(on, site)));
        let lapse = lapse.or(weighed.map(|own| Lapse::Weight(own.on)));
        let lapse = lapse.or(self.half_filled().map(Lapse::Filling));
        lapse.map_or(State::Fitted(check.looked), |lapse| State::Lapsed(check.looked, lapse))
    }

    /// Since when the cushion is being filled, where nothing was recorded of it since.
    fn half_filled(&self) -> Option<Date> {
        let begun = self.filling_so_far()?;
        (begun.stale != Some(StaleFilling::Since)).then_some(begun.on)
    }

    /// The state before anything is known to be in the cushion.
    fn before_any_plan(&self) -> State<'_> {
        let measured = self.measures.hip_width.is_some() && self.latest_weighing().is_some();
        if measured { State::ToPlan } else { State::ToMeasure }
    }

    /// Returns the check that passed and that nothing undid: no other counts were put in or planned
    /// since, and no later check found it otherwise. Recounts, weights and marks on the skin leave
    /// it here; whether it still holds says [`state`].
    #[must_use]
    pub fn passed_check(&self) -> Option<Looked<'_>> {
        let course = Course::of(self);
        let check = course.check.filter(|_| !course.is_undone)?;
        let same = course.cells.now.is_some_and(|now| now.meant == check.counts);
        (same && check.outcome == CheckOutcome::Passed).then_some(check.looked)
    }

    /// Returns the newest weight where it was found after the check that passed and is another
    /// than at the check, or none was known then.
    #[must_use]
    pub fn weight_since_check(&self) -> Option<crate::Weighing> {
        let check = Course::of(self).check.filter(|own| own.outcome == CheckOutcome::Passed)?;
        let now = self.latest_weighing()?;
        let kept = self.record.iter().zip(withdrawn(&self.record)).take(check.at);
        let recorded = kept.filter_map(|(entry, withdrawn)| match entry {
            Entry::Weighed(own) if !withdrawn => Some((own.on, own.weight)),
            _ => None,
        });
        let told = self.weighing.iter().map(|own| (own.on, own.weight));
        let before = told.filter(|own| own.0 <= check.looked.on).chain(recorded);
        let then = before.reduce(|newest, next| if next.0 >= newest.0 { next } else { newest });
        (then.map(|own| own.1) != Some(now.weight)).then_some(now)
    }
}

/// A check, and the counts that it is about.
struct Decided<'a> {
    looked: Looked<'a>,
    outcome: CheckOutcome,
    counts: Cells,
    /// Its place in the record, from 0.
    at: usize,
}

/// The record, followed to its end.
struct Course<'a> {
    cells: Stocktaking<'a>,
    check: Option<Decided<'a>>,
    /// Whether something after the check asks for another, whatever the counts are.
    is_undone: bool,
    /// The first mark on the skin after the check.
    skin: Option<(Date, SiteName)>,
}

impl<'a> Course<'a> {
    fn of(client: &'a Client) -> Self {
        let cells = Stocktaking::new(client.cushion.spare_cells);
        let mut course = Self { cells, check: None, is_undone: false, skin: None };
        let withdrawn = withdrawn(&client.record);
        for (at, entry) in client.record.iter().enumerate().filter(|(at, _)| !withdrawn[*at]) {
            course.cells.follow(entry);
            course.judge(at, entry);
        }
        course
    }

    fn judge(&mut self, at: usize, entry: &'a Entry) {
        match entry {
            Entry::FittingCheck(_) | Entry::Checked(_) => {
                if let Some(outcome) = self.cells.outcome(entry) {
                    self.decided(at, Looked { on: entry.on(), by: entry.by() }, outcome);
                }
            }
            Entry::Adjustment(own) => {
                if self.ends_sitting(&own.checks) {
                    let looked = Looked { on: own.on, by: &own.by };
                    self.decided(at, looked, CheckOutcome::Failed);
                } else {
                    self.is_undone |=
                        !own.moves.is_empty() || own.checks.iter().any(Check::speaks_against);
                }
                own.checks.iter().for_each(|check| self.skin_of(own.on, check));
            }
            Entry::Skin(own) => {
                let check = Check::Skin { site: own.site, answer: own.answer };
                if self.ends_sitting(&[check]) {
                    let looked = Looked { on: own.on, by: &own.by };
                    self.decided(at, looked, CheckOutcome::Failed);
                }
                self.skin_of(own.on, &check);
            }
            // What failed on these cells fails on them again.
            Entry::Returned(_) => {
                let failed = |own: &Decided<'_>| own.outcome == CheckOutcome::Failed;
                self.is_undone |= !self.check.as_ref().is_some_and(failed);
            }
            // Taken to have been carried out.
            Entry::Plan(_) => self.is_undone |= !self.cells.proposes(),
            _ => {}
        }
    }

    /// Whether nobody may sit on after these checks. A mark on the skin after a check that passed does not
    /// say that the check was wrong: it holds no longer.
    fn ends_sitting(&self, checks: &[Check]) -> bool {
        let passed = self.check.as_ref().is_some_and(|own| own.outcome == CheckOutcome::Passed);
        let is_mark = |check: &Check| matches!(check, Check::Skin { .. });
        checks.iter().any(|check| check.ends_sitting() && !(passed && is_mark(check)))
    }

    fn decided(&mut self, at: usize, looked: Looked<'a>, outcome: CheckOutcome) {
        let counts = self.cells.now.as_ref().map(|now| now.meant.clone()).unwrap_or_default();
        self.check = Some(Decided { looked, outcome, counts, at });
        (self.is_undone, self.skin) = (false, None);
    }

    fn skin_of(&mut self, on: Date, check: &Check) {
        if let (Check::Skin { site, answer }, None) = (check, self.skin)
            && answer.is_alarm()
        {
            self.skin = Some((on, *site));
        }
    }
}
