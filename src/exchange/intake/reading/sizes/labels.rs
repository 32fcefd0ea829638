//! The words for what was measured, for axes and for units.

use std::sync::LazyLock;

use super::measurement::{Measured, Order, Unit};
use crate::exchange::intake::reading::phrases::Phrases;

/// Words for what was measured (English, German, French, Dutch, Japanese; docs/trade.md, "Tables that others
/// hand in").
pub(super) static MEASURED: LazyLock<Phrases<Measured>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Measured::Image,
            "image|image size|composition|subject|picture|picture area|printed area|printed surface|\
             darstellung|bild|bildgrösse|bildgröße|bildmass|bildmaß|bildfeld|druckbild|darstellungsgrösse|\
             sujet|dimensions de l'image|composition|tache|beeld|voorstelling|beeldmaat|beeldformaat|画寸|画面|図柄",
        ),
        (
            Measured::Sheet,
            "sheet|sheets|sheet size|paper|paper size|leaf|page|blatt|blattgrösse|blattgröße|blattmass|blattmaß|bogen|\
             papier|papiergrösse|papiergröße|feuille|feuillet|blad|bladmaat|vel|papiermaat|紙寸|用紙|シート",
        ),
        (
            Measured::Platemark,
            "platemark|plate mark|plate|plate size|copperplate|platte|plattenrand|plattenkante|plattengrösse|\
             plattengröße|plattenmass|plattenmaß|cuvette|coup de planche|planche|cuivre|trait carré|plaat|plaatrand|\
             plaatmaat|版寸|プレートマーク",
        ),
        (
            Measured::Block,
            "block|block size|woodblock|stone|matrix|stock|druckstock|holzstock|stockgrösse|stockgröße|stein|bois|\
             bloc|pierre|matrice|blok|houtblok|steen|版木",
        ),
        (Measured::Support, "support|bildträger|träger|drager|支持体"),
        (
            Measured::Mount,
            "mount|mounted|mount size|secondary support|untersatz|montierung|unterlage|montage|monture|\
             support secondaire|onderlegger|opzet|台紙",
        ),
        (
            Measured::Frame,
            "frame|framed|frame size|with frame|rahmen|rahmenmass|rahmenmaß|mit rahmen|gerahmt|cadre|encadré|\
             avec cadre|lijst|lijstmaat|met lijst|ingelijst|額|額縁|額寸",
        ),
        (
            Measured::Displayed,
            "displayed|display|display dimensions|ausgestellt|exposé|tentoongesteld",
        ),
        (
            Measured::Object,
            "object|overall|overall size|objekt|gesamt|gesamtmass|gesamtmaß|objet|hors tout|totaal|全体",
        ),
        (
            Measured::Unsaid,
            "unconfirmed|unbestätigt|non confirmé|onbevestigd|dimensions|size|masse|maße|formaat|寸法",
        ),
    ])
});

/// What is said of a measurement.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Remark {
    /// The size of each of several.
    Each,
    /// Within a mount or frame.
    Sight,
    /// About.
    About,
    /// Not rectangular.
    Irregular,
}

/// Words for remarks.
pub(super) static REMARKS: LazyLock<Phrases<Remark>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Remark::Each,
            "each|each sheet|je|jeweils|je blatt|chacun|chacune|chaque|elk|ieder|各",
        ),
        (
            Remark::Sight,
            "sight|sight size|sight measurement|visible|mount opening|lichtmass|lichtmaß|sichtbar|sichtmass|sichtmaß|\
             passepartoutausschnitt|à vue|a vue|vue|dagmaat|zichtmaat|in passe-partout|im passepartout|in mount",
        ),
        (
            Remark::About,
            "c.|ca.|circa|about|approx.|approximately|etwa|zirka|environ|env.|ongeveer|約",
        ),
        (
            Remark::Irregular,
            "irregular|irreg.|max.|maximum|at most|unregelmässig|unregelmäßig|maximal|irrégulier|irrégulière|\
             onregelmatig",
        ),
    ])
});

/// Along which line a length was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Axis {
    /// Upright.
    Height,
    /// Across.
    Width,
    /// Through.
    Depth,
    /// Across a round.
    Diameter,
}

/// Words for axes.
pub(super) static AXES: LazyLock<Phrases<Axis>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Axis::Height,
            "h.|height|high|höhe|hoch|hauteur|haut.|hoogte|hoog|縦|天地|高さ",
        ),
        (
            Axis::Width,
            "w.|width|wide|b.|breite|breit|l.|larg.|largeur|large|length|long|länge|breedte|breed|横|左右|幅",
        ),
        (
            Axis::Depth,
            "d.|depth|deep|t.|tiefe|tief|p.|prof.|profondeur|diepte|diep|奥行|奥行き",
        ),
        (
            Axis::Diameter,
            "diameter|diam.|dia.|dm.|ø|⌀|durchmesser|diamètre|doorsnede|middellijn|直径|径",
        ),
    ])
});

/// Words for the order of lengths.
pub(super) static ORDERS: LazyLock<Phrases<Order>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Order::HeightFirst,
            "h x w|hxw|h × w|h x w x d|hxwxd|h × w × d|height x width|height × width|height before width|h x b|hxb|\
             h × b|h x b x t|hxbxt|h × b × t|höhe x breite|höhe × breite|h x l|hxl|h × l|hauteur x largeur|\
             hauteur × largeur|hoogte x breedte|hoogte × breedte|縦×横|縦横",
        ),
        (
            Order::WidthFirst,
            "w x h|wxh|w × h|w x h x d|wxhxd|width x height|width × height|width before height|b x h|bxh|b × h|\
             breite x höhe|breite × höhe|l x h|lxh|l × h|largeur x hauteur|largeur × hauteur|breedte x hoogte|\
             breedte × hoogte|横×縦|横縦",
        ),
    ])
});

/// Words and signs for units behind a number.
pub(super) static UNITS: LazyLock<Phrases<Unit>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Unit::Millimetre,
            "mm|mm.|millimetre|millimetres|millimeter|millimeters|millimètres|ミリ|粍",
        ),
        (
            Unit::Centimetre,
            "cm|cm.|cms|centimetre|centimetres|centimeter|centimeters|zentimeter|centimètres|センチ|糎",
        ),
        (Unit::Metre, "m|metre|metres|meter|meters|mètres"),
        (
            Unit::Inch,
            "in|in.|ins|inch|inches|\"|″|''|”|“|zoll|pouce|pouces|po.|duim|インチ|吋",
        ),
        (
            Unit::Foot,
            "ft|ft.|foot|feet|'|′|’|fuss|fuß|pied|pieds|voet|フィート|呎",
        ),
        (Unit::Shaku, "shaku|尺"),
        (Unit::Sun, "sun|寸"),
    ])
});

/// Signs and words between two lengths.
pub(super) static BY: LazyLock<Phrases<()>> =
    LazyLock::new(|| Phrases::of(&[((), "x|×|✕|✖|⨯|х|*|by|mal|auf|sur|par|bij|op|掛け")]));

/// "And", between two things that have one size.
pub(super) static AND: LazyLock<Phrases<()>> =
    LazyLock::new(|| Phrases::of(&[((), "&|and|und|et|en|+|/|=|・|と")]));
