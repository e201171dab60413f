"""Nobody but the teacher's own page is answered."""

import pytest
from desk.conftest import PORT, SITE

TOKENLESS = "/take/seed-trays"


def test_the_first_address_lets_in_and_gives_a_strict_cookie_that_scripts_cannot_read(stranger, desk):
    entered = stranger.get(f"/open/{desk.entry}")
    assert entered.status_code == 303
    cookie = entered.headers["Set-Cookie"]
    assert cookie.startswith(f"foldmath-{PORT}=")
    assert {"HttpOnly", "SameSite=Strict", "Path=/"} <= set(cookie.split("; "))
    assert desk.entry not in cookie
    assert stranger.get("/").status_code == 200


@pytest.mark.parametrize("address", ["/", "/new", "/static/desk.css", "/lesson/seed-trays/fold", "/nothing"])
def test_without_the_cookie_nothing_is_answered(stranger, address, seed_trays):
    answer = stranger.get(address)
    assert (answer.status_code, b"Seed" in answer.data) == (403, False)


@pytest.mark.parametrize("guess", ["", "x", "é", "0" * 43])
def test_a_guessed_first_address_lets_nobody_in(stranger, guess):
    assert stranger.get(f"/open/{guess}").status_code in (403, 404)
    assert stranger.get("/").status_code == 403


HOSTS = [
    "evil.example",
    f"evil.example:{PORT}",
    "127.0.0.1",
    "127.0.0.1:80",
    f"127.0.0.2:{PORT}",
    f"0.0.0.0:{PORT}",
]
HOSTS += [
    f"localhost.evil.example:{PORT}",
    f"127.0.0.1.evil.example:{PORT}",
    f"[::1]:{PORT}",
    "127.0.0.1:5000@evil",
]


@pytest.mark.parametrize("host", HOSTS)
def test_under_another_name_nothing_is_answered_even_with_the_cookie(visitor, host):
    assert visitor.get("/", headers={"Host": host}).status_code in (400, 403)


ORIGINS = [
    "http://evil.example",
    "null",
    "",
    f"https://127.0.0.1:{PORT}",
    "http://127.0.0.1",
    "http://127.0.0.1:5001",
]
ORIGINS += [f"http://localhost:{PORT}", f"{SITE}.evil.example", f"{SITE}/"]


@pytest.mark.parametrize("origin", ORIGINS)
def test_a_change_from_another_origin_is_refused_even_with_cookie_and_token(visitor, desk, origin):
    answer = visitor.post(TOKENLESS, data={"token": desk.form}, headers={"Origin": origin})
    assert (answer.status_code, desk.shelf.lessons()) == (403, {})


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
def test_what_a_browser_calls_another_site_is_refused(visitor, site):
    assert visitor.get("/", headers={"Sec-Fetch-Site": site}).status_code == 403


@pytest.mark.parametrize("token", [None, "", "wrong", "é"])
def test_a_change_without_the_token_is_refused(visitor, desk, token):
    answer = visitor.post(TOKENLESS, data={} if token is None else {"token": token})
    assert (answer.status_code, desk.shelf.lessons()) == (403, {})


def test_a_change_with_cookie_origin_and_token_is_done(visitor, desk):
    assert visitor.post(TOKENLESS, data={"token": desk.form}).status_code == 303
    assert list(desk.shelf.lessons()) == ["seed-trays"]


@pytest.mark.parametrize("address", ["/", "/nothing"])
def test_every_answer_has_a_policy_that_lets_nothing_in_from_outside(visitor, address):
    headers = visitor.get(address).headers
    assert headers["Content-Security-Policy"].startswith(
        "default-src 'none'; script-src 'self'; style-src 'self';"
    )
    assert "frame-ancestors 'none'" in headers["Content-Security-Policy"]
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "same-origin"
    assert headers["Cache-Control"] == "no-store"


def test_more_than_a_megabyte_is_refused(visitor, desk):
    answer = visitor.post(TOKENLESS, data={"token": desk.form, "more": "x" * 1024 * 1024})
    assert answer.status_code == 413
