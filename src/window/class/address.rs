//! Where a class's server is.

use std::fmt;
use std::str::FromStr;

/// Scheme, host and port of a class's server, such as `http://192.168.1.20:8080`, and nothing behind them.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct ServerAddress(String);

/// It is no address of a server.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("an address has a host, and a port where the server has one: 192.168.1.20:8080")]
pub struct NotAnAddress;

impl ServerAddress {
    /// The address of what the server has at this path, which begins with `/`.
    pub fn at(&self, path: &str) -> String {
        format!("{}{path}", self.0)
    }
}

impl fmt::Display for ServerAddress {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// As it stands on the board or comes out of a link: without a scheme it is plain HTTP, and a slash at its end says
/// nothing.
impl FromStr for ServerAddress {
    type Err = NotAnAddress;

    fn from_str(text: &str) -> Result<ServerAddress, NotAnAddress> {
        let text = text.trim();
        let (scheme, rest) = text.split_once("://").unwrap_or(("http", text));
        let scheme = scheme.to_ascii_lowercase();
        let host = rest.trim_end_matches('/').to_ascii_lowercase();
        let (name, port) = match host.rsplit_once(':') {
            // The colons of an IPv6 address stand in brackets.
            Some((name, port)) if !port.contains(']') => (name, Some(port)),
            _ => (host.as_str(), None),
        };
        let sound_port = port.is_none_or(|port| port.parse::<u16>().is_ok_and(|port| port > 0));
        let is_of_host = |c: char| c.is_alphanumeric() || ".-_".contains(c);
        let sound_name = match name.strip_prefix('[') {
            Some(name) => name.strip_suffix(']').is_some_and(|name| {
                !name.is_empty()
                    && name
                        .chars()
                        .all(|c| c.is_ascii_hexdigit() || ":.%".contains(c))
            }),
            None => !name.is_empty() && name.chars().all(is_of_host),
        };
        let known = ["http", "https"].contains(&scheme.as_str());
        match known && sound_port && sound_name {
            true => Ok(ServerAddress(format!("{scheme}://{host}"))),
            false => Err(NotAnAddress),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_is_read_as_it_is_typed() {
        for (typed, read) in [
            ("192.168.1.20:8080", "http://192.168.1.20:8080"),
            (
                " HTTP://Teacher-Laptop.local:8080/ ",
                "http://teacher-laptop.local:8080",
            ),
            (
                "https://class.school.example",
                "https://class.school.example",
            ),
            ("[fe80::1]:8080", "http://[fe80::1]:8080"),
            ("[::1]", "http://[::1]"),
        ] {
            let address = typed.parse::<ServerAddress>();
            assert_eq!(
                address.map(|a| a.to_string()).as_deref(),
                Ok(read),
                "{typed}"
            );
        }
        for typed in [
            "",
            "http://",
            "ftp://host",
            "host:0",
            "host:99999",
            "host:",
            "a b",
            "host/path",
            "user@host",
            "[::1",
            "file:///etc",
        ] {
            assert_eq!(typed.parse::<ServerAddress>(), Err(NotAnAddress), "{typed}");
        }
        let address: ServerAddress = "host:1".parse().expect("an address");
        assert_eq!(address.at("/api/seat"), "http://host:1/api/seat");
    }
}
