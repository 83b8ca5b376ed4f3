//! One value at least of everything that can be found about a text, and of every trouble.

use std::time::Duration;

use case::question::{Group, Question};
use case::text::{
    ClientFinding, ColumnsFinding, DesignFinding, EditError, FileFinding, KeyFinding, LengthUnit,
    Looks, OrderFinding, RecordFinding, Remark, StockChange, SyntaxFinding, TextFinding, Type,
    ValueFinding, WishFinding, WordFinding,
};
use case::{
    AdjustRefusal, BadDescription, BatchError, BodyError, BodyMeasure, BodyValue, ByHand,
    CardCodeFault, CheckError, CheckPart, CodePart, Crash, Date, Digest, DigestHead, Distrust,
    Doing, Drawn, FileKind, FillingSoFar, LayoutError, MeshError, NoFile, NoPicture, NotAppended,
    NotDone, NotDrawn, NotRestored, PluginFault, PluginFaultKind, ShelfError, SiteName,
    StaleFilling, StockError, TableFault, Trouble, Want, Why, WhyNoPlan,
};
use cushion::{
    FaultKind, Length, Listed, Mass, Name, Point, Severity, Side, Size, SizeError, Volume,
};

fn owned(text: &str) -> String {
    text.to_owned()
}

fn name(text: &str) -> Name {
    Name::new(text).expect("a name")
}

fn mm(mm: f64) -> Length {
    Length::from_mm(mm)
}

fn size() -> Size {
    Size::new(mm(440.0), mm(400.0)).expect("a size")
}

fn day() -> Date {
    Date::constant(2026, 3, 1)
}

fn remark(finding: impl Into<TextFinding>) -> Remark {
    Remark { severity: Severity::Error, span: 0..1, finding: finding.into() }
}

fn all<T: Into<TextFinding>>(findings: impl IntoIterator<Item = T>) -> Vec<TextFinding> {
    findings.into_iter().map(Into::into).collect()
}

/// Findings about texts, of each variant.
pub(crate) fn findings() -> Vec<TextFinding> {
    let mut found = reading();
    found.extend(values());
    found.extend(words_as_values());
    found.extend(together());
    found.extend(records_and_designs());
    found.extend(orders());
    found.extend(troubles().into_iter().map(|own| TextFinding::Trouble(Box::new(own))));
    found
}

fn reading() -> Vec<TextFinding> {
    let mut found = all([
        FileFinding::TooLarge,
        FileFinding::NoKind,
        FileFinding::OtherKind { written: owned("client"), wanted: FileKind::Layout },
        FileFinding::OtherKind { written: owned("cell"), wanted: FileKind::Client },
        FileFinding::OtherKind { written: owned("song"), wanted: FileKind::Cell },
        FileFinding::Format(2),
        FileFinding::More(1),
        FileFinding::More(3),
    ]);
    found.extend(all([
        SyntaxFinding::Twice,
        SyntaxFinding::HeadingTwice,
        SyntaxFinding::TypographicQuotes(owned("left")),
        SyntaxFinding::NoQuotes(owned("left")),
        SyntaxFinding::NoValue,
        SyntaxFinding::DecimalComma(owned("12,5")),
        SyntaxFinding::Truth(owned("yes")),
        SyntaxFinding::LeadingZero(owned("012")),
        SyntaxFinding::Other(owned("expected `=`")),
    ]));
    let unknown = |near, belongs| KeyFinding::Unknown {
        key: owned("hip"),
        near,
        known: vec!["hip_width", "thigh_depth"],
        belongs,
    };
    found.extend(all([
        KeyFinding::Missing(Question::HipWidth),
        KeyFinding::MissingGroup(Group::Measures),
        KeyFinding::MissingSide("left"),
        unknown(Some("hip_width"), None),
        unknown(None, Some(Group::Injury)),
        unknown(None, Some(Group::Obliquity)),
        unknown(None, Some(Group::Client)),
        unknown(None, None),
        KeyFinding::NotBeside {
            question: Question::GoalPercent,
            other: "want",
            words: &["off-load"],
        },
        KeyFinding::Both(Question::WeightKg, "lb"),
        KeyFinding::Neither(Question::WeightKg, "lb"),
        KeyFinding::Without { given: Question::WeightKg, missing: Question::WeighedOn },
        KeyFinding::Blank(Question::HipWidth, None),
        KeyFinding::Blank(Question::ThighDepth, Some("left")),
        KeyFinding::NotAName(owned("Pelvis left")),
        KeyFinding::NotALanguage(owned("Spanish")),
        KeyFinding::NoEnglish(Question::CompartmentWords),
    ]));
    found
}

fn values() -> Vec<TextFinding> {
    use Type::{Date, List, Number, Table, Text, Truth, Whole};
    let length = |looks| ValueFinding::Length {
        question: Question::HipWidth,
        number: 38.0,
        unit: LengthUnit::Millimetres,
        looks,
    };
    let mut found = all([
        length(Looks::Centimetres),
        length(Looks::Inches),
        length(Looks::Millimetres),
        length(Looks::Wrong),
        ValueFinding::NumberInWords { written: owned("38 cm"), write: Some(owned("380")) },
        ValueFinding::NumberInWords { written: owned("some"), write: None },
        ValueFinding::NotFinite,
        ValueFinding::Range { question: Question::WeightKg, number: 900.0 },
        ValueFinding::Range { question: Question::HomeM, number: 90_000.0 },
        ValueFinding::Range { question: Question::ObliquityBy, number: 900.0 },
        ValueFinding::Whole { written: owned("-1"), least: 0, most: 99 },
        ValueFinding::Date(owned("1.3.2026")),
        ValueFinding::Empty,
        ValueFinding::Control,
        ValueFinding::Unprintable('\u{4e00}'),
        ValueFinding::RightToLeft('\u{5d0}'),
        ValueFinding::Word { wanted: "layout", written: owned("lay-out") },
    ]);
    let types = [Text, Number, Whole, Truth, Date, List, Table];
    found.extend(all(types.map(|wanted| ValueFinding::Type { found: Text, wanted })));
    found.extend(all(types.map(|found| ValueFinding::Type { found, wanted: Text })));
    found
}

fn words_as_values() -> Vec<TextFinding> {
    all([
        WordFinding::Name(owned("Left"), Some(owned("left"))),
        WordFinding::Name(owned("?"), None),
        WordFinding::Choice { question: Question::Units, written: owned("cm"), near: None },
        WordFinding::Choice {
            question: Question::SeatBase,
            written: owned("solidd"),
            near: Some("solid"),
        },
        WordFinding::Code(owned("Maria")),
        WordFinding::NameInCode(owned("Maria1958")),
        WordFinding::Phone(owned("none")),
        WordFinding::Size(SizeError::Form, Some(owned("440x400"))),
        WordFinding::Size(SizeError::Form, None),
        WordFinding::Size(SizeError::Range { width_mm: 44.0, depth_mm: 40.0 }, None),
    ])
}

fn together() -> Vec<TextFinding> {
    let mut found = all([
        ClientFinding::NotSigned,
        ClientFinding::HipsWiderThanThighs,
        ClientFinding::TrochantersWiderThanHips,
        ClientFinding::ThighsDiffer,
        ClientFinding::LongThigh,
        ClientFinding::LongLeg,
        ClientFinding::HipsForWeight { narrow: true, weight: Mass::from_kg(60.0) },
        ClientFinding::HipsForWeight { narrow: false, weight: Mass::from_kg(60.0) },
        ClientFinding::ParametersWithoutPlugin,
        ClientFinding::Future { date: day(), today: day() },
    ]);
    let small = |unit| WishFinding::SmallObliquity { number: 2.5, unit };
    found.extend(all([
        WishFinding::MoreThanThereIs,
        WishFinding::BothOfObliquity,
        WishFinding::NoObliquity,
        WishFinding::GoalTwice(Want::NearStock),
        WishFinding::NoWeightForGoals,
        small(LengthUnit::Millimetres),
        small(LengthUnit::Inches),
        WishFinding::OtherSide {
            injured: SiteName::SeatBone(Side::Left),
            relieved: SiteName::SeatBone(Side::Right),
        },
        WishFinding::FrontOfLostLeg(Side::Left),
    ]));
    found
}

/// Two of six compartments.
pub(crate) fn filling(stale: Option<StaleFilling>) -> FillingSoFar {
    FillingSoFar { on: day(), by: owned("OT"), counted: 2, of: 6, stale }
}

fn records_and_designs() -> Vec<TextFinding> {
    let mut found = all([
        RecordFinding::NoSuchEntry(owned("party")),
        RecordFinding::Order,
        RecordFinding::NotSaidToPass,
        RecordFinding::NotPassed { missing: CheckPart::ALL.to_vec(), alarm: false },
        RecordFinding::NotPassed { missing: vec![CheckPart::Reach], alarm: false },
        RecordFinding::NotPassed { missing: Vec::new(), alarm: true },
        RecordFinding::NotEarlier { entry: 4, here: 3 },
        RecordFinding::Sum { sum: 40, total: 41 },
        RecordFinding::CountedTwice(3),
        RecordFinding::NoCounts,
        RecordFinding::CountsDiffer { number: 3, first: 40, second: 41 },
        RecordFinding::AfterNoEntry { after: 4, there: 3 },
        RecordFinding::Filling(filling(None)),
        RecordFinding::Filling(filling(Some(StaleFilling::OtherCounts))),
        RecordFinding::Filling(filling(Some(StaleFilling::Since))),
        RecordFinding::Digest,
    ]);
    found.extend(all(check_errors().into_iter().map(RecordFinding::Check)));
    found.extend(all([
        DesignFinding::Measure(owned("half")),
        DesignFinding::LargeMeasure,
        DesignFinding::Point,
        DesignFinding::Rounding(owned("r 40")),
        DesignFinding::Seed,
        DesignFinding::CurveWithBow,
        DesignFinding::NoSizes,
        DesignFinding::SizeTwice(size()),
        DesignFinding::BuiltInName(name("row-six")),
        DesignFinding::RevisionMustRise {
            was: Some(2),
            is: Some(2),
            changes: vec![
                StockChange { size: size(), number: 3, was: Some(41), is: Some(43) },
                StockChange { size: size(), number: 7, was: None, is: Some(43) },
                StockChange { size: size(), number: 8, was: Some(12), is: None },
                StockChange { size: size(), number: 9, was: Some(12), is: Some(13) },
            ],
        },
        DesignFinding::RevisionFell { was: 4, is: None },
        DesignFinding::CellVolume { volume: Volume::from_ml(40.0), most: Volume::from_ml(28.0) },
        DesignFinding::Film { weight: Mass::from_kg(0.008), edge: mm(50.0) },
    ]));
    found.extend(all(faults().map(|fault| DesignFinding::Fault(fault, Vec::new()))));
    found.extend(all(faults().map(|fault| DesignFinding::Fault(fault, vec![size(); 8]))));
    found
}

fn orders() -> Vec<TextFinding> {
    let unknown = |near| ColumnsFinding::UnknownColumn {
        written: owned("serial"),
        near,
        known: &["layout", "size", "serials"],
    };
    let mut found = all([
        unknown(Some("serials")),
        unknown(None),
        ColumnsFinding::ColumnTwice("size"),
        ColumnsFinding::NoColumn("quantity"),
        ColumnsFinding::Fields { found: 1, wanted: 5 },
        ColumnsFinding::Fields { found: 6, wanted: 5 },
        ColumnsFinding::Quotes,
        ColumnsFinding::Nothing,
    ]);
    found.extend(all([
        OrderFinding::NoFile(owned("mine.toml")),
        OrderFinding::NothingNamed,
        OrderFinding::BesideClient("size"),
        OrderFinding::NoSize,
        OrderFinding::Quantity(owned("a dozen")),
        OrderFinding::TooMany { most: 500 },
        OrderFinding::OneForClient(2),
        OrderFinding::Serial(owned("S 1, S 2")),
        OrderFinding::SerialRun(owned("S-9..S-112")),
        OrderFinding::SerialCount { serials: 1, quantity: 2 },
        OrderFinding::SerialCount { serials: 2, quantity: 1 },
        OrderFinding::SerialTwice { serial: owned("S-101"), line: 3 },
        OrderFinding::ClientTwice { file: owned("K-17.toml"), line: 4 },
        OrderFinding::OtherSerial { ordered: owned("S-101"), of_file: owned("S-102") },
    ]));
    found
}

/// What can be wrong with a layout; the compiler asks for no new one here, `layouts.rs` does.
fn faults() -> impl Iterator<Item = FaultKind> {
    let at = Point::new(110.0, 300.0);
    [
        FaultKind::UnknownPoint(name("mid")),
        FaultKind::UnknownSeam(name("legs")),
        FaultKind::Circular,
        FaultKind::NotOnSeam { seam: name("legs"), point: name("mid") },
        FaultKind::BeyondSeam,
        FaultKind::SamePlace(name("mid")),
        FaultKind::TooMuch { of: Listed::Points, most: 200 },
        FaultKind::TooMuch { of: Listed::Seams, most: 200 },
        FaultKind::TooMuch { of: Listed::PointsOfSeams, most: 200 },
        FaultKind::TooMuch { of: Listed::Compartments, most: 99 },
        FaultKind::TooMuch { of: Listed::Sizes, most: 100 },
        FaultKind::TwiceThrough(name("mid")),
        FaultKind::UnusedPoint,
        FaultKind::BeyondSize { by: mm(12.0), at },
        FaultKind::MissingNumber(4),
        FaultKind::NoOutline,
        FaultKind::TooFewPoints { least: 2 },
        FaultKind::OpenOutline,
        FaultKind::NoRoomToRound,
        FaultKind::TooMuchBow,
        FaultKind::EndsNowhere(name("mid")),
        FaultKind::Crossing { other: name("legs"), at },
        FaultKind::Outside,
        FaultKind::WrongHalf,
        FaultKind::SeedOutside,
        FaultKind::SharedFace(name("rear")),
        FaultKind::UnclaimedFace { at },
        FaultKind::SameNumber(3),
        FaultKind::NumbersForSides,
        FaultKind::SideInName,
        FaultKind::OtherFaces,
        FaultKind::NarrowerThanCell { number: 3, width: mm(20.0), cell: mm(50.8) },
        FaultKind::NarrowerThanHand { number: 3, width: mm(60.0) },
        FaultKind::NarrowArm { number: 3, width: mm(40.0), at },
        FaultKind::AcuteCorner { number: 3, degrees: 30.0, at },
        FaultKind::NoCrown(mm(-5.0)),
        FaultKind::CrownBeyondModel { crown: mm(80.0), most: mm(25.0) },
        FaultKind::StockTooSteep { number: 3, crown: mm(20.0), most: mm(15.0) },
        FaultKind::RatedAboveLarger(size()),
        FaultKind::CrownTooHigh { crown: mm(40.0), most: mm(25.0) },
        FaultKind::NotMade,
    ]
    .into_iter()
}

/// Why texts are no checks.
pub(crate) fn check_errors() -> Vec<CheckError> {
    let mut errors = vec![
        CheckError::NotACheck(owned("left")),
        CheckError::NoSuchCheck(owned("poke")),
        CheckError::NotASide(owned("up")),
        CheckError::NotALandmark(owned("knees")),
        CheckError::NotANumber(owned("left")),
        CheckError::NotASite(owned("elbow")),
        CheckError::LengthWithoutUnit(owned("25")),
        CheckError::LengthRange { written: owned("250mm"), most_mm: 100.0 },
        CheckError::PressureWithoutUnit(owned("48")),
        CheckError::PressureRange { written: owned("0kPa"), least_mmhg: 1.0, most_mmhg: 400.0 },
    ];
    let answer = |kind| CheckError::NotAnAnswer { kind, written: owned("red") };
    errors.extend(case::CHECK_KINDS.map(answer));
    errors
}

/// Troubles, of each variant.
pub(crate) fn troubles() -> Vec<Trouble> {
    let file = || owned("K-17.toml");
    let mut troubles: Vec<Trouble> = shelf().into_iter().map(Trouble::Shelf).collect();
    troubles.extend(no_layout().into_iter().map(Trouble::Layout));
    troubles.extend(edits().map(|error| Trouble::Edit { file: file(), error }));
    troubles.extend(of_cases());
    troubles.extend(of_layouts());
    troubles.extend([
        Trouble::NotUtf8 { file: file(), line: 3, byte: 0xff },
        Trouble::WrongFile { file: file(), errors: 1, remarks: 2 },
        Trouble::WrongFile { file: file(), errors: 0, remarks: 0 },
        Trouble::NotOurs { file: owned("a.txt"), kind: FileKind::Layout },
        Trouble::UnknownCell { name: owned("pillow"), known: vec![owned("pillow-25")] },
        Trouble::PartsOfOtherSurveys { file: owned("a.csv"), first: owned("b.csv") },
        Trouble::PartTwice { file: owned("a.csv"), first: owned("b.csv"), part: 2 },
        Trouble::PartsMissing { missing: vec![2], of: 8 },
        Trouble::PartsMissing { missing: vec![2, 3, 5], of: 8 },
        Trouble::EmptyPart { file: owned("a.csv") },
        Trouble::OtherSurvey { file: owned("a.csv") },
        Trouble::BodyTwice { row: 7 },
        Trouble::NoParts,
        Trouble::Stopped,
        Trouble::NoThread(owned("out of memory")),
    ]);
    troubles.extend(
        [
            TableFault::NoColumn { name: "mass_kg", wanted: &["mass_kg", "sex"] },
            TableFault::Cell { written: owned("x"), column: "mass_kg", least: 5.0, most: 350.0 },
            TableFault::NotARow(owned("found 2 fields")),
            TableFault::NoSurvey,
            TableFault::SurveyRow,
        ]
        .map(|fault| Trouble::Table { file: owned("b.csv"), line: 4, fault }),
    );
    troubles
}

fn of_cases() -> Vec<Trouble> {
    let file = || owned("K-17.toml");
    let body = || BodyError { what: BodyValue::HipWidth, value: 700.0, least: 200.0, most: 650.0 };
    let heavy =
        || WhyNoPlan::TooHeavy { weight: Mass::from_kg(120.0), rating: Mass::from_kg(90.0) };
    let mut troubles = vec![
        Trouble::FirstFileIsItself { file: file() },
        Trouble::OtherCompartments { file: file() },
        Trouble::OtherCushion {
            file: file(),
            on: day(),
            was: (owned("row-six"), size()),
            now: (owned("island-eight"), size()),
        },
        Trouble::NoWeight { file: file() },
        Trouble::NoBody { file: file(), error: body() },
        Trouble::NotSafe(heavy()),
        Trouble::NotSafe(WhyNoPlan::ByHand(ByHand::HipLoss(Side::Left))),
        Trouble::NotSafe(WhyNoPlan::ByHand(ByHand::FixedTiltOnCoccyx)),
        Trouble::NotSafe(WhyNoPlan::ByHand(ByHand::SideGoalOnSaggingSling)),
        Trouble::NothingRecorded { file: file() },
        Trouble::NotAppended { file: file(), why: NotAppended::NotToml(owned("expected `=`")) },
        Trouble::NotAppended { file: file(), why: NotAppended::RecordForm },
        Trouble::NotAppended { file: file(), why: NotAppended::FillingForm },
        Trouble::NotSigned,
        Trouble::NoCheck,
        Trouble::OtherCounts { given: 5, wanted: 6 },
        Trouble::Batch(BatchError::FewCells { cells: 10, least: 20 }),
        Trouble::Batch(BatchError::NotANumber),
        Trouble::Batch(BatchError::ManyCells { cells: 100_000, most: 10_000 }),
        Trouble::Batch(BatchError::CellWeight { cell: 1e300, least: 0.01, most: 50.0 }),
        Trouble::Batch(BatchError::CoarseScale { cell: 0.6, division: 1.0 }),
    ];
    let not_done = [
        NotDone::NoCountFor(vec![2]),
        NotDone::NoCountFor(vec![2, 3]),
        NotDone::CountedTwice(2),
        NotDone::NoSuchNumber { number: 9, known: vec![1, 2] },
        NotDone::NothingPlanned,
        NotDone::NothingProposed,
        NotDone::FillGoesOn { counted: 2, of: 6 },
        NotDone::NothingPutIn,
        NotDone::TooMany { number: 2, there: 1, moved: 4 },
        NotDone::Nothing,
        NotDone::NoSuchEntry { entry: 9, there: 1 },
        NotDone::NoSuchEntry { entry: 9, there: 0 },
        NotDone::IsWithdrawn(2),
        NotDone::HasNoCounts(2),
        NotDone::NoReason,
    ];
    troubles.extend(not_done.map(|why| Trouble::NotDone { file: file(), why }));
    troubles.extend(
        [
            WhyNoPlan::UnknownCompartment { known: vec![name("rear")] },
            WhyNoPlan::TwoChanges,
            WhyNoPlan::FewerThanNone { stock: 4, change: -5 },
            WhyNoPlan::NoSuchCrown { crown: mm(90.0) },
            WhyNoPlan::MoreThanTwice { stock: 10, planned: 30 },
            WhyNoPlan::NoBody(body()),
            heavy(),
        ]
        .map(Trouble::NoPlan),
    );
    troubles.extend(
        [
            AdjustRefusal::NoSuchCompartment(9),
            AdjustRefusal::Unreachable(4),
            AdjustRefusal::NoPartner(1),
            AdjustRefusal::NoWeight,
            AdjustRefusal::NoBody(body()),
        ]
        .map(|why| Trouble::Checks { why, numbers: vec![1, 2, 3] }),
    );
    troubles.extend(not_restored().into_iter().map(Trouble::NotRestored));
    troubles
}

fn not_restored() -> Vec<NotRestored> {
    let head = || DigestHead::new("0123456789").expect("ten digits");
    let digest = || Digest::new("0123456789abcdef").expect("sixteen digits");
    let faults = [
        CardCodeFault::NotOne,
        CardCodeFault::OtherVersion,
        CardCodeFault::Sign { sign: 'w', at: 7 },
        CardCodeFault::TooLong { signs: 151 },
        CardCodeFault::Mistyped,
        CardCodeFault::Unreadable,
    ];
    let mut all = faults.map(NotRestored::Code).to_vec();
    for part in [CodePart::Layout, CodePart::Cell] {
        let (name, there) = (owned("row-four"), owned("`row-four.toml`"));
        all.push(NotRestored::Needed { part, name: name.clone(), head: head() });
        all.push(NotRestored::OtherText { part, name, head: head(), there, digest: digest() });
    }
    let (layout, given) = (owned("row-six"), owned("SW-0142"));
    all.extend([
        NotRestored::NoPdf { file: owned("a.pdf") },
        NotRestored::NothingAttached { file: owned("a.pdf") },
        NotRestored::OtherCompartments { layout, size: size(), counts: 8, compartments: 6 },
        NotRestored::OtherWord { word: owned("7GES") },
        NotRestored::OtherSerial { given: given.clone(), coded: owned("SW-0141") },
        NotRestored::NoSerial { given },
    ]);
    all
}

fn of_layouts() -> Vec<Trouble> {
    let file = || owned("rows.toml");
    let mut troubles = vec![
        Trouble::NoPicture(NoPicture::Size),
        Trouble::NoPicture(NoPicture::NotUnderstood(owned("a text was not drawn"))),
        Trouble::NotMade { file: file(), size: size(), fault: Some(FaultKind::Circular) },
        Trouble::NotMade { file: file(), size: size(), fault: None },
        Trouble::NoSizes { file: file() },
    ];
    let at = Point::new(110.0, 300.0);
    troubles.extend(
        [
            StockError::Mesh(MeshError::TooClose { at }),
            StockError::Mesh(MeshError::Empty),
            StockError::NoCrown(mm(0.0)),
        ]
        .map(|error| Trouble::NoStock { file: file(), size: size(), error }),
    );
    let text = || owned("na\u{308}ive");
    let whys = [
        NotDrawn::Missing { character: '\u{4e00}', text: text() },
        NotDrawn::Missing { character: '\u{5d0}', text: text() },
        NotDrawn::Unplaced { character: '\u{308}', text: text() },
        NotDrawn::TooWide { word: text(), width_mm: 90.0, room_mm: 60.0 },
        NotDrawn::Overflow { what: text(), by_mm: 12.0 },
        NotDrawn::OtherCompartments,
        NotDrawn::OtherSize,
        NotDrawn::OtherFill,
    ];
    let drawn = [
        Drawn::Paper { name: "tag".into(), of: file() },
        Drawn::Words,
        Drawn::Form,
        Drawn::Pattern,
        Drawn::Sections,
        Drawn::SurveyFigure,
    ];
    for what in drawn {
        let own = whys.iter().cloned().map(|why| Trouble::NotDrawn { what: what.clone(), why });
        troubles.extend(own);
    }
    troubles
}

fn shelf() -> Vec<ShelfError> {
    let whys = [
        Why::NotFound,
        Why::NotAllowed,
        Why::NotOfThisShelf,
        Why::TooLarge { most: 1_000_000 },
        Why::NotAFile(NoFile::Folder),
        Why::NotAFile(NoFile::Pipe),
        Why::NotAFolder,
        Why::LinkToNothing,
        Why::Changed,
        Why::Gone,
        Why::ThereAlready,
        Why::Twice,
        Why::ReadOnlyFile,
        Why::OtherOwner,
        Why::HardLinked { names: 2 },
        Why::ReadOnlyDisk,
        Why::DiskFull,
        Why::TooLargeHere,
        Why::Locked,
        Why::System(owned("the disk is on fire")),
    ];
    let mut errors = Vec::new();
    for why in whys {
        for doing in [Doing::Read, Doing::Write] {
            errors.push(ShelfError::new(doing, "K-17.toml", why.clone()));
        }
        let not_undone = vec![owned("a.pdf"), owned("b.pdf")];
        errors.push(ShelfError { not_undone, ..ShelfError::new(Doing::Place, "c.pdf", why) });
    }
    errors
}

fn no_layout() -> Vec<LayoutError> {
    let mut errors = vec![
        LayoutError::OtherSource { name: owned("rows.toml") },
        LayoutError::UnknownName { name: owned("rows"), known: vec![owned("row-six")] },
        LayoutError::NoParameters { name: owned("row-six"), given: name("pitch") },
        LayoutError::NotSettable { name: owned("row-six"), given: name("pitch") },
    ];
    let plugin = |kind| LayoutError::Plugin(PluginFault { plugin: owned("rings"), kind });
    errors.extend(plugin_faults().into_iter().map(plugin));
    errors
}

/// What can be wrong with a plugin.
pub(crate) fn plugin_faults() -> Vec<PluginFaultKind> {
    use PluginFaultKind as Kind;
    let second = Duration::from_secs(1);
    let given = |known| Kind::UnknownParameter { given: name("pitch"), known };
    let trust = |why| Kind::NotTrusted { path: owned("plugins"), why };
    let wrong = |remarks| Kind::BadLayout { text: owned("format = 2"), remarks };
    let mut faults = vec![
        Kind::NotAName,
        Kind::NotFound { looked_in: Vec::new() },
        Kind::NotFound { looked_in: vec![owned("a"), owned("b")] },
        Kind::NoFile,
        Kind::NotALibrary(Some(owned("no such symbol"))),
        Kind::NotALibrary(None),
        Kind::NoEntry,
        Kind::OtherVersion { found: 7 },
        Kind::OtherName { found: name("halves") },
        Kind::Ended,
        Kind::TooSlow(second),
        Kind::NotReadInTime(second),
        Kind::TooLong { most: 1000 },
        Kind::TooMuchPrinted { most: 1000 },
        Kind::NotText,
        Kind::Failed(Some(owned("no idea"))),
        Kind::Failed(None),
        Kind::Refused(Some(owned("There is no room."))),
        Kind::Refused(None),
        Kind::OtherLayout { found: name("rows") },
        trust(Distrust::OtherOwner),
        trust(Distrust::WritableByAll),
        Kind::OtherSize { asked: size(), answered: vec![size()] },
        wrong(Vec::new()),
        wrong(vec![remark(FileFinding::NoKind), remark(SyntaxFinding::Twice)]),
        given(Vec::new()),
        given(vec![name("spacing")]),
        Kind::OutOfRange { parameter: name("pitch"), value: 9.0, least: 50.0, greatest: 90.0 },
        Kind::NotGiven {
            parameter: name("spacing"),
            words: owned("between the seat bones"),
            measure: Some(BodyMeasure::SeatBoneSpacing),
        },
        Kind::NoChild(owned("no memory")),
        Kind::NoLimits(owned("not allowed")),
    ];
    faults.extend(BadDescription::ALL.map(|(bad, _)| Kind::BadDescription(bad)));
    faults.extend(
        [
            Crash::OthersMemory,
            Crash::NoMemory,
            Crash::GaveUp,
            Crash::NoInstruction,
            Crash::DividedByZero,
            Crash::TooLong,
            Crash::WroteFile,
            Crash::Killed,
            Crash::Signal(7),
        ]
        .map(Kind::Crashed),
    );
    faults
}

fn edits() -> impl Iterator<Item = EditError> {
    let key = |near| EditError::NoSuchKey { key: owned("hip"), near };
    let entry = |there| EditError::NoSuchEntry { list: Group::Goal, there };
    [
        EditError::Unreadable(Vec::new()),
        EditError::Unreadable(vec![remark(SyntaxFinding::Twice)]),
        key(Some(owned("measures.hip_width"))),
        key(None),
        entry(0),
        entry(1),
        entry(2),
        EditError::EachSide(Question::ThighDepth),
        EditError::Table(Group::Goal),
        EditError::Form(owned("measures")),
        EditError::Wrong { text: String::new(), remark: Box::new(remark(ValueFinding::Empty)) },
    ]
    .into_iter()
}
