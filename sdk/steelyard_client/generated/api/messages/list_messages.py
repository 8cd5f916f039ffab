from http import HTTPStatus
from typing import Any, cast

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.message_catalogue import MessageCatalogue
from ...models.problem import Problem
from ...types import Response


def _get_kwargs() -> dict[str, Any]:

    _kwargs: dict[str, Any] = {
        "method": "get",
        "url": "/v1/messages",
    }

    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> Any | MessageCatalogue | Problem | None:
    if response.status_code == 200:
        response_200 = MessageCatalogue.from_dict(response.json())

        return response_200

    if response.status_code == 304:
        response_304 = cast(Any, None)
        return response_304

    if response.status_code == 401:
        response_401 = Problem.from_dict(response.json())

        return response_401

    if response.status_code == 403:
        response_403 = Problem.from_dict(response.json())

        return response_403

    if response.status_code == 406:
        response_406 = Problem.from_dict(response.json())

        return response_406

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
) -> Response[Any | MessageCatalogue | Problem]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
) -> Response[Any | MessageCatalogue | Problem]:
    """List all message codes, for whom each is, and their texts in every language

     The texts of the codes that answers carry, so that a client can say them in its own language.

    Answers as JSON are in English, and are the same bytes whatever language is asked for. Their
    reasons, cautions,
    notes and guard rails carry a code and parameters. A language's texts are one Fluent resource
    (Project Fluent,
    syntax 1.0), for which there are libraries in many languages of programming: give it to one with the
    language's
    `locale`, ask it for the message of a code, and hand it the parameters. A parameter called `date`,
    or whose name
    ends in `_date`, is handed over as a date (ISO 8601 on the wire); the others are numbers, codes,
    which the texts
    put into words, or words of the caller's own. No function beside the syntax's own `NUMBER` and
    `DATETIME` is used.
    Errors in a request are told to developers, in English.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[Any | MessageCatalogue | Problem]
    """

    kwargs = _get_kwargs()

    response = client.get_httpx_client().request(
        **kwargs,
    )

    return _build_response(client=client, response=response)


def sync(
    *,
    client: AuthenticatedClient,
) -> Any | MessageCatalogue | Problem | None:
    """List all message codes, for whom each is, and their texts in every language

     The texts of the codes that answers carry, so that a client can say them in its own language.

    Answers as JSON are in English, and are the same bytes whatever language is asked for. Their
    reasons, cautions,
    notes and guard rails carry a code and parameters. A language's texts are one Fluent resource
    (Project Fluent,
    syntax 1.0), for which there are libraries in many languages of programming: give it to one with the
    language's
    `locale`, ask it for the message of a code, and hand it the parameters. A parameter called `date`,
    or whose name
    ends in `_date`, is handed over as a date (ISO 8601 on the wire); the others are numbers, codes,
    which the texts
    put into words, or words of the caller's own. No function beside the syntax's own `NUMBER` and
    `DATETIME` is used.
    Errors in a request are told to developers, in English.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Any | MessageCatalogue | Problem
    """

    return sync_detailed(
        client=client,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
) -> Response[Any | MessageCatalogue | Problem]:
    """List all message codes, for whom each is, and their texts in every language

     The texts of the codes that answers carry, so that a client can say them in its own language.

    Answers as JSON are in English, and are the same bytes whatever language is asked for. Their
    reasons, cautions,
    notes and guard rails carry a code and parameters. A language's texts are one Fluent resource
    (Project Fluent,
    syntax 1.0), for which there are libraries in many languages of programming: give it to one with the
    language's
    `locale`, ask it for the message of a code, and hand it the parameters. A parameter called `date`,
    or whose name
    ends in `_date`, is handed over as a date (ISO 8601 on the wire); the others are numbers, codes,
    which the texts
    put into words, or words of the caller's own. No function beside the syntax's own `NUMBER` and
    `DATETIME` is used.
    Errors in a request are told to developers, in English.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[Any | MessageCatalogue | Problem]
    """

    kwargs = _get_kwargs()

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
) -> Any | MessageCatalogue | Problem | None:
    """List all message codes, for whom each is, and their texts in every language

     The texts of the codes that answers carry, so that a client can say them in its own language.

    Answers as JSON are in English, and are the same bytes whatever language is asked for. Their
    reasons, cautions,
    notes and guard rails carry a code and parameters. A language's texts are one Fluent resource
    (Project Fluent,
    syntax 1.0), for which there are libraries in many languages of programming: give it to one with the
    language's
    `locale`, ask it for the message of a code, and hand it the parameters. A parameter called `date`,
    or whose name
    ends in `_date`, is handed over as a date (ISO 8601 on the wire); the others are numbers, codes,
    which the texts
    put into words, or words of the caller's own. No function beside the syntax's own `NUMBER` and
    `DATETIME` is used.
    Errors in a request are told to developers, in English.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Any | MessageCatalogue | Problem
    """

    return (
        await asyncio_detailed(
            client=client,
        )
    ).parsed
