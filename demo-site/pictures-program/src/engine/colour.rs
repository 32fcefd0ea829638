//! Colour in linear light, in which inks multiply as they do on paper.

/// Reflectance of red, green and blue, each `0..1`, linear.
pub type Colour = [f32; 3];

/// A colour from its usual six hexadecimal digits.
pub fn hex(code: u32) -> Colour {
    [16, 8, 0].map(|shift| linear(((code >> shift) & 255) as f32 / 255.0))
}

/// From sRGB `0..1` to linear light (IEC 61966-2-1).
pub fn linear(value: f32) -> f32 {
    if value <= 0.040_45 {
        value / 12.92
    } else {
        libm::powf((value + 0.055) / 1.055, 2.4)
    }
}

/// From linear light to sRGB `0..1`.
pub fn encoded(value: f32) -> f32 {
    if value <= 0.003_130_8 {
        value * 12.92
    } else {
        1.055 * libm::powf(value, 1.0 / 2.4) - 0.055
    }
}

/// A mixture of two colours: the first at 0.
pub fn blend(a: Colour, b: Colour, t: f32) -> Colour {
    [0, 1, 2].map(|i| a[i] + (b[i] - a[i]) * t)
}

/// Every channel multiplied.
pub fn scaled(a: Colour, by: f32) -> Colour {
    a.map(|v| v * by)
}

/// Channel by channel.
pub fn times(a: Colour, b: Colour) -> Colour {
    [a[0] * b[0], a[1] * b[1], a[2] * b[2]]
}

/// A table from linear light to 8 bits, for the last step of a picture.
pub struct Encoder(Vec<f32>);

impl Encoder {
    const STEPS: usize = 4096;

    /// The table, with 4096 steps: finer than 8 bits need, dark tones included.
    pub fn new() -> Self {
        // The square root gives dark tones more steps, where the eye distinguishes more.
        Self(
            (0..=Self::STEPS)
                .map(|i| {
                    let root = i as f32 / Self::STEPS as f32;
                    encoded(root * root) * 255.0
                })
                .collect(),
        )
    }

    /// A channel value `0..255`, not yet rounded.
    pub fn value(&self, linear: f32) -> f32 {
        let at = linear.clamp(0.0, 1.0).sqrt() * Self::STEPS as f32;
        self.0[(at + 0.5) as usize]
    }
}
