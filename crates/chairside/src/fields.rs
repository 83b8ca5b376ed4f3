//! Blanks of a client's file as controls of a form.

use case::question::{Kind, Need, Question, Unit};
use case::text::{LengthUnit, Remark};
use casework::{Blank, Draft, TypedIn, TypedLength};
use cushion::Side;
use maud::{Markup, PreEscaped, html};
use words::Language;

use crate::answers::{Asked, Said, said_of, which_stands};

/// What a field is made from.
#[derive(Clone, Copy)]
pub(crate) struct Fields<'a> {
    pub(crate) language: &'a dyn Language,
    pub(crate) draft: &'a Draft,
    /// What was typed and not written, with why.
    pub(crate) refused: &'a [Said],
    pub(crate) typed_in: TypedIn,
    /// All that there is to be said of the file.
    pub(crate) remarks: &'a [Remark],
    /// Where a changed answer is kept at once.
    pub(crate) keep_at: &'a str,
}

impl Fields<'_> {
    /// The control of one question, or of both sides.
    pub(crate) fn question(&self, question: Question, entry: Option<usize>) -> Markup {
        let blanks = Blank::all(question, entry);
        if let [one] = blanks.as_slice() {
            return self.field(one);
        }
        let comment = self.language.comment_on_form(question);
        html! {
            fieldset class="sides" {
                legend { (capital(&self.language.label_on_form(question))) }
                @if !comment.is_empty() { p class="hint" { (capital(comment)) } }
                @for blank in &blanks { (self.field(blank)) }
            }
        }
    }

    fn field(&self, blank: &Blank) -> Markup {
        let row = blank.question.row();
        match row.kind {
            Kind::Choice(words) => self.choice(blank, words),
            Kind::YesNo => self.choice(blank, &["true", "false"]),
            _ => self.box_of(blank),
        }
    }

    fn label(&self, blank: &Blank) -> String {
        match blank.side {
            Some(Side::Left) => self.language.shared().clients_left_short.to_owned(),
            Some(Side::Right) => self.language.shared().clients_right_short.to_owned(),
            // On paper it stands beside the sensation.
            None if blank.question == Question::SensationSide => {
                self.language.page().fields.less_side.to_owned()
            }
            None => capital(&self.language.label_on_form(blank.question)),
        }
    }

    /// What stands in the box: what was typed and refused, else what the file has.
    fn shown(&self, blank: &Blank) -> String {
        let refused = self.refused.iter().find(|own| own.blank == *blank);
        refused.map_or_else(|| self.of_file(blank), |own| own.typed.clone())
    }

    /// What the file has, in the unit that was chosen; nothing where it is blank.
    fn of_file(&self, blank: &Blank) -> String {
        let own = *blank;
        let own = if own.question == Question::WeightKg && self.draft.answer(&own).is_none() {
            Blank::of(Question::WeightLb)
        } else {
            own
        };
        let Some(written) = self.draft.answer(&own) else { return String::new() };
        let shown = self.number(own.question, &written);
        if let Some(unit) = unit_of_weight(own.question) {
            let is_chosen = self.unit(own.question) == Some(unit);
            return if is_chosen { shown } else { format!("{shown} {unit}") };
        }
        let chosen = self.typed_in.lengths;
        match (is_length(blank.question), self.unit_of_file(blank.question), chosen) {
            (true, "mm", TypedLength::Centimetres) => {
                let cm = written.parse::<f64>().ok().map(|mm| (mm * 100.0).round() / 1e3);
                cm.map_or(shown, |cm| self.language.number(cm))
            }
            (true, of_file, chosen) if of_file != chosen.words() => format!("{shown} {of_file}"),
            _ => shown,
        }
    }

    /// What the file has as an answer; a number with the decimal sign of the language.
    fn number(&self, question: Question, written: &str) -> String {
        let is_number = matches!(question.row().kind, Kind::Length(_) | Kind::Number(..));
        let number = written.parse::<f64>().ok().filter(|_| is_number && written.contains('.'));
        number.map_or_else(|| written.to_owned(), |own| self.language.number(own))
    }

    /// In which unit the file has lengths that answer a question.
    fn unit_of_file(&self, question: Question) -> &'static str {
        match (question.row().kind, self.draft.lengths()) {
            (Kind::Length(_), LengthUnit::Inches) => "in",
            _ => "mm",
        }
    }

    /// What a length is in the unit of the file, where another was chosen.
    fn as_in_file(&self, blank: &Blank) -> Option<String> {
        let unit = match self.draft.lengths() {
            LengthUnit::Millimetres => "mm",
            LengthUnit::Inches => "in",
        };
        let written = self.draft.answer(blank)?;
        let differs = is_length(blank.question) && self.typed_in.lengths.words() != unit;
        differs.then(|| format!("{}\u{a0}{unit}", self.number(blank.question, &written)))
    }

    /// What is to be said under a box: what is wrong, or asked; with what stood there when it was
    /// shown, by which a later change of somebody else is known.
    pub(crate) fn about(&self, blank: &Blank) -> Markup {
        let key = blank.key();
        let refused = self.refused.iter().find(|own| own.blank == *blank);
        let seen = refused.and_then(|own| own.seen.clone());
        let seen = seen.or_else(|| self.draft.answer(blank)).unwrap_or_default();
        let asked = said_of(self.language, self.draft, self.remarks, blank);
        let also = self.as_in_file(blank);
        html! {
            input type="hidden" name=(format!("was:{key}")) value=(seen);
            input type="hidden" name=(format!("shown:{key}")) value=(self.of_file(blank));
            @if let Some(own) = refused.filter(|own| own.is_refused()) {
                p class="error" { span class="mark" aria-hidden="true" { "!" } span { (own.message) } }
                @if own.is_overtaken { (which_stands(self.language, &key)) }
            } @else {
                @if let Some(mm) = also { p class="also" { "= " (mm) } }
                @for own in &asked {
                    @match own {
                        Asked::Needed => { p class="hint" { (self.language.page().fields.needed) } }
                        Asked::Wrong(message) => { p class="error" { span class="mark" aria-hidden="true" { "!" } span { (message) } } }
                        Asked::Doubted(message) => { p class="asks" { span class="mark" aria-hidden="true" { "?" } span { (message) } } }
                    }
                }
            }
        }
    }

    fn box_of(&self, blank: &Blank) -> Markup {
        let (row, key) = (blank.question.row(), blank.key());
        let id = id_of(&key);
        let comment = match blank.side {
            Some(_) => "",
            None => self.language.comment_on_form(blank.question),
        };
        let wrong = self.refused.iter().any(|own| own.blank == *blank && own.is_refused());
        let shown = self.shown(blank);
        let about = about_id(&key);
        let described = format!("{id}-hint {about}");
        let (kind, mode) = match row.kind {
            Kind::Date => ("date", None),
            Kind::Length(_) | Kind::Number(..) => ("text", Some("decimal")),
            Kind::Whole { .. } => ("text", Some("numeric")),
            Kind::Phone => ("tel", None),
            _ => ("text", None),
        };
        let narrow = mode.is_some() || kind == "date";
        html! {
            div class=(if wrong { "field wrong" } else { "field" }) {
                label for=(id) { (self.label(blank)) }
                p class="hint" id=(format!("{id}-hint")) {
                    @if !comment.is_empty() { (capital(comment)) }
                }
                div class="box-line" {
                    @if row.kind == Kind::Texts {
                        textarea id=(id) name=(key) rows="3" aria-describedby=(described)
                            hx-post=(self.keep_at) hx-trigger="change"
                            hx-target=(format!("#{about}")) { (shown) }
                    } @else {
                        input id=(id) name=(key) type=(kind) value=(shown) autocomplete="off"
                            class=(if narrow { "narrow" } else { "" })
                            inputmode=[mode] aria-describedby=(described)
                            aria-invalid=[wrong.then_some("true")]
                            hx-post=(self.keep_at) hx-trigger="change"
                            hx-target=(format!("#{about}"));
                    }
                    @if let Some(unit) = self.unit(blank.question) { span class="unit" { (unit) } }
                }
                div class="about" id=(about) aria-live="polite" { (self.about(blank)) }
            }
        }
    }

    fn unit(&self, question: Question) -> Option<&'static str> {
        match question.row().kind {
            _ if is_length(question) => Some(self.typed_in.lengths.words()),
            Kind::Number(Unit::Kilogram | Unit::Pound, _) => {
                Some(if self.typed_in.pounds { "lb" } else { "kg" })
            }
            Kind::Number(unit, _) => Some(unit.symbol()).filter(|symbol| !symbol.is_empty()),
            _ => None,
        }
    }

    fn choice(&self, blank: &Blank, words: &'static [&'static str]) -> Markup {
        let (row, key) = (blank.question.row(), blank.key());
        let (id, about) = (id_of(&key), about_id(&key));
        let shown = self.shown(blank);
        let texts = &self.language.page().fields;
        let comment = match blank.question {
            // Answers are called otherwise here than in a file.
            Question::ObliquityAt => texts.twice_at_front,
            Question::SensationSide => texts.less_side_hint,
            own => self.language.comment_on_form(own),
        };
        let checks = &self.language.page().checks;
        let said = |word: &'static str| match (row.kind, word) {
            _ if (blank.question, word) == (Question::ObliquityAt, "asis") => {
                checks.at_front.to_owned()
            }
            (Kind::YesNo, "true") => texts.yes.to_owned(),
            (Kind::YesNo, _) => texts.no.to_owned(),
            _ => capital(&self.language.word_on_form(blank.question, word)),
        };
        let blank_word = match row.need {
            _ if blank.question == Question::SensationSide => texts.both_sides,
            Need::Always | Need::With(..) => texts.not_answered,
            _ => texts.not_known,
        };
        html! {
            fieldset class="choice" {
                legend { (self.label(blank)) }
                @if !comment.is_empty() { p class="hint" { (capital(comment)) } }
                @if is_site(blank.question) { (self.body(&id, words)) }
                div class="answers" {
                    @for (at, word) in words.iter().copied().enumerate() {
                        label class=(if side_of(word) == Some(Side::Left) { "answer is-left" } else { "answer" }) {
                            input type="radio" name=(key) value=(word) id=(format!("{id}-{at}"))
                                checked[shown == word]
                                hx-post=(self.keep_at) hx-trigger="change"
                                hx-target=(format!("#{about}"));
                            span { (said(word)) }
                        }
                    }
                    label class="answer blank" {
                        input type="radio" name=(key) value="" checked[shown.is_empty()]
                            hx-post=(self.keep_at) hx-trigger="change"
                            hx-target=(format!("#{about}"));
                        span { (blank_word) }
                    }
                }
                div class="about" id=(about) aria-live="polite" { (self.about(blank)) }
            }
        }
    }
}

impl Fields<'_> {
    /// The body from behind; a ring of it is a second label of the answer to a site.
    fn body(&self, id: &str, words: &[&str]) -> Markup {
        let Ok(own) = sheets::body_picture(self.language) else { return html! {} };
        html! {
            div class="body-sites" {
                (PreEscaped(sheets::fragment(&own.picture)))
                @for (at, word) in words.iter().enumerate() {
                    label class=(format!("site-{word}")) for=(format!("{id}-{at}")) {}
                }
            }
        }
    }
}

/// Whether a question asks for a site of the body.
fn is_site(question: Question) -> bool {
    matches!(question, Question::InjurySite | Question::GoalSite)
}

/// The side that a word of a file is about.
pub(crate) fn side_of(word: &str) -> Option<Side> {
    [Side::Left, Side::Right]
        .into_iter()
        .find(|side| word == side.words() || word.starts_with(&format!("{}-", side.words())))
}

/// In which unit a file has a weight that answers a question; none of another question.
fn unit_of_weight(question: Question) -> Option<&'static str> {
    match question {
        Question::WeightKg => Some("kg"),
        Question::WeightLb => Some("lb"),
        _ => None,
    }
}

/// Whether an answer is a length in millimetres or inches.
pub(crate) fn is_length(question: Question) -> bool {
    matches!(question.row().kind, Kind::Length(_) | Kind::Number(Unit::Millimetre, _))
}

/// A key as the id of an element.
pub(crate) fn id_of(key: &str) -> String {
    format!("f-{}", key.replace('.', "-"))
}

/// The id of what is said under the box of a key.
pub(crate) fn about_id(key: &str) -> String {
    format!("{}-about", id_of(key))
}

/// With a capital at its head.
pub(crate) fn capital(words: &str) -> String {
    let mut rest = words.chars();
    rest.next().map_or_else(String::new, |first| first.to_uppercase().chain(rest).collect())
}
