//! The same bytes on every processor, whatever vector code it has.
//!
//! The libraries do not let safe code switch theirs off: `set_cpu_extensions` of fast_image_resize is unsafe,
//! and `set_use_unsafe(false)` of zune-core (0.5.3) leaves every extension in use. So their bytes are held
//! against those recorded on x86-64 with AVX2, and differ where another processor gives others.

use zune_jpeg::JpegDecoder;
use zune_jpeg::zune_core::bytestream::ZCursor;
use zune_jpeg::zune_core::colorspace::ColorSpace;
use zune_jpeg::zune_core::options::DecoderOptions;

use crate::extent::Extent;
use crate::scaling::scale;

/// A picture with edges, gradients and noise, the same on every machine.
fn picture(extent: Extent) -> Vec<u8> {
    let mut noise = 1_u32;
    let pixels = (0..extent.height).flat_map(|y| (0..extent.width).map(move |x| (x, y)));
    let bytes = pixels.flat_map(|(x, y)| {
        noise = noise.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        let [dots, ..] = (noise >> 8).to_le_bytes();
        let line = if (x / 7 + y / 3) % 5 == 0 { 255 } else { 20 };
        let [ramp, ..] = (x * 3 + y).to_le_bytes();
        [line, ramp, dots]
    });
    bytes.collect()
}

fn jpeg(extent: Extent, factor: jpeg_encoder::SamplingFactor, is_progressive: bool) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = jpeg_encoder::Encoder::new(&mut bytes, 83);
    encoder.set_sampling_factor(factor);
    encoder.set_progressive(is_progressive);
    let [width, height] = [extent.width, extent.height].map(|side| u16::try_from(side).unwrap());
    let colours = jpeg_encoder::ColorType::Rgb;
    encoder
        .encode(&picture(extent), width, height, colours)
        .unwrap();
    bytes
}

#[test]
fn the_reader_of_jpeg_gives_the_bytes_that_were_recorded() {
    let mut hasher = blake3::Hasher::new();
    for (width, height) in [(64, 64), (333, 217), (1021, 640), (17, 900)] {
        let extent = Extent { width, height };
        for factor in [
            jpeg_encoder::SamplingFactor::R_4_4_4,
            jpeg_encoder::SamplingFactor::R_4_2_2,
            jpeg_encoder::SamplingFactor::R_4_2_0,
        ] {
            for is_progressive in [false, true] {
                let bytes = jpeg(extent, factor, is_progressive);
                let options = DecoderOptions::default().jpeg_set_out_colorspace(ColorSpace::RGB);
                let mut decoder = JpegDecoder::new_with_options(ZCursor::new(&bytes), options);
                hasher.update(&decoder.decode().unwrap());
            }
        }
    }
    assert_eq!(&hasher.finalize().to_hex()[..16], "2ca260142375e0b4");
}

#[test]
fn the_scaler_gives_the_bytes_that_were_recorded() {
    let from = Extent {
        width: 1021,
        height: 640,
    };
    let source = picture(from);
    let hashes = [(510, 320), (333, 217), (64, 901)].map(|(width, height)| {
        let scaled = scale(from, &source, Extent { width, height }).unwrap();
        blake3::hash(scaled.as_raw()).to_hex()[..16].to_owned()
    });
    assert_eq!(
        hashes,
        ["5188bea64538656f", "573d57c9f42e4d70", "9cd0960e5bae0671"]
    );
}
