//! Which files make a picture an image service, and under which paths (IIIF Image API 3.0, level 0).
//!
//! A client derives every path from `info.json`, so each must stand where the standard's canonical
//! form puts it: region and size by the formulas of the Implementation Notes, section 3 (sizes rounded
//! up), written as in section 4.8 of the standard. A part that is the whole picture has the region
//! `full`, and the picture at its full size the size `max`.
//!
//! Pure arithmetic; the pixels are made in `pyramid`.

/// The side of a tile in px.
pub const SIDE: u32 = 512;

/// One file of a service.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TileFile {
    /// How many times it is reduced: 1, 2, 4 ….
    pub factor: u32,
    /// The column and row of the tile at that reduction; `None` for the whole picture.
    pub tile: Option<(u32, u32)>,
}

/// How many times each level of a picture is reduced: 1, 2, 4 …, until the whole is one tile.
#[must_use]
pub fn factors(width: u32, height: u32) -> Vec<u32> {
    let longest = width.max(height);
    let reduces = |factor: &u32| *factor == 1 || longest.div_ceil(factor / 2) > SIDE;
    (0..32).map(|n| 1 << n).take_while(reduces).collect()
}

/// Width and height in px of a picture once reduced.
#[must_use]
pub fn reduced(width: u32, height: u32, factor: u32) -> (u32, u32) {
    (width.div_ceil(factor), height.div_ceil(factor))
}

/// Every file of the service of a picture but `info.json`: level after level, the largest first; of
/// each the whole, then its tiles row by row, unless the whole is the only one.
#[must_use]
pub fn files(width: u32, height: u32) -> Vec<TileFile> {
    let mut files = Vec::new();
    for factor in factors(width, height) {
        files.push(TileFile { factor, tile: None });
        let (across, down) = reduced(width, height, factor);
        let (columns, rows) = (across.div_ceil(SIDE), down.div_ceil(SIDE));
        if columns * rows > 1 {
            let tiles = (0..rows).flat_map(|row| (0..columns).map(move |column| (column, row)));
            files.extend(tiles.map(|tile| TileFile {
                factor,
                tile: Some(tile),
            }));
        }
    }
    files
}

impl TileFile {
    /// Its path within the service of a picture of that size: `0,0,512,512/512,512/0/default.jpg`.
    #[must_use]
    pub fn path(self, width: u32, height: u32) -> String {
        let factor = self.factor;
        let (region, size) = match self.tile {
            None if factor == 1 => ("full".to_owned(), "max".to_owned()),
            None => {
                let (across, down) = reduced(width, height, factor);
                ("full".to_owned(), format!("{across},{down}"))
            }
            Some((column, row)) => {
                let (x, y) = (column * SIDE * factor, row * SIDE * factor);
                let w = (SIDE * factor).min(width.saturating_sub(x));
                let h = (SIDE * factor).min(height.saturating_sub(y));
                let (across, down) = reduced(w, h, factor);
                (format!("{x},{y},{w},{h}"), format!("{across},{down}"))
            }
        };
        format!("{region}/{size}/0/default.jpg")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The worked example of CHECKS.md's table stands in `tests/all/image_services.rs`; here only what
    /// lies beyond it.
    #[test]
    fn a_picture_no_larger_than_a_tile_is_one_file() {
        for (width, height) in [(1, 1), (512, 512), (300, 200)] {
            assert_eq!(factors(width, height), [1]);
            let paths: Vec<_> = files(width, height)
                .iter()
                .map(|file| file.path(width, height))
                .collect();
            assert_eq!(paths, ["full/max/0/default.jpg"]);
        }
    }

    #[test]
    fn a_long_strip_is_reduced_until_it_fits() {
        assert_eq!(factors(65_535, 1).last(), Some(&128));
        assert_eq!(factors(513, 1), [1, 2]);
        assert_eq!(factors(1025, 1), [1, 2, 4]);
    }
}
