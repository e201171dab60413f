"""What the templates say is what Jinja's own functions would say, only sooner."""

from gettext import NullTranslations

import pytest
from jinja2 import Environment
from markupsafe import Markup

from foldmath.pages.words_filled import gettext_of, ngettext_of

TEMPLATES = (
    "{% trans %}Open the sheet.{% endtrans %}",
    "{% trans part = part %}{{ part }} of the {{ name }}, 100% of it{% endtrans %}",
    "{% trans count = one %}{{ count }} panel{% pluralize %}{{ count }} panels{% endtrans %}",
    "{% trans count = eight %}{{ count }} panel {{ name }}{% pluralize %}{{ count }}{{ name }}{% endtrans %}",
    "{{ _('A sheet') }}: {{ _('100%% of %(name)s', name=name) }}",
)
VALUES = {"part": Markup("<b>1/2</b>"), "name": "A & <b>", "one": 1, "eight": 8}


class Shouting(NullTranslations):
    """Says every text in capitals, but for the names of its values."""

    def gettext(self, message):
        return message.replace("sheet", "SHEET").replace("panel", "PANEL")

    def ngettext(self, msgid1, msgid2, n):
        return self.gettext(msgid1 if n == 1 else msgid2)


def environment(own: bool, words: NullTranslations) -> Environment:
    made = Environment(extensions=["jinja2.ext.i18n"], autoescape=True)
    if own:
        made.newstyle_gettext = True
        made.globals.update(gettext=gettext_of(words), ngettext=ngettext_of(words), _=gettext_of(words))
    else:
        made.install_gettext_callables(words.gettext, words.ngettext, newstyle=True)
    return made


@pytest.mark.parametrize("words", [NullTranslations(), Shouting()], ids=["as written", "translated"])
@pytest.mark.parametrize("template", TEMPLATES)
def test_a_template_says_what_jinjas_own_functions_say(template, words):
    own, jinjas = (environment(whose, words).from_string(template).render(VALUES) for whose in (True, False))
    assert own == jinjas


def test_values_are_escaped_and_what_is_html_is_not():
    said = gettext_of(NullTranslations())("%(name)s is %(part)s", **VALUES)
    assert said == "A &amp; &lt;b&gt; is <b>1/2</b>"
