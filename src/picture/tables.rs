//! ICC profiles made of tables (`lut8Type`, `lut16Type` and `lutAToBType`, ICC.1:2022, 10.10 to 10.12): conversion
//! from one, three or four 8-bit channels to 8-bit sRGB.
//!
//! In: a profile as `moxcms` reads it. Out: pixels that are the same on every processor: plain sums and products
//! of `f64`, which no compiler may fuse, over tables made beforehand. The converters of `moxcms` compute
//! differently where a processor has vector code.
//!
//! Between the nodes of a table: tetrahedra over the last three channels, and a straight line over the first of
//! four. This is the usual method; corners of a cube alone would tint greys.
//!
//! The perceptual table is used, or the colorimetric or that of saturation where a profile has no other. Black is
//! not scaled to black: what a print's darkest ink leaves of light stays visible.

use moxcms::{ColorProfile, DataColorSpace, LutStore, LutType, LutWarehouse, ToneReprCurve};

use crate::embedded::EmbeddedProfile;
use crate::fault::Fault;
use crate::profile::sampled_curve;
use crate::srgb::Encoder;

/// How many places of a curve are computed beforehand.
const PLACES: u16 = 4096;

/// The conversion of a profile of tables.
pub struct Tables {
    channels: usize,
    /// For each channel and value: the node below, as an offset into `nodes`, and the way to the next, 0 to 1.
    inputs: Vec<Vec<(usize, f64)>>,
    /// What one step along each channel adds to an offset.
    strides: Vec<usize>,
    /// Three values a node, 0 to 1.
    nodes: Vec<f64>,
    /// The steps after the table, in their order.
    after: Vec<Step>,
    space: Space,
    encoder: Encoder,
}

/// A step between the table and the profile connection space.
enum Step {
    /// A curve for each of the three channels.
    Curves([Vec<f64>; 3]),
    /// Three rows, and what is added to each.
    Matrix([[f64; 3]; 3], [f64; 3]),
}

/// How numbers from 0 to 1 encode the profile connection space.
#[derive(Clone, Copy)]
enum Space {
    /// CIELAB; the value that stands for L* 100, and what a* and b* are multiplied by before 128 is taken off.
    Lab { white: f64, ab: f64 },
    /// XYZ, of which 1 stands for 1 + 32767/32768.
    Xyz,
}

/// ICC.1:2022, 6.3.4.2: CIELAB of 8 bits, and of 16 bits in a `lutAToBType`.
const LAB: Space = Space::Lab {
    white: 1.0,
    ab: 255.0,
};
/// The same clause: CIELAB of 16 bits in a `lut16Type`, where 0xFF00 is L* 100 and 0x8000 a neutral.
const LAB_OF_LUT16: Space = Space::Lab {
    white: 65280.0 / 65535.0,
    ab: 65535.0 / 256.0,
};

impl Tables {
    /// The conversion of a profile; `None` where it has no table for its channels, or one that makes no sense.
    pub fn new(profile: &ColorProfile) -> Option<Tables> {
        let channels = match profile.color_space {
            DataColorSpace::Gray => 1,
            DataColorSpace::Rgb => 3,
            DataColorSpace::Cmyk => 4,
            _ => return None,
        };
        let table = [
            &profile.lut_a_to_b_perceptual,
            &profile.lut_a_to_b_colorimetric,
            &profile.lut_a_to_b_saturation,
        ];
        let table = table.into_iter().find_map(Option::as_ref)?;
        let parts = match table {
            LutWarehouse::Lut(table) => of_lut(table, profile.pcs),
            LutWarehouse::Multidimensional(table) => of_a_to_b(table, profile.pcs),
        }?;
        parts.joined(channels)
    }

    /// The conversion of inks by the profile of a file.
    ///
    /// # Errors
    /// Where there is no profile of four inks that can be used.
    pub fn of_inks(profile: &EmbeddedProfile) -> Result<Tables, Fault> {
        let EmbeddedProfile::Icc(profile) = profile else {
            return Err(Fault::InksWithoutProfile);
        };
        ColorProfile::new_from_slice(profile)
            .ok()
            .filter(|profile| profile.color_space == DataColorSpace::Cmyk)
            .and_then(|profile| Tables::new(&profile))
            .ok_or(Fault::InksWithoutProfile)
    }

    /// How many channels it converts from.
    pub fn channels(&self) -> usize {
        self.channels
    }

    /// Converts pixels of [`Tables::channels`] channels to sRGB.
    pub fn convert(&self, from: &[u8], to: &mut [u8]) {
        let (mut last, mut colour): (&[u8], [u8; 3]) = (&[], [0; 3]);
        for (from, to) in from.chunks_exact(self.channels).zip(to.chunks_exact_mut(3)) {
            // Neighbours are often equal, on a mount for instance.
            if from != last {
                colour = self.colour(from);
                last = from;
            }
            to.copy_from_slice(&colour);
        }
    }

    fn colour(&self, values: &[u8]) -> [u8; 3] {
        let at = |channel: usize| self.inputs[channel][usize::from(values[channel])];
        let mut colour = match self.channels {
            1 => self.along(0, at(0), |offset| self.node(offset)),
            3 => self.tetrahedron(0, [at(0), at(1), at(2)], 0),
            _ => self.along(0, at(0), |offset| {
                self.tetrahedron(1, [at(1), at(2), at(3)], offset)
            }),
        };
        for step in &self.after {
            colour = step.apply(colour);
        }
        match self.space {
            Space::Lab { white, ab } => self.encoder.lab([
                colour[0] / white * 100.0,
                colour[1] * ab - 128.0,
                colour[2] * ab - 128.0,
            ]),
            Space::Xyz => self
                .encoder
                .xyz(colour.map(|value| value * (65535.0 / 32768.0))),
        }
    }

    fn node(&self, offset: usize) -> [f64; 3] {
        let node = self.nodes.get(offset..offset + 3);
        node.map_or([0.0; 3], |node| [node[0], node[1], node[2]])
    }

    /// Between two nodes along one channel.
    fn along(
        &self,
        channel: usize,
        (below, way): (usize, f64),
        value: impl Fn(usize) -> [f64; 3],
    ) -> [f64; 3] {
        let low = value(below);
        if way == 0.0 {
            return low;
        }
        let high = value(below + self.strides[channel]);
        [0, 1, 2].map(|c| low[c] + (high[c] - low[c]) * way)
    }

    /// Within a cube of nodes over three channels, `first` the first of them: the cube is cut into six
    /// tetrahedra along its diagonal.
    fn tetrahedron(&self, first: usize, at: [(usize, f64); 3], offset: usize) -> [f64; 3] {
        // The channels by falling way from the node; the earlier first among equals.
        let mut order = [0, 1, 2];
        order.sort_by(|&a, &b| at[b].1.total_cmp(&at[a].1));
        let mut corner = offset + at[0].0 + at[1].0 + at[2].0;
        let mut from = self.node(corner);
        let mut sum = from;
        for channel in order {
            let way = at[channel].1;
            if way == 0.0 {
                break;
            }
            corner += self.strides[first + channel];
            let to = self.node(corner);
            for c in 0..3 {
                sum[c] += (to[c] - from[c]) * way;
            }
            from = to;
        }
        sum
    }
}

impl Step {
    fn apply(&self, colour: [f64; 3]) -> [f64; 3] {
        match self {
            Step::Curves(curves) => [0, 1, 2].map(|c| between(&curves[c], colour[c])),
            Step::Matrix(rows, add) => [0, 1, 2].map(|r| {
                let row = rows[r];
                row[0] * colour[0] + row[1] * colour[1] + row[2] * colour[2] + add[r]
            }),
        }
    }
}

/// The value of samples at equal distances from 0 to 1, straight between them.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "a place among a few thousand samples"
)]
fn between(samples: &[f64], x: f64) -> f64 {
    let place = x.clamp(0.0, 1.0) * (samples.len() - 1) as f64;
    let before = (place as usize).min(samples.len() - 2);
    samples[before] + (samples[before + 1] - samples[before]) * (place - before as f64)
}

/// The parts of a table as a profile has them.
struct Parts {
    /// Curves before the table, each of two values at least.
    inputs: Vec<Vec<f64>>,
    /// Nodes along each channel.
    grid: Vec<usize>,
    nodes: Vec<f64>,
    after: Vec<Step>,
    space: Space,
}

impl Parts {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        clippy::cast_precision_loss,
        reason = "a place among at most 255 nodes"
    )]
    fn joined(self, channels: usize) -> Option<Tables> {
        if self.inputs.len() != channels || self.grid.len() != channels {
            return None;
        }
        let mut strides = vec![0; channels];
        let mut size = 3;
        for channel in (0..channels).rev() {
            strides[channel] = size;
            size = self.grid[channel].checked_mul(size)?;
        }
        let is_sound = self.grid.iter().all(|&nodes| nodes >= 2) && self.nodes.len() == size;
        if !is_sound || self.inputs.iter().any(|curve| curve.len() < 2) {
            return None;
        }
        let inputs = (0..channels).map(|channel| {
            let last = self.grid[channel] - 1;
            let value = |value: u8| {
                let place = between(&self.inputs[channel], f64::from(value) / 255.0) * last as f64;
                let below = (place as usize).min(last);
                (below * strides[channel], place - below as f64)
            };
            (0..=u8::MAX).map(value).collect()
        });
        Some(Tables {
            channels,
            inputs: inputs.collect(),
            strides,
            nodes: self.nodes,
            after: self.after,
            space: self.space,
            encoder: Encoder::new(),
        })
    }
}

/// `lut8Type` and `lut16Type`. Their matrix applies to XYZ as the input alone.
fn of_lut(table: &moxcms::LutDataType, pcs: DataColorSpace) -> Option<Parts> {
    if table.num_output_channels != 3 {
        return None;
    }
    let is_lut16 = table.lut_type == LutType::Lut16;
    let channels = usize::from(table.num_input_channels);
    let curves = |store: &LutStore, entries: u16, count: usize| -> Option<Vec<Vec<f64>>> {
        let values = values(store);
        let entries = usize::from(entries);
        let is_sound = entries >= 2 && values.len() == entries * count;
        is_sound.then(|| values.chunks_exact(entries).map(<[f64]>::to_vec).collect())
    };
    let outputs = curves(&table.output_table, table.num_output_table_entries, 3)?;
    Some(Parts {
        inputs: curves(&table.input_table, table.num_input_table_entries, channels)?,
        grid: vec![usize::from(table.num_clut_grid_points); channels],
        nodes: values(&table.clut_table),
        after: vec![Step::Curves(outputs.try_into().ok()?)],
        space: match pcs {
            DataColorSpace::Lab if is_lut16 => LAB_OF_LUT16,
            DataColorSpace::Lab => LAB,
            DataColorSpace::Xyz => Space::Xyz,
            _ => return None,
        },
    })
}

/// `lutAToBType`: curves A, table, curves M, matrix, curves B.
fn of_a_to_b(table: &moxcms::LutMultidimensionalType, pcs: DataColorSpace) -> Option<Parts> {
    let channels = usize::from(table.num_input_channels);
    if table.num_output_channels != 3 || channels > table.grid_points.len() {
        return None;
    }
    let space = match pcs {
        DataColorSpace::Lab => LAB,
        DataColorSpace::Xyz => Space::Xyz,
        _ => return None,
    };
    let curves = |curves: &[ToneReprCurve]| -> Option<Vec<Vec<f64>>> {
        let sampled = curves.iter().map(|curve| sampled_curve(curve, PLACES));
        sampled.collect()
    };
    let step = |list: &[ToneReprCurve]| -> Option<Option<Step>> {
        if list.is_empty() {
            return Some(None);
        }
        Some(Some(Step::Curves(curves(list)?.try_into().ok()?)))
    };
    let mut after: Vec<Step> = Vec::new();
    let (inputs, grid, nodes) = match &table.clut {
        Some(clut) => {
            let grid = table.grid_points.iter().take(channels).copied();
            let inputs = if table.a_curves.is_empty() {
                vec![vec![0.0, 1.0]; channels]
            } else {
                curves(&table.a_curves)?
            };
            (inputs, grid.map(usize::from).collect(), values(clut))
        }
        // Three channels without a table go on as they are: a table of the corners of the cube alone.
        None if channels == 3 => {
            let corners =
                (0..8_u8).flat_map(|corner| [4, 2, 1].map(|bit| u8::from(corner & bit != 0)));
            let nodes = corners.map(f64::from).collect();
            (vec![vec![0.0, 1.0]; 3], vec![2; 3], nodes)
        }
        None => return None,
    };
    after.extend(step(&table.m_curves)?);
    let bias = [table.bias.v[0], table.bias.v[1], table.bias.v[2]];
    if bias
        .iter()
        .chain(table.matrix.v.as_flattened())
        .any(|v| !v.is_finite())
    {
        return None;
    }
    after.push(Step::Matrix(table.matrix.v, bias));
    after.extend(step(&table.b_curves)?);
    Some(Parts {
        inputs,
        grid,
        nodes,
        after,
        space,
    })
}

/// The numbers of a table, 0 to 1.
fn values(store: &LutStore) -> Vec<f64> {
    match store {
        LutStore::Store8(values) => values.iter().map(|&v| f64::from(v) / 255.0).collect(),
        LutStore::Store16(values) => values.iter().map(|&v| f64::from(v) / 65535.0).collect(),
    }
}
