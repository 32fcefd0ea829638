//! Workbooks made here, since no library writes hostile ones.

use std::io::Write as _;

use flate2::write::DeflateEncoder;
use flate2::{Compress, Compression, FlushCompress};

/// A file of an archive.
pub struct Packed {
    name: &'static str,
    /// Its bytes, deflated.
    packed: Vec<u8>,
    /// How many bytes it unpacks to, as the archive says.
    says: u32,
}

/// A file with this content.
pub fn packed(name: &'static str, content: &[u8]) -> Packed {
    let mut encoder = DeflateEncoder::new(Vec::new(), Compression::fast());
    encoder.write_all(content).unwrap();
    Packed {
        name,
        packed: encoder.finish().unwrap(),
        says: u32::try_from(content.len()).unwrap(),
    }
}

/// A file that unpacks to a gigabyte: one row of a sheet, then so many rows again, then nothing that ends the sheet.
pub fn gigabyte(name: &'static str) -> Packed {
    let row = "<row><c t=\"inlineStr\"><is><t>A.P.</t></is></c></row>";
    let chunk = row.repeat((1 << 20) / row.len());
    let mut block = Vec::with_capacity(1 << 20);
    let mut compress = Compress::new(Compression::best(), false);
    compress
        .compress_vec(chunk.as_bytes(), &mut block, FlushCompress::Sync)
        .unwrap();
    let mut all = Vec::new();
    let mut head = Vec::with_capacity(1 << 10);
    Compress::new(Compression::best(), false)
        .compress_vec(b"<worksheet><sheetData>", &mut head, FlushCompress::Sync)
        .unwrap();
    all.extend(head);
    // A block that ends on a byte and refers to nothing before it may be repeated.
    for _ in 0..1024 {
        all.extend(&block);
    }
    all.extend([3, 0]);
    Packed {
        name,
        packed: all,
        says: 1 << 20,
    }
}

/// An archive (APPNOTE 6.3): local files, the directory, its end.
pub fn archive(files: &[Packed]) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut directory = Vec::new();
    for file in files {
        let at = u32::try_from(bytes.len()).unwrap();
        let length = u32::try_from(file.packed.len()).unwrap();
        let mut common = Vec::new();
        for part in [20_u16, 0, 8, 0, 0] {
            common.extend(part.to_le_bytes());
        }
        for part in [0, length, file.says] {
            common.extend(part.to_le_bytes());
        }
        common.extend(u16::try_from(file.name.len()).unwrap().to_le_bytes());
        common.extend(0_u16.to_le_bytes());
        bytes.extend(b"PK\x03\x04");
        bytes.extend(&common);
        bytes.extend(file.name.as_bytes());
        bytes.extend(&file.packed);
        directory.extend(b"PK\x01\x02");
        directory.extend(20_u16.to_le_bytes());
        directory.extend(&common);
        directory.extend([0; 10]);
        directory.extend(at.to_le_bytes());
        directory.extend(file.name.as_bytes());
    }
    let at = u32::try_from(bytes.len()).unwrap();
    let length = u32::try_from(directory.len()).unwrap();
    let count = u16::try_from(files.len()).unwrap();
    bytes.extend(directory);
    bytes.extend(b"PK\x05\x06\0\0\0\0");
    bytes.extend(count.to_le_bytes());
    bytes.extend(count.to_le_bytes());
    bytes.extend(length.to_le_bytes());
    bytes.extend(at.to_le_bytes());
    bytes.extend([0, 0]);
    bytes
}

/// A workbook of one sheet.
pub fn workbook(sheet: Packed) -> Vec<u8> {
    archive(&[
        packed(
            "xl/workbook.xml",
            b"<workbook xmlns:r=\"r\"><sheets><sheet name=\"Sheets\" r:id=\"rId1\"/></sheets></workbook>",
        ),
        packed(
            "xl/_rels/workbook.xml.rels",
            b"<Relationships><Relationship Id=\"rId1\" Target=\"worksheets/sheet1.xml\"/></Relationships>",
        ),
        sheet,
    ])
}

/// The part of a workbook that is its sheet.
pub const SHEET: &str = "xl/worksheets/sheet1.xml";
