"""Guards: take a request, and let it in only if the teacher's own page sent it.

Source:
    The OWASP Cheat Sheets, from memory: cross-site request forgery (tokens, Origin, Fetch Metadata), and
    DNS rebinding (Host).
"""

from hmac import compare_digest

from flask import Flask, Response, abort, redirect, request
from werkzeug.wrappers import Response as AnyResponse

from foldmath.desk.visits.desk import Desk

MOST_BYTES = 1024 * 1024
"""Of a request: a class list of ten thousand names has half of it."""

MOST_PARTS = 2000
"""Fields of a form: a class of 40 with 40 answers each."""

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; "
    "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)

OWN_POLICY = "frame-ancestors 'none'"
"""Of what states its own policy, as the slides do, and of PDFs, which browsers show by pages of their own."""

HEADERS = {
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Cache-Control": "no-store",
}

SAFE = ("GET", "HEAD", "OPTIONS")
"""Methods that change nothing (RFC 9110, 9.2.1)."""

OWN_SITES = ("same-origin", "none")
"""What a browser says of a request that our own page made, or the address bar (Fetch Metadata, W3C)."""

TOKEN_HEADER, TOKEN_FIELD = "X-Foldmath-Token", "token"


def guard(app: Flask, desk: Desk) -> None:
    """Have every request looked at before anything answers it, and every answer given its policy."""
    app.config.update(
        MAX_CONTENT_LENGTH=MOST_BYTES, MAX_FORM_MEMORY_SIZE=MOST_BYTES, MAX_FORM_PARTS=MOST_PARTS
    )

    @app.before_request
    def look() -> None:
        _require_own_site(desk)
        if request.endpoint != "enter":
            if not _same(request.cookies.get(desk.cookie), desk.session):
                abort(403)
            if request.method not in SAFE:
                _require_own_form(desk)

    @app.get("/open/<entry>")
    def enter(entry: str) -> AnyResponse:
        if not _same(entry, desk.entry):
            abort(403)
        entered = redirect("/", 303)
        entered.set_cookie(desk.cookie, desk.session, httponly=True, samesite="Strict")
        return entered

    @app.after_request
    def seal(response: Response) -> Response:
        for name, value in HEADERS.items():
            response.headers.setdefault(name, value)
        response.headers.setdefault("Content-Security-Policy", POLICY)
        return response


def _require_own_site(desk: Desk) -> None:
    """Refuse what came under another name (as after DNS rebinding) or from another site."""
    if request.host not in desk.hosts:
        abort(403)
    origin = request.headers.get("Origin")
    if origin is not None and origin != f"http://{request.host}":
        abort(403)
    if request.headers.get("Sec-Fetch-Site", "none") not in OWN_SITES:
        abort(403)


def _require_own_form(desk: Desk) -> None:
    """Refuse a change that none of our own pages asked for."""
    if request.headers.get("Origin") is None:
        abort(403)
    token = request.headers.get(TOKEN_HEADER) or request.form.get(TOKEN_FIELD)
    if not _same(token, desk.form):
        abort(403)


def _same(given: str | None, secret: str) -> bool:
    return given is not None and compare_digest(given.encode(), secret.encode())
