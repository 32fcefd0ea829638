//! Where the image lies on its sheet, and the sheet in its photograph. Lengths are in millimetres.

use keyblock::model::design::Design;
use keyblock::model::impression::Impression;
use keyblock::model::size::Size;

use crate::engine::plane::Window;
use crate::look::Look;

/// Share of the sheet's longer side that the table shows all round.
pub const BORDER: f32 = 0.04;

/// A sheet with the image on it.
#[derive(Clone, Copy, Debug)]
pub struct Layout {
    /// Width and height of the sheet.
    pub sheet: [f32; 2],
    /// Left, top, width and height of the image; beyond the sheet where it was trimmed.
    pub image: [f32; 4],
    /// Width and height of the metal plate, where there is one.
    pub plate: Option<[f32; 2]>,
    /// Millimetres to a design unit.
    pub unit: f32,
    /// How far to the right the same plate was printed again, on an uncut sheet of two.
    pub twin: Option<f32>,
}

impl Layout {
    /// The layout that an impression's record and its design's give.
    pub fn of(design: &Design, impression: &Impression, look: &Look) -> Self {
        let image = design
            .size
            .image
            .own()
            .map_or([200.0, 300.0], height_and_width);
        let unit = image[0].max(image[1]) / 1000.0;
        let mut printed = image;
        // A block that was sawn down prints a shorter image; half a millimetre is a difference of measuring.
        if let Some(height) = look.measure("image-height")
            && height < image[0] - 4.0
        {
            printed[0] = height;
        }
        let matrix = design.size.matrix.own().map(height_and_width);
        let intaglio = matrix.filter(|_| is_intaglio(design));
        let margins = impression.sheet.margins.as_deref().unwrap_or_default();
        let spare = match margins {
            "trimmed" => -1.5,
            "narrow" => 8.0,
            _ => 90.0,
        };
        let sheet = match impression.sheet.size.own().map(height_and_width) {
            Some(size) if margins != "trimmed" || size[1] < printed[1] + 6.0 => size,
            _ => [printed[0] + spare, printed[1] + spare],
        };
        let (free_x, free_y) = (sheet[1] - printed[1], sheet[0] - printed[0]);
        let top = if free_y > 0.0 {
            free_y * 0.45
        } else {
            free_y * 0.5
        };
        let shared = !impression.shares_sheet.is_empty() && sheet[1] > 2.0 * printed[1];
        let left = if shared {
            sheet[1] * 0.25 - printed[1] * 0.5
        } else {
            free_x * 0.5
        };
        Self {
            sheet: [sheet[1], sheet[0]],
            image: [left, top, printed[1], printed[0]],
            plate: intaglio.map(|m| [m[1], m[0]]),
            unit,
            twin: shared.then_some(sheet[1] * 0.5),
        }
    }

    /// The plate's edge on the sheet: left, top, width, height.
    pub fn platemark(&self) -> Option<[f32; 4]> {
        let [width, height] = self.plate?;
        let [left, top, w, h] = self.image;
        Some([
            left - (width - w) / 2.0,
            top - (height - h) / 2.0,
            width,
            height,
        ])
    }

    /// The table's breadth round the sheet.
    pub fn border(&self) -> f32 {
        BORDER * self.sheet[0].max(self.sheet[1])
    }

    /// A photograph of the whole sheet, `longest` pixels on its longer side: its size in pixels
    /// and the window on the sheet.
    pub fn whole(&self, longest: usize) -> ([usize; 2], Window) {
        let border = self.border();
        let across = self.sheet[0] + 2.0 * border;
        let down = self.sheet[1] + 2.0 * border;
        let scale = longest as f32 / across.max(down);
        let size = [across, down].map(|v| (v * scale).round() as usize);
        let window = Window {
            x: 0.0,
            y: 0.0,
            w: (self.sheet[0] * scale).round() as usize,
            h: (self.sheet[1] * scale).round() as usize,
            scale,
        };
        (size, window)
    }

    /// A box in percent of this layout's photograph, as millimetres from the image's corner.
    pub fn on_image(&self, percent: [f32; 4]) -> [f32; 4] {
        let border = self.border();
        let across = (self.sheet[0] + 2.0 * border) / 100.0;
        let down = (self.sheet[1] + 2.0 * border) / 100.0;
        [
            percent[0] * across - border - self.image[0],
            percent[1] * down - border - self.image[1],
            percent[2] * across,
            percent[3] * down,
        ]
    }
}

/// A size as height and width, mm.
pub fn height_and_width(size: &Size) -> [f32; 2] {
    [size.height_mm() as f32, size.width_mm() as f32]
}

/// Whether a design is printed from metal.
pub fn is_intaglio(design: &Design) -> bool {
    let metal = ["etching", "aquatint", "drypoint", "engraving"];
    let mut techniques = design.technique.iter();
    techniques.any(|technique| metal.contains(&technique.as_str()))
}
