//! The mark by which a browser knows that a file came whole: SHA-256 in base64.

const BLOCK: usize = 64;
const N_ROUNDS: usize = 64;
const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/// The value of an `integrity` attribute.
pub fn of(bytes: &[u8]) -> String {
    format!("sha256-{}", base64(&sha256(bytes)))
}

/// SHA-256 (FIPS 180-4, 6.2).
fn sha256(bytes: &[u8]) -> Vec<u8> {
    let rounds = fractions(N_ROUNDS, 3);
    let mut padded = bytes.to_vec();
    padded.push(0x80);
    padded.resize(padded.len().next_multiple_of(BLOCK), 0);
    if padded.len() - bytes.len() < 9 {
        padded.resize(padded.len() + BLOCK, 0);
    }
    let end = padded.len() - 8;
    padded[end..].copy_from_slice(&(bytes.len() as u64 * 8).to_be_bytes());
    let mut state = fractions(8, 2);
    for block in padded.chunks_exact(BLOCK) {
        let mixed = mixed(&state, block, &rounds);
        state.iter_mut().zip(mixed).for_each(|(word, more)| *word = word.wrapping_add(more));
    }
    state.iter().flat_map(|word| word.to_be_bytes()).collect()
}

fn mixed(state: &[u32], block: &[u8], rounds: &[u32]) -> Vec<u32> {
    let mut words: Vec<u32> =
        block.chunks_exact(4).map(|four| four.iter().fold(0, |word, byte| word << 8 | u32::from(*byte))).collect();
    for t in words.len()..rounds.len() {
        let (late, early) = (words[t - 2], words[t - 15]);
        let one = late.rotate_right(17) ^ late.rotate_right(19) ^ (late >> 10);
        let nought = early.rotate_right(7) ^ early.rotate_right(18) ^ (early >> 3);
        words.push(one.wrapping_add(words[t - 7]).wrapping_add(nought).wrapping_add(words[t - 16]));
    }
    let mut turning = state.to_vec();
    for (round, word) in rounds.iter().zip(words) {
        let (a, b, c) = (turning[0], turning[1], turning[2]);
        let (e, f, g) = (turning[4], turning[5], turning[6]);
        let one = e.rotate_right(6) ^ e.rotate_right(11) ^ e.rotate_right(25);
        let chosen = (e & f) ^ (!e & g);
        let first = turning[7].wrapping_add(one).wrapping_add(chosen).wrapping_add(*round).wrapping_add(word);
        let nought = a.rotate_right(2) ^ a.rotate_right(13) ^ a.rotate_right(22);
        let second = nought.wrapping_add((a & b) ^ (a & c) ^ (b & c));
        turning.rotate_right(1);
        turning[0] = first.wrapping_add(second);
        turning[4] = turning[4].wrapping_add(first);
    }
    turning
}

/// First 32 bits of the fractional parts of the roots of the first primes (FIPS 180-4, 4.2.2 and 5.3.3).
fn fractions(count: usize, power: u32) -> Vec<u32> {
    let is_prime = |n: &u128| (2..*n).take_while(|by| by * by <= *n).all(|by| !n.is_multiple_of(by));
    (2..).filter(is_prime).take(count).map(|prime| root(prime << (32 * power), power) as u32).collect()
}

/// The largest whole number whose power is no more than that.
fn root(most: u128, power: u32) -> u128 {
    (0..40).rev().fold(0, |root, bit| {
        let tried: u128 = root | 1 << bit;
        if tried.pow(power) <= most { tried } else { root }
    })
}

/// RFC 4648, 4.
fn base64(bytes: &[u8]) -> String {
    let mut text = String::new();
    for three in bytes.chunks(3) {
        let bits = (0..3).fold(0, |bits, at| bits << 8 | usize::from(three.get(at).copied().unwrap_or(0)));
        for at in 0..4 {
            let letter = LETTERS[bits >> (18 - 6 * at) & 63];
            text.push(if at <= three.len() { char::from(letter) } else { '=' });
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, digest: &str) {
        let hex: String = sha256(text.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect();
        assert_eq!(hex, digest, "{text}");
    }

    #[test]
    fn digests_are_the_published_ones() {
        // NIST, examples of SHA-256 with FIPS 180-4: one block, two blocks; and the digest of nothing.
        check("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
        let two = "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq";
        check(two, "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
        check("", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    }

    #[test]
    fn base64_is_that_of_the_standard() {
        // RFC 4648, 10.
        let pairs =
            [("", ""), ("f", "Zg=="), ("fo", "Zm8="), ("foo", "Zm9v"), ("foob", "Zm9vYg=="), ("foobar", "Zm9vYmFy")];
        for (plain, coded) in pairs {
            assert_eq!(base64(plain.as_bytes()), coded);
        }
    }
}
