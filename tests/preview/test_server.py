"""The server without a browser: who is refused, what is refused, and what is written."""

from __future__ import annotations

import http.client
import re
import socket
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from served import KEY, PLACED, STARTER, asked, preview_of, rig, served

from rigc.files.served import light, told_served
from rigc.preview.answers import thing
from rigc.preview.server.guard import MOST_BYTES
from rigc.preview.server.server import Server

OPENED: list[tuple[Path, int]] = []


@pytest.fixture(scope="module")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    path = rig(tmp_path_factory.mktemp("served"))
    with served(preview_of(path), open_at=lambda path, line: OPENED.append((path, line))) as found:
        yield found


def move(server: Server, **changed: Any) -> dict[str, Any]:
    state = asked(server, "/state")[1]
    return {"thing": "drive", "x": 210, "y": 20, "hash": state["hash"]} | changed


def test_the_page_is_for_all_and_what_is_of_the_rig_for_the_key_alone(server: Server) -> None:
    assert asked(server, "/", X_Rigc_Key="")[0] == 200
    questions = ("state", "plans/", "sources", "events", "sheet/cable-list", "thing/drive", "why/A1.cut", "free/drive")
    for path in questions:
        status, told = asked(server, f"/{path}", X_Rigc_Key="another")
        assert (status, told["words"]) == (401, "the key is wrong: open the address that rigc serve has printed")
    for path in ("try", "move", "undo", "redo", "open", "light"):
        assert asked(server, f"/{path}", move(server), X_Rigc_Key=KEY[:-1])[0] == 401
    assert server.preview.rig.read_text("utf-8") == STARTER


@pytest.mark.parametrize(
    "headers, status",
    [
        ({"Host": "rebound.example"}, 421),
        ({"Host": "rebound.example:{port}"}, 421),
        ({"Host": "127.0.0.1"}, 421),
        ({"Host": "localhost:{port}"}, 200),
        ({"Origin": "http://127.0.0.1:{port}"}, 200),
        ({"Origin": "http://localhost:{port}"}, 403),
        ({"Origin": "https://127.0.0.1:{port}"}, 403),
        ({"Origin": "http://other.example"}, 403),
        ({"Origin": "null"}, 403),
        ({"Sec-Fetch-Site": "cross-site"}, 403),
        ({"Sec-Fetch-Site": "same-site"}, 403),
        ({"Sec-Fetch-Site": "none"}, 200),
    ],
)
def test_strangers_are_refused_though_they_had_the_key(server: Server, headers: dict[str, str], status: int) -> None:
    sent = {name: value.format(port=server.server_port) for name, value in headers.items()}
    assert asked(server, "/state", None, "", **sent)[0] == status
    assert asked(server, "/page.js", None, "", **sent)[0] == status


@pytest.mark.parametrize(
    "path",
    [
        "/../board.rig",
        "/%2e%2e/board.rig",
        "/board.rig",
        "/fonts/../page.js",
        "/sheet/../../board.rig",
        "/sheet/%2e%2e%2fboard",
        "/thing/..%2f..",
        "/why/none.cut",
        "/free",
        "/none/x",
        "/sheet/cable-list?of=/etc/passwd",
    ],
)
def test_there_is_no_way_to_other_files(server: Server, path: str) -> None:
    status, told = asked(server, path)
    assert status == 404
    assert list(told) == ["words"]


@pytest.mark.parametrize("file", ["../board.rig", "/etc/passwd", "stock/plugs.rig", "rig-root", "", None, 3])
def test_an_editor_opens_the_rigs_own_files_alone(server: Server, file: Any) -> None:
    OPENED.clear()
    assert asked(server, "/open", {"file": file, "line": 1})[0] == 404
    assert asked(server, "/open", {"file": "board.rig", "line": 7})[0] == 200
    assert [(server.preview.rig, 7)] == OPENED


@pytest.mark.parametrize(
    "body, headers, status",
    [
        (b"{}", {"Content_Type": "text/plain"}, 415),
        (b"[]", {}, 400),
        (b"{", {}, 400),
        (b"\xff", {}, 400),
        (b"[" * 5000, {}, 400),
        (b"{}", {}, 400),
        (b" " * (MOST_BYTES + 1), {}, 413),
    ],
)
def test_bodies_that_are_no_order(server: Server, body: bytes, headers: dict[str, str], status: int) -> None:
    assert asked(server, "/move", body, **headers)[0] == status


def test_a_huge_body_is_not_waited_for(server: Server) -> None:
    """The answer comes though not one byte of it was sent."""
    with socket.create_connection(("127.0.0.1", server.server_port), timeout=10) as at:
        head = f"POST /move HTTP/1.1\r\nHost: 127.0.0.1:{server.server_port}\r\nX-Rigc-Key: {KEY}\r\n"
        at.sendall(f"{head}Content-Type: application/json\r\nContent-Length: 99999999999\r\n\r\n".encode())
        told = at.makefile("rb").read()
    assert told.startswith(b"HTTP/1.1 413 ")


@pytest.mark.parametrize(
    "changed, status",
    [
        ({"x": "210"}, 400),
        ({"x": True}, 400),
        ({"x": None}, 400),
        ({"x": float("nan")}, 400),
        ({"y": float("inf")}, 400),
        ({"thing": 3}, 400),
        ({"hash": None}, 400),
        ({"thing": "nobody"}, 422),
        ({"thing": "guitar"}, 422),
        ({"x": -1}, 422),
        ({"y": 200.1}, 422),
        ({"hash": "0123456789"}, 409),
    ],
)
def test_moves_that_are_none(server: Server, changed: dict[str, Any], status: int) -> None:
    """The deck is 320 x 200 mm."""
    for path in ("/try", "/move"):
        assert asked(server, path, move(server, **changed))[0] == status
    assert server.preview.rig.read_text("utf-8") == STARTER


def test_a_move_is_told_first_and_then_written(server: Server) -> None:
    """A1 goes from the jack on the left of drive to that on the right of echo: 200 - (60 + 70) = 70 mm apart, 80 mm after 10 mm more."""
    path = server.preview.rig
    tried = asked(server, "/try", move(server))[1]
    assert tried["free"] is True
    assert path.read_text("utf-8") == STARTER
    status, done = asked(server, "/move", move(server))
    assert (status, done["lengths"]) == (200, tried["lengths"])
    assert path.read_text("utf-8") == STARTER.replace("drive at 200, 20 mm", "drive at 210, 20 mm")
    assert asked(server, "/state")[1]["undo"] == "drive to 210, 20 mm"
    assert asked(server, "/undo", {})[1] == {"words": "taken back: drive to 210, 20 mm"}
    assert path.read_bytes() == STARTER.encode()
    assert asked(server, "/redo", {})[0] == 200
    assert asked(server, "/undo", {})[0] == 200
    status, told = asked(server, "/undo", {})
    assert (status, told["words"]) == (422, "nothing was moved here that could be taken back")


def test_nothing_is_written_over_an_edit(server: Server) -> None:
    path, seen = server.preview.rig, move(server)
    edited = STARTER.replace("echo at 60, 20 mm", "echo at 61, 20 mm")
    path.write_text(edited, "utf-8")
    status, told = asked(server, "/move", seen)
    assert status == 409
    assert told["words"].startswith("the file was saved meanwhile: nothing was written")
    assert path.read_text("utf-8") == edited
    assert asked(server, "/move", move(server))[0] == 200
    path.write_text(STARTER, "utf-8")
    status, told = asked(server, "/undo", {})
    assert (status, told["words"]) == (409, "'board.rig' was edited since, and nothing is written over that")
    assert path.read_text("utf-8") == STARTER
    server.preview.history.done.clear()
    server.preview.refresh()


def test_events_tell_each_change(server: Server) -> None:
    connection = http.client.HTTPConnection("127.0.0.1", server.server_port, timeout=30)
    connection.request("GET", "/events", headers={"X-Rigc-Key": KEY})
    answer = connection.getresponse()
    assert answer.headers["Content-Type"] == "text/event-stream"
    first = int(answer.readline().removeprefix(b"data: "))
    assert (first, answer.readline()) == (server.preview.number, b"\n")
    server.preview.rig.write_text(STARTER + "# a word\n", "utf-8")
    server.preview.refresh()
    assert int(answer.readline().removeprefix(b"data: ")) == first + 1
    connection.close()
    server.preview.rig.write_text(STARTER, "utf-8")
    server.preview.refresh()


def test_an_editor_lights_lines_of_the_rigs_own_files(server: Server, tmp_path: Path) -> None:
    lights = server.preview.lights
    told_served(server.preview.rig, server.address)
    assert light(server.preview.rig, server.preview.rig, 12)
    assert (server.preview.lit, server.preview.lights) == (("board.rig", 12), lights + 1)
    assert not light(server.preview.rig, tmp_path / "board.rig", 12)
    assert not light(tmp_path / "other.rig", server.preview.rig, 12)
    told_served(server.preview.rig, f"http://127.0.0.1:{server.server_port}/#another")
    assert not light(server.preview.rig, server.preview.rig, 13)
    assert server.preview.lights == lights + 1


def test_answers(server: Server) -> None:
    state = asked(server, "/state")[1]
    assert (state["title"], state["revision"], state["broken"], state["opens"]) == ("Two Step", "A", False, True)
    assert {each["name"] for each in state["names"]} >= {"drive", "echo", "mains-box", "guitar", "A1"}
    told = asked(server, "/thing/drive")[1]
    lines = STARTER.split("\n")
    assert told["place"] == {"x": 200, "y": 20, "under": False, "chosen": False}
    assert told["lines"][0]["line"] == 1 + lines.index('unit drive "overdrive" {')
    assert {each["line"] for each in told["lines"]} >= {1 + lines.index("  drive at 200, 20 mm")}
    (reason,) = asked(server, "/why/drive.place")[1]["reasons"]
    assert reason["name"] == "drive.place"
    (file,) = asked(server, "/sources")[1]["files"]
    assert file["names"][str(1 + lines.index("  drive at 200, 20 mm"))] == ["drive"]
    (plan,) = asked(server, "/plans/")[1]["plans"]
    assert [(each["name"], each["under"]) for each in plan["bodies"]] == [
        ("drive", False),
        ("echo", False),
        ("mains-box", True),
    ]
    html = asked(server, "/sheet/cable-list")[1]["html"]
    assert 'data-why="A2.cut"' in html
    assert "<style" not in html and "<html" not in html


@pytest.mark.parametrize("name", ["cable-list", "power-table", "mass-and-balance", "level-table"])
def test_each_number_that_can_be_picked_has_a_reason(server: Server, name: str) -> None:
    html = asked(server, f"/sheet/{name}")[1]["html"]
    names = set(re.findall(r'data-why="([^"]*)"', html))
    assert len(names) > 3
    look = server.preview.good
    assert look is not None
    assert [each for each in names if thing.why(look, each) is None] == []


def test_free_places_are_those_that_the_rules_let_pass(server: Server) -> None:
    """Each that is shown brings no clash; the one where the other unit stands is none."""
    spots = asked(server, "/free/drive")[1]["spots"]
    assert [60, 20] not in spots
    for x, y in (spots[0], spots[-1], spots[len(spots) // 2]):
        told = asked(server, "/try", move(server, x=x, y=y))[1]
        assert told["free"], told["words"]


def test_a_page_fetches_nothing_from_elsewhere(server: Server) -> None:
    """What a browser may load is said by the policy, and the files name no other place."""
    connection = http.client.HTTPConnection("127.0.0.1", server.server_port, timeout=30)
    connection.request("GET", "/")
    answer = connection.getresponse()
    policy = answer.headers["Content-Security-Policy"]
    assert "default-src 'none'" in policy and "unsafe" not in policy and "*" not in policy
    answer.read()
    connection.close()
    for name, page in server.pages.items():
        if not name.endswith(".woff2"):
            named = set(re.findall(r"\w+://[^\s\"'`)]+", page.data.decode()))
            assert named <= {"http://www.w3.org/2000/svg"}, name


def test_only_the_loopback_is_bound(server: Server) -> None:
    assert server.server_address[0] == "127.0.0.1"
    assert server.address == f"http://127.0.0.1:{server.server_port}/#{KEY}"
    assert PLACED in STARTER
