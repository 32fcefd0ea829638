//! Whether a camera above a sheet could have made a map.

use keyblock_model::registration::Homography;

/// The most that either side of a picture may be turned against the reference's anywhere, degrees: 15
/// for the turn, and the rest for what perspective adds in a corner.
const MOST_TURN: f64 = 20.0;

/// The smallest and largest scale, px of the picture for each px of the reference.
const SCALES: (f64, f64) = (0.45, 2.2);

/// How much the scale may differ from one corner to another, or between the two directions.
const MOST_UNEVEN: f64 = 2.0;

/// Whether `map`, from an image of `size` px, turns, scales and tilts within reason everywhere on it.
pub fn is_plausible(map: &Homography, size: (usize, usize)) -> bool {
    let (width, height) = (size.0 as f64 - 1.0, size.1 as f64 - 1.0);
    let places = [
        (0.0, 0.0),
        (width, 0.0),
        (0.0, height),
        (width, height),
        (width / 2.0, height / 2.0),
    ];
    let mut least = f64::INFINITY;
    let mut most = 0.0_f64;
    for (x, y) in places {
        let Some((across, down)) = steps(map, x, y) else {
            return false;
        };
        for (along, aside) in [across, (down.1, -down.0)] {
            let length = (along * along + aside * aside).sqrt();
            let turn = libm::atan2(aside, along).to_degrees().abs();
            if turn > MOST_TURN {
                return false;
            }
            least = least.min(length);
            most = most.max(length);
        }
    }
    least >= SCALES.0 && most <= SCALES.1 && most <= least * MOST_UNEVEN
}

/// Where one pixel to the right and one down lead.
fn steps(map: &Homography, x: f64, y: f64) -> Option<((f64, f64), (f64, f64))> {
    let here = map.apply(x, y)?;
    let right = map.apply(x + 1.0, y)?;
    let below = map.apply(x, y + 1.0)?;
    Some((
        (right.0 - here.0, right.1 - here.1),
        (below.0 - here.0, below.1 - here.1),
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn turned(degrees: f64, scale: f64) -> Homography {
        let (sin, cos) = (
            libm::sin(degrees.to_radians()) * scale,
            libm::cos(degrees.to_radians()) * scale,
        );
        Homography::new([cos, -sin, 40.0, sin, cos, -20.0, 0.0, 0.0, 1.0]).unwrap()
    }

    #[test]
    fn ok_what_a_camera_does() {
        assert!(is_plausible(&Homography::IDENTITY, (1000, 700)));
        assert!(is_plausible(&turned(-6.0, 1.6), (1000, 700)));
        assert!(is_plausible(&turned(12.0, 0.6), (1000, 700)));
    }

    #[test]
    fn err_what_none_does() {
        assert!(!is_plausible(&turned(30.0, 1.0), (1000, 700)));
        assert!(!is_plausible(&turned(0.0, 0.3), (1000, 700)));
        let mirrored = Homography::new([-1.0, 0.0, 999.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0]).unwrap();
        assert!(!is_plausible(&mirrored, (1000, 700)));
        let folded = Homography::new([1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 9e-4, 0.0, 1.0]).unwrap();
        assert!(!is_plausible(&folded, (1000, 700)));
        let squeezed = Homography::new([1.0, 0.0, 0.0, 0.0, 0.46, 0.0, 0.0, 0.0, 1.0]).unwrap();
        assert!(!is_plausible(&squeezed, (1000, 700)));
    }
}
