# Todos los textos visibles, en español. Las secciones y sus claves van en orden alfabético, y
# en.ftl tiene las mismas claves con los mismos argumentos; `cargo test --test texts` lo comprueba.

## app

app-name = Detent
app-tagline = Banco de prácticas para quienes reparan lavadoras

## common

common-cancel = Cancelar
common-close = Cerrar
common-no = No
common-yes = Sí

## language

language-choose = Idioma
