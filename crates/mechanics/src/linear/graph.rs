//! Which nodes of a mesh are joined.

/// For each node its neighbours, in ascending order.
#[derive(Clone, Debug)]
pub(crate) struct Graph {
    starts: Vec<u32>,
    neighbors: Vec<u32>,
}

impl Graph {
    /// The graph in which the corners of each triangle are joined.
    pub(crate) fn of_triangles(nodes: usize, triangles: &[[u32; 3]]) -> Self {
        let sides = || {
            triangles.iter().flat_map(|&[a, b, c]| [(a, b), (b, a), (b, c), (c, b), (c, a), (a, c)])
        };
        let mut room = vec![0u32; nodes + 1];
        for (from, _) in sides() {
            room[from as usize + 1] += 1;
        }
        for node in 0..nodes {
            room[node + 1] += room[node];
        }
        let mut filled = room.clone();
        let mut all = vec![0u32; 6 * triangles.len()];
        for (from, to) in sides() {
            let end = &mut filled[from as usize];
            all[*end as usize] = to;
            *end += 1;
        }
        let mut starts = Vec::with_capacity(nodes + 1);
        let mut neighbors = Vec::with_capacity(all.len() / 2 + nodes);
        starts.push(0);
        for node in 0..nodes {
            let own = &mut all[room[node] as usize..filled[node] as usize];
            own.sort_unstable();
            let mut last = None;
            for &to in own.iter() {
                if last != Some(to) {
                    neighbors.push(to);
                    last = Some(to);
                }
            }
            starts.push(neighbors.len() as u32);
        }
        Self { starts, neighbors }
    }

    /// How many nodes there are.
    pub(crate) fn len(&self) -> usize {
        self.starts.len() - 1
    }

    /// The neighbours of a node.
    pub(crate) fn of(&self, node: u32) -> &[u32] {
        let node = node as usize;
        &self.neighbors[self.starts[node] as usize..self.starts[node + 1] as usize]
    }
}
