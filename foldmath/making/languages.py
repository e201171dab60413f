"""The languages of a set: takes those that are asked for, gives the same lesson said in each."""

from collections.abc import Mapping
from dataclasses import replace
from difflib import get_close_matches

from foldmath.errors import LONGEST_SHOWN, Unreadable
from foldmath.lesson.lesson import USUAL_STANDARDS, Lesson, usual_standards
from foldmath.lesson.proving import ProvedLesson
from foldmath.phrases import Phrase, counted, listed, phrase
from foldmath.statements.standards import Followed
from foldmath.words.languages import languages, named, of_one_tongue
from foldmath.words.trade_words import trade_word
from foldmath.worksheets.word_bank import IN_EVERY_BANK


def languages_named(words: str) -> tuple[str, ...]:
    """Read the names of languages, divided by commas; each once, in the order given.

    Raises:
        Unreadable: there is no such language, and the nearest one is offered; or two names such as ``es`` and
            ``es-MX`` mean the same pages.
    """
    wanted = [name.strip() for name in words.split(",") if name.strip()]
    if not wanted:
        message = phrase("--language takes one or more of {languages}", languages=", ".join(languages()))
        raise Unreadable(message, f"--language {languages()[0]}")
    chosen = tuple(dict.fromkeys(map(_language_named, wanted)))
    first: dict[str, str] = {}
    for name in wanted:
        language = _language_named(name)
        other = first.setdefault(language, name)
        if _spelling(other) != _spelling(name):
            message = phrase(
                "--language {first},{other}: both mean the same pages, {language}",
                first=other[:LONGEST_SHOWN],
                other=name[:LONGEST_SHOWN],
                language=language,
            )
            raise Unreadable(message, f"--language {','.join(chosen)}")
    return chosen


def _language_named(name: str) -> str:
    """Give the language that is meant.

    Raises:
        Unreadable: there is no such language; offers the nearest one.
    """
    language = named(name)
    if language is None:
        near = get_close_matches(name, languages(), n=1, cutoff=0.0)
        message = phrase(
            "--language {name}: pages are not written in it; there are {languages}",
            name=name[:LONGEST_SHOWN],
            languages=", ".join(languages()),
        )
        raise Unreadable(message, f"--language {near[0]}")
    return language


def _spelling(name: str) -> str:
    """Give a name in one spelling: ``EN_us`` is ``en-us``."""
    return name.replace("_", "-").casefold()


def one_language(chosen: tuple[str, ...]) -> str | None:
    """Give the language of a class's keys; None where none is asked for.

    Raises:
        Unreadable: several are asked for, which only the pupils of a roster may have.
    """
    if len(chosen) > 1:
        message = phrase("--language names several languages, and the keys of a class are in one")
        hint = phrase("name the teacher's; a column called language in the roster gives students their own")
        raise Unreadable(message, hint)
    return chosen[0] if chosen else None


def said_in(proved: ProvedLesson, language: str | None) -> ProvedLesson:
    """Give the same lesson, with the same numbers and codes, in a language; None for its own."""
    lesson = proved.lesson
    if language is None or language == lesson.language:
        return proved
    listed = (*lesson.trade_words, *lesson.vocabulary)
    told = {word: trade_word(word, lesson.language, language) for word in (*listed, *lesson.words)}
    known = {word: other for word, other in told.items() if other is not None}
    author = lesson.written_in or lesson.language
    said = replace(
        lesson,
        language=language,
        standards=lesson.followed,
        told_standards=_told_standards(lesson, language),
        written_in="" if author == language else author,
        trade_words=tuple(known[word] for word in listed if word in known),
        vocabulary=tuple(word for word in lesson.vocabulary if word not in known),
        words={_as_in_the_bank(word, known): home for word, home in lesson.words.items()},
    )
    return replace(proved, lesson=said)


def _told_standards(lesson: Lesson, language: str) -> Followed | None:
    """Give whose standards teachers of a language have; None where the lesson file itself names some.

    The numbers stay those of the standards that the lesson follows, so that one key marks every language.
    """
    if lesson.standards and lesson.told_standards is None:
        return None
    return USUAL_STANDARDS.get(language, lesson.followed)


def _as_in_the_bank(word: str, known: Mapping[str, str]) -> str:
    """Give the word by which a bank looks for its home word: those of every lesson are known as they are."""
    return word if word in map(str, IN_EVERY_BANK) else known.get(word, word)


def told_of_own_words(lesson: Lesson) -> tuple[Phrase, ...]:
    """Say which texts of an edition stay in another tongue, and how to change them; often nothing."""
    if not lesson.written_in or of_one_tongue(lesson.written_in, lesson.language):
        return ()
    texts = [phrase("the title")]
    texts += [phrase("words of its own")] if lesson.vocabulary else []
    texts += [phrase("the notes")] if lesson.notes else []
    texts += [phrase("your own items")] if lesson.items else []
    settings = f'language = "{lesson.language}"'
    if lesson.followed is not usual_standards(lesson.language):
        settings += f', standards = "{lesson.followed.value}"'
    told = {"texts": listed(texts), "written_in": lesson.written_in, "settings": settings}
    return (
        counted(
            "{texts} stays in the lesson file's own language ({written_in}); to change it, make a copy of "
            "the file with {settings} and write it there",
            "{texts} stay in the lesson file's own language ({written_in}); to change them, make a copy of "
            "the file with {settings} and write them there",
            len(texts),
            **told,
        ),
    )


def editions(proved: ProvedLesson, chosen: tuple[str, ...]) -> Mapping[str, ProvedLesson]:
    """Give a lesson in every language of a set, by the beginning of the names of its files.

    One language needs no folder of its own; of several each has one that is called by its name.
    """
    if not chosen:
        return {"": proved}
    if len(chosen) == 1:
        return {"": said_in(proved, chosen[0])}
    return {f"{language}/": said_in(proved, language) for language in chosen}


def languages_told(chosen: tuple[str, ...]) -> dict[str, str]:
    """Give the languages as an option that a set was made from; nothing where the lesson's own is spoken."""
    return {"languages": ",".join(chosen)} if chosen else {}
