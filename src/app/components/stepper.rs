//! − and + beside a field; held down they go on.
use crate::app::dom::{Tag, button};
use crate::app::use_store;
use crate::units::{Length, UnitSystem};
use leptos::leptos_dom::helpers::{IntervalHandle, TimeoutHandle};
use leptos::prelude::*;
use std::time::Duration;

/// Held this long, a button begins to repeat.
const HOLD: Duration = Duration::from_millis(450);
/// Then it repeats this often.
const REPEAT: Duration = Duration::from_millis(130);

/// One step of a field, in each system: inches, or degrees, or pieces; and millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Steps {
    /// Step when inches are shown.
    pub imperial: f64,
    /// Step when millimetres are shown.
    pub metric: f64,
}

impl Steps {
    /// Steps of that many inches, or millimetres.
    #[must_use]
    pub const fn of(inches: f64, millimetres: f64) -> Self {
        Self { imperial: inches, metric: millimetres }
    }

    /// The same step in both systems.
    #[must_use]
    pub const fn both(step: f64) -> Self {
        Self { imperial: step, metric: step }
    }

    /// The step of that system.
    #[must_use]
    pub const fn in_system(self, units: UnitSystem) -> f64 {
        match units {
            UnitSystem::Imperial => self.imperial,
            UnitSystem::Metric => self.metric,
        }
    }

    /// The step in words, for a screen reader.
    #[must_use]
    pub fn name(self, units: UnitSystem, is_length: bool) -> String {
        let step = self.in_system(units);
        match (is_length, units) {
            (false, _) => step.to_string(),
            (true, UnitSystem::Imperial) => crate::wording::length(Length::inches(step), units),
            (true, UnitSystem::Metric) => format!("{step} mm"),
        }
    }
}

/// The next multiple of the step above or below the value.
#[must_use]
pub fn next_multiple(value: f64, step: f64) -> f64 {
    let size = step.abs();
    if size <= 0.0 {
        return value;
    }
    let steps = value / size;
    // A value that is a multiple but for rounding counts as one.
    let near = 1e-6;
    if step > 0.0 { ((steps + near).floor() + 1.0) * size } else { ((steps - near).ceil() - 1.0) * size }
}

/// One of the two buttons.
pub fn step_button(sign: &'static str, label: Signal<String>, step: Callback<()>) -> Tag {
    let wait = StoredValue::new(None::<TimeoutHandle>);
    let repeat = StoredValue::new(None::<IntervalHandle>);
    let repeated = StoredValue::new(false);
    let stop = move || {
        if let Some(Some(handle)) = wait.try_update_value(Option::take) {
            handle.clear();
        }
        if let Some(Some(handle)) = repeat.try_update_value(Option::take) {
            handle.clear();
        }
    };
    let again = move || {
        repeated.set_value(true);
        step.run(());
        repeat.set_value(set_interval_with_handle(move || step.run(()), REPEAT).ok());
    };
    let hold = move |_| {
        stop();
        repeated.set_value(false);
        wait.set_value(set_timeout_with_handle(again, HOLD).ok());
    };
    on_cleanup(stop);
    // The click comes after the finger is lifted: it counts only when holding has not counted already.
    let click = move |_| {
        if !repeated.try_update_value(std::mem::take).unwrap_or(false) {
            step.run(());
        }
    };
    button("step", click)
        .attr("aria-label", label)
        .on("pointerdown", hold)
        .on("pointerup", move |_| stop())
        .on("pointerleave", move |_| stop())
        .on("pointercancel", move |_| stop())
        .on("contextmenu", move |event| event.prevent_default())
        .child(sign)
}

/// Both buttons' action over a field: steps in the system shown.
pub fn stepper_actions(entry: super::Entry, steps: Steps) -> (Callback<()>, Callback<()>) {
    let store = use_store();
    let action = move |sign: f64| {
        let entry = entry.clone();
        Callback::new(move |()| {
            let step = steps.in_system(store.project_untracked().units) * sign;
            store.edit_field(&entry.path, |project| (entry.step)(project, step));
        })
    };
    (action(-1.0), action(1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_land_on_multiples() {
        assert_eq!(next_multiple(24.0, 1.0), 25.0);
        assert_eq!(next_multiple(24.3, 1.0), 25.0);
        assert_eq!(next_multiple(24.3, -1.0), 24.0);
        assert_eq!(next_multiple(24.0, -1.0), 23.0);
        assert_eq!(next_multiple(0.1 + 0.2, 0.1), 0.4);
        assert_eq!(next_multiple(-60.0, 20.0), -40.0);
        assert_eq!(next_multiple(5.0, 0.0), 5.0);
    }
}
