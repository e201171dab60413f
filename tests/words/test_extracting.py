"""What is said is found for the catalogues: phrases in the code, word lists, and templates."""

from pseudo_language import texts_found


def test_phrases_word_lists_standards_and_templates_are_extracted():
    texts = texts_found()
    assert "here: {words}" in texts
    assert "the worst panel is about {worst} off" in texts
    assert "List" in texts
    assert "Divide fractions by fractions." in texts
    assert "National curriculum in England" not in texts
    assert len(texts) > 150
