//! The working image: grey, upright, one image alone, not mirrored, 1000 px along its longest side.

use image::metadata::Orientation;
use image::{DynamicImage, GrayImage, imageops};
use keyblock_model::boxes::PercentBox;
use keyblock_model::registration::Homography;

use super::subject::WORKING_SIDE;
use crate::decode::Opened;
use crate::fault::Fault;

/// A working image, and where it comes from.
pub struct WorkingImage {
    pub grey: GrayImage,
    /// From pixels of the upright master to pixels of the working image.
    pub from_master: Homography,
    /// Width and height of the upright master, px.
    pub master: (u32, u32),
}

/// Makes the working image of a photograph, given in grey as its file stores it, of its part `area`, mirrored
/// back where it shows the image mirrored. A photograph's profile is ignored: it changes tones, and the gradient
/// image drops tones.
///
/// # Errors
/// Where the scaler fails, which is not expected for a decoded picture.
pub fn working(
    stored: GrayImage,
    orientation: Orientation,
    area: Option<PercentBox>,
    mirrored: bool,
) -> Result<WorkingImage, Fault> {
    let refused = || Fault::Damaged("it cannot be scaled".into());
    let part = area.map_or([0.0, 0.0, 100.0, 100.0], PercentBox::percent);
    let master = upright(stored.dimensions(), orientation);
    let to = scaled_to(stored.dimensions(), orientation, area);
    let scaled = scale(stored, to).ok_or_else(refused)?;
    let mut turned = DynamicImage::ImageLuma8(scaled);
    turned.apply_orientation(orientation);
    let whole = turned.into_luma8();
    let scaling = Homography::scaling(
        f64::from(whole.width()) / f64::from(master.0),
        f64::from(whole.height()) / f64::from(master.1),
    )
    .ok_or_else(refused)?;

    let cut = |from: f64, length: f64, side: u32| {
        let first = (f64::from(side) * from / 100.0).round() as u32;
        let last = (f64::from(side) * (from + length) / 100.0).round() as u32;
        let first = first.min(side - 1);
        (first, last.clamp(first + 1, side) - first)
    };
    let (left, width) = cut(part[0], part[2], whole.width());
    let (top, height) = cut(part[1], part[3], whole.height());
    let mut grey = imageops::crop_imm(&whole, left, top, width, height).to_image();
    let mut from_master = scaling.then(&moved(left, top)).ok_or_else(refused)?;
    if mirrored {
        imageops::flip_horizontal_in_place(&mut grey);
        let back = [
            -1.0,
            0.0,
            f64::from(width) - 1.0,
            0.0,
            1.0,
            0.0,
            0.0,
            0.0,
            1.0,
        ];
        let back = Homography::new(back).ok_or_else(refused)?;
        from_master = from_master.then(&back).ok_or_else(refused)?;
    }
    Ok(WorkingImage {
        grey,
        from_master,
        master,
    })
}

/// The longest side that a picture may be scaled to: that of an uncut sheet with a small image on it.
const MOST_SIDE: u32 = 16 * WORKING_SIDE;

fn moved(left: u32, top: u32) -> Homography {
    let rows = [
        1.0,
        0.0,
        -f64::from(left),
        0.0,
        1.0,
        -f64::from(top),
        0.0,
        0.0,
        1.0,
    ];
    Homography::new(rows).unwrap_or(Homography::IDENTITY)
}

/// Bytes of memory that unpacking a photograph and [`working`] take at most.
pub fn memory(opened: &Opened<'_>, area: Option<PercentBox>) -> u64 {
    let stored = (opened.stored.width, opened.stored.height);
    let to = scaled_to(stored, opened.orientation, area);
    let [stored, between, scaled] =
        [stored, (stored.0, to.1), to].map(|(width, height)| u64::from(width) * u64::from(height));
    // The grey picture, scaled in one direction, then whole, and turned.
    opened.grey_memory().max(stored + between + 2 * scaled)
}

/// The size to which the whole picture is scaled, so that the part has the working size.
fn scaled_to(stored: (u32, u32), orientation: Orientation, area: Option<PercentBox>) -> (u32, u32) {
    let part = area.map_or([0.0, 0.0, 100.0, 100.0], PercentBox::percent);
    // Turning exchanges width and height, so the part is measured upright; the longest side stays the
    // same.
    let master = upright(stored, orientation);
    let longest =
        (f64::from(master.0) * part[2] / 100.0).max(f64::from(master.1) * part[3] / 100.0);
    let factor = f64::from(WORKING_SIDE) / longest.max(1.0);
    let scaled_side = |side: u32| ((f64::from(side) * factor).round() as u32).clamp(1, MOST_SIDE);
    (scaled_side(stored.0), scaled_side(stored.1))
}

/// Width and height once upright.
fn upright((width, height): (u32, u32), orientation: Orientation) -> (u32, u32) {
    if exchanges_sides(orientation) {
        (height, width)
    } else {
        (width, height)
    }
}

/// Whether turning the picture upright exchanges width and height.
fn exchanges_sides(orientation: Orientation) -> bool {
    use Orientation::{Rotate90, Rotate90FlipH, Rotate270, Rotate270FlipH};
    matches!(
        orientation,
        Rotate90 | Rotate270 | Rotate90FlipH | Rotate270FlipH
    )
}

fn scale(mut grey: GrayImage, to: (u32, u32)) -> Option<GrayImage> {
    let from = grey.dimensions();
    if from == to {
        return Some(grey);
    }
    let mut scaled = GrayImage::new(to.0, to.1);
    keyblock_scaler::grey(from, &mut grey, to, &mut scaled).ok()?;
    Some(scaled)
}

#[cfg(test)]
mod tests {
    use super::*;
    use image::Luma;

    /// A dark dot of 8 px on white, its middle at `(x, y)`.
    fn dot(width: u32, height: u32, x: u32, y: u32) -> GrayImage {
        GrayImage::from_fn(width, height, |px, py| {
            let is_dark = px + 4 >= x && px < x + 4 && py + 4 >= y && py < y + 4;
            Luma([if is_dark { 0 } else { 255 }])
        })
    }

    /// Where the dark lies, px.
    fn found(grey: &GrayImage) -> (f64, f64) {
        let (mut sum, mut x_sum, mut y_sum) = (0.0, 0.0, 0.0);
        for (x, y, pixel) in grey.enumerate_pixels() {
            let dark = f64::from(255 - pixel.0[0]);
            sum += dark;
            x_sum += dark * f64::from(x);
            y_sum += dark * f64::from(y);
        }
        (x_sum / sum, y_sum / sum)
    }

    fn check(orientation: Orientation, area: Option<[f64; 4]>, mirrored: bool, at: (f64, f64)) {
        let area = area.map(|[l, t, w, h]| PercentBox::new(l, t, w, h).unwrap());
        let dot = dot(2000, 1500, 700, 500);
        let working = working(dot, orientation, area, mirrored).unwrap();
        let longest = working.grey.width().max(working.grey.height());
        assert!(longest.abs_diff(WORKING_SIDE) <= 1, "{longest}");
        let expected = working.from_master.apply(at.0, at.1).unwrap();
        let found = found(&working.grey);
        let away = libm::hypot(expected.0 - found.0, expected.1 - found.1);
        assert!(away < 0.2, "{expected:?} {found:?}");
    }

    #[test]
    fn a_place_on_the_master_is_found_on_the_working_image() {
        // The dot's middle lies between pixels 699 and 700, 499 and 500.
        check(Orientation::NoTransforms, None, false, (699.5, 499.5));
        check(Orientation::NoTransforms, None, true, (699.5, 499.5));
        let part = Some([20.0, 25.0, 37.5, 40.0]);
        check(Orientation::NoTransforms, part, false, (699.5, 499.5));
        check(Orientation::NoTransforms, part, true, (699.5, 499.5));
        // Turned clockwise: 1500 wide, the dot's distance from the bottom becomes that from the left.
        let at = (1499.0 - 499.5, 699.5);
        check(Orientation::Rotate90, None, false, at);
        check(
            Orientation::Rotate90,
            Some([50.0, 20.0, 40.0, 30.0]),
            true,
            at,
        );
    }
}
