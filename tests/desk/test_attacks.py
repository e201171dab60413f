"""A served desk under attack: a thousand hostile requests, slow and oversized bodies, fifty at once."""

import http.client
import random
import re
import select
import socket
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack, contextmanager
from pathlib import Path

import pytest

from foldmath.cli import main
from foldmath.desk.visits.guards import MOST_BYTES

HOSTILE = 1000
AT_ONCE = 50
SEED = 20_261_129


SLOW_TO_SHOW = """
import sys, time
from foldmath.cli import main
from foldmath.desk import app
shown = app.show
app.show = lambda *what, **more: time.sleep(1) or shown(*what, **more)
sys.exit(main(sys.argv[1:]))
"""
"""A program whose page that says good-bye takes a second."""

PATIENT = """
import sys
from foldmath.cli import main
from foldmath.desk import serving
serving.PATIENCE_SECONDS = 3600
sys.exit(main(sys.argv[1:]))
"""
"""A program that shuts no connection, however long it sends nothing."""

HANGS = 120
"""Seconds after which what has not come never does."""


@contextmanager
def served(folder, program=("-m", "foldmath")):
    """Serve a folder in a process of its own; give the process, its port and the first address' path."""
    command = [sys.executable, *program, "desk", "--folder", str(folder), "--no-browser"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True) as process:
        try:
            port, entry = re.search(r"127\.0\.0\.1:(\d+)(/open/\S+)", process.stdout.readline()).groups()
            yield process, int(port), entry
        finally:
            process.terminate()


@pytest.fixture(scope="module")
def desk(tmp_path_factory):
    with served(tmp_path_factory.mktemp("lessons")) as (_, port, entry):
        yield port, entry


def ask(port, method, path, headers=(), body=None):
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=HANGS)
    try:
        connection.request(method, path, body, dict(headers))
        answer = connection.getresponse()
        return answer.status, answer.read(), answer.headers
    finally:
        connection.close()


def let_in(port, entry):
    """Give the cookie, and the token that every change brings along."""
    _, _, headers = ask(port, "GET", entry)
    cookie = headers["Set-Cookie"].partition(";")[0]
    _, page, _ = ask(port, "GET", "/", {"Cookie": cookie})
    return cookie, re.search(rb'name="token" content="([^"]+)"', page)[1].decode()


def raw(port, content, patience=HANGS):
    """Send bytes that no browser would, and give what comes back; nothing if that is all that comes."""
    with socket.create_connection(("127.0.0.1", port), timeout=HANGS) as connection:
        connection.sendall(content)
        connection.settimeout(patience)
        try:
            return connection.recv(65536)
        except (TimeoutError, ConnectionResetError):
            return b""


PIECES = [b"GET ", b"POST ", b"/lesson/", b"../", b"%00", b"\xff", b" HTTP/1.1", b"\r\n", b"Host: evil",
          b"Content-Length: 99999999999", b"Content-Length: -1", b"Transfer-Encoding: chunked", b"Cookie: x=",
          b"A" * 300, b"/static/", b"{}", b"\0", b"Origin: null", b"\r\n\r\n", b"ffff\r\n"]  # fmt: skip


def test_a_thousand_hostile_requests_get_nothing_and_the_desk_answers_on(desk):
    port, entry = desk
    chance = random.Random(SEED)

    def attack(number):
        content = b"".join(chance.choices(PIECES, k=chance.randint(2, 12))) + b"\r\n\r\n"
        return raw(port, content, patience=1.0)

    with ThreadPoolExecutor(20) as pool:
        answers = list(pool.map(attack, range(HOSTILE)))
    assert [answer for answer in answers if b"200 OK" in answer or b"500 Internal" in answer] == []
    assert let_in(port, entry)


def test_a_body_of_more_than_a_megabyte_is_refused_before_it_is_read(desk):
    port, entry = desk
    cookie, _ = let_in(port, entry)
    head = f"POST /new/empty HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nCookie: {cookie}\r\n"
    answer = raw(port, f"{head}Content-Length: {MOST_BYTES + 1}\r\n\r\n".encode())
    assert b" 413 " in answer.splitlines()[0]


def test_slow_bodies_hold_up_nobody(tmp_path):
    with served(tmp_path, ("-c", PATIENT)) as (_, port, entry), ExitStack() as held:
        slow = [held.enter_context(socket.create_connection(("127.0.0.1", port))) for _ in range(AT_ONCE)]
        for connection in slow:
            connection.sendall(b"POST /take/x HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: 1000\r\n\r\nx")
        assert ask(port, "GET", entry)[0] == 303
        answered, _, _ = select.select(slow, [], [], 0)
        assert answered == [], "they are waited for still"


def test_fifty_at_once_are_all_answered_and_each_change_is_done_once(desk):
    port, entry = desk
    cookie, token = let_in(port, entry)
    headers = {
        "Cookie": cookie,
        "Origin": f"http://127.0.0.1:{port}",
        "Content-Type": "application/x-www-form-urlencoded",
    }
    body = f"token={token}&title=Beds&grade=5&paper=A4"
    with ThreadPoolExecutor(AT_ONCE) as pool:
        answers = list(pool.map(lambda _: ask(port, "POST", "/new/empty", headers, body), range(AT_ONCE)))
    assert {status for status, _, _ in answers} == {303}
    assert len({headers["Location"] for _, _, headers in answers}) == AT_ONCE


def test_the_secret_of_one_run_opens_no_other(tmp_path):
    with served(tmp_path) as (_, port, entry):
        cookie, _ = let_in(port, entry)
    with served(tmp_path) as (_, port, _):
        assert ask(port, "GET", entry)[0] == 403
        assert ask(port, "GET", "/", {"Cookie": re.sub(r"-\d+", f"-{port}", cookie)})[0] == 403


@pytest.mark.skipif(sys.platform != "linux", reason="listening ports are listed by Linux alone")
def test_only_the_loopback_address_is_listened_on(desk):
    port, _ = desk
    listening = [line.split() for line in Path("/proc/net/tcp").read_text().splitlines()[1:]]
    places = {fields[1] for fields in listening if fields[3] == "0A"}
    assert f"0100007F:{port:04X}" in places
    assert f"00000000:{port:04X}" not in places


def test_what_was_saved_is_there_after_a_kill(tmp_path):
    with served(tmp_path) as (process, port, entry):
        cookie, token = let_in(port, entry)
        headers = {"Cookie": cookie, "Origin": f"http://127.0.0.1:{port}", "X-Foldmath-Token": token}
        assert ask(port, "POST", "/take/seed-trays", headers)[0] == 303
        process.kill()
    with served(tmp_path) as (_, port, entry):
        cookie, _ = let_in(port, entry)
        assert b"Seed trays" in ask(port, "GET", "/lesson/seed-trays/practice", {"Cookie": cookie})[1]


@pytest.mark.parametrize("program", [("-m", "foldmath"), ("-c", SLOW_TO_SHOW)], ids=["usual", "slow"])
def test_the_button_ends_the_desk_once_its_last_page_is_sent(program, tmp_path):
    with served(tmp_path, program) as (process, port, entry):
        cookie, token = let_in(port, entry)
        headers = {"Cookie": cookie, "Origin": f"http://127.0.0.1:{port}", "X-Foldmath-Token": token}
        status, page, _ = ask(port, "POST", "/end", headers)
        assert status == 200
        assert b"</html>" in page
        assert process.wait(HANGS) == 0


@pytest.mark.parametrize(
    ("words", "wrong"),
    [
        (["--port", "65536"], "ports go from 1 to 65535"),
        (["--port=-1"], "ports go from 1 to 65535"),
        (["--folder", "4b.csv"], "4b.csv is a file, not a folder"),
        (["--folder", "4b.csv/lessons"], "4b.csv is a file, not a folder"),
    ],
)
def test_a_desk_that_cannot_be_opened_is_refused_in_two_lines(words, wrong, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "4b.csv").write_text("name\nAna\n")
    assert main(["desk", "--no-browser", *words]) == 2
    said = capsys.readouterr().err.splitlines()
    assert said[0].endswith(wrong)
    assert len(said) == 2


def test_a_taken_port_is_refused_with_a_remedy(tmp_path, capsys):
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = str(taken.getsockname()[1])
        assert main(["desk", "--folder", str(tmp_path), "--no-browser", "--port", port]) == 1
    assert "another number after --port" in capsys.readouterr().err
