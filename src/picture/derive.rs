//! Decides the sizes of the published forms of a photograph, and makes them.

use crate::codec::EncodedPicture;
use crate::colour;
use crate::extent::Extent;
use crate::fault::Fault;
use crate::master::Master;
use crate::plan::Plan;
use crate::prepared::Colour;
use crate::pyramid::{self, Base, PyramidFiles};
use crate::scaling::scale;
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

/// Bytes of memory that a photograph takes at most while it is made ready, of which unpacking takes
/// `unpacking`: its pixels, and beside them either what scaling it needs (half scaled, then whole) or
/// the level below it and the encoded files, of which a byte each pixel is more than enough.
pub fn memory(stored: Extent, unpacking: u64, plan: &Plan, largest: Option<u32>) -> u64 {
    let published = stored.within(longest_side(plan, largest));
    let pixels = |extent: Extent| u64::from(extent.width) * u64::from(extent.height);
    let beside = if published == stored {
        pixels(stored) * 7 / 4
    } else {
        let half_scaled = Extent {
            width: published.width,
            height: stored.height,
        };
        3 * (pixels(half_scaled) + pixels(published))
    };
    unpacking.max(3 * pixels(stored) + beside)
}

/// Makes everything that is published of a photograph.
///
/// # Errors
/// Where the scaler or the encoder fails, which is not expected for a decoded picture.
pub fn render(master: Master, plan: &Plan, largest: Option<u32>) -> Result<Rendering, Fault> {
    let longest = longest_side(plan, largest);
    let Fitted {
        upright,
        colour,
        base,
    } = fitted(master, longest)?;
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

/// Scales a photograph so that no side is above `longest`, and keeps it where none is.
///
/// # Errors
/// Where the scaler fails, which is not expected for a decoded picture.
pub fn fitted(master: Master, longest: u32) -> Result<Fitted, Fault> {
    let Master {
        pixels,
        orientation,
        profile,
    } = master;
    let turn = Turn::of(orientation);
    let stored = Extent::of(&pixels);
    let upright = turned_by(turn, stored);
    let as_stored = turned_by(turn, upright.within(longest));
    let pixels = if as_stored == stored {
        pixels
    } else {
        let scaled = scale(stored, pixels.as_raw(), as_stored)?;
        // The photograph is by far the largest thing in memory.
        drop(pixels);
        scaled
    };
    let (colour, to_srgb) = colour::read(profile.as_deref());
    let base = Base {
        pixels,
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
