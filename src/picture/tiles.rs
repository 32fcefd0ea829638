//! Which files make a picture an image service, and under which paths (IIIF Image API 3.0, level 0).
//!
//! A client derives every path from `info.json`, so each must stand where the standard's canonical
//! form puts it: region and size by the formulas of the Implementation Notes, section 3 (sizes rounded
//! up), written as in section 4.8 of the standard. A part that is the whole picture has the region
//! `full`, and the picture at the largest size at which it is given whole the size `max`.
//!
//! The picture is given whole in the widths that pages offer, and no larger: `maxWidth` and `maxHeight`
//! (section 5.3) say so. Larger views are made of tiles.
//!
//! Pure arithmetic; the pixels are made in `pyramid`.

/// The side of a tile in px.
pub const SIDE: u32 = 512;

/// Width and height in px.
pub type Size = (u32, u32);

/// One tile of a service.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tile {
    /// How many times it is reduced: 1, 2, 4 ….
    pub factor: u32,
    /// Its column and row at that reduction.
    pub at: (u32, u32),
}

/// One file of a service.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlannedFile {
    /// Its path within the service: `0,0,512,512/512,512/0/default.jpg`.
    pub path: String,
    /// Its content.
    pub shows: FileContent,
}

/// The content of a file of a service.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileContent {
    /// The whole picture in one of the widths of pages, by its place among them.
    Whole(usize),
    /// A tile, by its place among [`tiles`].
    Tile(usize),
}

/// How many times each level of a picture is reduced: 1, 2, 4 …, until the whole is one tile.
#[must_use]
pub fn factors((width, height): Size) -> Vec<u32> {
    let longest = width.max(height);
    let reduces = |factor: &u32| *factor == 1 || longest.div_ceil(factor / 2) > SIDE;
    (0..32).map(|n| 1 << n).take_while(reduces).collect()
}

/// Width and height in px of a picture once reduced.
#[must_use]
pub fn reduced((width, height): Size, factor: u32) -> Size {
    (width.div_ceil(factor), height.div_ceil(factor))
}

/// Every tile of a picture: level after level, the largest first; in each row by row.
#[must_use]
pub fn tiles(picture: Size) -> Vec<Tile> {
    let of_level = |factor: u32| {
        let (across, down) = reduced(picture, factor);
        let columns = across.div_ceil(SIDE);
        (0..down.div_ceil(SIDE)).flat_map(move |row| {
            (0..columns).map(move |column| Tile {
                factor,
                at: (column, row),
            })
        })
    };
    factors(picture).into_iter().flat_map(of_level).collect()
}

/// The largest size at which a picture is given whole, where pages offer it in `widths` (rising): the
/// widest of them, or the picture itself where it is a single tile.
#[must_use]
pub fn largest_whole(picture: Size, widths: &[Size]) -> Size {
    let is_one_tile = picture.0.max(picture.1) <= SIDE;
    let widest = widths.last().filter(|_| !is_one_tile);
    widest.copied().unwrap_or(picture)
}

/// The other sizes at which it is given whole, which `info.json` lists.
///
/// The viewer openseadragon (6.1.1) takes a list of as many sizes as there are levels, or one fewer, for
/// the sizes of the levels themselves, and then asks for tiles that no standard derives. Where the widths
/// are as many and are not those of the levels, the larger ones are left out.
#[must_use]
pub fn listed_sizes(picture: Size, widths: &[Size]) -> Vec<Size> {
    let largest = largest_whole(picture, widths);
    let others = widths.iter().copied().filter(|size| *size != largest);
    let mut sizes: Vec<Size> = others.collect();
    let levels = factors(picture);
    let is_level = |size: &Size| levels.iter().any(|f| reduced(picture, *f) == *size);
    let is_as_long = sizes.len() == levels.len() || sizes.len() + 1 == levels.len();
    if is_as_long && !sizes.iter().all(is_level) {
        sizes.truncate(levels.len().saturating_sub(2));
    }
    sizes
}

/// Every file of the service of a picture but `info.json`, where pages offer it in `widths` (rising).
/// A width that is also a tile is listed once.
#[must_use]
pub fn files(picture: Size, widths: &[Size]) -> Vec<PlannedFile> {
    let largest = largest_whole(picture, widths);
    let listed = listed_sizes(picture, widths);
    let whole = |(place, &size): (usize, &Size)| {
        let is_given = size == largest || listed.contains(&size);
        is_given.then(|| PlannedFile {
            path: whole_path(size, size == largest),
            shows: FileContent::Whole(place),
        })
    };
    let mut files: Vec<PlannedFile> = widths.iter().enumerate().filter_map(whole).collect();
    let wholes = files.len();
    for (place, tile) in tiles(picture).into_iter().enumerate() {
        let path = tile.path(picture);
        if files.iter().take(wholes).all(|whole| whole.path != path) {
            let shows = FileContent::Tile(place);
            files.push(PlannedFile { path, shows });
        }
    }
    files
}

fn whole_path((width, height): Size, is_largest: bool) -> String {
    let size = if is_largest {
        "max".to_owned()
    } else {
        format!("{width},{height}")
    };
    format!("full/{size}/0/default.jpg")
}

impl Tile {
    /// Its path within the service of a picture of that size.
    #[must_use]
    pub fn path(self, picture: Size) -> String {
        let (factor, (column, row)) = (self.factor, self.at);
        let (x, y) = (column * SIDE * factor, row * SIDE * factor);
        let w = (SIDE * factor).min(picture.0.saturating_sub(x));
        let h = (SIDE * factor).min(picture.1.saturating_sub(y));
        let (across, down) = reduced((w, h), factor);
        if (w, h) == picture {
            return whole_path((across, down), factor == 1);
        }
        format!("{x},{y},{w},{h}/{across},{down}/0/default.jpg")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A worked example is in `tests/all/image_services.rs`; this test has the cases that it leaves out.
    #[test]
    fn a_picture_no_larger_than_a_tile_is_given_at_its_own_size() {
        let paths = |picture, widths: &[Size]| -> Vec<String> {
            let files = files(picture, widths).into_iter();
            files.map(|file| file.path).collect()
        };
        for picture in [(1, 1), (512, 512), (300, 200)] {
            assert_eq!(factors(picture), [1]);
            assert_eq!(paths(picture, &[picture]), ["full/max/0/default.jpg"]);
        }
        // Even where pages offer it smaller.
        assert_eq!(paths((300, 200), &[(150, 100)]), ["full/max/0/default.jpg"]);
    }

    #[test]
    fn a_long_strip_is_reduced_until_it_fits() {
        assert_eq!(factors((65_535, 1)).last(), Some(&128));
        assert_eq!(factors((513, 1)), [1, 2]);
        assert_eq!(factors((1025, 1)), [1, 2, 4]);
    }

    #[test]
    fn no_list_of_sizes_is_as_long_as_the_levels_unless_it_is_theirs() {
        let widths = |widest| [(480, 320), (960, 640), (widest, widest * 2 / 3)];
        // Three levels, so two sizes are one too many; four and five levels leave them alone.
        assert_eq!(listed_sizes((1900, 1266), &widths(1900)), [(480, 320)]);
        assert_eq!(
            listed_sizes((4000, 2667), &widths(1920)),
            [(480, 320), (960, 640)]
        );
        assert_eq!(
            listed_sizes((6000, 4000), &widths(1920)),
            [(480, 320), (960, 640)]
        );
        assert_eq!(listed_sizes((1000, 667), &[(480, 320), (1000, 667)]), []);
    }

    #[test]
    fn a_width_that_is_also_the_smallest_level_is_one_file() {
        let files = files((1920, 960), &[(480, 240), (960, 480), (1920, 960)]);
        let wholes: Vec<_> = files
            .iter()
            .filter(|file| file.path.starts_with("full/"))
            .map(|file| (file.path.as_str(), file.shows))
            .collect();
        assert_eq!(
            wholes,
            [
                ("full/480,240/0/default.jpg", FileContent::Whole(0)),
                ("full/960,480/0/default.jpg", FileContent::Whole(1)),
                ("full/max/0/default.jpg", FileContent::Whole(2)),
            ]
        );
    }
}
