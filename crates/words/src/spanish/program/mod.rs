//! Spanish: what the program says of its own doing.

mod contour;
mod faults;
mod told;

use case::{FileKind, Said};

use super::Spanish;
use crate::{
    Advice, Begun, CallFault, ContourNumber, ContourSaid, Done, FileFault, Level, OutputFault,
    PageFault, ProgramFault, ProgramWords, SupplierFault, Told,
};

impl ProgramWords for Spanish {
    fn told(&self, told: &Told<'_>) -> String {
        told::told(told)
    }

    fn begun(&self, begun: &Begun<'_>) -> String {
        told::begun(begun)
    }

    fn done(&self, done: &Done<'_>) -> String {
        told::done(done)
    }

    fn contour(&self, said: &ContourSaid<'_>) -> String {
        contour::said(said)
    }

    fn contour_number(&self, number: ContourNumber) -> String {
        contour::number(number)
    }

    fn level(&self, level: Level) -> &'static str {
        match level {
            Level::Error => "error",
            Level::Warning => "aviso",
            Level::Remark => "observación",
            Level::Hint => "consejo",
        }
    }

    fn file_kind(&self, kind: FileKind) -> &'static str {
        match kind {
            FileKind::Client => "persona",
            FileKind::Layout => "diseño",
            FileKind::Cell => "celda",
        }
    }

    fn call_fault(&self, fault: &CallFault<'_>) -> Said {
        faults::of_a_call(fault)
    }

    fn output_fault(&self, fault: &OutputFault<'_>) -> Said {
        faults::of_an_output(fault)
    }

    fn supplier_fault(&self, fault: &SupplierFault<'_>) -> Said {
        faults::of_a_supplier(fault)
    }

    fn file_fault(&self, fault: &FileFault<'_>) -> Said {
        faults::of_files(fault)
    }

    fn program_fault(&self, fault: &ProgramFault<'_>) -> Said {
        faults::of_the_program(fault)
    }

    fn page_fault(&self, fault: &PageFault<'_>) -> Said {
        faults::of_the_page(fault)
    }

    fn advice(&self, advice: &Advice<'_>) -> String {
        faults::advice(advice)
    }
}
