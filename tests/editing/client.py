"""A client of the Language Server Protocol over the standard streams of a process, as an editor is one.

It is written from the specification, version 3.17, base protocol: a header with Content-Length, and a message of
JSON-RPC 2.0.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from pathlib import Path
from queue import Empty, Queue
from threading import Thread
from typing import IO, Any, BinaryIO

_WAITS = 60.0  # seconds for an answer, on a busy machine


class Here:
    """A server in a thread of this process, with the streams of a process: what it does is done here."""

    stderr = None

    def __init__(self, serve: Callable[[BinaryIO, BinaryIO], None]) -> None:
        (heard, asks), (hears, said) = os.pipe(), os.pipe()
        self._own = os.fdopen(heard, "rb"), os.fdopen(said, "wb")
        self.stdin, self.stdout = os.fdopen(asks, "wb"), os.fdopen(hears, "rb")
        self._thread = Thread(target=serve, args=self._own, daemon=True)
        self._thread.start()

    def poll(self) -> int | None:
        return None if self._thread.is_alive() else 0

    def kill(self) -> None:
        """End it as an editor does that is gone."""
        self.stdin.close()

    def wait(self, seconds: float) -> int:
        self._thread.join(seconds)
        for stream in self._own:
            with suppress(OSError, ValueError):
                stream.close()
        return 0


class Client:
    """One server and what it says. ``marks`` are the diagnostics of each document as they were last published."""

    def __init__(self, root: Path, process: subprocess.Popen[bytes] | Here) -> None:
        self._process = process
        self._said: Queue[dict[str, Any]] = Queue()
        assert self._process.stdout is not None
        self._listener = Thread(target=_listen, args=(self._process.stdout, self._said), daemon=True)
        self._listener.start()
        self._number = 0
        self.root = root
        self.marks: dict[str, list[dict[str, Any]]] = {}
        self.shown: list[str] = []
        self.capabilities = self.ask(
            "initialize", {"processId": None, "rootUri": root.as_uri(), "capabilities": {}}
        )["capabilities"]
        self.tell("initialized", {})

    @property
    def is_here(self) -> bool:
        """Whether the server is in this process."""
        return isinstance(self._process, Here)

    def uri(self, file: str) -> str:
        return (self.root / file).as_uri()

    def tell(self, method: str, params: object) -> None:
        """A notification."""
        self._send({"method": method, "params": params})

    def ask(self, method: str, params: object) -> Any:
        """A request, and the result that answers it."""
        self._number += 1
        number = self._number
        self._send({"id": number, "method": method, "params": params})
        while True:
            said = self._next(_WAITS)
            if said.get("id") == number:
                assert "error" not in said, said
                return said["result"]

    def ask_at(self, method: str, file: str, line: int, column: int, **more: object) -> Any:
        """A request about a place, line and column from 0."""
        at = {"textDocument": {"uri": self.uri(file)}, "position": {"line": line, "character": column}}
        return self.ask(f"textDocument/{method}", {**at, **more})

    def open(self, file: str, text: str) -> list[dict[str, Any]]:
        """Open a document; returns its marks when its checks are made."""
        document = {"uri": self.uri(file), "languageId": "toml", "version": 1, "text": text}
        self.tell("textDocument/didOpen", {"textDocument": document})
        return self.settled(file)

    def type(self, file: str, version: int, line: int, start: int, end: int, text: str) -> None:
        """Put a text in the place of some columns of a line, as an editor tells a keystroke."""
        passage = {"start": {"line": line, "character": start}, "end": {"line": line, "character": end}}
        document = {"uri": self.uri(file), "version": version}
        change = {"textDocument": document, "contentChanges": [{"range": passage, "text": text}]}
        self.tell("textDocument/didChange", change)

    def settled(self, file: str, times: int = 2) -> list[dict[str, Any]]:
        """The marks of a document after they were published so many times: complaints first, then findings."""
        end = time.monotonic() + _WAITS
        while times and time.monotonic() < end:
            said = self._next(_WAITS)
            if said.get("method") == "textDocument/publishDiagnostics" and said["params"]["uri"] == self.uri(
                file
            ):
                times -= 1
        return self.marks[self.uri(file)]

    def until(self, file: str, rule: str) -> list[dict[str, Any]]:
        """The marks of a document once a finding of a rule is among them."""
        end = time.monotonic() + _WAITS
        while not any(one.get("code") == rule for one in self.marks.get(self.uri(file), [])):
            assert time.monotonic() < end, f"no finding of {rule}"
            self._next(_WAITS)
        return self.marks[self.uri(file)]

    def told(self, file: str, words: str, there: bool = True) -> None:
        """Wait until a mark of a document has these words, or none has them any more."""
        end = time.monotonic() + _WAITS
        while any(words in one["message"] for one in self.marks.get(self.uri(file), [])) is not there:
            assert time.monotonic() < end, f"what marks say of {words} stays as it was"
            self._next(_WAITS)

    def quiet(self, seconds: float = 1.0) -> bool:
        """Whether the server comes to say nothing more for so long."""
        end = time.monotonic() + _WAITS / 3
        while time.monotonic() < end:
            try:
                self._next(seconds)
            except AssertionError:
                return True
        return False

    def cleared(self, file: str) -> None:
        """Wait until nothing of a document is marked."""
        end = time.monotonic() + _WAITS
        while self.marks.get(self.uri(file)):
            assert time.monotonic() < end, f"{file} is still marked"
            self._next(_WAITS)

    def end(self) -> int:
        """Shut the server down; returns its exit code."""
        self.ask("shutdown", None)
        self.tell("exit", None)
        assert self._process.stdin is not None
        self._process.stdin.close()
        code = self._process.wait(_WAITS)
        self.close()
        return code

    def close(self) -> None:
        """End the process, whatever it is at, and close what joins it to this one."""
        if self._process.poll() is None:
            self._process.kill()
            self._process.wait(_WAITS)
        self._listener.join(_WAITS)
        for stream in (self._process.stdin, self._process.stdout, self._process.stderr):
            if stream is not None:
                stream.close()

    def _send(self, message: Mapping[str, object]) -> None:
        assert self._process.stdin is not None
        body = json.dumps({"jsonrpc": "2.0", **message}).encode()
        self._process.stdin.write(b"Content-Length: %d\r\n\r\n" % len(body) + body)
        self._process.stdin.flush()

    def _next(self, seconds: float) -> dict[str, Any]:
        try:
            said = self._said.get(timeout=seconds)
        except Empty:
            raise AssertionError("the server says nothing") from None
        if said.get("method") == "textDocument/publishDiagnostics":
            self.marks[said["params"]["uri"]] = said["params"]["diagnostics"]
        if said.get("method") == "window/showMessage":
            self.shown.append(said["params"]["message"])
        return said


def _listen(stream: IO[bytes], said: Queue[dict[str, Any]]) -> None:
    while True:
        try:
            length = 0
            while (header := stream.readline()) not in (b"\r\n", b""):
                name, _, value = header.partition(b":")
                if name.lower() == b"content-length":
                    length = int(value)
            if not length:
                return
            said.put(json.loads(stream.read(length)))
        except ValueError:  # the stream was closed
            return


def start(
    root: Path, environment: Mapping[str, str], program: Sequence[str] = (sys.executable, "-m", "speclint")
) -> Client:
    """A client of the server as the command begins it."""
    pipe = subprocess.PIPE
    process = subprocess.Popen(
        [*program, "serve"], cwd=root, env=dict(environment), stdin=pipe, stdout=pipe, stderr=pipe
    )
    return Client(root, process)
