//! The fixed words of the document: the trade's kinds, actions and conditions.

use quantity::{Between, Fraction, Measure, Temperature};

macro_rules! words {
    ($(#[$doc:meta])* $name:ident { $($(#[$item_doc:meta])* $item:ident = $word:literal,)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum $name { $($(#[$item_doc])* $item,)+ }

        impl $name {
            /// The words, in the manual's order.
            pub const WORDS: &'static [&'static str] = &[$($word,)+];

            /// The word for it.
            #[must_use]
            pub const fn word(self) -> &'static str { match self { $(Self::$item => $word,)+ } }

            /// What the word stands for.
            #[must_use]
            pub fn named(word: &str) -> Option<Self> { match word { $($word => Some(Self::$item),)+ _ => None } }
        }
    };
}
pub(super) use words;

words! {
    /// What a stage is.
    StageKind {
        /// A preferment of any other kind.
        Preferment = "preferment",
        /// A yeasted preferment, stiff or loose.
        Sponge = "sponge",
        /// A yeasted preferment of equal weights.
        Poolish = "poolish",
        /// A stiff yeasted preferment.
        Biga = "biga",
        /// A build of a sourdough culture.
        Levain = "levain",
        /// Dough kept from an earlier batch.
        OldDough = "old-dough",
        /// Grain or fruit soaking in liquid.
        Soaker = "soaker",
        /// Flour or grain scalded or cooked to a paste.
        Scald = "scald",
        /// The dough or batter itself.
        FinalMix = "final-mix",
        /// What is folded or laid in.
        Inclusion = "inclusion",
        /// Dividing, shaping, filling, baking.
        MakeUp = "make-up",
        /// A syrup, custard, compote: cooked.
        Cooked = "cooked",
        /// A butter, filling or cream: beaten.
        Creamed = "creamed",
        /// Mixed without heat: a glaze, a wash, a dressing.
        Mixed = "mixed",
    }
}

impl StageKind {
    /// Whether its flour counts as prefermented.
    #[must_use]
    pub const fn is_preferment(self) -> bool {
        matches!(self, Self::Preferment | Self::Sponge | Self::Poolish | Self::Biga | Self::Levain | Self::OldDough)
    }
}

words! {
    /// What a step does.
    Action {
        /// Weigh out.
        Weigh = "weigh",
        /// Prepare.
        Prepare = "prepare",
        /// Warm.
        Warm = "warm",
        /// Melt.
        Melt = "melt",
        /// Soak.
        Soak = "soak",
        /// Scald.
        Scald = "scald",
        /// Mix.
        Mix = "mix",
        /// Knead.
        Knead = "knead",
        /// Rest.
        Rest = "rest",
        /// Ferment a preferment.
        Ferment = "ferment",
        /// Bulk fermentation.
        Bulk = "bulk",
        /// Fold.
        Fold = "fold",
        /// Divide.
        Divide = "divide",
        /// Shape.
        Shape = "shape",
        /// Fill.
        Fill = "fill",
        /// Proof.
        Proof = "proof",
        /// Retard in the cold.
        Retard = "retard",
        /// Score.
        Score = "score",
        /// Cook on a griddle.
        Griddle = "griddle",
        /// Bake.
        Bake = "bake",
        /// Fry in deep or shallow fat.
        Fry = "fry",
        /// Boil.
        Boil = "boil",
        /// Simmer.
        Simmer = "simmer",
        /// Reduce.
        Reduce = "reduce",
        /// Strain.
        Strain = "strain",
        /// Cream.
        Cream = "cream",
        /// Whip.
        Whip = "whip",
        /// Temper.
        Temper = "temper",
        /// Chill.
        Chill = "chill",
        /// Cool.
        Cool = "cool",
        /// Hold warm or cold.
        Hold = "hold",
        /// Warm through what was cooked before.
        Rewarm = "rewarm",
        /// Drain.
        Drain = "drain",
        /// Brush or coat.
        Glaze = "glaze",
        /// Dust or coat dry.
        Dust = "dust",
        /// Assemble.
        Assemble = "assemble",
        /// Store.
        Store = "store",
        /// Serve.
        Serve = "serve",
    }
}

impl Action {
    /// Whether food is brought to heat by it.
    #[must_use]
    pub const fn cooks(self) -> bool {
        matches!(self, Self::Griddle | Self::Bake | Self::Fry | Self::Boil | Self::Simmer | Self::Reduce | Self::Scald)
    }
}

words! {
    /// Whether a step needs hands.
    Attention {
        /// Hands are needed.
        Active = "active",
        /// It goes on by itself.
        Waiting = "waiting",
    }
}

words! {
    /// What a stage's percentages are shares of.
    PercentOf {
        /// The flour weighed into this stage.
        StageFlour = "stage flour",
        /// All flour of the component.
        TotalFlour = "total flour",
    }
}

words! {
    /// A size class of hen's eggs.
    EggSize {
        /// EU small.
        S = "S",
        /// EU medium.
        M = "M",
        /// EU large.
        L = "L",
        /// EU very large.
        Xl = "XL",
        /// US small.
        Small = "small",
        /// US medium.
        Medium = "medium",
        /// US large.
        Large = "large",
        /// US extra large.
        ExtraLarge = "extra-large",
        /// US jumbo.
        Jumbo = "jumbo",
    }
}

words! {
    /// How an ingredient raises a dough.
    Leaven {
        /// Compressed yeast.
        FreshYeast = "fresh-yeast",
        /// Active dry yeast.
        ActiveDryYeast = "active-dry-yeast",
        /// Instant dry yeast.
        InstantYeast = "instant-yeast",
        /// A sourdough culture.
        Culture = "culture",
        /// Baking powder, soda and the like.
        Chemical = "chemical",
    }
}

words! {
    /// What an ingredient is, as a store cupboard is ordered.
    Group {
        /// Flours, meals, brans.
        Flour = "flour",
        /// Starches.
        Starch = "starch",
        /// Sugars.
        Sugar = "sugar",
        /// Honey and syrups.
        Syrup = "syrup",
        /// Milk and what is made of it.
        Dairy = "dairy",
        /// Eggs.
        Egg = "egg",
        /// Oils and fats other than butter.
        Fat = "fat",
        /// Fruit, fresh, dried and preserved.
        Fruit = "fruit",
        /// Nuts, seeds and their pastes.
        Nut = "nut",
        /// Cocoa and chocolate.
        Chocolate = "chocolate",
        /// Spices, herbs, extracts.
        Spice = "spice",
        /// Yeasts, cultures, baking powders.
        Leaven = "leaven",
        /// Water, wine, tea, plant drinks.
        Liquid = "liquid",
        /// Spirits and liqueurs.
        Spirit = "spirit",
        /// Salt.
        Salt = "salt",
        /// What is in no other group.
        Other = "other",
    }
}

words! {
    /// How a hob heats.
    HeatsBy {
        /// A flame.
        Gas = "gas",
        /// A radiant or solid plate.
        Plate = "plate",
        /// Induction.
        Induction = "induction",
    }
}

words! {
    /// What a vessel is made of.
    Material {
        /// Steel, stainless or enamelled.
        Steel = "steel",
        /// Cast iron.
        CastIron = "cast-iron",
        /// Aluminium.
        Aluminium = "aluminium",
        /// Copper.
        Copper = "copper",
        /// Glass.
        Glass = "glass",
        /// Stoneware, earthenware, porcelain.
        Ceramic = "ceramic",
        /// Plastic.
        Plastic = "plastic",
        /// Wood.
        Wood = "wood",
    }
}

/// What a step goes on until.
#[derive(Clone, Debug, PartialEq)]
pub enum Condition {
    /// A preferment at its peak.
    Ripe,
    /// Risen by that share of its volume; doubled is the whole.
    RisenBy(Fraction),
    /// The middle of the piece at that temperature.
    Core(Between<Temperature>),
    /// The thing itself at that temperature.
    At(Between<Temperature>),
    /// A syrup of that many degrees Brix.
    Brix(f64),
    /// Falling from a spoon at that viscosity in Pa·s.
    Pours(f64),
    /// Plain words, which a person judges.
    Words(String),
}

impl Condition {
    /// Reads a condition; what is no known form stays plain words.
    #[must_use]
    pub fn read(text: &str) -> Self {
        let words = || Self::Words(text.to_owned());
        match text {
            "ripe" => return Self::Ripe,
            "doubled" => return Self::RisenBy(Fraction::WHOLE),
            "trebled" | "tripled" => return Self::RisenBy(Fraction::percent(200.0)),
            "risen by half" => return Self::RisenBy(Fraction::percent(50.0)),
            _ => {}
        }
        if let Some(share) = text.strip_prefix("risen by ") {
            return share
                .parse()
                .ok()
                .and_then(|m: Measure| m.share(Default::default()))
                .map_or_else(words, |s| Self::RisenBy(s.from));
        }
        if let Some(value) = text.strip_prefix("pours at ").and_then(|rest| rest.strip_suffix("Pa·s")) {
            return value.trim().replace(',', ".").parse().map_or_else(|_| words(), Self::Pours);
        }
        if let Some(value) = text.strip_suffix("Brix") {
            return value.trim().replace(',', ".").parse().map_or_else(|_| words(), Self::Brix);
        }
        let (figure, core) = text.strip_suffix("core").map_or((text, false), |figure| (figure, true));
        match figure.trim().parse::<Measure>().ok().and_then(|measure| measure.temperature()) {
            Some(range) if core => Self::Core(range),
            Some(range) => Self::At(range),
            None => words(),
        }
    }
}

words! {
    /// Where the pictures of pages are kept.
    PictureKeeping {
        /// Within the page, so that it is one file.
        Embedded = "embedded",
        /// In a folder beside the pages, in several sizes.
        Beside = "beside",
    }
}
