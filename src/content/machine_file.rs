//! Nominal values of every parameter of the machine.

use super::error::{Allowed, ContentError, Problem};
use super::reader::{Finding, Page};
use detent_simulation::interface::Terminal;
use detent_simulation::plant::{Param, Params};
use detent_training::lesson::Mains;
use serde::Deserialize;
use serde::de::{Deserializer, MapAccess, Visitor};
use std::collections::BTreeMap;
use std::fmt;

/// The sound machine for each mains supply.
#[derive(Clone, Debug, PartialEq)]
pub struct Nominal {
    v120hz60: Params,
    v230hz50: Params,
}

impl Nominal {
    /// The sound machine made for this supply.
    pub fn params(&self, mains: Mains) -> &Params {
        match mains {
            Mains::V120Hz60 => &self.v120hz60,
            Mains::V230Hz50 => &self.v230hz50,
        }
    }
}

/// The file as written.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct MachineFile {
    /// Resistance of every harness wire that is not listed by itself, Ω.
    wire_ohms: f64,
    /// Resistance of every contact at the board that is not listed by itself, Ω.
    contact_ohms: f64,
    /// Values of both variants.
    common: Values,
    /// Values of the 120 V, 60 Hz variant.
    v120hz60: Values,
    /// Values of the 230 V, 50 Hz variant.
    v230hz50: Values,
}

/// `{Param: value, …}` with every entry kept, so that one given twice can be told.
struct Values(Vec<(Param, f64)>);

impl<'de> Deserialize<'de> for Values {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Values, D::Error> {
        struct Entries;
        impl<'de> Visitor<'de> for Entries {
            type Value = Values;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a map of parameters and values: {Name: 1.0}")
            }
            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Values, A::Error> {
                let mut entries = Vec::new();
                while let Some(entry) = map.next_entry()? {
                    entries.push(entry);
                }
                Ok(Values(entries))
            }
        }
        deserializer.deserialize_map(Entries)
    }
}

/// Read the machine's nominal values. Each parameter has exactly one value in each variant, given
/// under `common` or under the variant; harness wires and contacts not listed have the base values.
///
/// # Errors
/// The first mistake in the file.
pub fn read_machine(file: &str, bytes: &[u8]) -> Result<Nominal, ContentError> {
    let page = Page::open(file, bytes)?;
    let machine: MachineFile = page.parse()?;
    let mut findings = Vec::new();
    for (field, ohms) in [
        ("wire_ohms", machine.wire_ohms),
        ("contact_ohms", machine.contact_ohms),
    ] {
        if ohms <= 0.0 {
            let allowed = Allowed::Resistance;
            let problem = Problem::OutOfRange {
                found: ohms,
                allowed,
            };
            findings.push((field.to_owned(), problem));
        }
    }
    let mut fill = |name: &str, values: &Values| {
        let sections = [("common", &machine.common), (name, values)];
        let (params, mut found) = fill(&page, &machine, sections);
        findings.append(&mut found);
        params
    };
    let nominal = Nominal {
        v120hz60: fill("v120hz60", &machine.v120hz60),
        v230hz50: fill("v230hz50", &machine.v230hz50),
    };
    page.judge(nominal, findings)
}

fn fill(
    page: &Page<'_>,
    machine: &MachineFile,
    sections: [(&str, &Values); 2],
) -> (Params, Vec<Finding>) {
    let mut params = Params::zeroed();
    for terminal in Terminal::ALL {
        params.set(Param::WireOhms(*terminal), machine.wire_ohms);
        params.set(Param::ContactOhms(*terminal), machine.contact_ohms);
    }
    let mut findings = Vec::new();
    let mut given: BTreeMap<Param, String> = BTreeMap::new();
    for (section, values) in sections {
        for (param, value) in &values.0 {
            let path = format!("{section}[{param:?}]");
            if let Some(first) = given.get(param) {
                let problem = Problem::Repeated {
                    name: format!("{param:?}"),
                    first_line: page.line(first),
                };
                findings.push((path, problem));
            } else {
                params.set(*param, *value);
                given.insert(*param, path);
            }
        }
    }
    for param in Param::all() {
        let has_base = matches!(param, Param::WireOhms(_) | Param::ContactOhms(_));
        if !has_base && !given.contains_key(&param) {
            let problem = Problem::MissingParam(format!("{param:?}"));
            findings.push((format!("{}[{param:?}]", sections[1].0), problem));
        }
    }
    (params, findings)
}
