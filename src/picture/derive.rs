//! Decides the sizes of the published forms of a photograph, and makes them.

use crate::codec::EncodedPicture;
use crate::colour;
use crate::decode::Opened;
use crate::extent::Extent;
use crate::fault::{Fault, MemoryCause};
use crate::plan::Plan;
use crate::prepared::Colour;
use crate::pyramid::{self, Base, PyramidFiles};
use crate::turn::Turn;

/// The files made of one photograph.
#[derive(Debug)]
pub struct Rendering {
    /// The photograph upright, in full.
    pub master: Extent,
    /// The largest form that is published.
    pub published: Extent,
    pub colour: Colour,
    /// The widths, smallest first.
    pub sizes: Vec<EncodedPicture>,
    /// Its tiles, in the order of [`crate::tiles::tiles`].
    pub tiles: Vec<Vec<u8>>,
}

/// The longest side that anything made of a picture may have, in px.
pub fn longest_side(plan: &Plan, largest: Option<u32>) -> u32 {
    // A JPEG cannot state a longer side than this.
    let allowed = plan.largest.min(u32::from(u16::MAX));
    largest.map_or(allowed, |own| own.min(allowed)).max(1)
}

/// The widths a plan asks for, rising, each once.
pub fn widths(plan: &Plan) -> Vec<u32> {
    let mut widths: Vec<u32> = plan
        .widths
        .iter()
        .copied()
        .filter(|&width| width > 0)
        .collect();
    widths.sort_unstable();
    widths.dedup();
    widths
}

/// The sizes to make of a photograph, smallest first, never empty.
///
/// Those widths of the plan that the picture reaches without being enlarged and without a side above
/// `longest`. A picture that falls between two widths is also given at the largest it may have, and
/// then a width within a tenth of that is left out: it would cost a file and show nothing more.
fn extents(master: Extent, widths: &[u32], longest: u32) -> Vec<Extent> {
    let most = master.within(longest);
    let top = match widths.last() {
        Some(&widest) if widest < most.width => most.at_width(widest),
        _ => most,
    };
    let spared = u64::from(top.width) * 9;
    let mut extents: Vec<Extent> = widths
        .iter()
        .filter(|&&width| u64::from(width) * 10 < spared)
        .map(|&width| most.at_width(width))
        .collect();
    extents.push(top);
    extents
}

/// The memory that a photograph takes while it is made ready.
#[derive(Debug, Clone, Copy)]
pub struct MemoryNeed {
    /// Bytes that it takes at most.
    pub bytes: u64,
    /// What makes it take so much.
    pub cause: MemoryCause,
}

impl MemoryNeed {
    /// What a photograph needs: unpacking and scaling it, or making the published forms from what is scaled.
    pub fn of(opened: &Opened<'_>, plan: &Plan, largest: Option<u32>) -> MemoryNeed {
        let longest = longest_side(plan, largest);
        let published = as_stored(opened, longest);
        let turn = Turn::of(opened.orientation);
        let extents = extents(turned_by(turn, opened.stored), &widths(plan), longest);
        let unpacking = opened.memory(published);
        let making = pyramid::memory(turned_by(turn, published), &extents)
            .saturating_add(opened.conversion_memory());
        MemoryNeed {
            bytes: unpacking.max(making),
            cause: if unpacking > making {
                opened.cause()
            } else {
                MemoryCause::Size
            },
        }
    }

    /// Refuses what needs more than the limit.
    ///
    /// # Errors
    /// [`Fault::TooMuchMemory`].
    pub fn within(self, limit: u64) -> Result<(), Fault> {
        if self.bytes <= limit {
            return Ok(());
        }
        Err(Fault::TooMuchMemory {
            needed: self.bytes,
            limit,
            cause: self.cause,
        })
    }
}

/// The size of the largest published form, turned as the photograph is stored.
fn as_stored(opened: &Opened<'_>, longest: u32) -> Extent {
    let turn = Turn::of(opened.orientation);
    turned_by(turn, turned_by(turn, opened.stored).within(longest))
}

/// Makes everything that is published of a photograph.
///
/// # Errors
/// Where the scaler or the encoder fails, which is not expected for a decoded picture.
pub fn render(opened: Opened<'_>, plan: &Plan, largest: Option<u32>) -> Result<Rendering, Fault> {
    let longest = longest_side(plan, largest);
    let Fitted {
        upright,
        colour,
        base,
    } = fitted(opened, longest)?;
    let published = base.extent();
    let extents = extents(upright, &widths(plan), longest);
    let PyramidFiles {
        tiles,
        widths: sizes,
    } = pyramid::make(base, &extents, plan.quality)?;
    Ok(Rendering {
        master: upright,
        published,
        colour,
        sizes,
        tiles,
    })
}

/// A photograph scaled to the largest form that is published.
pub struct Fitted {
    /// The size of the photograph, upright.
    pub upright: Extent,
    /// How its colours were understood.
    pub colour: Colour,
    /// The largest published form.
    pub base: Base,
}

/// Bytes of memory that [`fitted`] takes at most, with its result turned and converted whole.
pub fn fitted_memory(opened: &Opened<'_>, longest: u32) -> u64 {
    let to = as_stored(opened, longest);
    let whole = 9 * to.pixels() as u64 + opened.conversion_memory();
    opened.memory(to).max(whole)
}

/// Unpacks a photograph, scaled so that no side is above `longest`, and not scaled where none is.
///
/// # Errors
/// Cut short or damaged.
pub fn fitted(opened: Opened<'_>, longest: u32) -> Result<Fitted, Fault> {
    let turn = Turn::of(opened.orientation);
    let upright = turned_by(turn, opened.stored);
    let to = as_stored(&opened, longest);
    let (colour, to_srgb) = colour::read(&opened.profile);
    let base = Base {
        pixels: opened.pixels(to)?,
        turn,
        to_srgb,
    };
    Ok(Fitted {
        upright,
        colour,
        base,
    })
}

fn turned_by(turn: Turn, extent: Extent) -> Extent {
    if turn.is_swapped() {
        extent.turned()
    } else {
        extent
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn widths_of(master: (u32, u32), longest: u32) -> Vec<(u32, u32)> {
        let master = Extent {
            width: master.0,
            height: master.1,
        };
        extents(master, &[480, 960, 1920], longest)
            .into_iter()
            .map(|extent| (extent.width, extent.height))
            .collect()
    }

    #[test]
    fn a_large_picture_is_given_in_every_width() {
        assert_eq!(
            widths_of((6000, 4000), 9000),
            [(480, 320), (960, 640), (1920, 1280)]
        );
    }

    #[test]
    fn a_picture_is_never_enlarged() {
        assert_eq!(widths_of((700, 350), 9000), [(480, 240), (700, 350)]);
        assert_eq!(widths_of((300, 200), 9000), [(300, 200)]);
        assert_eq!(widths_of((480, 1), 9000), [(480, 1)]);
    }

    #[test]
    fn a_width_close_to_the_largest_is_spared() {
        assert_eq!(widths_of((1000, 500), 9000), [(480, 240), (1000, 500)]);
    }

    #[test]
    fn no_side_goes_above_the_largest_allowed() {
        assert_eq!(widths_of((6000, 4000), 1000), [(480, 320), (1000, 667)]);
        // Upright: the height is the longest side.
        assert_eq!(widths_of((4000, 6000), 1000), [(480, 720), (666, 999)]);
        assert_eq!(widths_of((10, 60_000), 1000), [(1, 1000)]);
    }
}
