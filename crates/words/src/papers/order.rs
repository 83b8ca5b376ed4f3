//! The papers of an order: the pick list, what its fill cards and its tags say beside.

/// The papers of an order.
#[derive(Clone, Copy, Debug)]
pub struct OrderTexts {
    pub pick_list: &'static str,
    pub pick_list_subject: &'static str,
    pub fill_cards: &'static str,
    pub fill_cards_subject: &'static str,
    pub estimate_until_counted: &'static str,
    /// Heads the name of the order.
    pub order: &'static str,
    pub cushions: &'static str,
    pub to_fill: &'static str,
    pub spare: &'static str,
    pub in_all: &'static str,
    pub printed: &'static str,
    /// Above the tables.
    pub cells_to_fetch: &'static str,
    pub by_size_and_cell: &'static str,
    pub card_by_card: &'static str,
    /// Heads of columns.
    pub cell: &'static str,
    pub about_litres: &'static str,
    pub layout: &'static str,
    pub size: &'static str,
    pub each: &'static str,
    pub cards: &'static str,
    pub card: &'static str,
    pub serial: &'static str,
    pub layout_and_size: &'static str,
    pub whose: &'static str,
    pub check_word: &'static str,
    pub mass: &'static str,
    pub done: &'static str,
    /// Stands for counts that differ from card to card.
    pub by_card: &'static str,
    /// Stands for whose a cushion as supplied is.
    pub stock: &'static str,
    /// What litres and masses are, and what they are not.
    pub litres_are_rough: &'static str,
    pub masses_are_estimates: &'static str,
    /// How a card, its tag and this list are known to belong together.
    pub how_to_match: &'static str,
    pub clinician_decides: &'static str,
    /// Heads the number of a card and its check word.
    pub card_and_word: &'static str,
    /// Beside tags that are to be cut out.
    pub print_at_full_size: &'static str,
}
