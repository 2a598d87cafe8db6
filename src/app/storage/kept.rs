//! How records are written on this device. By hand: derived code for four small kinds was several kilobytes to fetch.
use super::{Entry, Record, Removed, Settings};
use serde_json::{Map, Value};

/// Something that is kept on this device as JSON.
pub trait Kept: Sized {
    /// As JSON.
    fn to_json(&self) -> Value;
    /// Out of JSON; nothing where it does not fit.
    fn of_json(json: &Value) -> Option<Self>;
}

pub(super) fn object<const N: usize>(fields: [(&str, Value); N]) -> Value {
    let mut map = Map::new();
    for (key, value) in fields {
        map.insert(key.to_owned(), value);
    }
    Value::Object(map)
}

pub(super) fn text(json: &Value, key: &str) -> Option<String> {
    json.get(key)?.as_str().map(str::to_owned)
}

pub(super) fn words(text: &str) -> Value {
    Value::String(text.to_owned())
}

pub(super) fn list<T: Kept>(all: &[T]) -> Value {
    Value::Array(all.iter().map(Kept::to_json).collect())
}

impl Kept for Record {
    fn to_json(&self) -> Value {
        object([("revision", self.revision.into()), ("saved", self.saved.into()), ("text", words(&self.text))])
    }

    fn of_json(json: &Value) -> Option<Self> {
        let revision = json.get("revision")?.as_u64()?;
        Some(Self { revision, saved: json.get("saved")?.as_f64()?, text: text(json, "text")? })
    }
}

impl Kept for Entry {
    fn to_json(&self) -> Value {
        object([("id", words(&self.id)), ("name", words(&self.name)), ("saved", self.saved.into())])
    }

    fn of_json(json: &Value) -> Option<Self> {
        Some(Self { id: text(json, "id")?, name: text(json, "name")?, saved: json.get("saved")?.as_f64()? })
    }
}

impl Kept for Vec<Entry> {
    fn to_json(&self) -> Value {
        list(self)
    }

    /// One line that does not fit spoils the list: it is then made again from the records.
    fn of_json(json: &Value) -> Option<Self> {
        json.as_array()?.iter().map(Entry::of_json).collect()
    }
}

impl Kept for Settings {
    fn to_json(&self) -> Value {
        let last = self.last.as_deref().map_or(Value::Null, words);
        object([("last", last), ("theme", words(&self.theme))])
    }

    /// What is missing is as at first.
    fn of_json(json: &Value) -> Option<Self> {
        json.as_object()?;
        Some(Self { theme: text(json, "theme").unwrap_or_default(), last: text(json, "last") })
    }
}

impl Kept for Removed {
    fn to_json(&self) -> Value {
        object([("entry", self.entry.to_json()), ("record", self.record.to_json())])
    }

    fn of_json(json: &Value) -> Option<Self> {
        Some(Self { entry: Entry::of_json(json.get("entry")?)?, record: Record::of_json(json.get("record")?)? })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check<T: Kept + PartialEq + std::fmt::Debug>(kept: &T, expected: &str) {
        assert_eq!(kept.to_json().to_string(), expected);
        assert_eq!(T::of_json(&kept.to_json()).as_ref(), Some(kept));
    }

    #[test]
    fn what_is_kept_comes_back() {
        let record = Record { revision: 3, saved: 1.5, text: "{}".to_owned() };
        let entry = Entry { id: "a-1".to_owned(), name: "Barn \"1\"".to_owned(), saved: 2.0 };
        check(&record, r#"{"revision":3,"saved":1.5,"text":"{}"}"#);
        check(&vec![entry.clone()], r#"[{"id":"a-1","name":"Barn \"1\"","saved":2.0}]"#);
        check(
            &Removed { entry, record },
            r#"{"entry":{"id":"a-1","name":"Barn \"1\"","saved":2.0},"record":{"revision":3,"saved":1.5,"text":"{}"}}"#,
        );
        check(&Settings { theme: "sun".to_owned(), last: None }, r#"{"last":null,"theme":"sun"}"#);
    }

    #[test]
    fn damage_is_seen() {
        let json: Value = r#"[{"id":"a","name":7,"saved":1}]"#.parse().unwrap_or_default();
        assert_eq!(Vec::<Entry>::of_json(&json), None);
        assert_eq!(Settings::of_json(&Value::Object(Map::new())), Some(Settings::default()));
        assert_eq!(Record::of_json(&Value::Null), None);
    }
}
