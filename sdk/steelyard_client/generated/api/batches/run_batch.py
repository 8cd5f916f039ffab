from http import HTTPStatus
from io import BytesIO
from typing import Any

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.problem import Problem
from ...types import File, Response


def _get_kwargs(
    *,
    body: File,
) -> dict[str, Any]:
    headers: dict[str, Any] = {}

    _kwargs: dict[str, Any] = {
        "method": "post",
        "url": "/v1/batches",
    }

    _kwargs["content"] = body.payload
    headers["Content-Type"] = "application/x-ndjson"

    _kwargs["headers"] = headers
    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> File | Problem | None:
    if response.status_code == 200:
        response_200 = File(payload=BytesIO(response.content))

        return response_200

    if response.status_code == 400:
        response_400 = Problem.from_dict(response.json())

        return response_400

    if response.status_code == 401:
        response_401 = Problem.from_dict(response.json())

        return response_401

    if response.status_code == 403:
        response_403 = Problem.from_dict(response.json())

        return response_403

    if response.status_code == 406:
        response_406 = Problem.from_dict(response.json())

        return response_406

    if response.status_code == 415:
        response_415 = Problem.from_dict(response.json())

        return response_415

    if response.status_code == 429:
        response_429 = Problem.from_dict(response.json())

        return response_429

    if response.status_code == 500:
        response_500 = Problem.from_dict(response.json())

        return response_500

    if response.status_code == 503:
        response_503 = Problem.from_dict(response.json())

        return response_503

    if client.raise_on_unexpected_status:
        raise errors.UnexpectedStatus(response.status_code, response.content)
    else:
        return None


def _build_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> Response[File | Problem]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
    body: File,
) -> Response[File | Problem]:
    """Answer many requests, one a line

     Answer many single calls in one request, streamed. Each line of the body is a `BatchLine`: a
    reference, an operation
    and its body. Each line of the answer is a `BatchAnswer`, in the same order, with that reference and
    either `result`
    (the very bytes of the single call's answer) or `problem` (its problem document, `status` included).
    A line at fault
    never touches the others. The last line is a `BatchSummary`; an answer without it was cut off.

    The status is 200 whatever becomes of the lines, since it is sent before they are known. The limit
    on a body holds
    for each line, and a batch has at most 200,000 lines unless the operator set another number. Lines
    are read only as
    fast as answers are taken, and as the key's rate allows: read while you send. A batch ends with its
    key: once that is
    revoked or expires, the next line's problem says so, and no more is answered. A caller who takes
    nothing for a minute
    may be cut off. With `Accept-Encoding: gzip` the answer is compressed as it goes, so that each line
    can be read as soon
    as it is sent; the body may be compressed too (`Content-Encoding: gzip`). A client that sends
    everything before it reads
    an answer may find both sides waiting once a few megabytes are under way; such a client sends
    smaller batches.

    Args:
        body (File): A line for each request.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[File | Problem]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = client.get_httpx_client().request(
        **kwargs,
    )

    return _build_response(client=client, response=response)


def sync(
    *,
    client: AuthenticatedClient,
    body: File,
) -> File | Problem | None:
    """Answer many requests, one a line

     Answer many single calls in one request, streamed. Each line of the body is a `BatchLine`: a
    reference, an operation
    and its body. Each line of the answer is a `BatchAnswer`, in the same order, with that reference and
    either `result`
    (the very bytes of the single call's answer) or `problem` (its problem document, `status` included).
    A line at fault
    never touches the others. The last line is a `BatchSummary`; an answer without it was cut off.

    The status is 200 whatever becomes of the lines, since it is sent before they are known. The limit
    on a body holds
    for each line, and a batch has at most 200,000 lines unless the operator set another number. Lines
    are read only as
    fast as answers are taken, and as the key's rate allows: read while you send. A batch ends with its
    key: once that is
    revoked or expires, the next line's problem says so, and no more is answered. A caller who takes
    nothing for a minute
    may be cut off. With `Accept-Encoding: gzip` the answer is compressed as it goes, so that each line
    can be read as soon
    as it is sent; the body may be compressed too (`Content-Encoding: gzip`). A client that sends
    everything before it reads
    an answer may find both sides waiting once a few megabytes are under way; such a client sends
    smaller batches.

    Args:
        body (File): A line for each request.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        File | Problem
    """

    return sync_detailed(
        client=client,
        body=body,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
    body: File,
) -> Response[File | Problem]:
    """Answer many requests, one a line

     Answer many single calls in one request, streamed. Each line of the body is a `BatchLine`: a
    reference, an operation
    and its body. Each line of the answer is a `BatchAnswer`, in the same order, with that reference and
    either `result`
    (the very bytes of the single call's answer) or `problem` (its problem document, `status` included).
    A line at fault
    never touches the others. The last line is a `BatchSummary`; an answer without it was cut off.

    The status is 200 whatever becomes of the lines, since it is sent before they are known. The limit
    on a body holds
    for each line, and a batch has at most 200,000 lines unless the operator set another number. Lines
    are read only as
    fast as answers are taken, and as the key's rate allows: read while you send. A batch ends with its
    key: once that is
    revoked or expires, the next line's problem says so, and no more is answered. A caller who takes
    nothing for a minute
    may be cut off. With `Accept-Encoding: gzip` the answer is compressed as it goes, so that each line
    can be read as soon
    as it is sent; the body may be compressed too (`Content-Encoding: gzip`). A client that sends
    everything before it reads
    an answer may find both sides waiting once a few megabytes are under way; such a client sends
    smaller batches.

    Args:
        body (File): A line for each request.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[File | Problem]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
    body: File,
) -> File | Problem | None:
    """Answer many requests, one a line

     Answer many single calls in one request, streamed. Each line of the body is a `BatchLine`: a
    reference, an operation
    and its body. Each line of the answer is a `BatchAnswer`, in the same order, with that reference and
    either `result`
    (the very bytes of the single call's answer) or `problem` (its problem document, `status` included).
    A line at fault
    never touches the others. The last line is a `BatchSummary`; an answer without it was cut off.

    The status is 200 whatever becomes of the lines, since it is sent before they are known. The limit
    on a body holds
    for each line, and a batch has at most 200,000 lines unless the operator set another number. Lines
    are read only as
    fast as answers are taken, and as the key's rate allows: read while you send. A batch ends with its
    key: once that is
    revoked or expires, the next line's problem says so, and no more is answered. A caller who takes
    nothing for a minute
    may be cut off. With `Accept-Encoding: gzip` the answer is compressed as it goes, so that each line
    can be read as soon
    as it is sent; the body may be compressed too (`Content-Encoding: gzip`). A client that sends
    everything before it reads
    an answer may find both sides waiting once a few megabytes are under way; such a client sends
    smaller batches.

    Args:
        body (File): A line for each request.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        File | Problem
    """

    return (
        await asyncio_detailed(
            client=client,
            body=body,
        )
    ).parsed
