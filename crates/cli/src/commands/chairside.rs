//! `chairside`: the page for the whole job, on this machine alone.

use std::sync::Arc;

use casework::Whose;
use chairside::{Demo, House, NotServed, Settings};
use shelf::DiskShelf;
use words::{PageFault, Told};

use crate::arguments::{Chairside, Invented};
use crate::commands::demo;
use crate::failure::Failure;
use crate::outside;
use crate::say;
use crate::setting::Setting;

/// The invented clients, to learn with.
const DEMOS: &[Demo] = &[
    Demo { code: "DEMO-1", text: demo::text(Invented::Adult) },
    Demo { code: "DEMO-2", text: demo::text(Invented::Child) },
    Demo { code: "DEMO-3", text: demo::text(Invented::Wide) },
];

/// Serves the page until the program is stopped.
pub(crate) fn run(arguments: &Chairside, setting: Setting) -> Result<(), Failure> {
    if setting.terminal.is_json() {
        return Err(page(Whose::Asker, &PageFault::NoReport));
    }
    if !arguments.folder.is_dir() {
        let named = arguments.folder.display().to_string();
        return Err(page(Whose::Asker, &PageFault::NoFolder { named: &named }));
    }
    let started_on = setting.today()?;
    let house = House::new(Settings {
        shelf: Arc::new(DiskShelf::within(&arguments.folder)),
        layouts: outside::layouts(&arguments.plugins),
        // A page that stays open over midnight is of the next day.
        today: Box::new(move || setting.today().unwrap_or(started_on)),
        language: say::language(),
        paper: arguments.paper.sheet(),
        demos: DEMOS,
    });
    let runtime = tokio::runtime::Builder::new_multi_thread().enable_all().build();
    let runtime = runtime.map_err(|error| {
        let why = error.to_string();
        page(Whose::Keeper, &PageFault::NoThreads { why: &why })
    })?;
    runtime.block_on(serve(arguments, house, setting))
}

async fn serve(arguments: &Chairside, house: House, setting: Setting) -> Result<(), Failure> {
    let page = chairside::Chairside::at(arguments.port, house).await.map_err(not_served)?;
    let (say, address) = (say::language(), page.address());
    let folder = arguments.folder.display().to_string();
    let open = Told::PageIsOpen { folder: &folder, address: &address };
    setting.terminal.answer(&(say.told(&open) + "\n"))?;
    if !arguments.no_open && open::that_detached(&address).is_err() {
        setting.terminal.warn(&[say.told(&Told::NoBrowser)]);
    }
    page.serve(std::future::pending()).await.map_err(not_served)
}

fn not_served(error: NotServed) -> Failure {
    match error {
        NotServed::Port(error) => page(Whose::Keeper, &PageFault::Port { why: &error.to_string() }),
        NotServed::NoLot => page(Whose::Keeper, &PageFault::NoLot),
        NotServed::Failed(error) => {
            page(Whose::Keeper, &PageFault::Ended { why: &error.to_string() })
        }
    }
}

/// The failure for what keeps the page from being served.
fn page(whose: Whose, fault: &PageFault<'_>) -> Failure {
    Failure::new(whose, say::language().page_fault(fault))
}
