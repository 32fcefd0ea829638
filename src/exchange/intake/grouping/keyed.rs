//! The keys that new designs would get.

use crate::exchange::intake::proposal::{DesignIs, ProposedDesign};
use crate::read::next_record::FreeDesignKeys;

/// Gives every new design a key that no record has or had: that of its number where the rows give one and it is free, else
/// the next whole number.
pub fn keyed(designs: &mut [ProposedDesign], free: &mut FreeDesignKeys<'_>) {
    for design in designs
        .iter_mut()
        .filter(|design| design.is == DesignIs::New)
    {
        let of_number = design
            .number
            .as_deref()
            .and_then(|number| free.key_of(number));
        design.key = of_number.or_else(|| free.next_key());
    }
}
