//! An order of the nodes that keeps the matrix narrow.
use super::model::{Frame, Stiffness};

/// The nodes that lead, in an order that keeps the matrix narrow while every member is at work; members that let go
/// only make it narrower.
pub(super) fn narrow_order(frame: &Frame, leader: &[usize]) -> Vec<usize> {
    let mut order = reverse_cuthill_mckee(&neighbours(frame, leader));
    order.retain(|node| leader[*node] == *node);
    order
}

fn neighbours(frame: &Frame, leader: &[usize]) -> Vec<Vec<usize>> {
    let mut lists = vec![Vec::new(); frame.nodes.len()];
    for member in &frame.members {
        let (a, b) = (leader[member.from], leader[member.to]);
        if member.stiffness != Stiffness::Rigid && a != b {
            lists[a].push(b);
            lists[b].push(a);
        }
    }
    for list in &mut lists {
        list.sort_unstable();
        list.dedup();
    }
    lists
}

/// Breadth first from a node at the edge, least joined neighbours first, then turned round.
///
/// E. Cuthill, J. McKee, "Reducing the bandwidth of sparse symmetric matrices", ACM national conference 1969; turned
/// round after A. George, 1971; the edge found by the widest of repeated levels (N. Gibbs and others, 1976). From memory.
fn reverse_cuthill_mckee(neighbours: &[Vec<usize>]) -> Vec<usize> {
    let mut order = Vec::with_capacity(neighbours.len());
    let mut is_placed = vec![false; neighbours.len()];
    for start in 0..neighbours.len() {
        if is_placed[start] {
            continue;
        }
        // Two sweeps: the last node of the first one lies at an edge of the component.
        let sweep = breadth_first(neighbours, start);
        let edge = sweep.last().copied().unwrap_or(start);
        for node in breadth_first(neighbours, edge) {
            is_placed[node] = true;
            order.push(node);
        }
    }
    order.reverse();
    order
}

fn breadth_first(neighbours: &[Vec<usize>], start: usize) -> Vec<usize> {
    let mut order = Vec::with_capacity(neighbours.len());
    order.push(start);
    let mut is_seen = vec![false; neighbours.len()];
    is_seen[start] = true;
    let mut next = 0;
    while next < order.len() {
        let first = order.len();
        for node in &neighbours[order[next]] {
            if !std::mem::replace(&mut is_seen[*node], true) {
                let no_more = |other: &usize| neighbours[*other].len() <= neighbours[*node].len();
                let place = order[first..].partition_point(no_more);
                order.insert(first + place, *node);
            }
        }
        next += 1;
    }
    order
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_chain_named_at_random_comes_out_in_line() {
        // 3 - 0 - 4 - 1 - 2.
        let neighbours = vec![vec![3, 4], vec![2, 4], vec![1], vec![0], vec![0, 1]];
        let order = reverse_cuthill_mckee(&neighbours);
        assert!(order == [2, 1, 4, 0, 3] || order == [3, 0, 4, 1, 2], "{order:?}");
    }

    #[test]
    fn every_part_is_numbered() {
        let order = reverse_cuthill_mckee(&[vec![1], vec![0], vec![], vec![4], vec![3]]);
        let mut sorted = order.clone();
        sorted.sort_unstable();
        assert_eq!(sorted, vec![0, 1, 2, 3, 4]);
    }
}
