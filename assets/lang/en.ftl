# Every text that people see, in English. Sections and the keys in them stand in alphabetical order,
# and es.ftl has the same keys with the same placeables; `cargo test --test texts` checks it.

## app

app-name = Detent
app-tagline = A training bench for people who repair washing machines

## common

common-cancel = Cancel
common-close = Close
common-no = No
common-yes = Yes

## language

language-choose = Language
