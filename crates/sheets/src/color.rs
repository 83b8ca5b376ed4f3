//! Colours of ink, and how well one stands out from another.

/// An opaque colour in sRGB, one byte a channel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Color {
    /// Red, 0 to 255.
    pub red: u8,
    /// Green, 0 to 255.
    pub green: u8,
    /// Blue, 0 to 255.
    pub blue: u8,
}

impl Color {
    /// Black.
    pub const BLACK: Self = Self::rgb(0, 0, 0);
    /// White, the paper.
    pub const WHITE: Self = Self::rgb(255, 255, 255);

    /// A colour from its channels.
    pub const fn rgb(red: u8, green: u8, blue: u8) -> Self {
        Self { red, green, blue }
    }

    /// A grey, 0 black to 255 white.
    pub const fn grey(level: u8) -> Self {
        Self::rgb(level, level, level)
    }

    /// Relative luminance, 0 black to 1 white, as WCAG 2 defines it.
    ///
    /// Source: <https://www.w3.org/TR/WCAG22/#dfn-relative-luminance>.
    pub fn luminance(self) -> f64 {
        let linear = |channel: u8| {
            let part = f64::from(channel) / 255.0;
            if part <= 0.04045 { part / 12.92 } else { ((part + 0.055) / 1.055).powf(2.4) }
        };
        0.2126 * linear(self.red) + 0.7152 * linear(self.green) + 0.0722 * linear(self.blue)
    }
}

/// The contrast of two colours, 1 (equal) to 21 (black on white), in either order.
///
/// Text needs 4.5 or more, large text and drawn lines 3 or more.
/// Source: <https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio>.
pub fn contrast_ratio(one: Color, other: Color) -> f64 {
    let (one, other) = (one.luminance(), other.luminance());
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}
