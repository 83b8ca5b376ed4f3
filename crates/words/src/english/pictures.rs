//! English: what pictures on a screen say.

use case::question::{Drawing, Question, QuestionWords as _};
use case::{Move, Place, SiteName, Spread};
use cushion::{Length, Side};

use super::{English, parts};
use crate::{BasicWords as _, PaperWords as _, PictureWords};

impl PictureWords for English {
    fn spare_bag(&self) -> &'static str {
        "Spare bag"
    }

    fn move_shows(&self, from: Place, to: Place, cells: u32) -> String {
        let moved = self.a_move(&Move { from, to, cells });
        format!(
            "{moved} The cushion is seen from below, front edge up. The client's left is on the right of the drawing."
        )
    }

    fn least_left(&self, least: Length) -> String {
        format!("at least {}", self.length(least))
    }

    fn left_in_short(&self, left: &Spread<Length>) -> String {
        self.left_under_bone(left)
    }

    fn section_picture_shows(
        &self,
        title: &str,
        sites: &[(SiteName, Spread<Length>)],
        least: Length,
    ) -> String {
        let shown = match sites {
            [] => format!("{title}."),
            _ => self.section_shows(title, sites),
        };
        let least = self.length(least);
        format!("{shown} This is an estimate. The line at {least} is the least that must remain.")
    }

    fn measure_name(&self, drawing: Drawing) -> &'static str {
        match drawing {
            Drawing::HipWidth => self.label(Question::HipWidth),
            Drawing::TrochanterWidth => self.label(Question::TrochanterWidth),
            Drawing::ThighDepth => self.label(Question::ThighDepth),
            Drawing::LowerLegLength => self.label(Question::LowerLegLength),
            Drawing::KneeWidth => self.label(Question::ExternalKneeWidth),
            Drawing::SeatBoneSpacing => self.label(Question::SeatBoneSpacing),
            Drawing::Obliquity => self.label(Question::ObliquityBy),
            Drawing::Tilt => self.label(Question::TiltDirection),
            Drawing::Rotation => "rotation",
            Drawing::Windswept => "windswept legs",
            Drawing::HipFlexion => self.label(Question::HipFlexion),
            Drawing::PoplitealAngle => self.label(Question::PoplitealAngle),
            Drawing::LegDifference => self.label(Question::TrulyShorterBy),
            Drawing::ChairWidth => "inside width",
            Drawing::ChairDepth => "inside depth",
            Drawing::SlingSag => "sag of the sling",
            Drawing::Footrest => "footrest to seat base",
            Drawing::ChairTilt => self.label(Question::ChairTilt),
            Drawing::SeatBonesForward => "rear edge to seat bones",
            Drawing::Crown => "crown",
        }
    }

    fn how_it_is_measured(&self, drawing: Drawing) -> &'static str {
        match drawing {
            Drawing::HipWidth => {
                "Hip width, seen from above: sit the client upright and measure straight across the widest part of hips or thighs, between two boards held upright at the sides. The client's left is on the left of the drawing."
            }
            Drawing::TrochanterWidth => {
                "Trochanter width, seen from above: feel for the bony point at the outside of each hip and measure straight across between the outsides of the two. The client's left is on the left of the drawing."
            }
            Drawing::ThighDepth => {
                "Thigh depth, seen from the side: measure level along the thigh, from the back of the buttock to the back of the knee."
            }
            Drawing::LowerLegLength => {
                "Lower leg length, seen from the side: measure straight down, from the back of the knee to under the heel, with shoes on."
            }
            Drawing::KneeWidth => {
                "External knee width, seen from above: measure straight across, between the outsides of the knees as they are held in sitting. The client's left is on the left of the drawing."
            }
            Drawing::SeatBoneSpacing => {
                "Seat bone spacing, seen from behind: measure between the lowest points of the two seat bones. The client's left is on the left of the drawing."
            }
            Drawing::Obliquity => {
                "Obliquity, seen from behind: measure how much lower the seat bone of the lower side is than the other one. In the drawing the client's left side is lower, and the client's left is on the left."
            }
            Drawing::Tilt => {
                "Tilt, seen from the side: look at the line from the bony point at the back of the pelvis to the one at its front, and measure the angle between it and a level line. In the drawing the pelvis is tilted backward."
            }
            Drawing::Rotation => {
                "Rotation, seen from above: measure the angle between the line through the two front points of the pelvis and a line straight across the seat. In the drawing the client's right side is in front, and the client's left is on the left."
            }
            Drawing::Windswept => {
                "Windswept legs, seen from above: measure the angle between the thighs and straight ahead. In the drawing both knees point to the client's right, and the client's left is on the left."
            }
            Drawing::HipFlexion => {
                "Hip flexion, seen from the side: measure the angle to which the thigh is bent up from the straight line of the trunk. A right angle between trunk and thigh is 90 degrees."
            }
            Drawing::PoplitealAngle => {
                "Popliteal angle, seen from the side: measure the angle at the knee between the thigh and the lower leg."
            }
            Drawing::LegDifference => {
                "Difference of the legs, seen from the side: with the pelvis held straight and the legs side by side, measure how far one knee stays behind the other."
            }
            Drawing::ChairWidth
            | Drawing::ChairDepth
            | Drawing::SlingSag
            | Drawing::Footrest
            | Drawing::ChairTilt
            | Drawing::SeatBonesForward
            | Drawing::Crown => on_the_chair(drawing).unwrap_or_default(),
        }
    }

    fn body_shows(&self) -> &'static str {
        "A seated body from behind, with its thighs below. There is a ring at each place that can be chosen: both seat bones, the coccyx, both trochanters and both thighs. The client's left is on the left of the drawing."
    }

    fn lower_by(&self, by: Length) -> String {
        self.length(by)
    }

    fn pelvis_shows(&self, lower: Option<Side>, by: Option<Length>) -> String {
        let how = match (lower, by) {
            (Some(side), None) => {
                format!("the client's {} side is LOWER", parts::loud_side(side))
            }
            (side, by) => self.lower(side, by.unwrap_or(Length::from_mm(0.0))),
        };
        let drawn = if lower.is_some() { " The turn is not drawn to scale." } else { "" };
        format!(
            "The pelvis from behind: {how}.{drawn} The client's left is on the left of the drawing."
        )
    }
}

/// How something of a chair or a cushion is measured; none of a body.
fn on_the_chair(drawing: Drawing) -> Option<&'static str> {
    Some(match drawing {
        Drawing::ChairWidth => {
            "Inside width, seen from the front: measure the clear width between the sides of the chair. The client's left is on the right of the drawing."
        }
        Drawing::ChairDepth => {
            "Inside depth, seen from the side: measure level, from the front of the back support to the front edge of the seat."
        }
        Drawing::SlingSag => {
            "Sag of the sling, seen from the front: lay a straight edge across the two side rails and measure down from it to the sling, in the middle. The client's left is on the right of the drawing."
        }
        Drawing::Footrest => {
            "Footrest to seat base, seen from the side: measure straight up, from the top of the footrest to the top of the seat base, without the cushion."
        }
        Drawing::ChairTilt => {
            "Tilt of the chair, seen from the side: measure the angle between the seat base and a level line. In the drawing the chair is tilted back."
        }
        Drawing::SeatBonesForward => {
            "Rear edge to seat bones, seen from the side: measure level, from the rear edge of the cushion forward to under the seat bones."
        }
        Drawing::Crown => {
            "Crown, a compartment cut through and seen from the side: how high the middle of its top stands above the seams of its walls."
        }
        _ => return None,
    })
}
