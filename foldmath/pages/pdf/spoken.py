"""What ink stands for: marked content with ActualText, so that a stacked fraction is read as ``1/4``.

Source: ISO 32000-1:2008, 14.6 (marked content) and 14.9.4 (replacement text).
"""


def begin(words: str) -> str:
    """Give the operator that begins ink standing for words."""
    return f"/Span <</ActualText <FEFF{words.encode('utf-16-be').hex().upper()}>>> BDC"


END = "EMC"
"""The operator that ends it."""
