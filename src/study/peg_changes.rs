//! Changes of pegs and tenons that may help: those of every joint, and the heads of posts that want wood around their pegs.
use super::changes::{Ladder, Try};
use crate::checks::{NEEDS_WOOD, PULLS_ON_PEGS, Part, Strength};
use crate::fastening::peg_needs;
use crate::project::{JoineryRules, JointName};
use crate::units::{Length, UnitSystem};

/// Pegs as they are turned, within what their values are for (common practice).
const INCH_PEGS: [f64; 5] = [0.75, 0.875, 1.0, 1.125, 1.25];
const MILLIMETRE_PEGS: [f64; 5] = [20.0, 22.0, 25.0, 28.0, 30.0];

impl Try<'_> {
    /// Where the wood around the pegs of a head is wanting, nothing but their places and sizes gives it.
    pub fn for_pegs(&self, strength: &Strength, name: &str) -> Vec<Ladder> {
        let mut all: Vec<Ladder> = self.heads(strength).into_iter().flatten().collect();
        if name != NEEDS_WOOD {
            all.extend([
                self.thicker_pegs(),
                self.longer_tenons(),
                self.braces_both_sides(),
                self.longer_braces(),
                self.more_posts(),
            ]);
        }
        all
    }

    fn thicker_pegs(&self) -> Ladder {
        let one = |steps: f64| {
            let peg = self.project.joinery.peg + self.step(0.125, 3.0) * steps;
            self.with(format!("pegs of {}", self.said(peg)), |changed| changed.joinery.peg = peg)
        };
        [1.0, 2.0].map(one).into()
    }

    fn longer_tenons(&self) -> Ladder {
        let rules = &self.project.joinery;
        let one = |steps: f64| {
            let longer = self.step(0.5, 15.0) * steps;
            let (post, brace) = (rules.post_tenon + longer, rules.brace_tenon + longer);
            let says = format!("tenons of {} on posts and {} on braces", self.said(post), self.said(brace));
            self.with(says, |changed| (changed.joinery.post_tenon, changed.joinery.brace_tenon) = (post, brace))
        };
        [1.0, 2.0].map(one).into()
    }

    /// The heads that fail, all alike: with their pegs as thick as they are, then with others, the shortest tenon first. Braces
    /// keep the rules: their tenons are too short for a peg that far from the shoulder.
    fn heads(&self, strength: &Strength) -> Option<[Ladder; 2]> {
        let is_head = |name: &str| name == NEEDS_WOOD || name == PULLS_ON_PEGS;
        let failing = strength.checks.iter().filter(|check| check.part == Part::Pegs && !check.passes());
        let posts = failing.filter(|check| is_head(&check.name)).filter_map(|check| check.member.strip_prefix('P'));
        let mut posts: Vec<usize> = posts.filter_map(|number| number.parse().ok()).collect();
        posts.sort_unstable();
        posts.dedup();
        let rules = self.project.rules_of(JointName::PostHead(*posts.first()?));
        let sizes = match self.project.units {
            UnitSystem::Imperial => INCH_PEGS.map(Length::inches),
            UnitSystem::Metric => MILLIMETRE_PEGS.map(Length::millimetres),
        };
        let others = sizes.into_iter().filter(|peg| !peg.is_near(rules.peg, Length::inches(0.05)));
        let ladder = |pegs: &mut dyn Iterator<Item = Length>| {
            let mut all: Vec<JoineryRules> = pegs.flat_map(|peg| self.with_room(&rules, peg)).flatten().collect();
            crate::units::sort_by_number(&mut all, |rules| rules.post_tenon.to_inches());
            all.iter().map(|rules| self.with_heads(&posts, rules)).collect()
        };
        Some([ladder(&mut std::iter::once(rules.peg)), ladder(&mut { others })])
    }

    /// A head whose first peg of that size has the wood it needs, then one where a second has it too, half a peg farther up.
    fn with_room(&self, rules: &JoineryRules, peg: Length) -> [Option<JoineryRules>; 2] {
        let one = |pegs: f64| {
            let needs = peg_needs(&self.project.frame.species).ok()?;
            let from = self.rounded_up(peg * needs.edge);
            let tenon = self.rounded_up(from + peg * (0.5 * pegs + needs.end) - rules.drawbore);
            Some(JoineryRules { peg, peg_from_shoulder: from, post_tenon: tenon, ..*rules })
        };
        [one(0.0), one(1.0)]
    }

    /// To an eighth or a millimetre, as a tape is read.
    fn rounded_up(&self, length: Length) -> Length {
        let step = self.step(0.125, 1.0);
        step * ((length / step) - 1e-6).ceil()
    }

    fn with_heads(&self, posts: &[usize], rules: &JoineryRules) -> (String, crate::project::Project) {
        let names: Vec<String> = posts.iter().map(|number| format!("P{number}")).collect();
        let heads = match names.as_slice() {
            all if all.len() == self.project.frame.posts.len() => "every post’s head".to_owned(),
            [one] => format!("the head of {one}"),
            some => format!("the heads of {}", some.join(", ")),
        };
        let [peg, from, tenon] = [rules.peg, rules.peg_from_shoulder, rules.post_tenon].map(|length| self.said(length));
        let says = format!("{heads} with pegs of {peg}, {from} from the shoulder of a tenon of {tenon}");
        self.with(says, |changed| {
            for name in names {
                let own = changed.exceptions.entry(name).or_default();
                own.peg = Some(rules.peg);
                own.peg_from_shoulder = Some(rules.peg_from_shoulder);
                own.tenon_length = Some(rules.post_tenon);
            }
        })
    }
}
