//! Long texts that are made piece by piece: several pieces side by side, given in their order, so that no text of a file of
//! 50,000 rows is in memory whole.

use rayon::prelude::*;

/// How many items make a piece.
const OF_PIECE: usize = 64;
/// How many pieces are made before they are given on.
const AT_A_TIME: usize = 16;

/// Gives `put` the pieces in the order of the items. `piece` makes one of some items; it gets the place of the first.
///
/// # Errors
/// What `put` gives; then the rest is not made.
pub(super) fn pieces<T: Sync, P: AsRef<[u8]> + Send, E>(
    items: &[T],
    piece: impl Fn(usize, &[T]) -> P + Sync,
    put: &mut dyn FnMut(&[u8]) -> Result<(), E>,
) -> Result<(), E> {
    for (number, some) in items.chunks(OF_PIECE * AT_A_TIME).enumerate() {
        let first = number * OF_PIECE * AT_A_TIME;
        let made: Vec<P> = some
            .par_chunks(OF_PIECE)
            .enumerate()
            .map(|(at, items)| piece(first + at * OF_PIECE, items))
            .collect();
        for piece in made {
            put(piece.as_ref())?;
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(items: &[usize]) -> String {
        let mut lines: Vec<String> = items.iter().map(usize::to_string).collect();
        lines.push(String::new());
        lines.join("\n")
    }

    #[test]
    fn pieces_stand_in_the_order_of_the_items_and_know_their_places() {
        for count in [0, 1, OF_PIECE, OF_PIECE * AT_A_TIME, 3_000] {
            let items: Vec<usize> = (0..count).collect();
            let piece = |first: usize, items: &[usize]| {
                assert_eq!(items[0], first);
                lines(items)
            };
            let mut text = Vec::new();
            let put = &mut |piece: &[u8]| {
                text.extend_from_slice(piece);
                Ok::<(), ()>(())
            };
            pieces(&items, piece, put).unwrap();
            assert_eq!(String::from_utf8(text).unwrap(), lines(&items));
        }
    }

    #[test]
    fn nothing_is_made_after_a_refusal() {
        let items: Vec<usize> = (0..3_000).collect();
        let mut given = 0;
        let put = &mut |_: &[u8]| {
            given += 1;
            if given == 2 { Err("full") } else { Ok(()) }
        };
        assert_eq!(pieces(&items, |_, _| "x", put), Err("full"));
        assert_eq!(given, 2);
    }
}
