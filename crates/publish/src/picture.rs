//! An author's photograph made ready for a page: read, turned upright, made smaller, and written anew, so that
//! nothing the camera noted of place, time and owner goes along.

use crate::site::page_address;
use base64::Engine;
use base64::engine::general_purpose::STANDARD as BASE64;
use formula::read::BookSettings;
use image::codecs::jpeg::JpegEncoder;
use image::codecs::png::PngEncoder;
use image::imageops::FilterType;
use image::{DynamicImage, ImageDecoder, ImageEncoder, ImageError, ImageFormat, ImageReader};
use maud::{Markup, html};
use std::io::Cursor;

/// The most dots that a picture may have: more than any camera a baker carries gives.
pub const MOST_DOTS: u64 = 50_000_000;
/// The most memory that one picture may take while it is read.
const MOST_MEMORY: u64 = 200_000_000;
/// The widths in dots of a picture that lies beside its page, for phones, tables and desks.
pub const WIDTHS: [u32; 3] = [480, 960, 1600];
/// The width of one that lies within its page, once for all.
pub const WIDTH_WITHIN: [u32; 1] = [1200];
/// Of 100: no difference is seen at arm's length, and files are a tenth of the camera's.
const QUALITY: u8 = 80;

const DAMAGED: &str = "is damaged or cut short: it cannot be read to its end";

/// A photograph as a page shows it.
#[derive(Clone, Debug)]
pub struct Picture {
    /// What it shows, for those who cannot see it.
    pub alt: String,
    /// Its sizes, the smallest first.
    pub prints: Vec<Placed>,
}

/// One size of a picture, and where a page finds it.
#[derive(Clone, Debug)]
pub struct Placed {
    /// Its width in dots.
    pub width: u32,
    /// Its height in dots.
    pub height: u32,
    /// A file's name in the book, or the whole picture as an address.
    pub source: String,
}

/// One size of a picture, ready to be kept.
#[derive(Clone, Debug)]
pub struct Print {
    /// Its width in dots.
    pub width: u32,
    /// Its height in dots.
    pub height: u32,
    /// Its bytes.
    pub bytes: Vec<u8>,
    /// Its media type.
    pub media_type: &'static str,
}

impl Picture {
    /// The picture on its page: the reader's browser takes the size that suits it.
    #[must_use]
    pub fn element(&self) -> Markup {
        let all: Vec<String> = self.prints.iter().map(|print| format!("{} {}w", print.source, print.width)).collect();
        let several = (all.len() > 1).then(|| all.join(", "));
        html! {
            @if let Some(largest) = self.prints.last() {
                img.picture src=(largest.source) srcset=[several.as_ref()] sizes=[several.as_ref().map(|_| "(min-width: 62rem) 60rem, 100vw")]
                    width=(largest.width) height=(largest.height) alt=(self.alt) decoding="async";
            }
        }
    }

    /// The address of its largest size, where the book states its own and the picture lies beside the page.
    #[must_use]
    pub fn address(&self, settings: &BookSettings) -> Option<String> {
        let largest = self.prints.last()?;
        if largest.source.starts_with("data:") { None } else { page_address(settings, &largest.source) }
    }
}

impl Print {
    /// The picture as an address that holds it whole, so that its page stays one file.
    #[must_use]
    pub fn within(&self) -> String {
        format!("data:{};base64,{}", self.media_type, BASE64.encode(&self.bytes))
    }

    /// The ending of a file that holds it.
    #[must_use]
    pub const fn ending(&self) -> &'static str {
        if self.media_type.len() == "image/png".len() { "png" } else { "jpg" }
    }
}

/// A picture that was read, upright.
pub struct Developed {
    image: DynamicImage,
    colours: Option<Vec<u8>>,
}

/// Reads a picture, whole.
///
/// # Errors
/// What keeps it from being shown, in words that follow "the picture".
pub fn develop(bytes: &[u8]) -> Result<Developed, String> {
    let damaged = |_| DAMAGED.to_owned();
    let reader = ImageReader::new(Cursor::new(bytes)).with_guessed_format().map_err(|_| DAMAGED.to_owned())?;
    let format = reader.format();
    if !matches!(format, Some(ImageFormat::Jpeg | ImageFormat::Png | ImageFormat::WebP | ImageFormat::Gif)) {
        return Err("is no JPEG, PNG, WebP or GIF".to_owned());
    }
    if format == Some(ImageFormat::Jpeg) && !bytes.windows(2).rev().take(4096).any(|two| two == [0xff, 0xd9]) {
        return Err(DAMAGED.to_owned());
    }
    let mut decoder = reader.into_decoder().map_err(|error| told(&error))?;
    let (width, height) = decoder.dimensions();
    let dots = u64::from(width) * u64::from(height);
    if dots > MOST_DOTS || decoder.total_bytes() > MOST_MEMORY {
        return Err(format!("is {width} by {height} dots large; a page takes up to {} million", MOST_DOTS / 1_000_000));
    }
    let turn = decoder.orientation().map_err(damaged)?;
    let colours = decoder.icc_profile().ok().flatten();
    let mut image = DynamicImage::from_decoder(decoder).map_err(damaged)?;
    image.apply_orientation(turn);
    Ok(Developed { image, colours })
}

fn told(error: &ImageError) -> String {
    match error {
        ImageError::Limits(_) => format!("is too large; a page takes up to {} million dots", MOST_DOTS / 1_000_000),
        _ => DAMAGED.to_owned(),
    }
}

impl Developed {
    /// The picture in these widths, or in its own where that is less.
    #[must_use]
    pub fn prints(&self, widths: &[u32]) -> Vec<Print> {
        let own = self.image.width();
        let mut wanted: Vec<u32> = widths.iter().map(|width| (*width).min(own)).collect();
        wanted.dedup();
        wanted.into_iter().filter_map(|width| self.print(width)).collect()
    }

    fn print(&self, width: u32) -> Option<Print> {
        let height = scaled(self.image.height(), width, self.image.width());
        // Averaged down to twice the size first, which is quick, then carefully.
        let coarse = if self.image.width() > width.saturating_mul(4) {
            self.image.thumbnail_exact(width * 2, scaled(self.image.height(), width * 2, self.image.width()))
        } else {
            self.image.clone()
        };
        let small = if coarse.width() == width { coarse } else { coarse.resize_exact(width, height, FilterType::CatmullRom) };
        let is_clear = |image: &DynamicImage| image.color().has_alpha() && image.to_rgba8().pixels().any(|dot| dot.0[3] < 255);
        let mut bytes = Vec::new();
        let media_type = if is_clear(&small) {
            write(PngEncoder::new(&mut bytes), &DynamicImage::ImageRgba8(small.to_rgba8()), self.colours.as_ref())?;
            "image/png"
        } else {
            let encoder = JpegEncoder::new_with_quality(&mut bytes, QUALITY);
            write(encoder, &DynamicImage::ImageRgb8(small.to_rgb8()), self.colours.as_ref())?;
            "image/jpeg"
        };
        Some(Print { width, height, bytes, media_type })
    }
}

/// The colours' profile goes along: without it a camera's reds turn dull.
fn write(mut encoder: impl ImageEncoder, image: &DynamicImage, colours: Option<&Vec<u8>>) -> Option<()> {
    if let Some(colours) = colours {
        let _ = encoder.set_icc_profile(colours.clone());
    }
    image.write_with_encoder(encoder).ok()
}

fn scaled(length: u32, to: u32, from: u32) -> u32 {
    let exact = u64::from(length) * u64::from(to) / u64::from(from.max(1));
    u32::try_from(exact).unwrap_or(u32::MAX).max(1)
}
