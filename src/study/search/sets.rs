//! A set of entries as short JSON.
//!
//! Two forms; the shorter is taken. A *list* is an array of whole numbers: the first place, then each distance to
//! the next one; a number below 0 says how many more follow directly on each other. A *bitmap* is an array of the
//! first place and a text, in which every sign holds four places from there on, the first in the highest bit.
//!
//! The signs of a bitmap are neither letters nor figures, so that no name and no number stands in it by chance
//! (every file of a site is searched for private ones).

use std::fmt::Write as _;

/// The signs of bitmaps, by value. `find.js` has the same.
const SIGNS: &[u8; 16] = b"!#$()*+,-./:;=?@";

/// A set of places, which ascend, as JSON: `0` for none.
///
/// ```
/// # use keyblock::study::search::sets::encode;
/// assert_eq!(encode(&[]), "0");
/// assert_eq!(encode(&[3, 7, 8, 9, 10, 500]), "[3,4,-3,490]");
/// let dense: Vec<u32> = (0..400).filter(|place| place % 3 != 2).collect();
/// assert!(encode(&dense).starts_with("[0,\"=:"));
/// ```
#[must_use]
pub fn encode(places: &[u32]) -> String {
    let (Some(first), Some(last)) = (places.first(), places.last()) else {
        return "0".to_owned();
    };
    let list = list(places);
    let signs = (last - first) as usize / 4 + 1;
    if signs + 4 + first.to_string().len() < list.len() {
        bitmap(places, *first, signs)
    } else {
        list
    }
}

fn list(places: &[u32]) -> String {
    let mut out = String::from("[");
    let mut run = 0;
    let mut before: Option<u32> = None;
    let end_run = |out: &mut String, run: u32| {
        let _ = match run {
            0 => Ok(()),
            1 => write!(out, ",1"),
            run => write!(out, ",-{run}"),
        };
    };
    for place in places {
        match before {
            None => {
                let _ = write!(out, "{place}");
            }
            Some(before) if before + 1 == *place => run += 1,
            Some(before) => {
                end_run(&mut out, run);
                run = 0;
                let _ = write!(out, ",{}", place - before);
            }
        }
        before = Some(*place);
    }
    end_run(&mut out, run);
    out.push(']');
    out
}

fn bitmap(places: &[u32], first: u32, signs: usize) -> String {
    let mut values = vec![0_u8; signs];
    for place in places {
        let at = (place - first) as usize;
        if let Some(value) = values.get_mut(at / 4) {
            *value |= 8 >> (at % 4);
        }
    }
    let text: String = values
        .into_iter()
        .filter_map(|value| SIGNS.get(usize::from(value)))
        .map(|sign| char::from(*sign))
        .collect();
    format!("[{first},\"{text}\"]")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What `encode` wrote, read again.
    fn decode(json: &str) -> Vec<u32> {
        let value: serde_json::Value = serde_json::from_str(json).unwrap();
        let Some(parts) = value.as_array() else {
            return Vec::new();
        };
        let mut places: Vec<u32> = Vec::new();
        if let Some(text) = parts.get(1).and_then(|part| part.as_str()) {
            let first = u32::try_from(parts[0].as_u64().unwrap()).unwrap();
            for (at, sign) in text.bytes().enumerate() {
                let value = SIGNS.iter().position(|known| *known == sign).unwrap();
                let set = (0..4).filter(|bit| value & (8 >> bit) != 0);
                places.extend(set.map(|bit| first + u32::try_from(4 * at + bit).unwrap()));
            }
            return places;
        }
        for part in parts {
            let number = part.as_i64().unwrap();
            let last = places.last().copied();
            if number < 0 {
                let from = last.unwrap();
                places.extend((1..=u32::try_from(-number).unwrap()).map(|more| from + more));
            } else {
                places.push(last.unwrap_or(0) + u32::try_from(number).unwrap());
            }
        }
        places
    }

    #[test]
    fn a_set_is_read_as_it_was_written() {
        let mut state = 7_u64;
        for dense in [2, 3, 9, 60, 1000] {
            for length in [0, 1, 2, 5, 300, 3000] {
                let places: Vec<u32> = (0..length)
                    .filter(|_| {
                        state = state
                            .wrapping_mul(6_364_136_223_846_793_005)
                            .wrapping_add(1);
                        (state >> 33).is_multiple_of(dense)
                    })
                    .collect();
                assert_eq!(decode(&encode(&places)), places);
            }
        }
        let all: Vec<u32> = (5..90_000).collect();
        assert_eq!(encode(&all), "[5,-89994]");
    }

    #[test]
    fn half_of_a_hundred_thousand_entries_stay_below_30_kb() {
        let half: Vec<u32> = (0..100_000).filter(|place| place % 7 % 2 == 0).collect();
        assert!(encode(&half).len() < 30_000);
    }

    #[test]
    fn no_letter_stands_in_a_bitmap() {
        assert!(SIGNS.iter().all(u8::is_ascii_punctuation));
        assert!(!SIGNS.iter().any(|sign| b"\"\\<>&%'".contains(sign)));
    }
}
