//! The mark by which a browser knows that a file came whole: SHA-256 in base64.
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

/// The value of an `integrity` attribute.
pub fn of(bytes: &[u8]) -> String {
    format!("sha256-{}", STANDARD.encode(Sha256::digest(bytes)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_mark_is_the_published_digest() {
        // NIST, examples of SHA-256 with FIPS 180-4, in the base64 of RFC 4648: one block, two blocks; and the digest of nothing.
        let two = "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq";
        for (text, mark) in [
            ("abc", "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0="),
            (two, "sha256-JI1qYdIGOLjlwCaTDD5gOaM85Flk/yFn9uzt1BnbBsE="),
            ("", "sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU="),
        ] {
            assert_eq!(of(text.as_bytes()), mark);
        }
    }
}
