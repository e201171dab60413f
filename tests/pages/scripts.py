"""Names in many scripts, invented, and which of them this machine's fonts and libraries can print."""

import pytest

from foldmath.pages.pdf.glyphs import lack_of

NAMES = {
    "Arabic": "ليلى الأمين",
    "Hebrew": "שרה כהן",
    "Devanagari": "आशा क्षत्रिय",
    "Bengali": "অনন্যা",
    "Tamil": "தமிழ்ச்செல்வி",
    "Thai": "สมชาย ภูมิใจ",
    "Khmer": "ស្រីមុំ",
    "Chinese": "李明",
    "Japanese": "さくら",
    "Korean": "김민준",
    "Amharic": "አበበ በቂላ",
    "Yoruba": "Ọ́lá Adébáyọ̀",
    "Persian": "خوش‌آمد",
    "Armenian": "Անի",
    "Ukrainian": "Юлія",
}


def printable(script: str) -> str:
    """Give the name in a script, or pass the test over where it cannot be printed."""
    name = NAMES[script]
    if lack := lack_of(name):
        pytest.skip(f"{script}: no {lack.value} for it here")
    return name
