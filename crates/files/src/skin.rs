//! Reads `[skin]`: injuries, feeling, and whether load can be shifted.

use case::question::{Group, Question};
use case::{Category, Healing, PressureInjury, Sensation, SiteName, Skin, WeightShift};

use crate::cursor::Table;
use crate::posture::SIDES;

pub(crate) fn skin(table: &Table<'_>) -> Skin {
    let skin = Skin {
        injuries: table.entries(Group::Injury, injury).unwrap_or_default(),
        sensation: table
            .optional(Question::Sensation)
            .and_then(|value| value.choice(&Sensation::WORDS)),
        sensation_side: table
            .optional(Question::SensationSide)
            .and_then(|value| value.choice(&SIDES)),
        weight_shift: table
            .optional(Question::WeightShift)
            .and_then(|value| value.choice(&WeightShift::WORDS)),
    };
    table.finish();
    skin
}

fn injury(table: &Table<'_>) -> Option<PressureInjury> {
    let site = table.required(Question::InjurySite);
    let site = site.and_then(|value| value.choice(&SiteName::WORDS));
    let category = table.required(Question::InjuryCategory);
    let category = category.and_then(|value| value.choice(&Category::WORDS));
    let state = table.required(Question::InjuryIs);
    let state = state.and_then(|value| value.choice(&Healing::WORDS));
    let seen_on = table.required(Question::InjurySeenOn).and_then(|value| value.date());
    table.finish();
    Some(PressureInjury { site: site?, category: category?, state: state?, seen_on: seen_on? })
}
