//! The one state of the app: the open project, what it comes to, and the way back.
use super::after::{after_paint, after_pause, drop_after_paint};
use super::dom;
use super::figures::Figures;
use super::history::History;
use crate::app::cached::Cached;
use crate::app::part::part;
use crate::checks::{Strength, strength};
use crate::design::{Built, Design, Shape};
use crate::joinery::{Fit, fit};
use crate::lay_out;
use crate::project::{Problem, Progress, Project, demo};
use crate::units::UnitSystem;
use leptos::prelude::*;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, OnceLock};
use std::time::Duration;

/// Works out everything but the strength.
type LayOut = fn(&Project) -> Design;
/// Judges a frame.
type Judge = fn(&Project, &Shape) -> Strength;
/// Makes a frame's solids and looks how they fit.
type Fits = fn(&Project, &Shape) -> Fit;

part!(
    /// What lays a project out.
    pub static LAYOUT: LayOut = layout.layout_part(lay_out)
);
part!(
    /// What judges whether the frame carries.
    pub static CHECKS: Judge = checks.checks_part(strength)
);
part!(
    /// What makes solids and looks whether they fit.
    pub static SOLIDS: Fits = solids.solids_part(fit)
);

/// The last frame that could be built, with the project it was built from.
#[derive(Clone, Debug)]
pub struct Good {
    /// The project.
    pub project: Arc<Project>,
    /// Its frame.
    pub built: Arc<Built>,
}

/// The same pair, not one that looks alike: comparing whole frames costs more than drawing them.
impl PartialEq for Good {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.project, &other.project) && Arc::ptr_eq(&self.built, &other.built)
    }
}

/// A frame and whether it carries.
#[derive(Clone, Debug)]
pub struct Strong {
    /// The project it belongs to.
    pub id: Option<String>,
    /// The frame.
    pub good: Good,
    /// Its checks.
    pub strength: Arc<Strength>,
}

/// The same answer, not one that looks alike.
impl PartialEq for Strong {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.strength, &other.strength)
    }
}

/// A frame and whether it fits together.
#[derive(Clone, Debug)]
pub struct Fitted {
    /// The frame.
    pub good: Good,
    /// Its solids and what they show.
    pub fit: Arc<Fit>,
}

/// The same answer, not one that looks alike.
impl PartialEq for Fitted {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.fit, &other.fit)
    }
}

/// The open project and all that follows from it. Copy it freely; every change goes through `edit`.
///
/// One reference, since every closure of every page holds one.
#[derive(Clone, Copy)]
pub struct Store(&'static Parts);

struct Parts {
    project: RwSignal<Arc<Project>>,
    /// The project again: each of its readers reads one of them, for to leave a crowd of readers takes the time to look
    /// through it, and on an edit all of them leave and come back.
    doors: Vec<Memo<Arc<Project>>>,
    next_door: AtomicUsize,
    /// Those of the project: nearly all edits leave them, and half of the page reads them.
    units: RwSignal<UnitSystem>,
    id: RwSignal<Option<String>>,
    history: StoredValue<History>,
    depth: RwSignal<(usize, usize)>,
    edits: RwSignal<u64>,
    before: RwSignal<Option<Figures>>,
    design: Memo<Arc<Design>>,
    /// Those of the design: every field reads them, and most edits leave them as they are.
    problems: RwSignal<Vec<Problem>>,
    good: Memo<(Option<String>, Option<Good>)>,
    drawn: RwSignal<Option<Good>>,
    strong: RwSignal<Option<Strong>>,
    owner: Owner,
    fitted: OnceLock<RwSignal<Option<Fitted>>>,
    is_held: StoredValue<bool>,
}

/// How many ways there are to the project.
const N_DOORS: usize = 16;
/// A hand that stays this long where it is rests.
const REST: Duration = Duration::from_millis(150);
/// Edits that stay away this long pause.
const PAUSE: Duration = Duration::from_millis(900);

/// The store of the app.
#[must_use]
pub fn use_store() -> Store {
    expect_context::<Store>()
}

impl Default for Store {
    fn default() -> Self {
        Self::new()
    }
}

impl Store {
    /// A store without an open project.
    #[must_use]
    pub fn new() -> Self {
        let project = RwSignal::new(Arc::new(demo::empty(UnitSystem::Imperial)));
        let id = RwSignal::new(None::<String>);
        let design = laid_out(project, id);
        let good = Memo::new(move |last: Option<&(Option<String>, Option<Good>)>| {
            let id = id.get();
            let built = design.get().built.clone();
            let good = match built {
                Some(built) => Some(Good { project: project.get(), built }),
                // Another project's frame must not stand in for this one's.
                None => last.filter(|(last_id, _)| *last_id == id).and_then(|(_, good)| good.clone()),
            };
            (id, good)
        });
        let drawn = drawn_after(good);
        let is_held = StoredValue::new(false);
        let strong = judged_with(rested(drawn, is_held), id);
        // It lives as long as the page.
        let doors = (0..N_DOORS).map(|_| Memo::new_with_compare(move |_| project.get(), |_, _| true));
        Self(Box::leak(Box::new(Parts {
            project,
            doors: doors.collect(),
            next_door: AtomicUsize::new(0),
            units: RwSignal::new(UnitSystem::Imperial),
            id,
            history: StoredValue::new(History::default()),
            depth: RwSignal::new((0, 0)),
            edits: RwSignal::new(0),
            before: RwSignal::new(None),
            design,
            problems: problems_of(design),
            good,
            drawn,
            strong,
            owner: Owner::current().unwrap_or_default(),
            fitted: OnceLock::new(),
            is_held,
        })))
    }

    /// The project as it is now (tracked).
    #[must_use]
    pub fn project(self) -> Arc<Project> {
        let door = self.0.next_door.fetch_add(1, Ordering::Relaxed) % N_DOORS;
        self.0.doors.get(door).map_or_else(|| self.0.project.get(), |door| door.get())
    }

    /// The project as it is now, without following it.
    #[must_use]
    pub fn project_untracked(self) -> Arc<Project> {
        self.0.project.get_untracked()
    }

    /// A part of the project that tells its readers only when it changes itself.
    pub fn slice<T: PartialEq + Send + Sync + 'static>(
        self,
        part: impl Fn(&Project) -> T + Send + Sync + 'static,
    ) -> Cached<T> {
        let project = self.0.project;
        Cached::new(move || project.with(|project| part(project)))
    }

    /// How lengths are shown (tracked).
    #[must_use]
    pub fn units(self) -> UnitSystem {
        self.0.units.get()
    }

    /// Everything known of the project as it is now, its problems included (tracked).
    #[must_use]
    pub fn design(self) -> Arc<Design> {
        self.0.design.get()
    }

    /// All problems (tracked).
    #[must_use]
    pub fn problems(self) -> Vec<Problem> {
        self.0.problems.get()
    }

    /// The problems of one field, and of the fields under it (tracked).
    #[must_use]
    pub fn problems_of(self, field: &str) -> Vec<Problem> {
        self.0.problems.with(|all| all.iter().filter(|problem| problem.is_of(field)).cloned().collect())
    }

    /// The last frame that could be built and its project (tracked). Drawings and lists show this pair,
    /// so that they stay whole while a problem stops the new one.
    #[must_use]
    pub fn good(self) -> Option<Good> {
        self.0.good.with(|(_, good)| good.clone())
    }

    /// The pair that drawings show (tracked): it follows [`Self::good`] one painted picture later, so that the
    /// figures answer an edit at once.
    #[must_use]
    pub fn drawn(self) -> Option<Good> {
        self.0.drawn.get()
    }

    /// Whether the drawn frame carries (tracked).
    #[must_use]
    pub fn strong(self) -> Option<Strong> {
        self.0.strong.get()
    }

    /// Whether the drawn frame fits together (tracked); the answer to an edit comes once the edits pause. Nothing of it is
    /// worked out before the first one asks.
    #[must_use]
    pub fn fitted(self) -> Option<Fitted> {
        let drawn = self.0.drawn;
        let follow = || untrack(|| self.0.owner.with(|| fitted_after(drawn)));
        self.0.fitted.get_or_init(follow).get()
    }

    /// Of a field's problem, what is shown with the field: where the solids tell it more exactly, that they do (tracked).
    #[must_use]
    pub fn beside_the_solids(self, problem: &Problem) -> Problem {
        let is_told = Fit::may_tell(problem) && self.fitted().is_some_and(|fitted| fitted.fit.tells(problem));
        let says = "Joints are in each other’s way: the list above has the places.".to_owned();
        if is_told { Problem { says, ..problem.clone() } } else { problem.clone() }
    }

    /// The last frame that could be built (tracked).
    #[must_use]
    pub fn built(self) -> Option<Arc<Built>> {
        self.0.good.with(|(_, good)| good.as_ref().map(|good| good.built.clone()))
    }

    /// A problem stops the frame: what is shown is the last good one (tracked).
    #[must_use]
    pub fn is_stale(self) -> bool {
        self.0.design.with(|design| design.built.is_none())
    }

    /// The figures of the last good frame (tracked).
    #[must_use]
    pub fn figures(self) -> Option<Figures> {
        self.0.good.with(|(_, good)| good.as_ref().map(|good| Figures::of(&good.built)))
    }

    /// What they were before the last step (tracked).
    #[must_use]
    pub fn figures_before(self) -> Option<Figures> {
        self.0.before.get()
    }

    /// Changes the project: one undo step, none where nothing changes.
    pub fn edit(self, change: impl FnOnce(&mut Project)) {
        self.apply_once(None, change);
    }

    /// Changes one field; edits of the same field in one breath are one undo step.
    pub fn edit_field(self, path: &str, change: impl FnOnce(&mut Project)) {
        self.apply_once(Some(path), change);
    }

    /// Something is taken hold of: its edits are one step until it is let go.
    pub fn hold(self) {
        self.0.is_held.set_value(true);
        self.0.history.update_value(History::hold);
    }

    /// It is let go.
    pub fn let_go(self) {
        self.0.is_held.set_value(false);
        let present = self.0.project.get_untracked();
        self.0.history.update_value(|history| history.let_go(&present));
        self.0.depth.set(self.0.history.with_value(History::depth));
    }

    /// Changes what is marked, cut or received: one undo step.
    pub fn tick(self, change: impl FnOnce(&mut Progress)) {
        self.apply_once(None, |project| change(&mut project.progress));
    }

    /// All changes share the one [`Self::apply`].
    fn apply_once(self, field: Option<&str>, change: impl FnOnce(&mut Project)) {
        let mut change = Some(change);
        self.apply(field, &mut |project| {
            if let Some(change) = change.take() {
                change(project);
            }
        });
    }

    #[inline(never)]
    fn apply(self, field: Option<&str>, change: &mut dyn FnMut(&mut Project)) {
        let present = self.0.project.get_untracked();
        let mut next = (*present).clone();
        change(&mut next);
        if next == *present {
            return;
        }
        let now = js_sys::Date::now();
        if self.0.history.try_update_value(|history| history.push(present, field, now)) == Some(true) {
            self.remember_figures();
        }
        self.show(Arc::new(next));
    }

    /// One step back.
    pub fn undo(self) {
        self.walk(History::back);
    }

    /// One step forth again.
    pub fn redo(self) {
        self.walk(History::forth);
    }

    fn walk(self, step: impl FnOnce(&mut History, Arc<Project>) -> Option<Arc<Project>>) {
        let present = self.0.project.get_untracked();
        let units = present.units;
        let Some(Some(mut state)) = self.0.history.try_update_value(|history| step(history, present)) else { return };
        // The units are no step: they stay as they are shown now.
        if state.units != units {
            Arc::make_mut(&mut state).units = units;
        }
        self.remember_figures();
        self.show(state);
    }

    fn remember_figures(self) {
        let figures = self.0.good.with_untracked(|(_, good)| good.as_ref().map(|good| Figures::of(&good.built)));
        self.0.before.set(figures);
    }

    fn put(self, project: Arc<Project>) {
        let units = project.units;
        self.0.project.set(project);
        if self.0.units.get_untracked() != units {
            self.0.units.set(units);
        }
    }

    fn show(self, project: Arc<Project>) {
        self.put(project);
        self.0.depth.set(self.0.history.with_value(History::depth));
        self.0.edits.update(|edits| *edits += 1);
    }

    /// There is a step to go back (tracked).
    #[must_use]
    pub fn can_undo(self) -> bool {
        self.0.depth.get().0 > 0
    }

    /// There is a step to go forth (tracked).
    #[must_use]
    pub fn can_redo(self) -> bool {
        self.0.depth.get().1 > 0
    }

    /// Shows lengths in those units: no step, for nothing of the frame changes.
    pub fn set_units(self, units: UnitSystem) {
        let present = self.0.project.get_untracked();
        if present.units != units {
            let mut next = (*present).clone();
            next.units = units;
            self.show(Arc::new(next));
        }
    }

    /// Opens a project: the way back begins anew.
    pub fn open(self, id: &str, project: Project) {
        self.0.history.set_value(History::default());
        self.0.depth.set((0, 0));
        self.0.before.set(None);
        self.0.id.set(Some(id.to_owned()));
        self.put(Arc::new(project));
    }

    /// Closes the open project.
    pub fn close(self) {
        self.0.id.set(None);
    }

    /// Keeps the open project, and its way back, under another id.
    pub fn rename_record(self, id: &str) {
        self.0.id.set(Some(id.to_owned()));
    }

    /// Id of the open project's record (tracked).
    #[must_use]
    pub fn id(self) -> Option<String> {
        self.0.id.get()
    }

    /// Counts the changes since the start; saving follows it (tracked).
    #[must_use]
    pub fn edits(self) -> u64 {
        self.0.edits.get()
    }
}

/// The design of the project; an empty one while none is open or what lays it out is not here.
fn laid_out(project: RwSignal<Arc<Project>>, id: RwSignal<Option<String>>) -> Memo<Arc<Design>> {
    let design = move |_: Option<&_>| {
        let lay_out = if id.with(Option::is_some) { LAYOUT.get() } else { None };
        Arc::new(lay_out.map_or_else(Design::default, |lay_out| project.with(|project| lay_out(project))))
    };
    // Another project always has another design; nothing is gained by comparing the two.
    Memo::new_with_compare(design, |_, _| true)
}

/// Its problems, told anew only where they are others.
fn problems_of(design: Memo<Arc<Design>>) -> RwSignal<Vec<Problem>> {
    let problems = RwSignal::new(Vec::new());
    dom::follow(Box::new(move || {
        design.with(|design| {
            if problems.with_untracked(|known| *known != design.problems) {
                problems.set(design.problems.clone());
            }
        });
    }));
    problems
}

/// The good pair, after the picture of what it changes at once.
fn drawn_after(good: Memo<(Option<String>, Option<Good>)>) -> RwSignal<Option<Good>> {
    let follow = move || good.with(|(id, _)| id.clone());
    after_paint(follow, move || good.with_untracked(|(_, good)| good.clone()))
}

/// The drawn frame at once; while something is held and moves, only once the hand rests, so that the drawing keeps up
/// with it.
fn rested(drawn: RwSignal<Option<Good>>, is_held: StoredValue<bool>) -> RwSignal<Option<Good>> {
    let pause = move || {
        drawn.track();
        if is_held.get_value() { REST } else { Duration::ZERO }
    };
    after_pause(pause, move || drawn.get_untracked())
}

/// The drawn frame judged, before its picture: the two are painted at once, for to paint the page twice takes longer than
/// to judge.
fn judged_with(drawn: RwSignal<Option<Good>>, id: RwSignal<Option<String>>) -> RwSignal<Option<Strong>> {
    let strong = RwSignal::new(None);
    dom::follow(Box::new(move || {
        let (good, id) = (drawn.get(), id.get_untracked());
        // Where no project is open, nobody looks.
        let judge = if id.is_some() { CHECKS.get() } else { None };
        drop_after_paint(strong.get_untracked());
        strong.set(good.zip(judge).map(|(good, judge)| {
            let strength = Arc::new(judge(&good.project, &good.built.shape));
            Strong { id, good, strength }
        }));
    }));
    strong
}

/// Whether the drawn frame fits together: made when the edits pause, for the solids cost more than all else.
fn fitted_after(drawn: RwSignal<Option<Good>>) -> RwSignal<Option<Fitted>> {
    let make = move || {
        let (good, fits) = (drawn.get_untracked()?, SOLIDS.held()?);
        let fit = Arc::new(fits(&good.project, &good.built.shape));
        Some(Fitted { good, fit })
    };
    let pause = move || {
        drawn.track();
        let _ = SOLIDS.get();
        PAUSE
    };
    after_pause(pause, make)
}
