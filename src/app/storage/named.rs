//! States of a project kept under names of the user's, beside its record and apart from it: the project's file stays one
//! project.
use super::kept::{Kept, list, object, text, words};
use super::{LocalStorage, Trouble, is_id, read, write, write_json};
use crate::app::figures::Sums;
use gloo_storage::Storage;
use serde_json::Value;

/// Most states kept of one project: each is a whole project file.
pub const MOST: usize = 20;

const GONE: &str = "outshot-named-gone";

/// One state with its name.
#[derive(Clone, Debug, PartialEq)]
pub struct Named {
    /// What the user calls it.
    pub name: String,
    /// When it was kept, in milliseconds since 1970; no two of one project are alike.
    pub kept: f64,
    /// The project file.
    pub text: String,
    /// What it came to when it was kept; nothing where it could not be built.
    pub sums: Option<Sums>,
}

/// The state that was taken off last, whole, and whose it was.
struct Gone {
    id: String,
    state: Named,
}

fn key(id: &str) -> String {
    format!("outshot-named-{id}")
}

/// The states of that project, latest first.
#[must_use]
pub fn named(id: &str) -> Vec<Named> {
    read(&key(id)).unwrap_or_default()
}

/// Keeps a state.
///
/// # Errors
/// Why it was not kept; those before stay.
pub fn keep(id: &str, state: Named) -> Result<(), Trouble> {
    let mut all = named(id);
    has_room(&all)?;
    all.insert(0, state);
    put(id, &all)
}

fn has_room(all: &[Named]) -> Result<(), Trouble> {
    if all.len() < MOST {
        return Ok(());
    }
    Err(Trouble::Other(format!("{MOST} states are kept of this project, and that is the most")))
}

/// Gives a state another name.
///
/// # Errors
/// Why it was not written; the old name stays.
pub fn rename(id: &str, kept: f64, name: &str) -> Result<(), Trouble> {
    let mut all = named(id);
    if let Some(state) = all.iter_mut().find(|state| state.kept == kept) {
        name.clone_into(&mut state.name);
    }
    put(id, &all)
}

/// Takes a state off the list; the last one taken off can be brought back.
///
/// # Errors
/// Why it could not be put away; then it stays.
pub fn take_off(id: &str, kept: f64) -> Result<(), Trouble> {
    let before = named(id);
    let Some(state) = before.iter().find(|state| state.kept == kept).cloned() else { return Ok(()) };
    let rest: Vec<Named> = before.iter().filter(|state| state.kept != kept).cloned().collect();
    // First the room it took, for a full device has no other for it.
    put(id, &rest)?;
    write(GONE, &Gone { id: id.to_owned(), state }).or_else(|trouble| put(id, &before).and(Err(trouble)))
}

/// Name of the state of that project that was taken off last.
#[must_use]
pub fn gone(id: &str) -> Option<String> {
    read::<Gone>(GONE).filter(|gone| gone.id == id).map(|gone| gone.state.name)
}

/// Brings it back to where it was.
///
/// # Errors
/// Why it could not be written.
pub fn bring_back(id: &str) -> Result<(), Trouble> {
    let Some(gone) = read::<Gone>(GONE).filter(|gone| gone.id == id) else { return Ok(()) };
    let mut all = named(id);
    has_room(&all)?;
    all.push(gone.state);
    crate::units::sort_by_number(&mut all, |state| -state.kept);
    put(id, &all)?;
    LocalStorage::delete(GONE);
    Ok(())
}

/// Forgets all states of a project that is gone for good.
pub fn forget(id: &str) {
    LocalStorage::delete(key(id));
}

/// Writes the list and reads it back.
fn put(id: &str, all: &[Named]) -> Result<(), Trouble> {
    if !is_id(id) {
        return Err(Trouble::NotKept);
    }
    write_json(&key(id), &list(all))?;
    if named(id).iter().map(|state| state.kept).eq(all.iter().map(|state| state.kept)) {
        Ok(())
    } else {
        Err(Trouble::NotKept)
    }
}

impl Kept for Named {
    fn to_json(&self) -> Value {
        let mut json = object([("name", words(&self.name)), ("kept", self.kept.into()), ("text", words(&self.text))]);
        if let Some(sums) = &self.sums {
            json["sticks"] = sums.n_sticks.into();
            json["weight_lb"] = sums.weight_lb.into();
            json["price"] = sums.price.into();
            json["worst"] = words(&sums.worst);
        }
        json
    }

    fn of_json(json: &Value) -> Option<Self> {
        let number = |key: &str| json.get(key)?.as_f64();
        let sums = || {
            let n_sticks = usize::try_from(json.get("sticks")?.as_u64()?).ok()?;
            let (weight_lb, price) = (number("weight_lb")?, number("price")?);
            Some(Sums { n_sticks, weight_lb, price, worst: text(json, "worst")? })
        };
        Some(Self { name: text(json, "name")?, kept: number("kept")?, text: text(json, "text")?, sums: sums() })
    }
}

impl Kept for Vec<Named> {
    fn to_json(&self) -> Value {
        list(self)
    }

    /// A state that does not fit is left out; the others are shown.
    fn of_json(json: &Value) -> Option<Self> {
        Some(json.as_array()?.iter().filter_map(Named::of_json).collect())
    }
}

impl Kept for Gone {
    fn to_json(&self) -> Value {
        object([("id", words(&self.id)), ("state", self.state.to_json())])
    }

    fn of_json(json: &Value) -> Option<Self> {
        Some(Self { id: text(json, "id")?, state: Named::of_json(json.get("state")?)? })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn state(sums: Option<Sums>) -> Named {
        Named { name: "as \"ordered\"".to_owned(), kept: 5.5, text: "{}".to_owned(), sums }
    }

    #[test]
    fn what_is_kept_comes_back() {
        let sums = Sums { n_sticks: 7, weight_lb: 1.5, price: 2.0, worst: "R7 bends 84 %".to_owned() };
        let all = vec![state(Some(sums)), state(None)];
        assert_eq!(Vec::<Named>::of_json(&all.to_json()), Some(all.clone()));
        let gone = Gone { id: "a-1".to_owned(), state: all[0].clone() };
        let back = Gone::of_json(&gone.to_json());
        assert!(back.is_some_and(|back| back.id == "a-1" && back.state == all[0]));
    }

    #[test]
    fn one_that_is_damaged_leaves_the_others() {
        let json: Value = r#"[{"name":"a","kept":1,"text":"x"},{"name":7},null]"#.parse().unwrap_or_default();
        let all = Vec::<Named>::of_json(&json).unwrap_or_default();
        assert_eq!(all.len(), 1);
        assert_eq!(all[0].sums, None);
        assert_eq!(Vec::<Named>::of_json(&Value::Null), None);
    }
}
