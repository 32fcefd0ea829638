//! The words for what happened: "published", "gedruckt", "réimprimé", "後摺".

use std::sync::LazyLock;

use super::statement::Act;
use crate::exchange::intake::reading::phrases::Phrases;

/// Words for acts (English, German, French, Dutch, Japanese).
pub(super) static VERBS: LazyLock<Phrases<Act>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Act::Created,
            "created|made|designed|design|executed|drawn|conceived|cut|carved|engraved|etched|block cut|\
             entstanden|entworfen|entwurf|geschaffen|ausgeführt|geschnitten|gestochen|radiert|entstehung|\
             créé|créée|exécuté|exécutée|dessiné|conçu|gravé|gravée|création|\
             gemaakt|ontworpen|ontwerp|vervaardigd|gesneden|gegraveerd|geëtst|\
             制作|製作|作|画|原画",
        ),
        (
            Act::Published,
            "published|publ.|pub.|issued|this edition|edition|\
             erschienen|veröffentlicht|herausgegeben|hrsg.|verlegt|publiziert|ausgabe|\
             publié|publiée|édité|éditée|paru|parue|édition|\
             gepubliceerd|uitgegeven|verschenen|uitgave|\
             出版|発行|刊行|刊|版行",
        ),
        (
            Act::FirstPublished,
            "first published|first issued|zuerst erschienen|erstmals erschienen|erstmals veröffentlicht|erstausgabe|\
             publié pour la première fois|première édition|eerst gepubliceerd|eerste uitgave|初版",
        ),
        (
            Act::Printed,
            "printed|printing|print|gedruckt|druck|abgedruckt|imprimé|imprimée|impression|tirage|tiré|tirée|\
             gedrukt|druk|印刷|摺り|摺|刷",
        ),
        (
            Act::Reprinted,
            "reprinted|reprint|restrike|restruck|later printing|later edition|reissued|reissue|posthumous printing|\
             nachgedruckt|neudruck|neuauflage|späterer druck|spätere auflage|\
             réimprimé|réimprimée|réimpression|retirage|tirage postérieur|tirage posthume|\
             herdrukt|herdruk|latere druk|後摺り|後摺|後刷り|後刷|再摺|再版|没後摺",
        ),
        (
            Act::Reproduced,
            "reproduced|reproduction|facsimile|reproduziert|reproduktion|faksimile|reproduit|reproduction|\
             gereproduceerd|reproductie|複製|復刻",
        ),
        (
            Act::Enlarged,
            "enlarged version|enlarged|second version|vergrösserte fassung|vergrößerte fassung|zweite fassung|\
             version agrandie|seconde version|vergrote versie|tweede versie",
        ),
        (
            Act::Pulled,
            "this impression|this sheet|pulled|impression pulled|dieser abzug|dieser druck|abgezogen|abzug|\
             cette épreuve|épreuve tirée|deze afdruk|afgedrukt",
        ),
    ])
});

/// Words that may stand before a verb or a date and say nothing of their own: "was", "in", "im Jahr".
pub(super) static FILLERS: LazyLock<Phrases<()>> = LazyLock::new(|| {
    Phrases::of(&[(
        (),
        "was|and|then|in|in the year|dated|date|signed and dated|und|dann|im|in den|im jahr|im jahre|datiert|wurde|\
         et|puis|en|l'an|daté|datée|dans les|en daarna|in het jaar|gedateerd|de|le|la|the|of|from the|aus dem|aus den|\
         に|の|、",
    )])
});

/// Words that say that a date is not known.
pub(super) static NOT_KNOWN: LazyLock<Phrases<()>> = LazyLock::new(|| {
    Phrases::of(&[(
        (),
        "date not known|date unknown|unknown date|not known|unknown|no date|n.d.|nd|undated|not dated|\
         o. J.|ohne jahr|undatiert|nicht datiert|datum unbekannt|jahr unbekannt|unbekannt|\
         s.d.|sd|sans date|non daté|non datée|date inconnue|inconnue|\
         z.j.|z.d.|zonder jaar|zonder datum|ongedateerd|datum onbekend|onbekend|\
         制作年不詳|制作年不明|年代不詳|年代不明|年不詳|年不明|年記なし|不詳|不明",
    )])
});

/// Words that say that something was later than the date before it.
pub(super) static LATER: LazyLock<Phrases<()>> = LazyLock::new(|| {
    Phrases::of(&[(
        (),
        "later|at a later date|später|spaeter|plus tard|ultérieurement|postérieurement|later datum|のち|後年|後日",
    )])
});
