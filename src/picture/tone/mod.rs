//! Tone: how a part of a photograph looks beside the bare paper of its sheet.
//!
//! In: sRGB pixels of a part, and the bare paper of the same photograph. Out: the mean and the spread
//! of CIELAB under D65, with the paper taken as white: each linear channel is divided by the paper's,
//! so that the exposure and most of the light's colour fall out and the paper itself is 100, 0, 0.
//!
//! The result is not colorimetry: it still depends on the camera's rendering, on uneven light and on the colour
//! of this sheet's paper. The pages say so beside every number, and nothing else uses these numbers.
//!
//! `cielab` holds the formulas, `paper` finds the bare paper where the record does not say.

pub mod cielab;
pub(crate) mod paper;

use image::Rgb;

use cielab::{Lab, Linear};

/// A tone measured in a photograph: CIELAB under D65, with bare paper taken as white.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tone {
    /// The mean of L*, a*, b*.
    pub mean: [f64; 3],
    /// The standard deviation of each, among pixels at the scale at which details are searched.
    pub spread: [f64; 3],
    /// Whether the record says where the paper is bare; otherwise it was found.
    pub paper_is_given: bool,
}

/// The mean of L*, a*, b* over pixels and the standard deviation of each; `None` where there are no
/// pixels, or where the paper is so dark that nothing can be relative to it.
pub fn measured(
    pixels: impl Iterator<Item = Rgb<u8>>,
    paper: Linear,
) -> Option<([f64; 3], [f64; 3])> {
    if paper.0.iter().any(|channel| *channel < 1e-3) {
        return None;
    }
    let (mut count, mut sum, mut squares) = (0u32, [0.0; 3], [0.0; 3]);
    for pixel in pixels {
        let linear = Linear::from_srgb(pixel.0);
        let Lab(lab) = Linear(std::array::from_fn(|c| linear.0[c] / paper.0[c])).to_lab();
        count += 1;
        for (channel, value) in lab.into_iter().enumerate() {
            sum[channel] += value;
            squares[channel] += value * value;
        }
    }
    if count == 0 {
        return None;
    }
    let count = f64::from(count);
    let mean = sum.map(|sum| sum / count);
    let spread = std::array::from_fn(|c| (squares[c] / count - mean[c] * mean[c]).max(0.0).sqrt());
    Some((mean, spread))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paper_itself_is_white_whatever_its_colour_and_exposure() {
        for paper in [[250, 250, 250], [228, 214, 180], [120, 118, 96]] {
            let (mean, spread) =
                measured([Rgb(paper); 9].into_iter(), Linear::from_srgb(paper)).unwrap();
            assert!((mean[0] - 100.0).abs() < 1e-9, "{mean:?}");
            assert!(mean[1].abs() < 1e-9 && mean[2].abs() < 1e-9, "{mean:?}");
            assert!(spread.iter().all(|s| s.abs() < 1e-5), "{spread:?}");
        }
    }

    #[test]
    fn half_the_light_of_the_paper_is_the_same_tone_on_any_exposure() {
        // Y = 0.5 of the white's is L* 76.0693 (CIE 15: 116·0.5^(1/3) - 16).
        let of = |paper: f64| {
            let paper = Linear([paper; 3]);
            let half = Linear(paper.0.map(|c| c / 2.0)).to_srgb();
            measured([Rgb(half)].into_iter(), paper).unwrap().0[0]
        };
        assert!((of(1.0) - 76.0693).abs() < 0.2, "{}", of(1.0));
        assert!((of(0.6) - 76.0693).abs() < 0.2, "{}", of(0.6));
    }

    #[test]
    fn the_spread_is_the_standard_deviation() {
        // Two greys in equal numbers lie one standard deviation from their mean.
        let (dark, light) = ([100; 3], [200; 3]);
        let pixels = [Rgb(dark), Rgb(light), Rgb(light), Rgb(dark)];
        let (mean, spread) = measured(pixels.into_iter(), Linear([1.0; 3])).unwrap();
        let [low, high] = [dark, light].map(|grey| Linear::from_srgb(grey).to_lab().0[0]);
        assert!((mean[0] - f64::midpoint(low, high)).abs() < 1e-9);
        assert!((spread[0] - (high - low) / 2.0).abs() < 1e-9);
    }

    #[test]
    fn nothing_is_relative_to_black() {
        assert!(measured([Rgb([9; 3])].into_iter(), Linear([0.0; 3])).is_none());
        assert!(measured(std::iter::empty(), Linear([1.0; 3])).is_none());
    }
}
