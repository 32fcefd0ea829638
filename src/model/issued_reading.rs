//! The identification of a sheet as the register keeps it: keys alone.
//!
//! Written, each reading is a list of words: `state=moon|dark printing=own certainty=probable`; other readings that are
//! possible follow after ` or `. A state of one matrix is `state=key:moon`.

use std::fmt;
use std::str::FromStr;

use super::certainty::Certainty;
use super::impression::{Identification, StateReading};
use super::key::{Key, NotAKey};
use super::words::ClosedList as _;

/// One reading of a sheet.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct IssuedReading {
    /// The states, of which it is one; each with the matrix whose state it is, where blocks are in different
    /// conditions.
    pub states: Vec<(Option<Key>, Key)>,
    /// The printings, of which it is from one.
    pub printings: Vec<Key>,
    /// The variant.
    pub variant: Option<Key>,
    /// The kind of impression, where the reading turns on it.
    pub kind: Option<Key>,
    /// The certainty, where it is not certain.
    pub certainty: Option<Certainty>,
}

/// The readings of a sheet, the catalogue's own first.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct IssuedReadings(pub Vec<IssuedReading>);

impl IssuedReadings {
    /// Two identifications as they are written, without what both say: where both are one reading of the same printing,
    /// only the states are left. Each is as it is where that would leave nothing of one.
    #[must_use]
    pub fn differing(was: &str, now: &str) -> (String, String) {
        let whole = || (was.to_owned(), now.to_owned());
        let (Ok(mut before), Ok(mut after)) = (was.parse::<Self>(), now.parse::<Self>()) else {
            return whole();
        };
        let ([one], [other]) = (before.0.as_mut_slice(), after.0.as_mut_slice()) else {
            return whole();
        };
        if one.states == other.states {
            one.states.clear();
            other.states.clear();
        }
        if one.printings == other.printings {
            one.printings.clear();
            other.printings.clear();
        }
        if one.variant == other.variant {
            (one.variant, other.variant) = (None, None);
        }
        if one.kind == other.kind {
            (one.kind, other.kind) = (None, None);
        }
        // A certainty belongs to the whole reading.
        let is_bare = |reading: &IssuedReading| {
            let reading = IssuedReading {
                certainty: None,
                ..reading.clone()
            };
            reading == IssuedReading::default()
        };
        if is_bare(one) || is_bare(other) || one.certainty != other.certainty {
            return whole();
        }
        (before.to_string(), after.to_string())
    }

    /// The readings that an identification allows; none for no identification.
    #[must_use]
    pub fn of(identified: Option<&Identification>) -> IssuedReadings {
        let mut readings = Vec::new();
        let mut waiting: Vec<&Identification> = identified.into_iter().collect();
        while let Some(reading) = waiting.pop() {
            readings.push(one(reading));
            waiting.extend(reading.or.iter().rev());
        }
        IssuedReadings(readings)
    }
}

fn one(reading: &Identification) -> IssuedReading {
    let states = match &reading.state {
        None => Vec::new(),
        Some(StateReading::OneOf(states)) => {
            states.iter().map(|key| (None, key.value.clone())).collect()
        }
        Some(StateReading::ByMatrix(pairs)) => pairs
            .iter()
            .map(|(matrix, key)| (Some(matrix.value.clone()), key.value.clone()))
            .collect(),
    };
    let certainty = reading.claim.certainty();
    IssuedReading {
        states,
        printings: reading
            .printing
            .iter()
            .map(|key| key.value.clone())
            .collect(),
        variant: reading.variant.as_ref().map(|key| key.value.clone()),
        kind: reading.kind.as_ref().map(|key| key.value.clone()),
        certainty: (certainty != Certainty::Certain).then_some(certainty),
    }
}

impl fmt::Display for IssuedReading {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut words = Vec::new();
        let states = self.states.iter().map(|(matrix, state)| match matrix {
            Some(matrix) => format!("{matrix}:{state}"),
            None => state.to_string(),
        });
        let states: Vec<String> = states.collect();
        if !states.is_empty() {
            words.push(format!("state={}", states.join("|")));
        }
        let printings: Vec<String> = self.printings.iter().map(Key::to_string).collect();
        if !printings.is_empty() {
            words.push(format!("printing={}", printings.join("|")));
        }
        words.extend(self.variant.iter().map(|key| format!("variant={key}")));
        words.extend(self.kind.iter().map(|key| format!("kind={key}")));
        let certainty = self.certainty.iter();
        words.extend(certainty.map(|sure| format!("certainty={}", sure.word())));
        if words.is_empty() {
            words.push("unread".to_owned());
        }
        f.write_str(&words.join(" "))
    }
}

impl fmt::Display for IssuedReadings {
    /// Empty for no identification.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let readings: Vec<String> = self.0.iter().map(IssuedReading::to_string).collect();
        f.write_str(&readings.join(" or "))
    }
}

impl FromStr for IssuedReadings {
    type Err = NotAKey;

    fn from_str(text: &str) -> Result<IssuedReadings, NotAKey> {
        if text.is_empty() {
            return Ok(IssuedReadings::default());
        }
        let readings: Result<Vec<_>, _> = text.split(" or ").map(read_one).collect();
        readings.map(IssuedReadings)
    }
}

fn read_one(text: &str) -> Result<IssuedReading, NotAKey> {
    let mut reading = IssuedReading::default();
    for word in text.split_whitespace().filter(|word| *word != "unread") {
        let (name, value) = word.split_once('=').ok_or(NotAKey)?;
        match name {
            "state" => {
                for state in value.split('|') {
                    let state = match state.split_once(':') {
                        Some((matrix, state)) => (Some(matrix.parse()?), state.parse()?),
                        None => (None, state.parse()?),
                    };
                    reading.states.push(state);
                }
            }
            "printing" => {
                let printings: Result<_, _> = value.split('|').map(str::parse).collect();
                reading.printings = printings?;
            }
            "variant" => reading.variant = Some(value.parse()?),
            "kind" => reading.kind = Some(value.parse()?),
            "certainty" => reading.certainty = Some(Certainty::from_word(value).ok_or(NotAKey)?),
            _ => return Err(NotAKey),
        }
    }
    Ok(reading)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_two_readings_share_is_left_out() {
        let differing = |was, now| IssuedReadings::differing(was, now);
        let pair = |was: &str, now: &str| (was.to_owned(), now.to_owned());
        assert_eq!(
            differing("state=moon printing=own", "state=dark printing=own"),
            pair("state=moon", "state=dark")
        );
        for (was, now) in [
            ("state=moon", "state=moon printing=own"),
            ("state=moon certainty=probable", "state=dark"),
            ("", "state=dark"),
            ("state=moon or printing=own", "state=dark"),
        ] {
            assert_eq!(differing(was, now), pair(was, now));
        }
    }

    #[test]
    fn readings_are_read_as_they_are_written() {
        for text in [
            "",
            "state=moon printing=own",
            "state=moon|dark printing=own|memorial certainty=probable",
            "state=key:moon|sky:dark variant=mica kind=trial-proof",
            "state=moon or printing=own",
            "unread",
        ] {
            let readings: IssuedReadings = text.parse().unwrap();
            assert_eq!(readings.to_string(), text);
        }
        for text in ["moon", "state=", "certainty=sure", "house=moon"] {
            assert!(text.parse::<IssuedReadings>().is_err(), "{text}");
        }
    }
}
