//! Fits a map to pairs of points of which many are wrong.
//!
//! RANSAC (Fischler & Bolles, *Random Sample Consensus*, 1981) finds the map that most pairs follow, then
//! refits it by weighted least squares (Tukey's weights) to every pair near it. Points are centred and scaled
//! first (Hartley, *In Defense of the Eight-Point Algorithm*, 1997).

use keyblock_model::registration::Homography;

/// A point and where it was found.
#[derive(Clone, Copy, Debug)]
pub struct Correspondence {
    pub from: (f64, f64),
    pub to: (f64, f64),
    /// How much it counts, above 0.
    pub weight: f64,
}

/// The class of maps that are fitted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Model {
    /// Keeps parallels parallel: six numbers.
    Affine,
    /// Any plane seen by any camera: eight numbers.
    Projective,
}

impl Model {
    fn pairs_needed(self) -> usize {
        match self {
            Model::Affine => 3,
            Model::Projective => 4,
        }
    }
}

/// How many samples RANSAC draws. With two pairs in three wrong, one of four right ones is among them
/// with a probability beyond 0.999.
const SAMPLES: usize = 600;

/// Rounds of weighted least squares.
const ROUNDS: usize = 6;

/// The map that most pairs follow within `tolerance` px, refined; `None` where too few pairs follow any map.
pub fn robust(pairs: &[Correspondence], model: Model, tolerance: f64) -> Option<Homography> {
    let needed = model.pairs_needed();
    if pairs.len() < needed + 2 {
        return None;
    }
    let mut chance = SplitMix::new(0x6b65_7962_6c6f_636b);
    let mut best: Option<(f64, Homography)> = None;
    for _ in 0..SAMPLES {
        let mut sample: [Correspondence; 4] = [pairs[0]; 4];
        let mut chosen = [usize::MAX; 4];
        for k in 0..needed {
            let mut at = chance.below(pairs.len());
            while chosen[..k].contains(&at) {
                at = chance.below(pairs.len());
            }
            chosen[k] = at;
            sample[k] = pairs[at];
        }
        let Some(map) = least_squares(&sample[..needed], model, |_| 1.0) else {
            continue;
        };
        let reward = reward(pairs, &map, tolerance);
        if best.as_ref().is_none_or(|(most, _)| reward > *most) {
            best = Some((reward, map));
        }
    }
    let (_, begun) = best?;
    refined(pairs, model, begun, tolerance)
}

/// Tukey-weighted least squares from a map near the truth.
pub fn refined(
    pairs: &[Correspondence],
    model: Model,
    begun: Homography,
    tolerance: f64,
) -> Option<Homography> {
    let mut map = begun;
    for _ in 0..ROUNDS {
        let residuals: Vec<f64> = pairs.iter().map(|pair| residual(pair, &map)).collect();
        let mut near: Vec<f64> = residuals
            .iter()
            .copied()
            .filter(|r| *r < 2.0 * tolerance)
            .collect();
        if near.len() < model.pairs_needed() + 2 {
            return None;
        }
        near.sort_by(f64::total_cmp);
        // 1.4826 times the median is the standard deviation of a normal distribution, and 4.685 of
        // those is where Tukey's weights end (95 % efficiency).
        let deviation = (1.4826 * near[near.len() / 2]).max(0.1);
        let end = 4.685 * deviation;
        let weigh = |at: usize| {
            let part = residuals[at] / end;
            if part < 1.0 {
                (1.0 - part * part).powi(2) * pairs[at].weight
            } else {
                0.0
            }
        };
        map = least_squares(pairs, model, weigh)?;
    }
    Some(map)
}

/// The distance between where a point was found and where the map puts it, px.
pub fn residual(pair: &Correspondence, map: &Homography) -> f64 {
    map.apply(pair.from.0, pair.from.1)
        .map_or(f64::INFINITY, |(x, y)| {
            let (dx, dy) = (x - pair.to.0, y - pair.to.1);
            (dx * dx + dy * dy).sqrt()
        })
}

/// The score of a map: each pair within the tolerance adds to it, a nearer pair more.
fn reward(pairs: &[Correspondence], map: &Homography, tolerance: f64) -> f64 {
    let [a, b, c, d, e, f, g, h, i] = map.rows();
    let limit = tolerance * tolerance;
    let mut sum = 0.0;
    for pair in pairs {
        let (x, y) = pair.from;
        let depth = 1.0 / (g * x + h * y + i);
        let dx = (a * x + b * y + c) * depth - pair.to.0;
        let dy = (d * x + e * y + f) * depth - pair.to.1;
        let away = dx * dx + dy * dy;
        if away < limit {
            sum += pair.weight * (1.0 - away / limit);
        }
    }
    sum
}

/// The map with the least weighted squares; exact where there are just as many pairs as needed.
pub fn least_squares(
    pairs: &[Correspondence],
    model: Model,
    weight: impl Fn(usize) -> f64,
) -> Option<Homography> {
    let (from, to) = (
        Norm::of(pairs.iter().map(|p| p.from))?,
        Norm::of(pairs.iter().map(|p| p.to))?,
    );
    let size = if model == Model::Affine { 6 } else { 8 };
    let mut normal = [[0.0_f64; 9]; 8];
    for (at, pair) in pairs.iter().enumerate() {
        let weight = weight(at);
        if weight <= 0.0 {
            continue;
        }
        let (x, y) = from.normed(pair.from);
        let (u, v) = to.normed(pair.to);
        let rows = [
            ([x, y, 1.0, 0.0, 0.0, 0.0, -u * x, -u * y], u),
            ([0.0, 0.0, 0.0, x, y, 1.0, -v * x, -v * y], v),
        ];
        for (row, right) in rows {
            for i in 0..size {
                let scaled = row[i] * weight;
                if scaled == 0.0 {
                    continue;
                }
                for j in i..size {
                    normal[i][j] += scaled * row[j];
                }
                normal[i][8] += scaled * right;
            }
        }
    }
    let upper = normal;
    for (i, row) in normal.iter_mut().enumerate().take(size) {
        for (j, to) in row.iter_mut().enumerate().take(i) {
            *to = upper[j][i];
        }
    }
    let h = solved(normal, size)?;
    let map = Homography::new([h[0], h[1], h[2], h[3], h[4], h[5], h[6], h[7], 1.0])?;
    from.to_norm()?.then(&map)?.then(&to.to_norm()?.inverse()?)
}

/// Solves the first `size` equations by elimination, the largest pivot first.
fn solved(mut rows: [[f64; 9]; 8], size: usize) -> Option<[f64; 8]> {
    for column in 0..size {
        let pivot = (column..size)
            .max_by(|&a, &b| rows[a][column].abs().total_cmp(&rows[b][column].abs()))?;
        rows.swap(column, pivot);
        let first = rows[column];
        if first[column].abs() < 1e-12 {
            return None;
        }
        for row in rows.iter_mut().take(size).skip(column + 1) {
            let factor = row[column] / first[column];
            if factor != 0.0 {
                for k in column..9 {
                    row[k] -= factor * first[k];
                }
            }
        }
    }
    let mut answer = [0.0; 8];
    for column in (0..size).rev() {
        let mut rest = rows[column][8];
        for k in column + 1..size {
            rest -= rows[column][k] * answer[k];
        }
        answer[column] = rest / rows[column][column];
    }
    Some(answer)
}

/// Where points are centred, and their mean distance from there.
struct Norm {
    centre: (f64, f64),
    scale: f64,
}

impl Norm {
    fn of(points: impl Iterator<Item = (f64, f64)> + Clone) -> Option<Norm> {
        let mut count = 0.0;
        let (mut x, mut y) = (0.0, 0.0);
        for point in points.clone() {
            x += point.0;
            y += point.1;
            count += 1.0;
        }
        let centre = (x / count, y / count);
        let mut spread = 0.0;
        for point in points {
            let (dx, dy) = (point.0 - centre.0, point.1 - centre.1);
            spread += (dx * dx + dy * dy).sqrt();
        }
        let scale = count / spread;
        scale.is_finite().then_some(Norm { centre, scale })
    }

    fn normed(&self, point: (f64, f64)) -> (f64, f64) {
        (
            (point.0 - self.centre.0) * self.scale,
            (point.1 - self.centre.1) * self.scale,
        )
    }

    fn to_norm(&self) -> Option<Homography> {
        let (s, (x, y)) = (self.scale, self.centre);
        Homography::new([s, 0.0, -s * x, 0.0, s, -s * y, 0.0, 0.0, 1.0])
    }
}

/// Random numbers from a fixed seed (SplitMix64: Steele, Lea & Flood, *Fast Splittable Pseudorandom Number
/// Generators*, 2014).
pub struct SplitMix(u64);

impl SplitMix {
    pub fn new(seed: u64) -> SplitMix {
        SplitMix(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A whole number from 0 to `end` - 1.
    pub fn below(&mut self, end: usize) -> usize {
        // The upper 32 bits, spread over the range.
        (((self.next() >> 32) * end as u64) >> 32) as usize
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn truth() -> Homography {
        Homography::new([0.9, 0.08, 30.0, -0.06, 0.95, 12.0, 4e-5, -3e-5, 1.0]).unwrap()
    }

    /// A grid of pairs that follow the truth, with a tenth of a pixel of noise; of every five, `wrong`
    /// lie anywhere.
    fn pairs(wrong: usize) -> Vec<Correspondence> {
        let mut chance = SplitMix::new(7);
        let mut noise = |size: f64| (chance.below(2001) as f64 / 1000.0 - 1.0) * size;
        let mut pairs = Vec::new();
        for at in 0..150_usize {
            let from = (
                (at % 15) as f64 * 60.0 + 20.0,
                (at / 15) as f64 * 70.0 + 20.0,
            );
            let (x, y) = truth().apply(from.0, from.1).unwrap();
            let size = if at * 7 % 5 < wrong { 40.0 } else { 0.1 };
            pairs.push(Correspondence {
                from,
                to: (x + noise(size), y + noise(size)),
                weight: 1.0,
            });
        }
        pairs
    }

    fn worst_corner(map: &Homography) -> f64 {
        [(0.0, 0.0), (900.0, 0.0), (0.0, 700.0), (900.0, 700.0)]
            .into_iter()
            .map(|from| {
                residual(
                    &Correspondence {
                        from,
                        to: truth().apply(from.0, from.1).unwrap(),
                        weight: 1.0,
                    },
                    map,
                )
            })
            .fold(0.0, f64::max)
    }

    #[test]
    fn four_exact_pairs_give_the_map() {
        let pairs = pairs(0);
        let exact: Vec<Correspondence> = [0, 14, 135, 149]
            .into_iter()
            .map(|at| Correspondence {
                to: truth().apply(pairs[at].from.0, pairs[at].from.1).unwrap(),
                ..pairs[at]
            })
            .collect();
        let map = least_squares(&exact, Model::Projective, |_| 1.0).unwrap();
        assert!(worst_corner(&map) < 1e-6);
    }

    #[test]
    fn three_wrong_pairs_in_five_do_not_move_it() {
        let map = robust(&pairs(3), Model::Projective, 2.0).unwrap();
        assert!(worst_corner(&map) < 0.2, "{}", worst_corner(&map));
    }

    #[test]
    fn points_on_a_line_give_no_map() {
        let on_a_line: Vec<Correspondence> = (0..20)
            .map(|k| Correspondence {
                from: (f64::from(k), 2.0 * f64::from(k)),
                to: (f64::from(k), 2.0 * f64::from(k)),
                weight: 1.0,
            })
            .collect();
        assert!(least_squares(&on_a_line, Model::Projective, |_| 1.0).is_none());
    }
}
