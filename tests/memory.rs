//! What pictures take in memory: never more than they are said to need, and never more than the limit.
//!
//! A program of its own, because it counts every allocation of the process. `KEYBLOCK_SCALE=8 cargo test --release -p
//! keyblock-picture --test memory -- --nocapture` makes the pictures eight times as large along each side and prints
//! the peaks.
#![allow(
    clippy::disallowed_methods,
    reason = "tests read and write files of their own"
)]

use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use flate2::Compression;
use flate2::write::ZlibEncoder;
use keyblock_picture::{
    Colour, Fault, Limits, MemoryCause, Plan, Prepared, Request, Store, check_all, prepare_all,
};
use peak_alloc::PeakAlloc;

#[global_allocator]
static ALLOCATED: PeakAlloc = PeakAlloc;

/// One measurement at a time.
static MEASURING: Mutex<()> = Mutex::new(());

/// What the test program itself and the pool of threads take while a picture is prepared.
const BESIDE: usize = 2 << 20;

/// The largest side of the pictures, px: at eight times the size, 198 of the 200 million pixels that are allowed.
fn side() -> u32 {
    let scale = std::env::var("KEYBLOCK_SCALE").ok();
    1760 * scale.and_then(|scale| scale.parse().ok()).unwrap_or(1)
}

/// The result of `work`, and the most bytes that it held at once.
fn peak<T>(work: impl FnOnce() -> T) -> (T, usize) {
    let before = ALLOCATED.current_usage();
    ALLOCATED.reset_peak_usage();
    let result = work();
    (result, ALLOCATED.peak_usage().saturating_sub(before))
}

fn plan(memory: u64) -> Plan {
    Plan {
        largest: 400,
        limits: Limits {
            memory,
            ..Limits::default()
        },
        ..Plan::default()
    }
}

/// Prepares files, and gives their results and the peak.
fn prepare(plan: &Plan, files: &[PathBuf]) -> (Vec<Result<Prepared, Fault>>, usize) {
    let cache = tempfile::tempdir().unwrap();
    let requests: Vec<Request> = files
        .iter()
        .map(|source| Request {
            source: source.clone(),
            largest: None,
        })
        .collect();
    peak(|| prepare_all(&requests, plan, &Store::at(cache.path()), &|_, _| {}))
}

/// Asserts that a picture is prepared within what it is said to need; gives that.
#[track_caller]
fn fits(name: &str, plan: &Plan, file: &Path) -> Prepared {
    let (mut results, peak) = prepare(plan, &[file.to_owned()]);
    let prepared = results
        .remove(0)
        .unwrap_or_else(|fault| panic!("{name}: {fault}"));
    let needed = usize::try_from(prepared.memory).unwrap();
    println!(
        "{name}: {} × {}, {} KiB, needs {} KiB, took {} KiB",
        prepared.width,
        prepared.height,
        fs::metadata(file).unwrap().len() / 1024,
        needed / 1024,
        peak / 1024
    );
    assert!(
        peak <= needed + BESIDE,
        "{name}: took {peak}, needs {needed}"
    );
    prepared
}

/// Asserts that a picture is refused for its memory before it takes any.
#[track_caller]
fn exceeds(name: &str, plan: &Plan, file: &Path, expected: MemoryCause) {
    let (results, peak) = prepare(plan, &[file.to_owned()]);
    match &results[0] {
        Err(Fault::TooMuchMemory {
            needed,
            limit,
            cause,
        }) => {
            println!(
                "{name}: needs {} KiB, refused at {} KiB",
                needed / 1024,
                peak / 1024
            );
            assert!(needed > limit && *limit == plan.limits.memory);
            assert_eq!(*cause, expected, "{name}");
        }
        other => panic!("{name}: {other:?}"),
    }
    assert!(peak <= BESIDE, "{name}: took {peak}");
}

fn written(dir: &Path, name: &str, bytes: &[u8]) -> PathBuf {
    let path = dir.join(name);
    fs::write(&path, bytes).unwrap();
    path
}

/// A row of 16-bit RGBA or of 8-bit RGB, different from row to row.
fn row(y: u32, bytes: usize) -> Vec<u8> {
    (0..bytes)
        .map(|x| (x / 64).to_le_bytes()[0] ^ y.to_le_bytes()[0])
        .collect()
}

/// A PNG of 16-bit RGBA, written row by row.
fn deep_png(path: &Path, width: u32, height: u32) {
    let file = std::io::BufWriter::new(fs::File::create(path).unwrap());
    let mut encoder = png::Encoder::new(file, width, height);
    encoder.set_color(png::ColorType::Rgba);
    encoder.set_depth(png::BitDepth::Sixteen);
    encoder.set_compression(png::Compression::Fastest);
    let mut writer = encoder.write_header().unwrap();
    let mut stream = writer.stream_writer().unwrap();
    for y in 0..height {
        stream.write_all(&row(y, width as usize * 8)).unwrap();
    }
    stream.finish().unwrap();
}

/// A TIFF of 8-bit RGB in one strip, not compressed.
fn flat_tiff(path: &Path, width: u32, height: u32) {
    let mut file = std::io::BufWriter::new(fs::File::create(path).unwrap());
    let entries: [(u16, u16, u32); 8] = [
        (256, 4, width),
        (257, 4, height),
        (259, 3, 1),
        (262, 3, 2),
        (273, 4, 4096),
        (277, 3, 3),
        (278, 4, height),
        (279, 4, width * height * 3),
    ];
    let mut head = b"II\x2A\0\x08\0\0\0\x09\0".to_vec();
    for (at, (tag, kind, value)) in entries.into_iter().enumerate() {
        if at == 2 {
            head.extend([2, 1, 3, 0, 3, 0, 0, 0, 200, 0, 0, 0]);
        }
        head.extend(tag.to_le_bytes());
        head.extend(kind.to_le_bytes());
        head.extend([1, 0, 0, 0]);
        head.extend(value.to_le_bytes());
    }
    head.resize(200, 0);
    head.extend([8, 0, 8, 0, 8, 0]);
    head.resize(4096, 0);
    file.write_all(&head).unwrap();
    for y in 0..height {
        file.write_all(&row(y, width as usize * 3)).unwrap();
    }
    file.flush().unwrap();
}

fn jpeg(width: u32, height: u32, is_progressive: bool) -> Vec<u8> {
    let pixels: Vec<u8> = (0..height)
        .flat_map(|y| row(y, width as usize * 3))
        .collect();
    let mut bytes = Vec::new();
    let mut encoder = jpeg_encoder::Encoder::new(&mut bytes, 80);
    encoder.set_progressive(is_progressive);
    encoder.set_sampling_factor(jpeg_encoder::SamplingFactor::F_2_2);
    encoder
        .encode(
            &pixels,
            u16::try_from(width).unwrap(),
            u16::try_from(height).unwrap(),
            jpeg_encoder::ColorType::Rgb,
        )
        .unwrap();
    bytes
}

fn png_chunk(kind: [u8; 4], content: &[u8]) -> Vec<u8> {
    let checked = [&kind[..], content].concat();
    let mut crc = flate2::Crc::new();
    crc.update(&checked);
    let length = u32::try_from(content.len()).unwrap().to_be_bytes();
    [&length[..], &checked, &crc.sum().to_be_bytes()].concat()
}

/// So many zeros as a zlib stream.
fn zeros(count: usize) -> Vec<u8> {
    let mut encoder = ZlibEncoder::new(Vec::new(), Compression::best());
    let block = vec![0; 1 << 20];
    for _ in 0..count >> 20 {
        encoder.write_all(&block).unwrap();
    }
    encoder.finish().unwrap()
}

/// Bits as a lossless WebP packs them: the lowest of each byte first, numbers lowest bit first (RFC 9649, section 3).
#[derive(Default)]
struct Bits {
    bytes: Vec<u8>,
    used: usize,
}

impl Bits {
    fn number(&mut self, value: u32, count: usize) {
        for bit in 0..count {
            if self.used.is_multiple_of(8) {
                self.bytes.push(0);
            }
            let bit = u8::from(value >> bit & 1 == 1);
            *self.bytes.last_mut().unwrap() |= bit << (self.used % 8);
            self.used += 1;
        }
    }

    /// A word of a prefix code, its highest bit first.
    fn word(&mut self, word: u32, count: usize) {
        for bit in (0..count).rev() {
            self.number(word >> bit & 1, 1);
        }
    }

    /// A code of one symbol, whose words have no bits.
    fn single(&mut self, symbol: u32) {
        for (value, count) in [(1, 1), (0, 1), (1, 1), (symbol, 8)] {
            self.number(value, count);
        }
    }

    /// A code of eleven symbols whose words have 1, 2, … 9, 10 and 10 bits: the shortest in the file that needs the
    /// largest table.
    fn chain(&mut self) {
        self.number(0, 1);
        // The lengths of the words that tell lengths, in their order: 17, 18, 0, 1, … 5, 16, 6, … 10.
        self.number(14 - 4, 4);
        for length in [0, 0, 0, 3, 3, 3, 3, 3, 0, 3, 4, 4, 4, 4] {
            self.number(length, 3);
        }
        // Eleven symbols.
        for (value, count) in [(1, 1), (1, 3), (11 - 2, 4)] {
            self.number(value, count);
        }
        // Six words of three bits, four of four.
        for length in 1..=6 {
            self.word(length - 1, 3);
        }
        for length in [7, 8, 9, 10, 10] {
            self.word(12 + length - 7, 4);
        }
    }
}

/// A lossless WebP of 4 × 4 px with the most groups of prefix codes.
fn webp_of_groups() -> Vec<u8> {
    let mut bits = Bits::default();
    // The sign, the size less one, no opacity, version 0; no transform, no cache of colours.
    for (value, count) in [(0x2F, 8), (3, 14), (3, 14), (0, 1), (0, 3), (0, 1), (0, 1)] {
        bits.number(value, count);
    }
    // Groups by blocks of 512 px; the picture of their numbers has one pixel, red and green 255: the group 65,535.
    for (value, count) in [(1, 1), (7, 3), (0, 1)] {
        bits.number(value, count);
    }
    for symbol in [255, 255, 0, 0, 0] {
        bits.single(symbol);
    }
    for _ in 0..65_536 * 5 {
        bits.chain();
    }
    // Sixteen pixels of four words of one bit.
    bits.number(0, 32);
    bits.number(0, 32);
    let mut content = bits.bytes;
    content.resize(content.len().next_multiple_of(2), 0);
    let length = |bytes: usize| u32::try_from(bytes).unwrap().to_le_bytes();
    let head = [&b"WEBPVP8L"[..], &length(content.len())].concat();
    [
        &b"RIFF"[..],
        &length(head.len() + content.len()),
        &head,
        &content,
    ]
    .concat()
}

/// A small PNG with a chunk before its pixels.
fn png_with(kind: [u8; 4], content: &[u8]) -> Vec<u8> {
    let mut encoder = ZlibEncoder::new(Vec::new(), Compression::fast());
    for _ in 0..16 {
        encoder.write_all(&[0; 1 + 16 * 3]).unwrap();
    }
    [
        b"\x89PNG\r\n\x1A\n".to_vec(),
        png_chunk(*b"IHDR", &[0, 0, 0, 16, 0, 0, 0, 16, 8, 2, 0, 0, 0]),
        png_chunk(kind, content),
        png_chunk(*b"IDAT", &encoder.finish().unwrap()),
        png_chunk(*b"IEND", &[]),
    ]
    .concat()
}

fn interlaced_png(width: u32, height: u32) -> Vec<u8> {
    let mut encoder = ZlibEncoder::new(Vec::new(), Compression::fast());
    for (left, top, across, down) in [
        (0, 0, 8, 8),
        (4, 0, 8, 8),
        (0, 4, 4, 8),
        (2, 0, 4, 4),
        (0, 2, 2, 4),
        (1, 0, 2, 2),
        (0, 1, 1, 2),
    ] {
        let columns = (width - left).div_ceil(across) as usize;
        for y in (top..height).step_by(down) {
            encoder.write_all(&[0]).unwrap();
            encoder.write_all(&row(y, columns * 3)).unwrap();
        }
    }
    let head = [
        &width.to_be_bytes()[..],
        &height.to_be_bytes(),
        &[8, 2, 0, 0, 1],
    ]
    .concat();
    [
        b"\x89PNG\r\n\x1A\n".to_vec(),
        png_chunk(*b"IHDR", &head),
        png_chunk(*b"IDAT", &encoder.finish().unwrap()),
        png_chunk(*b"IEND", &[]),
    ]
    .concat()
}

#[test]
fn what_unpacks_to_gigabytes_beside_the_pixels_takes_no_memory() {
    let _one = MEASURING.lock().unwrap_or_else(PoisonError::into_inner);
    let dir = tempfile::tempdir().unwrap();
    let plan = plan(1 << 30);
    let packed = zeros(256 << 20);
    // A name, a zero, the method; a text has two more fields of its own before what is compressed.
    let profile = [b"bomb\0\0", &packed[..]].concat();
    let international = [b"bomb\0\x01\0\0\0", &packed[..]].concat();
    for (kind, content) in [
        (*b"iCCP", &profile),
        (*b"zTXt", &profile),
        (*b"iTXt", &international),
    ] {
        let name = String::from_utf8_lossy(&kind).into_owned();
        let file = written(dir.path(), &name, &png_with(kind, content));
        let (results, peak) = prepare(&plan, &[file]);
        let prepared = results[0].as_ref().unwrap();
        println!("PNG, {name} of 256 MiB: took {} KiB", peak / 1024);
        // A profile is unpacked up to its limit of 16 MiB, in a buffer that doubles.
        let most = if kind == *b"iCCP" { 26 << 20 } else { 4 << 20 };
        assert!(peak <= most, "{name}: {peak}");
        let colour = if kind == *b"iCCP" {
            Colour::ProfileUnusable
        } else {
            Colour::Untagged
        };
        assert_eq!(prepared.colour, colour);
    }

    // The parts of a profile, as many as a file may hold and more.
    let mut chain = jpeg(64, 64, false)[..2].to_vec();
    for part in 0..1024_u32 {
        chain.extend([0xFF, 0xE2, 0xFF, 0xFF]);
        chain.extend(b"ICC_PROFILE\0");
        chain.extend([part.to_le_bytes()[0], 255]);
        chain.resize(chain.len() + 65533 - 14, 7);
    }
    chain.extend(&jpeg(64, 64, false)[2..]);
    let file = written(dir.path(), "chain.jpg", &chain);
    let prepared = fits("JPEG, a chain of 64 MiB", &plan, &file);
    assert_eq!(prepared.colour, Colour::ProfileUnusable);

    // A profile that a tag says has four gigabytes, and lists of four thousand million strips.
    for tag in [34675_u16, 273, 279, 258] {
        let mut tiff = tiff_with_count(tag, u32::MAX);
        tiff.resize(4096 + 16 * 16 * 3, 9);
        let file = written(dir.path(), "count.tif", &tiff);
        let (results, peak) = prepare(&plan, &[file]);
        println!("TIFF, tag {tag} counts 4 G: took {} KiB", peak / 1024);
        assert!(peak <= 24 << 20, "{tag}: {peak}");
        assert!(
            results[0].is_ok() || matches!(results[0], Err(Fault::CutShort)),
            "{results:?}"
        );
    }

    // A strip of 16 × 16 px whose JPEG states 60,000 × 60,000.
    let mut forged = jpeg(16, 16, true);
    let frame = forged
        .windows(2)
        .position(|pair| pair == [0xFF, 0xC2])
        .unwrap();
    forged[frame + 5..frame + 9].copy_from_slice(&[0xEA, 0x60, 0xEA, 0x60]);
    let mut tiff = tiff_with_count(0, 1);
    let compression = tiff
        .windows(4)
        .position(|part| part == [3, 1, 3, 0])
        .unwrap();
    tiff[compression + 8] = 7;
    let length = tiff
        .windows(4)
        .position(|part| part == [0x17, 1, 4, 0])
        .unwrap();
    tiff[length + 8..length + 12]
        .copy_from_slice(&u32::try_from(forged.len()).unwrap().to_le_bytes());
    tiff.extend(forged);
    let file = written(dir.path(), "forged.tif", &tiff);
    let (results, peak) = prepare(&plan, &[file]);
    println!("TIFF, a strip of 3.6 G px: took {} KiB", peak / 1024);
    assert!(matches!(results[0], Err(Fault::Damaged(_))), "{results:?}");
    assert!(peak <= 4 << 20, "{peak}");
}

/// The head of a TIFF of 16 × 16 px in one strip, with another count of one tag.
fn tiff_with_count(changed: u16, count: u32) -> Vec<u8> {
    let entries: [(u16, u16, u32, u32); 10] = [
        (256, 4, 1, 16),
        (257, 4, 1, 16),
        (258, 3, 3, 200),
        (259, 3, 1, 1),
        (262, 3, 1, 2),
        (273, 4, 1, 4096),
        (277, 3, 1, 3),
        (278, 4, 1, 16),
        (279, 4, 1, 768),
        (34675, 7, 8, 1000),
    ];
    let mut head = b"II\x2A\0\x08\0\0\0\x0A\0".to_vec();
    for (tag, kind, own, value) in entries {
        head.extend(tag.to_le_bytes());
        head.extend(kind.to_le_bytes());
        head.extend(if tag == changed { count } else { own }.to_le_bytes());
        head.extend(value.to_le_bytes());
    }
    head.resize(200, 0);
    head.extend([8, 0, 8, 0, 8, 0]);
    head.resize(4096, 0);
    head
}

#[test]
fn a_picture_takes_no_more_memory_than_it_is_said_to_need() {
    let _one = MEASURING.lock().unwrap_or_else(PoisonError::into_inner);
    let dir = tempfile::tempdir().unwrap();
    let plan = plan(1 << 40);
    let (width, height) = (side(), side());
    let path = |name: &str| dir.path().join(name);

    deep_png(&path("deep.png"), width, height);
    fits("PNG, 16-bit RGBA", &plan, &path("deep.png"));
    flat_tiff(&path("flat.tif"), width, height);
    fits("TIFF, one strip", &plan, &path("flat.tif"));
    let file = written(dir.path(), "interlaced.png", &interlaced_png(width, height));
    fits("PNG, interlaced", &plan, &file);
    for (name, is_progressive) in [("JPEG, baseline", false), ("JPEG, progressive", true)] {
        let file = written(dir.path(), "a.jpg", &jpeg(width, height, is_progressive));
        fits(name, &plan, &file);
    }
    // Not scaled: the pyramid needs most.
    let whole = Plan {
        largest: 20_000,
        quality: 100,
        ..plan.clone()
    };
    fits("TIFF, in full size", &whole, &path("flat.tif"));
    let file = written(dir.path(), "a.jpg", &jpeg(width, height / 2, false));
    fits("JPEG, in full size", &whole, &file);
    // The library that writes WebP is slow.
    let (width, height) = (width.min(1500), height.min(1200));
    for has_alpha in [false, true] {
        let bytes =
            (0..height).flat_map(|y| row(y, width as usize * if has_alpha { 4 } else { 3 }));
        let bytes: Vec<u8> = bytes.collect();
        let kind = if has_alpha {
            image::ExtendedColorType::Rgba8
        } else {
            image::ExtendedColorType::Rgb8
        };
        let file = path("a.webp");
        let mut out = fs::File::create(&file).unwrap();
        image::codecs::webp::WebPEncoder::new_lossless(&mut out)
            .encode(&bytes, width, height, kind)
            .unwrap();
        fits("WebP", &plan, &file);
    }
}

#[test]
fn the_codes_of_a_lossless_webp_are_counted_before_they_are_read() {
    let _one = MEASURING.lock().unwrap_or_else(PoisonError::into_inner);
    let dir = tempfile::tempdir().unwrap();
    let file = written(dir.path(), "groups.webp", &webp_of_groups());
    let cause = MemoryCause::LosslessWebP;
    exceeds("WebP, 65,536 groups", &plan(1 << 30), &file, cause);
    // It is sound: where the limit allows it, it is read, and takes more than the usual limit.
    let prepared = fits("WebP, 65,536 groups", &plan(1 << 40), &file);
    assert_eq!((prepared.width, prepared.height), (4, 4));
    let (_, peak) = prepare(&plan(1 << 40), &[file]);
    assert!(peak > 1 << 30, "{peak}");
}

#[test]
fn what_needs_more_than_the_limit_is_refused_before_it_is_unpacked() {
    let _one = MEASURING.lock().unwrap_or_else(PoisonError::into_inner);
    let dir = tempfile::tempdir().unwrap();
    let (width, height) = (side(), side());
    let tight = plan(u64::from(width) * u64::from(height) * 2);
    let file = written(dir.path(), "a.jpg", &jpeg(width, height, true));
    exceeds("JPEG, progressive", &tight, &file, MemoryCause::Scans);
    let file = written(dir.path(), "a.png", &interlaced_png(width, height));
    exceeds("PNG, interlaced", &tight, &file, MemoryCause::Interlaced);
    let file = written(dir.path(), "b.jpg", &jpeg(width, height, false));
    exceeds("JPEG, baseline", &tight, &file, MemoryCause::Size);
    // Row by row, the same limit is enough: 24 MB would be needed for eight bytes a pixel.
    let path = dir.path().join("deep.png");
    deep_png(&path, width, height);
    let roomy = plan(u64::from(width) * u64::from(height) * 5 + (24 << 20));
    fits("PNG, 16-bit RGBA, under a limit", &roomy, &path);
}

#[test]
fn pictures_at_once_stay_below_the_limit_together() {
    let _one = MEASURING.lock().unwrap_or_else(PoisonError::into_inner);
    let dir = tempfile::tempdir().unwrap();
    let (width, height) = (side(), side());
    let one = {
        let file = written(dir.path(), "0.jpg", &jpeg(width, height, false));
        fits("JPEG, one of several", &plan(1 << 40), &file).memory
    };
    // Room for one and a half.
    let plan = plan(one * 3 / 2);
    let files: Vec<PathBuf> = (1..=6_u8)
        .map(|number| {
            let mut bytes = jpeg(width, height, false);
            // Different content, or it would be made once: a comment of one byte.
            bytes.splice(2..2, [0xFF, 0xFE, 0, 3, number]);
            written(dir.path(), &format!("{number}.jpg"), &bytes)
        })
        .collect();
    let threads = rayon::ThreadPoolBuilder::new()
        .num_threads(4)
        .build()
        .unwrap();
    let (results, peak) = threads.install(|| prepare(&plan, &files));
    assert!(results.iter().all(Result::is_ok), "{results:?}");
    let limit = usize::try_from(plan.limits.memory).unwrap();
    println!(
        "six at once: limit {} KiB, took {} KiB",
        limit / 1024,
        peak / 1024
    );
    assert!(peak <= limit + BESIDE, "{peak} of {limit}");

    let requests: Vec<Request> = files
        .into_iter()
        .map(|source| Request {
            source,
            largest: None,
        })
        .collect();
    let cache = dir.path().join("none");
    let (results, peak) = peak_of_check(&threads, &requests, &plan, &cache);
    assert!(results.iter().all(Result::is_ok), "{results:?}");
    assert!(peak <= limit + BESIDE, "{peak} of {limit}");
}

fn peak_of_check(
    threads: &rayon::ThreadPool,
    requests: &[Request],
    plan: &Plan,
    cache: &Path,
) -> (Vec<Result<Colour, Fault>>, usize) {
    peak(|| threads.install(|| check_all(requests, plan, &Store::at(cache), &|_, _| {})))
}

/// Numbers that follow from a seed (xorshift, Marsaglia 2003).
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, limit: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        usize::try_from(self.0 >> 16).unwrap_or(0) % limit.max(1)
    }
}

/// The unit test of the same name changes pictures in more ways and lets panics through; this one measures.
#[test]
fn mutated_pictures_stay_below_the_limit() {
    let _one = MEASURING.lock().unwrap_or_else(PoisonError::into_inner);
    let dir = tempfile::tempdir().unwrap();
    let path = |name: &str| dir.path().join(name);
    deep_png(&path("deep.png"), 60, 50);
    flat_tiff(&path("flat.tif"), 60, 50);
    let mut webp = Vec::new();
    image::codecs::webp::WebPEncoder::new_lossless(&mut webp)
        .encode(
            &row(7, 60 * 50 * 4),
            60,
            50,
            image::ExtendedColorType::Rgba8,
        )
        .unwrap();
    let sound = [
        fs::read(path("deep.png")).unwrap(),
        interlaced_png(60, 50),
        fs::read(path("flat.tif")).unwrap(),
        tiff_with_count(0, 1),
        jpeg(60, 50, false),
        jpeg(60, 50, true),
        webp,
    ];
    let plan = plan(32 << 20);
    let requests: Vec<Request> = (0..640_u32)
        .map(|round| {
            let mut numbers = Numbers(u64::from(round).wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1);
            let mut bytes = sound[round as usize % sound.len()].clone();
            let length = bytes.len();
            match numbers.below(4) {
                0 => bytes.truncate(numbers.below(length)),
                1 => {
                    for _ in 0..=numbers.below(6) {
                        bytes[numbers.below(length)] ^= 1 << numbers.below(8);
                    }
                }
                2 => {
                    let (from, to) = (numbers.below(length), numbers.below(length));
                    let part = bytes[from.min(to)..from.max(to)].to_vec();
                    let at = numbers.below(length);
                    bytes.splice(at..at, part);
                }
                _ => {
                    for _ in 0..=numbers.below(3) {
                        let at = numbers.below(length.saturating_sub(4).min(300));
                        let absurd = [u32::MAX, 0x7FFF_FFFF, 0xFFFF, 60_000][numbers.below(4)];
                        let absurd = [absurd.to_be_bytes(), absurd.to_le_bytes()];
                        bytes[at..at + 4].copy_from_slice(&absurd[numbers.below(2)]);
                    }
                }
            }
            Request {
                source: written(dir.path(), &round.to_string(), &bytes),
                largest: None,
            }
        })
        .collect();
    let threads = rayon::ThreadPoolBuilder::new()
        .num_threads(2)
        .build()
        .unwrap();
    let (results, peak) = peak_of_check(&threads, &requests, &plan, &path("none"));
    let read = results.iter().filter(|result| result.is_ok()).count();
    println!(
        "640 mutated: {read} read, the others refused; took {} KiB",
        peak / 1024
    );
    let senseless = Err(Fault::Damaged("its content makes no sense".into()));
    let panicked: Vec<usize> = (0..640)
        .filter(|&round| results[round] == senseless)
        .collect();
    assert_eq!(panicked, Vec::<usize>::new());
    // A header may take a profile beside the limit, in each thread.
    assert!(peak <= (32 << 20) + 2 * (24 << 20), "{peak}");
    assert!((64..576).contains(&read), "{read}");
}
