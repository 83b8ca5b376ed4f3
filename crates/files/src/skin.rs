//! Reads `[skin]`: injuries, feeling, and whether load can be shifted.

use case::{Category, Healing, PressureInjury, Sensation, SiteName, Skin, WeightShift};

use crate::client::entries;
use crate::cursor::{Table, Value};

pub(crate) fn skin(table: &Table<'_>) -> Skin {
    let skin = Skin {
        injuries: entries(table, "injury", injury).unwrap_or_default(),
        sensation: table.optional("sensation").and_then(|value| {
            let words = [
                ("intact", Sensation::Intact),
                ("impaired", Sensation::Impaired),
                ("absent", Sensation::Absent),
            ];
            value.choice("sensation", &words)
        }),
        weight_shift: table.optional("weight_shift").and_then(|value| {
            let words = [
                ("able", WeightShift::Able),
                ("limited", WeightShift::Limited),
                ("unable", WeightShift::Unable),
            ];
            value.choice("ability to shift weight", &words)
        }),
    };
    table.finish();
    skin
}

fn injury(table: &Table<'_>) -> Option<PressureInjury> {
    let site = table.required("site").and_then(|value| site(&value));
    let category = table.required("category").and_then(|value| {
        value.choice("category", &Category::ALL.map(|(category, words)| (words, category)))
    });
    let state = table.required("is").and_then(|value| {
        let words =
            [("open", Healing::Open), ("healing", Healing::Healing), ("healed", Healing::Healed)];
        value.choice("state of an injury", &words)
    });
    let seen_on = table.required("seen_on").and_then(|value| value.date());
    table.finish();
    Some(PressureInjury { site: site?, category: category?, state: state?, seen_on: seen_on? })
}

pub(crate) fn site(value: &Value<'_>) -> Option<SiteName> {
    value.choice("site", &SiteName::ALL.map(|site| (site.id(), site)))
}
