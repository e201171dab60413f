"""The desk is closed: what was asked is answered to its end, and the last page needs nobody any more."""

import http.client
import socket
import threading
import time

import pytest
from chromium import new_windows
from desk.test_attacks import served

from foldmath.desk import serving
from foldmath.desk.serving import answering

SMALL = 4096
"""Bytes that a connection takes at once, so that an answer is long on its way."""


@pytest.fixture
def listening(desk):
    """Give the port of the desk, bound."""
    taken = socket.socket()
    taken.setsockopt(socket.SOL_SOCKET, socket.SO_SNDBUF, SMALL)
    taken.bind(("127.0.0.1", 0))
    return taken


def asked(desk, listening, path):
    connection = http.client.HTTPConnection("127.0.0.1", listening.getsockname()[1], timeout=120)
    connection.connect()
    connection.sock.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, SMALL)
    let_in = {"Host": f"127.0.0.1:{desk.port}", "Cookie": f"{desk.cookie}={desk.session}"}
    connection.request("GET", path, headers=let_in)
    return connection


def test_nothing_goes_on_after_it_though_a_browser_holds_its_connection(desk, listening):
    before = set(threading.enumerate())
    with answering(desk, listening, lambda: None):
        held = asked(desk, listening, "/static/sheet.svg")
        held.getresponse().read()
    assert set(threading.enumerate()) <= before
    held.close()


def test_what_is_answered_is_sent_whole_to_a_browser_that_takes_it_slowly(
    desk, listening, seed_trays, monkeypatch
):
    monkeypatch.setattr(serving, "LOOKING_SECONDS", 0.001)
    begun, came = threading.Event(), []

    def take():
        slow = asked(desk, listening, "/lesson/seed-trays/document/worksheet.pdf")
        answer = slow.getresponse()
        begun.set()
        time.sleep(0.2)
        came.extend([answer.status, len(answer.read()) - int(answer.headers["Content-Length"])])
        slow.close()

    with answering(desk, listening, lambda: None):
        slow = threading.Thread(target=take)
        slow.start()
        begun.wait()
    slow.join()
    assert came == [200, 0]


def test_the_last_page_asks_for_nothing_and_is_set_as_the_others_are(chromium, tmp_path):
    context, asked = new_windows(chromium), []
    with served(tmp_path) as (process, port, entry):
        page = context.new_page()
        page.goto(f"http://127.0.0.1:{port}{entry}")
        letters = page.evaluate("getComputedStyle(document.body).fontFamily")
        page.on("request", lambda request: asked.append(request.url))
        page.get_by_role("button", name="Close the desk").click()
        page.get_by_role("heading", name="The desk is closed").wait_for()
        assert process.wait(120) == 0
    assert page.evaluate("getComputedStyle(document.body).fontFamily") == letters
    assert asked == [f"http://127.0.0.1:{port}/end"]
    assert page.locator("a, button").count() == 0
    context.close()
