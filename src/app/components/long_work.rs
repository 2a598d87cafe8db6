//! Work that takes longer than a picture, in slices: begun by a button, with how far it has come and a way to stop it; gone
//! as soon as what it is about changes.
use crate::app::cached::Cached;
use crate::app::dom::{Tag, button, follow, parts, tag};
use crate::project::Project;
use crate::study::Progress;
use leptos::prelude::*;
use std::time::Duration;

/// Does one slice and says how far the work has come.
pub type Slices = Box<dyn FnMut() -> Progress>;

/// One kind of long work.
pub struct Work {
    /// What its button says.
    pub start: &'static str,
    /// What it is about: whatever changes here ends it.
    pub about: Cached<Option<Project>>,
    /// The slices for a project; nothing where there is nothing to work on.
    pub begin: Box<dyn Fn(Project) -> Option<Slices>>,
    /// Takes away what it has found.
    pub forget: Box<dyn Fn()>,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum State {
    Idle,
    Running,
    Stopped,
    Done,
}

#[derive(Clone, Copy)]
struct Run {
    state: RwSignal<State>,
    progress: RwSignal<Progress>,
    slices: StoredValue<Option<Slices>, LocalStorage>,
    /// Which run it is: a slice that waits for an earlier one does nothing.
    round: StoredValue<u32>,
}

/// The button, then the progress with its way to stop.
pub fn long_work(work: Work) -> Tag {
    worked(work, None)
}

/// The same, begun as soon as it is shown, with words for what is being done; the button begins it anew where it was stopped.
pub fn work_at_once(work: Work, doing: &'static str) -> Tag {
    worked(work, Some(doing))
}

fn worked(work: Work, doing: Option<&'static str>) -> Tag {
    let run = Run {
        state: RwSignal::new(State::Idle),
        progress: RwSignal::new(Progress { done: 0, of: 0 }),
        slices: StoredValue::new_local(None),
        round: StoredValue::new(0),
    };
    let Work { start, about, begin, forget } = work;
    let work = StoredValue::new_local((begin, forget));
    let clear = move || {
        run.end(State::Idle);
        work.with_value(|(_, forget)| forget());
    };
    let mut is_first = true;
    follow(Box::new(move || {
        // Read, not only tracked: a memo that was never worked out would tell of a change when the work first asks for it.
        about.with(|_| ());
        if !std::mem::take(&mut is_first) {
            untrack(clear);
        }
    }));
    let press = move || {
        clear();
        let round = run.round.get_value();
        run.state.set(State::Running);
        run.progress.set(Progress { done: 0, of: 0 });
        // The first slice makes ready: the button answers before.
        soon(move || {
            if run.is_going(round) {
                let slices = about.get_untracked().and_then(|project| work.with_value(|(begin, _)| begin(project)));
                run.slices.set_value(slices);
                run.slice(round);
            }
        });
    };
    if doing.is_some() {
        press();
    }
    let is_running = move || run.state.get() == State::Running;
    // What began by itself is not begun again for nothing.
    let is_offered = move || !is_running() && (doing.is_none() || run.state.get() != State::Done);
    tag("div")
        .class("long-work")
        .shown(is_offered, move || button("button", move |_| press()).child(start))
        .shown(is_running, move || running(run, doing))
        .child(tag("p").class("long-work__said").attr("role", "status").live_text(move || said(run, doing)))
}

fn running(run: Run, doing: Option<&'static str>) -> Tag {
    let count = move || {
        let Progress { done, of } = run.progress.get();
        if of == 0 { "making ready".to_owned() } else { format!("{done} of {of}") }
    };
    let bar = tag("progress")
        .class("long-work__bar")
        .attr("aria-label", "How far the work has come")
        .live_attr("max", move || run.progress.get().of.max(1).to_string())
        .live_attr("value", move || run.progress.get().done.to_string());
    let row = tag("div")
        .class("long-work__row")
        .child(bar)
        .child(tag("span").class("long-work__count").live_text(count))
        .child(button("button", move |_| run.end(State::Stopped)).child("Stop"));
    parts().child(doing.map(|doing| tag("p").class("long-work__said").child(doing))).child(row)
}

fn said(run: Run, doing: Option<&'static str>) -> String {
    let Progress { done, of } = run.progress.get();
    match run.state.get() {
        State::Idle | State::Running => String::new(),
        State::Stopped => format!("Stopped after {done} of {of}."),
        // What was found stands there, and not every change had to be tried for it.
        State::Done if doing.is_some() => "Looked through.".to_owned(),
        State::Done => format!("All {of} looked at."),
    }
}

fn soon(act: impl FnOnce() + 'static) {
    set_timeout(act, Duration::ZERO);
}

impl Run {
    fn end(self, state: State) {
        self.round.update_value(|round| *round += 1);
        self.slices.set_value(None);
        self.state.set(state);
    }

    /// The page may be gone by now, and all of this with it.
    fn is_going(self, round: u32) -> bool {
        self.round.try_get_value() == Some(round) && self.state.try_get_untracked() == Some(State::Running)
    }

    fn slice(self, round: u32) {
        if !self.is_going(round) {
            return;
        }
        let progress = self.slices.try_update_value(|slices| slices.as_mut().map(|step| step())).flatten();
        let progress = progress.unwrap_or(Progress { done: 0, of: 0 });
        self.progress.set(progress);
        if progress.is_done() {
            self.end(State::Done);
        } else {
            // A picture may come between two slices.
            soon(move || self.slice(round));
        }
    }
}
