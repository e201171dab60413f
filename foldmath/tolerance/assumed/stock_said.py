"""What kinds of paper are called: takes a stock's name, gives its words."""

from foldmath.phrases import Said, phrase

NAMED: dict[str, Said] = {
    "writing 16 lb": phrase("16 lb writing paper"),
    "copy 20 lb": phrase("20 lb copy paper"),
    "copy 24 lb": phrase("24 lb copy paper"),
    "copy 28 lb": phrase("28 lb copy paper"),
    "80 gsm": phrase("80 g/m² paper"),
    "90 lb index": phrase("90 lb index stock"),
    "110 lb index": phrase("110 lb index stock"),
    "140 lb index": phrase("140 lb index stock"),
    "170 lb index": phrase("170 lb index stock"),
    "65 lb cover": phrase("65 lb cover stock"),
    "construction": phrase("construction paper"),
    "chart paper": phrase("chart paper"),
}
"""Papers that have names; others go by their weight or thickness."""


def stock_said(name: str) -> Said:
    """Say what a kind of paper is called, by the name of its ``Stock``."""
    return NAMED.get(name) or phrase("{name} paper", name=name)
