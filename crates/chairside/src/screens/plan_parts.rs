//! Parts of the plan's screen: the cushion with its counts, and what they do.

use case::{
    BrokenLimit, CentralSeat, Costs, LEAST_UNDER, Plan, PredictedSeat, Prediction, Sides,
    SiteChange, ToldFrom, Want, lower_at_seat_bones,
};
use casework::{LiveAnswer, LiveNumbers, OpenCase, plan_stands, short_for_injuries};
use cushion::{Length, Side};
use maud::{Markup, PreEscaped, html};
use sheets::View;

use super::Place;
use super::plan::stock;
use crate::errors::said;
use crate::fields::{capital, side_of};
use crate::frame::step_name;
use crate::steps::Step;
use words::Language;

/// When a part asks for what comes later: when that begins to be worked out at the earliest, and again
/// where there was no answer, since too many wait; never while another question of its form is under way.
const LATER: &str = "load delay:100ms, every 600ms";

/// What a part of the screen is made from.
pub(crate) struct Seen<'a> {
    pub(crate) place: &'a Place<'a>,
    pub(crate) case: &'a OpenCase,
    pub(crate) window: &'a str,
}

impl Seen<'_> {
    fn language(&self) -> &'static dyn Language {
        self.place.house.language().with_lengths_in(self.case.client.value.lengths)
    }

    /// Counts as the words of an address: they are the page's, and stand in no file.
    fn query(&self, counts: &[u32]) -> String {
        let numbers = self.case.pattern.compartments().iter().zip(counts);
        let cells = numbers.map(|(own, count)| format!("&cells.{}={count}", own.number));
        format!("window={}{}", self.window, cells.collect::<String>())
    }
}

/// The cushion from above, with a stepper for each compartment.
pub(crate) fn cushion(seen: &Seen<'_>, counts: &[u32]) -> Markup {
    html! { div id="cushion" class="cushion" { (inner(seen, counts)) } }
}

/// The same in place of that of the screen.
pub(crate) fn cushion_again(seen: &Seen<'_>, counts: &[u32]) -> Markup {
    html! { div id="cushion" class="cushion" hx-swap-oob="true" { (inner(seen, counts)) } }
}

fn inner(seen: &Seen<'_>, counts: &[u32]) -> Markup {
    let (language, case) = (seen.language(), seen.case);
    let texts = &language.page().plan;
    let label = |ix: cushion::CompartmentIx| {
        (case.pattern[ix].number.to_string(), Some(counts[ix.index()].to_string()))
    };
    let picture = sheets::pattern_picture(language, &case.pattern, View::Above, label);
    html! {
        @if let Ok(own) = &picture { div class="drawing" { (PreEscaped(sheets::fragment(own))) } }
        (all_cells(seen, counts, false))
        div class="steppers" role="group" aria-label=(texts.counts) {
            @for (at, own) in case.pattern.compartments().iter().enumerate() {
                @let words = language.compartment(own);
                div class=(if own.side == Some(::cushion::Side::Left) { "stepper is-left" } else { "stepper" })
                    role="group" aria-labelledby=(format!("said-{}", own.number)) {
                    span class="disc" { (own.number) }
                    span class="where" { (words) }
                    button class="step" name="fewer" value=(own.number)
                        hx-post=(seen.place.page("touch")) hx-target="#verdict" hx-sync="#counts:replace"
                        id=(format!("fewer-{}", own.number)) {
                        span aria-hidden="true" { "\u{2212}" } span class="vh" { (language.step_said(false, own.number, &words)) }
                    }
                    span class="count" { (counts[at]) }
                    button class="step" name="more" value=(own.number)
                        hx-post=(seen.place.page("touch")) hx-target="#verdict" hx-sync="#counts:replace"
                        id=(format!("more-{}", own.number)) {
                        span aria-hidden="true" { "+" } span class="vh" { (language.step_said(true, own.number, &words)) }
                    }
                    (change(seen, at, counts, false))
                    input type="hidden" name=(format!("cells.{}", own.number)) value=(counts[at]);
                }
            }
        }
        p class="hint" { (texts.drawing_hint) }
    }
}

/// How many cells there are in all; `again` replaces what the screen says.
fn all_cells(seen: &Seen<'_>, counts: &[u32], again: bool) -> Markup {
    let (cells, stock) = (counts.iter().sum(), stock(seen.case).iter().sum());
    let words = seen.language().all_cells_said(cells, stock);
    html! { p id="all-cells" hx-swap-oob=[again.then_some("true")] { (words) } }
}

/// What a compartment's count is from the stock fill, and the compartment with its count in words.
fn change(seen: &Seen<'_>, at: usize, counts: &[u32], again: bool) -> Markup {
    let language = seen.language();
    let own = &seen.case.pattern.compartments()[at];
    let change = i64::from(counts[at]) - i64::from(stock(seen.case)[at]);
    let oob = again.then_some("true");
    html! {
        span class="change" id=(format!("change-{}", own.number)) hx-swap-oob=[oob] {
            @if change != 0 { (language.change_from_stock(change)) }
        }
        span class="vh" id=(format!("said-{}", own.number)) hx-swap-oob=[oob] {
            (language.compartment_said(own.number, &language.compartment(own), counts[at]))
        }
    }
}

/// What a touch changed of the cushion beside the counts, which the page counts itself: the drawing and
/// the steppers are the same, and drawing them anew costs a browser more than all the rest.
pub(crate) fn changed(seen: &Seen<'_>, touched: &[u8], counts: &[u32]) -> Markup {
    let all = seen.case.pattern.compartments().iter().enumerate();
    html! {
        (all_cells(seen, counts, true))
        @for (at, _) in all.filter(|(_, own)| touched.contains(&own.number)) {
            (change(seen, at, counts, true))
        }
    }
}

/// Said while a plan is worked out, which begins at once.
pub(crate) fn making(place: &Place<'_>, is_asked: bool) -> Markup {
    let texts = &place.house.language().page().plan;
    html! {
        div hx-get=(place.page("made")) hx-include="#counts [name=window]" hx-trigger="load"
            hx-target="#verdict" hx-sync="#counts:replace"
            // Whoever asked for it is led to it.
            hx-swap=[is_asked.then_some("innerHTML show:#verdict:top")] {
            p class="soft" { (texts.making) }
            noscript { p { (texts.no_script) } }
        }
    }
}

/// Said while counts are looked at, which begins at once.
pub(crate) fn loading(seen: &Seen<'_>, counts: &[u32]) -> Markup {
    let texts = &seen.language().page().plan;
    let to = format!("{}?{}", seen.place.page("judged"), seen.query(counts));
    html! {
        div hx-get=(to) hx-trigger=(LATER) hx-target="#verdict" hx-sync="#counts:drop" {
            p class="soft" { (texts.looking) }
            noscript { p { a href=(to) { (texts.what_they_do) } } }
        }
    }
}

/// The central numbers, at once; the rest follows.
pub(crate) fn central(seen: &Seen<'_>, answer: &LiveAnswer, counts: &[u32]) -> Markup {
    let texts = &seen.language().page().plan;
    let revision = answer.revision.number();
    let next = format!("{}?{}&revision={revision}", seen.place.page("spread"), seen.query(counts));
    match &answer.numbers {
        LiveNumbers::Central(own) => html! {
            (in_short(seen, own.seated.as_ref().map(|seat| seat.clearance), true))
            div hx-get=(next) hx-trigger=(LATER) hx-target="#verdict" hx-sync="#counts:drop" {
                p class="verdict soft" { (texts.ranges_follow) }
                @match &own.seated {
                    Some(seat) => { (central_table(seen, seat)) }
                    None => { p { b { (capital(seen.language().outcome(own.outcome))) } } }
                }
            }
        },
        _ => with_spread(seen, answer, counts),
    }
}

/// The numbers with their ranges, and the limits; goals and costs follow.
pub(crate) fn with_spread(seen: &Seen<'_>, answer: &LiveAnswer, counts: &[u32]) -> Markup {
    let language = seen.language();
    let texts = &language.page().plan;
    let revision = answer.revision.number();
    let next = format!("{}?{}&revision={revision}", seen.place.page("judged"), seen.query(counts));
    match &answer.numbers {
        LiveNumbers::Spread(own) => html! {
            (spread_in_short(seen, own, casework::broken(own).is_empty()))
            (limits(language, &casework::broken(own)))
            (table(seen, own, None))
            div hx-get=(next) hx-trigger=(LATER) hx-target="#verdict" hx-sync="#counts:drop" {
                p class="soft" { (texts.goals_follow) }
            }
        },
        LiveNumbers::NoNumbers(outcome) => html! {
            (in_short(seen, None, false))
            div class="box heavy" { p { b { (texts.not_safe) } " " (capital(language.outcome(*outcome))) "." } }
        },
        LiveNumbers::NoBody(error) => said(seen.place.house, error),
        LiveNumbers::Central(own) => match &own.seated {
            Some(seat) => central_table(seen, seat),
            None => html! {},
        },
    }
}

/// How much cushion is under both seat bones, where a narrow screen shows the steppers alone; none where
/// the client does not come to rest, which is never safe. It is said aloud elsewhere.
fn in_short(seen: &Seen<'_>, under: Option<Sides<Length>>, is_safe: bool) -> Markup {
    let language = seen.language();
    let shared = language.shared();
    let is_enough = |own: Sides<Length>| own.left >= LEAST_UNDER && own.right >= LEAST_UNDER;
    html! {
        p id="in-short" class="in-short" aria-hidden="true" hx-swap-oob="true" {
            @if let Some(own) = under {
                span { (shared.clients_left_short) " " b { (language.plain_length(own.left)) } }
                span { (shared.clients_right_short) " " b { (language.plain_length(own.right)) } }
            }
            @if !is_safe || !under.is_some_and(is_enough) { b { (language.page().plan.not_safe) } }
        }
    }
}

/// The same of a plan; nothing where nobody can predict, as without a weight.
pub(crate) fn plan_in_short(seen: &Seen<'_>, plan: &Plan) -> Markup {
    match &plan.prediction {
        Some(own) => spread_in_short(seen, own, plan.not_safe.is_empty()),
        None => html! { p id="in-short" class="in-short" aria-hidden="true" hx-swap-oob="true" {} },
    }
}

fn spread_in_short(seen: &Seen<'_>, own: &Prediction, is_safe: bool) -> Markup {
    let under = own.seated.as_ref().map(|seat| {
        let central = |side| seat.clearance[side].central;
        Sides { left: central(Side::Left), right: central(Side::Right) }
    });
    in_short(seen, under, is_safe)
}

/// Everything that is to be said of a plan.
pub(crate) fn whole(seen: &Seen<'_>, plan: &Plan) -> Markup {
    let language = seen.language();
    let texts = &language.page().plan;
    let goals = plan.goals.iter().enumerate();
    let reached = plan.goals.iter().filter(|own| own.met).count();
    html! {
        h2 class="vh" { (texts.these_counts) }
        p class="verdict" {
            @if plan.not_safe.is_empty() { b { (texts.limits_kept) } } @else { b { (texts.not_safe) } }
            @if !plan.goals.is_empty() { " " (texts.goals_met) " " (reached) " / " (plan.goals.len()) "." }
        }
        (limits(language, &plan.not_safe))
        @if let Some(own) = &plan.prediction { (table(seen, own, plan.costs.as_ref())) }
        @if let Some(costs) = &plan.costs {
            (sites(language, costs))
            @if plan.goals.iter().any(|own| matches!(own.want, Want::OffLoad { .. })) {
                p class="hint" { (texts.tissue_hint) }
            }
        }
        @if !plan.goals.is_empty() {
            h3 { (texts.goals) }
            ul class="sayings" {
                @for (at, own) in goals {
                    li class=(if own.met { "yes" } else { "no" }) { (language.ranked_goal(at + 1, own)) }
                }
            }
        }
        @if let Some(costs) = &plan.costs {
            (cost_lines(language, costs))
        }
        @if !plan.cautions.is_empty() {
            h3 { (texts.mind) }
            ul { @for own in &plan.cautions { li { (language.caution(own)) } } }
        }
        @let counts: Vec<u32> = plan.counts.iter().map(|own| own.planned).collect();
        @let to = format!("{}?{}", seen.place.page("sections"), seen.query(&counts));
        details class="entry" hx-get=(to) hx-trigger="toggle once" hx-target="find .cuts" {
            summary { (texts.sections) }
            div class="cuts" { noscript { a href=(to) { (texts.sections) } } }
        }
        p class="soft" { (language.lines().estimate) }
    }
}

/// What counts cost: each goal before and after, then what changes of the client; pressures as
/// changes only.
pub(crate) fn cost_lines(language: &dyn Language, costs: &Costs) -> Markup {
    let goals = costs.goals.iter().filter(|own| own.number.after.is_some()).count();
    let with_goals = language.costs(costs);
    let on_paper = language.costs_on_paper(costs);
    let goals = with_goals.iter().skip(1).take(goals);
    html! {
        @if let Some((heading, changes)) = on_paper.split_first() {
            h3 { (heading) }
            ul { @for line in goals.chain(changes) { li { (line.trim()) } } }
        }
    }
}

/// Each section as a drawing.
pub(crate) fn sections(
    place: &Place<'_>,
    case: &OpenCase,
    cuts: &[casework::CutThrough],
) -> Markup {
    let language = place.house.language().with_lengths_in(case.client.value.lengths);
    let height = case.pattern.wall_height();
    html! {
        @for cut in cuts {
            @if let Ok(own) = sheets::section_picture(language, &casework::section(cut), height) {
                figure class="drawing" { (PreEscaped(sheets::fragment(&own))) }
            }
        }
    }
}

fn limits(language: &dyn Language, broken: &[BrokenLimit]) -> Markup {
    let texts = &language.page().plan;
    html! {
        @if !broken.is_empty() {
            div class="box heavy" {
                p { b { (texts.not_safe) } }
                ul { @for own in broken { li { (capital(&language.limit(own))) "." } } }
            }
        }
    }
}

/// Why counts are not taken; those that were found to be nearest may be taken by name, where an
/// injury alone speaks against them.
pub(crate) fn refused(place: &Place<'_>, case: &OpenCase, plan: &Plan, nearest: bool) -> Markup {
    let language = place.house.language().with_lengths_in(case.client.value.lengths);
    let texts = &language.page().plan;
    html! {
        div class="box heavy" role="alert" {
            p { b { (texts.not_taken) } }
            (reasons(language, case, plan))
            @if !nearest { p { (texts.not_taken_hint) } }
            @else {
                p { (texts.nearest_hint) }
                @let by_name = plan_stands(plan, &case.client.value, true);
                @if by_name { p { (texts.nearest_weighed) } }
                div class="row buttons" {
                    @if by_name {
                        button class="button less" form="take" name="nearest-safe" value="yes" { (texts.take_nearest) }
                    }
                    @for step in [Step::Cushion, Step::Goals] {
                        a class="button less" href=(place.to(step)) { (step_name(place.house, step)) }
                    }
                }
            }
        }
    }
}

/// Which limits counts break, and what they leave undone for an injury.
pub(crate) fn reasons(language: &dyn Language, case: &OpenCase, plan: &Plan) -> Markup {
    let short = short_for_injuries(plan, &case.client.value);
    html! {
        ul {
            @for own in &plan.not_safe { li { (capital(&language.limit(own))) "." } }
            @for own in &short { li { (language.goal_outcome(own)) } }
        }
    }
}

fn central_table(seen: &Seen<'_>, seat: &CentralSeat) -> Markup {
    let language = seen.language();
    let texts = &language.page().plan;
    html! {
        table {
            caption { (texts.these_counts) }
            tbody {
                tr class="is-left" { th scope="row" { (texts.under_left) } td data-value="under-left" { (language.plain_length(seat.clearance.left)) } }
                tr { th scope="row" { (texts.under_right) } td data-value="under-right" { (language.plain_length(seat.clearance.right)) } }
                tr { th scope="row" { (texts.pelvis) } td { (capital(&language.lower(seat.lower_side, seat.lower_by))) } }
                tr { th scope="row" { (texts.lean) } td { (language.lean(seat.roll_deg)) } }
                tr { th scope="row" { (texts.slope) } td { (language.slope(seat.pitch_deg)) } }
            }
        }
    }
}

/// Of which counts the numbers before are.
fn before(language: &dyn Language, costs: &Costs) -> &'static str {
    let texts = &language.page().plan;
    match costs.from {
        ToldFrom::Stock => texts.before_stock,
        ToldFrom::Passed => texts.before_passed,
        ToldFrom::Present => texts.before_present,
    }
}

fn table(seen: &Seen<'_>, own: &Prediction, costs: Option<&Costs>) -> Markup {
    let language = seen.language();
    let texts = &language.page().plan;
    let Some(seat) = &own.seated else {
        return html! { p { b { (capital(language.outcome(own.outcome))) } } };
    };
    html! {
        table {
            caption { (texts.these_counts) }
            @if let Some(costs) = costs {
                thead { tr { td {} th scope="col" { (texts.now) } th scope="col" { (before(language, costs)) } } }
            }
            tbody {
                (clearance(language, seat, costs.map(|own| own.clearance.before)))
                tr {
                    th scope="row" { (texts.pelvis) }
                    td { (capital(&language.lower(seat.lower_side, seat.lower_by))) }
                    @if let Some(costs) = costs {
                        @let (side, by) = lower_at_seat_bones(costs.clearance.before);
                        td { (capital(&language.lower(side, by))) }
                    }
                }
                tr { th scope="row" { (texts.lean) } td { (language.lean(seat.roll_deg.central)) } @if let Some(costs) = costs { td { (language.lean(costs.roll_deg.before)) } } }
                tr { th scope="row" { (texts.slope) } td { (language.slope(seat.pitch_deg.central)) } @if let Some(costs) = costs { td { (language.slope(costs.pitch_deg.before)) } } }
                @if let Some(costs) = costs {
                    tr {
                        th scope="row" { (texts.load) }
                        td { (language.shares(costs.side_share.after.left, costs.side_share.after.right)) }
                        td { (language.shares(costs.side_share.before.left, costs.side_share.before.right)) }
                    }
                }
            }
        }
    }
}

/// Pressure at the sites that matter most; at all of them where somebody looks.
fn sites(language: &dyn Language, costs: &Costs) -> Markup {
    let texts = &language.page().plan;
    let before = before(language, costs);
    let first: Vec<SiteChange> = costs.careful.iter().chain(&costs.risen).copied().collect();
    html! {
        @if !first.is_empty() { (sites_table(language, (texts.pressure, ""), before, &first)) }
        @if !costs.sites.is_empty() {
            details class="entry" id="all-sites" {
                summary { (texts.all_sites) }
                (sites_table(language, (texts.all_sites, "vh"), before, &costs.sites))
                p class="soft" { (texts.all_sites_hint) }
            }
        }
    }
}

/// A row for each site; `class` is that of the caption, which may be said elsewhere already.
fn sites_table(
    language: &dyn Language,
    (caption, class): (&str, &str),
    before: &str,
    sites: &[SiteChange],
) -> Markup {
    let texts = &language.page().plan;
    html! {
        table {
            caption class=(class) { (caption) }
            thead { tr { td {} th scope="col" { (texts.now) } th scope="col" { (before) } } }
            tbody {
                @for own in sites {
                    tr class=(if side_of(own.site.id()) == Some(Side::Left) { "is-left" } else { "" }) data-site=(own.site.id()) {
                        th scope="row" { (capital(language.site(own.site))) }
                        td {
                            (language.site_pressure(own.surface.after))
                            span class="range" { span class="vh" { (texts.change) ": " } span data-value="change" { (language.site_change(own)) } }
                        }
                        td { (language.site_pressure(own.surface.before)) }
                    }
                }
            }
        }
    }
}

fn clearance(
    language: &dyn Language,
    seat: &PredictedSeat,
    before: Option<Sides<Length>>,
) -> Markup {
    let texts = &language.page().plan;
    let ranged = |own: &case::Spread<Length>| {
        let [central, low, high] =
            [own.central, own.low, own.high].map(|length| language.plain_length(length));
        html! { (central) span class="range" { (language.range(&low, &high)) } }
    };
    html! {
        tr class="is-left" {
            th scope="row" { (texts.under_left) } td data-value="under-left" { (ranged(&seat.clearance.left)) }
            @if let Some(own) = before { td { (language.plain_length(own.left)) } }
        }
        tr {
            th scope="row" { (texts.under_right) } td data-value="under-right" { (ranged(&seat.clearance.right)) }
            @if let Some(own) = before { td { (language.plain_length(own.right)) } }
        }
    }
}
