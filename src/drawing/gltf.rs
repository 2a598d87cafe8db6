//! The frame as a binary glTF file, for any program that shows solids.
//!
//! glTF 2.0 (Khronos Group, also ISO/IEC 12113:2022): metres, Y up, the front looks along +Z. The frame's x, z and y become
//! X, Y and Z; seen from outside right stays right. That exchange turns every ring round, so triangles are written the
//! other way about to run counter-clockwise from outside, as the standard asks. One node and mesh a stick, named by its
//! mark, at its zero; a primitive each for planed faces, end grain and what a joint cut.
use std::fmt::Write;

use crate::joinery::StickBody;
use crate::solid::{Patch, Skin, Vector};
use crate::units::Length;

/// Name and colour (linear red, green, blue) of each material.
const MATERIALS: [(&str, [f64; 3]); 3] =
    [("planed wood", [0.76, 0.60, 0.38]), ("end grain", [0.58, 0.41, 0.21]), ("cut by a joint", [0.86, 0.74, 0.54])];

/// Component and target codes of the standard.
const FLOAT: u32 = 5126;
const UNSIGNED_INT: u32 = 5125;
const VERTICES: u32 = 34962;
const INDICES: u32 = 34963;

/// Everything of the file that grows with each stick.
#[derive(Default)]
struct Parts {
    bytes: Vec<u8>,
    /// Each a list of JSON objects, as written.
    views: Vec<String>,
    accessors: Vec<String>,
    meshes: Vec<String>,
    nodes: Vec<String>,
}

/// The sticks as a `.glb` file.
#[must_use]
pub fn glb(name: &str, sticks: &[StickBody]) -> Vec<u8> {
    let mut parts = Parts::default();
    for stick in sticks {
        parts.add(stick);
    }
    let name = quoted(name);
    let mut text = "{\"asset\":{\"version\":\"2.0\",\"generator\":\"Outshot\"},\"scene\":0,".to_owned();
    // The standard has no empty lists.
    if parts.nodes.is_empty() {
        let _ = write!(text, "\"scenes\":[{{\"name\":{name}}}]}}");
        return file(text, parts.bytes);
    }
    let nodes: Vec<String> = (0..parts.nodes.len()).map(|node| node.to_string()).collect();
    let _ = write!(text, "\"scenes\":[{{\"name\":{name},\"nodes\":[{}]}}]", nodes.join(","));
    let materials = MATERIALS.map(|(name, colour)| {
        format!(
            "{{\"name\":\"{name}\",\"pbrMetallicRoughness\":{{\"baseColorFactor\":[{},1],\
             \"metallicFactor\":0,\"roughnessFactor\":0.9}}}}",
            numbers(colour)
        )
    });
    for (key, list) in [
        ("nodes", &parts.nodes[..]),
        ("meshes", &parts.meshes),
        ("materials", &materials),
        ("accessors", &parts.accessors),
        ("bufferViews", &parts.views),
    ] {
        let _ = write!(text, ",\"{key}\":[{}]", list.join(","));
    }
    let _ = write!(text, ",\"buffers\":[{{\"byteLength\":{}}}]}}", parts.bytes.len());
    file(text, parts.bytes)
}

/// A name as JSON has it; what cannot stand in a string is left out.
fn quoted(name: &str) -> String {
    let mut text = "\"".to_owned();
    for letter in name.chars().filter(|letter| !letter.is_control()) {
        if matches!(letter, '"' | '\\') {
            text.push('\\');
        }
        text.push(letter);
    }
    text.push('"');
    text
}

/// Three numbers with commas between; every one of them finite.
fn numbers([x, y, z]: [f64; 3]) -> String {
    format!("{x},{y},{z}")
}

/// Header and chunks: all numbers little-endian, each chunk filled up to four bytes.
fn file(text: String, mut bytes: Vec<u8>) -> Vec<u8> {
    let mut text = text.into_bytes();
    text.resize(text.len().next_multiple_of(4), b' ');
    bytes.resize(bytes.len().next_multiple_of(4), 0);
    let mut chunks = vec![(b"JSON", text)];
    if !bytes.is_empty() {
        chunks.push((b"BIN\0", bytes));
    }
    let whole = 12 + chunks.iter().map(|(_, chunk)| 8 + chunk.len()).sum::<usize>();
    let mut file = Vec::with_capacity(whole);
    file.extend(b"glTF");
    file.extend(2_u32.to_le_bytes());
    file.extend((whole as u32).to_le_bytes());
    for (kind, chunk) in chunks {
        file.extend((chunk.len() as u32).to_le_bytes());
        file.extend(kind);
        file.extend(chunk);
    }
    file
}

/// A place or direction of the frame in the file's axes.
fn turned(place: Vector) -> [f64; 3] {
    [place.x, place.z, place.y]
}

fn metres(place: Vector) -> [f64; 3] {
    turned(place).map(|inches| Length::inches(inches).to_metres())
}

/// What a face is made of: the place in [`MATERIALS`].
const fn material(skin: Skin) -> usize {
    match skin {
        Skin::Sawn => 0,
        Skin::End => 1,
        Skin::Cut | Skin::Round => 2,
    }
}

impl Parts {
    fn add(&mut self, stick: &StickBody) {
        let (mut places, mut normals) = (Vec::new(), Vec::new());
        let mut triangles: [Vec<u32>; MATERIALS.len()] = Default::default();
        for patch in stick.outside(&stick.wood).patches {
            let first = places.len() as u32;
            let corners = patch.corners.iter().map(|corner| metres(*corner - stick.zero).map(|value| value as f32));
            places.extend(corners);
            let normal = turned(patch.normal).map(|value| value as f32);
            normals.extend(std::iter::repeat_n(normal, patch.corners.len()));
            fan(&patch, first, &mut triangles[material(patch.skin)]);
        }
        if places.is_empty() {
            return;
        }
        let shared = (self.places(&places), self.vectors(&normals));
        let mut primitives: Vec<String> = Vec::new();
        for (material, indices) in triangles.iter().enumerate().filter(|(_, indices)| !indices.is_empty()) {
            primitives.push(format!(
                "{{\"attributes\":{{\"POSITION\":{},\"NORMAL\":{}}},\"indices\":{},\"material\":{material}}}",
                shared.0,
                shared.1,
                self.indices(indices)
            ));
        }
        let (name, mesh) = (quoted(&stick.mark), self.meshes.len());
        let at = numbers(metres(stick.zero));
        self.nodes.push(format!("{{\"name\":{name},\"mesh\":{mesh},\"translation\":[{at}]}}"));
        self.meshes.push(format!("{{\"name\":{name},\"primitives\":[{}]}}", primitives.join(",")));
    }

    fn places(&mut self, places: &[[f32; 3]]) -> usize {
        let bound = |pick: fn(f32, f32) -> f32, from: f32| {
            [0, 1, 2].map(|axis| places.iter().map(|place| place[axis]).fold(from, pick))
        };
        let (low, high) = (bound(f32::min, f32::INFINITY), bound(f32::max, f32::NEG_INFINITY));
        let (low, high) = (numbers(low.map(f64::from)), numbers(high.map(f64::from)));
        self.accessor(
            &flat(places),
            VERTICES,
            (FLOAT, "VEC3", places.len()),
            &format!(",\"min\":[{low}],\"max\":[{high}]"),
        )
    }

    fn vectors(&mut self, vectors: &[[f32; 3]]) -> usize {
        self.accessor(&flat(vectors), VERTICES, (FLOAT, "VEC3", vectors.len()), "")
    }

    fn indices(&mut self, indices: &[u32]) -> usize {
        let mut bytes = Vec::with_capacity(indices.len() * 4);
        for index in indices {
            bytes.extend_from_slice(&index.to_le_bytes());
        }
        self.accessor(&bytes, INDICES, (UNSIGNED_INT, "SCALAR", indices.len()), "")
    }

    fn accessor(&mut self, bytes: &[u8], target: u32, of: (u32, &str, usize), bounds: &str) -> usize {
        let (component, kind, count) = of;
        let (view, at, long) = (self.views.len(), self.bytes.len(), bytes.len());
        self.views.push(format!("{{\"buffer\":0,\"byteOffset\":{at},\"byteLength\":{long},\"target\":{target}}}"));
        self.bytes.extend(bytes);
        self.accessors.push(format!(
            "{{\"bufferView\":{view},\"componentType\":{component},\"type\":\"{kind}\",\"count\":{count}{bounds}}}"
        ));
        self.accessors.len() - 1
    }
}

fn flat(vectors: &[[f32; 3]]) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(vectors.len() * 12);
    for value in vectors.as_flattened() {
        bytes.extend_from_slice(&value.to_le_bytes());
    }
    bytes
}

/// The patch as triangles that share its first corner, turned about for the file's axes; corners counted from `first`.
fn fan(patch: &Patch, first: u32, triangles: &mut Vec<u32>) {
    let corners = &patch.corners;
    for index in 1..corners.len().saturating_sub(1) {
        let (a, b) = (corners[index] - corners[0], corners[index + 1] - corners[0]);
        if a.cross(b).norm() > 1e-9 {
            triangles.extend_from_slice(&[first, first + index as u32 + 1, first + index as u32]);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_stick_is_still_a_file() {
        let file = glb("nothing", &[]);
        assert_eq!(&file[..4], b"glTF");
        assert_eq!(file.len(), u32::from_le_bytes([file[8], file[9], file[10], file[11]]) as usize);
        assert!(file.len().is_multiple_of(4));
    }

    #[test]
    fn right_stays_right_and_outside_comes_forward() {
        assert_eq!(metres(Vector::inches(1000.0, 0.0, 0.0)), [25.4, 0.0, 0.0]);
        assert_eq!(metres(Vector::inches(0.0, 1000.0, 0.0)), [0.0, 0.0, 25.4]);
        assert_eq!(metres(Vector::inches(0.0, 0.0, 1000.0)), [0.0, 25.4, 0.0]);
    }
}
