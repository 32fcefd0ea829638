//! Readings of one reference beside each other: each thing once, how certain each is beside the others, and their order.

use super::reading::{Meant, Reading};
use keyblock_model::certainty::Certainty;

/// The readings with the likeliest first.
///
/// One reading is as certain as the way in which it was understood. Of several, the one that was understood most closely
/// stays certain only where the reference itself says which is meant (the siglum, a holder, the earlier catalogue); else
/// it is probable; where several were understood equally closely, and all others, they are possible. A number of an
/// earlier catalogue, as the place where it stands there, is no other thing that may be meant: it comes last.
#[must_use]
pub fn settle(readings: Vec<Reading>) -> Vec<Reading> {
    let (mut rows, mut readings): (Vec<Reading>, Vec<Reading>) = readings
        .into_iter()
        .partition(|reading| matches!(reading.meant, Meant::Row(..)));
    for list in [&mut rows, &mut readings] {
        // The sort is stable: of readings that are alike the first stays.
        list.sort_by_key(|reading| (reading.meant, reading.rank, reading.certainty));
        list.dedup_by_key(|reading| reading.meant);
    }
    let closest = readings.iter().map(|reading| reading.rank).min();
    let closest_are = readings.iter().filter(|r| Some(r.rank) == closest).count();
    if readings.len() > 1 {
        for reading in &mut readings {
            let most = match Some(reading.rank) == closest {
                true if closest_are == 1 && reading.rank.is_explicit() => Certainty::Certain,
                true if closest_are == 1 => Certainty::Probable,
                _ => Certainty::Possible,
            };
            reading.certainty = reading.certainty.max(most);
        }
    }
    readings.sort_by_key(|reading| (reading.certainty, reading.rank, reading.meant));
    rows.sort_by_key(|reading| (reading.certainty, reading.meant));
    readings.extend(rows);
    readings
}
