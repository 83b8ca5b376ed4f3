//! Code groups of the United States' HCPCS Level II for seat cushions.
//!
//! Source: the CMS HCPCS Level II file, April 2020. A layout file declares what its supplier says
//! that the cushion is; nothing here claims a code.

use cushion::{Class, Length};

/// The width from which a cushion is of the wide group: 22 inches exactly.
pub const WIDE_FROM: Length = Length::from_mm(558.8);

/// A group with its official long description.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CodeGroup {
    /// The code.
    pub code: &'static str,
    /// What it describes, without the width.
    pub describes: &'static str,
    /// Whether it is for 22 inches or more.
    pub wide: bool,
}

/// Returns the group of a declared class at a width of the cushion, not of the client.
///
/// `adjustable` is whether the wearer or a carer can alter immersion with what was supplied at
/// first issue: it counts for the skin-protection part alone, so the other two classes have no
/// such group.
#[must_use]
pub fn code_group(class: Class, adjustable: bool, width: Length) -> CodeGroup {
    let wide = width >= WIDE_FROM;
    let (narrow_code, wide_code, describes) = match (class, adjustable) {
        (Class::General, _) => ("E2601", "E2602", "General use wheelchair seat cushion"),
        (Class::SkinProtection, false) => {
            ("E2603", "E2604", "Skin protection wheelchair seat cushion")
        }
        (Class::SkinProtection, true) => {
            ("E2622", "E2623", "Skin protection wheelchair seat cushion, adjustable")
        }
        (Class::Positioning, _) => ("E2605", "E2606", "Positioning wheelchair seat cushion"),
        (Class::SkinProtectionAndPositioning, false) => {
            ("E2607", "E2608", "Skin protection and positioning wheelchair seat cushion")
        }
        (Class::SkinProtectionAndPositioning, true) => (
            "E2624",
            "E2625",
            "Skin protection and positioning wheelchair seat cushion, adjustable",
        ),
    };
    CodeGroup { code: if wide { wide_code } else { narrow_code }, describes, wide }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Outside source: CMS HCPCS Level II file, April 2020, the codes of section E26.
    #[test]
    fn every_class_and_width_has_its_code() {
        let (narrow, wide) = (Length::from_mm(558.0), Length::from_mm(559.0));
        let table = [
            (Class::General, false, "E2601", "E2602"),
            (Class::General, true, "E2601", "E2602"),
            (Class::SkinProtection, false, "E2603", "E2604"),
            (Class::SkinProtection, true, "E2622", "E2623"),
            (Class::Positioning, false, "E2605", "E2606"),
            (Class::Positioning, true, "E2605", "E2606"),
            (Class::SkinProtectionAndPositioning, false, "E2607", "E2608"),
            (Class::SkinProtectionAndPositioning, true, "E2624", "E2625"),
        ];
        for (class, adjustable, below, above) in table {
            assert_eq!(code_group(class, adjustable, narrow).code, below);
            assert_eq!(code_group(class, adjustable, wide).code, above);
            assert_eq!(code_group(class, adjustable, WIDE_FROM).code, above);
            assert!(code_group(class, adjustable, wide).wide);
        }
    }
}
