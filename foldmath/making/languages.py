"""The languages of a set: takes those that are asked for, gives the same lesson said in each."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from difflib import get_close_matches

from foldmath.errors import LONGEST_SHOWN, Unreadable
from foldmath.lesson.labels import plain
from foldmath.lesson.lesson import USUAL_STANDARDS, Authored, Lesson, WrittenItem
from foldmath.lesson.proving import ProvedLesson
from foldmath.phrases import Phrase, counted, listed, phrase
from foldmath.statements.items import make_own
from foldmath.statements.standards import Followed
from foldmath.statements.wordings import Wording, wording_of
from foldmath.words.languages import languages, named, of_one_tongue
from foldmath.words.trade_words import trade_word
from foldmath.worksheets.word_bank import IN_EVERY_BANK

THE_TITLE = phrase("the title")
"""The only one of the texts that is one."""


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
    """Give the same lesson, with the same numbers and codes, in a language; None for that of its pages.

    Its author's words are said as the lesson file says them in that language, those of the trade as in every
    lesson; others stay as they are.
    """
    lesson = proved.lesson
    language, author, first = language or lesson.language, lesson.author_writes, lesson.as_written
    if language == lesson.language == author:
        return proved
    said = replace(
        lesson,
        language=language,
        standards=lesson.followed,
        told_standards=_told_standards(lesson, language),
        written_in="" if author == language else author,
        authored=first,
    )
    return replace(proved, lesson=_in_its_words(said, first, author))


def _in_its_words(lesson: Lesson, first: Authored, author: str) -> Lesson:
    """Say the words of an author, written in one language, in that of the pages, so far as they are known."""
    own = lesson.own_words
    words = dict.fromkeys((*first.vocabulary, *first.words))
    told = {word: own.get(plain(word)) or trade_word(word, author, lesson.language) for word in words}
    known = {word: other for word, other in told.items() if other is not None}
    wordings = {wording_of(text): other for text, other in own.items()}
    items = tuple(_item_in(written, wordings) for written in first.items)
    texts = [own[text] for text in map(plain, (first.title, *first.notes)) if text in own]
    changed = [now.item.text for now, was in zip(items, first.items, strict=True) if now is not was]
    return replace(
        lesson,
        title=own.get(plain(first.title), first.title),
        notes=tuple(own.get(plain(note), note) for note in first.notes),
        items=items,
        trade_words=tuple(known[word] for word in first.vocabulary if word in known),
        vocabulary=tuple(word for word in first.vocabulary if word not in known),
        words={_as_in_the_bank(word, known): home for word, home in first.words.items()},
        told=frozenset((*texts, *map(str, changed))),
    )


def _item_in(written: WrittenItem, wordings: Mapping[Wording, str]) -> WrittenItem:
    """Say an item in the words that its author has for it in another language, if there are any."""
    item = written.item
    if item.text not in wordings:
        return written
    unit = wordings.get(item.unit, str(item.unit))
    return replace(written, item=make_own(wordings[item.text], item.sum, unit))


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
    return (*_staying(lesson), *_astray(lesson))


def _staying(lesson: Lesson) -> Iterator[Phrase]:
    """Say which texts the file does not have in the language of the pages."""
    texts = [] if lesson.title in lesson.told else [THE_TITLE]
    texts += [phrase("words of its own")] if lesson.vocabulary else []
    texts += [phrase("the notes")] if not lesson.told.issuperset(lesson.notes) else []
    told = all(str(written.item.text) in lesson.told for written in lesson.items)
    texts += [] if told else [phrase("your own items")]
    if texts:
        table = f"[translated.{lesson.words_in}]"
        yield counted(
            "{texts} stays in the lesson file's own language ({written_in}); to change it, write it in the "
            "file under {table}, beside the words there are",
            "{texts} stay in the lesson file's own language ({written_in}); to change them, write them in "
            "the file under {table}, beside the words there are",
            1 if texts == [THE_TITLE] else 2,
            texts=listed(texts),
            written_in=lesson.written_in,
            table=table,
        )


def _astray(lesson: Lesson) -> Iterator[Phrase]:
    """Say which texts stand in the table of a language, and nowhere in the lesson."""
    first = lesson.as_written
    known = {plain(text) for text in (first.title, *first.notes, *first.vocabulary, *first.words)}
    items = (words for written in first.items for words in (written.item.text, written.item.unit))
    wordings = set(items)
    pages = set(_of_pages(lesson))
    astray = [
        text
        for text in lesson.own_words
        if text not in known and text not in pages and wording_of(text) not in wordings
    ]
    if astray:
        yield phrase(
            "under {table} stands what this lesson says nowhere: {text}",
            table=f"[translated.{lesson.words_in}]",
            text=astray[0],
        )


def _of_pages(lesson: Lesson) -> Iterator[str]:
    """Give the texts of a booklet's pages as they are written."""
    if lesson.booklet is None:
        return
    # Imported here, since most lessons have no booklet.
    from foldmath.lesson.booklet.own_words import own_words

    for page in lesson.booklet.pages:
        for said in own_words(page):
            yield plain(said if isinstance(said, str) else said.text)


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
