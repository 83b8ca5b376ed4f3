//! Mirror partners of the built-in layouts: known by shape, they are those that ids call so.

use cushion::Side;

#[test]
fn partners_of_built_in_layouts_are_those_that_ids_call_so() {
    for (layout, pairs) in [("row-six", 3), ("island-eight", 3), ("curved-ten", 5)] {
        for size in ["360x400", "440x400", "510x460"] {
            let pattern = testkit::pattern(layout, size);
            let mut found = 0;
            for ix in pattern.indices() {
                let id = pattern[ix].id.as_str();
                let other = pattern.partner(ix).map(|other| pattern[other].id.as_str());
                let called = id.strip_suffix("left").map(|rest| format!("{rest}right"));
                let called =
                    called.or_else(|| id.strip_suffix("right").map(|rest| format!("{rest}left")));
                assert_eq!(other, called.as_deref(), "{layout} {size} {id}");
                found += usize::from(other.is_some() && pattern[ix].side == Some(Side::Left));
            }
            assert_eq!(found, pairs, "{layout}");
        }
    }
}
