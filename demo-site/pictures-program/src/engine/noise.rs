//! Pseudo-random numbers, the same on every machine: hashes, lattice noise, and a small generator.
//!
//! Everything accidental in a picture (grain, foxing, a trembling line) comes from here alone, so the
//! same records give the same bytes.

/// A well mixed 32-bit hash of a lattice point.
pub fn hash(x: i32, y: i32, seed: u32) -> u32 {
    let mut h = (x as u32).wrapping_mul(0x9E37_79B1)
        ^ (y as u32).wrapping_mul(0x85EB_CA77).rotate_left(13)
        ^ seed.wrapping_mul(0xC2B2_AE3D);
    h ^= h >> 16;
    h = h.wrapping_mul(0x7FEB_352D);
    h ^= h >> 15;
    h = h.wrapping_mul(0x846C_A68B);
    h ^ (h >> 16)
}

/// A number in `0..1` for a lattice point.
pub fn unit(x: i32, y: i32, seed: u32) -> f32 {
    (hash(x, y, seed) >> 8) as f32 / 16_777_216.0
}

/// Smooth lattice noise in `0..1`, one feature to each unit of `x` and `y`.
pub fn smooth(x: f32, y: f32, seed: u32) -> f32 {
    let (fx, fy) = (x.floor(), y.floor());
    let (ix, iy) = (fx as i32, fy as i32);
    let (u, v) = (ease(x - fx), ease(y - fy));
    let top = mix(unit(ix, iy, seed), unit(ix + 1, iy, seed), u);
    let low = mix(unit(ix, iy + 1, seed), unit(ix + 1, iy + 1, seed), u);
    mix(top, low, v)
}

/// Several octaves of [`smooth`], still in `0..1` and centred on one half.
pub fn cloud(x: f32, y: f32, octaves: u32, seed: u32) -> f32 {
    let (mut sum, mut weight, mut total) = (0.0, 1.0, 0.0);
    let (mut x, mut y) = (x, y);
    for octave in 0..octaves {
        sum += weight * smooth(x, y, seed.wrapping_add(octave.wrapping_mul(101)));
        total += weight;
        weight *= 0.5;
        x = x * 2.03 + 17.1;
        y = y * 2.03 - 9.7;
    }
    sum / total
}

/// Linear mixture: `a` at 0, `b` at 1.
pub fn mix(a: f32, b: f32, t: f32) -> f32 {
    a + (b - a) * t
}

/// 0 below `low`, 1 above `high`, an S-curve between.
pub fn step(low: f32, high: f32, x: f32) -> f32 {
    ease(((x - low) / (high - low)).clamp(0.0, 1.0))
}

fn ease(t: f32) -> f32 {
    t * t * (3.0 - 2.0 * t)
}

/// A seed from words: each design and each impression has its own.
pub fn seed(words: &[&str]) -> u32 {
    let mut hasher = blake3::Hasher::new();
    for word in words {
        hasher.update(word.as_bytes());
        hasher.update(&[0]);
    }
    let bytes = hasher.finalize();
    let b = bytes.as_bytes();
    u32::from_le_bytes([b[0], b[1], b[2], b[3]])
}

/// A small generator (a Weyl sequence, hashed), for drawing things one after another.
pub struct Dice {
    seed: u32,
    count: i32,
}

impl Dice {
    /// A generator whose sequence depends on the seed alone.
    pub fn new(seed: u32) -> Self {
        Self { seed, count: 0 }
    }

    /// A number in `0..1`.
    pub fn roll(&mut self) -> f32 {
        self.count = self.count.wrapping_add(1);
        unit(self.count, self.count >> 7, self.seed)
    }

    /// A number between two others.
    pub fn between(&mut self, low: f32, high: f32) -> f32 {
        mix(low, high, self.roll())
    }

    /// A number around `0`, nearly always within `-spread..spread`, most often near the middle.
    pub fn about(&mut self, spread: f32) -> f32 {
        (self.roll() + self.roll() + self.roll() - 1.5) / 1.5 * spread
    }

    /// True in `share` of the rolls.
    pub fn chance(&mut self, share: f32) -> bool {
        self.roll() < share
    }
}
