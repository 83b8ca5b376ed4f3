//! English: cautions, sizes and the next look.

use case::{
    AltitudeNote, Caution, Date, HeightEffect, NoSizeToMake, SizeMargin, SizeMisfit, SizeToMake,
    SizingRule, Source, WhyReCheck,
};
use cushion::{Length, Mass, Side};

use super::{English, parts};
use crate::{BasicWords, CautionWords};

impl CautionWords for English {
    fn caution(&self, caution: &Caution) -> String {
        match caution {
            Caution::Layers { pad, sling } => layers(*pad, *sling),
            Caution::OpenInjury { site, seen_on } => open_injury(self.site(*site), *seen_on),
            Caution::CannotProtectSkin => CANNOT_PROTECT_SKIN.to_owned(),
            Caution::SmallObliquity { lower, by } => small_obliquity(*lower, &self.length(*by)),
            Caution::LowSideLoaded { lower } => low_side(*lower),
            Caution::FootPropels => FOOT_PROPELS.to_owned(),
            Caution::Size(misfits) => {
                let misfits: Vec<String> =
                    misfits.iter().map(|own| self.size_misfit(own)).collect();
                format!("The size does not suit the measures: {}.", misfits.join("; "))
            }
            Caution::Altitude(note) => altitude(*note),
            Caution::ReCheck { due, .. } => {
                let because: Vec<String> =
                    due.because.iter().map(|why| self.why_re_check(why)).collect();
                format!("Re-check by {}: {}.", due.by, because.join("; "))
            }
            Caution::Empty { number } => empty(*number),
            Caution::FewCells { number, cells, least } => few_cells(*number, *cells, *least),
            Caution::ManyCells { number, cells, most } => many_cells(*number, *cells, *most),
            Caution::NoRating { size } => no_rating(&self.size_in_words(*size)),
            Caution::NoWeight => NO_WEIGHT.to_owned(),
            Caution::OldWeight { weighed_on } => {
                format!("The body weight is from {weighed_on}. Weigh the client again.")
            }
            Caution::HeightChanged => HEIGHT_CHANGED.to_owned(),
            Caution::SmallMoves { cells } => small_moves(*cells),
            Caution::Spares { needed, there } => spares(*needed, *there),
            Caution::SlingSeat => SLING_SEAT.to_owned(),
            Caution::WiderThanChair => WIDER_THAN_CHAIR.to_owned(),
            Caution::DeeperThanSeat => {
                "The cushion is deeper than the seat of the chair.".to_owned()
            }
        }
    }

    fn source(&self, source: Source) -> &'static str {
        match source {
            Source::CommonPractice => "common practice, no source",
            Source::Model => "the model's own limits",
            Source::LayoutFile => "the layout file",
            Source::SizingRules => "the rules of sizing",
            Source::CanScip => "Canadian SCI practice guideline (CAN-SCIP)",
            Source::SpinalCordMedicine2014 => {
                "Consortium for Spinal Cord Medicine, Pressure Ulcer Prevention and Treatment Following SCI, 2nd ed., 2014"
            }
            Source::Heinrichs2020 => {
                "Heinrichs, Kirby et al., Disabil Rehabil Assist Technol, 2020"
            }
            Source::Iso2533 => "ISO 2533",
            Source::SeatWidth => {
                "between the hip width (WHO basic package, seen in part) and 50 mm more (orthopaedics exam notes); the widest that suits is 20 mm above that, for the steps between made sizes: an estimate"
            }
            Source::SeatDepth => {
                "orthopaedics exam notes; WHO basic package has 30 to 60 mm (from memory); the shallowest that suits is an estimate"
            }
        }
    }

    fn size_misfit(&self, misfit: &SizeMisfit) -> String {
        match misfit {
            SizeMisfit::Narrow { hips } => {
                format!("it is narrower than the hips, {}", self.length(*hips))
            }
            SizeMisfit::Wide { most } => {
                format!("it is more than {} wider than the hips", self.length(*most))
            }
            SizeMisfit::Deep { least } => {
                format!("it leaves less than {} behind the shorter leg's knee", self.length(*least))
            }
            SizeMisfit::Shallow { short } => {
                format!("it ends {} behind the knee", self.length(*short))
            }
            SizeMisfit::Rating { rating } => format!("it is rated for {}", self.weight(*rating)),
            SizeMisfit::WiderThanChair => "it is wider than the chair inside".to_owned(),
            SizeMisfit::DeeperThanSeat => "it is deeper than the seat".to_owned(),
        }
    }

    fn size_margin(&self, margin: &SizeMargin) -> String {
        size_margin(*self, margin)
    }

    fn size_to_make(&self, size: &SizeToMake) -> String {
        let SizeToMake { made, widths: [narrow, wide], depths: [shallow, deep] } = *size;
        format!(
            "Ask a supplier whether a cushion can be made in {}, rated for {} or more: a width of \
             {} and a depth of {} suit as well. Only the maker can rate it.",
            self.size_in_words(made.size),
            self.weight(made.max_user_weight),
            self.lengths(narrow, wide),
            self.lengths(shallow, deep)
        )
    }

    fn no_size_to_make(&self, why: &NoSizeToMake) -> String {
        no_size_to_make(*self, why)
    }

    fn sizing_rule(&self, rule: &SizingRule) -> String {
        match rule {
            SizingRule::Width { wanted, room, within: [least, most] } => format!(
                "Width {}: the hips as clothed and {}; never narrower than the hips. {} suit.",
                self.length(*wanted),
                self.length(*room),
                self.lengths(*least, *most)
            ),
            SizingRule::Depth { wanted, room, within: [least, most] } => format!(
                "Depth {}: the shorter thigh depth less {}, two to three fingers behind the knee. \
                 Measure both legs; depth goes by the shorter one. {} suit.",
                self.length(*wanted),
                self.length(*room),
                self.lengths(*least, *most)
            ),
            SizingRule::ChairWidth { inside } => {
                format!("No wider than the chair inside, {}.", self.length(*inside))
            }
            SizingRule::ChairDepth { inside } => {
                format!("No deeper than the seat of the chair, {}.", self.length(*inside))
            }
            SizingRule::Rating { weight } => {
                format!("Rated for the client's weight, {}, or more.", self.weight(*weight))
            }
        }
    }

    fn height_effect(&self, effect: &HeightEffect) -> String {
        match effect {
            HeightEffect::Footrest { side, too_low_by } => {
                let way = if *too_low_by > Length::ZERO { "low" } else { "high" };
                format!(
                    "The {} footrest is about {} too {way} for the lower leg on this cushion \
                     (subtract the compressed cushion). Set it again.",
                    parts::side(*side),
                    self.length(too_low_by.abs())
                )
            }
            HeightEffect::FrontEdge { side, least, most } => format!(
                "The {} foot propels: the loaded front edge is best 25 to 51 mm (1 to 2 in) below the lower \
                 leg length with the shoe on, so at {} above the floor.",
                parts::side(*side),
                self.lengths(*least, *most)
            ),
            HeightEffect::Seated { height } => format!(
                "The client sits some {} above the seat base: look at transfers, brakes, \
                 footrests and the table.",
                self.length(*height)
            ),
        }
    }

    fn why_re_check(&self, why: &WhyReCheck) -> String {
        match why {
            WhyReCheck::AfterFitting(on) => format!("three months after the fitting of {on}"),
            WhyReCheck::AfterLastLook(on) => format!("two years after the last look of {on}"),
            WhyReCheck::Review(on) => format!("the review is set for {on}"),
            WhyReCheck::Weight { then, now, plan } => format!(
                "the weight went from {} to {} since the plan of {plan}",
                self.weight(*then),
                self.weight(*now)
            ),
            WhyReCheck::Losing { number, cells, planned } => {
                format!("compartment {number} has {cells} of {planned} cells and is losing some")
            }
            WhyReCheck::Clearance { side, felt } => format!(
                "less is felt under the {} seat bone, {} at last",
                parts::side(*side),
                self.length(*felt)
            ),
        }
    }
}

fn size_margin(say: English, margin: &SizeMargin) -> String {
    let said = |by: Length, free: &str, lacking: &str| {
        // What is said to be lacking rounds to a millimetre at least.
        let words = if by.to_mm().round() < 0.0 { lacking } else { free };
        format!("{} {words}", say.length(by.abs()))
    };
    match *margin {
        SizeMargin::BesideHips(in_all) => {
            said(in_all * 0.5, "beside each hip", "too narrow at each hip")
        }
        SizeMargin::BehindKnee(by) => said(by, "behind the knee", "beyond the knee"),
        SizeMargin::BelowRating(by) => {
            let words = if by < Mass::ZERO { "above" } else { "below" };
            format!("{} {words} its rating", say.weight(by.abs()))
        }
        SizeMargin::InChairWidth(by) => {
            said(by, "of the chair's width to spare", "wider than the chair inside")
        }
        SizeMargin::InChairDepth(by) => {
            said(by, "of the seat's depth to spare", "deeper than the seat")
        }
    }
}

fn no_size_to_make(say: English, why: &NoSizeToMake) -> String {
    let length = |length: Length| say.length(length);
    match *why {
        NoSizeToMake::HipsNotMeasured => {
            "Measure the hips: without them no width can be asked for.".to_owned()
        }
        NoSizeToMake::ThighsNotMeasured => {
            "Measure both thighs: without them no depth can be asked for.".to_owned()
        }
        NoSizeToMake::NotWeighed => {
            "Weigh the client: without the weight no rating can be asked for.".to_owned()
        }
        NoSizeToMake::WidthNotDrawn { wanted } => {
            format!("No cushion is drawn {} wide.", length(wanted))
        }
        NoSizeToMake::DepthNotDrawn { wanted } => {
            format!("No cushion is drawn {} deep.", length(wanted))
        }
        NoSizeToMake::ChairTooNarrow { least, inside } => format!(
            "Look at the chair first: it is {} wide inside, and the hips need {}.",
            length(inside),
            length(least)
        ),
        NoSizeToMake::SeatTooShallow { least, inside } => format!(
            "Look at the chair first: its seat is {} deep, and the thighs need {}.",
            length(inside),
            length(least)
        ),
        NoSizeToMake::LayoutNotDrawn { size } => format!(
            "A cushion in {} would suit, but it cannot be drawn so: take another layout.",
            say.size_in_words(size)
        ),
    }
}

const CANNOT_PROTECT_SKIN: &str = "Feeling or weight shifts are not enough to protect the skin. Plan who takes the load off, 1 to 2 minutes every 30 minutes, and who looks at the skin.";
const FOOT_PROPELS: &str = "The client propels with a foot, and no goal lowers the front. Measure the loaded front edge against the lower leg with the shoe on: 25 to 51 mm (1 to 2 in) below it is best.";
const NO_WEIGHT: &str = "No body weight is given. Weigh the client: neither the rating nor the plan can be checked without it.";
const HEIGHT_CHANGED: &str = "This plan raises or lowers the client. Set the footrests again, and check transfers, brakes and the table.";
const SLING_SEAT: &str = "The chair has a sling seat. Rule out sag first, or put in a solid seat: sag undoes what the compartments do.";
const WIDER_THAN_CHAIR: &str =
    "The cushion is wider than the chair inside: it will be squeezed and stand higher.";

fn layers(pad: bool, sling: bool) -> String {
    let (what, it) = match (pad, sling) {
        (true, true) => ("A pad and a sling lie on the cushion.", "them"),
        (true, false) => ("A pad lies on the cushion.", "it"),
        (false, _) => ("A sling lies on the cushion.", "it"),
    };
    format!(
        "{what} Every layer takes some of what the cells do: make the checks with {it} in \
         place, and take {it} away where that can be done."
    )
}

fn open_injury(site: &str, seen_on: Date) -> String {
    format!(
        "An open pressure injury at the {site} ({seen_on}). The treating clinician decides whether \
         and how long to sit."
    )
}

fn small_obliquity(lower: Side, by: &str) -> String {
    format!(
        "The client's {} side is LOWER by {by} at the seat bones. Less than 10 mm is often let be.",
        parts::loud_side(lower)
    )
}

fn low_side(lower: Side) -> String {
    format!(
        "Building up under the low side loads its seat bone: check the {} side first.",
        parts::side(lower)
    )
}

fn empty(number: u8) -> String {
    format!(
        "Compartment {number} would be empty. A cushion is never used with an empty compartment."
    )
}

fn few_cells(number: u8, cells: u32, least: u32) -> String {
    format!(
        "Compartment {number} gets {}; fewer than {least} leave its top slack. Check by hand for \
         bottoming out on that side first.",
        parts::cells(cells)
    )
}

fn many_cells(number: u8, cells: u32, most: u32) -> String {
    format!(
        "Compartment {number} gets {}; above {most} the estimate is not good. It may be hard and \
         unstable.",
        parts::cells(cells)
    )
}

fn no_rating(size: &str) -> String {
    format!("The layout is not made in size {size}; there is no maximum user weight for it.")
}

fn spares(needed: u32, there: u32) -> String {
    let are = if there == 1 { "is" } else { "are" };
    format!("The plan needs {} from the spare bag, and {there} {are} in it.", parts::cells(needed))
}

fn altitude(note: AltitudeNote) -> String {
    match note {
        AltitudeNote::Moved { sealed, home, grows } => {
            let (more, firmer) = if grows > 0.0 { ("more", "firmer") } else { ("less", "softer") };
            format!(
                "The cells were sealed at {:.0} m and the client lives at {:.0} m: slack cells \
                 take about {} {more} room there, as far as their film lets them, and the cushion \
                 is {firmer}. Check by hand at home; change counts only after that.",
                sealed.to_m(),
                home.to_m(),
                parts::percent(grows)
            )
        }
        AltitudeNote::CellsAtHome { sealed, home } => format!(
            "After that re-check about {} at home do what {sealed} do where they were sealed.",
            parts::cells(home)
        ),
        AltitudeNote::Travel => "In an aircraft cells swell (up to a third at a cabin altitude of \
             2438 m): change nothing, check by hand at cruise and after landing. A cushion left in \
             the cold is some 7 to 10 % soft: let it get warm first."
            .to_owned(),
    }
}

fn small_moves(cells: u32) -> String {
    format!(
        "Moves of {} or fewer from one compartment to another may do little: the wall \
         between them gives way first. Feel again after them before more are moved.",
        parts::cells(cells)
    )
}
