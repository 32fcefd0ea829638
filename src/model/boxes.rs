//! Boxes on pictures, in percent.

/// A box in percent of a picture's width and height, as records write it.
///
/// Invariant: inside the picture and not empty, so no stage needs to check it again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PercentBox {
    left: f64,
    top: f64,
    width: f64,
    height: f64,
}

/// Why four numbers do not make a box.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotABox {
    /// Width or height is zero or negative.
    Empty,
    /// It reaches beyond the picture.
    Outside,
}

impl PercentBox {
    /// A box from `[left, top, width, height]`, all in percent.
    ///
    /// # Errors
    /// [`NotABox`] where it is empty, reaches outside the picture, or a number is not finite.
    pub fn new(left: f64, top: f64, width: f64, height: f64) -> Result<PercentBox, NotABox> {
        if !(width > 0.0 && height > 0.0) {
            return Err(NotABox::Empty);
        }
        let inside = |from: f64, length: f64| from >= 0.0 && from + length <= 100.0 + 1e-9;
        if inside(left, width) && inside(top, height) {
            Ok(PercentBox {
                left,
                top,
                width,
                height,
            })
        } else {
            Err(NotABox::Outside)
        }
    }

    /// `[left, top, width, height]`, in percent.
    #[must_use]
    pub fn percent(self) -> [f64; 4] {
        [self.left, self.top, self.width, self.height]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn err_a_box_outside_or_empty() {
        assert_eq!(
            PercentBox::new(90.0, 0.0, 20.0, 10.0),
            Err(NotABox::Outside)
        );
        assert_eq!(PercentBox::new(0.0, 0.0, 0.0, 10.0), Err(NotABox::Empty));
        assert_eq!(
            PercentBox::new(f64::NAN, 0.0, 1.0, 1.0),
            Err(NotABox::Outside)
        );
        assert_eq!(
            PercentBox::new(0.0, 0.0, f64::NAN, 1.0),
            Err(NotABox::Empty)
        );
    }
}
