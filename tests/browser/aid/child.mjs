// A client of the tests' own.
/** A child whose injury would get more by any move that raises what is under it. */
export const CHILD = `format = 1
kind = "client"
client = "N-2"
child = true

[measures]
units = "mm"
taken_on = 2026-03-01
taken_by = "OT"
hip_width = 240
thigh_depth = { left = 300, right = 310 }
seat_bone_spacing = 80

[weight]
kg = 20
weighed_on = 2026-03-01

[posture]
obliquity = { lower = "right", by = 10, at = "seat bones", is = "fixed" }

[skin]
sensation = "intact"
weight_shift = "limited"

[[skin.injury]]
site = "right-seat-bone"
category = "1"
is = "healing"
seen_on = 2026-03-01

[function]
propulsion = "pushed"
sitting_hours = 6

[chair]
inside_width = 300
inside_depth = 300
base = "solid"

[cushion]
layout = "row-six"
size = "300x300"
spare_cells = 12

[[goal]]
want = "accommodate obliquity"

[[goal]]
want = "off-load"
site = "right-seat-bone"
percent = 10
`;
