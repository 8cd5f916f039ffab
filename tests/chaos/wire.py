"""One request by hand, over a connection that is kept."""

import asyncio

from steelyard.http.endpoints.maintenance import estimate_maintenance

from .served import BODY, HANG_SECONDS, headers


def message(token: str) -> bytes:
    """The request that the loads send."""
    lines = {"Host": "127.0.0.1", **headers(token), "Content-Length": str(len(BODY))}
    head = "".join(f"{name}: {value}\r\n" for name, value in lines.items())
    return f"POST {estimate_maintenance.path} HTTP/1.1\r\n{head}\r\n".encode() + BODY


async def exchange(reader: asyncio.StreamReader, writer: asyncio.StreamWriter, sent: bytes) -> int:
    """Send, and read the whole answer; its status, 0 where there is none."""
    try:
        async with asyncio.timeout(6 * HANG_SECONDS):
            writer.write(sent)
            head = await reader.readuntil(b"\r\n\r\n")
            length = next(line for line in head.lower().split(b"\r\n") if line.startswith(b"content-length:"))
            await reader.readexactly(int(length.partition(b":")[2]))
    except (TimeoutError, OSError, EOFError):
        return 0
    return int(head.split(maxsplit=2)[1])
